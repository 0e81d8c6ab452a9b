import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { settledCut } from '../../../src/statistics/index.js';
import { codeOf, expectPrinted } from '../printed.js';
import { normalFrom, seededUniform } from '../simulated-pulls.js';
import { timesAt, written } from './signals.js';

describe('the settled part of a signal', () => {
  it('is the worked example (figures by a separate program)', () => {
    const times = timesAt(0.25, 33);
    const values = times.map((t) => {
      const swing = 0.6 * Math.sin(2.6 * Math.PI * t) + 0.3 * Math.cos(1.42 * Math.PI * t + 1);
      return written(205 - 1.1 * t - 38 * Math.exp(-t / 0.55) + swing);
    });
    const cut = settledCut(times, values);
    expect(cut).toMatchObject({ row: 10, time: 2.5, readings: 23, atLimit: false });
    expectPrinted(cut.criterion, '0.00977051446');
    expectPrinted(cut.sumOfSquares, '5.168602149');
    expectPrinted(cut.slope, '-1.074849802');
  });

  it('is the least of the criterion, worked out cut by cut', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 12, maxLength: 40 }), (noise) => {
        const times = timesAt(0.1, noise.length);
        const values = times.map((t, i) => 100 - 30 * Math.exp(-t / 0.4) + noise[i]! / 50);
        const slow = Array.from({ length: Math.floor(0.6 * noise.length) + 1 }, (_, d) => {
          const [x, y] = [times.slice(d), values.slice(d)];
          const mean = (v: Float64Array): number => v.reduce((sum, each) => sum + each, 0) / v.length;
          const slope =
            x.reduce((sum, each, i) => sum + (each - mean(x)) * (y[i]! - mean(y)), 0) /
            x.reduce((sum, each) => sum + (each - mean(x)) ** 2, 0);
          const squares = y.reduce((sum, each, i) => sum + (each - mean(y) - slope * (x[i]! - mean(x))) ** 2, 0);
          return squares / x.length ** 2;
        });
        const cut = settledCut(times, values);
        expect(cut.criterion).toBeCloseTo(Math.min(...slow), 9);
        expect(slow[cut.row]).toBeCloseTo(Math.min(...slow), 9);
      }),
    );
  });

  it('does not mind readings that are missing, nor a large offset', () => {
    const times = timesAt(0.05, 200);
    const normal = normalFrom(seededUniform(3));
    const values = times.map((t) => 2e5 - 4e4 * Math.exp(-t / 0.5) + 300 * normal());
    const whole = settledCut(times, values);
    expect(
      settledCut(
        times,
        values.map((value) => value + 1e7),
      ).row,
    ).toBe(whole.row);
    const thin = values.map((value, i) => (i % 3 === 1 ? NaN : value));
    expect(Math.abs(settledCut(times, thin).time - whole.time)).toBeLessThan(0.6);
  });

  // 8 s at 20 rows a second, a start 40 standard deviations off, time constant 0.6 s: a median of 1.5, and 2.5 in 19 of 20.
  it('leaves little more than a standard deviation of a transient behind it', () => {
    const normal = normalFrom(seededUniform(9));
    const times = timesAt(0.05, 161);
    const left = Array.from({ length: 300 }, () => {
      const cut = settledCut(
        times,
        times.map((t) => 200 - 40 * Math.exp(-t / 0.6) + normal()),
      );
      return 40 * Math.exp(-cut.time / 0.6);
    }).sort((a, b) => a - b);
    expect(left[150]).toBeGreaterThan(1.2);
    expect(left[150]).toBeLessThan(1.9);
    expect(left[285]).toBeLessThan(3);
  });

  it('says when a signal bends all along', () => {
    const times = timesAt(0.1, 100);
    expect(
      settledCut(
        times,
        times.map((t) => 200 - (t - 5) ** 2),
      ).atLimit,
    ).toBe(true);
  });

  it('refuses few readings and times that do not rise', () => {
    expect(codeOf(() => settledCut(timesAt(1, 7), timesAt(1, 7)))).toBe('too-few-points');
    expect(codeOf(() => settledCut(timesAt(0, 9), timesAt(1, 9)))).toBe('not-increasing');
    expect(codeOf(() => settledCut(timesAt(1, 9), timesAt(1, 8)))).toBe('unequal-lengths');
  });
});
