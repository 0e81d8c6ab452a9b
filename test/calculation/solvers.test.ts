import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveLinear } from '../../src/calculation/linear.js';
import { solveNear } from '../../src/calculation/newton.js';
import { bracketedRoot } from '../../src/calculation/root.js';

describe('a bracketed root', () => {
  const counted = (f: (x: number) => number): { f: (x: number) => number; calls: () => number } => {
    let calls = 0;
    return { f: (x) => (calls++, f(x)), calls: () => calls };
  };
  const rootOf = (f: (x: number) => number, low: number, high: number) => bracketedRoot(f, low, high, f(low), f(high));

  it('is found to the last digits: sqrt(2), ln(2), the Dottie number (from memory)', () => {
    expect(rootOf((x) => x * x - 2, 0, 2)!.x).toBeCloseTo(Math.SQRT2, 15);
    expect(rootOf((x) => Math.exp(x) - 2, 0, 5)!.x).toBeCloseTo(Math.LN2, 15);
    expect(rootOf((x) => Math.cos(x) - x, 0, 1)!.x).toBeCloseTo(0.7390851332151607, 15);
  });

  it('costs about ten looks at a smooth function, not the fifty of halving', () => {
    for (const [f, low, high] of [
      [(x: number) => x * x - 2, 0, 2],
      [(x: number) => Math.exp(x) - 2, 0, 5],
      [(x: number) => Math.cos(x) - x, 0, 1],
      [(x: number) => x ** 3 - 2 * x - 5, 2, 3],
    ] as const) {
      const { f: counting, calls } = counted(f);
      bracketedRoot(counting, low, high, f(low), f(high));
      expect(calls()).toBeLessThanOrEqual(12);
    }
  });

  it('is found where it is zero, tiny, flat or at a kink', () => {
    expect(Math.abs(rootOf((x) => x, -1, 3)!.x)).toBeLessThan(1e-17);
    expect(rootOf((x) => x - 1e-9, 0, 1)!.x).toBeCloseTo(1e-9, 20);
    expect(Math.abs(rootOf((x) => x ** 9, -1, 1.5)!.x)).toBeLessThan(0.02);
    expect(rootOf((x) => (x < 0.3 ? (x - 0.3) * 1e6 : x - 0.3), 0, 1)!.x).toBeCloseTo(0.3, 15);
  });

  it('stays between the ends, as a property', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.999, max: 0.999, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        (root, steep) => {
          const found = rootOf((x) => Math.tanh(steep * (x - root)), -1, 1)!;
          expect(Math.abs(found.x - root)).toBeLessThan(1e-15);
        },
      ),
    );
  });

  it('is not claimed at a jump or a pole', () => {
    expect(rootOf((x) => (x < 0.3 ? -1 : 2), 0, 1)).toBeUndefined();
    expect(rootOf((x) => 1 / (x - 0.3), 0, 1)).toBeUndefined();
  });
});

describe('a solution near a known one', () => {
  it('is found to the last digits for two unknowns', () => {
    const circleAndLine = ([x, y]: readonly number[]): number[] => [x! ** 2 + y! ** 2 - 25, x! - y! + 1];
    expect(solveNear(circleAndLine, [2.5, 4.5], [10, 10])).toEqual([expect.closeTo(3, 14), expect.closeTo(4, 14)]);
  });

  it('is found where a full step would run away', () => {
    const bent = ([x]: readonly number[]): number[] => [Math.atan(x! - 3)];
    expect(solveNear(bent, [-2], [20])).toEqual([expect.closeTo(3, 14)]);
  });

  it('is not claimed where there is none, or none that can be reached', () => {
    expect(solveNear(([x]) => [x! ** 2 + 1], [2], [10])).toBeUndefined();
    expect(solveNear(([x]) => (x! < 1 ? [x! - 2] : undefined), [0.5], [10])).toBeUndefined();
    expect(solveNear(() => undefined, [0.5], [10])).toBeUndefined();
    expect(solveNear(() => [1], [0.5], [10])).toBeUndefined();
  });

  it('is the start where that satisfies it', () => {
    expect(solveNear(([x]) => [x! - 2], [2], [10])).toEqual([2]);
  });
});

describe('a small linear system', () => {
  it('is solved with rows in any order and of any size', () => {
    expect(
      solveLinear(
        [
          [0, 2, 0],
          [1e9, 0, 1e9],
          [1, 0, -1],
        ],
        [4, 4e9, 2],
      ),
    ).toEqual([3, 2, 1].map((value) => expect.closeTo(value, 12)));
  });

  it('is refused where it is singular', () => {
    expect(
      solveLinear(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 2],
      ),
    ).toBeUndefined();
  });
});
