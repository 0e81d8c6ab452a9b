import { describe, expect, it } from 'vitest';
import { oscillationOf, powerDensity, taperedTransforms } from '../../../src/statistics/index.js';
import { codeOf } from '../printed.js';
import { normalFrom, seededUniform } from '../simulated-pulls.js';
import { timesAt } from './signals.js';

describe('power density by sine tapers', () => {
  const normal = normalFrom(seededUniform(51));
  const values = Float64Array.from({ length: 101 }, () => normal());

  it('is that of the tapered transforms, taken one by one', () => {
    const { frequencies, density } = powerDensity(values, 0.05, 3, 10);
    for (const bin of [0, 7, 50, 99]) {
      const each = taperedTransforms(values, 0.05, frequencies[bin]!, 3);
      const power = each.reduce((sum, { re, im }) => sum + re * re + im * im, 0);
      expect(density[bin]! / ((2 * 0.05 * power) / 3)).toBeCloseTo(1, 9);
    }
  });

  it('integrates to the variance (Parseval)', () => {
    const long = Float64Array.from({ length: 4000 }, () => normal());
    const { frequencies, density } = powerDensity(long, 0.05, 3, 10);
    const total = density.reduce((sum, each) => sum + each, 0) * frequencies[0]!;
    expect(total / (long.reduce((sum, each) => sum + each * each, 0) / 4000)).toBeCloseTo(1, 1);
  });

  it('refuses frequencies beyond half the sample rate', () => {
    expect(codeOf(() => powerDensity(values, 0.05, 3, 12))).toBe('out-of-range');
  });
});

describe('an oscillation', () => {
  const times = timesAt(0.05, 190);

  it.each([
    { f: 0.8, a: 2 },
    { f: 1.5, a: 1.2 },
    { f: 3.3, a: 0.6 },
  ])('of $a either way at $f a second is found in noise, on a trend', ({ f, a }) => {
    const normal = normalFrom(seededUniform(52));
    const signal = times.map(
      (t) => 110 - 0.8 * t + 0.05 * t * t + a * Math.sin(2 * Math.PI * f * t + 1) + 0.3 * normal(),
    );
    const found = oscillationOf(signal, 0.05);
    expect(found!.frequency / f).toBeCloseTo(1, 1);
    expect(found!.amplitude / a).toBeGreaterThan(0.9);
    expect(found!.amplitude / a).toBeLessThan(1.1);
    expect(found!.p).toBeLessThan(1e-4);
  });

  it('is found in at most 3 of 100 signals that have none, white or red', () => {
    const normal = normalFrom(seededUniform(53));
    let found = 0;
    const trials = 600;
    for (let trial = 0; trial < trials; trial++) {
      let last = 0;
      const memory = (trial % 3) * 0.3;
      if (
        oscillationOf(
          times.map(() => (last = memory * last + normal())),
          0.05,
        ) !== undefined
      )
        found++;
    }
    expect(found / trials).toBeLessThan(0.03);
  });

  it('is looked for only where asked', () => {
    const signal = times.map((t) => Math.sin(2 * Math.PI * 4 * t) + 0.01 * Math.cos(37.7 * t * t));
    expect(oscillationOf(signal, 0.05)!.frequency).toBeCloseTo(4, 1);
    expect(oscillationOf(signal, 0.05, { to: 2.5 })).toBeUndefined();
  });

  it('refuses short signals and empty ranges', () => {
    expect(codeOf(() => oscillationOf(times.slice(0, 20), 0.05))).toBe('too-few-points');
    expect(codeOf(() => oscillationOf(times, 0.05, { from: 9 }))).toBe('out-of-range');
  });
});
