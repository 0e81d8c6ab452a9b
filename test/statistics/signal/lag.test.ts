import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bestLagWindow,
  compensateLag,
  lagCost,
  lagFromRamps,
  lagFromShift,
  lagFromStep,
  localQuadraticFactors,
  sampleNoise,
  thirdDerivative,
} from '../../../src/statistics/index.js';
import { codeOf, expectPrinted } from '../printed.js';
import { normalFrom, seededUniform } from '../simulated-pulls.js';
import { timesAt, written } from './signals.js';

describe('the noise of a local quadratic', () => {
  // Sums of squares of savgol_coeffs(2M + 1, 2) of SciPy 1.17, value and first derivative, step 0.02.
  it.each([
    { m: 2, value: 0.4857142857142853, slope: 250 },
    { m: 5, value: 0.2074592074592087, slope: 22.727272727272712 },
    { m: 11, value: 0.09813664596273, slope: 2.4703557312252964 },
  ])('is that of the usual smoothing coefficients for M = $m', ({ m, value, slope }) => {
    const factors = localQuadraticFactors(0.02, m);
    expect(factors.value).toBeCloseTo(value, 12);
    expect(factors.slope / slope).toBeCloseTo(1, 12);
  });

  it('of five points is that of (-3, 12, 17, 12, -3)/35', () => {
    expect(localQuadraticFactors(1, 2).value).toBeCloseTo((9 + 144 + 289 + 144 + 9) / 35 ** 2, 14);
  });

  it.each([
    { m: 1, sd: '2.130727575' },
    { m: 2, sd: '0.9588683807' },
    { m: 5, sd: '0.3001941873' },
    { m: 10, sd: '0.1264530394' },
    { m: 20, sd: '0.06136161502' },
  ])('makes $sd of 0.2 when a lag of 0.3 s is taken off over M = $m at 50 a second', ({ m, sd }) => {
    expectPrinted(0.2 * lagCost(0.3, 0.02, m).noiseFactor, sd);
  });

  it('is balanced against bias by the worked window', () => {
    const best = bestLagWindow({ lag: 0.3, step: 0.02, noise: 0.2, thirdDerivative: 50, most: 60 });
    expect(best.halfWindow).toBe(11);
    expectPrinted(best.standardDeviation, '0.1132199032');
    expectPrinted(best.bias, '0.079');
    expectPrinted(best.rootSum, '0.1380570406');
  });
});

describe('a lag taken off', () => {
  it('is exact on a parabola, whatever the spacing of the times and the gaps', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 20, maxLength: 40 }),
        fc.integer({ min: 2, max: 4 }),
        (steps, halfWindow) => {
          const times = Float64Array.from(
            steps.map((_, i) => steps.slice(0, i + 1).reduce((sum, s) => sum + s / 20, 0)),
          );
          const values = times.map((t, i) => (i % 7 === 3 ? NaN : 3 + 2 * t - 0.5 * t * t));
          const found = compensateLag(times, values, { lag: 0.4, halfWindow });
          found.values.forEach((value, i) => {
            if (Number.isNaN(value)) return;
            expect(value).toBeCloseTo(3 + 2 * times[i]! - 0.5 * times[i]! ** 2 + 0.4 * (2 - times[i]!), 7);
          });
          expect(found.values.some((value) => !Number.isNaN(value))).toBe(true);
        },
      ),
    );
  });

  it('carries the noise it adds: that of the formula on even times, and of the scatter seen', () => {
    const normal = normalFrom(seededUniform(17));
    const times = timesAt(0.02, 20_000);
    const found = compensateLag(times, times.map(normal), { lag: 0.3, halfWindow: 8 });
    const inside = found.values.filter((value) => !Number.isNaN(value));
    const seen = Math.sqrt(inside.reduce((sum, value) => sum + value * value, 0) / inside.length);
    const { noiseFactor } = lagCost(0.3, 0.02, 8);
    expect(found.noiseFactors[500]).toBeCloseTo(noiseFactor, 9);
    expect(seen / noiseFactor).toBeGreaterThan(0.97);
    expect(seen / noiseFactor).toBeLessThan(1.03);
  });

  it('carries it on uneven times too, where value and slope go together', () => {
    const normal = normalFrom(seededUniform(18));
    const times = Float64Array.from([0, 0.1, 0.2, 1, 1.5, 2, 2.5]);
    const [seen, factor] = [0, 0].map(() => new Float64Array(1)) as [Float64Array, Float64Array];
    const trials = 6000;
    for (let trial = 0; trial < trials; trial++) {
      const { values, noiseFactors } = compensateLag(times, times.map(normal), { lag: 0.5, halfWindow: 3 });
      seen[0]! += values[3]! ** 2 / trials;
      factor[0] = noiseFactors[3]!;
    }
    expect(Math.sqrt(seen[0]!) / factor[0]!).toBeGreaterThan(0.97);
    expect(Math.sqrt(seen[0]!) / factor[0]!).toBeLessThan(1.03);
  });

  it('brings back what a first-order sensor made late', () => {
    const times = timesAt(0.01, 1200);
    const truth = (t: number): number => 40 + 3 * t + 4 * Math.sin(0.8 * t);
    let shown = truth(0) - 0.5 * 6.2;
    const values = times.map((t) => (shown += (1 - Math.exp(-0.01 / 0.5)) * (truth(t - 0.005) - shown)));
    const found = compensateLag(times, values, { lag: 0.5, halfWindow: 15 });
    const worst = Math.max(
      ...found.values.slice(300, 1100).map((value, i) => Math.abs(value - truth(times[i + 300]!))),
    );
    expect(worst).toBeLessThan(0.05);
    expect(Math.abs(values[600]! - truth(6))).toBeGreaterThan(1);
  });

  it('has no value at the ends, where a quadratic is mostly noise', () => {
    const found = compensateLag(timesAt(1, 20), timesAt(1, 20), { lag: 1, halfWindow: 3 });
    expect([...found.values].map((value) => Number.isNaN(value)).indexOf(false)).toBe(3);
    expect(found.values.slice(17).every(Number.isNaN)).toBe(true);
  });

  it('refuses a window below one row and a negative lag', () => {
    expect(codeOf(() => compensateLag(timesAt(1, 9), timesAt(1, 9), { lag: 1, halfWindow: 0 }))).toBe('out-of-range');
    expect(codeOf(() => compensateLag(timesAt(1, 9), timesAt(1, 9), { lag: -1, halfWindow: 1 }))).toBe('out-of-range');
  });
});

