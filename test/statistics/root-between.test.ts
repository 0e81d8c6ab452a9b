import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rootBetween } from '../../src/statistics/root-between.js';

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

  it('is found on curves that mislead straight steps', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 3, noNaN: true }), (root) => {
        for (const f of [
          (x: number) => x ** 9 - root ** 9,
          (x: number) => Math.atan(1e4 * (x - root)),
          (x: number) => Math.cbrt(x - root),
        ]) {
          expect(Math.abs(rootBetween(f, 0, 4) / root - 1)).toBeLessThan(1e-14);
        }
      }),
    );
  });

  it('is found where the values on both sides are too small for their product', () => {
    expect(rootBetween((x) => 1e-200 * (x - 1.5), 1, 2)).toBeCloseTo(1.5, 15);
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
