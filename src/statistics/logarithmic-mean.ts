/**
 * Logarithmic mean of two positive numbers, (b - a)/ln(b/a): what turns a change of logarithm into a change of the number itself.
 *
 * Written with the geometric mean, so that it keeps its digits however near or far apart the two are.
 *
 * @returns The mean, between the geometric and the arithmetic one; the number itself where both are equal. NaN unless both are above
 * zero.
 * @example
 * logarithmicMean(160, 164) //=> 161.992
 */
export function logarithmicMean(a: number, b: number): number {
  const half = Math.log(b / a) / 2;
  return half === 0 ? a : Math.sqrt(a) * Math.sqrt(b) * (Math.sinh(half) / half);
}
