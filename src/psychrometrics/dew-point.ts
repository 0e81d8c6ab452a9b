import { calculation, input, output, source } from '../calculation/index.js';
import { celsius, ROUNDING, TEMPERATURE } from './ranges.js';
import { rootBetween } from '../statistics/root-between.js';
import {
  logSaturationOver,
  saturation,
  saturationPressure,
  saturationPressureOverWater,
} from './saturation-pressure.js';

const SOURCES = [
  source('ashrae2017', 'dew point as the inverse of saturation pressure', 'memory'),
  source('psychrolib', 'GetTDewPointFromVapPres', 'read'),
];

/**
 * Dew point: where air of a vapour pressure becomes saturated. Below the triple point (0.01 °C) the frost point, over ice.
 *
 * For charge air take the vapour pressure at charge pressure: compression raises the dew point.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if there is no vapour, or too little for a dew point above -100 °C.
 * @example
 * dewPoint({ vapourPressure: absolutePressure(929, 'Pa') }).in('°C') //=> 5.90319
 */
export const dewPoint = calculation({
  name: 'dew point',
  task: 'describe humid air',
  inputs: {
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', { min: 0.0015, max: 1.5e6, typical: 930 }),
  },
  output: output('Td', 'temperature', '°C'),
  formula: 'pv == ps(Td)',
  uses: { ps: saturationPressure },
  si: (pv) => rootBetween(logSaturationOver(pv, 'stable'), celsius(-100), celsius(200)),
  rises: ['pv'],
  sources: SOURCES,
});

const DEW_POINT = { ...TEMPERATURE, typical: 279.15 } as const;

/**
 * Vapour pressure, from the dew point; below the triple point from the frost point.
 *
 * For a dew point over water in frost, as weather reports give it, use {@link saturationPressureOverWater}.
 *
 * @function
 * @returns One absolute pressure.
 * @throws CalculationError if the dew point is outside -100 to 250 °C.
 * @example
 * vapourPressureFromDewPoint({ dewPoint: temperature(6, '°C') }).in('Pa') //=> 935.246
 */
export const vapourPressureFromDewPoint = calculation({
  name: 'vapour pressure from dew point',
  task: 'describe humid air',
  inputs: {
    /** Dew point or frost point. */
    dewPoint: input('Td', 'temperature', DEW_POINT),
  },
  output: output('pv', 'absolute pressure', 'Pa'),
  formula: 'ps(Td)',
  uses: { ps: saturationPressure },
  si: saturation,
  rises: ['Td'],
  sources: SOURCES,
});

/**
 * Relative humidity, from temperature and dew point; over ice where either is below the triple point.
 *
 * @function
 * @returns A relative humidity up to 100 %.
 * @throws CalculationError if the dew point lies above the temperature.
 * @example
 * relativeHumidityFromDewPoint({ temperature: temperature(18, '°C'), dewPoint: temperature(6, '°C') }).in('%') //=> 45.3059
 */
export const relativeHumidityFromDewPoint = calculation({
  name: 'relative humidity from dew point',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Dew point or frost point. */
    dewPoint: input('Td', 'temperature', DEW_POINT),
  },
  output: output('RH', 'relative humidity', '%'),
  formula: 'ps(Td) / ps(T)',
  uses: { ps: saturationPressure },
  si: (T, Td) => saturation(Td) / saturation(T),
  rules: [{ need: 'the dew point must not lie above the dry bulb', holds: (T, Td) => Td <= T * ROUNDING }],
  rises: ['Td'],
  falls: ['T'],
  sources: SOURCES,
});

/**
 * Dew point over water at any temperature: what weather reports give in frost; 2.3 K below the frost point where that is -20 °C.
 *
 * The other way is {@link saturationPressureOverWater} at the reported dew point.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if the vapour pressure is too low for a dew point above -50 °C.
 * @example
 * dewPointOverWater({ vapourPressure: absolutePressure(100, 'Pa') }).in('°C') //=> -22.6198
 */
export const dewPointOverWater = calculation({
  name: 'dew point over water',
  task: 'describe humid air',
  inputs: {
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', { min: 6.5, max: 1.5e6, trusted: [19.1, 1.5e6], typical: 330 }),
  },
  output: output('Td', 'temperature', '°C'),
  formula: 'pv == pwater(Td)',
  uses: { pwater: saturationPressureOverWater },
  si: (pv) => rootBetween(logSaturationOver(pv, 'water'), celsius(-50), celsius(200)),
  rises: ['pv'],
  sources: [source('wmo8', 'dew point over water, frost point over ice', 'memory'), ...SOURCES],
});
