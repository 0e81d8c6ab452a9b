/** Halving alone needs about 1100 from the largest double to the smallest; a function of this library, about ten. */
const MOST_STEPS = 1100;

/**
 * Where a rising function passes zero between two bounds, to the last digits: inverse quadratic steps where they are sure to stay
 * inside, halving elsewhere (T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145). NaN if the bounds do not enclose one.
 */
export function bracketedRoot(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [high, low];
  let [fa, fb] = [f(high), f(low)];
  if (!(fa >= 0 && fb <= 0)) return NaN;
  if (fa === 0) return high;
  if (fb === 0) return low;
  let c: number;
  let fc: number;
  let step = 0.5;
  for (let steps = 0; steps < MOST_STEPS; steps++) {
    const x = a + step * (b - a);
    const fx = f(x);
    if (fx > 0 === fa > 0) [c, fc] = [a, fa];
    else [c, fc, b, fb] = [b, fb, a, fa];
    [a, fa] = [x, fx];
    const nearest = Math.abs(fa) < Math.abs(fb) ? a : b;
    const smallest = (Number.EPSILON * Math.abs(nearest) + Number.MIN_VALUE) / Math.abs(b - a);
    if (smallest > 0.5 || fa === 0 || fb === 0) return nearest;
    const along = (a - b) / (c - b);
    const fall = (fa - fb) / (fc - fb);
    const isSure = fall * fall < along && (1 - fall) * (1 - fall) < 1 - along;
    step = isSure
      ? (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
      : 0.5;
    step = Math.min(1 - smallest, Math.max(smallest, step));
  }
  return NaN;
}
