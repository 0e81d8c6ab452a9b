import { describe, expect, it } from 'vitest';
import { uncertainty } from '../../src/calculation/index.js';
import { coolDownTemperature, settledCore, timeConstantFromCoolDown } from '../../src/intercooler/index.js';
import {
  column,
  heatCapacity,
  heatCapacityRate,
  ratio,
  temperature,
  time,
  type Column,
} from '../../src/units/index.js';
import { seeded } from '../support/random.js';

// 20 + 40 exp(-t/37) every three seconds, with a scatter of 0.1 K, rounded to a thousandth.
const readings = [
  60.0, 56.946, 54.161, 51.27, 48.991, 46.531, 44.659, 42.818, 41.048, 39.32, 37.63, 36.519, 34.974, 34.037, 33.0,
  31.982, 31.081, 30.102, 29.165, 28.703, 27.862, 27.14, 26.619, 26.075, 25.577, 25.371, 24.807, 24.588, 24.002, 23.676,
  23.391, 23.09, 22.995, 22.851, 22.455, 22.292, 22.287, 22.141, 21.975, 21.692, 21.428,
];
const seconds = (count: number, step: number): Column<'time'> =>
  column(
    'time',
    Array.from({ length: count }, (_, i) => i * step),
    's',
  );
const celsius = (values: readonly number[]): Column<'temperature'> => column('temperature', [...values], '°C');

