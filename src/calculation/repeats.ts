import { differenceKind, type DifferenceOf, type Kind } from '../units/kinds.js';
import { NO_NOTES, describe, differenceUnit, perform, quantityOf } from '../units/internal.js';
import type { Column, Leaf, LeafGroup, LeafUncertainty, Note, Operation, Quantity } from '../units/origin.js';
import { isColumn, isQuantity } from '../units/quantity.js';
import { graphOf, keyOf, type Key } from './graph.js';
import { readingOperation } from './reading.js';
import { reduceColumn } from './reduction.js';
import { refusal, requireLabel } from './refusal.js';

const made = new Map<string, Operation>();

function meanOperation(kind: Kind, unit: string): Operation {
  const key = `${kind}|${unit}`;
  let operation = made.get(key);
  if (!operation) {
    const inputs = [{ name: 'values', symbol: 'x', kind, min: -Infinity, max: Infinity, list: true }];
    const output = { symbol: 'y', kind, unit };
    const kernel = (...si: number[]): number => average(si);
    operation = { name: 'mean', inputs, output, formula: 'mean(x)', kernel, reduce: average, rules: [], sources: [] };
    made.set(key, operation);
  }
  return operation;
}

/** Taken about the first value, so that equal values give exactly that value. */
function average(values: readonly number[] | Float64Array): number {
  const first = values[0]!;
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]! - first;
  return first + sum / values.length;
}

/**
 * The mean of a column, without its missing rows, or of several quantities. It claims no scatter: the samples of one pull are not
 * repeats of it. For repeats use {@link meanOfRepeats}.
 *
 * @throws CalculationError if there is nothing to average, or the kinds differ.
 */
export function mean<K extends Kind>(values: Column<K> | readonly Quantity<K>[]): Quantity<K> {
  return meanOf('mean', 'values', values) as Quantity<K>;
}

function meanOf(name: string, input: string, values: unknown): Quantity {
  if (isColumn(values)) return reduceColumn(meanOperation(values.kind, values.unit), values);
  if (!Array.isArray(values)) throw refusal(name, 'kind', input, 'a column or a list of quantities', describe(values));
  const [first] = values as unknown[];
  if (!isQuantity(first)) {
    const got = values.length === 0 ? 'an empty list' : describe(first);
    throw refusal(name, values.length === 0 ? 'missing' : 'kind', input, 'a list of quantities', got);
  }
  return perform(meanOperation(first.kind, first.unit), values as Quantity[]);
}

/**
 * The mean of repeats and what their scatter says about it: one error for the scatter, s/√n with n - 1 degrees of freedom, beside
 * whatever the repeats share, such as a sensor.
 *
 * Give repeats only shared errors. The noise of each is in the scatter already; where a repeat carries an error of its own the result
 * has a note that it was counted twice.
 *
 * @param label - names the result, and its scatter in budgets.
 * @throws CalculationError if there are fewer than two, or the kinds differ.
 */
export function meanOfRepeats<K extends Kind>(label: string, repeats: readonly Quantity<K>[]): Quantity<K> {
  requireLabel('meanOfRepeats', label);
  const middle = meanOf('meanOfRepeats', 'repeats', repeats) as Quantity<K>;
  const n = repeats.length;
  if (n < 2) {
    const mend =
      'One value has no scatter: use measured(label, value, { standardUncertainty }) with what earlier repeats showed.';
    throw refusal('meanOfRepeats', 'length', 'repeats', 'at least two quantities', 'one', mend);
  }
  const standard = Math.sqrt(covariance(repeats.map(siOf), repeats.map(siOf)) / n);
  const scatter = scatterLeaf(middle, `${label}, scatter of ${n} repeats`, standard, n - 1);
  return withScatter(middle, scatter, label, [
    ...sameReading(label, repeats),
    ...ownErrors(label, repeats),
    ...(standard === 0 ? [allEqual(label, n)] : []),
  ]);
}

/** What is known of the scatter of a weighted sum of repeats. */
export interface ContrastScatter {
  /** Standard uncertainty of the sum, in the SI unit of its kind. */
  readonly standard: number;
  readonly degreesOfFreedom: number;
}

/**
 * A difference between repeats of two sorts as a weighted sum of all of them, such as a change with the drift over the day taken out. Its
 * scatter is one error, known from the fit that gave the weights.
 *
 * @param label - names the result, and its scatter in budgets.
 * @param weights - one for each repeat, adding up to zero.
 * @throws CalculationError if they are not equally many, or the weights do not add up to zero.
 */
