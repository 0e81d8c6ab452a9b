import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { time, type Quantity } from 'coldside/units';
import { gearedDelay, keepRows, pullQuality, readLog, readPulls, settledTogether } from 'coldside/sweep';
import { normalFrom, seededUniform } from '../statistics/simulated-pulls.js';
import { seeded } from '../support/random.js';
import { madePull, sweep } from './made-pulls.js';

const folder = fileURLToPath(new URL('../../docs/examples/demo-data/', import.meta.url));
const day = await readPulls(folder);
const road = fileURLToPath(new URL('../../../shared/data/road-pulls.csv', import.meta.url));
const isAbsent = !existsSync(road);
const skipped = isAbsent ? ' (skipped: ../shared/data is not here)' : '';

describe('the quality of the demo pulls', () => {
  const qualities = day.pulls.map((pull) => pullQuality(pull));

  it('finds boost hunting as planted: 0.16 to 0.23 psi either way, 1.2 to 1.9 times a second', () => {
    for (const { oscillation } of qualities) {
      expect(oscillation).toMatchObject({ role: 'boost' });
      expect(oscillation!.frequency).toBeGreaterThan(1.15);
      expect(oscillation!.frequency).toBeLessThan(1.95);
      const psi = oscillation!.amplitude as Quantity<'pressure difference'>;
      expect(psi.kind).toBe('pressure difference');
      expect(psi.in('psi')).toBeGreaterThan(0.13);
      expect(psi.in('psi')).toBeLessThan(0.25);
      // 380 rpm/s: 1.2 to 1.9 a second are 3.2 to 5 in a thousand rpm.
      expect(oscillation!.cyclesPer1000Rpm! / oscillation!.frequency).toBeCloseTo(1000 / 380, 1);
    }
  });

  it('finds the ramp: up, 380 rpm/s, no dwell, no back-step, nothing polled, no outlier, the lean pull included', () => {
    for (const { ramp, outliers, polled, breaks, base, remarks } of qualities) {
      expect(ramp).toMatchObject({ kind: 'ramp', direction: 'up', dwells: [], backSteps: 0 });
      expect(ramp!.rate!.in('rpm/s') / 380).toBeCloseTo(1, 1);
      expect(ramp!.rateSpread!.in('rpm/s')).toBeLessThan(10);
      expect([outliers, polled, breaks, base]).toEqual([[], undefined, [], 'time']);
      for (const remark of remarks) expect(remark).toMatch(/^Rows without a reading/);
    }
  });

  it('finds boost settled once the turbo has spooled up, about 3000 rpm, and says why', () => {
    for (const { settled } of qualities) {
      expect(settled.role).toBe('boost');
      expect(settled.engineSpeed!.in('rpm')).toBeGreaterThan(2900);
      expect(settled.engineSpeed!.in('rpm')).toBeLessThan(3300);
      expect(settled.from!.in('s')).toBeLessThan(2.1);
      expect(settled.reason).toMatch(/one smooth curve describes the boost/);
    }
  });

  it('gives one start for all pulls, the latest, and none still building', () => {
    const together = settledTogether(day.pulls);
    const latest = Math.max(...qualities.map(({ settled }) => settled.from!.si));
    expect(together.from!.si).toBe(latest);
    expect(together.engineSpeed!.si).toBe(Math.max(...qualities.map(({ settled }) => settled.engineSpeed!.si)));
    expect(together.pull).toMatch(/, pull \d\.csv$/);
    expect([together.stillBuilding, together.remarks]).toEqual([[], []]);
  });

  it('says it in a few lines', () => {
    expect(String(qualities[0])).toMatch(
      /^pull 1\.csv: 11 s by time, a row every 0\.05 s\n {2}ramp up, 2500 to 6684 rpm at 381 ± \d rpm\/s\n {2}settled from 1\.95 s, 3242 rpm: .*\n {2}boost oscillates by 0\.1\d psi either way, 1\.71 times a second, 4\.5 in 1000 rpm$/,
    );
  });
});

