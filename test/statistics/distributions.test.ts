import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fQuantile,
  fTails,
  fUpperQuantile,
  incompleteBeta,
  logGamma,
  noncentralTTails,
  normalCdf,
  normalDensity,
  normalFactor,
  normalQuantile,
  normalTwoSided,
  studentTCdf,
  studentTFactor,
  studentTTwoSided,
  trigamma,
} from '../../src/statistics/index.js';
import reference from '../reference/statistics.json' with { type: 'json' };
import { codeOf } from './printed.js';

function expectRelative(value: number, wanted: number, tolerance: number, label: unknown): void {
  const off = wanted === 0 ? Math.abs(value) : Math.abs(value / wanted - 1);
  expect(off, `${JSON.stringify(label)}: ${value} against ${wanted}`).toBeLessThanOrEqual(tolerance);
}

describe('log-gamma function', () => {
  it.each(reference['log gamma'])('agrees at $input.z: $source', ({ input, output, tolerance }) => {
    const scale = Math.max(1, Math.abs(output.value));
    expect(Math.abs(logGamma(input.z) - output.value) / scale).toBeLessThanOrEqual(tolerance);
  });

  it('refuses 0, where the function has no value', () => {
    expect(codeOf(() => logGamma(0))).toBe('out-of-range');
  });
});

describe('trigamma function', () => {
  it.each(reference.trigamma)('agrees at $input.z: $source', ({ input, output, tolerance }) => {
    expectRelative(trigamma(input.z), output.value, tolerance, input);
  });

  it('steps down by 1/z^2 (DLMF 5.15.5)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 50, noNaN: true }), (z) => {
        expectRelative(trigamma(z + 1) + 1 / z ** 2, trigamma(z), 1e-14, z);
      }),
    );
  });

  it('refuses a negative argument', () => {
    expect(codeOf(() => trigamma(-1.5))).toBe('out-of-range');
  });
});

describe('incomplete beta function', () => {
  it.each(reference['incomplete beta'])('agrees at $input: $source', ({ input, output, tolerance }) => {
    const { lower, upper } = incompleteBeta(input.a, input.b, input.x);
    expectRelative(lower, output.lower, tolerance, input);
    expectRelative(upper, output.upper, tolerance, input);
  });

  it('is 0 and 1 at its ends', () => {
    expect(incompleteBeta(2, 3, 0)).toEqual({ lower: 0, upper: 1 });
    expect(incompleteBeta(2, 3, 1)).toEqual({ lower: 1, upper: 0 });
  });

  it('refuses a place outside 0 to 1 and shapes that are not above 0', () => {
    expect(codeOf(() => incompleteBeta(2, 3, 1.1))).toBe('out-of-range');
    expect(codeOf(() => incompleteBeta(2, 3, NaN))).toBe('out-of-range');
    expect(codeOf(() => incompleteBeta(0, 3, 0.5))).toBe('out-of-range');
  });
});

describe('normal distribution', () => {
  it.each(reference['normal two-sided'])('agrees at $input.x: $source', ({ input, output, tolerance }) => {
    const { within, beyond } = normalTwoSided(input.x);
    expectRelative(within, output.within, tolerance, input);
    expectRelative(beyond, output.beyond, tolerance, input);
  });

  it.each(reference['normal factor'])('inverts at $input.tail: $source', ({ input, output, tolerance }) => {
    expectRelative(normalFactor(input.tail), output.factor, tolerance, input);
  });

  it('has the density 1/sqrt(2 pi) at 0 and keeps the far lower tail', () => {
    expect(normalDensity(0)).toBeCloseTo(0.3989422804014327, 15);
    expectRelative(normalCdf(-10), 7.619853024160527e-24, 1e-14, 'Phi(-10), Abramowitz and Stegun 26.2');
    expect([normalCdf(-Infinity), normalCdf(0), normalCdf(Infinity)]).toEqual([0, 0.5, 1]);
  });

  it('inverts its own distribution on both sides of the middle', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (p) => {
        expect(Math.abs(normalCdf(normalQuantile(p)) - p)).toBeLessThan(4e-16);
      }),
    );
    expect(normalQuantile(0.5)).toBe(0);
  });

  it('refuses what is no probability and what is no number', () => {
    expect(codeOf(() => normalQuantile(0))).toBe('out-of-range');
    expect(codeOf(() => normalFactor(1))).toBe('out-of-range');
    expect(codeOf(() => normalCdf(NaN))).toBe('not-finite');
  });
});

