import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  driftBand,
  driftDifference,
  orderDesign,
  studentTFactor,
  welchDifference,
} from '../../src/statistics/index.js';
import { examplePulls } from './example-pulls.js';
import { normalFrom, seededUniform } from './simulated-pulls.js';
import { codeOf, expectPrinted } from './printed.js';

// All printed figures of this file: worked beforehand by a separate program.
describe('order of pulls', () => {
  it.each([
    { order: 'ABA', none: '1.5', linear: '1.5' },
    { order: 'ABBA', none: '1.0', linear: '1.0' },
    { order: 'ABABA', none: '0.8333333333', linear: '0.8333333333', quadratic: '1.09375' },
    { order: 'ABBAAB', none: '0.6666666667', linear: '0.6730769231', quadratic: '0.6730769231' },
    { order: 'ABABAB', none: '0.6666666667', linear: '0.7291667' },
    { order: 'ABBABBA', none: '0.5833333333', linear: '0.5833333333', quadratic: '0.7777777778' },
    { order: 'ABABABA', none: '0.5833333333', linear: '0.5833333333', quadratic: '0.65625' },
    { order: 'ABBABAAB', none: '0.5', linear: '0.5', quadratic: '0.5' },
    { order: 'ABBABABBA', none: '0.45', linear: '0.45', quadratic: '0.4883720930' },
    { order: 'ABBAABBAAB', none: '0.4', linear: '0.4004854369', quadratic: '0.4004854369' },
    { order: 'ABBAABBAABBA', none: '0.3333333333', linear: '0.3333333333', quadratic: '0.336358' },
    { order: 'ABBAABBA', none: '0.5', linear: '0.5', quadratic: '0.525' },
    { order: 'AABBBBAA', none: '0.5', linear: '0.5', quadratic: '2.1' },
    { order: 'AAABBB', none: '0.6666666667', linear: '2.9166667' },
    { order: 'AAAABBBB', none: '0.5', linear: '2.1' },
  ])('$order has the worked variance factors', ({ order, none, linear, quadratic }) => {
    expectPrinted(orderDesign(order, { drift: 'none' }).varianceFactor, none);
    expectPrinted(orderDesign(order).varianceFactor, linear);
    if (quadratic !== undefined) expectPrinted(orderDesign(order, { drift: 'quadratic' }).varianceFactor, quadratic);
  });

  it('calls blocks confounded and alternation not', () => {
    expect(orderDesign('AAABBB').confounded).toBe(true);
    expect(orderDesign('AAAABBBB').confounded).toBe(true);
    expect(orderDesign('AABBBBAA', { drift: 'quadratic' }).confounded).toBe(true);
    expect(orderDesign('ABBAAB').confounded).toBe(false);
  });

  it('cannot fit a quadratic through an order that is one', () => {
    expect(codeOf(() => orderDesign('ABA', { drift: 'quadratic' }))).toBe('confounded');
    expect(codeOf(() => orderDesign('ABBA', { drift: 'quadratic' }))).toBe('confounded');
    expect(() => orderDesign('ABBA', { drift: 'quadratic' })).toThrow('the quadratic drift must tell apart from');
  });

  it('counts by the clock where the rests differ', () => {
    const even = orderDesign('ABBAAB', { times: [0, 10, 20, 30, 40, 50] });
    expect(even.varianceFactor).toBeCloseTo(orderDesign('ABBAAB').varianceFactor, 12);
    const uneven = orderDesign('ABBAAB', { times: [0, 5, 10, 40, 45, 120] });
    expect(uneven.varianceFactor).toBeGreaterThan(even.varianceFactor);
  });

  it('refuses other letters, one side alone, and clock times of another length', () => {
    expect(codeOf(() => orderDesign('ABC'))).toBe('out-of-range');
    expect(codeOf(() => orderDesign('AAAA'))).toBe('out-of-range');
    expect(codeOf(() => orderDesign(''))).toBe('out-of-range');
    expect(codeOf(() => orderDesign('ABBA', { times: [1, 2] }))).toBe('unequal-lengths');
  });
});