export function contrastOfRepeats<K extends Kind>(
  label: string,
  repeats: readonly Quantity<K>[],
  weights: ArrayLike<number>,
  { standard, degreesOfFreedom }: ContrastScatter,
): Quantity<DifferenceOf<K>> {
  requireLabel('contrastOfRepeats', label);
  const [first] = repeats;
  if (!first || repeats.length !== weights.length) {
    const got = `${repeats.length} and ${weights.length}`;
    throw refusal('contrastOfRepeats', 'length', 'weights', 'one for each repeat, of which there is at least one', got);
  }
  const list = Array.from(weights);
  const sum = list.reduce((total, weight) => total + weight, 0);
  if (!(Math.abs(sum) <= 1e-9 * list.reduce((total, weight) => total + Math.abs(weight), 0))) {
    throw refusal('contrastOfRepeats', 'impossible', 'weights', 'numbers that add up to zero', `a sum of ${sum}`);
  }
  const operation = contrastOperation(first.kind, first.unit);
  const middle = perform(operation, [
    ...repeats,
    ...list.map((weight) => quantityOf('ratio', weight, '1', { type: 'leaf', role: 'computed' }, NO_NOTES)),
  ]);
  const scatter = scatterLeaf(middle, `${label}, scatter of ${repeats.length} repeats`, standard, degreesOfFreedom);
  return withScatter(middle, scatter, label, ownErrors(label, repeats)) as Quantity<DifferenceOf<K>>;
}

function contrastOperation(kind: Kind, unit: string): Operation {
  const key = `contrast|${kind}|${unit}`;
  let operation = made.get(key);
  if (!operation) {
    const open = { min: -Infinity, max: Infinity, list: true } as const;
    operation = {
      name: 'difference with the drift taken out',
      inputs: [
        { name: 'values', symbol: 'x', kind, ...open },
        { name: 'weights', symbol: 'w', kind: 'ratio', ...open },
      ],
      output: { symbol: 'd', kind: differenceKind(kind), unit },
      formula: 'sum(w .* x)',
      // Taken about the first value: the weights add up to zero, and large values with small differences keep their digits.
      kernel: (...si) => {
        const n = si.length / 2;
        let total = 0;
        for (let i = 0; i < n; i++) total += si[n + i]! * (si[i]! - si[0]!);
        return total;
      },
      rules: [],
      sources: [],
    };
    made.set(key, operation);
  }
  return operation;
}

/** Columns, or lists of repeats, that were read at the same time. */
export type TogetherReadings = Readonly<Record<string, Column | readonly Quantity[]>>;

/** The means of what was read together, by name. */
export type TogetherMeans<R extends TogetherReadings> = {
  readonly [N in keyof R]: R[N] extends { readonly kind: infer K extends Kind; readonly si: Float64Array }
    ? Quantity<K>
    : R[N] extends readonly Quantity<infer K>[]
      ? Quantity<K>
      : never;
};

/**
 * The means of quantities that were repeated together, row by row: what moves two of them at once is kept as the correlation of their
 * scatter (JCGM 100, 5.2.3 and H.2). In a budget the scatter of the group counts once for degrees of freedom.
 *
 * @param label - names the group in budgets.
 * @param readings - by name, columns or lists of one length, one value per repeat.
 * @throws CalculationError if lengths differ, a value is missing, or there are fewer than two.
 * @example
 * const { power, airflow } = measuredTogether('five pulls', { power: powers, airflow: airflows });
 */
export function measuredTogether<R extends TogetherReadings>(label: string, readings: R): TogetherMeans<R> {
  requireLabel('measuredTogether', label);
  const names = Object.keys(readings ?? {});
  if (names.length === 0)
    throw refusal('measuredTogether', 'missing', 'readings', 'at least one list or column, by name', 'none');
  const means = names.map((name) => meanOf('measuredTogether', name, readings[name]));
  const rows = names.map((name) => rowsOf(readings[name]!));
  const n = rows[0]?.length ?? 0;
  if (rows.some((values) => values.length !== n)) {
    const lengths = rows.map((values) => values.length).join(' and ');
    throw refusal('measuredTogether', 'length', '', 'all readings must be equally many', lengths);
  }
  if (n < 2) throw refusal('measuredTogether', 'length', names.join(', '), 'at least two readings of each', String(n));
  names.forEach((name, i) => {
    const row = rows[i]!.findIndex((value) => Number.isNaN(value));
    if (row < 0) return;
    const mend = 'Leave that row out of all of them.';
    throw refusal(
      'measuredTogether',
      'missing',
      name,
      'complete, so that rows belong together',
      `row ${row} without a value`,
      mend,
    );
  });
  const deviations = rows.map((values) => Math.sqrt(covariance(values, values)));
  const leaves: Leaf[] = [];
  const group: LeafGroup = { label, leaves, correlation: correlations(rows, deviations), degreesOfFreedom: n - 1 };
  const results = names.map((name, i) => {
    const scatter = scatterLeaf(
      means[i]!,
      `${name}, scatter of ${n} readings`,
      deviations[i]! / Math.sqrt(n),
      n - 1,
      group,
    );
    leaves.push(scatter.origin as Leaf);
    return withScatter(means[i]!, scatter, name, deviations[i] === 0 ? [allEqual(name, n)] : []);
  });
  return Object.fromEntries(names.map((name, i) => [name, results[i]])) as TogetherMeans<R>;
}

