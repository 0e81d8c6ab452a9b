import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airSideEffectiveness,
  airSideFromTrueEffectiveness,
  capacityRate,
  coolantTemperatureNeeded,
  cooledTemperature,
  densityRecovery,
  effectiveness,
  effectivenessFromMeasurement,
  heatRejected,
  pressureLoss,
  pressureLossShare,
  scaledPressureLoss,
} from '../../src/intercooler/index.js';
import {
  absolutePressure,
  column,
  density,
  heatCapacityRate,
  massFlow,
  percent,
  pressureDifference,
  ratio,
  temperature,
} from '../../src/units/index.js';

const readings = {
  hotInlet: temperature(121, '°C'),
  hotOutlet: temperature(44, '°C'),
  coolantInlet: temperature(18, '°C'),
};
const charge = capacityRate({ massFlow: massFlow(200, 'g/s') });

const kelvin = fc.double({ min: 250, max: 440, noNaN: true });

describe('effectiveness from measurement', () => {
  it('is one figure by both definitions while the charge is the smaller capacity rate', () => {
    const coolantCapacityRate = heatCapacityRate(670, 'W/K');
    const whole = effectivenessFromMeasurement({ ...readings, chargeCapacityRate: charge, coolantCapacityRate });
    expect(whole.si).toBeCloseTo(airSideEffectiveness(readings).si, 15);
    expect(whole.notes).toEqual([]);
  });

  it('is higher by the true definition where the coolant is the smaller capacity rate', () => {
    const rates = { chargeCapacityRate: charge, coolantCapacityRate: heatCapacityRate(180, 'W/K') };
    const whole = effectivenessFromMeasurement({ ...readings, ...rates });
    expect(whole.si / airSideEffectiveness(readings).si).toBeCloseTo(201 / 180, 12);
    expect(airSideFromTrueEffectiveness({ effectiveness: whole, ...rates }).si).toBeCloseTo(0.747573, 6);
  });

  it('is not cut off where readings are not consistent, but carries a note', () => {
    const rates = {
      chargeCapacityRate: heatCapacityRate(202, 'W/K'),
      coolantCapacityRate: heatCapacityRate(150, 'W/K'),
    };
    const given = {
      hotInlet: temperature(150, '°C'),
      hotOutlet: temperature(50, '°C'),
      coolantInlet: temperature(30, '°C'),
      ...rates,
    };
    const result = effectivenessFromMeasurement(given);
    expect(result.si).toBeCloseTo(1.122, 3);
    expect(result.notes).toMatchObject([{ code: 'rule', message: expect.stringContaining('not consistent') }]);
    expect(() => effectivenessFromMeasurement(given, { strict: true })).toThrow(/between 0 and 100 %/);
    const colder = airSideEffectiveness({ ...readings, hotOutlet: temperature(10, '°C') });
    expect(colder.si).toBeGreaterThan(1);
    expect(colder.notes).toHaveLength(1);
    const warmer = airSideEffectiveness({ ...readings, hotOutlet: temperature(130, '°C') });
    expect(warmer.si).toBeLessThan(0);
    expect(warmer.notes).toHaveLength(1);
  });

  it('carries a note where charge and coolant enter nearly equally warm, and is an error where they are equal', () => {
    const idle = {
      hotInlet: temperature(25, '°C'),
      hotOutlet: temperature(20, '°C'),
      coolantInlet: temperature(18, '°C'),
    };
    expect(airSideEffectiveness(idle).notes).toMatchObject([{ message: expect.stringContaining('at least 10 K') }]);
    expect(() => airSideEffectiveness({ ...idle, coolantInlet: idle.hotInlet })).toThrow(
      /hotInlet and coolantInlet must differ/,
    );
  });

  it('keeps such rows of a log, and counts them', () => {
    const hotOutlet = column('temperature', [44, 10, 46, 12], '°C');
    const result = airSideEffectiveness.columns({ ...readings, hotOutlet });
    expect(Array.from(result.si, (eps) => eps > 1)).toEqual([false, true, false, true]);
    expect(result.missing).toBe(0);
    expect(result.notes).toMatchObject([{ code: 'rule', rows: 2 }]);
  });
});

