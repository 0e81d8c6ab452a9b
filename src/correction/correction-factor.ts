import { CalculationError, type Problem } from '../calculation/index.js';
import { dryPressure, vapourPressureFromRelativeHumidityOverWater } from '../psychrometrics/index.js';
import type { Note, Quantity } from '../units/index.js';
import { describe, isPlain, merged, quantityOf, unknownNames } from '../units/internal.js';
import {
  atmosphericFactors,
  correctionFactorCompressionIgnition,
  type atmosphericFactorUnboosted,
} from './compression-ignition.js';
import { engineFactor } from './engine-factor.js';
import {
  correctionFactors,
  correctionStandards,
  isCorrectionStandard,
  standardOfTradeName,
  type CorrectionStandard,
  type CorrectionStandardFacts,
} from './standards.js';

const NAME = 'correction factor';
const BOOST_CONTROLS = ['unboosted', 'absolute closed loop', 'gauge spring', 'unknown'] as const;

/**
 * What sets the boost of the engine: `'unboosted'` if there is none, `'absolute closed loop'` if a controller holds an
 * absolute manifold pressure, `'gauge spring'` if a wastegate works on a spring against the room.
 */
export type BoostReference = (typeof BOOST_CONTROLS)[number];

/** The room by its barometer and humidity. */
export interface HumidRoom {
  /** The barometer at the place, not reduced to sea level. */
  readonly pressure: Quantity<'absolute pressure'>;
  /** Temperature where the humidity is read. */
  readonly temperature: Quantity<'temperature'>;
  /** As a hygrometer or weather station gives it: over water, in frost too. */
  readonly relativeHumidity: Quantity<'relative humidity'>;
}

/** The room by the pressure of its air without vapour. */
export interface DryRoom {
  readonly dryPressure: Quantity<'absolute pressure'>;
  readonly temperature: Quantity<'temperature'>;
}

/** The air of the room. */
export type RoomAir = HumidRoom | DryRoom;

interface Common {
  readonly boost: BoostReference;
  /** Temperature of the air that enters the engine's inlet; that of the room when left out. */
  readonly inletTemperature?: Quantity<'temperature'> | undefined;
}

interface WithEfficiency extends Common {
  readonly standard: 'SAE J1349 (2004)';
  readonly room: RoomAir;
  readonly mechanicalEfficiency?: Quantity<'ratio'> | undefined;
}

interface WithFriction extends Common {
  readonly standard: 'SAE J1349 (2004), measured friction';
  readonly room: RoomAir;
  readonly observedPower: Quantity<'power'>;
  readonly frictionPower: Quantity<'power'>;
}

interface OnBarometer extends Common {
  readonly standard: 'DIN 70020';
  /** Humidity does not enter, and may be left out. */
  readonly room: Omit<HumidRoom, 'relativeHumidity'> | HumidRoom;
}

interface Plain extends Common {
  readonly standard:
    'SAE J1349 (1990), abbreviated' | 'SAE J607' | 'SAE J816' | 'ISO 1585' | 'UN R85' | 'JIS D 1001 (1993)';
  readonly room: RoomAir;
}

interface CompressionIgnition<F extends keyof typeof atmosphericFactors> extends Common {
  readonly room: RoomAir;
  /** How the engine is charged, as the standard has it in classes. */
  readonly charging: keyof (typeof atmosphericFactors)[F];
  /** Fuel per cycle and swept volume over the boost pressure ratio, by `correctedFuelDelivery`. */
  readonly correctedFuelDelivery: Quantity<'density'>;
}

interface ByUnR85 extends CompressionIgnition<'UN R85'> {
  readonly standard: 'UN R85, compression ignition';
}

interface ByIso1585 extends CompressionIgnition<'ISO 1585'> {
  readonly standard: 'ISO 1585, compression ignition' | 'JIS D 1001 (1993), compression ignition';
}

interface AsObserved extends Partial<Common> {
  readonly standard: 'none';
  readonly room?: RoomAir | undefined;
}

/** What {@link correctionFactor} takes. Some standards need or allow further inputs. */
export type CorrectionRequest = AsObserved | WithEfficiency | WithFriction | Plain | OnBarometer | ByUnR85 | ByIso1585;

