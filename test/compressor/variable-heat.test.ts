import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain } from '../../src/calculation/index.js';
import {
  isentropicEfficiencyVariableHeat,
  isentropicOutletTemperature,
  outletTemperature,
  outletTemperaturePolytropicVariableHeat,
  outletTemperatureVariableHeat,
  polytropicEfficiencyVariableHeat,
  pressureRatioVariableHeat,
  specificWorkVariableHeat,
} from '../../src/compressor/index.js';
import { CalculationError, humidityRatio, percent, ratio, temperature } from '../../src/units/index.js';

interface RealAir {
  readonly source: string;
  readonly dry: { readonly rows: readonly (readonly number[])[] };
  readonly moist: { readonly rows: readonly (readonly number[])[] };
}
const realAir = JSON.parse(readFileSync(new URL('../reference/real-air.json', import.meta.url), 'utf8')) as RealAir;

const inlet = fc.double({ min: 220, max: 350, noNaN: true });
const ratios = fc.double({ min: 1.001, max: 5, noNaN: true });
const efficiencies = fc.double({ min: 0.4, max: 1, noNaN: true });
const humidity = fc.double({ min: 0, max: 0.03, noNaN: true });

describe(`against real air (${realAir.source})`, () => {
  it('dry air leaves within 0.2 K up to a pressure ratio of 4.5, from -40 to 60 °C and 60 to 100 kPa', () => {
    let worst = 0;
    for (const [T1, , PR, eta, T2] of realAir.dry.rows as [number, number, number, number, number][])
      worst = Math.max(worst, Math.abs(outletTemperatureVariableHeat.kernel(T1, PR, eta, 0) - T2));
    expect(realAir.dry.rows.length).toBe(240);
    expect(worst).toBeLessThan(0.2);
    // What is left is real: the pressures of 4.5 bar and the heat capacities of another source.
    expect(worst).toBeGreaterThan(0.1);
  });

  it('humid air leaves within 0.2 K', () => {
    for (const [T1, W, PR, eta, T2] of realAir.moist.rows as [number, number, number, number, number][])
      expect(Math.abs(outletTemperatureVariableHeat.kernel(T1, PR, eta, W) - T2)).toBeLessThan(0.2);
  });

  it('the work per kilogram is within 0.3 %', () => {
    for (const [T1, , PR, eta, , work] of realAir.dry.rows as [number, number, number, number, number, number][]) {
      const own = specificWorkVariableHeat.kernel(T1, outletTemperatureVariableHeat.kernel(T1, PR, eta, 0), 0);
      expect(Math.abs(own / work - 1)).toBeLessThan(0.003);
    }
    for (const [T1, W, PR, eta, , work] of realAir.moist.rows as [number, number, number, number, number, number][]) {
      const own = specificWorkVariableHeat.kernel(T1, outletTemperatureVariableHeat.kernel(T1, PR, eta, W), W);
      expect(Math.abs(own / work - 1)).toBeLessThan(0.003);
    }
  });
});

describe('one heat-capacity ratio of 1.4 at a pressure ratio of 4.5', () => {
  it.each([
    { inletC: 25, eta: 0.72, high: 2.7 },
    { inletC: 50, eta: 0.72, high: 4.2 },
    { inletC: 50, eta: 0.6, high: 6.2 },
  ])('is $high K high at $inletC °C and an efficiency of $eta', ({ inletC, eta, high }) => {
    const given = {
      inletTemperature: temperature(inletC, '°C'),
      pressureRatio: ratio(4.5),
      isentropicEfficiency: ratio(eta),
    };
    const constant = outletTemperature(given);
    const variable = outletTemperatureVariableHeat(given);
    expect(constant.in('K') - variable.in('K')).toBeCloseTo(high, 1);
    const real = realAir.dry.rows.find(
      ([T1, p1, PR, e]) => T1 === inletC + 273.15 && p1 === 100e3 && PR === 4.5 && e === eta,
    )!;
    expect(constant.in('K') - real[4]!).toBeGreaterThan(high - 0.2);
  });

  it('is 0.3 K high at a pressure ratio of 2', () => {
    const given = {
      inletTemperature: temperature(25, '°C'),
      pressureRatio: ratio(2),
      isentropicEfficiency: percent(72),
    };
    expect(outletTemperature(given).in('K') - outletTemperatureVariableHeat(given).in('K')).toBeCloseTo(0.3025, 4);
  });
});

