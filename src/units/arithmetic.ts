import { CalculationError } from './errors.js';
import { differenceKind, kindOf, withArticle, type DifferenceOf, type Kind, type Same } from './kinds.js';
import { perform } from './operation.js';
import type { Operation, Quantity } from './origin.js';
import { describe, isQuantity, quantity } from './quantity.js';

const made = new Map<string, Operation>();

/** The same operation of the same kinds is one object, so that graphs can tell repeated steps. */
function once(key: string, make: () => Operation): Operation {
  let operation = made.get(key);
  if (!operation) made.set(key, (operation = make()));
  return operation;
}

function binary(
  name: string,
  formula: string,
  kinds: readonly [Kind, Kind, Kind],
  units: string,
  kernel: (a: number, b: number) => number,
): Operation {
  return once([name, ...kinds, units].join('|'), () => ({
    name,
    inputs: [
      { name: 'first', symbol: 'a', kind: kinds[0], min: -Infinity, max: Infinity },
      { name: 'second', symbol: 'b', kind: kinds[1], min: -Infinity, max: Infinity },
    ],
    output: { symbol: 'y', kind: kinds[2], unit: units },
    formula,
    kernel,
    rules: minimumRule(kinds[2], kernel),
    sources: [],
  }));
}

/** A pressure below vacuum or a temperature below zero cannot come out of arithmetic either. */
function minimumRule(kind: Kind, kernel: (a: number, b: number) => number): Operation['rules'] {
  const minimum = kindOf(kind).minimum;
  if (minimum === undefined) return [];
  return [
    { need: `the result must not be below zero, being ${withArticle(kind)}`, holds: (a, b) => kernel(a, b) >= minimum },
  ];
}

const isPoint = (kind: Kind): boolean => kindOf(kind).difference !== undefined;

function refuse(what: string, a: unknown, b: unknown, mend: string): never {
  throw new CalculationError(what, [
    {
      code: 'kind',
      input: '',
      need: 'the two quantities must go together',
      got: `${describe(a)} and ${describe(b)}`,
      mend,
    },
  ]);
}

/** Adds two quantities of a kind, or a difference to a temperature or pressure. Two points on a scale cannot be added. */
export function add<K extends 'temperature' | 'absolute pressure' | 'gauge pressure' | 'sea-level pressure'>(
  point: Quantity<K>,
  difference: Quantity<DifferenceOf<Same<K>>>,
): Quantity<K>;
export function add<K extends Kind>(a: Quantity<K>, b: Quantity<Same<K>>): Quantity<K>;
export function add(a: Quantity, b: Quantity): Quantity {
  if (!isQuantity(a) || !isQuantity(b)) return refuse('add', a, b, 'Both must be quantities.');
  const fits = isPoint(a.kind) ? b.kind === differenceKind(a.kind) : b.kind === a.kind;
  if (!fits) return refuse('add', a, b, isPoint(a.kind) ? `Add ${withArticle(differenceKind(a.kind))} to it.` : '');
  return perform(
    binary('sum', 'a + b', [a.kind, b.kind, a.kind], a.unit, (x, y) => x + y),
    [a, b],
  );
}

/** Subtracts two quantities of a kind; two temperatures leave a temperature difference, two pressures a pressure difference. */
export function subtract<K extends Kind>(a: Quantity<K>, b: Quantity<Same<K>>): Quantity<DifferenceOf<K>>;
export function subtract<K extends 'temperature' | 'absolute pressure' | 'gauge pressure' | 'sea-level pressure'>(
  point: Quantity<K>,
  difference: Quantity<DifferenceOf<Same<K>>>,
): Quantity<K>;
export function subtract(a: Quantity, b: Quantity): Quantity {
  if (!isQuantity(a) || !isQuantity(b)) return refuse('subtract', a, b, 'Both must be quantities.');
  const result = b.kind === a.kind ? differenceKind(a.kind) : b.kind === differenceKind(a.kind) ? a.kind : undefined;
  if (result === undefined) return refuse('subtract', a, b, '');
  return perform(
    binary('difference', 'a - b', [a.kind, b.kind, result], differenceUnit(a), (x, y) => x - y),
    [a, b],
  );
}

/** The unit that a difference of such values shows in. */
export const differenceUnit = (a: { readonly kind: Kind; readonly unit: string }): string =>
  a.kind === 'temperature' && a.unit === '°C' ? 'K' : a.unit;

