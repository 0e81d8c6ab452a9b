import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logarithmicMean } from '../../src/statistics/index.js';

describe('the logarithmic mean', () => {
  // mpmath, 30 digits.
  it.each([
    [160, 164, 161.99176921277814],
    [1, 1 + 1e-9, 1.0000000005],
    [1e-3, 1e6, 48254.942385439705],
  ])('of %s and %s agrees with many digits', (a, b, mean) => {
    expect(logarithmicMean(a, b) / mean).toBeCloseTo(1, 14);
  });

  it('is the number itself where both are equal, and the same whichever comes first', () => {
    expect(logarithmicMean(7, 7)).toBe(7);
    expect(logarithmicMean(2, 3)).toBe(logarithmicMean(3, 2));
  });

  it('turns a change of logarithm into the change, and lies between geometric and arithmetic mean', () => {
    const positive = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(positive, positive, (a, b) => {
        const mean = logarithmicMean(a, b);
        return (
          Math.abs(mean * Math.log(b / a) - (b - a)) <= 1e-12 * Math.max(a, b) &&
          mean >= Math.sqrt(a * b) * (1 - 1e-14) &&
          mean <= ((a + b) / 2) * (1 + 1e-14)
        );
      }),
    );
  });

  it('is NaN where a number has no logarithm', () => {
    expect(logarithmicMean(-1, 2)).toBeNaN();
  });
});