describe('time constant from a cool-down', () => {
  it('is the least-squares one that scipy curve_fit finds, with its standard error widened for rows that err alike', () => {
    const fit = timeConstantFromCoolDown(seconds(41, 3), celsius(readings));
    expect(fit.timeConstant.in('s')).toBeCloseTo(37.05490868, 5);
    expect(fit.endTemperature.in('°C')).toBeCloseTo(19.96436093, 6);
    expect(fit.startTemperature.in('°C')).toBeCloseTo(19.96436093 + 40.07929988, 6);
    expect(fit.scatter.in('K')).toBeCloseTo(0.11531062772973, 8);
    expect(fit.independentRows).toBeCloseTo(33.279342, 4);
    const budget = uncertainty(fit.timeConstant);
    expect(budget.standard.in('s')).toBeCloseTo(0.18191523 * Math.sqrt(41 / 33.279342), 5);
    expect(uncertainty(fit.endTemperature).standard.in('K')).toBeCloseTo(0.05809468 * Math.sqrt(41 / 33.279342), 5);
  });

  it('is surer where the temperature of the cooling air is known, again as scipy has it', () => {
    const endTemperature = temperature(20, '°C');
    const fit = timeConstantFromCoolDown(seconds(41, 3), celsius(readings), { endTemperature });
    expect(fit.timeConstant.in('s')).toBeCloseTo(36.95642874, 5);
    expect(uncertainty(fit.timeConstant).standard.in('s')).toBeCloseTo(0.0842885 * Math.sqrt(41 / 33.21542457), 5);
    expect(fit.endTemperature).toBe(endTemperature);
  });

  it('covers the truth as often as it says, with independent scatter and with scatter that lasts', () => {
    for (const lasting of [0, 0.7]) {
      const random = seeded(11);
      const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
      let covered = 0;
      const runs = 300;
      for (let run = 0; run < runs; run++) {
        let error = 0.2 * normal();
        const noisy = Array.from({ length: 80 }, (_, i) => {
          error = lasting * error + Math.sqrt(1 - lasting ** 2) * 0.2 * normal();
          return 18 + 42 * Math.exp((-2 * i) / 45) + error;
        });
        const { timeConstant } = timeConstantFromCoolDown(seconds(80, 2), celsius(noisy));
        const [low, high] = uncertainty(timeConstant).interval(0.95);
        if (low.si <= 45 && 45 <= high.si) covered++;
      }
      // Binomial scatter of 300 runs is 1.3 %; autocorrelation estimated from 80 rows takes a few points more.
      expect(covered / runs).toBeGreaterThan(lasting === 0 ? 0.92 : 0.86);
      expect(covered / runs).toBeLessThan(0.985);
    }
  });

  it('gives back an exponential without scatter, cooling or warming, and leaves rows without a value out', () => {
    const way = (t: number): number =>
      coolDownTemperature({
        timeConstant: time(45, 's'),
        startTemperature: temperature(10, '°C'),
        coolantTemperature: temperature(60, '°C'),
        time: time(t, 's'),
      }).in('°C');
    const values = Array.from({ length: 30 }, (_, i) => (i === 7 ? NaN : way(i * 5)));
    const fit = timeConstantFromCoolDown(seconds(30, 5), celsius(values));
    expect(fit.timeConstant.in('s')).toBeCloseTo(45, 8);
    expect(fit.endTemperature.in('°C')).toBeCloseTo(60, 8);
    expect(fit.rows).toBe(29);
    expect(fit.timeConstant.notes).toEqual([]);
  });

  it('finds the time constant of a core in cells within a few percent, and sees that it bends away from one exponential', () => {
    const pull = {
      hotInlet: temperature(121, '°C'),
      chargeCapacityRate: heatCapacityRate(202, 'W/K'),
      chargeTransferUnits: ratio(2),
      coolantInlet: temperature(18, '°C'),
      coolantCapacityRate: heatCapacityRate(200, 'W/K'),
      coolantTransferUnits: ratio(0.5),
    };
    const rest = { ...pull, chargeCapacityRate: heatCapacityRate(0, 'W/K') };
    let core = settledCore({ heatCapacity: heatCapacity(5382, 'J/K'), flows: pull });
    const values = Array.from({ length: 60 }, () => {
      core = core.after(time(4, 's'), rest).core;
      return core.meanTemperature.in('°C');
    });
    const { timeConstant } = timeConstantFromCoolDown(seconds(60, 4), celsius(values), {
      endTemperature: rest.coolantInlet,
    });
    const uniform = 5382 / (200 * (1 - Math.exp(-0.5)));
    expect(timeConstant.si / uniform).toBeGreaterThan(0.95);
    expect(timeConstant.si / uniform).toBeLessThan(1.05);
    expect(timeConstant.notes).toMatchObject([{ code: 'not independent' }]);
  });

  it('carries a note where the record is short', () => {
    const short = Array.from({ length: 40 }, (_, i) => 18 + 42 * Math.exp(-i / 45) + 0.01 * Math.sin(i * i));
    const { timeConstant } = timeConstantFromCoolDown(seconds(40, 1), celsius(short));
    expect(timeConstant.notes).toMatchObject([
      { code: 'short record', message: expect.stringMatching(/only 0\.\d time/) },
    ]);
    expect(uncertainty(timeConstant).standard.si).toBeGreaterThan(0.05);
  });

  it('refuses what shows no approach to an end, in words that say what to do', () => {
    const flat = Array.from({ length: 40 }, (_, i) => 30 + 0.1 * Math.sin(i * i));
    const straight = Array.from({ length: 40 }, (_, i) => 60 - i / 10);
    for (const values of [flat, straight]) {
      expect(() => timeConstantFromCoolDown(seconds(40, 1), celsius(values))).toThrow(/Cut the record to the rest/);
    }
    expect(() => timeConstantFromCoolDown(seconds(4, 1), celsius([4, 3, 2, 1]))).toThrow(/at least 8 rows/);
    expect(() => timeConstantFromCoolDown(seconds(9, 1), celsius(flat))).toThrow(/as many rows as time has, 9/);
    const back = column('time', [0, 1, 2, 2, 4, 5, 6, 7], 's');
    expect(() => timeConstantFromCoolDown(back, celsius(flat.slice(0, 8)))).toThrow(/row 3 not later/);
    expect(() => timeConstantFromCoolDown(back, back as never)).toThrow(/a column of temperature/);
    const known = { endTemperature: 20 } as never;
    expect(() => timeConstantFromCoolDown(seconds(40, 1), celsius(flat), known)).toThrow(
      /endTemperature must be a temperature/,
    );
  });

  it('reads as a sentence', () => {
    const text = String(timeConstantFromCoolDown(seconds(41, 3), celsius(readings)));
    expect(text).toMatch(/37\.\d+ s, from 60\.\d+ °C towards 19\.\d+ °C; scatter 0\.1\d+ K in 41 rows/);
  });
});