describe('what a pull may be spoilt by', () => {
  const normal = normalFrom(seededUniform(61));
  const charge = (t: number): number => Number((25 + 9 * (1 - Math.exp(-t / 4)) + 0.15 * normal()).toFixed(1));

  it('is a temperature that jumps to 150 °C for a second: told with place, rows and what its neighbours read', () => {
    const pull = madePull({
      'Engine speed (rpm)': sweep,
      'Charge temp (°C)': (t) => (t >= 5 && t < 6 ? 150 : charge(t)),
      'Torque (Nm)': (t) => 240 + 5 * Math.sin(t),
    });
    const { outliers, remarks, outlierRule } = pullQuality(pull);
    expect(outliers).toMatchObject([{ role: 'chargeTemperature', fromRow: 100, toRow: 119 }]);
    expect(outliers[0]!.start!.in('s')).toBeCloseTo(5, 9);
    expect(outliers[0]!.engineSpeed!.in('rpm')).toBeCloseTo(4400, 0);
    expect(remarks[0]).toMatch(
      /The charge temperature jumps to 150 °C for 20 rows, 5 s into the pull .* neighbours read 3\d\.?\d* °C/,
    );
    expect(outlierRule).toMatch(/at most 1\.2 s .* 8 standard deviations/);
    expect(pull.channels.chargeTemperature!.in('°C')[110]).toBeCloseTo(150, 9);
    expect(pullQuality(pull, { outliers: { longest: time(0.5, 's') } }).outliers).toEqual([]);
  });

  it('is a channel that is read every 0.2 s and repeated, and one that is blank between', () => {
    const pull = madePull({
      'Engine speed (rpm)': sweep,
      'Boost (kPa)': (_, row) => 110 + (row - (row % 4)) / 7 + 3 * Math.sin(row - (row % 4)),
      'Air mass flow (g/s)': (t, row) => (row % 4 === 2 ? 50 + 8 * t + normal() : ''),
      'Torque (Nm)': () => 240 + normal(),
    });
    const { polled, channels, remarks } = pullQuality(pull);
    expect(polled!.roles).toEqual(['boost', 'airFlow']);
    expect(polled!.apart!.in('s')).toBeCloseTo(0.15, 9);
    expect(channels.find(({ role }) => role === 'boost')!.readingRate).toMatchObject({ how: 'held' });
    expect(channels.find(({ role }) => role === 'airFlow')!.readingRate!.interval!.in('s')).toBeCloseTo(0.2, 9);
    expect(remarks.join(' ')).toMatch(
      /boost every 0\.2 s \(repeated between\), air flow every 0\.2 s \(blank between\)\. Readings of one row lie up to 0\.15 s apart/,
    );
  });

  it('is a channel held for 0.25 s whose readings now and then repeat: they lie 0.2 s apart, and in two figures', () => {
    const random = seeded(12);
    let held = 0;
    const pull = madePull({
      'RPM (rpm)': sweep,
      // Whole numbers of about 90, of which one in six equals the one before.
      'Oil temp (C)': (_, row) => (row % 5 === 0 ? (held = 90 + Math.floor(6 * random())) : held),
    });
    const remarks = pullQuality(pull).remarks.join(' ');
    expect(remarks).toContain('oil temperature every 0.25 s (repeated between)');
    expect(remarks).toContain('Readings of one row lie up to 0.2 s apart.');
    const odd = madePull({
      'RPM (rpm)': sweep,
      Lambda: (t) => 0.8 + 0.01 * Math.sin(100 * Math.floor(t / 0.1612)),
    });
    expect(pullQuality(odd).remarks.join(' ')).toContain('lambda every 0.16 s');
  });

  it('is a dwell, a back-step, missing rows, missing times', () => {
    const dwelling = madePull(
      { 'RPM (rpm)': (t) => (t < 4 ? sweep(t) : t < 6 ? sweep(4) : sweep(t - 2)) },
      { rows: 240 },
    );
    expect(pullQuality(dwelling).ramp!.dwells).toMatchObject([{}]);
    expect(pullQuality(dwelling).ramp!.dwells[0]!.duration.in('s')).toBeCloseTo(2, 0);
    expect(pullQuality(dwelling).remarks[0]).toMatch(/stands at 40\d\d rpm for/);

    const slipping = madePull({ 'RPM (rpm)': (t, row) => sweep(t) - (row > 100 && row < 106 ? 400 : 0) });
    expect(pullQuality(slipping).ramp).toMatchObject({ backSteps: 5 });
    expect(pullQuality(slipping).ramp!.largestBackStep!.in('rpm')).toBeCloseTo(381, 6);

    const cut = keepRows(madePull({ 'RPM (rpm)': sweep }), (row) => row < 100 || row > 120);
    expect(pullQuality(cut).breaks).toMatchObject([{ row: 99 }]);
    expect(pullQuality(cut).remarks.join(' ')).toMatch(/Rows are missing: 1\.1 s pass after row 100/);

    const bare = pullQuality(madePull({ 'RPM (rpm)': sweep, 'Torque (Nm)': () => 200 + normal() }, { hasTime: false }));
    expect(bare).toMatchObject({ base: 'engine speed', step: undefined, oscillation: undefined });
    expect(String(bare)).toMatch(/no times; rows follow engine speed/);
  });

  it('is a test in steps or at one speed, told as such', () => {
    const steps = madePull(
      { 'RPM (rpm)': (t) => 2500 + 500 * Math.floor(t / 4) + 500 * Math.min(1, Math.max(0, (t % 4) - 3)) },
      { rows: 480 },
    );
    expect(pullQuality(steps).ramp).toMatchObject({ kind: 'stepped', direction: 'up' });
    expect(pullQuality(steps).ramp!.dwells.length).toBeGreaterThanOrEqual(5);
    const steady = madePull({ 'RPM (rpm)': () => 4000 + 3 * normal() });
    expect(pullQuality(steady).ramp).toMatchObject({ kind: 'steady' });
    expect(pullQuality(steady).remarks.join(' ')).toMatch(/at one speed, not a sweep/);
    const down = madePull({ 'RPM (rpm)': (t) => 6500 - 300 * t });
    expect(pullQuality(down).ramp!.direction).toBe('down');
    expect(pullQuality(down).ramp!.rate!.in('rpm/s')).toBeCloseTo(-300, 6);
  });

  it('is a clock in whole seconds: rows are spread between, and that is said', () => {
    const pull = madePull({ 'Time (s)': (t) => Math.floor(t), 'RPM (rpm)': sweep }, { hasTime: false });
    const quality = pullQuality(pull);
    expect(quality.step!.in('s')).toBeCloseTo(0.05, 6);
    expect(quality.ramp!.rate!.in('rpm/s')).toBeCloseTo(380, -1);
    expect(quality.remarks.join(' ')).toMatch(/time stands still in \d+ rows/);
    const back = madePull({ 'Time (s)': (t) => (t > 5 ? t - 3 : t), 'RPM (rpm)': sweep }, { hasTime: false });
    expect(pullQuality(back)).toMatchObject({ base: 'engine speed' });
    expect(pullQuality(back).remarks.join(' ')).toMatch(/time steps back at row 102/);
  });

  it('is boost that still builds where the others have settled', () => {
    const pull = (slow: number, file: string) =>
      madePull(
        {
          'RPM (rpm)': sweep,
          'Boost (kPa)': (t) => 110 - 40 * Math.exp(-t / 0.3) - slow * Math.exp(-t / 7) + 0.4 * normal(),
        },
        { file },
      );
    const found = settledTogether([pull(0, 'a.csv'), pull(0, 'b.csv'), pull(0, 'c.csv'), pull(12, 'd.csv')]);
    expect(found.stillBuilding).toEqual(['d.csv']);
    expect(found.remarks.join(' ')).toMatch(/still building after the cut in "d\.csv"/);
  });

  it('is judged on the way down by the lowest speed at which one has settled', () => {
    const down = (lag: number) =>
      madePull({
        'RPM (rpm)': (t) => 6500 - 300 * t,
        'Boost (kPa)': (t) => 110 - 60 * Math.exp(-t / lag) + 0.4 * normal(),
      });
    const together = settledTogether([down(0.2), down(0.6)]);
    const speeds = together.each.map(({ settled }) => settled.engineSpeed!.in('rpm'));
    expect(together.engineSpeed!.in('rpm')).toBeCloseTo(Math.min(...speeds), 9);
  });

  it('is hunting that a fast logger shows too: 1000 rows a second', () => {
    const pull = madePull(
      {
        'RPM (rpm)': sweep,
        'Boost (kPa)': (t) => 110 - 40 * Math.exp(-t / 0.3) + 1.4 * Math.sin(9.425 * t) + 0.3 * normal(),
      },
      { rows: 11_000, step: 0.001 },
    );
    const { oscillation } = pullQuality(pull);
    expect(oscillation!.frequency).toBeCloseTo(1.5, 1);
    expect((oscillation!.amplitude as Quantity<'pressure difference'>).in('kPa')).toBeCloseTo(1.4, 0);
    expect((oscillation!.amplitude as Quantity<'pressure difference'>).in('kPa') / 1.4).toBeCloseTo(1, 1);
  });

  it('is a signal that bends all along: no settled part, and why', () => {
    const pull = madePull({ 'RPM (rpm)': sweep, 'Torque (Nm)': (t) => 200 + 8 * t + 6 * Math.sin(2 * t) });
    expect(pullQuality(pull).settled).toMatchObject({ fromRow: undefined, role: 'torque' });
    expect(pullQuality(pull).remarks.join(' ')).toMatch(/No settled part: The torque bends all along/);
    expect(pullQuality(madePull({ 'RPM (rpm)': sweep })).settled.reason).toMatch(/none of boost, manifold pressure/);
  });
});

