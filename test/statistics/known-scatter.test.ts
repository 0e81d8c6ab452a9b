import { describe, expect, it } from 'vitest';
import { differenceWithKnownScatter, joinScatter, repeatabilityLimit } from '../../src/statistics/index.js';
import { codeOf, expectPrinted } from './printed.js';

describe('difference with the scatter of earlier tests', () => {
  const one = { baseline: 1, candidate: 1 };

  it('agrees with the worked single pulls (1.8 from 12 degrees of freedom)', () => {
    const got = differenceWithKnownScatter(0, one, { standardDeviation: 1.8, degreesOfFreedom: 12 });
    expectPrinted(got.factor, '2.17881283');
    expectPrinted(got.halfWidth, '5.546351976');
  });

  it('refuses no pull at all, and a scatter from nothing', () => {
    expect(codeOf(() => differenceWithKnownScatter(0, { ...one, candidate: 0 }, { standardDeviation: 1 }))).toBe(
      'out-of-range',
    );
    expect(codeOf(() => differenceWithKnownScatter(0, one, { standardDeviation: 1, degreesOfFreedom: 0 }))).toBe(
      'too-few-degrees-of-freedom',
    );
  });
});

describe('joined scatter', () => {
  it('agrees with the worked 2.6 (4) and 1.8 (12)', () => {
    const got = joinScatter(
      { standardDeviation: 2.6, degreesOfFreedom: 4 },
      { standardDeviation: 1.8, degreesOfFreedom: 12 },
    );
    expectPrinted(got.varianceRatio, '2.086419753');
    expectPrinted(got.pValue, '0.145705738');
    expect(got.agrees).toBe(true);
    if (!got.agrees) return;
    expectPrinted(got.standardDeviation, '2.029778313');
    expect(got.degreesOfFreedom).toBe(16);
    expectPrinted(differenceWithKnownScatter(0, { baseline: 1, candidate: 1 }, got).factor, '2.119905299');
  });

  it('does not join a scatter that has grown beyond luck', () => {
    const got = joinScatter(
      { standardDeviation: 6, degreesOfFreedom: 4 },
      { standardDeviation: 1.8, degreesOfFreedom: 12 },
    );
    expect(got.agrees).toBe(false);
    expect(got).not.toHaveProperty('standardDeviation');
  });

  it('refuses a scatter that claims to be known exactly', () => {
    expect(codeOf(() => joinScatter({ standardDeviation: 1 }, { standardDeviation: 1, degreesOfFreedom: 3 }))).toBe(
      'out-of-range',
    );
  });
});

describe('repeatability limit', () => {
  it('is 1.96 sqrt 2 times a scatter known well (ISO 5725-1; the standard rounds 2.7719 to 2.8)', () => {
    expectPrinted(repeatabilityLimit({ standardDeviation: 1 }), '2.7718');
    expect(repeatabilityLimit({ standardDeviation: 1 })).toBeCloseTo(1.96 * Math.SQRT2, 3);
  });

  it('takes Student t where few pulls stand behind the scatter', () => {
    expectPrinted(repeatabilityLimit({ standardDeviation: 1, degreesOfFreedom: 4 }) / Math.SQRT2, '2.776445105');
  });

  it('refuses a scatter of 0', () => {
    expect(codeOf(() => repeatabilityLimit({ standardDeviation: 0 }))).toBe('out-of-range');
  });
});
