/**
 * Solves a small square system by elimination with scaled row pivoting.
 *
 * @returns undefined where the matrix is singular, to rounding.
 */
export function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | undefined {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const scales = matrix.map((row) => row.reduce((most, value) => Math.max(most, Math.abs(value)), 0));
  for (let column = 0; column < n; column++) {
    let best = column;
    for (let r = column + 1; r < n; r++) {
      if (Math.abs(rows[r]![column]!) * scales[best]! > Math.abs(rows[best]![column]!) * scales[r]!) best = r;
    }
    const size = Math.abs(rows[best]![column]!);
    if (!(size > 1e-13 * scales[best]!)) return undefined;
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    [scales[column], scales[best]] = [scales[best]!, scales[column]!];
    const pivot = rows[column]!;
    for (let r = column + 1; r < n; r++) {
      const row = rows[r]!;
      const factor = row[column]! / pivot[column]!;
      if (factor === 0) continue;
      for (let c = column; c <= n; c++) row[c] = row[c]! - factor * pivot[c]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    let sum = rows[r]![n]!;
    for (let c = r + 1; c < n; c++) sum -= rows[r]![c]! * x[c]!;
    x[r] = sum / rows[r]![r]!;
  }
  return x;
}

/** A pivot this small of a matrix with ones in its diagonal is rounding. */
const LEFT_BY_ROUNDING = 1e-12;

/**
 * The lower triangle L of a correlation matrix L L', row by row (Cholesky). Quantities in full correlation, or more of them than readings,
 * leave a matrix that is singular to rounding; what is left of a pivot then is zero.
 *
 * @returns The rows, each as long as its place. Only for a matrix that can be one of correlations is L L' that matrix.
 */
export function triangleOf(matrix: readonly (readonly number[])[]): number[][] {
  const rows: number[][] = [];
  matrix.forEach((row, i) => {
    const here: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j === i ? here : rows[j]!;
      let rest = row[j]!;
      for (let k = 0; k < j; k++) rest -= here[k]! * other[k]!;
      if (j === i) here.push(rest > LEFT_BY_ROUNDING ? Math.sqrt(rest) : 0);
      else here.push(other[j] === 0 ? 0 : rest / other[j]!);
    }
    rows.push(here);
  });
  return rows;
}

/** Whether a symmetric matrix with ones in its diagonal can be one of correlations: no sum of the quantities has a negative variance. */
export function isCorrelation(matrix: readonly (readonly number[])[]): boolean {
  const triangle = triangleOf(matrix);
  return matrix.every((row, i) =>
    row.every((value, j) => {
      const [short, long] = i < j ? [triangle[i]!, triangle[j]!] : [triangle[j]!, triangle[i]!];
      const product = short.reduce((sum, weight, k) => sum + weight * long[k]!, 0);
      return Math.abs(product - value) <= 1e-6;
    }),
  );
}
