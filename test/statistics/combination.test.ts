import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combineUncertainty, effectiveDegreesOfFreedom } from '../../src/statistics/index.js';
import { codeOf, expectPrinted } from './printed.js';

describe('pulls and sensors together', () => {
  it('agrees with the worked 1.2 (4.1) and 0.9', () => {
    const got = combineUncertainty({ standardUncertainty: 1.2, degreesOfFreedom: 4.1 }, [{ standardUncertainty: 0.9 }]);
    expectPrinted(got.standardUncertainty, '1.5');
    expectPrinted(got.degreesOfFreedom, '10.00976562');
    expectPrinted(got.factor, '2.227844233');
    expectPrinted(got.halfWidth, '3.341766349');
    expectPrinted(got.floor, '3.299929488');
  });

  it('agrees with the Welch-Satterthwaite example 0.8 (4), 0.5 (9) before truncation (JCGM 100 G.4.1)', () => {
    expectPrinted(
      effectiveDegreesOfFreedom([
        { standardUncertainty: 0.8, degreesOfFreedom: 4 },
        { standardUncertainty: 0.5, degreesOfFreedom: 9 },
      ]),
      '7.24408',
    );
  });

  it('reproduces the effective degrees of freedom 16.7 of the end gauge (JCGM 100 H.1.6)', () => {
    const parts = [
      { standardUncertainty: 25, degreesOfFreedom: 18 },
      { standardUncertainty: 9.7, degreesOfFreedom: 25.6 },
      { standardUncertainty: 2.9, degreesOfFreedom: 50 },
      { standardUncertainty: 16.6, degreesOfFreedom: 2 },
    ];
    expect(effectiveDegreesOfFreedom(parts)).toBeCloseTo(16.7, 0);
  });

  it('is never narrower than the pulls alone, whatever the sensors', () => {
    const part = fc.record({
      standardUncertainty: fc.double({ min: 0, max: 10, noNaN: true }),
      degreesOfFreedom: fc.double({ min: 1, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(part, fc.array(part, { maxLength: 4 }), (pulls, sensors) => {
        const together = combineUncertainty(pulls, sensors).halfWidth;
        expect(together).toBeGreaterThanOrEqual(combineUncertainty(pulls, []).halfWidth * (1 - 1e-12));
      }),
    );
  });

  it('lets the floor bind where the smaller factor would narrow the answer', () => {
    const got = combineUncertainty({ standardUncertainty: 1, degreesOfFreedom: 2 }, [{ standardUncertainty: 0.3 }]);
    expect(got.plainHalfWidth).toBeLessThan(got.floor);
    expect(got.halfWidth).toBe(got.floor);
  });

  it('answers 0 where nothing is uncertain', () => {
    const got = combineUncertainty({ standardUncertainty: 0, degreesOfFreedom: 3 }, []);
    expect(got.halfWidth).toBe(0);
    expect(got.degreesOfFreedom).toBe(Infinity);
  });

  it('refuses a negative uncertainty and one without degrees of freedom', () => {
    expect(codeOf(() => combineUncertainty({ standardUncertainty: -1 }, []))).toBe('out-of-range');
    expect(() =>
      combineUncertainty({ standardUncertainty: 1 }, [{ standardUncertainty: 1, degreesOfFreedom: 0 }]),
    ).toThrow('sensors[0].degreesOfFreedom must be above 0');
  });
});
