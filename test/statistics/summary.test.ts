import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mean, standardDeviation, sum, summarise, variance } from '../../src/statistics/index.js';
import { codeOf } from './printed.js';

const alternating = (middle: number, low: number, high: number): number[] => [
  middle,
  ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
];

/** Standard deviation of the stored doubles in exact whole-number arithmetic: each is a multiple of 2^-60. */
function exactStandardDeviation(values: readonly number[]): number {
  const scale = 2n ** 60n;
  const whole = values.map((v) => BigInt(v * 2 ** 60));
  const n = BigInt(values.length);
  const total = whole.reduce((a, b) => a + b, 0n);
  const squares = whole.reduce((a, b) => a + b * b, 0n);
  return Math.sqrt(Number(n * squares - total * total) / Number(n * (n - 1n)) / Number(scale) ** 2);
}

/** How far the rounding of decimal data to doubles can move a standard deviation: half an ulp of the largest value. */
const roundingOfData = (values: readonly number[], sd: number): number =>
  4e-16 + (2 ** -53 * Math.max(...values.map(Math.abs))) / sd;

describe('mean and standard deviation', () => {
  it.each([
    { set: 'NumAcc1', values: [10000001, 10000003, 10000002], mean: 10000002, sd: 1 },
    { set: 'NumAcc2', values: alternating(1.2, 1.1, 1.3), mean: 1.2, sd: 0.1 },
    { set: 'NumAcc3', values: alternating(1000000.2, 1000000.1, 1000000.3), mean: 1000000.2, sd: 0.1 },
    { set: 'NumAcc4', values: alternating(10000000.2, 10000000.1, 10000000.3), mean: 10000000.2, sd: 0.1 },
  ])('give the certified digits of $set (NIST StRD, built by its definition)', (row) => {
    const got = summarise(row.values);
    expect(Math.abs(got.mean / row.mean - 1)).toBeLessThanOrEqual(2e-16);
    expect(Math.abs(got.standardDeviation / row.sd - 1)).toBeLessThanOrEqual(roundingOfData(row.values, row.sd));
    expect(Math.abs(got.standardDeviation / exactStandardDeviation(row.values) - 1)).toBeLessThanOrEqual(4e-16);
  });

  const file = fileURLToPath(new URL('../../../shared/data/nist-univariate-and-regression.json', import.meta.url));
  const present = existsSync(file);
  it.skipIf(!present)('give the certified digits of Lew, Lottery, Mavro and Michelso (NIST StRD, whole files)', () => {
    const { cases } = JSON.parse(readFileSync(file, 'utf8')) as {
      cases: { kind: string; dataset: string; mean: number; sd_certified: string; data: number[] }[];
    };
    const sets = cases.filter((one) => one.kind === 'univariate');
    expect(sets.map((one) => one.dataset)).toEqual(['lew', 'lottery', 'mavro', 'michelson']);
    for (const one of sets) {
      expect(Math.abs(mean(one.data) / one.mean - 1), one.dataset).toBeLessThanOrEqual(2.3e-16);
      const sd = standardDeviation(one.data);
      const certified = Number(one.sd_certified);
      expect(Math.abs(sd / exactStandardDeviation(one.data) - 1), one.dataset).toBeLessThanOrEqual(4e-16);
      expect(Math.abs(sd / certified - 1), one.dataset).toBeLessThanOrEqual(roundingOfData(one.data, certified));
    }
  });

  it('of equal numbers are that number and 0 exactly', () => {
    expect(mean([0.1, 0.1, 0.1])).toBe(0.1);
    expect(variance([0.1, 0.1, 0.1])).toBe(0);
  });

  it('carry a common offset without a trace', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 30 }), (values) => {
        const lifted = values.map((v) => v + 2 ** 40);
        expect(Math.abs(variance(lifted) - variance(values))).toBeLessThanOrEqual(1e-15 * variance(values));
      }),
    );
  });

  it('sum what a plain loop loses', () => {
    expect(sum([1, 1e100, 1, -1e100])).toBe(2);
  });

  it('refuse too few numbers and numbers that are none', () => {
    expect(codeOf(() => mean([]))).toBe('too-few-points');
    expect(codeOf(() => variance([1]))).toBe('too-few-points');
    expect(() => mean([1, NaN])).toThrow('mean: values[1] must be a finite number, got NaN.');
  });
});
