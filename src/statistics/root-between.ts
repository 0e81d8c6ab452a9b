import { notConverged } from './errors.js';

type Curve = (x: number) => number;

/** Where a curve changes sign, and what it is there. */
interface Crossing {
  readonly x: number;
  readonly residual: number;
}

/** A root at zero has no digits of its own to be found to: this share of the first bracket is as good. */
const FINEST = 1e-30;

/** Beyond this share of the values at the ends, what is left where the sign changes is a jump and no zero. */
const LARGEST_LEFT = 1e-6;

/**
 * Where a continuous function changes sign between two arguments, to the last digits: for kernels, whose relations may jump by a
 * rounding where two formulas meet.
 *
 * @returns The end of the last bracket with the smaller residual; NaN where the function has one sign at both ends or no value.
 */
export function rootBetween(f: Curve, low: number, high: number): number {
  return crossing(f, low, high, f(low), f(high))?.x ?? NaN;
}

/**
 * The same for an equation of which nothing is known, with its values at the ends at hand: it may jump across zero without an answer.
 *
 * @returns undefined there too, and wherever {@link rootBetween} is NaN.
 */
export function zeroBetween(f: Curve, low: number, high: number, atLow: number, atHigh: number): number | undefined {
  const found = crossing(f, low, high, atLow, atHigh);
  const smooth = LARGEST_LEFT * Math.max(Math.abs(atLow), Math.abs(atHigh));
  return found && Math.abs(found.residual) <= smooth ? found.x : undefined;
}

/**
 * The same for a statistic, whose curves are known to cross.
 *
 * @throws StatisticsError `not-converged` where the ends do not enclose a root.
 */
export function requiredRoot(f: Curve, low: number, high: number, statistic: string): number {
  const root = rootBetween(f, low, high);
  if (Number.isNaN(root)) throw notConverged(statistic, 'bracket', `values ${f(low)} and ${f(high)} at its ends`);
  return root;
}

/** Inverse quadratic interpolation where it is safe, bisection otherwise (Chandrupatla 1997). */
function crossing(f: Curve, low: number, high: number, atLow: number, atHigh: number): Crossing | undefined {
  let [newest, other] = [high, low];
  let [atNewest, atOther] = [atHigh, atLow];
  if (atOther === 0) return { x: other, residual: atOther };
  const finest = FINEST * Math.abs(high - low);
  let t = 0.5;
  while (atNewest !== 0) {
    if (!areOpposite(atNewest, atOther)) return undefined;
    const [best, residual] = Math.abs(atNewest) < Math.abs(atOther) ? [newest, atNewest] : [other, atOther];
    const width = Math.abs(other - newest);
    const resolution = Math.max(Math.abs(best) * Number.EPSILON, finest);
    if (width <= resolution) return { x: best, residual };
    const least = Math.min(0.5, resolution / width);
    const x = newest + Math.min(1 - least, Math.max(least, t)) * (other - newest);
    const atX = f(x);
    const crossed = areOpposite(atX, atNewest);
    const [third, atThird] = crossed ? [other, atOther] : [newest, atNewest];
    if (crossed) [other, atOther] = [newest, atNewest];
    [newest, atNewest] = [x, atX];
    t = step(newest, other, third, atNewest, atOther, atThird);
  }
  return { x: newest, residual: atNewest };
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