describe('charge temperature out of a cooler', () => {
  it('is the inlet temperature without a core, and the coolant temperature behind a perfect one', () => {
    const { hotInlet, coolantInlet } = readings;
    expect(cooledTemperature({ hotInlet, coolantInlet, effectiveness: ratio(0) }).si).toBe(hotInlet.si);
    expect(cooledTemperature({ hotInlet, coolantInlet, effectiveness: ratio(1) }).si).toBeCloseTo(coolantInlet.si, 12);
  });

  it('gives back the effectiveness and the coolant temperature it was made from', () => {
    const shares = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(kelvin, kelvin, shares, (hot, cold, eps) => {
        fc.pre(hot > cold + 1);
        const cooled = cooledTemperature.kernel(hot, cold, eps);
        expect(airSideEffectiveness.kernel(hot, cooled, cold)).toBeCloseTo(eps, 11);
        expect(coolantTemperatureNeeded.kernel(hot, cooled, eps)).toBeCloseTo(cold, 9);
      }),
    );
  });

  it('carries a note where a heat-soaked bay warms the charge instead', () => {
    const warmed = cooledTemperature({
      hotInlet: temperature(20, '°C'),
      coolantInlet: temperature(60, '°C'),
      effectiveness: percent(75),
    });
    expect(warmed.in('°C')).toBeCloseTo(50, 12);
    expect(warmed.notes).toHaveLength(1);
  });

  it('refuses an effectiveness above 1 to predict with, and percent written as a plain number', () => {
    const { hotInlet, coolantInlet } = readings;
    expect(() => cooledTemperature({ hotInlet, coolantInlet, effectiveness: ratio(1.1) })).toThrow(/between 0 and 1/);
    expect(() => cooledTemperature({ hotInlet, coolantInlet, effectiveness: ratio(75) })).toThrow(
      /write percent\(75\)/,
    );
  });

  it('refuses a coolant below absolute zero', () => {
    const given = { hotInlet: temperature(121, '°C'), hotOutlet: temperature(-20, '°C'), effectiveness: percent(5) };
    expect(() => coolantTemperatureNeeded(given)).toThrow(/above absolute zero/);
  });
});

describe('heat rejected', () => {
  it('is what the coolant takes up: first law over any core of any size', () => {
    fc.assert(
      fc.property(kelvin, kelvin, fc.double({ min: 0.1, max: 10, noNaN: true }), (hot, cold, N) => {
        fc.pre(hot > cold + 1);
        const [Ch, Cc] = [201, 670];
        const eps = effectiveness.crossflowUnmixed.kernel(N, Ch / Cc);
        const airSide = airSideFromTrueEffectiveness.kernel(eps, Ch, Cc);
        const cooled = cooledTemperature.kernel(hot, cold, airSide);
        const given = heatRejected.kernel(Ch / 1005, hot, cooled, 1005);
        const most = Math.min(Ch, Cc) * (hot - cold);
        expect(given / most).toBeCloseTo(eps, 11);
      }),
    );
  });

  it('is below zero, with a note, where the core warms the charge', () => {
    const warmed = heatRejected({
      massFlow: massFlow(200, 'g/s'),
      hotInlet: temperature(20, '°C'),
      hotOutlet: temperature(30, '°C'),
    });
    expect(warmed.si).toBeLessThan(0);
    expect(warmed.notes).toHaveLength(1);
  });
});

describe('density recovery and pressure loss', () => {
  const pressures = { inletPressure: absolutePressure(204.1, 'kPa'), outletPressure: absolutePressure(197.1, 'kPa') };

  it('is the gain by cooling less the loss of pressure', () => {
    const { hotInlet, hotOutlet } = readings;
    const cooling = densityRecovery({ ...pressures, outletPressure: pressures.inletPressure, hotInlet, hotOutlet });
    const both = densityRecovery({ ...pressures, hotInlet, hotOutlet });
    expect(cooling.si).toBeCloseTo(hotInlet.si / hotOutlet.si, 14);
    expect(both.si / cooling.si).toBeCloseTo(1 - pressureLossShare(pressures).si, 14);
  });

  it('carries a note where the readings say that pressure rises through the core', () => {
    const swapped = { inletPressure: pressures.outletPressure, outletPressure: pressures.inletPressure };
    const results = [pressureLoss(swapped), pressureLossShare(swapped)];
    for (const result of results) {
      expect(result.si).toBeLessThan(0);
      expect(result.notes).toMatchObject([{ message: expect.stringContaining('does not rise through the core') }]);
    }
  });

  const measurement = {
    measuredLoss: pressureDifference(7, 'kPa'),
    measuredFlow: massFlow(0.2, 'kg/s'),
    measuredDensity: density(2, 'kg/m³'),
  };

  it('scales to itself at the same flow and density, whatever the exponent', () => {
    for (const exponent of [1.7, 1.8, 2]) {
      const same = { flow: measurement.measuredFlow, density: measurement.measuredDensity, exponent: ratio(exponent) };
      expect(scaledPressureLoss({ ...measurement, ...same }).in('kPa')).toBe(7);
    }
  });

  it('grows with the square of flow where entry and exit losses rule', () => {
    const doubled = { flow: massFlow(0.4, 'kg/s'), density: measurement.measuredDensity, exponent: ratio(2) };
    expect(scaledPressureLoss({ ...measurement, ...doubled }).in('kPa')).toBeCloseTo(28, 12);
  });

  it('carries a note for an exponent of laminar flow, where the scaling is not trusted', () => {
    const laminar = { flow: massFlow(0.25, 'kg/s'), density: density(2, 'kg/m³'), exponent: ratio(1.2) };
    expect(scaledPressureLoss({ ...measurement, ...laminar }).notes).toMatchObject([{ input: 'n' }]);
  });

  it('refuses a loss that is an absolute pressure, in the types and at run time', () => {
    const wrong = { ...measurement, measuredLoss: absolutePressure(7, 'kPa') };
    // @ts-expect-error a loss is a difference of pressures
    expect(() => scaledPressureLoss({ ...wrong, flow: massFlow(0.25, 'kg/s'), density: density(2, 'kg/m³') })).toThrow(
      /measuredLoss must be a pressure difference.*subtract\(higher, lower\)/,
    );
  });
});
