import type { Specification } from '../calculation/index.js';
import { perform } from '../units/internal.js';
import { absolute, add, gauge, isQuantity, ratioOf, scale, subtract, type Quantity } from '../units/index.js';

/** A calculation as the path calls it: inputs in their order. */
export interface Runnable {
  kernel(...si: number[]): number;
  readonly spec: Specification;
}

/**
 * How the path is walked: on bare SI numbers, to solve it fast, or on quantities, so that every result remembers how it was made. The
 * path itself is written once.
 */
export interface Way<V> {
  /** Whether this way only searches: then maps are read beyond their edges too. */
  readonly isSearch: boolean;
  /** Inputs in the order of the definition; those left out at the end take their assumed values. */
  run(calculation: Runnable, ...inputs: V[]): V;
  add(a: V, b: V): V;
  subtract(a: V, b: V): V;
  ratioOf(over: V, under: V): V;
  /** A value times a ratio. */
  scale(value: V, ratio: V): V;
  /** An absolute pressure from a gauge pressure and the barometer. */
  absolute(gauge: V, barometer: V): V;
  /** A gauge pressure from an absolute pressure and the barometer. */
  gauge(absolute: V, barometer: V): V;
}

export const onNumbers: Way<number> = {
  isSearch: true,
  run(calculation, ...si) {
    const { inputs } = calculation.spec;
    for (let i = si.length; i < inputs.length; i++) si.push(inputs[i]!.assume!.si);
    return calculation.kernel(...si);
  },
  add: (a, b) => a + b,
  subtract: (a, b) => a - b,
  ratioOf: (over, under) => over / under,
  scale: (value, ratio) => value * ratio,
  absolute: (gauge, barometer) => gauge + barometer,
  gauge: (absolute, barometer) => absolute - barometer,
};

export const onQuantities: Way<Quantity> = {
  isSearch: false,
  run({ spec }, ...given) {
    for (let i = given.length; i < spec.inputs.length; i++) given.push(spec.inputs[i]!.assume!);
    return perform(spec, given);
  },
  add: (a, b) => add(a, b),
  subtract: (a, b) => subtract(a, b),
  ratioOf: (over, under) => ratioOf(over, under),
  scale: (value, ratio) => scale(value, ratio as Quantity<'ratio'>),
  absolute: (gauge, barometer) =>
    absolute(gauge as Quantity<'gauge pressure'>, barometer as Quantity<'absolute pressure'>),
  gauge: (pressure, barometer) =>
    gauge(pressure as Quantity<'absolute pressure'>, barometer as Quantity<'absolute pressure'>),
};

/** The same data with every quantity as another sort of value. */
export type Over<T, V> = T extends Quantity
  ? V
  : T extends Runnable | ((...inputs: never[]) => unknown)
    ? T
    : T extends object
      ? { readonly [K in keyof T]: Over<T[K], V> }
      : T;

/** Plain data with every quantity replaced by its SI number. */
export function numbersOf<T>(data: T): Over<T, number> {
  if (isQuantity(data)) return data.si as Over<T, number>;
  if (typeof data !== 'object' || data === null) return data as Over<T, number>;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, numbersOf<unknown>(value)])) as Over<
    T,
    number
  >;
}
