import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grubbsCritical, oddPulls } from '../../src/statistics/index.js';
import { codeOf, expectPrinted } from './printed.js';

describe('odd pulls', () => {
  const baseline = [301.2, 300.4, 302.1];

  it('flags the last of the worked pulls (figures by a separate program)', () => {
    const got = oddPulls(baseline, [304.9, 305.6, 312.2]);
    expectPrinted(got.critical, '6.231543473');
    expect(got.degreesOfFreedom).toBe(3);
    expectPrinted(got.pulls[5]?.t, '7.556877923');
    expect(got.pulls.filter((pull) => pull.odd)).toEqual([got.pulls[5]]);
    expect(got.pulls[5]).toMatchObject({ side: 'candidate', index: 2 });
  });

  it('flags none where the last one behaves', () => {
    const got = oddPulls(baseline, [304.9, 305.6, 305.2]);
    expectPrinted(Math.max(...got.pulls.map((pull) => Math.abs(pull.t))), '2.442274735');
    expect(got.pulls.some((pull) => pull.odd)).toBe(false);
  });

  it('is the usual deleted residual r/sqrt(s(i)^2 (1 - 1/n))', () => {
    const readings = fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 3, maxLength: 6 });
    const varied = readings.filter((values) => new Set(values).size > 2);
    fc.assert(
      fc.property(varied, varied, (a, b) => {
        const average = (v: number[]): number => v.reduce((s, y) => s + y, 0) / v.length;
        const squares = (v: number[]): number => v.reduce((s, y) => s + (y - average(v)) ** 2, 0);
        const residual = a[0]! - average(a);
        const left = squares(a) + squares(b) - residual ** 2 / (1 - 1 / a.length);
        const scatter = left / (a.length + b.length - 3);
        const t = residual / Math.sqrt(scatter * (1 - 1 / a.length));
        expect(oddPulls(a, b).pulls[0]!.t / t || 1).toBeCloseTo(1, 8);
      }),
    );
  });

  it('refuses one pull a side and pulls that are copies but for one', () => {
    expect(codeOf(() => oddPulls([1], [2, 3]))).toBe('too-few-pulls');
    expect(codeOf(() => oddPulls([5, 5, 9], [7, 7, 7]))).toBe('no-scatter');
  });
});

describe('Grubbs critical value', () => {
  it.each([
    { n: 3, g: '1.154304851' },
    { n: 4, g: '1.48125' },
    { n: 5, g: '1.715037312' },
    { n: 6, g: '1.887145118' },
    { n: 10, g: '2.289954084' },
  ])('is $g for $n values (the usual table to three decimals: 1.15, 1.48, 1.72, 1.89, 2.29)', ({ n, g }) => {
    expectPrinted(grubbsCritical(n), g);
  });

  it('lies a hair below the largest value three numbers can reach, which is why it is useless there', () => {
    expect(grubbsCritical(3)).toBeLessThan(2 / Math.sqrt(3));
    expect(grubbsCritical(3)).toBeGreaterThan((2 / Math.sqrt(3)) * 0.999);
  });

  it('refuses two values', () => {
    expect(codeOf(() => grubbsCritical(2))).toBe('out-of-range');
  });
});
