import { describe, expect, it } from 'vitest';
import { solveLinear } from '../../src/calculation/linear.js';
import { solveNear } from '../../src/calculation/newton.js';

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
