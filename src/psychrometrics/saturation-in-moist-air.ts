import { MOLAR_MASS_RATIO } from '../air/constants.js';
import { calculation, derived, input, output, source } from '../calculation/index.js';
import {
  enhancementFactorOverIce,
  enhancementFactorOverWater,
  inAirOverIce,
  inAirOverWater,
} from './enhancement-greenspan.js';
import { ratioAt, vapourPressureAt } from './humidity-ratio.js';
import { celsius, HUMIDITY_RATIO, PRESSURE, ROUNDING, VAPOUR_PRESSURE } from './ranges.js';
import { rootBetween } from '../statistics/root-between.js';
import {
  overWater,
  saturationPressureOverIce,
  saturationPressureOverWater,
  TRIPLE_POINT,
} from './saturation-pressure.js';

/** Below this ice is stable in air of any pressure here; between here and the triple point the melting point moves with pressure. */
const ICE_IS_SURE = 273;
const RELATIVE_HUMIDITY = { min: 0, max: 1, typical: 0.45 };
const COLDEST = celsius(-100);
const HOTTEST = celsius(160);
const AIR = { min: COLDEST, max: HOTTEST, trusted: [COLDEST, celsius(100)], typical: 291.15 } as const;
const SOURCES = [
  source('greenspan1976', 'enhancement factor', 'memory'),
  source('hylandWexler', 'saturation of pure vapour', 'memory'),
  derived('saturation of pure vapour times the enhancement factor'),
];

/** Saturation pressure in air over what is stable, which is what has the lower one, bare. */
export function inAir(T: number, p: number): number {
  if (T < ICE_IS_SURE) return inAirOverIce(T, p);
  return T > TRIPLE_POINT ? inAirOverWater(T, p) : Math.min(inAirOverIce(T, p), inAirOverWater(T, p));
}

const saturationExists = {
  need: 'saturation pressure must stay below the total pressure: air this hot cannot be saturated',
  holds: (T: number, p: number): boolean => overWater(T) < p,
};
const notSupersaturated = (holds: (...si: number[]) => boolean, what: string) => ({
  need: `the ${what} must not exceed saturation at that temperature and pressure (more would condense)`,
  holds,
});

/**
 * Saturation pressure of water vapour over water in air, which holds a little more than empty space: pure saturation times the
 * enhancement factor.
 *
 * @function
 * @returns One partial pressure; carries a note above 100 °C.
 * @throws CalculationError where saturated air cannot exist.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * saturationPressureInMoistAirOverWater(room).in('Pa') //=> 2072.01
 */
export const saturationPressureInMoistAirOverWater = calculation({
  name: 'saturation pressure in moist air over water',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air and the water. */
    temperature: input('T', 'temperature', { ...AIR, min: celsius(-50), trusted: [celsius(-50), celsius(100)] }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
  },
  output: output('pw', 'absolute pressure', 'Pa'),
  formula: 'f(T, p) * pwater(T)',
  uses: { f: enhancementFactorOverWater, pwater: saturationPressureOverWater },
  si: inAirOverWater,
  rules: [saturationExists],
  rises: ['T', 'p'],
  sources: SOURCES,
});

/**
 * Saturation pressure of water vapour over ice in air: pure saturation times the enhancement factor.
 *
 * @function
 * @returns One partial pressure.
 * @throws CalculationError if the temperature is outside -100 °C to the triple point, 0.01 °C.
 * @example
 * const frost = { temperature: temperature(-10, '°C'), pressure: absolutePressure(941, 'hPa') };
 * saturationPressureInMoistAirOverIce(frost).in('Pa') //=> 260.877
 */
export const saturationPressureInMoistAirOverIce = calculation({
  name: 'saturation pressure in moist air over ice',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air and the ice. */
    temperature: input('T', 'temperature', { min: COLDEST, max: TRIPLE_POINT, typical: 263.15 }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
  },
  output: output('pice', 'absolute pressure', 'Pa'),
  formula: 'f(T, p) * pice(T)',
  uses: { f: enhancementFactorOverIce, pice: saturationPressureOverIce },
  si: inAirOverIce,
  rises: ['T', 'p'],
  sources: SOURCES,
});

/**
 * Saturation pressure of water vapour in air over what is stable: ice or water, whichever has the lower one near 0 °C.
 *
 * @function
 * @returns One partial pressure; carries a note above 100 °C.
 * @throws CalculationError where saturated air cannot exist.
 * @example
 * const charge = { temperature: temperature(30, '°C'), pressure: absolutePressure(204, 'kPa') };
 * saturationPressureInMoistAir(charge).in('Pa') //=> 4276.14
 */
export const saturationPressureInMoistAir = calculation({
  name: 'saturation pressure in moist air',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air; for the vapour pressure of a dew point, that dew point. */
    temperature: input('T', 'temperature', AIR),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
  },
  output: output('ps', 'absolute pressure', 'Pa'),
  formula: `T < ${ICE_IS_SURE} ? pice(T, p) : T > ${TRIPLE_POINT} ? pwater(T, p) : min(pice(T, p), pwater(T, p))`,
  uses: { pice: saturationPressureInMoistAirOverIce, pwater: saturationPressureInMoistAirOverWater },
  si: inAir,
  rules: [saturationExists],
  rises: ['T', 'p'],
  sources: SOURCES,
});

/**
 * Vapour pressure, from a relative humidity that is counted from saturation in air: the mole fraction of vapour over that of saturated
 * air at the same temperature and pressure.
 *
 * The thermodynamic definition, of hygrometers calibrated in a humidity chamber; {@link vapourPressureFromRelativeHumidity} counts
 * from pure vapour and is 0.4 % lower in a room.
 *
 * @function
 * @returns One partial pressure; carries a note above 100 °C.
 * @throws CalculationError where saturated air cannot exist, or the relative humidity is above 100 %.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * vapourPressureFromRelativeHumidityInMoistAir({ ...room, relativeHumidity: relativeHumidity(45, '%') }).in('Pa') //=> 932.402
 */
