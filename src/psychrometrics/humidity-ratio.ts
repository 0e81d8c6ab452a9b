import { MOLAR_MASS_RATIO } from '../air/constants.js';
import { calculation, input, output, source } from '../calculation/index.js';
import { HUMIDITY_RATIO, PRESSURE, ROUNDING, SATURATED_PRESSURE, TEMPERATURE, VAPOUR_PRESSURE } from './ranges.js';
import { saturation, saturationPressure } from './saturation-pressure.js';

const SOURCES = [
  source('ashrae2017', 'equations 20 and 21', 'memory'),
  source('psychrolib', 'GetHumRatioFromVapPres, GetSatHumRatio', 'read'),
];

/** Mass of vapour per mass of dry air, bare. */
export const ratioAt = (p: number, pv: number): number => (MOLAR_MASS_RATIO * pv) / (p - pv);

/** Vapour pressure of a humidity ratio, bare. */
export const vapourPressureAt = (p: number, W: number): number => (p * W) / (MOLAR_MASS_RATIO + W);

/** Saturation where vapour can stand below the total pressure; elsewhere there is no saturated air. */
const saturationExists = {
  need: 'saturation pressure must stay below the total pressure: air this hot cannot be saturated',
  holds: (T: number, p: number): boolean => saturation(T) < p,
};

/**
 * Humidity ratio: mass of vapour per mass of dry air, from total and vapour pressure.
 *
 * It stays the same when air is compressed, heated or cooled, until water condenses.
 *
 * @function
 * @returns One humidity ratio.
 * @throws CalculationError if the vapour pressure does not stay below the total pressure: air that hot cannot be that humid.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), vapourPressure: absolutePressure(929, 'Pa') };
 * humidityRatioFromVapourPressure(room).in('g/kg') //=> 6.20136
 */
export const humidityRatioFromVapourPressure = calculation({
  name: 'humidity ratio from vapour pressure',
  task: 'describe humid air',
  inputs: {
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', VAPOUR_PRESSURE),
  },
  output: output('W', 'humidity ratio', 'g/kg'),
  formula: `${MOLAR_MASS_RATIO} * pv / (p - pv)`,
  si: ratioAt,
  rules: [
    {
      need: 'the vapour pressure must stay below the total pressure: air that hot cannot be that humid',
      holds: (p, pv) => pv < p,
    },
  ],
  rises: ['pv'],
  falls: ['p'],
  sources: SOURCES,
});

/**
 * Vapour pressure, from total pressure and humidity ratio: for charge air, whose humidity ratio is that of the room.
 *
 * @function
 * @returns One absolute pressure.
 * @throws CalculationError if an input is impossible.
 * @example
 * const charge = { pressure: absolutePressure(204, 'kPa'), humidityRatio: humidityRatio(6.2, 'g/kg') };
 * vapourPressureFromHumidityRatio(charge).in('Pa') //=> 2013.55
 */
export const vapourPressureFromHumidityRatio = calculation({
  name: 'vapour pressure from humidity ratio',
  task: 'describe humid air',
  inputs: {
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('pv', 'absolute pressure', 'Pa'),
  formula: `p * W / (${MOLAR_MASS_RATIO} + W)`,
  si: vapourPressureAt,
  rises: ['p', 'W'],
  sources: SOURCES,
});

/**
 * Humidity ratio of saturated air: the most vapour the air can hold.
 *
 * @function
 * @returns One humidity ratio; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError where saturated air cannot exist: saturation pressure at or above the total pressure.
 * @example
 * const charge = { temperature: temperature(30, '°C'), pressure: absolutePressure(204, 'kPa') };
 * saturationHumidityRatio(charge).in('g/kg') //=> 13.2202
 */
export const saturationHumidityRatio = calculation({
  name: 'saturation humidity ratio',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', SATURATED_PRESSURE),
  },
  output: output('Ws', 'humidity ratio', 'g/kg'),
  formula: `${MOLAR_MASS_RATIO} * ps(T) / (p - ps(T))`,
  uses: { ps: saturationPressure },
  si: (T, p) => ratioAt(p, saturation(T)),
  rules: [saturationExists],
  rises: ['T'],
  falls: ['p'],
  sources: SOURCES,
});

/**
 * Degree of saturation: humidity ratio over that of saturated air at the same temperature and pressure. Not relative humidity, which
 * compares pressures.
 *
 * @function
 * @returns A ratio up to 1.
 * @throws CalculationError where saturated air cannot exist, or the air holds more than saturation allows.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * degreeOfSaturation({ ...room, humidityRatio: humidityRatio(6.2, 'g/kg') }).in('%') //=> 44.4452
 */
export const degreeOfSaturation = calculation({
  name: 'degree of saturation',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', SATURATED_PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('mu', 'ratio', '%'),
  formula: 'W / Ws(T, p)',
  uses: { Ws: saturationHumidityRatio },
  si: (T, p, W) => W / ratioAt(p, saturation(T)),
  rules: [
    saturationExists,
    {
      need: 'the humidity ratio must not exceed saturation at that temperature and pressure (more would condense)',
      holds: (T, p, W) => vapourPressureAt(p, W) <= saturation(T) * ROUNDING,
    },
  ],
  rises: ['W', 'p'],
  falls: ['T'],
  sources: [
    source('ashrae2017', 'degree of saturation', 'memory'),
    source('psychrolib', 'GetDegreeOfSaturation', 'read'),
  ],
});

/**
 * Specific humidity: mass of vapour per mass of humid air, where the humidity ratio is per mass of dry air.
 *
 * @function
 * @returns One mass fraction.
 * @throws CalculationError if an input is impossible.
 * @example
 * specificHumidity({ humidityRatio: humidityRatio(6.2, 'g/kg') }).in('%') //=> 0.61618
 */
export const specificHumidity = calculation({
  name: 'specific humidity',
  task: 'describe humid air',
  inputs: {
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('q', 'mass fraction', '%'),
  formula: 'W / (1 + W)',
  si: (W) => W / (1 + W),
  rises: ['W'],
  sources: [source('ashrae2017', 'specific humidity', 'memory')],
});
