import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { StatisticsError } from '../../src/statistics/errors.js';
import { requiredRoot, rootBetween, zeroBetween } from '../../src/statistics/root-between.js';

describe('root between two bounds', () => {
  it('is sqrt(2), ln(2) and the Dottie number to the last digits (from memory)', () => {
    expect(rootBetween((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(rootBetween((x) => Math.exp(x) - 2, 0, 5)).toBeCloseTo(Math.LN2, 15);
    expect(rootBetween((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 15);
  });

  it('is found to the last digits for steep, flat, straight and bent functions', () => {
    expect(rootBetween((x) => Math.expm1(300 * (x - 0.7)), 0, 1)).toBeCloseTo(0.7, 15);
    expect(rootBetween((x) => (x - 0.3) ** 9, 0, 1)).toBeCloseTo(0.3, 6);
    expect(rootBetween((x) => 3 * x - 1, -5, 5)).toBeCloseTo(1 / 3, 15);
    expect(rootBetween((x) => (x < 0.3 ? (x - 0.3) * 1e6 : x - 0.3), 0, 1)).toBeCloseTo(0.3, 15);
  });

  it('is found wherever it lies, also at a bound, at zero and close to it', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 500, noNaN: true }), (root) => {
        const found = rootBetween((x) => Math.log(x / root), 0.5, 600);
        expect(Math.abs(found / root - 1)).toBeLessThan(1e-15);
      }),
    );
    expect(rootBetween((x) => x - 2, 2, 3)).toBe(2);
    expect(rootBetween((x) => x - 3, 2, 3)).toBe(3);
    expect(Math.abs(rootBetween((x) => x, -1, 3))).toBeLessThan(1e-17);
    expect(rootBetween((x) => x - 1e-9, 0, 1)).toBeCloseTo(1e-9, 20);
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
    fc.assert(
      fc.property(
        fc.double({ min: -0.999, max: 0.999, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        (root, steep) => {
          const found = rootBetween((x) => Math.tanh(steep * (x - root)), -1, 1);
          expect(Math.abs(found - root)).toBeLessThan(1e-15);
        },
      ),
    );
  });

  it('is found where the values on both sides are too small for their product', () => {
    expect(rootBetween((x) => 1e-200 * (x - 1.5), 1, 2)).toBeCloseTo(1.5, 15);
  });

  it('is the place of a jump where the function changes sign without a zero', () => {
    expect(rootBetween((x) => (x < 0.6 ? -1 : 2), 0, 1)).toBeCloseTo(0.6, 15);
    expect(Math.abs(rootBetween((x) => (x <= 0 ? -1 : 1), -1, 2))).toBeLessThan(1e-29);
  });

  it('is no number where the function has one sign, or no value', () => {
    expect(rootBetween((x) => x * x + 1, 0, 1)).toBeNaN();
    expect(rootBetween((x) => Math.log(x - 0.5), 0, 2)).toBeNaN();
  });

  it('is refused by a statistic that must have one', () => {
    expect(requiredRoot((x) => x * x - 2, 0, 2, 'some statistic')).toBeCloseTo(Math.SQRT2, 15);
    const refused = (): number => requiredRoot((x) => x * x + 1, 0, 1, 'some statistic');
    expect(refused).toThrow(StatisticsError);
    expect(refused).toThrow(
      'some statistic: bracket must lie where the iteration settles, got values 1 and 2 at its ends',
    );
  });

  it('costs about ten looks at a smooth function, not the fifty of halving', () => {
    for (const [f, low, high] of [
      [(x: number) => x * x - 2, 0, 2],
      [(x: number) => Math.exp(x) - 2, 0, 5],
      [(x: number) => Math.cos(x) - x, 0, 1],
      [(x: number) => x ** 3 - 2 * x - 5, 2, 3],
      [(x: number) => Math.exp(x) - 5, 0, 10],
    ] as const) {
      let looks = 0;
      rootBetween((x) => (looks++, f(x)), low, high);
      expect(looks).toBeLessThanOrEqual(12);
    }
  });

  it('ends after a hundred halvings at most where there is nothing but a jump at zero', () => {
    let looks = 0;
    rootBetween((x) => (looks++, x < 0 ? -1 : 1), -1, 2);
    expect(looks).toBeLessThan(110);
  });
});

describe('zero between two bounds', () => {
  const zeroOf = (f: (x: number) => number, low: number, high: number): number | undefined =>
    zeroBetween(f, low, high, f(low), f(high));

  it('is the root, also at a bound and where it is flat or steep', () => {
    expect(zeroOf((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(zeroOf((x) => x - 2, 2, 3)).toBe(2);
    expect(zeroOf((x) => x - 3, 2, 3)).toBe(3);
    expect(Math.abs(zeroOf((x) => x ** 9, -1, 1.5)!)).toBeLessThan(0.02);
    expect(zeroOf((x) => (x < 0.3 ? (x - 0.3) * 1e6 : x - 0.3), 0, 1)).toBeCloseTo(0.3, 15);
  });

  it('does not look at the ends again', () => {
    const seen: number[] = [];
    zeroBetween((x) => (seen.push(x), x * x - 2), 0, 2, -2, 2);
    expect(seen).not.toContain(0);
    expect(seen).not.toContain(2);
  });

  it('is not claimed at a jump or a pole, without a change of sign or where nothing can be computed', () => {
    expect(zeroOf((x) => (x < 0.3 ? -1 : 2), 0, 1)).toBeUndefined();
    expect(zeroOf((x) => 1 / (x - 0.3), 0, 1)).toBeUndefined();
    expect(zeroOf((x) => x * x + 1, 0, 1)).toBeUndefined();
    expect(zeroOf((x) => Math.log(x - 0.5), 0, 2)).toBeUndefined();
  });
});
