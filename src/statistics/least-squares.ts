import { StatisticsError } from './errors.js';
import { requireAllFinite, requireSameLength, type Numbers } from './checks.js';

/** One response fitted on a design. */
export interface Fit {
  readonly coefficients: readonly number[];
  readonly residuals: Float64Array;
  readonly residualSumOfSquares: number;
}

/** A linear model ready to be fitted to any number of responses. */
export interface LinearModel {
  readonly degreesOfFreedom: number;
  /** Variance of each coefficient in units of the variance of one response: the diagonal of (X'X)^-1. */
  readonly varianceFactors: readonly number[];
  /** Fits one response. */
  readonly fit: (response: Numbers) => Fit;
}

/**
 * Linear model by its columns, made orthogonal one after the other (modified Gram-Schmidt; with the responses treated
 * like one more column it is as steady as a Householder factoring, Björck 1967).
 *
 * @throws StatisticsError `confounded` if one column is a combination of those before it.
 */
export function linearModel(statistic: string, columns: readonly Numbers[], names: readonly string[]): LinearModel {
  const rows = columns[0]!.length;
  const size = columns.length;
  const basis: Float64Array[] = [];
  // Upper triangle R of X = Q R, column by column.
  const triangle: number[][] = [];
  columns.forEach((column, j) => {
    const rest = Float64Array.from(column);
    const scale = Math.sqrt(dot(rest, rest));
    const above = takeOff(rest, basis);
    const length = Math.sqrt(dot(rest, rest));
    if (!(length > 1e-10 * scale)) {
      throw new StatisticsError({
        code: 'confounded',
        statistic,
        input: names[j]!,
        need: `tell apart from ${names.slice(0, j).join(', ') || 'nothing'}`,
        got: 'an order in which it cannot be told apart',
        mend: 'Alternate the set-ups, for example ABBA.',
      });
    }
    basis.push(rest.map((value) => value / length));
    triangle.push([...above, length]);
  });
  const inverse = inverseOfTriangle(triangle);
  return {
    degreesOfFreedom: rows - size,
    varianceFactors: inverse.map((row) => row.reduce((sum, value) => sum + value * value, 0)),
    fit(response) {
      requireSameLength(statistic, 'values', response.length, rows);
      requireAllFinite(statistic, 'values', response);
      const residuals = Float64Array.from(response);
      const onBasis = takeOff(residuals, basis);
      return {
        coefficients: inverse.map((row) => row.reduce((sum, value, i) => sum + value * onBasis[i]!, 0)),
        residuals,
        residualSumOfSquares: dot(residuals, residuals),
      };
    },
  };
}

/** Rows of the inverse of an upper triangle given by its columns. */
function inverseOfTriangle(columns: readonly number[][]): number[][] {
  const size = columns.length;
  const inverse = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let j = 0; j < size; j++) {
    inverse[j]![j] = 1 / columns[j]![j]!;
    for (let i = j - 1; i >= 0; i--) {
      let total = 0;
      for (let k = i + 1; k <= j; k++) total += columns[k]![i]! * inverse[k]![j]!;
      inverse[i]![j] = -total / columns[i]![i]!;
    }
  }
  return inverse;
}

function dot(a: Float64Array, b: Float64Array): number {
  let total = 0;
  for (let i = 0; i < a.length; i++) total += a[i]! * b[i]!;
  return total;
}

/** Takes the parts along each basis vector off a vector, in place, and returns them. */
function takeOff(vector: Float64Array, basis: readonly Float64Array[]): number[] {
  return basis.map((q) => {
    const part = dot(q, vector);
    for (let i = 0; i < vector.length; i++) vector[i]! -= part * q[i]!;
    return part;
  });
}
