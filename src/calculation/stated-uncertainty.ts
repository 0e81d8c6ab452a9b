import type { DifferenceOf, Kind } from '../units/kinds.js';
import { constructorName, differenceKind } from '../units/kinds.js';
import { describe, fromSi, withArticle, type KnownOptions } from '../units/internal.js';
import type { LeafUncertainty, Quantity } from '../units/origin.js';
import { isQuantity } from '../units/quantity.js';
import { unitChoices } from '../units/unit.js';
import { refusal, requireLevel } from './refusal.js';
import { coverageFactorOf } from './coverage-factor.js';

/** How values spread inside what was stated: evenly, more in the middle, or without an edge. */
export type Distribution = 'rectangular' | 'triangular' | 'normal';

/**
 * How far a value may be off: of the kind of its differences (a temperature difference for a temperature), or a ratio of the value.
 * A temperature takes no ratio, because the zero of its scale is arbitrary.
 */
export type Deviation<K extends Kind> =
  Quantity<DifferenceOf<K>> | (K extends 'temperature' ? never : Quantity<'ratio'>);

/** An uncertainty as one finds it: on a certificate, on a data sheet, from experience. */
export type StatedUncertainty<K extends Kind> = (
  | {
      /** One standard deviation. */
      readonly standardUncertainty: Deviation<K>;
      /** The shape that random draws take; `'normal'` when left out. */
      readonly distribution?: Distribution | undefined;
    }
  | {
      /** The ± of a data sheet: half the width of the range that holds the value. */
      readonly halfWidth: Deviation<K>;
      /** `'rectangular'` (even, divided by √3) when left out, `'triangular'` (divided by √6), or `'normal'`. */
      readonly distribution?: Distribution | undefined;
      /** For `'normal'`, which has no edge: the share of values inside the range; 0.95 when left out. */
      readonly level?: number | undefined;
    }
  | {
      /** The expanded uncertainty of a calibration certificate. */
      readonly expanded: Deviation<K>;
      /** How many standard uncertainties that is, as the certificate says: often 2. */
      readonly coverageFactor: number;
    }
) & {
  /** How well the uncertainty itself is known; infinitely well when left out. */
  readonly degreesOfFreedom?: number | undefined;
};

/** The forms above as one record, which is what a caller without types can send. */
type Loose = Partial<Record<'standardUncertainty' | 'halfWidth' | 'expanded' | 'distribution' | 'level', unknown>> &
  Partial<Record<'coverageFactor' | 'degreesOfFreedom', unknown>>;

const FORMS = ['standardUncertainty', 'halfWidth', 'expanded'] as const;

/** Every name in a statement of an uncertainty; one misspelt would be left out, silently. */
export const STATED: KnownOptions = Object.fromEntries(
  [...FORMS, 'distribution', 'level', 'coverageFactor', 'degreesOfFreedom'].map((name) => [name, 'any']),
);

/** What a statement comes to: a standard uncertainty, of the value itself or relative to it. */
export interface ReadUncertainty extends LeafUncertainty {
  readonly relative: boolean;
  /** The unit it was stated in. */
  readonly unit: string;
}

/** Which of the three forms a statement uses. */
export function formOf(stated: unknown): (typeof FORMS)[number][] {
  const given = (typeof stated === 'object' && stated !== null ? stated : {}) as Loose;
  return FORMS.filter((form) => given[form] !== undefined);
}

/** The standard uncertainty of a statement about a value of a kind. */
export function readUncertainty(name: string, kind: Kind, stated: unknown): ReadUncertainty {
  const forms = formOf(stated);
  const [form] = forms;
  if (form === undefined || forms.length > 1) {
    const got = forms.length > 1 ? forms.join(' and ') : 'none of them';
    throw refusal(
      name,
      forms.length > 1 ? 'unknown' : 'missing',
      '',
      'needs one of standardUncertainty, halfWidth, expanded',
      got,
    );
  }
  const given = stated as Loose;
  return readSize(name, kind, form, given[form], given);
}

/** The standard uncertainty that a size stands for, in the form it was stated in. */
export function readSize(name: string, kind: Kind, input: string, size: unknown, stated: object): ReadUncertainty {
  const given = stated as Loose;
  const { si, relative, unit } = deviationOf(name, input, kind, size);
  if (!(si > 0)) {
    throw refusal(
      name,
      'impossible',
      input,
      'above zero',
      describe(size),
      'For a value without uncertainty use known(label, value).',
    );
  }
  const degreesOfFreedom = given.degreesOfFreedom ?? Infinity;
  if (typeof degreesOfFreedom !== 'number' || !(degreesOfFreedom > 0)) {
    throw refusal(name, 'impossible', 'degreesOfFreedom', 'a number above zero', describe(given.degreesOfFreedom));
  }
  const { divisor, shape } = spreadOf(name, given);
  const distribution = shape === 'normal' && degreesOfFreedom < Infinity ? 't' : shape;
  return { standard: si / divisor, degreesOfFreedom, distribution, type: 'B', relative, unit };
}

function spreadOf(name: string, given: Loose): { divisor: number; shape: Distribution } {
  const shape =
    given.distribution ??
    (given.standardUncertainty === undefined && given.expanded === undefined ? 'rectangular' : 'normal');
  if (shape !== 'rectangular' && shape !== 'triangular' && shape !== 'normal') {
    throw refusal(name, 'unknown', 'distribution', `'rectangular', 'triangular' or 'normal'`, describe(shape));
  }
  if (given.expanded !== undefined) {
    const factor = given.coverageFactor;
    if (typeof factor === 'number' && factor > 0 && factor < Infinity) return { divisor: factor, shape };
    const mend = 'The certificate says it; k = 2 is usual for 95 %.';
    throw refusal(
      name,
      factor === undefined ? 'missing' : 'impossible',
      'coverageFactor',
      'a number above zero',
      describe(factor),
      mend,
    );
  }
  if (given.standardUncertainty !== undefined) return { divisor: 1, shape };
  if (shape === 'rectangular') return { divisor: Math.sqrt(3), shape };
  if (shape === 'triangular') return { divisor: Math.sqrt(6), shape };
  const level = given.level ?? 0.95;
  requireLevel(name, level);
  return { divisor: coverageFactorOf(level, Infinity), shape };
}

/** A size in SI, and whether it is a share of the value. */
function deviationOf(
  name: string,
  input: string,
  kind: Kind,
  size: unknown,
): { si: number; relative: boolean; unit: string } {
  const difference = differenceKind(kind);
  if (isQuantity(size) && size.kind === difference) return { si: size.si, relative: false, unit: size.unit };
  if (isQuantity(size) && size.kind === 'ratio' && kind !== 'temperature')
    return { si: size.si, relative: true, unit: size.unit };
  const need = kind === 'temperature' ? withArticle(difference) : `${withArticle(difference)} or a ratio of the value`;
  throw refusal(
    name,
    size === undefined ? 'missing' : 'kind',
    input,
    need,
    describe(size),
    mendOf(kind, difference, size),
  );
}

function mendOf(kind: Kind, difference: Kind, size: unknown): string {
  if (isQuantity(size) && size.kind === 'ratio')
    return 'A share of a temperature means nothing: the zero of its scale is arbitrary.';
  if (isQuantity(size) && size.kind === kind) {
    return `Write ${constructorName(difference)}(${Number(fromSi(kind, size.si, size.unit).toPrecision(12))}, '${size.unit}').`;
  }
  const units = unitChoices(difference);
  return units.includes('|')
    ? `Write ${constructorName(difference)}(value, ${units}).`
    : `Write ${constructorName(difference)}(value).`;
}