describe('readings of two speeds in one gear', () => {
  const pull = (late: number, spread: number, seed: number) => {
    const normal = normalFrom(seededUniform(seed));
    const road = (t: number): number => 100 + 12 * t - 0.35 * t * t;
    return madePull(
      {
        'RPM (rpm)': (t) => 25 * road(t) + spread * normal(),
        'Vehicle speed (km/h)': (t) => road(t - late),
      },
      { step: 0.5, rows: 30 },
    );
  };

  it('tell how much later road speed is read', () => {
    const found = gearedDelay([1, 2, 3, 4, 5, 6].map((seed) => pull(0.2, 3, seed)))!;
    expect(found.pulls).toBe(6);
    expect(found.isApart).toBe(true);
    expect(Math.abs(found.delay.in('s') - 0.2)).toBeLessThan(found.halfWidth.in('s') + 0.01);
  });

  it('say that they belong together where they do, in 90 to 100 of 100', () => {
    const apart = Array.from({ length: 100 }, (_, i) =>
      gearedDelay([7, 8, 9].map((seed) => pull(0, 3, 10 * i + seed)))!,
    );
    expect(apart.filter(({ isApart }) => isApart).length).toBeLessThanOrEqual(10);
  });

  it('say nothing where there is but one speed, or a gear change', () => {
    expect(gearedDelay([madePull({ 'RPM (rpm)': sweep })])).toBeUndefined();
    const shift = madePull({
      'RPM (rpm)': (t) => (t < 5 ? 25 : 19) * (100 + t),
      'Vehicle speed (km/h)': (t) => 100 + t,
    });
    expect(gearedDelay([shift])).toBeUndefined();
  });
});

