import type { Kind, Same } from '../units/kinds.js';
import { NO_NOTES, describe, quantityOf, requireOptions } from '../units/internal.js';
import type { Leaf, LeafGroup, LeafUncertainty, Quantity } from '../units/origin.js';
import { isQuantity } from '../units/quantity.js';
import { isCorrelation } from './linear.js';
import { refusal, requireLabel, requireQuantity } from './refusal.js';
import { readSize, type Deviation } from './stated-uncertainty.js';

/** A value with its standard uncertainty, as a certificate or a fit gives it. */
export interface StatedValue<K extends Kind> {
  readonly value: Quantity<K>;
  readonly standardUncertainty: Deviation<Same<K>>;
}

/** How values that were stated together belong together. */
export interface StatedRelation<N extends string> {
  /** Correlation coefficients of pairs, by name. A pair that is not named is uncorrelated. */
  readonly correlations: readonly (readonly [first: N, second: N, coefficient: number])[];
  /** How well the uncertainties are known, all of them alike: for a fit, points less coefficients. Infinitely well when left out. */
  readonly degreesOfFreedom?: number | undefined;
}

/**
 * Values that come with their correlation: the slope and intercept of a calibration line, readings that were made with one standard
 * (JCGM 100, 5.2 and H.3). In a budget they count once for degrees of freedom; {@link monteCarlo} draws them jointly.
 *
 * @param label - names the group in budgets.
 * @param values - by name, each with its standard uncertainty.
 * @param relation - the correlations, and the degrees of freedom they share.
 * @throws CalculationError if a name is unknown, a coefficient is not between -1 and 1, or all of them together are not possible.
 * @example
 * const { intercept, slope } = statedTogether(
 *   'probe calibration',
 *   {
 *     intercept: { value: temperatureDifference(-0.1712, 'K'), standardUncertainty: temperatureDifference(0.0029, 'K') },
 *     slope: { value: ratio(0.00218), standardUncertainty: ratio(0.00067) },
 *   },
 *   { correlations: [['intercept', 'slope', -0.93]], degreesOfFreedom: 9 },
 * );
 */
export function statedTogether<P extends Readonly<Record<string, Kind>>>(
  label: string,
  values: { readonly [N in keyof P]: StatedValue<P[N]> },
  relation: StatedRelation<Extract<keyof P, string>>,
): { readonly [N in keyof P]: Quantity<P[N]> } {
  requireLabel(NAME, label);
  const given = (values ?? {}) as Readonly<Record<string, StatedValue<Kind>>>;
  const names = Object.keys(given);
  if (names.length === 0) throw refusal(NAME, 'missing', 'values', 'at least one value, by name', describe(values));
  requireOptions(NAME, relation, { correlations: 'any', degreesOfFreedom: 'any' });
  const degreesOfFreedom = relation?.degreesOfFreedom ?? Infinity;
  if (typeof degreesOfFreedom !== 'number' || !(degreesOfFreedom > 0)) {
    throw refusal(NAME, 'impossible', 'degreesOfFreedom', 'a number above zero', describe(degreesOfFreedom));
  }
  const leaves: Leaf[] = [];
  const group: LeafGroup = { label, leaves, correlation: readCorrelations(names, relation), degreesOfFreedom };
  const results = names.map((name) => {
    const { value, standard } = readValue(name, given[name]);
    const uncertainty: LeafUncertainty = {
      standard,
      degreesOfFreedom,
      distribution: degreesOfFreedom < Infinity ? 't' : 'normal',
      type: 'B',
    };
    const leaf: Leaf = { type: 'leaf', role: 'measured', label: name, uncertainty, group };
    leaves.push(leaf);
    return [name, quantityOf(value.kind, value.si, value.unit, leaf, value.notes ?? NO_NOTES, name)];
  });
  return Object.fromEntries(results) as { readonly [N in keyof P]: Quantity<P[N]> };
}

const NAME = 'statedTogether';

function readValue(
  name: string,
  stated: Partial<StatedValue<Kind>> | undefined,
): { value: Quantity; standard: number } {
  const { value, standardUncertainty } = stated ?? {};
  requireQuantity(NAME, `${name}.value`, value);
  const { origin } = value;
  if (origin?.type === 'step' || origin?.role === 'solved' || origin?.uncertainty !== undefined) {
    const mend = 'To drop its history: forget(value).';
    throw refusal(
      NAME,
      'kind',
      `${name}.value`,
      'a value as it was stated',
      `a computed one (${describe(value)})`,
      mend,
    );
  }
  const input = `${name}.standardUncertainty`;
  const { relative, standard } = readSize(NAME, value.kind, input, standardUncertainty, { standardUncertainty });
  if (relative && value.si === 0) {
    throw refusal(NAME, 'impossible', `${name}.value`, 'other than zero where its uncertainty is a ratio of it', '0');
  }
  return { value, standard: relative ? Math.abs(value.si) * standard : standard };
}

function readCorrelations(names: readonly string[], relation: unknown): number[][] {
  const { correlations } = (relation ?? {}) as { correlations?: unknown };
  if (!Array.isArray(correlations)) {
    const mend = `Write [['${names[0]}', '${names[1] ?? names[0]}', coefficient]].`;
    throw refusal(
      NAME,
      'missing',
      'correlations',
      'a list of two names and a coefficient each',
      describe(correlations),
      mend,
    );
  }
  const matrix: number[][] = names.map((_, i) => names.map((__, j) => (i === j ? 1 : 0)));
  correlations.forEach((entry: unknown, at) => {
    const [first, second, coefficient] = (Array.isArray(entry) ? entry : []) as unknown[];
    const [i, j] = [first, second].map((name) => names.indexOf(name as string)) as [number, number];
    if (i < 0 || j < 0 || i === j) {
      const got = `${nameText(first)} and ${nameText(second)}`;
      throw refusal(NAME, 'unknown', `correlations[${at}]`, `two of ${names.join(', ')}`, got);
    }
    if (typeof coefficient !== 'number' || !(Math.abs(coefficient) <= 1)) {
      throw refusal(NAME, 'impossible', `correlations[${at}]`, 'a coefficient from -1 to 1', describe(coefficient));
    }
    matrix[i]![j] = coefficient;
    matrix[j]![i] = coefficient;
  });
  if (!isCorrelation(matrix)) {
    const got = 'coefficients that contradict one another';
    throw refusal(NAME, 'impossible', 'correlations', 'possible together (a matrix without negative eigenvalues)', got);
  }
  return matrix;
}

const nameText = (name: unknown): string =>
  typeof name === 'string' ? name : isQuantity(name) ? 'a quantity' : describe(name);
