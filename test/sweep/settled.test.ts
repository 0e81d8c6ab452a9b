import { describe, expect, it } from 'vitest';
import { pullQuality, settledTogether, type Pull } from 'coldside/sweep';
import { seeded } from '../support/random.js';
import { madePull, sweep } from './made-pulls.js';

/** Boost of 110 kPa that begins lower by `low` and builds with a time constant, with normal noise of 0.3 kPa unless said. */
function building(low: number, seconds: number, seed: number, scatter = 0.3): Pull {
  const random = seeded(seed);
  const noise = (): number => scatter * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return madePull({ 'RPM (rpm)': sweep, 'Boost (kPa)': (t) => 110 - low * Math.exp(-t / seconds) + noise() });
}

describe('the start of a pull', () => {
  it('is not cut where nothing builds up, though the straight line alone would cut some of every pull', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { settled } = pullQuality(building(0, 1, seed));
      expect(settled).toMatchObject({ fromRow: 0, moving: 0, role: 'boost' });
    }
    // Much noise begins off the line more often, by single readings, yet hardly ever by three deviations.
    const noisy = Array.from({ length: 60 }, (_, seed) => pullQuality(building(0, 1, seed + 1, 4)).settled);
    expect(noisy.filter(({ moving }) => moving === 0).length).toBeGreaterThanOrEqual(55);
    expect(pullQuality(building(0, 1, 5)).settled.reason).toMatch(/no transient at the start|from the first row/);
  });

  it('is cut where boost builds up, at about four time constants', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const { settled } = pullQuality(building(60, 0.5, seed));
      expect(settled.moving).toBeGreaterThan(0);
      // 60 kPa have fallen to the noise of 0.3 kPa after 0.5 ln(200) = 2.6 s.
      expect(settled.from!.in('s')).toBeGreaterThan(1.5);
      expect(settled.from!.in('s')).toBeLessThan(4.5);
    }
  });

  it('tells which way the pulls go, both ways where they differ', () => {
    const up = building(60, 0.5, 3);
    const down = madePull({ 'RPM (rpm)': (t) => 6500 - 380 * t, 'Boost (kPa)': (t) => 110 - 60 * Math.exp(-2 * t) });
    expect(settledTogether([up, up]).direction).toBe('up');
    expect(settledTogether([down]).direction).toBe('down');
    expect(settledTogether([up, down]).direction).toBe('both ways');
  });
});
