import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  humidAirFromRelativeHumidity,
  humidityRatioFromWetBulb,
  saturationHumidityRatio,
  saturationPressure,
} from '../../src/psychrometrics/index.js';
import { absolutePressure, relativeHumidity, temperature } from '../../src/units/index.js';

psychrolib.SetUnitSystem(psychrolib.SI);

const TEMPERATURES = [-50, -30, -10, -1, 0.5, 5, 18, 25, 40, 60, 80, 95];
const PRESSURES = [70_000, 94_100, 101_325, 204_000, 500_000];
const HUMIDITIES = [0.05, 0.2, 0.45, 0.8, 0.999];

interface Point {
  readonly t: number;
  readonly p: number;
  readonly rh: number;
}

/** Every combination that can exist. */
const grid: readonly Point[] = TEMPERATURES.flatMap((t) =>
  PRESSURES.flatMap((p) =>
    HUMIDITIES.filter((rh) => rh * psychrolib.GetSatVapPres(t) < 0.9 * p).map((rh) => ({ t, p, rh })),
  ),
);

const air = ({ t, p, rh }: Point) =>
  humidAirFromRelativeHumidity({
    temperature: temperature(t, '°C'),
    pressure: absolutePressure(p, 'Pa'),
    relativeHumidity: relativeHumidity(rh, '1'),
  });

/** The largest difference over the grid between what ours and psychrolib give, and where. */
function largest(of: (point: Point) => number): { difference: number; where: string } {
  let worst = { difference: 0, where: '' };
  for (const point of grid) {
    const difference = Math.abs(of(point));
    if (!(difference <= worst.difference)) worst = { difference, where: JSON.stringify(point) };
  }
  return worst;
}

describe('against psychrolib 2.5, ASHRAE 2017', () => {
  it('is compared at many states', () => {
    expect(grid.length).toBeGreaterThan(250);
  });

  it('has the same saturation pressure to 1 part in 10¹²', () => {
    const { difference, where } = largest(
      ({ t }) => saturationPressure({ temperature: temperature(t, '°C') }).si / psychrolib.GetSatVapPres(t) - 1,
    );
    expect(difference, where).toBeLessThan(1e-12);
  });

  it('has the same humidity ratio to 1 part in 10¹¹', () => {
    const { difference, where } = largest((point) => {
      const theirs = psychrolib.GetHumRatioFromRelHum(point.t, point.rh, point.p);
      // Below this they put in 1e-7 instead.
      return theirs > 1e-7 ? air(point).humidityRatio.si / theirs - 1 : 0;
    });
    expect(difference, where).toBeLessThan(1e-11);
  });

  it('has the same density to 1 part in 10⁶: they round 1/0.621945 to 1.607858', () => {
    const { difference, where } = largest((point) => {
      const { humidityRatio, density } = air(point);
      return density.si / psychrolib.GetMoistAirDensity(point.t, humidityRatio.si, point.p) - 1;
    });
    expect(difference, where).toBeLessThan(1e-6);
  });

  it('has the same enthalpy to 1 mJ/kg', () => {
    const { difference, where } = largest((point) => {
      const { humidityRatio, enthalpy } = air(point);
      return enthalpy.si - psychrolib.GetMoistAirEnthalpy(point.t, humidityRatio.si);
    });
    expect(difference, where).toBeLessThan(1e-3);
  });

  it('has the same dew point to 0.002 K: they stop at 0.001 K', () => {
    const { difference, where } = largest((point) => {
      const { vapourPressure, dewPoint } = air(point);
      return dewPoint.in('°C') - psychrolib.GetTDewPointFromVapPres(point.t, vapourPressure.si);
    });
    expect(difference, where).toBeLessThan(0.002);
  });

  it('has the same wet bulb to 0.002 K away from 0 °C, where they stop at 0.001 K', () => {
    const { difference, where } = largest((point) => {
      const { wetBulb, humidityRatio } = air(point);
      if (wetBulb.notes.some(({ code }) => code === 'rule')) return 0;
      return wetBulb.in('°C') - psychrolib.GetTWetBulbFromHumRatio(point.t, humidityRatio.si, point.p);
    });
    expect(difference, where).toBeLessThan(0.002);
  });

  it('has the same degree of saturation to 1 part in 10¹¹', () => {
    const { difference, where } = largest((point) => {
      if (psychrolib.GetSatVapPres(point.t) >= 0.9 * point.p) return 0;
      const { humidityRatio, degreeOfSaturation } = air(point);
      const theirs = psychrolib.GetDegreeOfSaturation(point.t, humidityRatio.si, point.p);
      return humidityRatio.si > 1e-7 ? degreeOfSaturation.si / theirs - 1 : 0;
    });
    expect(difference, where).toBeLessThan(1e-11);
  });
});

describe('differs from psychrolib on purpose', () => {
  it('refuses saturated air at 100 °C and 101.325 kPa, which they answer with a humidity ratio of 1e-7', () => {
    const state = { temperature: temperature(100, '°C'), pressure: absolutePressure(101.325, 'kPa') };
    expect(psychrolib.GetSatHumRatio(100, 101_325)).toBe(1e-7);
    expect(() => saturationHumidityRatio(state)).toThrow(
      'saturation humidity ratio: saturation pressure must stay below the total pressure: air this hot cannot be saturated, got temperature 100 °C, pressure 101.325 kPa.',
    );
    expect(() => humidAirFromRelativeHumidity({ ...state, relativeHumidity: relativeHumidity(100, '%') })).toThrow(
      'the vapour pressure must stay below the total pressure: air that hot cannot be that humid',
    );
  });

  it('refuses a pressure in kilopascals taken for pascals, which they answer with a humidity ratio of 1e-7', () => {
    const state = { temperature: temperature(25, '°C'), pressure: absolutePressure(101.325, 'Pa') };
    expect(psychrolib.GetHumRatioFromRelHum(25, 0.5, 101.325)).toBe(1e-7);
    expect(() => humidAirFromRelativeHumidity({ ...state, relativeHumidity: relativeHumidity(50, '%') })).toThrow(
      'humid air from relative humidity: pressure must be between 20000 Pa and 600000 Pa, got 101.325 Pa. Is it in kilo-units, such as kPa?',
    );
  });

  it('refuses a wet bulb that even dry air cannot reach, which they answer with a humidity ratio of 1e-7', () => {
    const psychrometer = { temperature: temperature(30, '°C'), wetBulb: temperature(5, '°C') };
    expect(psychrolib.GetHumRatioFromTWetBulb(30, 5, 101_325)).toBe(1e-7);
    expect(() => humidityRatioFromWetBulb({ ...psychrometer, pressure: absolutePressure(101.325, 'kPa') })).toThrow(
      'humidity ratio from wet bulb: the wet bulb must not lie below that of perfectly dry air',
    );
  });
});
