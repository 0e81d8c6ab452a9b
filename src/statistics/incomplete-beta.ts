import { requirePositive } from './checks.js';
import { notConverged, StatisticsError } from './errors.js';
import { halfLogTwoPi, logOnePlusMinus, stirlingCorrection } from './gamma.js';

/** Both tails of a beta distribution at one point, kept as logarithms so that neither loses digits. */
export interface BetaTails {
  /** ln I_x(a, b). */
  readonly logLower: number;
  /** ln (1 - I_x(a, b)). */
  readonly logUpper: number;
  /** ln of x^a y^b / B(a, b): the derivative of I_x with respect to ln(x/y). */
  readonly logDensity: number;
}

/** a ln(x (a + b)/a) - a u, where 1 + u = x (a + b)/a; the part in u cancels between the two sides of the beta. */
function excess(a: number, x: number, total: number, u: number): number {
  return Math.abs(u) <= 0.4 ? a * logOnePlusMinus(u) : a * (Math.log((x * total) / a) - u);
}

function logPowerTerms(a: number, b: number, x: number, y: number): number {
  const total = a + b;
  const shift = x * b - y * a;
  return (
    0.5 * Math.log((a * b) / total) -
    halfLogTwoPi +
    excess(a, x, total, shift / a) +
    excess(b, y, total, -shift / b) -
    (stirlingCorrection(a) + stirlingCorrection(b) - stirlingCorrection(total))
  );
}

/**
 * Continued fraction of Didonato and Morris (ACM TOMS 18, 1992, 360, algorithm 708), by the modified Lentz method:
 * x^a y^b / B(a, b) divided by it is I_x(a, b).
 */
function betaFraction(a: number, b: number, x: number, y: number): number {
  const tiny = 1e-300;
  let fraction = (a * (a * y - b * x + 1)) / (a + 1);
  if (fraction === 0) fraction = tiny;
  let c = fraction;
  let d = 0;
  for (let m = 1; m < 200_000; m++) {
    const below = a + 2 * m - 1;
    const numerator = (((a + m - 1) * (a + b + m - 1)) / below) * ((m * (b - m) * x * x) / below);
    const term = m + (m * (b - m) * x) / below + ((a + m) * (a * y - b * x + 1 + m * (1 + y))) / (a + 2 * m + 1);
    d = term + numerator * d;
    if (d === 0) d = tiny;
    c = term + numerator / c;
    if (c === 0) c = tiny;
    d = 1 / d;
    const change = c * d;
    fraction *= change;
    if (Math.abs(change - 1) < 4e-16) return fraction;
  }
  throw notConverged('incomplete beta function', 'a, b, x', `${a}, ${b}, ${x}`);
}

/**
 * Both tails of the regularised incomplete beta function at x, with y = 1 - x given apart so that neither is rounded.
 *
 * @param a - first shape, above 0.
 * @param b - second shape, above 0.
 */
export function betaTails(a: number, b: number, x: number, y: number): BetaTails {
  if (x <= 0) return { logLower: -Infinity, logUpper: 0, logDensity: -Infinity };
  if (y <= 0) return { logLower: 0, logUpper: -Infinity, logDensity: -Infinity };
  const logDensity = logPowerTerms(a, b, x, y);
  if (x * (b + 1) <= y * (a + 1)) {
    const logLower = logDensity - Math.log(betaFraction(a, b, x, y));
    return { logLower, logUpper: logComplement(logLower), logDensity };
  }
  const logUpper = logDensity - Math.log(betaFraction(b, a, y, x));
  return { logLower: logComplement(logUpper), logUpper, logDensity };
}

/** ln(1 - exp(v)) for v < 0; a v that rounding lifted to 0 or above leaves nothing. */
function logComplement(v: number): number {
  if (v >= 0) return -Infinity;
  return v < -0.69 ? Math.log1p(-Math.exp(v)) : Math.log(-Math.expm1(v));
}

/**
 * ln(x/y) at which one tail of I_x(a, b) reaches `probability`.
 *
 * Newton's method on the logarithm of the smaller tail against ln(x/y): that curve is concave for every a and b
 * (the logit of a beta variable has a log-concave density), so the iteration cannot cycle.
 */
export function betaLogOdds(a: number, b: number, tail: 'lower' | 'upper', probability: number): number {
  const small = probability <= 0.5;
  const target = small ? Math.log(probability) : Math.log1p(-probability);
  const lower = (tail === 'lower') === small;
  let logOdds = Math.log(a / b);
  let previous = Infinity;
  for (let step = 0; step < 200; step++) {
    const odds = Math.exp(-Math.abs(logOdds));
    const large = 1 / (1 + odds);
    const rest = odds / (1 + odds);
    const tails = logOdds < 0 ? betaTails(a, b, rest, large) : betaTails(a, b, large, rest);
    const value = lower ? tails.logLower : tails.logUpper;
    const slope = Math.exp(tails.logDensity - value);
    const limit = 2 + Math.abs(logOdds) / 2;
    const wanted = (target - value) / slope;
    const move = Math.max(-limit, Math.min(limit, wanted)) * (lower ? 1 : -1);
    logOdds += move;
    if (Math.abs(logOdds) > 700) {
      throw new StatisticsError({
        code: 'out-of-range',
        statistic: 'quantile',
        input: 'probability',
        need: `leave a quantile below 1e300 with shapes ${a} and ${b}`,
        got: String(probability),
      });
    }
    const size = Math.abs(move);
    // Once steps are this small the curve is straight: one that no longer shrinks is rounding.
    if (size <= 2e-16 * Math.abs(logOdds) || (size < 1e-9 && size >= previous / 2)) return logOdds;
    previous = size;
  }
  throw notConverged('inverse incomplete beta function', 'a, b, probability', `${a}, ${b}, ${probability}`);
}

/** Regularised incomplete beta function I_x(a, b) and its complement, each accurate on its own. */
export function incompleteBeta(a: number, b: number, x: number, y: number = 1 - x): { lower: number; upper: number } {
  const statistic = 'incomplete beta function';
  requirePositive(statistic, 'a', a);
  requirePositive(statistic, 'b', b);
  if (!(x >= 0 && x <= 1)) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input: 'x',
      need: 'lie between 0 and 1',
      got: String(x),
    });
  }
  const { logLower, logUpper } = betaTails(a, b, x, y);
  return { lower: Math.exp(logLower), upper: Math.exp(logUpper) };
}