describe('difference with drift', () => {
  const values = [300.0, 306.9, 307.8, 302.1, 303.4, 309.9];

  it('agrees with the worked ABBAAB', () => {
    const got = driftDifference('ABBAAB', values);
    expectPrinted(got.uncorrected, '6.366666667');
    expectPrinted(got.difference, '6.107692308');
    expectPrinted(got.slope?.value, '0.7769230769');
    expectPrinted(got.slope?.standardError, '0.05617667256');
    expectPrinted(got.scatter?.standardDeviation, '0.2338821385');
    expectPrinted(got.interval?.standardError, '0.191879866');
    expect(got.interval?.degreesOfFreedom).toBe(3);
    expectPrinted(got.interval?.factor, '3.182446305');
    expectPrinted(got.interval?.lower, '5.497044937');
    expectPrinted(got.interval?.upper, '6.718339678');
  });

  it('agrees with the worked quadratic', () => {
    const got = driftDifference('ABBAAB', values, { drift: 'quadratic' });
    expectPrinted(got.difference, '6.107692308');
    expectPrinted(got.interval?.standardError, '0.2336360392');
    expect(got.degreesOfFreedom).toBe(2);
  });

  it('agrees with the worked blocks AAABBB, and warns', () => {
    const got = driftDifference('AAABBB', [300.0, 300.8, 302.1, 306.9, 307.8, 309.9]);
    expectPrinted(got.uncorrected, '7.233333333');
    expectPrinted(got.difference, '3.408333333');
    expectPrinted(got.interval?.standardError, '0.6860886186');
    expectPrinted(got.interval?.lower, '1.224893144');
    expectPrinted(got.interval?.upper, '5.591773523');
    expect(got.confounded).toBe(true);
  });

  it('brackets a single A-B-A, without an interval of its own', () => {
    const got = driftDifference('ABA', [300, 310, 302]);
    expect(got.difference).toBeCloseTo(9, 12);
    expect(got).not.toHaveProperty('interval');
    expect(got).not.toHaveProperty('scatter');
  });

  it('gives the bracket sqrt(1.5) times an earlier scatter', () => {
    const got = driftDifference('ABA', [300, 310, 302], {
      earlierScatter: { standardDeviation: 1, degreesOfFreedom: 8 },
    });
    expectPrinted(got.interval?.standardError, '1.224745');
    expect(got.interval?.factor).toBe(studentTFactor(1 - 0.95, 8));
  });

  it('is the difference of means with pooled scatter when no drift is fitted', () => {
    const got = driftDifference('ABBAAB', values, { drift: 'none' });
    const welch = welchDifference([300.0, 302.1, 303.4], [306.9, 307.8, 309.9]);
    expect(got.difference).toBeCloseTo(welch.difference, 10);
    expect(got.interval?.standardError).toBeCloseTo(welch.standardError, 10);
    expect(got.degreesOfFreedom).toBe(4);
    expect(got).not.toHaveProperty('slope');
  });

  it('is blind to any straight drift, of any size', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (slope) => {
        const drifted = driftDifference(
          'ABBAAB',
          values.map((y, i) => y + slope * i),
        );
        expect(drifted.difference).toBeCloseTo(driftDifference('ABBAAB', values).difference, 9);
        expect(drifted.interval?.standardError).toBeCloseTo(0.191879866, 8);
      }),
    );
  });

  it('shares its degrees of freedom between the sides, whose scatter it tells apart', () => {
    const order = 'ABBABAABBA';
    const normal = normalFrom(seededUniform(31));
    const ratios: number[] = [];
    const pooled: number[] = [];
    for (let trial = 0; trial < 1500; trial++) {
      const values = [...order].map((letter, i) => 300 - 2 * i + (letter === 'A' ? 1 : 3) * normal());
      const { scatter, scatterOf } = driftDifference(order, values);
      const { baseline, candidate } = scatterOf!;
      expect(baseline.degreesOfFreedom + candidate.degreesOfFreedom).toBeCloseTo(7, 9);
      const squares = [baseline, candidate].map((one) => one.standardDeviation ** 2 * one.degreesOfFreedom);
      expect((squares[0]! + squares[1]!) / 7).toBeCloseTo(scatter!.standardDeviation ** 2, 9);
      ratios.push(Math.log(candidate.standardDeviation / baseline.standardDeviation));
      pooled.push(scatter!.standardDeviation ** 2);
    }
    const average = (list: number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;
    // A little of the wild side's scatter goes into the slope and so into the other side's residuals.
    expect(Math.exp(average(ratios))).toBeGreaterThan(2.2);
    expect(Math.exp(average(ratios))).toBeLessThan(3);
    expect(average(pooled)).toBeCloseTo((1 + 9) / 2, 0);
  });

  it('refuses a perfect fit, which no engine gives, and values of another length', () => {
    expect(codeOf(() => driftDifference('ABBA', [1, 3, 4, 4]))).toBe('no-scatter');
    expect(codeOf(() => driftDifference('ABBA', [1, 3, 4]))).toBe('unequal-lengths');
    expect(codeOf(() => driftDifference('ABA', [1, 3, 4], { earlierScatter: { standardDeviation: -1 } }))).toBe(
      'out-of-range',
    );
  });
});

describe('band with drift', () => {
  const { grid, baseline, candidate } = examplePulls(31);
  const order = 'ABBAAB';
  const inOrder = (perPull: number): number[][] => {
    const queue = { A: [...baseline], B: [...candidate] };
    return Array.from(order, (letter, i) => queue[letter as 'A' | 'B'].shift()!.map((y) => y + perPull * i));
  };

  it('agrees with the worked example plus 1.2 N m a pull', () => {
    const band = driftBand(grid, order, inOrder(1.2));
    expectPrinted(band.diagnostics.gain, '2.155570207');
    expectPrinted(band.diagnostics.degreesOfFreedom, '6.46671062');
    expectPrinted(band.diagnostics.roughness, '8.901803942');
    expectPrinted(band.diagnostics.factor, '4.73513298');
    const d = band.difference[30]!;
    expectPrinted(d, '12.4106619');
    expectPrinted(band.standardError[30], '2.028284427');
    expectPrinted(d - band.simultaneousHalfWidth[30]!, '2.806465416');
    expectPrinted(d + band.simultaneousHalfWidth[30]!, '22.01485838');
  });

  it('is blind to the size of the drift', () => {
    const slow = driftBand(grid, order, inOrder(0));
    const fast = driftBand(grid, order, inOrder(40));
    fast.difference.forEach((d, j) => {
      expect(d).toBeCloseTo(slow.difference[j]!, 9);
      expect(fast.simultaneousHalfWidth[j]).toBeCloseTo(slow.simultaneousHalfWidth[j]!, 8);
    });
  });

  it('refuses an order that leaves too little, a copied channel, and pulls that do not match the order', () => {
    expect(codeOf(() => driftBand(grid, 'ABBA', inOrder(0).slice(0, 4)))).toBe('too-few-degrees-of-freedom');
    expect(codeOf(() => driftBand(grid, order, inOrder(0).slice(0, 5)))).toBe('unequal-lengths');
    const clipped = inOrder(1).map((pull) => pull.map((y, j) => (j > 4 ? 330 : y)));
    expect(codeOf(() => driftBand(grid, order, clipped))).toBe('no-scatter');
  });
});