/**
 * The factor from observed power or torque to a standard atmosphere, from the air of the room.
 *
 * `'none'` is a choice like the others, and the best one for comparing two set-ups of a boosted engine within one
 * session. The notes of the factor name the standard, its revision and what the formula rests on, and reach every
 * figure corrected with it. An engine with boost gets a note on what the standard overstates. The single calculations
 * of {@link correctionFactors} do the same without notes, and over columns.
 *
 * @returns The factor; 1 for `'none'`.
 * @throws CalculationError if the standard or the boost control is unknown, an input is missing, impossible, of the
 * wrong kind, or not one that the standard takes.
 * @example
 * const room = {
 *   pressure: absolutePressure(941, 'hPa'),
 *   temperature: temperature(18, '°C'),
 *   relativeHumidity: relativeHumidity(45, '%'),
 * };
 * correctionFactor({ standard: 'SAE J1349 (2004)', room, boost: 'gauge spring' }).in('1') //=> 1.05884
 */
export function correctionFactor(request: CorrectionRequest): Quantity<'ratio'> {
  check(request);
  if (request.standard === 'none') return asObserved();
  const factor = factorOf(request);
  const notes = merged(factor.notes, [standardNote(request.standard), ...boostNotes(request.standard, request.boost)]);
  return quantityOf('ratio', factor.si, factor.unit, factor.origin, notes, `${NAME}, ${request.standard}`);
}

function factorOf(request: Exclude<CorrectionRequest, AsObserved>): Quantity<'ratio'> {
  const inletTemperature = request.inletTemperature ?? request.room.temperature;
  switch (request.standard) {
    case 'DIN 70020':
      return correctionFactors['DIN 70020']({ barometer: request.room.pressure, inletTemperature });
    case 'SAE J1349 (2004)': {
      const { room, mechanicalEfficiency } = request;
      const air = { dryPressure: dryPressureOf(room), inletTemperature };
      return correctionFactors[request.standard]({ ...air, mechanicalEfficiency });
    }
    case 'SAE J1349 (2004), measured friction': {
      const { room, observedPower, frictionPower } = request;
      const air = { dryPressure: dryPressureOf(room), inletTemperature };
      return correctionFactors[request.standard]({ ...air, observedPower, frictionPower });
    }
    case 'UN R85, compression ignition':
    case 'ISO 1585, compression ignition':
    case 'JIS D 1001 (1993), compression ignition':
      return compressionIgnitionFactor(request, inletTemperature);
    default:
      return correctionFactors[request.standard]({ dryPressure: dryPressureOf(request.room), inletTemperature });
  }
}

function compressionIgnitionFactor(
  request: ByUnR85 | ByIso1585,
  inletTemperature: Quantity<'temperature'>,
): Quantity<'ratio'> {
  const family = familyOf(request.standard)!;
  const classes: Readonly<Record<string, typeof atmosphericFactorUnboosted>> = atmosphericFactors[family];
  return correctionFactorCompressionIgnition({
    atmosphericFactor: classes[request.charging]!({ dryPressure: dryPressureOf(request.room), inletTemperature }),
    engineFactor: engineFactor[family]({ correctedFuelDelivery: request.correctedFuelDelivery }),
  });
}

/** The text that a compression-ignition standard takes its limits and exponents from; undefined for the others. */
function familyOf(standard: CorrectionStandard): keyof typeof atmosphericFactors | undefined {
  if (standard === 'UN R85, compression ignition') return 'UN R85';
  return standard.endsWith('compression ignition') ? 'ISO 1585' : undefined;
}

function dryPressureOf(room: RoomAir): Quantity<'absolute pressure'> {
  if ('dryPressure' in room) return room.dryPressure;
  const { pressure, temperature, relativeHumidity } = room;
  const vapourPressure = vapourPressureFromRelativeHumidityOverWater({ temperature, relativeHumidity });
  return dryPressure({ pressure, vapourPressure });
}

function asObserved(): Quantity<'ratio'> {
  const message = 'Power is as observed: no correction to a standard atmosphere.';
  const origin = { type: 'leaf', role: 'given', id: 'correction/none', label: 'no correction' } as const;
  return quantityOf('ratio', 1, '1', origin, [{ code: 'standard', calculation: NAME, message }], 'no correction');
}

function standardNote(standard: Exclude<CorrectionStandard, 'none'>): Note {
  const { title, revision, restsOn }: CorrectionStandardFacts = correctionStandards[standard];
  return { code: 'standard', calculation: NAME, message: `${title} (${revision}). ${restsOn}` };
}

function boostNotes(standard: Exclude<CorrectionStandard, 'none'>, boost: BoostReference): readonly Note[] {
  if (boost === 'unboosted') return [];
  // The pressure exponent of the turbocharged classes already counts the charger in, so a spring is no reason to warn.
  const isCounted = boost === 'gauge spring' && familyOf(standard) !== undefined;
  const caution = isCounted ? '' : BOOST_CAUTIONS[boost].replaceAll('$standard', standard);
  const message = `${caution} ${correctionStandards[standard].onBoostedEngines}`.trim();
  return [{ code: 'boost control', calculation: NAME, message }];
}

