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

/** Spool of 60 kPa that is down to half a kPa at 3300 rpm, 2.1 s into an 11 s pull. */
const OVER = (3300 - 2500) / 380;
const spool = (t: number): number => 60 * Math.exp((-t * Math.log(120)) / OVER);
const END = 219 * 0.05;
const dome = (t: number): number => 110 * (1 + 0.03 * (1 - 4 * (t / END - 0.5) ** 2));
const curvedTaper = (t: number): number => 97 + 18 * (1 - (t / END) ** 2);

/** Seconds at which boost of a shape has built up, in order, for a few draws of noise; 0 where nothing was found to build up. */
function builtUp(shape: (t: number) => number, scatter: number, step = 0, down = false): number[] {
  return Array.from({ length: 15 }, (_, seed) => {
    const random = seeded(seed + 1);
    const noise = (): number => scatter * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const read = (t: number): number => {
      const value = shape(t) + noise();
      return step > 0 ? step * Math.round(value / step) : value;
    };
    const speed = down ? (t: number): number => 6600 - 380 * t : sweep;
    const { settled } = pullQuality(madePull({ 'RPM (rpm)': speed, 'Boost (kPa)': read }));
    return settled.fromRow === undefined ? NaN : settled.from!.in('s');
  }).sort((a, b) => a - b);
}

describe('boost that bends after it has built up', () => {
  it.each([
    ['flat boost', (t: number) => 110 - spool(t)],
    ['a straight taper', (t: number) => 115 - (18 * t) / END - spool(t)],
    ['a dome of 3 %', (t: number) => dome(t) - spool(t)],
    ['a curved taper from 1.15 to 0.97 bar', (t: number) => curvedTaper(t) - spool(t)],
    ['an overshoot that decays', (t: number) => 110 + 12 * Math.exp(-t / 1.2) - 1.2 * spool(t)],
    ['a plateau before a straight taper', (t: number) => 115 - (18 * Math.max(0, t - END / 2)) / (END / 2) - spool(t)],
  ])('counts as built up when its spool is over, before %s', (_, shape) => {
    for (const [scatter, step] of [
      [0.3, 0],
      [0.2, 1],
    ] as const) {
      const found = builtUp(shape, scatter, step);
      expect(found[7]).toBeGreaterThan(1.4);
      expect(found[7]).toBeLessThan(3.2);
      expect(found[14]).toBeLessThan(4.2);
    }
    // Without noise too, where the rest of an exponential never ends.
    const [clean] = builtUp(shape, 0);
    expect(clean).toBeGreaterThan(1.4);
    expect(clean).toBeLessThan(3.6);
  });

  it('does not build up while it falls: the start ends at the maximum at the latest', () => {
    const overshoot = (t: number): number => 110 * (1 - 1.25 * Math.exp(-t / 0.5) * Math.cos(2.2 * t));
    // Its maximum is at 1.2 s: the derivative is zero where tan 2.2 t = -1/(0.5 * 2.2).
    const top = (Math.PI - Math.atan(1 / 1.1)) / 2.2;
    for (const found of builtUp(overshoot, 0.3)) expect(found).toBeLessThan(top + 0.15);
    expect(new Set(builtUp((t) => 120 - 15 * (1 - Math.exp(-t / 1.5)), 0.3))).toEqual(new Set([0]));
  });

  it('is still seen to build up slowly: time constants of 0.6 and 1.2 s', () => {
    for (const [constant, scatter] of [
      [0.6, 0.3],
      [0.6, 1],
      [1.2, 0.3],
    ] as const) {
      const found = builtUp((t) => 110 - 60 * Math.exp(-t / constant), scatter);
      // The middle pull is cut where less than 1.5 kPa are left, and none before 3 kPa.
      expect(found[7]).toBeGreaterThan(constant * Math.log(60 / 1.5));
      expect(found[0]).toBeGreaterThan(constant * Math.log(60 / 3));
      expect(found[14]).toBeLessThan(7);
    }
    const [clean] = builtUp((t) => 110 - 60 * Math.exp(-t / 1.2), 0);
    expect(clean).toBeGreaterThan(4.5);
  });

  it.each([
    [3200, 60],
    [3500, 80],
    [3800, 80],
  ])('is built up where the S of a spool about %i rpm and %i rpm wide is nearly over', (centre, width) => {
    const swing = (t: number): number => 30 + 80 / (1 + Math.exp(-(2500 + 380 * t - centre) / width));
    for (const scatter of [0, 0.3]) {
      // Of 110 kPa, 2 % are missing 3.6 widths after the middle and 0.06 % after 7.1: 80 exp(-3.6) and 80 exp(-7.1) kPa.
      const widths = builtUp(swing, scatter).map((t) => (2500 + 380 * t - centre) / width);
      expect(widths[7]).toBeGreaterThan(3.6);
      expect(widths[7]).toBeLessThan(7.1);
    }
  });

  it('shows no start where there is none, however it bends', () => {
    for (const shape of [dome, curvedTaper, (t: number) => 115 - (18 * t) / END, (t: number) => 90 + 3 * t]) {
      expect(new Set(builtUp(shape, 0.3))).toEqual(new Set([0]));
      // In steps of 1 kPa a dome can look like a slow start, once in fifteen.
      expect(builtUp(shape, 0.2, 1).filter((each) => each === 0).length).toBeGreaterThanOrEqual(14);
    }
  });

  it('is told the same way on the way down', () => {
    const found = builtUp((t) => dome(t) - spool(t), 0.3, 0, true);
    expect(found[7]).toBeGreaterThan(1.5);
    expect(found[7]).toBeLessThan(2.9);
  });

  it('is told in spite of a reading that drops out', () => {
    const found = builtUp((t) => (Math.abs(t - 6) < 0.02 ? 0 : 110 - spool(t)), 0.3);
    expect(found[7]).toBeGreaterThan(1.5);
    expect(found[7]).toBeLessThan(2.9);
  });
});

describe('the start of a pull', () => {
  it('is not cut where nothing builds up, though the rule for the cut alone would cut some of every pull', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { settled } = pullQuality(building(0, 1, seed));
      expect(settled).toMatchObject({ fromRow: 0, moving: 0, role: 'boost' });
    }
    // Much noise begins off the line more often, by single readings, yet hardly ever by three deviations.
    const noisy = Array.from({ length: 60 }, (_, seed) => pullQuality(building(0, 1, seed + 1, 4)).settled);
    expect(noisy.filter(({ moving }) => moving === 0).length).toBeGreaterThanOrEqual(55);
    expect(pullQuality(building(0, 1, 5)).settled.reason).toMatch(/no transient at the start/);
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
