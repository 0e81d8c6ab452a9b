import { inspect } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  humidAirFromDewPoint,
  humidAirFromHumidityRatio,
  humidAirFromRelativeHumidity,
  humidAirFromVapourPressure,
  humidAirFromWetBulb,
} from '../../src/psychrometrics/index.js';
import {
  absolutePressure,
  CalculationError,
  gaugePressure,
  humidityRatio,
  relativeHumidity,
  temperature,
} from '../../src/units/index.js';
import { airAt, place, states } from './support.js';

const at = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
const room = humidAirFromRelativeHumidity({ ...at, relativeHumidity: relativeHumidity(45, '%') });

describe('humid air', () => {
  it('of the dyno room has the properties computed with 50 digits from the ASHRAE formulas', () => {
    expect(room.vapourPressure.in('Pa')).toBeCloseTo(928.9312375, 6);
    expect(room.dryPressure.in('Pa')).toBeCloseTo(93171.0687625, 6);
    expect(room.humidityRatio.in('g/kg')).toBeCloseTo(6.20089633181, 9);
    expect(room.density.in('kg/m³')).toBeCloseTo(1.12176926139, 10);
    expect(room.dryDensity.in('kg/m³')).toBeCloseTo(1.11485615395, 10);
    expect(room.dewPoint.in('°C')).toBeCloseTo(5.90211616283, 9);
    expect(room.wetBulb.in('°C')).toBeCloseTo(11.2772816008, 9);
    expect(room.enthalpy.in('kJ/kg')).toBeCloseTo(33.8240477351, 9);
    expect(room.degreeOfSaturation.in('1')).toBeCloseTo(0.444516407428, 11);
    expect(room.specificHumidity.in('1')).toBeCloseTo(0.00620089633181 / 1.00620089633181, 13);
  });

  it('is one state, whichever measure of humidity it is stated by', () => {
    fc.assert(
      fc.property(states, (state) => {
        const air = airAt(state);
        const where = place(state);
        const others = [
          humidAirFromVapourPressure({ ...where, vapourPressure: air.vapourPressure }),
          humidAirFromDewPoint({ ...where, dewPoint: air.dewPoint }),
          ...(air.humidityRatio.si > 1e-6
            ? [humidAirFromHumidityRatio({ ...where, humidityRatio: air.humidityRatio })]
            : []),
          ...(air.humidityRatio.si > 1e-6 ? [humidAirFromWetBulb({ ...where, wetBulb: air.wetBulb })] : []),
        ];
        for (const other of others) {
          expect(Math.abs(other.relativeHumidity.si / state.RH - 1)).toBeLessThan(1e-9);
          expect(Math.abs(other.density.si / air.density.si - 1)).toBeLessThan(1e-12);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('keeps its humidity ratio through compressor and core, while dew point and relative humidity change', () => {
    const charge = humidAirFromHumidityRatio({
      temperature: temperature(45, '°C'),
      pressure: absolutePressure(2.041, 'bar'),
      humidityRatio: room.humidityRatio,
    });
    expect(charge.humidityRatio).toBe(room.humidityRatio);
    expect(charge.dewPoint.in('°C')).toBeCloseTo(17.6150255, 6);
    expect(charge.relativeHumidity.in('%')).toBeCloseTo(21.0025752, 6);
  });

  it('gives back what it was stated by, and one value of each property however often it is read', () => {
    const stated = relativeHumidity(45, '%');
    const air = humidAirFromRelativeHumidity({ ...at, relativeHumidity: stated });
    expect(air.relativeHumidity).toBe(stated);
    expect(air.temperature).toBe(at.temperature);
    expect(air.wetBulb).toBe(air.wetBulb);
    expect(air.density).toBe(air.density);
  });

  it('of no vapour at all is dry air without a dew point', () => {
    const dry = humidAirFromHumidityRatio({ ...at, humidityRatio: humidityRatio(0, 'g/kg') });
    expect(dry.density.si).toBe(94100 / (287.042 * 291.15));
    expect(dry.relativeHumidity.si).toBe(0);
    expect(dry.wetBulb.in('°C')).toBeLessThan(7);
    expect(() => dry.dewPoint).toThrow('dew point: vapourPressure must be');
  });

  it('hot enough to boil away has properties, but no degree of saturation', () => {
    const hot = humidAirFromRelativeHumidity({
      ...at,
      temperature: temperature(150, '°C'),
      relativeHumidity: relativeHumidity(5, '%'),
    });
    expect(hot.humidityRatio.si).toBeGreaterThan(0.1);
    expect(hot.wetBulb.in('°C')).toBeLessThan(100);
    expect(() => hot.degreeOfSaturation).toThrow('air this hot cannot be saturated');
  });

  it('above 200 °C is air all the same; only what rests on saturation carries a note', () => {
    const hot = humidAirFromHumidityRatio({
      ...at,
      temperature: temperature(220, '°C'),
      humidityRatio: humidityRatio(6.2, 'g/kg'),
    });
    expect(hot.density.notes).toEqual([]);
    expect(hot.relativeHumidity.notes).toHaveLength(1);
  });

  it('writes itself as text and as records', () => {
    const words =
      'humid air at 18 °C and 941 hPa: relative humidity 45 %, humidity ratio 6.201 g/kg, density 1.122 kg/m³';
    expect(String(room)).toBe(words);
    expect(inspect(room)).toBe(words);
    const record = JSON.parse(JSON.stringify(room)) as Record<string, unknown>;
    expect(record['temperature']).toEqual({ kind: 'temperature', value: 18, unit: '°C' });
    expect(Object.keys(record)).toEqual([
      'temperature',
      'pressure',
      'relativeHumidity',
      'humidityRatio',
      'vapourPressure',
      'density',
    ]);
  });
});

describe('humid air that cannot be', () => {
  it('is refused when stated: saturated at 120 °C and 1 bar', () => {
    const hot = {
      temperature: temperature(120, '°C'),
      pressure: absolutePressure(1, 'bar'),
      relativeHumidity: relativeHumidity(100, '%'),
    };
    expect(() => humidAirFromRelativeHumidity(hot)).toThrow('air that hot cannot be that humid');
    expect(
      humidAirFromRelativeHumidity({ ...hot, pressure: absolutePressure(5, 'bar') }).humidityRatio.si,
    ).toBeGreaterThan(0.4);
  });

  it('is refused when stated: a dew point or a wet bulb above the dry bulb', () => {
    expect(() => humidAirFromDewPoint({ ...at, dewPoint: temperature(19, '°C') })).toThrow(
      'the dew point must not lie above the dry bulb',
    );
    expect(() => humidAirFromWetBulb({ ...at, wetBulb: temperature(19, '°C') })).toThrow(
      'the wet bulb must not lie above the dry bulb',
    );
  });

  it('is refused when stated: more vapour than saturation', () => {
    const words =
      'relative humidity: the vapour pressure must not exceed saturation at that temperature (more would condense)';
    expect(() => humidAirFromHumidityRatio({ ...at, humidityRatio: humidityRatio(20, 'g/kg') })).toThrow(words);
    expect(() => humidAirFromVapourPressure({ ...at, vapourPressure: absolutePressure(3, 'kPa') })).toThrow(words);
  });

  it('says everything that is wrong at once, by the names it was given under', () => {
    const given = {
      temperature: 18,
      pressure: absolutePressure(94.1, 'Pa'),
      relativeHumidty: relativeHumidity(45, '%'),
    };
    let problems: unknown;
    try {
      // @ts-expect-error a bare number, and a misspelt name
      humidAirFromRelativeHumidity(given);
    } catch (error) {
      if (!(error instanceof CalculationError)) throw error;
      expect(error.calculation).toBe('humid air from relative humidity');
      problems = error.problems.map(({ code, input }) => `${input}: ${code}`);
    }
    expect(problems).toEqual([
      'relativeHumidty: unknown',
      'temperature: kind',
      'pressure: impossible',
      'relativeHumidity: missing',
    ]);
  });

  it('names the dew point, not a temperature, when a dew point is missing', () => {
    // @ts-expect-error no dew point
    expect(() => humidAirFromDewPoint({ ...at })).toThrow(
      'humid air from dew point: dewPoint must be a temperature, got nothing.',
    );
  });

  it('refuses boost as the pressure of the charge, in the types and at run time', () => {
    const slip = { ...at, pressure: gaugePressure(1.1, 'bar'), humidityRatio: humidityRatio(6.2, 'g/kg') };
    // @ts-expect-error a gauge pressure is not absolute
    expect(() => humidAirFromHumidityRatio(slip)).toThrow('Use absolute(gauge, barometer).');
  });
});