describe('what a window is chosen by', () => {
  it('is the third derivative by cubics (SciPy savgol_filter, deriv 3, window 11)', () => {
    const values = timesAt(0.1, 60).map((t) => Math.sin(1.3 * t));
    expect(thirdDerivative(values, 0.1, 5)).toBeCloseTo(1.5169762330370729, 9);
  });

  it('is the noise of a reading, whatever smooth signal lies under it', () => {
    const normal = normalFrom(seededUniform(4));
    const values = timesAt(0.01, 20_000).map((t) => 300 + 40 * Math.sin(0.5 * t) + 2 * normal());
    expect(sampleNoise(values)).toBeGreaterThan(1.95);
    expect(sampleNoise(values)).toBeLessThan(2.05);
  });
});

describe('a time constant from a step', () => {
  const times = timesAt(0.1, 60);
  const plunge = times.map((t) =>
    written(5 + 60 * Math.exp(-t / 0.8) + 0.3 * Math.sin(17 * t) + 0.2 * Math.cos(5.3 * t + 1)),
  );

  it('is that of least squares (SciPy 1.17 curve_fit, with its standard error)', () => {
    const found = lagFromStep(times, plunge, 0);
    expect(found.lag).toBeCloseTo(0.79888872, 6);
    expect(found.standardError).toBeCloseTo(0.00406432, 6);
    expect(found.final).toBeCloseTo(5.01188351, 5);
    expect(found.height).toBeCloseTo(60.00060915, 4);
    expect(found.degreesOfFreedom).toBe(57);
  });

  it('needs not be told when the step was', () => {
    const before = timesAt(0.1, 20).map(() => 65);
    const whole = Float64Array.from([...before, ...plunge]);
    const found = lagFromStep(timesAt(0.1, 80), whole);
    expect(found.row).toBeGreaterThanOrEqual(20);
    expect(found.row).toBeLessThan(24);
    expect(Math.abs(found.lag - 0.8)).toBeLessThan(0.02);
  });

  it('refuses a record that ends too early, and a step lost in noise', () => {
    expect(codeOf(() => lagFromStep(times.slice(0, 8), plunge.slice(0, 8), 0))).toBe('not-converged');
    const normal = normalFrom(seededUniform(8));
    expect(
      codeOf(() =>
        lagFromStep(
          times,
          times.map((t) => Math.exp(-t / 0.8) + normal()),
          0,
        ),
      ),
    ).toMatch(/out-of-range|not-converged/);
  });
});

describe('a time constant from an up and a down ramp', () => {
  it('is half the shift over the rate: 36 rpm at 300 rpm/s make 0.06 s', () => {
    expect(lagFromShift(36, 300)).toBeCloseTo(0.06, 14);
    expect(lagFromShift(36, 300, 420)).toBeCloseTo(0.05, 14);
  });

  const truth = (speed: number): number => 30 + 6 * Math.sin(speed / 900) + speed / 500;
  const curve = (rate: number, lag: number, way: 1 | -1, noise: () => number = () => 0) => {
    const speeds = Float64Array.from({ length: 200 }, (_, i) => 2500 + 20 * i);
    return { speeds, values: speeds.map((speed) => truth(speed - way * lag * rate) + noise()), rate };
  };

  it.each([0.1, 0.6, 1.5])('is found from the whole curves: %d s', (lag) => {
    const found = lagFromRamps(curve(300, lag, 1), curve(400, lag, -1));
    expect(found.lag).toBeCloseTo(lag, 2);
  });

  it('comes with a standard error that covers', () => {
    const normal = normalFrom(seededUniform(12));
    const noise = (): number => 0.2 * normal();
    let inside = 0;
    for (let trial = 0; trial < 60; trial++) {
      const { lag, standardError } = lagFromRamps(curve(300, 0.5, 1, noise), curve(300, 0.5, -1, noise));
      if (Math.abs(lag - 0.5) < 2 * standardError) inside++;
    }
    // Straight lines between rows average some of the noise away, so that the error given is on the wide side.
    expect(inside).toBeGreaterThanOrEqual(53);
  });

  it('refuses ramps that lie the wrong way round, and such as do not overlap', () => {
    expect(codeOf(() => lagFromRamps(curve(300, -0.5, 1), curve(300, -0.5, -1)))).toBe('out-of-range');
    const { values, rate } = curve(300, 0, 1);
    const above = { speeds: Float64Array.from({ length: 200 }, (_, i) => 9000 + i), values, rate };
    expect(codeOf(() => lagFromRamps(curve(300, 0.5, 1), above))).toBe('too-few-points');
  });
});
