import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { momentOfInertia, rotationalSpeed, time, type Quantity } from 'coldside/units';
import {
  lagOfRamps,
  lagOfStep,
  lagWindow,
  onGrid,
  prepare,
  pullQuality,
  readLog,
  readPulls,
  splitRamps,
  type Pull,
} from 'coldside/sweep';
import { normalFrom, seededUniform } from '../statistics/simulated-pulls.js';
import { madePull, sweep } from './made-pulls.js';

const normal = normalFrom(seededUniform(71));
const celsius = (pull: Pull): number[] => [...pull.channels.chargeTemperature!.in('°C')];

/** A sensor of first order, in steps of 0.05 s, fed with a truth. */
function lagging(truth: (t: number) => number, lag: number): (t: number) => number {
  let shown: number | undefined;
  return (t) => {
    shown ??= truth(t);
    shown += (1 - Math.exp(-0.05 / lag)) * (truth(t - 0.025) - shown);
    return shown;
  };
}

describe('a prepared pull', () => {
  it('is without outliers where they are to be missing, and says which were taken', () => {
    const pull = madePull({
      'RPM (rpm)': sweep,
      'Charge temp (°C)': (t) => (t >= 5 && t < 6 ? 150 : 30 + t + 0.1 * normal()),
    });
    const clean = prepare(pull, { outliers: 'missing' });
    expect(clean.channels.chargeTemperature!.missing).toBe(20);
    expect(Math.max(...celsius(clean).filter((value) => !Number.isNaN(value)))).toBeLessThan(43);
    expect(clean.preparations).toMatchObject([{ code: 'outliers', role: 'chargeTemperature', readings: 20 }]);
    expect(String(clean)).toMatch(/DONE 20 outlying readings of the charge temperature taken out/);
    expect(clean.blankCells).toBe(20);
    expect(pullQuality(clean).outliers).toEqual([]);
    expect(pull.preparations).toEqual([]);
    expect(Math.max(...celsius(pull))).toBeCloseTo(150, 9);
  });

  it('keeps outliers that are to be reported only, and says so where there are none', () => {
    const pull = madePull({
      'RPM (rpm)': sweep,
      'Charge temp (°C)': (t) => (t >= 5 && t < 6 ? 150 : 30 + t + 0.1 * normal()),
    });
    expect(prepare(pull, { outliers: 'report' }).channels.chargeTemperature!.missing).toBe(0);
    const sound = madePull({ 'RPM (rpm)': sweep, 'Charge temp (°C)': (t) => 30 + t + 0.1 * normal() });
    expect(prepare(sound, { outliers: 'missing' }).preparations[0]!.message).toMatch(/^No outliers were found/);
  });

  it('has each reading once, in the row in which it came; engine speed lies on lines between its readings', () => {
    const truth = (t: number): number => 50 + 10 * t;
    const every = (row: number): number => (row - (row % 5)) * 0.05;
    const polled = madePull({
      'RPM (rpm)': (_, row) => sweep(every(row)) + 3 * Math.sin(7 * every(row)),
      'Air mass flow (g/s)': (_, row) => truth(every(row)) + 0.3 * Math.sin(row - (row % 5)),
    });
    const own = prepare(polled, { heldReadings: 'own times' });
    expect(own.preparations.map(({ code, role }) => [code, role])).toEqual([
      ['held readings', 'engineSpeed'],
      ['held readings', 'airFlow'],
    ]);
    expect(own.channels.engineSpeed!.missing).toBeLessThan(5);
    expect(own.channels.airFlow!.missing).toBe(220 - 44);
    // Repeated readings trail by up to 0.2 s: 2 g/s; each in its own place does not.
    const worst = (pull: Pull): number => {
      const { airFlow } = onGrid(pull, { from: 3000, to: 6000, step: 20 }).channels;
      const off = [...airFlow!.in('g/s')].map((value, i) => Math.abs(value - truth((500 + 20 * i) / 380)));
      return Math.max(...off);
    };
    expect(worst(own)).toBeLessThan(0.6);
    expect(pullQuality(own).polled?.roles).toEqual(['airFlow']);
  });

  it('brings a late channel forward, to where it belongs', () => {
    const pull = madePull({ 'RPM (rpm)': sweep, Lambda: (t) => 0.8 + 0.01 * Math.max(0, t - 0.3) });
    const early = prepare(pull, { delay: { lambda: time(0.3, 's') } });
    const lambda = early.channels.lambda!.si;
    expect(lambda[100]).toBeCloseTo(0.85, 6);
    expect([...lambda.slice(-6)].every((value) => Number.isNaN(value))).toBe(true);
    expect(early.preparations[0]!.message).toBe('The lambda brought forward by 0.3 s.');
  });

  it('has the lag of a sensor taken off, with the noise that adds as a number that the scatter bears out', () => {
    const truth = (t: number): number => 30 + 6 * t + 4 * Math.sin(0.7 * t);
    const make = (): Pull => {
      const shown = lagging(truth, 0.8);
      return madePull({ 'RPM (rpm)': sweep, 'Charge temp (°C)': (t) => shown(t) + 0.2 * normal() });
    };
    const pulls = Array.from({ length: 30 }, make);
    const { window, noiseFactor, noise, bandwidth } = lagWindow(pulls, 'chargeTemperature', time(0.8, 's'));
    expect(bandwidth!.in('rpm') / window.in('s')).toBeCloseTo(380, 0);
    const free = pulls.map((pull) =>
      prepare(pull, { lag: { chargeTemperature: { timeConstant: time(0.8, 's'), window } } }),
    );
    const off = free.flatMap((pull) => [celsius(pull)[100]! - truth(5), celsius(pull)[140]! - truth(7)]);
    const mean = off.reduce((sum, value) => sum + value, 0) / off.length;
    const scatter = Math.sqrt(off.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (off.length - 1));
    expect(Math.abs(mean)).toBeLessThan(0.15);
    expect(celsius(pulls[0]!)[100]! - truth(5)).toBeLessThan(-1.5);
    expect(scatter / (noise as Quantity<'temperature difference'>).in('K')).toBeGreaterThan(0.7);
    expect(scatter / (noise as Quantity<'temperature difference'>).in('K')).toBeLessThan(1.3);
    expect(free[0]!.preparations[0]).toMatchObject({ code: 'sensor lag', role: 'chargeTemperature' });
    expect(free[0]!.preparations[0]!.noiseFactor! / noiseFactor).toBeCloseTo(1, 1);
    expect(free[0]!.preparations[0]!.message).toMatch(
      /A lag of 0\.8 s taken off the charge temperature, by quadratics over/,
    );
  });

  it('has the torque that speeds up the masses added: 0.35 kg m2 at 300 rpm/s are 10.99557 N m', () => {
    const pull = madePull({
      'RPM (rpm)': (t) => 2500 + 300 * t,
      'Torque (Nm)': () => 240,
      'Power (kW)': (t) => 0.025132741 * (2500 + 300 * t),
    });
    const whole = prepare(pull, { inertia: { momentOfInertia: momentOfInertia(0.35, 'kg·m²') } });
    expect(whole.channels.torque!.in('N·m')[100]).toBeCloseTo(250.99557, 4);
    // And 6.33300 kW at 5500/min, which is 10 s into this ramp.
    expect(whole.channels.power!.in('kW')[200]! - pull.channels.power!.in('kW')[200]!).toBeCloseTo(6.333, 3);
    expect(whole.preparations[0]!.message).toMatch(
      /11 N·m at the mean rate of 300\.0? rpm\/s|11\.0\d* N·m at the mean rate of 300 rpm\/s/,
    );
    const down = madePull({ 'RPM (rpm)': (t) => 6500 - 300 * t, 'Torque (Nm)': () => 240 });
    expect(
      prepare(down, { inertia: { momentOfInertia: momentOfInertia(0.35, 'kg·m²') } }).channels.torque!.in('N·m')[100],
    ).toBeCloseTo(229.00443, 4);
  });

  it('begins where it has settled: at a time, or at an engine speed, on the way up or down', () => {
    const up = madePull({ 'RPM (rpm)': sweep });
    expect(prepare(up, { settledFrom: time(2, 's') })).toMatchObject({
      rows: 180,
      preparations: [{ code: 'settled part', readings: 40 }],
    });
    expect(prepare(up, { settledFrom: rotationalSpeed(3260, 'rpm') }).rows).toBe(180);
    const down = madePull({ 'RPM (rpm)': (t) => 6500 - 300 * t });
    expect(prepare(down, { settledFrom: rotationalSpeed(5900, 'rpm') }).rows).toBe(180);
  });

  it('does things in one order, and keeps the record of all', () => {
    const pull = madePull({
      'RPM (rpm)': sweep,
      'Torque (Nm)': () => 240 + normal(),
      Lambda: () => 0.82 + 0.002 * normal(),
    });
    const done = prepare(pull, {
      settledFrom: time(1, 's'),
      inertia: { momentOfInertia: momentOfInertia(0.2, 'kg·m²') },
      delay: { lambda: time(0.1, 's') },
      heldReadings: 'own times',
      outliers: 'missing',
    });
    expect(done.preparations.map(({ code }) => code)).toEqual([
      'outliers',
      'held readings',
      'delay',
      'inertia',
      'settled part',
    ]);
    expect(structuredClone({ ...done }).preparations).toHaveLength(5);
    expect(onGrid(done, { from: 3000, to: 6000, step: 50, bandwidth: 100 }).channels.torque!.missing).toBe(0);
  });

  it('is refused what the pull has not, by name', () => {
    const pull = madePull({ 'RPM (rpm)': sweep, 'Torque (Nm)': () => 240 });
    const bare = madePull({ 'RPM (rpm)': sweep, 'Torque (Nm)': () => 240 }, { hasTime: false });
    expect(() => prepare(pull, { delay: { lambda: time(0.1, 's') } })).toThrow(/delay\.lambda.*engineSpeed, torque/s);
    expect(() => prepare(bare, { settledFrom: time(2, 's') })).toThrow(/settledFrom.*pull with times/s);
    expect(() => prepare(pull, { settledFrom: time(60, 's') })).toThrow(/within "pull 1\.csv"/);
    expect(() => prepare(pull, { outlier: 'missing' } as never)).toThrow(/outlier/);
    const lag = { timeConstant: time(1, 's'), window: time(0.05, 's') };
    expect(() => prepare(pull, { lag: { torque: lag } })).toThrow(/at least three rows, 0\.15 s/);
    expect(() => prepare(pull, { inertia: { momentOfInertia: 0.3 as never } })).toThrow(/moment of inertia above zero/);
  });
});

