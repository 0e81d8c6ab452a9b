import { zeroBetween } from '../../statistics/root-between.js';

/** Points on the very edge of a map must not fall off it by rounding. */
export const SLACK = 1e-9;

/** Where a rising function passes zero; the end that is nearer to it where rounding left no change of sign, NaN where none is near. */
export function rootOf(f: (x: number) => number, low: number, high: number): number {
  const [atLow, atHigh] = [f(low), f(high)];
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  if (atLow < 0 === atHigh < 0) {
    const [x, nearest] = Math.abs(atLow) < Math.abs(atHigh) ? [low, atLow] : [high, atHigh];
    return Math.abs(nearest) <= SLACK ? x : NaN;
  }
  return zeroBetween(f, low, high, atLow, atHigh) ?? NaN;
}
