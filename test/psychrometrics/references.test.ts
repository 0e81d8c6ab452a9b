import { describe, expect, it } from 'vitest';
import {
  enhancementFactor,
  psychrometerCoefficientAms,
  psychrometerCoefficients,
  psychrometerCoefficientWmo,
  relativeHumidityFromVapourPressure,
  saturationIapws,
  saturationPressureInMoistAir,
  saturationPressureOverIce,
  saturationPressureOverWater,
  saturationTemperatureIf97,
  vapourPressureByPsychrometerCoefficientOverIce,
  vapourPressureByPsychrometerCoefficientOverWater,
  vapourPressureFromPsychrometerOverWater,
} from '../../src/psychrometrics/index.js';
import { absolutePressure, ratio, temperature } from '../../src/units/index.js';

const range = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

describe('saturation by the handbook', () => {
  it('is within 0.03 % of the reference equation of IAPWS from 0 to 100 °C', () => {
    for (const T of range(273.16, 373.16, 1)) {
      const apart = saturationPressureOverWater.kernel(T) / saturationIapws.wagnerPruss.kernel(T) - 1;
      expect(Math.abs(apart), `${T} K`).toBeLessThan(3e-4);
    }
  });

  it('is within 0.04 % of the IAPWS equation for ice down to -40 °C', () => {
    for (const T of range(233.15, 273.15, 1)) {
      const apart = saturationPressureOverIce.kernel(T) / saturationIapws.ice.kernel(T) - 1;
      expect(Math.abs(apart), `${T} K`).toBeLessThan(4e-4);
    }
  });

  it('is what two equations of IAPWS say alike: they differ by less than 0.01 % from 0 to 100 °C', () => {
    for (const T of range(273.16, 373.16, 1))
      expect(Math.abs(saturationIapws.if97.kernel(T) / saturationIapws.wagnerPruss.kernel(T) - 1)).toBeLessThan(1e-4);
  });

  it('meets at the triple point with 611.657 Pa over water and over ice', () => {
    expect(saturationIapws.ice.kernel(273.16)).toBe(611.657);
    expect(saturationIapws.wagnerPruss.kernel(273.16)).toBeCloseTo(611.657, 1);
  });

  it('boils at the temperature whose saturation pressure is the barometer', () => {
    for (const p of [2e3, 94100, 101325, 1e6])
      expect(saturationIapws.if97.kernel(saturationTemperatureIf97.kernel(p)) / p).toBeCloseTo(1, 12);
  });
});

describe('saturation in moist air', () => {
  it('rises through 0 °C without a step, at any pressure', () => {
    for (const p of [2e4, 94100, 2.04e5, 6e5]) {
      const pressures = range(272.9, 273.3, 0.001).map((T) => saturationPressureInMoistAir.kernel(T, p));
      pressures.slice(1).forEach((ps, i) => {
        const growth = ps / pressures[i]! - 1;
        expect(growth).toBeGreaterThan(6e-5);
        expect(growth).toBeLessThan(9e-5);
      });
    }
  });

  it('is pure saturation where the pressure is only that of the vapour', () => {
    const ps = saturationPressureOverWater.kernel(353.15);
    expect(saturationPressureInMoistAir.kernel(353.15, ps * (1 + 1e-9)) / ps).toBeCloseTo(1, 9);
  });
});

describe('published enhancement factors', () => {
  const room = { temperature: temperature(20, '°C'), pressure: absolutePressure(101325, 'Pa') };

  it('agree within 0.0003 in a room', () => {
    const values = [
      enhancementFactor.cipm2007(room).si,
      enhancementFactor.buck1981({ pressure: room.pressure }).si,
      enhancementFactor.buck1996(room).si,
      enhancementFactor.greenspanOverWater(room).si,
    ];
    expect(Math.max(...values) - Math.min(...values)).toBeLessThan(3e-4);
    expect(Math.min(...values)).toBeGreaterThan(1.0039);
  });

  it('grow to 0.7 % in charge air at 2 bar', () => {
    const charge = { temperature: temperature(45, '°C'), pressure: absolutePressure(204, 'kPa') };
    expect(enhancementFactor.greenspanOverWater(charge).si).toBeCloseTo(1.0076, 4);
    expect(() => enhancementFactor.greenspanOverWater({ ...charge, temperature: temperature(125, '°C') })).toThrow(
      'air this hot cannot be saturated',
    );
  });
});

describe('psychrometer coefficients', () => {
  const reading = {
    temperature: temperature(30, '°C'),
    wetBulb: temperature(20, '°C'),
    pressure: absolutePressure(100, 'kPa'),
  };
  const percent = (pv: ReturnType<typeof vapourPressureByPsychrometerCoefficientOverWater>): number =>
    relativeHumidityFromVapourPressure({ temperature: reading.temperature, vapourPressure: pv }).in('%');

  it('are chosen by name and disagree: half a per cent of relative humidity aspirated, three and more without forced air', () => {
    const { wetBulb } = reading;
    const of = (coefficient: typeof psychrometerCoefficients.unventilated): number =>
      percent(vapourPressureByPsychrometerCoefficientOverWater({ ...reading, coefficient }));
    const aspirated = [
      of(psychrometerCoefficientWmo({ wetBulb })),
      of(psychrometerCoefficientAms({ wetBulb })),
      of(psychrometerCoefficients.weatherStation),
    ];
    expect(Math.max(...aspirated) - Math.min(...aspirated)).toBeGreaterThan(0.2);
    expect(Math.max(...aspirated) - Math.min(...aspirated)).toBeLessThan(0.5);
    expect(Math.min(...aspirated) - of(psychrometerCoefficients.unventilated)).toBeGreaterThan(2.5);
  });

  it('with WMO’s and the enhancement factor of Buck is the aspirated psychrometer', () => {
    const pv = vapourPressureByPsychrometerCoefficientOverWater({
      ...reading,
      coefficient: psychrometerCoefficientWmo({ wetBulb: reading.wetBulb }),
      enhancementFactor: enhancementFactor.buck1981({ pressure: reading.pressure }),
    });
    expect(pv.si).toBeCloseTo(vapourPressureFromPsychrometerOverWater(reading).si, 8);
  });

  it('show the enhancement factor as left out when none is given', () => {
    const coefficient = psychrometerCoefficients.unventilated;
    const left = vapourPressureByPsychrometerCoefficientOverWater({ ...reading, coefficient });
    expect(left.si).toBe(
      vapourPressureByPsychrometerCoefficientOverWater({ ...reading, coefficient, enhancementFactor: ratio(1) }).si,
    );
  });

  it('give less vapour over an iced wick by the larger coefficient', () => {
    const frost = {
      temperature: temperature(2, '°C'),
      wetBulb: temperature(-1, '°C'),
      pressure: absolutePressure(941, 'hPa'),
    };
    const { iceWmo, iceAms, iceWeatherStation } = psychrometerCoefficients;
    const [wmo, ams, station] = [iceWmo, iceAms, iceWeatherStation].map((coefficient) =>
      vapourPressureByPsychrometerCoefficientOverIce({ ...frost, coefficient }).in('Pa'),
    ) as [number, number, number];
    expect(wmo).toBeGreaterThan(ams);
    expect(ams).toBeGreaterThan(station);
    expect(wmo - station).toBeLessThan(3);
  });
});
