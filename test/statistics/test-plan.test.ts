import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  detectableDifference,
  equalSides,
  orderDesign,
  powerOfEquivalence,
  powerOfTest,
  pullsNeeded,
  studentTFactor,
  welchDifference,
  withOwnInstruments,
} from '../../src/statistics/index.js';
import { normalFrom, seededUniform } from './simulated-pulls.js';
import { codeOf, expectPrinted } from './printed.js';

// Printed figures without another source: worked beforehand by a separate program.
describe('power of a test', () => {
  it.each([
    { ratio: 2, perSide: 6, power: '0.8764177714' },
    { ratio: 1.5, perSide: 9, power: '0.8476101042' },
    { ratio: 3, perSide: 4, power: '0.9389357455' },
    { ratio: 1.5, perSide: 8, power: '0.796545' },
    { ratio: 2, perSide: 5, power: '0.790542' },
  ])('is $power at $ratio scatters and $perSide pulls a side', ({ ratio, perSide, power }) => {
    expectPrinted(powerOfTest(ratio, 1, equalSides(perSide)), power);
  });

  it.each([
    { ratio: 2, order: 'ABBAABABBAAB', power: '0.8673965789' },
    { ratio: 3, order: 'ABBAAB', power: '0.6860401795' },
    { ratio: 3, order: 'ABBABAAB', power: '0.9185941735' },
  ])('is $power at $ratio scatters in the order $order with linear drift', ({ ratio, order, power }) => {
    expectPrinted(powerOfTest(ratio, 1, orderDesign(order)), power);
  });

  it('is the chance of a false alarm where there is nothing to find', () => {
    expect(powerOfTest(0, 1, equalSides(4))).toBe(0.05);
    expect(powerOfTest(1e-9, 1, equalSides(4))).toBeCloseTo(0.05, 12);
  });

  it('grows with the difference and does not care for its sign', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.integer({ min: 2, max: 20 }),
        (difference, perSide) => {
          const design = equalSides(perSide);
          const here = powerOfTest(difference, 1, design);
          expect(powerOfTest(-difference, 1, design)).toBe(here);
          expect(powerOfTest(difference * 1.1, 1, design)).toBeGreaterThanOrEqual(here);
        },
      ),
    );
  });

  it('refuses a scatter of 0 and a design without degrees of freedom', () => {
    expect(codeOf(() => powerOfTest(1, 0, equalSides(3)))).toBe('out-of-range');
    expect(codeOf(() => powerOfTest(1, 1, { varianceFactor: 1.5, degreesOfFreedom: 0 }))).toBe('out-of-range');
    expect(codeOf(() => equalSides(1))).toBe('out-of-range');
  });
});

describe('pulls needed', () => {
  it.each([
    { ratio: 0.5, at80: 64, at90: 86 },
    { ratio: 0.8, at80: 26, at90: 34 },
    { ratio: 1, at80: 17, at90: 23 },
    { ratio: 1.5, at80: 9, at90: 11 },
    { ratio: 2, at80: 6, at90: 7 },
    { ratio: 3, at80: 4, at90: 4 },
    { ratio: 4, at80: 3, at90: 3 },
  ])(
    'a side are $at80 for power 0.8 and $at90 for 0.9 at $ratio scatters (usual two-sample tables)',
    ({ ratio, at80, at90 }) => {
      expect(pullsNeeded(ratio * 1.8, 1.8).perSide).toBe(at80);
      expect(pullsNeeded(ratio * 1.8, 1.8, { power: 0.9 }).perSide).toBe(at90);
      expect(pullsNeeded(ratio * 1.8, 1.8).total).toBe(2 * at80);
    },
  );

  it('are the fewest: one pull less misses the power', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 4, noNaN: true }), (ratio) => {
        const { perSide, power } = pullsNeeded(ratio, 1);
        expect(power).toBeGreaterThanOrEqual(0.8);
        if (perSide > 2) expect(powerOfTest(ratio, 1, equalSides(perSide - 1))).toBeLessThan(0.8);
      }),
      { numRuns: 30 },
    );
  });

  it('refuses nothing to find, a hopeless difference, and a power below the error', () => {
    expect(codeOf(() => pullsNeeded(0, 1))).toBe('out-of-range');
    expect(codeOf(() => pullsNeeded(1e-6, 1))).toBe('out-of-range');
    expect(codeOf(() => pullsNeeded(1, 1, { power: 0.04 }))).toBe('out-of-range');
  });
});

