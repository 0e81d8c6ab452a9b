import { describe, expect, it } from 'vitest';
import { Generator } from '../../../src/calculation/draws/generator.js';
import { errorDraw } from '../../../src/calculation/draws/shapes.js';
import { normalCdf, studentTCdf } from '../../../src/statistics/index.js';
import type { LeafUncertainty } from '../../../src/units/origin.js';

const COUNT = 40_000;

function drawn(uncertainty: Omit<LeafUncertainty, 'type'>): Float64Array {
  const out = new Float64Array(COUNT);
  errorDraw({ ...uncertainty, type: 'B' })(Generator.seeded(3), out);
  return out.sort();
}

/** Greatest distance between the drawn and the exact distribution function, in units of 1/√n (Kolmogorov). */
function distance(sorted: Float64Array, cdf: (x: number) => number): number {
  let most = 0;
  sorted.forEach((x, i) => {
    const exact = cdf(x);
    most = Math.max(most, Math.abs(exact - i / COUNT), Math.abs(exact - (i + 1) / COUNT));
  });
  return most * Math.sqrt(COUNT);
}

/** Exceeded by chance once in a thousand (Kolmogorov's limit law). */
const CHANCE = 1.95;

describe('draws of an error', () => {
  it.each<[string, Omit<LeafUncertainty, 'type'>, (x: number) => number]>([
    ['normal', { standard: 2, degreesOfFreedom: Infinity, distribution: 'normal' }, (x) => normalCdf(x / 2)],
    [
      'rectangular',
      { standard: 2, degreesOfFreedom: Infinity, distribution: 'rectangular' },
      (x) => 0.5 + x / (4 * Math.sqrt(3)),
    ],
    [
      'triangular',
      { standard: 2, degreesOfFreedom: Infinity, distribution: 'triangular' },
      (x) => {
        const share = (1 - Math.abs(x) / (2 * Math.sqrt(6))) ** 2 / 2;
        return x < 0 ? share : 1 - share;
      },
    ],
    ...[0.7, 1, 4, 50].map((degreesOfFreedom): [string, Omit<LeafUncertainty, 'type'>, (x: number) => number] => [
      `Student's t with ${degreesOfFreedom}`,
      { standard: 2, degreesOfFreedom, distribution: 't' },
      (x) => studentTCdf(x / 2, degreesOfFreedom),
    ]),
  ])('follows its distribution: %s', (_, uncertainty, cdf) => {
    expect(distance(drawn(uncertainty), cdf)).toBeLessThan(CHANCE);
  });

  it('gives a rectangle of uncertain width the standard deviation of the curvilinear trapezoid, √(w²/3 + d²/9) (JCGM 101, 6.4.3.3)', () => {
    // ν = 2 makes d half of w.
    const errors = drawn({ standard: 1, degreesOfFreedom: 2, distribution: 'rectangular' });
    const halfWidth = Math.sqrt(3);
    const square = errors.reduce((sum, x) => sum + x * x, 0) / COUNT;
    expect(Math.sqrt(square)).toBeCloseTo(Math.sqrt(halfWidth ** 2 / 3 + (halfWidth / 2) ** 2 / 9), 2);
    expect(errors.at(-1)! / halfWidth).toBeGreaterThan(1.4);
    expect(errors.at(-1)! / halfWidth).toBeLessThan(1.5);
  });
});
