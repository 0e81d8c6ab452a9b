import { correctionFactorCompressionIgnition } from './compression-ignition.js';
import { correctionFactorDin70020 } from './din-70020.js';
import { correctionFactorIso1585 } from './iso-1585.js';
import { referenceAtmospheres, type ReferenceAtmosphere } from './reference-atmospheres.js';
import {
  correctionFactorSaeJ1349,
  correctionFactorSaeJ1349Abbreviated,
  correctionFactorSaeJ1349MeasuredFriction,
} from './sae-j1349.js';
import { correctionFactorSaeJ607, correctionFactorSaeJ816 } from './withdrawn-sae.js';

/** What is known about a power standard, for printing beside every corrected figure. */
export interface CorrectionStandardFacts {
  /** The standard and the form of its formula. */
  readonly title: string;
  readonly revision: string;
  /** What people call it on a dynamometer sheet, if they do. */
  readonly tradeNames?: readonly string[];
  readonly atmosphere: ReferenceAtmosphere;
  /** How far the formula was checked against the text of the standard. */
  readonly restsOn: string;
  /** What the standard says about boosted engines. */
  readonly onBoostedEngines: string;
}

const J1349_ON_BOOST = 'It has one formula for unboosted and boosted engines (from memory).';
const R85_ON_BOOST = 'An engine that makes up for the room by itself must not be corrected a second time.';
const UNBOOSTED_ONLY = 'It was made for unboosted engines and says nothing about boosted ones.';
const NOT_READ = 'the text of the standard was not read';
const JIS_NOT_READ = `${NOT_READ}. Editions before 1993 corrected to another atmosphere and are not offered.`;
const DIESEL_ON_BOOST =
  'It has a class of its own for turbocharged engines, made for ones that do not control boost and fuel by themselves.';
const DISAGREE = 'Sources disagree on limits and exponents, and its own are offered under this name only.';

/** The standards that {@link correctionFactor} knows, by the name it takes. `'none'`, also a choice, is no standard. */
export const correctionStandards = {
  'SAE J1349 (2004)': {
    title: 'SAE J1349, mechanical-efficiency form',
    revision: 'AUG2004 and SEP2011',
    tradeNames: ['SAE', 'SAE J1349', 'J1349'],
    atmosphere: referenceAtmospheres['SAE J1349'],
    restsOn: `Reference as quoted in public, formula from memory; ${NOT_READ}.`,
    onBoostedEngines: J1349_ON_BOOST,
  },
  'SAE J1349 (2004), measured friction': {
    title: 'SAE J1349, with measured friction power',
    revision: 'AUG2004 and SEP2011',
    atmosphere: referenceAtmospheres['SAE J1349'],
    restsOn: `Reference as quoted in public, formula from memory; ${NOT_READ}.`,
    onBoostedEngines: J1349_ON_BOOST,
  },
  'SAE J1349 (1990), abbreviated': {
    title: 'SAE J1349, abbreviated form 1.18/0.18',
    revision: 'JUN1990',
    atmosphere: referenceAtmospheres['SAE J1349'],
    restsOn: `Formula as quoted in public; ${NOT_READ}.`,
    onBoostedEngines: J1349_ON_BOOST,
  },
  'SAE J607': {
    title: 'SAE J607, without a friction term',
    revision: 'withdrawn; revision not known',
    tradeNames: ['STD', 'STP', 'J607'],
    atmosphere: referenceAtmospheres['SAE J607'],
    restsOn:
      'The plain form; some programs print the friction form of SAE J1349 on this reference as STD too, up to 1.4 % more in a usual room. ' +
      `Reference as quoted in public, formula from memory; ${NOT_READ}.`,
    onBoostedEngines: UNBOOSTED_ONLY,
  },
  'SAE J816': {
    title: 'SAE J816, gross rating',
    revision: 'withdrawn; revision not known',
    atmosphere: referenceAtmospheres['SAE J816'],
    restsOn: `From memory; ${NOT_READ}.`,
    onBoostedEngines: UNBOOSTED_ONLY,
  },
  'ISO 1585': {
    title: 'ISO 1585, spark ignition',
    revision: '1992',
    tradeNames: ['ISO', 'ISO1585'],
    atmosphere: referenceAtmospheres['ISO 1585'],
    restsOn: `Exponents as quoted in public, limits from memory; ${NOT_READ}.`,
    onBoostedEngines: `${R85_ON_BOOST} (Later editions, from memory.)`,
  },
  'UN R85': {
    title: 'UN Regulation 85, spark ignition (the formula of ISO 1585)',
    revision: 'Annex 5; revision not known',
    tradeNames: ['EEC', 'EC', 'ECE', 'R85', 'ECE R85', '80/1269/EEC'],
    atmosphere: referenceAtmospheres['ISO 1585'],
    restsOn: `Exponents as quoted in public, limits from memory; ${NOT_READ}.`,
    onBoostedEngines: `${R85_ON_BOOST} (Working papers to the regulation, read in summary.)`,
  },
  'UN R85, compression ignition': {
    title: 'UN Regulation 85, compression ignition (also 80/1269/EEC)',
    revision: 'Annex 5; revision not known',
    atmosphere: referenceAtmospheres['ISO 1585'],
    restsOn: `Engine factor as quoted in public, exponents from memory; ${NOT_READ}. ${DISAGREE}`,
    onBoostedEngines: `${DIESEL_ON_BOOST} ${R85_ON_BOOST} (Working papers to the regulation, read in summary.)`,
  },
  'ISO 1585, compression ignition': {
    title: 'ISO 1585, compression ignition (also SAE J1349 of the 1990s)',
    revision: '1992',
    atmosphere: referenceAtmospheres['ISO 1585'],
    restsOn: `Line of the engine factor from a service manual, the rest from memory; ${NOT_READ}. ${DISAGREE}`,
    onBoostedEngines: `${DIESEL_ON_BOOST} ${R85_ON_BOOST} (Later editions, from memory.)`,
  },
  'JIS D 1001 (1993)': {
    title: 'JIS D 1001, spark ignition (with the formula of ISO 1585, its counterpart)',
    revision: '1993',
    tradeNames: ['JIS'],
    atmosphere: referenceAtmospheres['JIS D 1001 (1993)'],
    restsOn: `First page read, which names ISO 1585 as the counterpart; the formula is ISO's, from memory; ${JIS_NOT_READ}`,
    onBoostedEngines: 'What it says about boosted engines is not known.',
  },
  'JIS D 1001 (1993), compression ignition': {
    title: 'JIS D 1001, compression ignition (with the formula of ISO 1585, its counterpart)',
    revision: '1993',
    atmosphere: referenceAtmospheres['JIS D 1001 (1993)'],
    restsOn: `First page read, which names ISO 1585 as the counterpart; the formula is ISO's, from memory; ${JIS_NOT_READ}`,
    onBoostedEngines: 'What it says about boosted engines is not known.',
  },
  'DIN 70020': {
    title: 'DIN 70020, on the total barometer',
    revision: 'superseded; edition not known',
    tradeNames: ['DIN'],
    atmosphere: referenceAtmospheres['DIN 70020'],
    restsOn: `Formula as quoted in public; ${NOT_READ}.`,
    onBoostedEngines: UNBOOSTED_ONLY,
  },
} as const satisfies Readonly<Record<string, CorrectionStandardFacts>>;