describe('a plan with instruments that were not the same on both sides', () => {
  it('is the chance that pulls drawn with such errors give', () => {
    const normal = normalFrom(seededUniform(5));
    const [perSide, own, difference] = [6, 0.8, 3];
    const design = withOwnInstruments(equalSides(perSide), own ** 2);
    expect(design.varianceFactor).toBeCloseTo(2 / perSide + own ** 2, 12);
    const factor = studentTFactor(0.05, design.degreesOfFreedom);
    const trials = 20000;
    let found = 0;
    for (let trial = 0; trial < trials; trial++) {
      const side = (middle: number): number[] => Array.from({ length: perSide }, () => middle + normal());
      const { difference: d, standardError } = welchDifference(side(0), side(difference));
      if (Math.abs(d + own * normal()) > factor * Math.hypot(standardError, own)) found++;
    }
    // Standard error of the count 0.3 %; the degrees of freedom are an approximation.
    expect(Math.abs(found / trials - powerOfTest(difference, 1, design))).toBeLessThan(0.015);
  });

  it('has a ceiling that no number of pulls lifts', () => {
    const reached = [3, 30, 3000, 300_000].map((perSide) =>
      powerOfTest(3, 1, withOwnInstruments(equalSides(perSide), 1.5 ** 2)),
    );
    reached.slice(1).forEach((one, i) => expect(one).toBeGreaterThan(reached[i]!));
    // A deviation of 2 standard errors beyond 1.959964: the normal table, 1 - Φ(-0.040036) = 0.515968, and Φ(-3.96) more.
    expect(reached.at(-1)!).toBeCloseTo(0.515968 + 3.7e-5, 4);
    expect(
      codeOf(() => pullsNeeded(3, 1, { design: (perSide) => withOwnInstruments(equalSides(perSide), 1.5 ** 2) })),
    ).toBe('out-of-range');
  });

  it('is the plain design where they leave nothing, and refuses a share below zero', () => {
    expect(withOwnInstruments(equalSides(4), 0)).toEqual(equalSides(4));
    expect(codeOf(() => withOwnInstruments(equalSides(4), -1))).toBe('out-of-range');
  });
});

describe('detectable difference', () => {
  it('undoes the power', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.99, noNaN: true }),
        fc.integer({ min: 2, max: 15 }),
        (power, perSide) => {
          const design = equalSides(perSide);
          const difference = detectableDifference(2.5, design, { power });
          expect(powerOfTest(difference, 2.5, design)).toBeCloseTo(power, 10);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('agrees with the table of pulls: 6 a side find 2 scatters with 0.8764177714', () => {
    expect(detectableDifference(1, equalSides(6), { power: 0.8764177714 })).toBeCloseTo(2, 8);
  });
});

describe('power of an equivalence test', () => {
  it.each([
    { margin: 2, difference: 0, varianceFactor: 0.4, degreesOfFreedom: 8, power: '0.7835798747' },
    { margin: 2, difference: 0, varianceFactor: 2 / 3, degreesOfFreedom: 4, power: '0.3814983582' },
    { margin: 2, difference: 0.5, varianceFactor: 0.2, degreesOfFreedom: 18, power: '0.9427647253' },
  ])('is $power for $difference inside $margin', ({ margin, difference, power, ...design }) => {
    expectPrinted(powerOfEquivalence(margin, difference, 1, design), power);
    expectPrinted(powerOfEquivalence(margin * 3, -difference * 3, 3, design), power);
  });

  it.each([
    { ratio: 1, perSide: 18 },
    { ratio: 1.5, perSide: 9 },
    { ratio: 2, perSide: 6 },
    { ratio: 3, perSide: 3 },
  ])('first reaches 0.8 with $perSide pulls a side for a margin of $ratio scatters', ({ ratio, perSide }) => {
    expect(powerOfEquivalence(ratio, 0, 1, equalSides(perSide))).toBeGreaterThanOrEqual(0.8);
    expect(powerOfEquivalence(ratio, 0, 1, equalSides(perSide - 1))).toBeLessThan(0.8);
  });

  it('is at most the error at the margin itself, and almost nothing beyond', () => {
    expect(powerOfEquivalence(2, 2, 1, equalSides(10))).toBeLessThanOrEqual(0.05);
    expect(powerOfEquivalence(2, 2, 1, equalSides(10))).toBeCloseTo(0.05, 2);
    expect(powerOfEquivalence(2, 6, 1, equalSides(10))).toBeLessThan(1e-6);
  });

  it('is 0 where no scatter seen in practice leaves room', () => {
    expect(powerOfEquivalence(0.01, 0, 1, { varianceFactor: 0.5, degreesOfFreedom: 1000 })).toBe(0);
  });

  it('refuses a margin of 0', () => {
    expect(codeOf(() => powerOfEquivalence(0, 0, 1, equalSides(3)))).toBe('out-of-range');
  });
});
