import { describe, expect, it } from 'vitest';
import {
  lagFromShift,
  mean,
  powerOfTest,
  repeatabilityLimit,
  standardDeviation,
  studentTFactor,
} from '../../src/statistics/index.js';
import { expectPrinted } from './printed.js';

describe('repeats of one set-up', () => {
  // ISO 5725-1 by its definitions (from memory), evaluated with mpmath, 50 digits; the limit with 1.96, as the standard prints it.
  it('have the mean, scatter and repeatability limit that the definitions give', () => {
    const runs = [301.2, 300.4, 302.1, 300.9, 301.6];
    const scatter = standardDeviation(runs);
    expectPrinted(mean(runs), '301.24');
    expectPrinted(scatter, '0.650385');
    expectPrinted(1.96 * Math.SQRT2 * scatter, '1.802774');
    expect(repeatabilityLimit({ standardDeviation: scatter }) / 1.802774).toBeCloseTo(1, 4);
    expectPrinted(scatter / Math.sqrt(runs.length), '0.290861');
  });

  it('take Student t of 7 degrees of freedom as 2.364624 (JCGM 100 table G.2, from memory, prints 2.36)', () => {
    expectPrinted(studentTFactor(0.05, 7), '2.364624');
  });
});

describe('pairs of pulls', () => {
  // Paired t test with noncentral t, as statsmodels has it.
  it.each([
    [0.5, 34],
    [0.8, 15],
    [1, 10],
    [1.5, 6],
    [2, 5],
    [3, 4],
  ])('at %f scatters of the difference take %i for a power of 0.8, and one less is too few', (difference, pairs) => {
    const power = (n: number): number => powerOfTest(difference, 1, { varianceFactor: 1 / n, degreesOfFreedom: n - 1 });
    expect(power(pairs)).toBeGreaterThanOrEqual(0.8);
    expect(power(pairs - 1)).toBeLessThan(0.8);
  });
});

describe('a sensor that lags by 0.1 s', () => {
  it('sets the curves of ramps of 300 rpm/s up and down apart by 30 rpm each way', () => {
    expect(lagFromShift(30 + 30, 300)).toBeCloseTo(0.1, 14);
  });
});
