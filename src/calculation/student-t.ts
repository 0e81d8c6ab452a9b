import { CalculationError } from '../units/errors.js';

/** From here on four terms of the expansion about the normal law are exact to rounding, and the continued fraction is slow. */
const NEARLY_NORMAL = 1e4;

/**
 * The number of standard uncertainties on either side that holds a share `level` of Student's t distribution.
 *
 * @param level - between 0 and 1, both excluded: 0.95 for 95 %.
 * @param degreesOfFreedom - any positive number, not only whole ones; Infinity gives the normal factor.
 * @throws CalculationError if an argument is outside its range.
 * @example
 * coverageFactorOf(0.95, 4) //=> 2.776445105197793
 */
export function coverageFactorOf(level: number, degreesOfFreedom: number): number {
  if (!(level > 0 && level < 1)) {
    const mend = level >= 1 && level < 100 ? `For ${level} % write ${level / 100}.` : '';
    throw refusal('level', 'a number between 0 and 1, both excluded', level, mend);
  }
  if (!(degreesOfFreedom > 0)) throw refusal('degreesOfFreedom', 'above zero', degreesOfFreedom, '');
  if (degreesOfFreedom > NEARLY_NORMAL) return expanded(inverse(level, Infinity), degreesOfFreedom);
  return inverse(level, degreesOfFreedom);
}

function refusal(input: string, need: string, got: unknown, mend: string): CalculationError {
  return new CalculationError('coverage factor', [{ code: 'impossible', input, need, got: String(got), mend }]);
}

/** Abramowitz and Stegun 26.7.5: the t quantile about the normal one. */
function expanded(z: number, nu: number): number {
  const q = z * z;
  const terms = [
    (z * (q + 1)) / 4,
    (z * ((5 * q + 16) * q + 3)) / 96,
    (z * (((3 * q + 19) * q + 17) * q - 15)) / 384,
    (z * ((((79 * q + 776) * q + 1482) * q - 1920) * q - 945)) / 92160,
  ];
  return z + terms.reduceRight((sum, term) => (sum + term) / nu, 0);
}

/**
 * Newton's method on the logarithm of the smaller of the two shares against ln t. That curve is concave, so from the second step on
 * the iterates approach from one side and cannot cycle.
 */
function inverse(level: number, nu: number): number {
  const outer = level >= 0.5;
  const target = Math.log(outer ? 1 - level : level);
  let t = outer ? 1 : level;
  for (let i = 0; i < 200; i++) {
    const share = outer ? beyond(t, nu) : within(t, nu);
    const slope = (2 * t * density(t, nu)) / share;
    const move = ((target - Math.log(share)) / slope) * (outer ? -1 : 1);
    const next = t * Math.exp(Math.max(-2, Math.min(2, move)));
    if (Math.abs(move) < 1e-15 || next === t) return next;
    // Once steps are this small the curve is straight: what is left after one more is rounding.
    if (Math.abs(move) < 1e-9) return next;
    t = next;
  }
  throw new CalculationError('coverage factor', [
    {
      code: 'not converged',
      input: '',
      need: 'a level that the iteration reaches',
      got: `${level} with ${nu} degrees of freedom`,
      mend: '',
    },
  ]);
}

function density(t: number, nu: number): number {
  if (nu === Infinity) return Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI);
  return (gammaStep(nu / 2) / Math.sqrt(nu * Math.PI)) * Math.exp((-(nu + 1) / 2) * Math.log1p((t * t) / nu));
}

/** Chance that a variable lies further from zero than t. */
function beyond(t: number, nu: number): number {
  if (nu === Infinity) return t < 2 ? 1 - normalWithin(t) : normalBeyond(t);
  const x = nu / (nu + t * t);
  const y = (t * t) / (nu + t * t);
  return x <= (nu / 2 + 1) / (nu / 2 + 2.5) ? betaPart(nu / 2, 0.5, x, y, nu) : 1 - betaPart(0.5, nu / 2, y, x, nu);
}

/** Chance that a variable lies nearer to zero than t. */
function within(t: number, nu: number): number {
  if (nu === Infinity) return t < 2 ? normalWithin(t) : 1 - normalBeyond(t);
  const x = nu / (nu + t * t);
  const y = (t * t) / (nu + t * t);
  return y <= 1.5 / (nu / 2 + 2.5) ? betaPart(0.5, nu / 2, y, x, nu) : 1 - betaPart(nu / 2, 0.5, x, y, nu);
}

/** Series of the error function, Abramowitz and Stegun 7.1.6, with x = t/sqrt(2). */
function normalWithin(t: number): number {
  let term = t;
  let sum = t;
  for (let n = 3; term > sum * 1e-17; n += 2) {
    term *= (t * t) / n;
    sum += term;
  }
  return 2 * sum * density(t, Infinity);
}

/** Continued fraction of the normal tail, Abramowitz and Stegun 26.2.14, from the far end inwards. */
function normalBeyond(t: number): number {
  let fraction = t;
  for (let n = 200; n > 0; n--) fraction = t + n / fraction;
  return (2 * density(t, Infinity)) / fraction;
}

/** Incomplete beta function I_x(a, b) where one of the shapes is a half, by the continued fraction DLMF 8.17.22. */
function betaPart(a: number, b: number, x: number, y: number, nu: number): number {
  const halfBeta = Math.sqrt(Math.PI) / gammaStep(nu / 2);
  const powers = a === 0.5 ? Math.sqrt(x) * Math.exp(b * logOf(y, x)) : Math.exp(a * logOf(x, y)) * Math.sqrt(y);
  let c = 1;
  let d = (a + 1) / nonZero(1 - b + (a + b) * y);
  let fraction = d;
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 2e-16) break;
  }
  return (powers * fraction) / (a * halfBeta);
}

/** ln x, with y = 1 - x given too so that neither end loses digits. */
const logOf = (x: number, y: number): number => (y < 0.5 ? Math.log1p(-y) : Math.log(x));

const nonZero = (value: number): number => (Math.abs(value) < 1e-300 ? 1e-300 : value);

/** Gamma(a + 1/2) / Gamma(a), by its expansion in 1/(a - 1/4)^2 after moving a up. */
function gammaStep(a: number): number {
  let shifted = a;
  let factor = 1;
  while (shifted < 20) {
    factor *= shifted / (shifted + 0.5);
    shifted++;
  }
  const w = shifted - 0.25;
  const v = 1 / (w * w);
  return factor * Math.sqrt(w) * (1 + v * (1 / 64 + v * (-19 / 8192 + v * (631 / 524288 - (v * 174317) / 134217728))));
}
