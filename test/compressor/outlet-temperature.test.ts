import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  isentropicEfficiencyFromMeasurement,
  outletTemperature,
  outletTemperaturePolytropic,
  pressureRatio,
  pressureRatioFromTemperatures,
} from '../../src/compressor/index.js';
import {
  absolute,
  absolutePressure,
  CalculationError,
  gaugePressure,
  percent,
  ratio,
  temperature,
  temperatureDifference,
} from '../../src/units/index.js';

const barometer = absolutePressure(941, 'hPa');
const room = temperature(18, '°C');

const inlet = fc.double({ min: 220, max: 350, noNaN: true });
const ratios = fc.double({ min: 1.01, max: 8, noNaN: true });
const efficiencies = fc.double({ min: 0.05, max: 1, noNaN: true });

describe('compressor outlet temperature', () => {
  it('carries a pull at 1.10 bar of boost from room to hose', () => {
    const boosted = absolute(gaugePressure(1.1, 'bar'), barometer);
    const PR = pressureRatio({ inletPressure: barometer, outletPressure: boosted });
    const hot = outletTemperature({ inletTemperature: room, pressureRatio: PR, isentropicEfficiency: percent(70) });
    expect(hot.in('°C')).toBeCloseTo(121.0, 1);
    expect(hot.in('°F')).toBeCloseTo(249.8, 1);
    expect(hot.notes).toEqual([]);
  });

  it('is the inlet temperature when nothing is compressed', () => {
    const same = outletTemperature({
      inletTemperature: room,
      pressureRatio: ratio(1),
      isentropicEfficiency: percent(70),
    });
    expect(same.si).toBe(room.si);
  });

  it('divides the rise by the efficiency, not the outlet temperature', () => {
    const given = { inletTemperature: room, pressureRatio: ratio(2.17) };
    const ideal = outletTemperature({ ...given, isentropicEfficiency: ratio(1) });
    const half = outletTemperature({ ...given, isentropicEfficiency: percent(50) });
    expect((half.si - room.si) / (ideal.si - room.si)).toBeCloseTo(2, 12);
  });

  it('gives back the pressure ratio and the efficiency it was made from', () => {
    fc.assert(
      fc.property(inlet, ratios, efficiencies, (T, PR, eta) => {
        const inletTemperature = temperature(T, 'K');
        const hot = outletTemperature.kernel(T, PR, eta, 1.4);
        fc.pre(hot < 900);
        const outlet = temperature(hot, 'K');
        const back = pressureRatioFromTemperatures({
          inletTemperature,
          outletTemperature: outlet,
          isentropicEfficiency: ratio(eta),
        });
        const efficiency = isentropicEfficiencyFromMeasurement({
          inletTemperature,
          outletTemperature: outlet,
          pressureRatio: ratio(PR),
        });
        expect(Math.abs(back.si / PR - 1)).toBeLessThan(1e-13);
        expect(Math.abs(efficiency.si / eta - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('is never above the polytropic one at the same figure of efficiency', () => {
    fc.assert(
      fc.property(inlet, ratios, fc.double({ min: 0.2, max: 1, noNaN: true }), (T, PR, eta) => {
        const isentropic = outletTemperature.kernel(T, PR, eta, 1.4);
        expect(outletTemperaturePolytropic.kernel(T, PR, eta, 1.4)).toBeGreaterThanOrEqual(isentropic * (1 - 1e-14));
      }),
    );
  });

  it('still answers above a pressure ratio of 4, with a note that follows the result', () => {
    const hot = outletTemperature({
      inletTemperature: room,
      pressureRatio: ratio(5),
      isentropicEfficiency: percent(70),
    });
    expect(hot.notes).toMatchObject([{ code: 'outside trusted range', input: 'PR' }]);
    const efficiency = isentropicEfficiencyFromMeasurement({
      inletTemperature: room,
      outletTemperature: hot,
      pressureRatio: ratio(2),
    });
    expect(efficiency.notes.map((note) => note.calculation)).toContain('compressor outlet temperature');
  });

  it('names every mistake of a call at once, and how to mend each', () => {
    const wrong = { inletTemperature: 18, pressureRatio: ratio(0.46), isentropicEfficiency: ratio(70) };
    // @ts-expect-error 18 is no temperature
    const call = () => outletTemperature(wrong);
    expect(call).toThrow(CalculationError);
    expect(call).toThrow(/3 inputs need mending/);
    expect(call).toThrow(/inletTemperature must be a temperature, got the bare number 18\. .*temperature\(18/);
    expect(call).toThrow(/pressureRatio must be between 1 and 8, got 0\.46\. Is it upside down\?/);
    expect(call).toThrow(/For 70 % write percent\(70\)/);
  });

  it('refuses a temperature difference, in the types and at run time', () => {
    const difference = temperatureDifference(18, 'K');
    const given = { pressureRatio: ratio(2), isentropicEfficiency: percent(70) };
    // @ts-expect-error a difference is not a temperature
    expect(() => outletTemperature({ ...given, inletTemperature: difference })).toThrow(/must be a temperature/);
  });
});

describe('compressor pressure ratio', () => {
  it('refuses pressures that are upside down', () => {
    const given = { inletPressure: absolutePressure(204.1, 'kPa'), outletPressure: barometer };
    expect(() => pressureRatio(given)).toThrow(
      /must not be below inletPressure \(are they upside down, or is one a gauge/,
    );
  });

  it('refuses boost that is still a gauge pressure, in the types and at run time', () => {
    // @ts-expect-error boost is a gauge pressure
    expect(() => pressureRatio({ inletPressure: barometer, outletPressure: gaugePressure(1.1, 'bar') })).toThrow(
      /outletPressure must be an absolute pressure, .*Use absolute\(gauge, barometer\)/,
    );
  });

  it('refuses a compressor that cools the air', () => {
    const cooled = {
      inletTemperature: room,
      outletTemperature: temperature(10, '°C'),
      isentropicEfficiency: percent(70),
    };
    expect(() => pressureRatioFromTemperatures(cooled)).toThrow(/outletTemperature must not be below inletTemperature/);
  });

  it('carries a note where the temperatures ask for more than 4', () => {
    const far = {
      inletTemperature: room,
      outletTemperature: temperature(300, '°C'),
      isentropicEfficiency: percent(75),
    };
    const result = pressureRatioFromTemperatures(far);
    expect(result.si).toBeGreaterThan(4);
    expect(result.notes).toMatchObject([{ code: 'rule', message: expect.stringContaining('at most 4') }]);
  });
});
