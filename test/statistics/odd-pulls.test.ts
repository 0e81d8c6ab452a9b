import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  driftDifference,
  grubbsCritical,
  oddPulls,
  oddPullsInOrder,
  studentTFactor,
} from '../../src/statistics/index.js';
import { normalFrom, seededUniform } from './simulated-pulls.js';
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

describe('odd pulls in order', () => {
  const order = 'ABBAABBA';
  const steady = [300.1, 305.9, 306.8, 302.2, 303.4, 308.7, 310.1, 305.8];

  it('is the deleted residual: what leaving the pull out takes from the squares, in the scatter of the others', () => {
    const squares = (fit: ReturnType<typeof driftDifference>): number =>
      fit.scatter!.standardDeviation ** 2 * fit.degreesOfFreedom;
    const whole = squares(driftDifference(order, steady));
    for (const place of steady.keys()) {
      const rest = [...steady.keys()].filter((i) => i !== place);
      const without = driftDifference(
        rest.map((i) => order[i]).join(''),
        rest.map((i) => steady[i]!),
        {
          times: rest.map((i) => i + 1),
        },
      );
      const { t } = oddPullsInOrder(order, steady).pulls[place]!;
      expect(t ** 2).toBeCloseTo((whole - squares(without)) / without.scatter!.standardDeviation ** 2, 8);
    }
  });

  it('sees through a drift to a pull that is off, which the scatter with the drift in it hides', () => {
    const drifting = [...order].map(
      (letter, i) => 300 + (letter === 'B' ? 6 : 0) - 4 * i + [0.2, -0.1, 0.1, -0.2, 0.1, 0, -0.1, 0.1][i]!,
    );
    drifting[3]! -= 4;
    const got = oddPullsInOrder(order, drifting);
    expect(got.degreesOfFreedom).toBe(4);
    expect(got.critical).toBe(studentTFactor(0.05 / 8, 4));
    expect(got.pulls.filter(({ odd }) => odd).map(({ index }) => index)).toEqual([3]);
    expect(got.pulls[3]!.t).toBeLessThan(-10);
    const of = (letter: string): number[] => drifting.filter((_, i) => order[i] === letter);
    expect(oddPulls(of('A'), of('B')).pulls.some(({ odd }) => odd)).toBe(false);
  });

  it('is exceeded by luck as often as it says', () => {
    const normal = normalFrom(seededUniform(77));
    let flagged = 0;
    for (let trial = 0; trial < 2000; trial++) {
      const values = [...order].map(() => 300 + normal());
      if (oddPullsInOrder(order, values).pulls.some(({ odd }) => odd)) flagged++;
    }
    // Bonferroni over correlated residuals: at most 5 %, hardly less. 2000 trials have a standard error of 0.5 %.
    expect(flagged / 2000).toBeGreaterThan(0.033);
    expect(flagged / 2000).toBeLessThan(0.065);
  });

  it('refuses an order that leaves the others no scatter', () => {
    expect(codeOf(() => oddPullsInOrder('ABBA', [1, 2, 4, 3]))).toBe('too-few-degrees-of-freedom');
    expect(codeOf(() => oddPullsInOrder('ABBAAB', [1, 3, 4, 4, 5, 17]))).toBe('no-scatter');
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