/** Multiplies by a plain number or a ratio. A point on a scale with an arbitrary zero cannot be scaled. */
export function scale<K extends Kind>(a: Quantity<K>, factor: number | Quantity<'ratio'>): Quantity<K> {
  const by = typeof factor === 'number' ? quantity('ratio', factor, '1') : factor;
  if (!isQuantity(a) || !isQuantity(by) || by.kind !== 'ratio')
    return refuse('scale', a, factor, 'Scale by a number or a ratio.');
  if (a.kind === 'temperature' || a.kind === 'gauge pressure') {
    return refuse('scale', a, factor, `${withArticle(a.kind)} has an arbitrary zero, so twice of it means nothing.`);
  }
  return perform(
    binary('product', 'a * b', [a.kind, 'ratio', a.kind], a.unit, (x, y) => x * y),
    [a, by],
  ) as Quantity<K>;
}

/** One quantity over another of its kind. Gauge pressures are refused: pressure ratios need absolute ones. */
export function ratioOf<K extends Kind>(over: Quantity<K>, under: Quantity<Same<K>>): Quantity<'ratio'>;
export function ratioOf(over: Quantity, under: Quantity): Quantity<'ratio'> {
  if (!isQuantity(over) || !isQuantity(under)) return refuse('ratioOf', over, under, 'Both must be quantities.');
  if (over.kind === 'gauge pressure' || under.kind === 'gauge pressure') {
    return refuse('ratioOf', over, under, 'A pressure ratio needs absolute pressures: use absolute(gauge, barometer).');
  }
  if (over.kind !== under.kind) return refuse('ratioOf', over, under, 'They must be of one kind.');
  const name = over.kind === 'absolute pressure' ? 'pressure ratio' : `ratio of two values of ${over.kind}`;
  const operation = binary(name, 'a / b', [over.kind, over.kind, 'ratio'], '1', (x, y) => x / y);
  return perform(operation, [over, under]) as Quantity<'ratio'>;
}

/** Negative, zero or positive as the first is smaller, equal or larger: for sorting and for `if`. */
export function compareValues<K extends Kind>(a: Quantity<K>, b: Quantity<Same<K>>): number;
export function compareValues(a: Quantity, b: Quantity): number {
  if (!isQuantity(a) || !isQuantity(b) || a.kind !== b.kind)
    return refuse('compareValues', a, b, 'They must be of one kind.');
  return a.si - b.si;
}

/** Whether two quantities have one kind and one value; how they were made and what they show in does not matter. */
export function sameQuantity(a: Quantity, b: Quantity): boolean {
  if (!isQuantity(a) || !isQuantity(b)) return refuse('sameQuantity', a, b, 'Both must be quantities.');
  return a.kind === b.kind && a.si === b.si;
}

const absoluteOperation: Operation & { readonly output: { readonly kind: 'absolute pressure' } } = {
  name: 'absolute pressure',
  inputs: [
    { name: 'gauge', symbol: 'pg', kind: 'gauge pressure', min: -2e5, max: 2e7, typical: 1e5 },
    { name: 'barometer', symbol: 'pb', kind: 'absolute pressure', min: 3e4, max: 1.2e5, typical: 94000 },
  ],
  output: { symbol: 'p', kind: 'absolute pressure', unit: 'kPa' },
  formula: 'pg + pb',
  kernel: (pg, pb) => pg + pb,
  rules: [{ need: 'an absolute pressure must not be below vacuum', holds: (pg, pb) => pg + pb >= 0 }],
  sources: [],
};

/**
 * A gauge pressure as an absolute one: the barometer at the place, not reduced to sea level, is added.
 *
 * @throws CalculationError if the barometer is not an absolute pressure between 30 and 120 kPa, or the result lies below vacuum.
 */
export function absolute(
  gauge: Quantity<'gauge pressure'>,
  barometer: Quantity<'absolute pressure'>,
): Quantity<'absolute pressure'> {
  return perform(absoluteOperation, [gauge, barometer]);
}

const gaugeOperation: Operation & { readonly output: { readonly kind: 'gauge pressure' } } = {
  name: 'gauge pressure',
  inputs: [
    { name: 'absolute', symbol: 'p', kind: 'absolute pressure', min: 0, max: 2e7, typical: 2e5 },
    { name: 'barometer', symbol: 'pb', kind: 'absolute pressure', min: 3e4, max: 1.2e5, typical: 94000 },
  ],
  output: { symbol: 'pg', kind: 'gauge pressure', unit: 'kPa' },
  formula: 'p - pb',
  kernel: (p, pb) => p - pb,
  rules: [],
  sources: [],
};

/** An absolute pressure as a gauge one: the barometer at the place is taken off. */
export function gauge(
  absolute: Quantity<'absolute pressure'>,
  barometer: Quantity<'absolute pressure'>,
): Quantity<'gauge pressure'> {
  return perform(gaugeOperation, [absolute, barometer]);
}