/** A standard by name, or `'none'` for power as observed. */
export type CorrectionStandard = keyof typeof correctionStandards | 'none';

/** Whether a value from outside is the name of a standard, or `'none'`. */
export function isCorrectionStandard(value: unknown): value is CorrectionStandard {
  return value === 'none' || (typeof value === 'string' && Object.hasOwn(correctionStandards, value));
}

/** The standard that people mean by what they say after a power figure: `STD`, `SAE`, `uncorrected`. */
export function standardOfTradeName(name: string): CorrectionStandard | undefined {
  const said = name.trim().toUpperCase();
  if (['UNCORRECTED', 'OBSERVED', 'NONE', 'ACTUAL'].includes(said)) return 'none';
  const standards = Object.keys(correctionStandards) as (keyof typeof correctionStandards)[];
  return standards.find((standard) => tradeNamesOf(correctionStandards[standard]).includes(said));
}

function tradeNamesOf({ tradeNames }: CorrectionStandardFacts): readonly string[] {
  return tradeNames ?? [];
}

/**
 * The calculations of the factors by the name of the standard, each also exported by its own name.
 *
 * @example
 * correctionFactors['DIN 70020'].spec.formula //=> '101300 / p * sqrt(T / 293.15)'
 */
export const correctionFactors = {
  'SAE J1349 (2004)': correctionFactorSaeJ1349,
  'SAE J1349 (2004), measured friction': correctionFactorSaeJ1349MeasuredFriction,
  'SAE J1349 (1990), abbreviated': correctionFactorSaeJ1349Abbreviated,
  'SAE J607': correctionFactorSaeJ607,
  'SAE J816': correctionFactorSaeJ816,
  'ISO 1585': correctionFactorIso1585,
  'UN R85': correctionFactorIso1585,
  'UN R85, compression ignition': correctionFactorCompressionIgnition,
  'ISO 1585, compression ignition': correctionFactorCompressionIgnition,
  'JIS D 1001 (1993)': correctionFactorIso1585,
  'JIS D 1001 (1993), compression ignition': correctionFactorCompressionIgnition,
  'DIN 70020': correctionFactorDin70020,
} as const satisfies Readonly<Record<keyof typeof correctionStandards, unknown>>;