export const vapourPressureFromRelativeHumidityInMoistAir = calculation({
  name: 'vapour pressure from relative humidity in moist air',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air at the humidity sensor. */
    temperature: input('T', 'temperature', AIR),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Vapour over that of saturated air. */
    relativeHumidity: input('RH', 'relative humidity', RELATIVE_HUMIDITY),
  },
  output: output('pv', 'absolute pressure', 'Pa'),
  formula: 'RH * ps(T, p)',
  uses: { ps: saturationPressureInMoistAir },
  si: (T, p, RH) => RH * inAir(T, p),
  rules: [saturationExists],
  rises: ['T', 'p', 'RH'],
  sources: SOURCES,
});

/**
 * Relative humidity counted from saturation in air, from temperature, pressure and vapour pressure.
 *
 * @function
 * @returns A relative humidity up to 100 %; carries a note above 100 °C.
 * @throws CalculationError where saturated air cannot exist, or the vapour pressure is above saturation.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * relativeHumidityInMoistAir({ ...room, vapourPressure: absolutePressure(929, 'Pa') }).in('%') //=> 44.8358
 */
export const relativeHumidityInMoistAir = calculation({
  name: 'relative humidity in moist air',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', AIR),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Partial pressure of the water vapour: mole fraction times total pressure. */
    vapourPressure: input('pv', 'absolute pressure', VAPOUR_PRESSURE),
  },
  output: output('RH', 'relative humidity', '%'),
  formula: 'pv / ps(T, p)',
  uses: { ps: saturationPressureInMoistAir },
  si: (T, p, pv) => pv / inAir(T, p),
  rules: [saturationExists, notSupersaturated((T, p, pv) => pv <= inAir(T, p) * ROUNDING, 'vapour pressure')],
  rises: ['pv'],
  falls: ['T', 'p'],
  sources: SOURCES,
});

/**
 * Dew point in air of a total pressure, below 0 °C the frost point: with the enhancement factor, so for an answer to 0.01 K from a
 * vapour pressure or humidity ratio.
 *
 * Without it, {@link dewPoint} of the same vapour pressure is 0.05 K too high in a room and 0.1 K at 2 bar.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if there is no vapour, too little for -100 °C, or as much as the total pressure.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), vapourPressure: absolutePressure(929, 'Pa') };
 * dewPointInMoistAir(room).in('°C') //=> 5.85117
 */
export const dewPointInMoistAir = calculation({
  name: 'dew point in moist air',
  task: 'describe humid air',
  inputs: {
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Partial pressure of the water vapour: mole fraction times total pressure. */
    vapourPressure: input('pv', 'absolute pressure', { min: 0.002, max: 6e5, typical: 930 }),
  },
  output: output('Td', 'temperature', '°C'),
  formula: 'pv == ps(Td, p)',
  uses: { ps: saturationPressureInMoistAir },
  si: (p, pv) => rootBetween((T) => Math.log(inAir(T, p) / pv), COLDEST, HOTTEST),
  rules: [{ need: 'the vapour pressure must stay below the total pressure', holds: (p, pv) => pv < p }],
  rises: ['pv'],
  falls: ['p'],
  sources: SOURCES,
});

/**
 * Humidity ratio of saturated air, with the enhancement factor: the most vapour the air can hold.
 *
 * @function
 * @returns One humidity ratio; carries a note above 100 °C.
 * @throws CalculationError where saturated air cannot exist.
 * @example
 * const charge = { temperature: temperature(30, '°C'), pressure: absolutePressure(204, 'kPa') };
 * saturationHumidityRatioInMoistAir(charge).in('g/kg') //=> 13.316
 */
export const saturationHumidityRatioInMoistAir = calculation({
  name: 'saturation humidity ratio in moist air',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', AIR),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
  },
  output: output('Ws', 'humidity ratio', 'g/kg'),
  formula: `${MOLAR_MASS_RATIO} * ps(T, p) / (p - ps(T, p))`,
  uses: { ps: saturationPressureInMoistAir },
  si: (T, p) => ratioAt(p, inAir(T, p)),
  rules: [
    saturationExists,
    { need: 'saturated vapour must stay below the total pressure', holds: (T, p) => inAir(T, p) < p },
  ],
  rises: ['T'],
  falls: ['p'],
  sources: SOURCES,
});

/**
 * Degree of saturation with the enhancement factor: humidity ratio over that of saturated air.
 *
 * @function
 * @returns A ratio up to 1; carries a note above 100 °C.
 * @throws CalculationError where saturated air cannot exist, or the air holds more than saturation allows.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * degreeOfSaturationInMoistAir({ ...room, humidityRatio: humidityRatio(6.2, 'g/kg') }).in('%') //=> 44.276
 */
export const degreeOfSaturationInMoistAir = calculation({
  name: 'degree of saturation in moist air',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', AIR),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('mu', 'ratio', '%'),
  formula: 'W / Ws(T, p)',
  uses: { Ws: saturationHumidityRatioInMoistAir },
  si: (T, p, W) => W / ratioAt(p, inAir(T, p)),
  rules: [
    saturationExists,
    notSupersaturated((T, p, W) => vapourPressureAt(p, W) <= inAir(T, p) * ROUNDING, 'humidity ratio'),
  ],
  rises: ['W', 'p'],
  falls: ['T'],
  sources: SOURCES,
});