const siOf = (quantity: Quantity): number => quantity.si;

const rowsOf = (values: Column | readonly Quantity[]): ArrayLike<number> & number[] =>
  isColumn(values) ? Array.from(values.si) : values.map(siOf);

function covariance(a: readonly number[], b: readonly number[]): number {
  const middleA = average(a);
  const middleB = average(b);
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i]! - middleA) * (b[i]! - middleB);
  return sum / (a.length - 1);
}

function correlations(rows: readonly (readonly number[])[], deviations: readonly number[]): number[][] {
  return rows.map((a, i) =>
    rows.map((b, j) => {
      if (i === j) return 1;
      const scale = deviations[i]! * deviations[j]!;
      return scale === 0 ? 0 : covariance(a, b) / scale;
    }),
  );
}

function scatterLeaf(
  of: Quantity,
  label: string,
  standard: number,
  degreesOfFreedom: number,
  group?: LeafGroup,
): Quantity {
  const uncertainty: LeafUncertainty = { standard, degreesOfFreedom, distribution: 't', type: 'A' };
  const leaf: Leaf = { type: 'leaf', role: 'scatter', label, uncertainty, ...(group ? { group } : {}) };
  return quantityOf(differenceKind(of.kind), 0, differenceUnit(of), leaf, NO_NOTES, label);
}

function withScatter<K extends Kind>(
  middle: Quantity<K>,
  scatter: Quantity,
  label: string,
  notes: readonly Note[],
): Quantity<K> {
  const {
    kind,
    si,
    unit,
    origin,
    notes: known,
  } = perform(readingOperation(middle.kind, middle.unit, 'fixed'), [middle, scatter]);
  return quantityOf(kind as K, si, unit, origin, [...known, ...notes], label);
}

function allEqual(label: string, n: number): Note {
  const message = `${label}: all ${n} repeats are equal, so their scatter says nothing; state the resolution as an uncertainty.`;
  return { code: 'no scatter', calculation: 'mean', message };
}

/** A note where one reading stands among the repeats more than once: it would make the scatter look smaller than it is. */
function sameReading(label: string, repeats: readonly Quantity[]): Note[] {
  const first = new Map<Key, number>();
  return repeats.flatMap((repeat, i) => {
    const key = keyOf(repeat);
    const before = first.get(key);
    if (before === undefined) first.set(key, i);
    if (before === undefined) return [];
    const message = `${label}: repeats ${before + 1} and ${i + 1} are one reading; give each once.`;
    return [{ code: 'counted twice', calculation: 'mean', message }];
  });
}

/** A note for each repeat that carries an uncertain input which no other repeat shares. */
function ownErrors(label: string, repeats: readonly Quantity[]): Note[] {
  const inputs = repeats.map((repeat) => uncertainInputs(repeat));
  const counts = new Map<Key, number>();
  for (const keys of inputs) for (const key of keys.keys()) counts.set(key, (counts.get(key) ?? 0) + 1);
  return inputs.flatMap((keys, i) => {
    const own = [...keys].find(([key]) => counts.get(key) === 1);
    if (!own) return [];
    const message = `${label}: repeat ${i + 1} carries an error of its own (${own[1] ?? 'without a label'}), which the scatter holds already; give repeats only what they share.`;
    return [{ code: 'counted twice', calculation: 'mean', message }];
  });
}

function uncertainInputs(repeat: Quantity): Map<Key, string | undefined> {
  const { origin } = repeat;
  if (origin?.type !== 'step') return new Map(origin?.uncertainty ? [[keyOf(repeat), origin.label]] : []);
  const nodes = [...graphOf([repeat]).values()];
  const uncertain = nodes.filter(
    ({ value }) => value.origin?.type === 'leaf' && value.origin.uncertainty !== undefined,
  );
  return new Map(uncertain.map(({ key, label }) => [key, label]));
}
