import { requireAllFinite, type Numbers } from './checks.js';
import { StatisticsError } from './errors.js';

/** Sum with the rounding errors carried along (Neumaier's compensated summation). */
export function sum(values: Numbers): number {
  let total = 0;
  let lost = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  return total + lost;
}

/** Mean of finite numbers; the mean of equal numbers is that number exactly. */
export function mean(values: Numbers): number {
  if (values.length === 0) {
    throw new StatisticsError({
      code: 'too-few-points',
      statistic: 'mean',
      input: 'values',
      need: 'hold at least 1 value',
      got: '0',
    });
  }
  requireAllFinite('mean', 'values', values);
  const first = values[0]!;
  return first + sum(deviations(values, first)) / values.length;
}

/** Sum of squared deviations from the mean, in two passes, with the rounding of the mean itself taken out again. */
export function sumOfSquaredDeviations(values: Numbers): number {
  const apart = deviations(values, mean(values));
  const rest = sum(apart);
  return Math.max(0, sum(apart.map((d) => d * d)) - (rest * rest) / apart.length);
}

/** Sample variance, with n - 1 below. */
export function variance(values: Numbers): number {
  if (values.length < 2) {
    throw new StatisticsError({
      code: 'too-few-points',
      statistic: 'variance',
      input: 'values',
      need: 'hold at least 2 values',
      got: String(values.length),
    });
  }
  return sumOfSquaredDeviations(values) / (values.length - 1);
}

/** Sample standard deviation, with n - 1 below. */
export function standardDeviation(values: Numbers): number {
  return Math.sqrt(variance(values));
}

/** One side of a scalar comparison. */
export interface Summary {
  readonly count: number;
  readonly mean: number;
  readonly standardDeviation: number;
}

/** Count, mean and sample standard deviation of at least two numbers. */
export function summarise(values: Numbers): Summary {
  return { count: values.length, mean: mean(values), standardDeviation: standardDeviation(values) };
}

function deviations(values: Numbers, from: number): Float64Array {
  return Float64Array.from(values, (value) => value - from);
}