describe('the lag of a sensor', () => {
  it('is found from a recorded step', () => {
    const pull = madePull({
      'RPM (rpm)': () => 900,
      'Charge temp (°C)': (t) => (t < 2 ? 60 : 5 + 55 * Math.exp(-(t - 2) / 0.8)) + 0.1 * normal(),
    });
    const found = lagOfStep(pull, 'chargeTemperature');
    expect(Math.abs(found.timeConstant.in('s') - 0.8)).toBeLessThan(0.03);
    expect(found.standardUncertainty.in('s')).toBeLessThan(0.02);
  });

  it('is found from one recording that goes up and down', () => {
    const speed = (t: number): number => (t <= 10 ? 2500 + 380 * t : 6300 - 300 * (t - 10));
    const truth = (t: number): number => 30 + 8 * Math.sin(speed(t) / 800) + speed(t) / 300;
    const shown = lagging(truth, 0.6);
    const both = madePull({ 'RPM (rpm)': speed, 'Charge temp (°C)': (t) => shown(t) }, { rows: 450 });
    const ramps = splitRamps(both);
    expect(ramps.map(({ name }) => name)).toEqual(['pull 1.csv, ramp 1 up', 'pull 1.csv, ramp 2 down']);
    const found = lagOfRamps(ramps[0]!, ramps[1]!, 'chargeTemperature');
    expect(Math.abs(found.timeConstant.in('s') - 0.6)).toBeLessThan(0.05);
    expect(() => lagOfRamps(ramps[1]!, ramps[0]!, 'chargeTemperature')).toThrow(/a pull that goes up/);
  });

  it('needs no ramps to be split where there is one', () => {
    const pull = madePull({ 'RPM (rpm)': (t) => sweep(t) + 5 * normal() });
    expect(splitRamps(pull)).toEqual([pull]);
  });
});

