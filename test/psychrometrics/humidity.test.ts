import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  degreeOfSaturation,
  dewPoint,
  dewPointOverWater,
  dryPressure,
  humidityRatioFromVapourPressure,
  relativeHumidityFromDewPoint,
  relativeHumidityFromVapourPressure,
  relativeHumidityOverWater,
  saturationHumidityRatio,
  saturationPressure,
  saturationPressureOverWater,
  vapourPressureFromDewPoint,
  vapourPressureFromHumidityRatio,
  vapourPressureFromRelativeHumidity,
  vapourPressureFromRelativeHumidityOverWater,
} from '../../src/psychrometrics/index.js';
import { absolutePressure, humidityRatio, relativeHumidity, temperature } from '../../src/units/index.js';
import { states } from './support.js';

const closeTo = (value: number, wanted: number, relative: number): void =>
  expect(Math.abs(value - wanted), `${value} against ${wanted}`).toBeLessThanOrEqual(relative * Math.abs(wanted));

describe('measures of humidity', () => {
  it('lead from relative humidity to humidity ratio and back, at any temperature and pressure', () => {
    fc.assert(
      fc.property(states, ({ T, p, RH }) => {
        const pv = vapourPressureFromRelativeHumidity.kernel(T, RH);
        const W = humidityRatioFromVapourPressure.kernel(p, pv);
        const back = relativeHumidityFromVapourPressure.kernel(T, vapourPressureFromHumidityRatio.kernel(p, W));
        closeTo(back, RH, 4e-14);
      }),
    );
  });

  it('lead from vapour pressure to dew point and back, over ice and over water', () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 14, noNaN: true }), (x) => {
        const pv = Math.exp(x);
        closeTo(vapourPressureFromDewPoint.kernel(dewPoint.kernel(pv)), pv, 2e-14);
      }),
    );
  });

  it('lead from dew point to vapour pressure and back to the last digits', () => {
    fc.assert(
      fc.property(fc.double({ min: 174, max: 473, noNaN: true }), (Td) => {
        closeTo(dewPoint.kernel(saturationPressure.kernel(Td)), Td, 1e-15);
      }),
      { examples: [[273.16], [273.15], [273.1599], [273.1601]] },
    );
  });

  it('lead from supercooled dew point to vapour pressure and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 224, max: 473, noNaN: true }), (Td) => {
        closeTo(dewPointOverWater.kernel(saturationPressureOverWater.kernel(Td)), Td, 1e-15);
      }),
    );
  });

  it('are all full at saturation', () => {
    const air = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
    const W = saturationHumidityRatio(air);
    expect(degreeOfSaturation({ ...air, humidityRatio: W }).si).toBeCloseTo(1, 14);
    expect(relativeHumidityFromDewPoint({ temperature: air.temperature, dewPoint: air.temperature }).si).toBe(1);
  });
});

describe('dew point', () => {
  it('is the triple point for a vapour pressure in the gap of 6 parts in 10⁹ between ice and water', () => {
    expect(dewPoint.kernel(611.657026)).toBeCloseTo(273.16, 12);
  });

  it('is the frost point below, higher than the dew point over water that weather reports give', () => {
    const vapourPressure = absolutePressure(100, 'Pa');
    expect(dewPoint({ vapourPressure }).in('°C')).toBeCloseTo(-20.334, 3);
    expect(dewPointOverWater({ vapourPressure }).in('°C')).toBeCloseTo(-22.62, 3);
  });

  it('does not exist without vapour', () => {
    expect(() => dewPoint({ vapourPressure: absolutePressure(0, 'Pa') })).toThrow(
      'dew point: vapourPressure must be between 0.0015',
    );
  });
});

describe('relative humidity in frost', () => {
  it('is 10 % lower over water than over ice at -10 °C', () => {
    const cold = { temperature: temperature(-10, '°C') };
    const vapourPressure = vapourPressureFromRelativeHumidity({ ...cold, relativeHumidity: relativeHumidity(80, '%') });
    expect(relativeHumidityOverWater({ ...cold, vapourPressure }).in('%')).toBeCloseTo(72.56, 2);
  });

  it('reads the same over either above the triple point', () => {
    const warm = { temperature: temperature(18, '°C'), relativeHumidity: relativeHumidity(45, '%') };
    expect(vapourPressureFromRelativeHumidityOverWater(warm).si).toBe(vapourPressureFromRelativeHumidity(warm).si);
  });

  it('over water cannot be full where frost forms first, so air at water saturation is refused as humid air over ice', () => {
    const cold = { temperature: temperature(-10, '°C') };
    const full = { ...cold, relativeHumidity: relativeHumidity(100, '%') };
    const vapourPressure = vapourPressureFromRelativeHumidityOverWater(full);
    expect(() => relativeHumidityFromVapourPressure({ ...cold, vapourPressure })).toThrow('must not exceed saturation');
  });
});

describe('what cannot be', () => {
  const hot = { temperature: temperature(120, '°C'), pressure: absolutePressure(1, 'bar') };

  it('saturated air where saturation pressure reaches the total pressure', () => {
    expect(() => saturationHumidityRatio(hot)).toThrow('air this hot cannot be saturated');
    expect(() => degreeOfSaturation({ ...hot, humidityRatio: humidityRatio(10, 'g/kg') })).toThrow(
      'air this hot cannot be saturated',
    );
    expect(saturationHumidityRatio({ ...hot, pressure: absolutePressure(5, 'bar') }).si).toBeGreaterThan(0.4);
  });

  it('more vapour than pressure', () => {
    const steam = { pressure: hot.pressure, vapourPressure: absolutePressure(1, 'bar') };
    expect(() => humidityRatioFromVapourPressure(steam)).toThrow('must stay below the total pressure');
    expect(() => dryPressure(steam)).toThrow('dry pressure: the vapour pressure must stay below the total pressure');
  });

  it('a dew point above the dry bulb', () => {
    const inputs = { temperature: temperature(18, '°C'), dewPoint: temperature(19, '°C') };
    expect(() => relativeHumidityFromDewPoint(inputs)).toThrow(
      'relative humidity from dew point: the dew point must not lie above the dry bulb, got temperature 18 °C, dewPoint 19 °C.',
    );
  });

  it('a relative humidity of 45 that was meant as 45 %', () => {
    const slip = { temperature: temperature(18, '°C'), relativeHumidity: relativeHumidity(45, '1') };
    expect(() => vapourPressureFromRelativeHumidity(slip)).toThrow("For 45 % write relativeHumidity(45, '%').");
  });
});
