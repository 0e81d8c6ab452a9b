import { calculation, input, output, source } from '../calculation/index.js';
import { celsius, PRESSURE, ROUNDING, TEMPERATURE, VAPOUR_PRESSURE } from './ranges.js';
import { overWater, saturation, saturationPressure, saturationPressureOverWater } from './saturation-pressure.js';

const RELATIVE_HUMIDITY = { min: 0, max: 1, typical: 0.45 };
const COLD_TEMPERATURE = {
  min: celsius(-50),
  max: celsius(250),
  trusted: [celsius(-40), celsius(200)],
  typical: 268.15,
} as const;
const SOURCES = [
  source('ashrae2017', 'definition of relative humidity', 'memory'),
  source('psychrolib', 'GetVapPresFromRelHum, GetRelHumFromVapPres', 'read'),
];

/**
 * Vapour pressure, from temperature and relative humidity at the same place.
 *
 * Relative humidity is over what is stable, so over ice below the triple point. A sensor that says so, and a weather report in frost,
 * give it over water: {@link vapourPressureFromRelativeHumidityOverWater}.
 *
 * @function
 * @returns One absolute pressure.
 * @throws CalculationError if the relative humidity is above 100 %, as 45 in place of 45 % is.
 * @example
 * const sensor = { temperature: temperature(18, '°C'), relativeHumidity: relativeHumidity(45, '%') };
 * vapourPressureFromRelativeHumidity(sensor).in('Pa') //=> 928.931
 */
export const vapourPressureFromRelativeHumidity = calculation({
  name: 'vapour pressure from relative humidity',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air at the humidity sensor. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Vapour pressure over saturation pressure. */
    relativeHumidity: input('RH', 'relative humidity', RELATIVE_HUMIDITY),
  },
  output: output('pv', 'absolute pressure', 'Pa'),
  formula: 'RH * ps(T)',
  uses: { ps: saturationPressure },
  si: (T, RH) => RH * saturation(T),
  rises: ['T', 'RH'],
  sources: SOURCES,
});

/**
 * Relative humidity, from temperature and vapour pressure; over ice below the triple point.
 *
 * @function
 * @returns A relative humidity up to 100 %.
 * @throws CalculationError if the vapour pressure is above saturation: that much vapour cannot stay in the air.
 * @example
 * const air = { temperature: temperature(18, '°C'), vapourPressure: absolutePressure(929, 'Pa') };
 * relativeHumidityFromVapourPressure(air).in('%') //=> 45.0033
 */
export const relativeHumidityFromVapourPressure = calculation({
  name: 'relative humidity',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', VAPOUR_PRESSURE),
  },
  output: output('RH', 'relative humidity', '%'),
  formula: 'pv / ps(T)',
  uses: { ps: saturationPressure },
  si: (T, pv) => pv / saturation(T),
  rules: [
    {
      need: 'the vapour pressure must not exceed saturation at that temperature (more would condense)',
      holds: (T, pv) => pv <= saturation(T) * ROUNDING,
    },
  ],
  rises: ['pv'],
  falls: ['T'],
  sources: SOURCES,
});

/**
 * Vapour pressure, from a relative humidity that is over water at any temperature, as most sensors and all weather reports give it.
 *
 * Differs from {@link vapourPressureFromRelativeHumidity} only in frost: by 10 % at -10 °C.
 *
 * @function
 * @returns One absolute pressure.
 * @throws CalculationError if the temperature is below -50 °C.
 * @example
 * const sensor = { temperature: temperature(-5, '°C'), relativeHumidity: relativeHumidity(80, '%') };
 * vapourPressureFromRelativeHumidityOverWater(sensor).in('Pa') //=> 337.467
 */
export const vapourPressureFromRelativeHumidityOverWater = calculation({
  name: 'vapour pressure from relative humidity over water',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air at the humidity sensor. */
    temperature: input('T', 'temperature', COLD_TEMPERATURE),
    /** Vapour pressure over saturation pressure above water. */
    relativeHumidity: input('RH', 'relative humidity', RELATIVE_HUMIDITY),
  },
  output: output('pv', 'absolute pressure', 'Pa'),
  formula: 'RH * pwater(T)',
  uses: { pwater: saturationPressureOverWater },
  si: (T, RH) => RH * overWater(T),
  rises: ['T', 'RH'],
  sources: [source('wmo8', 'relative humidity is over water, also below 0 °C', 'memory')],
});

/**
 * Relative humidity over water at any temperature, from vapour pressure: what a weather report would say.
 *
 * @function
 * @returns A relative humidity up to 100 %.
 * @throws CalculationError if the vapour pressure is above saturation over water.
 * @example
 * const air = { temperature: temperature(-5, '°C'), vapourPressure: absolutePressure(337.4, 'Pa') };
 * relativeHumidityOverWater(air).in('%') //=> 79.9842
 */
export const relativeHumidityOverWater = calculation({
  name: 'relative humidity over water',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', COLD_TEMPERATURE),
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', { ...VAPOUR_PRESSURE, typical: 330 }),
  },
  output: output('RH', 'relative humidity', '%'),
  formula: 'pv / pwater(T)',
  uses: { pwater: saturationPressureOverWater },
  si: (T, pv) => pv / overWater(T),
  rules: [
    {
      need: 'the vapour pressure must not exceed saturation over water at that temperature (more would condense)',
      holds: (T, pv) => pv <= overWater(T) * ROUNDING,
    },
  ],
  rises: ['pv'],
  falls: ['T'],
  sources: [source('wmo8', 'relative humidity is over water, also below 0 °C', 'memory')],
});

/**
 * Dry pressure: what is left of the barometer without the vapour. Most power standards refer to it.
 *
 * @function
 * @returns One absolute pressure.
 * @throws CalculationError if the vapour pressure does not stay below the total pressure.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), vapourPressure: absolutePressure(929, 'Pa') };
 * dryPressure(room).in('kPa') //=> 93.171
 */
export const dryPressure = calculation({
  name: 'dry pressure',
  task: 'describe humid air',
  inputs: {
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', VAPOUR_PRESSURE),
  },
  output: output('pd', 'absolute pressure', 'kPa'),
  formula: 'p - pv',
  si: (p, pv) => p - pv,
  rules: [{ need: 'the vapour pressure must stay below the total pressure', holds: (p, pv) => pv < p }],
  rises: ['p'],
  falls: ['pv'],
  sources: [source('saeJ1349', 'dry barometer', 'memory'), source('iso1585', 'dry pressure', 'memory')],
});
