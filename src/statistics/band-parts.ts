import type { Numbers } from './checks.js';
import { requiredRoot } from './root-between.js';
import { studentTFactor, studentTTwoSided } from './student-t.js';

/** Below this many grid points the crossings of a band say too little, and each point pays its own share instead. */
export const fewestPointsForCrossings = 8;

/** How a simultaneous factor was found. */
export type BandMethod = 'expected crossings' | 'Bonferroni over points';

/** One standard error along the grid, with the factor that makes it a simultaneous band. */
export interface BandLevel {
  /** Standard error of the difference at each grid point. */
  readonly standardError: Float64Array;
  readonly degreesOfFreedom: number;
  /** L: length of the path of normalised residuals along the grid, in radians. */
  readonly roughness: number;
  /** p: two-sided tail of Student t at the simultaneous factor. */
  readonly tailProbability: number;
  /** k: simultaneous half-width over standard error. */
  readonly factor: number;
  readonly method: BandMethod;
}

/** Weighted means over neighbouring points, as rows of a matrix; the identity where the window is 0. */
export type Smoothing = readonly Float64Array[] | undefined;

/** Gaussian weights over the grid, the window being a share of its range. */
export function gaussianSmoothing(grid: Numbers, window: number): Smoothing {
  const points = grid.length;
  if (window === 0 || points === 1) return undefined;
  const scale = window * (grid[points - 1]! - grid[0]!);
  return Array.from(grid, (centre) => {
    const row = Float64Array.from(grid, (x) => Math.exp(-0.5 * ((centre - x) / scale) ** 2));
    const total = row.reduce((sum, weight) => sum + weight, 0);
    return row.map((weight) => weight / total);
  });
}

export function smooth(smoothing: Smoothing, values: Float64Array): Float64Array {
  if (smoothing === undefined) return values;
  return Float64Array.from(smoothing, (row) => {
    let total = 0;
    for (let i = 0; i < row.length; i++) total += row[i]! * values[i]!;
    return total;
  });
}

/**
 * How many times the degrees of freedom of one point the smoothed scatter has, from the standardised residuals of
 * every pull (Satterthwaite's matching of mean and variance, with the unbiased estimate of the squared correlation).
 *
 * The sum over pairs of points of the squared correlation is taken pull by pull: with the few pulls of a test that
 * is far cheaper than the matrix of all points.
 */
export function smoothingGain(
  smoothing: Smoothing,
  standardised: readonly Float64Array[],
  degreesOfFreedom: number,
): number {
  if (smoothing === undefined) return 1;
  const f = degreesOfFreedom;
  let numerators = 0;
  let denominators = 0;
  for (const row of smoothing) {
    let trace = 0;
    let squares = 0;
    for (let p = 0; p < standardised.length; p++) {
      for (let q = 0; q <= p; q++) {
        const product = weightedProduct(row, standardised[p]!, standardised[q]!) / f;
        if (p === q) trace += product;
        squares += (p === q ? 1 : 2) * product * product;
      }
    }
    const denominator = ((f * f) / ((f - 1) * (f + 2))) * (squares - (trace * trace) / f);
    denominators += denominator;
    numerators += trace * trace - (2 * denominator) / f;
  }
  const most = 50;
  return denominators > 0 ? Math.min(most, Math.max(1, numerators / denominators)) : most;
}

function weightedProduct(weights: Float64Array, a: Float64Array, b: Float64Array): number {
  let total = 0;
  for (let i = 0; i < weights.length; i++) total += weights[i]! * a[i]! * b[i]!;
  return total;
}

/** Length along the grid of the path that the coordinates, scaled to unit length at each point, draw on a sphere. */
export function pathLength(coordinates: readonly Float64Array[], points: number): number {
  let length = 0;
  let here: number[] | undefined;
  for (let j = 0; j < points; j++) {
    const values = coordinates.map((coordinate) => coordinate[j]!);
    const size = Math.hypot(...values);
    // A point without any scatter has no direction; the path goes straight on to the next.
    if (size === 0) continue;
    const next = values.map((value) => value / size);
    const chord = here === undefined ? 0 : Math.hypot(...next.map((value, i) => value - here![i]!));
    // The arc from its chord: an arccosine of the inner product would lose half the digits.
    length += 2 * Math.asin(Math.min(1, chord / 2));
    here = next;
  }
  return length;
}

/**
 * Simultaneous factor of a t field: chance of leaving the band at its start plus the expected crossings
 * (Worsley 1994, each point with its own denominator) equal `error`, and never beyond Bonferroni over the points.
 */
export function simultaneousFactor(
  error: number,
  points: number,
  degreesOfFreedom: number,
  roughness: number,
): Pick<BandLevel, 'tailProbability' | 'factor' | 'method'> {
  const nu = degreesOfFreedom;
  const bonferroni = {
    tailProbability: error / points,
    factor: studentTFactor(error / points, nu),
    method: 'Bonferroni over points',
  } as const;
  if (points < fewestPointsForCrossings) return bonferroni;
  const crossings = (t: number): number => (roughness / Math.PI) * Math.exp(-0.5 * (nu - 1) * Math.log1p((t * t) / nu));
  const excess = (t: number): number => studentTTwoSided(t, nu).beyond + crossings(t) - error;
  if (excess(bonferroni.factor) > 0) return bonferroni;
  const pointwise = studentTFactor(error, nu);
  const factor = roughness === 0 ? pointwise : requiredRoot(excess, pointwise, bonferroni.factor, 'difference band');
  return {
    tailProbability: studentTTwoSided(factor, nu).beyond,
    factor,
    method: 'expected crossings',
  };
}
