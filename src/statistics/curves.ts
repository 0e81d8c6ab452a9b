import { fewestPointsForCrossings } from './band-parts.js';
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
  const variance = pooledVariance(statistic, name, grid, residuals, count - 1, pulls);
  return { count, degrees: count - 1, mean, residuals, variance, meanVariance: average(variance) };
}

/** Variance at each point from residuals, refused where the pulls differ by no more than rounding. */
export function pooledVariance(
  statistic: string,
  name: string,
  grid: Numbers,
  residuals: readonly Float64Array[],
  degreesOfFreedom: number,
  pulls: readonly Numbers[],
): Float64Array {
  return Float64Array.from(grid, (position, j) => {
    const squares = residuals.reduce((sum, r) => sum + r[j]! ** 2, 0);
    if (Math.sqrt(squares) <= roundingOf(pulls.map((pull) => pull[j]!))) {
      throw noScatter(
        statistic,
        name,
        'differ from pull to pull at every grid point',
        `the same value in every pull at ${position}`,
      );
    }
    return squares / degreesOfFreedom;
  });
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
