import { requireDegreesOfFreedom, requireFinite } from './checks.js';
import { normalCdf } from './normal.js';
import { integrate, scatterDensity } from './quadrature.js';

/**
 * Chances that a noncentral t variable (Z + noncentrality)/w lies below and above t; each keeps its digits.
 *
 * Found as the mean of the normal chance over the scatter w: every term is positive, so small chances stay exact.
 */
export function noncentralTTails(
  t: number,
  degreesOfFreedom: number,
  noncentrality: number,
): { lower: number; upper: number } {
  requireFinite('noncentral t', 't', t);
  requireFinite('noncentral t', 'noncentrality', noncentrality);
  requireDegreesOfFreedom('noncentral t', 'degreesOfFreedom', degreesOfFreedom);
  if (t === 0 || degreesOfFreedom === Infinity) {
    return { lower: normalCdf(t - noncentrality), upper: normalCdf(noncentrality - t) };
  }
  const density = scatterDensity(degreesOfFreedom);
  const [from, to] = scatterRange(t, degreesOfFreedom, noncentrality);
  const chance = (sign: 1 | -1): number =>
    integrate((w) => normalCdf(sign * (t * w - noncentrality)) * density(w), from, to);
  const lower = chance(1);
  if (lower < 0.5) return { lower, upper: 1 - lower };
  const upper = chance(-1);
  return { lower: 1 - upper, upper };
}

/**
 * Where the integrand has its mass: its logarithm curves down at least as fast as that of the scatter, and its peak
 * lies between that of the scatter (near 1) and the point where a large deviation is likeliest.
 */
function scatterRange(t: number, nu: number, noncentrality: number): [number, number] {
  const product = t * noncentrality;
  const likeliest = (product + Math.sqrt(product * product + 4 * nu * (t * t + nu))) / (2 * (t * t + nu));
  const spread = 12 / Math.sqrt(nu);
  return [Math.max(0, Math.min(likeliest, 1) - spread), Math.max(likeliest, 1) + spread];
}
