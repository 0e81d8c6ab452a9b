import { fewestPointsForCrossings, smooth, type Smoothing } from './band-parts.js';
import { noScatter, requireAllFinite, requireSameLength, type Numbers } from './checks.js';
import { StatisticsError } from './errors.js';

/** The pulls of one set-up: their mean curve and what they scatter about it. */
export interface Side {
  readonly count: number;
  readonly degrees: number;
  readonly mean: Float64Array;
  readonly residuals: readonly Float64Array[];
  readonly variance: Float64Array;
  readonly meanVariance: number;
}

/** Mean curve, residuals and variance of the pulls of one side. */
export function side(statistic: string, name: string, grid: Numbers, pulls: readonly Numbers[]): Side {
  const points = grid.length;
  pulls.forEach((pull, i) => {
    requireSameLength(statistic, `${name}[${i}]`, pull.length, points);
    requireAllFinite(statistic, `${name}[${i}]`, pull);
  });
  const count = pulls.length;
  const first = pulls[0]!;
  // Taken from the first pull, so that equal pulls leave residuals of exactly zero.
  const mean = Float64Array.from(
    first,
    (base, j) => base + pulls.reduce((sum, pull) => sum + (pull[j]! - base), 0) / count,
  );
  const residuals = pulls.map((pull) => Float64Array.from(pull, (value, j) => value - mean[j]!));
  const variance = pooledVariance(residuals, count - 1, pulls);
  return { count, degrees: count - 1, mean, residuals, variance, meanVariance: average(variance) };
}

/** Variance at each point from residuals, which are set to zero where the pulls differ by no more than rounding. */
export function pooledVariance(
  residuals: readonly Float64Array[],
  degreesOfFreedom: number,
  pulls: readonly Numbers[],
): Float64Array {
  return Float64Array.from(pulls[0]!, (_, j) => {
    const squares = residuals.reduce((sum, r) => sum + r[j]! ** 2, 0);
    if (Math.sqrt(squares) > roundingOf(pulls.map((pull) => pull[j]!))) return squares / degreesOfFreedom;
    for (const r of residuals) r[j] = 0;
    return 0;
  });
}

/** Standard deviation below this share of that over the grid is none: neighbours at the far end of the window only lend a trace. */
const TRACE = 1e-3;

/**
 * The variance smoothed over the grid. Pulls that happen to be equal at one place borrow the scatter of its neighbours; where those
 * have none either there is nothing to draw a band from.
 */
export function smoothedVariance(
  statistic: string,
  name: string,
  grid: Numbers,
  smoothing: Smoothing,
  variance: Float64Array,
): Float64Array {
  const smoothed = smooth(smoothing, variance);
  const least = TRACE ** 2 * average(variance);
  const bare = smoothed.findIndex((value) => !(value > least));
  if (bare < 0) return smoothed;
  const equal = variance.filter((value) => value === 0).length;
  throw noScatter(
    statistic,
    name,
    'differ from pull to pull along the grid',
    `the same value in every pull at ${equal} of ${grid.length} points, among them ${grid[bare]!}`,
    equal > grid.length / 2 ? undefined : 'Readings in coarse steps do that: give more pulls.',
  );
}

export function requireGrid(statistic: string, grid: Numbers): void {
  if (grid.length === 0) {
    throw new StatisticsError({
      code: 'too-few-points',
      statistic,
      input: 'grid',
      need: `hold at least 1 point (${fewestPointsForCrossings} for a band of its own)`,
      got: '0',
    });
  }
  requireAllFinite(statistic, 'grid', grid);
  for (let j = 1; j < grid.length; j++) {
    if (grid[j]! <= grid[j - 1]!) {
      throw new StatisticsError({
        code: 'not-increasing',
        statistic,
        input: 'grid',
        need: 'increase from point to point',
        got: `${grid[j - 1]!} followed by ${grid[j]!}`,
      });
    }
  }
}

export function scaled(values: Float64Array, by: number): Float64Array {
  return values.map((value) => value * by);
}

export function average(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Scatter no larger than this is the rounding of equal numbers. */
export function roundingOf(values: Numbers): number {
  let largest = 0;
  for (const value of values) largest = Math.max(largest, Math.abs(value));
  return 16 * Number.EPSILON * largest;
}
