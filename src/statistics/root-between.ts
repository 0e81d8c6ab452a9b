/**
 * Where a continuous function changes sign between two arguments, to the last digits: inverse quadratic interpolation where it is
 * safe, bisection otherwise (Chandrupatla 1997).
 *
 * @returns The end of the last bracket with the smaller residual; NaN where the function has one sign at both ends or no value.
 */
export function rootBetween(f: (x: number) => number, low: number, high: number): number {
  let [newest, other] = [high, low];
  let [atNewest, atOther] = [f(newest), f(other)];
  if (atOther === 0) return other;
  let t = 0.5;
  while (atNewest !== 0) {
    if (!areOpposite(atNewest, atOther)) return NaN;
    const best = Math.abs(atNewest) < Math.abs(atOther) ? newest : other;
    const width = Math.abs(other - newest);
    const resolution = Math.abs(best) * Number.EPSILON;
    if (width <= resolution) return best;
    const least = Math.min(0.5, resolution / width);
    const x = newest + Math.min(1 - least, Math.max(least, t)) * (other - newest);
    const atX = f(x);
    const crossed = areOpposite(atX, atNewest);
    const [third, atThird] = crossed ? [other, atOther] : [newest, atNewest];
    if (crossed) [other, atOther] = [newest, atNewest];
    [newest, atNewest] = [x, atX];
    t = step(newest, other, third, atNewest, atOther, atThird);
  }
  return newest;
}

/** By sign and not by product, which of two tiny values is zero. */
function areOpposite(a: number, b: number): boolean {
  return (a < 0 && b > 0) || (a > 0 && b < 0);
}

/** The fraction of the bracket to go from its newest end. */
function step(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  if (!(phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi)) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}
