import { requireDegreesOfFreedom, requireNumber, requireProbability } from './checks.js';
import { betaLogOdds, incompleteBeta } from './incomplete-beta.js';
import { normalFactor, normalTwoSided } from './normal.js';

/** From here on the first three terms of the expansion about the normal law are exact to rounding. */
const nearlyNormal = 1e8;

/** Chances that a Student t variable stays within, and lies beyond, plus and minus t. */
export function studentTTwoSided(t: number, degreesOfFreedom: number): { within: number; beyond: number } {
  requireDegreesOfFreedom('Student t', 'degreesOfFreedom', degreesOfFreedom);
  requireNumber('Student t', 't', t);
  const size = Math.abs(t);
  if (size === Infinity) return { within: 1, beyond: 0 };
  if (degreesOfFreedom > nearlyNormal) return normalTwoSided(normalEquivalent(size, degreesOfFreedom));
  const ratio = size / Math.sqrt(degreesOfFreedom);
  const square = ratio <= 1 ? ratio * ratio : 1 / ratio / ratio;
  const small = square / (1 + square);
  const large = 1 / (1 + square);
  const [inner, outer] = ratio <= 1 ? [small, large] : [large, small];
  const { lower, upper } = incompleteBeta(0.5, degreesOfFreedom / 2, inner, outer);
  return { within: lower, beyond: upper };
}

/** Chance that a Student t variable lies below t; degrees of freedom need not be whole and may be Infinity. */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  const { within, beyond } = studentTTwoSided(t, degreesOfFreedom);
  if (t < 0) return beyond / 2;
  return beyond > 0.5 ? 0.5 + within / 2 : 1 - beyond / 2;
}

/**
 * t(p; nu): the number that |t| exceeds with the two-sided chance `tail`, so 0.05 gives the usual 95 % factor.
 *
 * @param degreesOfFreedom - any positive number, or Infinity for the normal factor.
 */
export function studentTFactor(tail: number, degreesOfFreedom: number): number {
  requireProbability('Student t factor', 'tail', tail);
  requireDegreesOfFreedom('Student t factor', 'degreesOfFreedom', degreesOfFreedom);
  if (degreesOfFreedom > nearlyNormal) return fromNormal(normalFactor(tail), degreesOfFreedom);
  const logOdds = betaLogOdds(0.5, degreesOfFreedom / 2, 'upper', tail);
  return Math.sqrt(degreesOfFreedom) * Math.exp(logOdds / 2);
}

/** Abramowitz and Stegun 26.7.5. */
function fromNormal(z: number, nu: number): number {
  const square = z * z;
  const second = (z * (3 + square * (16 + square * 5))) / 96 / nu / nu;
  return z + (z * (1 + square)) / 4 / nu + second;
}

/** The inverse of A&S 26.7.5, to the same order. */
function normalEquivalent(t: number, nu: number): number {
  const square = t * t;
  if (square > nu) return Infinity;
  const second = (t * (3 + square * (8 + square * 13))) / 96 / nu / nu;
  return t - (t * (1 + square)) / 4 / nu + second;
}
