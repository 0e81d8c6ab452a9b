import type { LeafUncertainty } from '../../units/origin.js';
import type { Generator } from './generator.js';
import { normalDraw } from './normal.js';

/** Fills an array with draws of the error of one input, about zero. */
export type ErrorDraw = (random: Generator, out: Float64Array) => void;

/** Draws of an input that is independent of all others, as JCGM 101 assigns distributions (6.4.2, 6.4.3, 6.4.5, 6.4.7, 6.4.9). */
export function errorDraw({ standard, degreesOfFreedom, distribution }: LeafUncertainty): ErrorDraw {
  switch (distribution) {
    case 'normal':
      return (random, out) => fill(out, () => standard * normalDraw(random.uniform()));
    case 't':
      return (random, out) =>
        fill(out, () => standard * normalDraw(random.uniform()) * chiStretch(random, degreesOfFreedom));
    case 'rectangular':
      return withEdges(Math.sqrt(3) * standard, degreesOfFreedom, (random) => 2 * random.uniform() - 1);
    case 'triangular':
      return withEdges(Math.sqrt(6) * standard, degreesOfFreedom, (random) => triangular(random.uniform()));
  }
}

/**
 * A shape between two edges. Where the half width itself is uncertain it is drawn too, evenly over itself ± itself/√(2ν), which for a
 * rectangle is the curvilinear trapezoid of JCGM 101, 6.4.3; its 9.5 turns degrees of freedom into that share in the same way.
 */
function withEdges(halfWidth: number, degreesOfFreedom: number, shape: (random: Generator) => number): ErrorDraw {
  if (degreesOfFreedom === Infinity) return (random, out) => fill(out, () => halfWidth * shape(random));
  const share = 1 / Math.sqrt(2 * degreesOfFreedom);
  return (random, out) => fill(out, () => halfWidth * (1 + share * (2 * random.uniform() - 1)) * shape(random));
}

/** The triangle from -1 to 1, by its inverse distribution function. */
const triangular = (p: number): number => (p < 0.5 ? Math.sqrt(2 * p) - 1 : 1 - Math.sqrt(2 * (1 - p)));

function fill(out: Float64Array, draw: () => number): void {
  for (let i = 0; i < out.length; i++) out[i] = draw();
}

/**
 * What turns a normal draw into one of Student's t: the root of ν over a chi-squared draw. Drawn once for inputs that were read together,
 * it makes the multivariate t.
 */
export function chiStretch(random: Generator, degreesOfFreedom: number): number {
  return Math.sqrt(degreesOfFreedom / 2 / gammaDraw(random, degreesOfFreedom / 2));
}

/** Gamma distribution of unit scale: G. Marsaglia, W. W. Tsang, A simple method for generating gamma variables, ACM Trans. Math. Softw. 26 (2000) 363. */
function gammaDraw(random: Generator, shape: number): number {
  if (shape < 1) return gammaDraw(random, shape + 1) * random.uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normalDraw(random.uniform());
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(random.uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}