const BOOST_CAUTIONS = {
  'absolute closed loop':
    'Boost is held to an absolute pressure, so the engine makes up for the barometer by itself and $standard ' +
    "corrects it a second time: compare power as observed (standard 'none').",
  'gauge spring':
    'Boost sits on a spring against the room, so the barometer moves the charge pressure by less than $standard ' +
    "takes, and the factor overstates: see pressureFactorGaugeSpring, or compare power as observed (standard 'none').",
  unknown: 'What controls boost is not known; if the engine is boosted, the factor of $standard may overstate.',
} as const;

/** The further inputs of a standard beside room, boost and inlet temperature. */
const FURTHER: Partial<Record<CorrectionStandard, readonly string[]>> = {
  'SAE J1349 (2004)': ['mechanicalEfficiency'],
  'SAE J1349 (2004), measured friction': ['observedPower', 'frictionPower'],
  'UN R85, compression ignition': ['charging', 'correctedFuelDelivery'],
  'ISO 1585, compression ignition': ['charging', 'correctedFuelDelivery'],
  'JIS D 1001 (1993), compression ignition': ['charging', 'correctedFuelDelivery'],
};

function check(request: CorrectionRequest): void {
  const given = ((request as unknown) ?? {}) as Record<string, unknown>;
  const { standard, boost, room } = given;
  if (!isCorrectionStandard(standard)) throw new CalculationError(NAME, [unknownStandard(standard)]);
  const known = ['standard', 'boost', 'room', 'inletTemperature', ...(FURTHER[standard] ?? [])];
  const problems = unknownNames(given, known).map((one) => ({ ...one, need: `${one.need} for ${standard}` }));
  if (boost === undefined ? standard !== 'none' : !BOOST_CONTROLS.includes(boost as BoostReference)) {
    const code = boost === undefined ? 'missing' : 'kind';
    problems.push(problem(code, 'boost', oneOf(BOOST_CONTROLS), describe(boost), "If it is not known, say 'unknown'."));
  }
  if (standard !== 'none') problems.push(...roomProblems(standard, room), ...chargingProblems(standard, given));
  if (problems.length > 0) throw new CalculationError(NAME, problems);
}

function roomProblems(standard: Exclude<CorrectionStandard, 'none'>, room: unknown): Problem[] {
  const total = correctionStandards[standard].atmosphere.basis === 'total';
  const need = total
    ? 'the air of the room, { pressure, temperature }, with the total barometer'
    : 'the air of the room, { pressure, temperature, relativeHumidity } or { dryPressure, temperature }';
  if (typeof room !== 'object' || room === null)
    return [problem(room === undefined ? 'missing' : 'kind', 'room', need, describe(room))];
  const dry = 'dryPressure' in room;
  if (dry && total) return [problem('kind', 'room', need, 'its dry pressure')];
  if (dry && ('pressure' in room || 'relativeHumidity' in room))
    return [problem('kind', 'room', need, 'both forms at once')];
  const known = dry ? ['dryPressure', 'temperature'] : ['pressure', 'temperature', 'relativeHumidity'];
  return isPlain(room) ? unknownNames(room, known, 'room.') : [];
}

function chargingProblems(standard: CorrectionStandard, { charging, boost }: Record<string, unknown>): Problem[] {
  const family = familyOf(standard);
  if (family === undefined) return [];
  const classes = Object.keys(atmosphericFactors[family]);
  if (typeof charging !== 'string' || !classes.includes(charging))
    return [problem(charging === undefined ? 'missing' : 'kind', 'charging', oneOf(classes), describe(charging))];
  if (boost === 'unboosted' && charging.startsWith('turbocharged'))
    return [problem('rule', 'boost', 'what controls the boost of a turbocharged engine', describe(boost))];
  return [];
}

function unknownStandard(standard: unknown): Problem {
  const meant = typeof standard === 'string' ? standardOfTradeName(standard) : undefined;
  const mend = meant === undefined ? '' : `People mean '${meant}' by that.`;
  const names = [...Object.keys(correctionStandards), 'none'];
  return problem(standard === undefined ? 'missing' : 'kind', 'standard', oneOf(names), describe(standard), mend);
}

function oneOf(names: readonly string[]): string {
  return `one of ${names.map((name) => `'${name}'`).join(', ')}`;
}

function problem(code: Problem['code'], input: string, need: string, got: string, mend = ''): Problem {
  return { code, input, need, got, mend };
}
