/** A least-squares fit of a few columns. */
export interface ShortFit {
  readonly coefficients: readonly number[];
  readonly sumOfSquares: number;
}

/**
 * Least squares by running sums of products: rows join one by one, so that a fit to every tail of a signal costs one pass. For few columns
 * of like size only, since products halve the digits.
 */
export class ShortSums {
  readonly #width: number;
  readonly #products: Float64Array[];
  readonly #withY: Float64Array;
  #squares = 0;

  constructor(width: number) {
    this.#width = width;
    this.#products = Array.from({ length: width }, () => new Float64Array(width));
    this.#withY = new Float64Array(width);
  }

  /** One more row: its value, and what the columns hold there. */
  add(y: number, columns: readonly Float64Array[], row: number): void {
    for (let p = 0; p < this.#width; p++) {
      const value = columns[p]![row]!;
      for (let q = 0; q <= p; q++) this.#products[p]![q]! += value * columns[q]![row]!;
      this.#withY[p]! += value * y;
    }
    this.#squares += y * y;
  }

  /** The fit to the rows that have joined; undefined where they do not settle it. */
  fit(): ShortFit | undefined {
    const width = this.#width;
    const left = this.#products.map((row) => Float64Array.from(row));
    const right = Float64Array.from(this.#withY);
    // Cholesky's factors, in place.
    for (let p = 0; p < width; p++) {
      for (let q = 0; q <= p; q++) {
        let sum = left[p]![q]!;
        for (let k = 0; k < q; k++) sum -= left[p]![k]! * left[q]![k]!;
        if (p === q) {
          if (!(sum > 1e-12 * this.#products[p]![p]!)) return undefined;
          left[p]![p] = Math.sqrt(sum);
        } else left[p]![q] = sum / left[q]![q]!;
      }
    }
    for (let p = 0; p < width; p++) {
      for (let k = 0; k < p; k++) right[p]! -= left[p]![k]! * right[k]!;
      right[p]! /= left[p]![p]!;
    }
    const explained = right.reduce((sum, each) => sum + each * each, 0);
    for (let p = width - 1; p >= 0; p--) {
      for (let k = p + 1; k < width; k++) right[p]! -= left[k]![p]! * right[k]!;
      right[p]! /= left[p]![p]!;
    }
    return { coefficients: Array.from(right), sumOfSquares: Math.max(0, this.#squares - explained) };
  }
}

/** The fit of some columns to the rows from one on. */
export function shortFit(columns: readonly Float64Array[], y: Float64Array, from: number): ShortFit | undefined {
  const sums = new ShortSums(columns.length);
  for (let row = from; row < y.length; row++) sums.add(y[row]!, columns, row);
  return sums.fit();
}
