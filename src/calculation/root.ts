/** Where a function crosses zero, and what it is there. */
export interface Root {
  readonly x: number;
  readonly residual: number;
}

const EPSILON = 2 ** -52;

/**
 * A zero of a function between two points where it has opposite signs, to the last digits: R. P. Brent, Algorithms for minimization
 * without derivatives (1973), chapter 4.
 *
 * @returns undefined where it does not settle, or where the function jumps across zero instead of passing through it.
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  fLow: number,
  fHigh: number,
): Root | undefined {
  let [a, fa, b, fb] = [low, fLow, high, fHigh];
  let [c, fc] = [a, fa];
  let step = b - a;
  let before = step;
  const least = 1e-18 * Math.abs(high - low);
  const smooth = 1e-6 * Math.max(Math.abs(fLow), Math.abs(fHigh));
  for (let i = 0; i < 500; i++) {
    if (Math.abs(fc) < Math.abs(fb)) [a, fa, b, fb, c, fc] = [b, fb, c, fc, b, fb];
    const tolerance = EPSILON * Math.abs(b) + least;
    const half = (c - b) / 2;
    if (fb === 0 || Math.abs(half) <= tolerance) return Math.abs(fb) <= smooth ? { x: b, residual: fb } : undefined;
    let isBisection = Math.abs(before) < tolerance || Math.abs(fa) <= Math.abs(fb);
    if (!isBisection) {
      const { p, q } = interpolate(a, fa, b, fb, c, fc, half);
      isBisection = !(2 * p < Math.min(3 * half * q - Math.abs(tolerance * q), Math.abs(before * q)));
      if (!isBisection) {
        before = step;
        step = p / q;
      }
    }
    if (isBisection) step = before = half;
    [a, fa] = [b, fb];
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fb = f(b);
    if (fb > 0 === fc > 0) {
      [c, fc] = [a, fa];
      step = before = b - a;
    }
  }
  return undefined;
}

/** The next step as a fraction p/q with p not negative: inverse quadratic through three points, or the secant through two. */
function interpolate(
  a: number,
  fa: number,
  b: number,
  fb: number,
  c: number,
  fc: number,
  half: number,
): { p: number; q: number } {
  const s = fb / fa;
  let p: number;
  let q: number;
  if (a === c) {
    p = 2 * half * s;
    q = 1 - s;
  } else {
    const t = fa / fc;
    const r = fb / fc;
    p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
    q = (t - 1) * (r - 1) * (s - 1);
  }
  return p > 0 ? { p, q: -q } : { p: -p, q };
}
