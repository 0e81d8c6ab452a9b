import { calculation, input, output, source } from '../calculation/index.js';
import { celsius, TEMPERATURE } from './ranges.js';

/** Water, ice and vapour stand together here, and the two formulas meet within 6 parts in 10⁹; at 0 °C they are 1 part in 10⁴ apart. */
export const TRIPLE_POINT = 273.16;

const SOURCES = [
  source('hylandWexler', 'saturation over water and over ice', 'memory'),
  source('ashrae2017', 'equations 5 and 6', 'memory'),
  source('psychrolib', 'GetSatVapPres', 'read'),
];

// The terms of the published sums reach 40 and cancel to 8, which costs digits. Taken from a temperature whose pressure is known they
// stay small; differences from a whole number of kelvin are exact.
const WATER_BASE = 300;
const WATER_AT_BASE = 3536.013026606872;
const ICE_BASE = 273;
const ICE_AT_BASE = 603.6468920480183;

function logOverWater(T: number): number {
  const d = T - WATER_BASE;
  const slope =
    5800.2206 / (WATER_BASE * T) -
    0.048640239 +
    4.1764768e-5 * (T + WATER_BASE) -
    1.4452093e-8 * (T * T + WATER_BASE * T + WATER_BASE ** 2);
  return d * slope + 6.5459673 * Math.log1p(d / WATER_BASE);
}

function logOverIce(T: number): number {
  const d = T - ICE_BASE;
  const slope =
    5674.5359 / (ICE_BASE * T) -
    0.009677843 +
    6.2215701e-7 * (T + ICE_BASE) +
    2.0747825e-9 * (T * T + ICE_BASE * T + ICE_BASE ** 2) -
    9.484024e-13 * (T + ICE_BASE) * (T * T + ICE_BASE ** 2);
  return d * slope + 4.1635019 * Math.log1p(d / ICE_BASE);
}

/** Saturation pressure over water, bare. */
export const overWater = (T: number): number => WATER_AT_BASE * Math.exp(logOverWater(T));

/** Saturation pressure over ice, bare. */
export const overIce = (T: number): number => ICE_AT_BASE * Math.exp(logOverIce(T));

/** Saturation pressure over what is stable, bare. */
export const saturation = (T: number): number => (T < TRIPLE_POINT ? overIce(T) : overWater(T));

/** Logarithm of saturation over a vapour pressure: zero at the dew point, and nearly straight, which a solver likes. */
export function logSaturationOver(pv: number, overWhat: 'water' | 'stable'): (T: number) => number {
  const water = Math.log(pv / WATER_AT_BASE);
  const ice = Math.log(pv / ICE_AT_BASE);
  return (T) => (overWhat === 'stable' && T < TRIPLE_POINT ? logOverIce(T) - ice : logOverWater(T) - water);
}

/**
 * Saturation pressure of water vapour over liquid water.
 *
 * Above 0 °C the usual one. Below, over supercooled water: what relative humidity sensors and weather reports refer to in frost,
 * within 0.1 % of other formulas down to -40 °C. Pure vapour, without {@link enhancementFactor}.
 *
 * @function
 * @returns One absolute pressure; carries a note outside -40 to 200 °C.
 * @throws CalculationError if the temperature is outside -50 to 250 °C.
 * @example
 * saturationPressureOverWater({ temperature: temperature(18, '°C') }).in('Pa') //=> 2064.29
 */
export const saturationPressureOverWater = calculation({
  name: 'saturation pressure over water',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the vapour and the water. */
    temperature: input('T', 'temperature', {
      min: celsius(-50),
      max: celsius(250),
      trusted: [celsius(-40), celsius(200)],
      typical: 291.15,
    }),
  },
  output: output('pw', 'absolute pressure', 'Pa'),
  formula:
    'exp(-5800.2206 / T + 1.3914993 - 0.048640239 * T + 4.1764768e-5 * T^2 - 1.4452093e-8 * T^3 + 6.5459673 * log(T))',
  si: overWater,
  rises: ['T'],
  sources: SOURCES,
});

/**
 * Saturation pressure of water vapour over ice.
 *
 * @function
 * @returns One absolute pressure.
 * @throws CalculationError if the temperature is outside -100 °C to the triple point, 0.01 °C.
 * @example
 * saturationPressureOverIce({ temperature: temperature(-10, '°C') }).in('Pa') //=> 259.903
 */
export const saturationPressureOverIce = calculation({
  name: 'saturation pressure over ice',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the vapour and the ice. */
    temperature: input('T', 'temperature', { min: celsius(-100), max: TRIPLE_POINT, typical: 263.15 }),
  },
  output: output('pice', 'absolute pressure', 'Pa'),
  formula:
    'exp(-5674.5359 / T + 6.3925247 - 0.009677843 * T + 6.2215701e-7 * T^2 + 2.0747825e-9 * T^3 - 9.484024e-13 * T^4 + 4.1635019 * log(T))',
  si: overIce,
  rises: ['T'],
  sources: SOURCES,
});

/**
 * Saturation pressure of water vapour over what is stable: ice below the triple point (0.01 °C), water from there on.
 *
 * The change is at the triple point because the two curves meet there; at 0 °C they do not, and a dew point near it would be lost.
 *
 * @function
 * @returns One absolute pressure; carries a note above 200 °C.
 * @throws CalculationError if the temperature is outside -100 to 250 °C.
 * @example
 * saturationPressure({ temperature: temperature(25, '°C') }).in('Pa') //=> 3169.22
 */
export const saturationPressure = calculation({
  name: 'saturation pressure',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the vapour. */
    temperature: input('T', 'temperature', TEMPERATURE),
  },
  output: output('ps', 'absolute pressure', 'Pa'),
  formula: `T < ${TRIPLE_POINT} ? pice(T) : pwater(T)`,
  uses: { pice: saturationPressureOverIce, pwater: saturationPressureOverWater },
  si: saturation,
  rises: ['T'],
  sources: SOURCES,
});