describe('Student t', () => {
  it.each(reference['Student t'])('has the tails at $input: $source', ({ input, output, tolerance }) => {
    const { within, beyond } = studentTTwoSided(input.t, input.degreesOfFreedom);
    expectRelative(within, output.within, tolerance, input);
    expectRelative(beyond, output.beyond, tolerance, input);
  });

  it.each(reference['Student t factor'])('has the factor at $input: $source', ({ input, output, tolerance }) => {
    expectRelative(studentTFactor(input.tail, input.degreesOfFreedom), output.factor, tolerance, input);
  });

  it('follows the tangent law with one degree of freedom, at every tail', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.999, noNaN: true }), (tail) => {
        // Near the median the tangent itself loses the digits that 1 - tail loses.
        const tolerance = 1e-13 + 2 ** -51 / (1 - tail);
        expectRelative(studentTFactor(tail, 1), 1 / Math.tan((Math.PI * tail) / 2), tolerance, tail);
      }),
    );
  });

  it('follows the square-root law with two degrees of freedom, at every tail', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.999, noNaN: true }), (tail) => {
        expectRelative(studentTFactor(tail, 2), (1 - tail) * Math.sqrt(2 / (tail * (2 - tail))), 1e-13, tail);
      }),
    );
  });

  it('becomes the normal law as the degrees of freedom grow without end', () => {
    expect(studentTFactor(0.05, Infinity)).toBe(normalFactor(0.05));
    expect(studentTFactor(0.05, 1e15)).toBeCloseTo(normalFactor(0.05), 13);
  });

  it('joins smoothly where it changes to the expansion about the normal law', () => {
    for (const tail of [0.9, 0.05, 1e-10]) {
      const below = studentTFactor(tail, 1e8);
      const above = studentTFactor(tail, 1e8 * (1 + 1e-9));
      expectRelative(above, below, 1e-14, tail);
      expectRelative(studentTTwoSided(below, 1.0001e8).beyond, tail, 1e-6, tail);
      expectRelative(studentTTwoSided(studentTFactor(tail, 3e8), 3e8).beyond, tail, 1e-12, tail);
    }
  });

  it('is symmetric', () => {
    expect(studentTCdf(0, 3.3)).toBe(0.5);
    expect(studentTCdf(-1.3, 4.5) + studentTCdf(1.3, 4.5)).toBeCloseTo(1, 15);
    expect(studentTCdf(Infinity, 4)).toBe(1);
    expect(studentTCdf(-Infinity, 4)).toBe(0);
  });

  it('inverts its own tail for any degrees of freedom', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -9, max: -0.0001, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (logTail, logNu) => {
          const tail = 10 ** logTail;
          expectRelative(studentTTwoSided(studentTFactor(tail, 10 ** logNu), 10 ** logNu).beyond, tail, 1e-12, logNu);
        },
      ),
    );
  });

  it('refuses no degrees of freedom, a tail of 0, and a factor too large to be a number', () => {
    expect(codeOf(() => studentTFactor(0.05, 0))).toBe('out-of-range');
    expect(codeOf(() => studentTFactor(0, 4))).toBe('out-of-range');
    expect(codeOf(() => studentTFactor(1e-300, 0.5))).toBe('out-of-range');
    expect(codeOf(() => studentTTwoSided(NaN, 4))).toBe('not-finite');
  });
});

describe('F distribution', () => {
  it.each(reference['F tails'])('has the tails at $input: $source', ({ input, output, tolerance }) => {
    const { lower, upper } = fTails(input.x, input.numerator, input.denominator);
    expectRelative(lower, output.lower, tolerance, input);
    expectRelative(upper, output.upper, tolerance, input);
  });

  it.each(reference['F quantile'])('has the quantile at $input: $source', ({ input, output, tolerance }) => {
    const quantile = input.tail === 'lower' ? fQuantile : fUpperQuantile;
    expectRelative(quantile(input.probability, input.numerator, input.denominator), output.quantile, tolerance, input);
  });

  it('is the square of t with one degree of freedom above', () => {
    expectRelative(fUpperQuantile(0.05, 1, 7.7), studentTFactor(0.05, 7.7) ** 2, 1e-14, '1, 7.7');
  });

  it('has nothing below 0', () => {
    expect(fTails(0, 3, 4)).toEqual({ lower: 0, upper: 1 });
    expect(fTails(Infinity, 3, 4)).toEqual({ lower: 1, upper: 0 });
  });

  it('refuses degrees of freedom that are not above 0', () => {
    expect(codeOf(() => fTails(1, 0, 4))).toBe('out-of-range');
    expect(codeOf(() => fQuantile(0.5, 3, -1))).toBe('out-of-range');
  });
});

describe('noncentral t', () => {
  it.each(reference['noncentral t'])('has the tails at $input: $source', ({ input, output, tolerance }) => {
    const { lower, upper } = noncentralTTails(input.t, input.degreesOfFreedom, input.noncentrality);
    expectRelative(lower, output.lower, tolerance, input);
    expectRelative(upper, output.upper, tolerance, input);
  });

  it('is Student t without noncentrality', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (t, nu) => {
          expect(noncentralTTails(t, nu, 0).lower).toBeCloseTo(studentTCdf(t, nu), 13);
        },
      ),
    );
  });

  it('mirrors when both signs change', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: -12, max: 12, noNaN: true }),
        (t, nu, delta) => {
          const here = noncentralTTails(t, nu, delta);
          const there = noncentralTTails(-t, nu, -delta);
          expect(here.lower).toBeCloseTo(there.upper, 13);
        },
      ),
    );
  });

  it('is the shifted normal law with infinite degrees of freedom', () => {
    expect(noncentralTTails(1.5, Infinity, 0.5).upper).toBe(normalCdf(-1));
  });

  it('refuses what is not finite', () => {
    expect(codeOf(() => noncentralTTails(NaN, 4, 1))).toBe('not-finite');
    expect(codeOf(() => noncentralTTails(1, 4, Infinity))).toBe('not-finite');
    expect(codeOf(() => noncentralTTails(1, -4, 1))).toBe('out-of-range');
  });
});
