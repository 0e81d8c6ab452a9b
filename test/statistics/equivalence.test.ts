import { describe, expect, it } from 'vitest';
import {
  differenceBand,
  equivalenceOfMeans,
  equivalenceOverRange,
  studentTFactor,
  welchDifference,
} from '../../src/statistics/index.js';
import { examplePulls } from './example-pulls.js';
import { codeOf, expectPrinted } from './printed.js';

describe('equivalence of one figure', () => {
  const welch = welchDifference([301.2, 300.4, 302.1], [301.9, 300.8, 302.6]);

  it('agrees with the worked pair (figures by a separate program)', () => {
    expectPrinted(welch.difference, '0.5333333333');
    expectPrinted(welch.standardError, '0.7180219743');
    expectPrinted(welch.degreesOfFreedom, '3.983348443');
    const got = equivalenceOfMeans(welch, 4);
    expectPrinted(got.lower[0], '-0.9992198734');
    expectPrinted(got.upper[0], '2.06588654');
    expectPrinted(got.lowerPValue, '0.001632109739');
    expectPrinted(got.upperPValue, '0.004281105113');
    expectPrinted(got.smallestMargin, '2.06588654');
    expect(got.equivalent).toBe(true);
  });

  it('passes just above its smallest margin and not at it', () => {
    const { smallestMargin } = equivalenceOfMeans(welch, 4);
    expect(equivalenceOfMeans(welch, smallestMargin).equivalent).toBe(false);
    const above = equivalenceOfMeans(welch, smallestMargin * (1 + 1e-9));
    expect(above.equivalent).toBe(true);
    expect(Math.max(above.lowerPValue, above.upperPValue)).toBeCloseTo(0.05, 8);
  });

  it('gives a chance above one half where the difference itself lies beyond the margin', () => {
    expect(equivalenceOfMeans(welch, 0.1).upperPValue).toBeGreaterThan(0.5);
  });

  it('refuses a margin of 0 and an error of one half', () => {
    expect(codeOf(() => equivalenceOfMeans(welch, 0))).toBe('out-of-range');
    expect(codeOf(() => equivalenceOfMeans(welch, 4, { error: 0.5 }))).toBe('out-of-range');
  });
});

describe('equivalence over a range', () => {
  const { grid, baseline, candidate } = examplePulls(31);
  const band = differenceBand(grid, baseline, candidate);

  it('agrees with the worked example (figures by numpy and scipy 1.17 from the same steps)', () => {
    expectPrinted(studentTFactor(0.1, band.diagnostics.degreesOfFreedom), '1.9096220285');
    const got = equivalenceOverRange(band, 18);
    expectPrinted(got.smallestMargin, '18.2330719249');
    expect(got.equivalent).toBe(false);
    expect(equivalenceOverRange(band, 18.3).equivalent).toBe(true);
  });

  it('withholds the word on two pulls a side, however wide the margin', () => {
    const hint = differenceBand(grid, baseline.slice(0, 2), candidate.slice(0, 2));
    const got = equivalenceOverRange(hint, 1000);
    expect(got.inside).toBe(true);
    expect(got.equivalent).toBe(false);
  });

  it('counts a sensor that does not cancel', () => {
    const unsharedSensors = [grid.map(() => 3)];
    const wider = equivalenceOverRange(differenceBand(grid, baseline, candidate, { unsharedSensors }), 18);
    expect(wider.smallestMargin).toBeGreaterThan(equivalenceOverRange(band, 18).smallestMargin);
  });
});