describe('compression with variable heat capacity', () => {
  const given = { inletTemperature: temperature(25, '°C'), pressureRatio: ratio(2), isentropicEfficiency: percent(72) };

  it('leaves humid air 0.5 K colder at 20 g/kg and takes more work for each kilogram', () => {
    const W = humidityRatio(20, 'g/kg');
    const dry = outletTemperatureVariableHeat(given);
    const humid = outletTemperatureVariableHeat({ ...given, humidityRatio: W });
    expect(dry.in('K') - humid.in('K')).toBeCloseTo(0.48995, 4);
    const { inletTemperature } = given;
    const workDry = specificWorkVariableHeat({ inletTemperature, outletTemperature: dry });
    const workHumid = specificWorkVariableHeat({ inletTemperature, outletTemperature: humid, humidityRatio: W });
    expect(workHumid.in('J/kg') - workDry.in('J/kg')).toBeCloseTo(92143.35 - 91103.17, 1);
  });

  it('is the inlet temperature when nothing is compressed', () => {
    expect(outletTemperatureVariableHeat({ ...given, pressureRatio: ratio(1) }).si).toBe(given.inletTemperature.si);
  });

  it('keeps the digits of a small rise', () => {
    const PR = 1 + 1e-9;
    const rise = isentropicOutletTemperature.kernel(300, PR, 0) - 300;
    // R/cp of dry air at 300 K by the polynomials: 287.0451 over 1004.8217.
    expect(rise).toBeCloseTo(300 * (287.0451 / 1004.8217) * 1e-9, 12);
  });

  it('has one answer for isentropic and polytropic where the efficiency is 1', () => {
    fc.assert(
      fc.property(inlet, ratios, humidity, (T, PR, W) => {
        const ideal = isentropicOutletTemperature.kernel(T, PR, W);
        expect(outletTemperatureVariableHeat.kernel(T, PR, 1, W)).toBeCloseTo(ideal, 9);
        expect(outletTemperaturePolytropicVariableHeat.kernel(T, PR, 1, W)).toBeCloseTo(ideal, 9);
      }),
    );
  });

  it('gives back the efficiencies and the pressure ratio it was made from', () => {
    fc.assert(
      fc.property(inlet, ratios, efficiencies, humidity, (T, PR, eta, W) => {
        const hot = outletTemperatureVariableHeat.kernel(T, PR, eta, W);
        fc.pre(hot < 1000 && hot - T > 1);
        expect(Math.abs(isentropicEfficiencyVariableHeat.kernel(T, hot, PR, W) / eta - 1)).toBeLessThan(1e-12);
        expect(Math.abs(pressureRatioVariableHeat.kernel(T, hot, eta, W) / PR - 1)).toBeLessThan(1e-11);
        const polytropic = polytropicEfficiencyVariableHeat.kernel(T, hot, PR, W);
        expect(Math.abs(outletTemperaturePolytropicVariableHeat.kernel(T, PR, polytropic, W) / hot - 1)).toBeLessThan(
          1e-13,
        );
        expect(polytropic).toBeGreaterThan(eta - 1e-12);
      }),
    );
  });

  it('never fails to settle where engines work', () => {
    fc.assert(
      fc.property(inlet, ratios, efficiencies, humidity, (T, PR, eta, W) => {
        const hot = outletTemperatureVariableHeat.kernel(T, PR, eta, W);
        expect(Number.isFinite(hot)).toBe(outletTemperature.kernel(T, PR, eta, 1.4) < 1000 || hot <= 1000);
      }),
      { numRuns: 5000 },
    );
  });

  it('shows the balance that it solves', () => {
    const text = explain(outletTemperatureVariableHeat(given)).toText();
    expect(text).toContain('T2 solves h(T2, W) - h(T1, W) == (h(ideal(T1, PR, W), W) - h(T1, W)) / eta');
    expect(text).toContain('humidity ratio of dry air = 0 g/kg');
  });

  it('says where the air would be too hot to know, instead of guessing', () => {
    const hopeless = { ...given, pressureRatio: ratio(8), isentropicEfficiency: percent(20) };
    expect(() => outletTemperatureVariableHeat(hopeless)).toThrow(CalculationError);
    expect(() => outletTemperatureVariableHeat(hopeless)).toThrow(
      /it needs an outlet of at most 1000 K, where the heat capacities are known/,
    );
  });

  it('says when readings are not consistent, and does not cut the efficiency off', () => {
    const readings = {
      inletTemperature: temperature(25, '°C'),
      outletTemperature: temperature(80, '°C'),
      pressureRatio: ratio(2),
    };
    const efficiency = isentropicEfficiencyVariableHeat(readings);
    expect(efficiency.si).toBeGreaterThan(1);
    expect(efficiency.notes.map(({ message }) => message).join()).toContain('at most 100 %');
    expect(() => isentropicEfficiencyVariableHeat({ ...readings, outletTemperature: temperature(20, '°C') })).toThrow(
      /outletTemperature must be above inletTemperature/,
    );
  });
});