/** Marc Weber, Automotive OBD-II Dataset, Karlsruhe Institute of Technology, 2023, DOI 10.35097/1130, CC BY 4.0. */
describe(`the quality of pulls measured on the road${skipped}`, () => {
  const pulls = isAbsent ? [] : readLog(readFileSync(road), { file: 'road-pulls.csv' });

  it.skipIf(isAbsent)(`is told of all 85, without a false outlier${skipped}`, () => {
    const qualities = pulls.map((pull) => pullQuality(pull));
    expect(qualities).toHaveLength(85);
    expect(qualities.flatMap(({ outliers }) => outliers)).toEqual([]);
    expect(qualities.every(({ base, step }) => base === 'time' && step!.si === 1)).toBe(true);
    expect(qualities.filter(({ ramp }) => ramp!.direction === 'up').length).toBe(85);
    expect(qualities.filter(({ settled }) => settled.fromRow !== undefined).length).toBeGreaterThan(50);
  });

  it.skipIf(isAbsent)(
    `finds that quantities of one row were not read at one moment, as its README says${skipped}`,
    () => {
      const found = gearedDelay(pulls)!;
      expect(found.pulls).toBeGreaterThan(80);
      expect(found.isApart).toBe(true);
      // Polled one after another, values of one row can be up to 1 s apart; these two are about a seventh of a second.
      expect(found.delay.in('s')).toBeGreaterThan(0.1);
      expect(found.delay.in('s')).toBeLessThan(0.2);
      expect(found.halfWidth.in('s')).toBeLessThan(0.05);
    },
  );
});
