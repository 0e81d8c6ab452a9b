import { notConverged } from './errors.js';
import { halfLogTwoPi, logOnePlusMinus, stirlingCorrection } from './gamma.js';

/**
 * Integral over a finite interval by the tanh-sinh rule: exact to rounding for a function that is smooth inside,
 * even where it starts or ends like a power.
 *
 * Meant for functions of one sign: the rule stops when halving the step changes nothing that shows in the sum.
 */
export function integrate(integrand: (x: number) => number, from: number, to: number): number {
  const half = (to - from) / 2;
  const at = (u: number): number => {
    const grip = (Math.PI / 2) * Math.sinh(u);
    const decay = Math.exp(-2 * Math.abs(grip));
    // Distance to the nearer end, so that an end at 0 keeps its digits.
    const gap = (2 * half * decay) / (1 + decay);
    const weight = (half * (Math.PI / 2) * Math.cosh(u) * 4 * decay) / (1 + decay) ** 2;
    return weight === 0 ? 0 : weight * integrand(u < 0 ? from + gap : to - gap);
  };
  const reach = 4.5;
  let step = 0.25;
  let sum = 0;
  for (let u = -reach; u <= reach; u += step) sum += at(u);
  let total = sum * step;
  for (let level = 0; level < 9; level++) {
    for (let u = -reach + step / 2; u <= reach; u += step) sum += at(u);
    step /= 2;
    const refined = sum * step;
    const settled = Math.abs(refined - total) <= 1e-14 * Math.abs(refined);
    total = refined;
    if (settled) return total;
  }
  throw notConverged('integral', 'integrand', `no agreement between ${from} and ${to}`);
}

/** Density at w of a sample standard deviation over its true value: chi over the root of its degrees of freedom. */
export function scatterDensity(degreesOfFreedom: number): (w: number) => number {
  const half = degreesOfFreedom / 2;
  const front = Math.LN2 + 0.5 * Math.log(half) - halfLogTwoPi - stirlingCorrection(half);
  return (w) => {
    if (w <= 0) return 0;
    const e = w - 1;
    // (w^2 - 1)/2 - ln w without cancellation near 1.
    const bowl = Math.abs(e) < 0.4 ? (e * e) / 2 - logOnePlusMinus(e) : (w * w - 1) / 2 - Math.log(w);
    return Math.exp(front - degreesOfFreedom * bowl) / w;
  };
}
