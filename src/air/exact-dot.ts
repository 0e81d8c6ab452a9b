/** Splits a double into two halves whose products are exact (Dekker 1971). */
const SPLITTER = 2 ** 27 + 1;

/**
 * Sum of products as if computed with twice the digits and rounded once (T. Ogita, S. M. Rump, S. Oishi, SIAM J. Sci. Comput. 26 (2005)
 * 1955). A second list with one value holds for every term.
 */
export function exactDot(a: readonly number[], b: readonly number[]): number {
  let [sum, rest] = [0, 0];
  a.forEach((x, i) => {
    const y = b.length === 1 ? b[0]! : b[i]!;
    const product = x * y;
    const next = sum + product;
    const added = next - sum;
    rest += sum - (next - added) + (product - added) + errorOf(x, y, product);
    sum = next;
  });
  return sum + rest;
}

function errorOf(x: number, y: number, product: number): number {
  const [xHigh, xLow] = halves(x);
  const [yHigh, yLow] = halves(y);
  return xLow * yLow - (product - xHigh * yHigh - xLow * yHigh - xHigh * yLow);
}

function halves(x: number): [high: number, low: number] {
  const scaled = SPLITTER * x;
  const high = scaled - (scaled - x);
  return [high, x - high];
}