describe('rows behind a speed of a grid', () => {
  const pull = madePull({ 'RPM (rpm)': sweep, 'Torque (Nm)': () => 240 + normal() });

  it('are those of the window: 21 of 19 rpm in 400 rpm', () => {
    const { effectiveRows } = onGrid(pull, { from: 3000, to: 6000, step: 100, bandwidth: 400 });
    for (const rows of effectiveRows.si) expect(Math.abs(rows - 21)).toBeLessThanOrEqual(1.01);
    expect(String(onGrid(pull, { from: 3000, to: 6000, step: 100, bandwidth: 400 }))).toMatch(
      /averaged over 400 rpm, about 21 rows each/,
    );
  });

  it('are one or two where lines join neighbours, none where the pull does not reach, and few at a cut-off window', () => {
    const { effectiveRows } = onGrid(pull, { from: 2300, to: 6000, step: 50 });
    expect(effectiveRows.missing).toBe(4);
    for (const rows of effectiveRows.si.slice(4)) {
      expect(rows).toBeGreaterThanOrEqual(1 - 1e-9);
      expect(rows).toBeLessThanOrEqual(2 + 1e-9);
    }
    const wide = onGrid(pull, { from: 2500, to: 6000, step: 100, bandwidth: 400 }).effectiveRows.si;
    expect(wide[0]).toBeLessThan(0.4 * wide[10]!);
  });

  it('tell the scatter: that of a row over their root', () => {
    const values = Array.from({ length: 400 }, () => {
      const one = madePull({ 'RPM (rpm)': sweep, 'Torque (Nm)': () => 240 + normal() });
      return onGrid(one, { from: 2500, to: 2600, step: 100, bandwidth: 400 });
    });
    const off = values.map(({ channels }) => channels.torque!.in('N·m')[0]! - 240);
    const scatter = Math.sqrt(off.reduce((sum, value) => sum + value * value, 0) / off.length);
    expect(scatter * Math.sqrt(values[0]!.effectiveRows.si[0]!)).toBeGreaterThan(0.9);
    expect(scatter * Math.sqrt(values[0]!.effectiveRows.si[0]!)).toBeLessThan(1.1);
  });
});

