import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studentInterval, welchDifference } from '../../src/statistics/index.js';
import { examplePulls, plainMean } from './example-pulls.js';
import { codeOf, expectPrinted } from './printed.js';

describe('Welch difference', () => {
  it('agrees with a worked pair of three pulls (figures by a separate program; t, nu and p as scipy 1.17 gives them)', () => {
    const got = welchDifference([301.2, 300.4, 302.1], [304.9, 307.3, 305.2]);
    expectPrinted(got.difference, '4.566666667');
    expectPrinted(got.standardError, '0.9006170724');
    expectPrinted(got.degreesOfFreedom, '3.435205539');
    expectPrinted(got.factor, '2.96608102');
    expectPrinted(got.lower, '1.895363462');
    expectPrinted(got.upper, '7.237969871');
    expectPrinted(got.pValue, '0.01058583141');
  });

  it('agrees with the worked range mean of the example pulls', () => {
    const { baseline, candidate } = examplePulls(31);
    const got = welchDifference(baseline.map(plainMean), candidate.map(plainMean));
    expectPrinted(got.difference, '8.941620442');
    expectPrinted(got.standardError, '2.181625504');
    expectPrinted(got.degreesOfFreedom, '3.992377899');
    expectPrinted(got.lower, '2.879893606');
    expectPrinted(got.upper, '15.00334728');
  });

  const readings = fc.array(fc.double({ min: 200, max: 400, noNaN: true }), { minLength: 2, maxLength: 8 });
  const varied = readings.filter((values) => Math.max(...values) - Math.min(...values) > 1e-3);

  it('changes only its sign when the sides are swapped', () => {
    fc.assert(
      fc.property(varied, varied, (a, b) => {
        const there = welchDifference(a, b);
        const back = welchDifference(b, a);
        expect(back.difference).toBeCloseTo(-there.difference, 10);
        expect(back.standardError).toBeCloseTo(there.standardError, 10);
        expect(back.degreesOfFreedom).toBeCloseTo(there.degreesOfFreedom, 8);
      }),
    );
  });

  it('has degrees of freedom between those of the smaller side and of both', () => {
    fc.assert(
      fc.property(varied, varied, (a, b) => {
        const { degreesOfFreedom } = welchDifference(a, b);
        expect(degreesOfFreedom).toBeGreaterThanOrEqual(Math.min(a.length, b.length) - 1 - 1e-9);
        expect(degreesOfFreedom).toBeLessThanOrEqual(a.length + b.length - 2 + 1e-9);
      }),
    );
  });

  it('widens with the confidence', () => {
    const at = (confidence: number) => welchDifference([1, 2, 4], [3, 5, 9], { confidence }).halfWidth;
    expect(at(0.99)).toBeGreaterThan(at(0.95));
    expect(at(0.95)).toBeGreaterThan(at(0.9));
  });

  it('says what one pull cannot tell', () => {
    expect(() => welchDifference([300], [310, 311])).toThrow(
      'Welch difference: baseline must hold at least 2 pulls, got 1. One pull a side cannot tell a change from luck. ' +
        'Give a repeatability from earlier tests, or run two more.',
    );
  });

  it('refuses copies, numbers that are none, and a confidence of 1', () => {
    expect(codeOf(() => welchDifference([300, 300], [310, 310]))).toBe('no-scatter');
    expect(codeOf(() => welchDifference([300, Infinity], [310, 311]))).toBe('not-finite');
    expect(codeOf(() => welchDifference([300, 301], [310, 311], { confidence: 1 }))).toBe('out-of-range');
  });
});

describe('Student interval', () => {
  it('is the normal interval when the scatter is known exactly', () => {
    expectPrinted(studentInterval(0, 1, Infinity).upper, '1.959963985');
  });
});
