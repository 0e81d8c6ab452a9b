import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rootBetween } from '../../src/psychrometrics/root.js';

describe('root between two bounds', () => {
  it('is found to the last digits for steep, flat and straight functions', () => {
    expect(rootBetween((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(rootBetween((x) => Math.expm1(300 * (x - 0.7)), 0, 1)).toBeCloseTo(0.7, 15);
    expect(rootBetween((x) => (x - 0.3) ** 9, 0, 1)).toBeCloseTo(0.3, 6);
    expect(rootBetween((x) => 3 * x - 1, -5, 5)).toBeCloseTo(1 / 3, 15);
  });

  it('is found wherever it lies, also at a bound', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 500, noNaN: true }), (root) => {
        const found = rootBetween((x) => Math.log(x / root), 0.5, 600);
        expect(Math.abs(found / root - 1)).toBeLessThan(1e-15);
      }),
    );
    expect(rootBetween((x) => x - 2, 2, 3)).toBe(2);
    expect(rootBetween((x) => x - 3, 2, 3)).toBe(3);
  });

  it('is the place of a jump where the function changes sign without a zero', () => {
    expect(rootBetween((x) => (x < 0.6 ? -1 : 2), 0, 1)).toBeCloseTo(0.6, 15);
  });

  it('is no number where the function has one sign, or no value', () => {
    expect(rootBetween((x) => x * x + 1, 0, 1)).toBeNaN();
    expect(rootBetween((x) => Math.log(x - 0.5), 0, 2)).toBeNaN();
  });

  it('takes few steps', () => {
    let steps = 0;
    rootBetween((x) => (steps++, Math.exp(x) - 5), 0, 10);
    expect(steps).toBeLessThan(20);
  });
});
