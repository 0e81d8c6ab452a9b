import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Generator, splitMix } from '../../../src/calculation/draws/generator.js';
import { normalDraw } from '../../../src/calculation/draws/normal.js';
import { normalQuantile } from '../../../src/statistics/index.js';

const wordsOf = (random: Generator, count: number): bigint[] =>
  Array.from({ length: count }, () => {
    random.step();
    return (BigInt(random.high >>> 0) << 32n) | BigInt(random.low >>> 0);
  });

describe('the random generator', () => {
  it('gives the words of the reference xoshiro256** for the state 1, 2, 3, 4 (published beside several ports of it)', () => {
    expect(wordsOf(new Generator([1n, 2n, 3n, 4n]), 10)).toEqual([
      11520n,
      0n,
      1509978240n,
      1215971899390074240n,
      1216172134540287360n,
      607988272756665600n,
      16172922978634559625n,
      8476171486693032832n,
      10595114339597558777n,
      2904607092377533576n,
    ]);
  });

  it('agrees with the recurrence written in whole 64-bit words, over a thousand words from a seed', () => {
    const wrap = (x: bigint): bigint => BigInt.asUintN(64, x);
    const turn = (x: bigint, by: bigint): bigint => wrap(x << by) | (x >> (64n - by));
    const s = splitMix(20n, 4) as [bigint, bigint, bigint, bigint];
    const expected = Array.from({ length: 1000 }, () => {
      const word = wrap(turn(wrap(s[1] * 5n), 7n) * 9n);
      const shifted = wrap(s[1] << 17n);
      s[2] ^= s[0];
      s[3] ^= s[1];
      s[1] ^= s[2];
      s[0] ^= s[3];
      s[2] ^= shifted;
      s[3] = turn(s[3], 45n);
      return word;
    });
    expect(wordsOf(Generator.seeded(20), 1000)).toEqual(expected);
  });

  it('is seeded by SplitMix64: the words for 1234567 (published with the reference)', () => {
    expect(splitMix(1234567n, 5)).toEqual([
      6457827717110365317n,
      3203168211198807973n,
      9817491932198370423n,
      4593380528125082431n,
      16408922859458223821n,
    ]);
  });

  it('gives uniform numbers that reach neither 0 nor 1', () => {
    const random = Generator.seeded(1);
    random.step = () => {
      random.high = -1;
      random.low = -1;
    };
    expect(random.uniform()).toBeLessThan(1);
    random.step = () => {
      random.high = 0;
      random.low = 0;
    };
    expect(random.uniform()).toBeGreaterThan(0);
  });

  it('spreads over the unit interval: chi-squared of 100 cells, 1e5 draws, between its 0.1 % and 99.9 % points (61 and 148)', () => {
    const random = Generator.seeded(7);
    const cells = new Float64Array(100);
    for (let i = 0; i < 1e5; i++) cells[Math.floor(100 * random.uniform())]! += 1;
    const chi = cells.reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
    expect(chi).toBeGreaterThan(61);
    expect(chi).toBeLessThan(148);
  });
});

describe('the normal draw', () => {
  it.each([
    [0.25, -0.6744897501960817],
    [0.001, -3.090232306167813],
    [1e-20, -9.262340089798408],
  ])('at %d is %d (the check values of AS 241; digits by mpmath)', (p, x) => {
    expect(Math.abs(normalDraw(p) / x - 1)).toBeLessThan(1e-15);
  });

  it('agrees with the quantile that is iterated to the last digits', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (p) => {
        const exact = normalQuantile(p);
        expect(Math.abs(normalDraw(p) - exact)).toBeLessThanOrEqual(4e-15 * Math.max(1, Math.abs(exact)));
      }),
    );
  });
});
