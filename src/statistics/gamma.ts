import { requirePositive } from './checks.js';

/** ln(2 pi)/2. */
export const halfLogTwoPi = 0.9189385332046727;

/** Coefficients B(2k)/(2k (2k - 1)) of the Stirling series, DLMF 5.11.1. */
const stirlingSeries = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156, -3617 / 122400];

/**
 * What Stirling's formula leaves out of ln Gamma: ln Gamma(z) - ((z - 1/2) ln z - z + ln(2 pi)/2), for z > 0.
 *
 * Ratios of gamma functions built from this keep their digits where differences of log-gamma lose them.
 */
export function stirlingCorrection(z: number): number {
  let shifted = z;
  let below = 0;
  while (shifted < 10) {
    below += (shifted + 0.5) * Math.log1p(1 / shifted) - 1;
    shifted += 1;
  }
  const inverseSquare = 1 / (shifted * shifted);
  let series = 0;
  for (let k = stirlingSeries.length - 1; k >= 0; k--) series = series * inverseSquare + stirlingSeries[k]!;
  return below + series / shifted;
}

/** Natural logarithm of the gamma function, for z > 0; good to 1e-14 of the larger of 1 and the result. */
export function logGamma(z: number): number {
  requirePositive('log-gamma function', 'z', z);
  return (z - 0.5) * Math.log(z) - z + halfLogTwoPi + stirlingCorrection(z);
}

/** Numerators of the trigamma series: the Bernoulli numbers B(2) to B(16), DLMF 5.15.8. */
const trigammaSeries = [1 / 6, -1 / 30, 1 / 42, -1 / 30, 5 / 66, -691 / 2730, 7 / 6, -3617 / 510];

/** Trigamma function, the second derivative of ln Gamma, for z > 0. */
export function trigamma(z: number): number {
  requirePositive('trigamma function', 'z', z);
  let shifted = z;
  let below = 0;
  while (shifted < 10) {
    below += 1 / (shifted * shifted);
    shifted += 1;
  }
  const inverse = 1 / shifted;
  const inverseSquare = inverse * inverse;
  let series = 0;
  for (let k = trigammaSeries.length - 1; k >= 0; k--) series = series * inverseSquare + trigammaSeries[k]!;
  return below + inverse + inverseSquare / 2 + series * inverseSquare * inverse;
}

/** ln(1 + x) - x without the cancellation near 0. */
export function logOnePlusMinus(x: number): number {
  if (Math.abs(x) > 0.4) return Math.log1p(x) - x;
  // ln(1 + x) = 2 artanh(r), r = x/(2 + x): the leading term of the series takes off exactly r x.
  const r = x / (2 + x);
  const square = r * r;
  let term = 2 * r * square;
  let sum = 0;
  for (let k = 3; Math.abs(term) > Math.abs(sum) * 1e-18; k += 2) {
    sum += term / k;
    term *= square;
  }
  return sum - r * x;
}
