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