const road = fileURLToPath(new URL('../../../shared/data/road-pulls.csv', import.meta.url));
const isAbsent = !existsSync(road);

/** Marc Weber, Automotive OBD-II Dataset, Karlsruhe Institute of Technology, 2023, DOI 10.35097/1130, CC BY 4.0. */
describe(`road pulls without their first two seconds${isAbsent ? ' (skipped: ../shared/data is not here)' : ''}`, () => {
  it.skipIf(isAbsent)(
    'are 59 between 2400 and 2800 rpm, 4.25 g of air per cycle with 2.0 % from pull to pull, as their README says',
    () => {
      const pulls = readLog(readFileSync(road), { file: 'road-pulls.csv' });
      const means = pulls.flatMap((pull) => {
        const { time: t } = pull.channels;
        if (t!.si[t!.length - 1]! < 2) return [];
        const { channels } = prepare(pull, { settledFrom: time(2, 's') });
        const air = [...channels.airFlow!.si].flatMap((flow, row) => {
          const speed = channels.engineSpeed!.si[row]!;
          return speed >= 2400 / 60 && speed <= 2800 / 60 ? [(2000 * flow) / speed] : [];
        });
        return air.length < 2 ? [] : [air.reduce((sum, each) => sum + each, 0) / air.length];
      });
      const mean = means.reduce((sum, each) => sum + each, 0) / means.length;
      const deviation = Math.sqrt(means.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (means.length - 1));
      expect(mean).toBeCloseTo(4.25, 1);
      expect((100 * deviation) / mean).toBeCloseTo(2, 0);
      expect(means.length).toBe(59);
    },
  );
});

describe('the demo pulls', () => {
  it('lose nothing by being prepared: power over the settled range stays', async () => {
    const day = await readPulls(fileURLToPath(new URL('../../docs/examples/demo-data/', import.meta.url)));
    const grid = { from: 3500, to: 6500, step: 100, bandwidth: 200 };
    for (const pull of day.pulls) {
      const prepared = prepare(pull, { outliers: 'missing', heldReadings: 'own times', settledFrom: time(1.9, 's') });
      expect(onGrid(prepared, grid).channels.power!.si).toEqual(onGrid(pull, grid).channels.power!.si);
    }
  });
});
