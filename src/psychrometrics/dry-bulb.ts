import { MOLAR_MASS_RATIO } from '../air/constants.js';
import { calculation, derived, input, output, source } from '../calculation/index.js';
import type { Wick } from './adiabatic-saturation.js';
import { dryBulbRelations, eitherWickText, RELATIVE_HUMIDITY, wickText } from './dry-bulb-relations.js';
import { moistAirEnthalpy } from './enthalpy.js';
import { humidityRatioFromVapourPressure } from './humidity-ratio.js';
import { celsius, HUMIDITY_RATIO, PRESSURE, SATURATED_PRESSURE } from './ranges.js';
import { rootBetween } from '../statistics/root-between.js';
import {
  logSaturationOver,
  saturation,
  saturationPressure,
  saturationPressureOverIce,
  saturationPressureOverWater,
} from './saturation-pressure.js';
import { vapourPressureFromRelativeHumidity } from './vapour-pressure.js';
import {
  humidityRatioFromWetBulb,
  humidityRatioFromWetBulbOverIce,
  humidityRatioFromWetBulbOverWater,
  WICKS,
} from './wet-bulb.js';

const COLDEST = celsius(-100);
const HOTTEST = celsius(250);
export const ENTHALPY = { min: -8e4, max: 5e6, typical: 34e3 };
export const WET_BULB = { min: COLDEST, max: celsius(160), typical: 284.65 };
const SOURCES = [
  source('ashrae2017', 'relations of humid air', 'memory'),
  derived('those relations solved for the dry bulb'),
];

/** Between which temperatures a dry bulb is looked for. */
export type Span = readonly [coldest: number, hottest: number];

/** Dry bulb of an enthalpy and a relative humidity, bare; multiplied out, so that boiling does not change its sign. */
export function dryBulbOfEnthalpy(
  ps: Wick['saturated'],
  [coldest, hottest]: Span,
  p: number,
  h: number,
  RH: number,
): number {
  const excess = (T: number): number => {
    const pv = RH * ps(T, p);
    const t = T - 273.15;
    return (p - pv) * (1006 * t - h) + MOLAR_MASS_RATIO * pv * (2501000 + 1860 * t);
  };
  return rootBetween(excess, coldest, hottest);
}

const WICK = dryBulbRelations({
  wicks: WICKS,
  saturated: saturation,
  hottest: HOTTEST,
  withHumidity: (T) => T,
  isBelowBoiling: (p, Tw) => saturation(Tw) < p,
  pressure: SATURATED_PRESSURE,
  wetBulb: WET_BULB,
});

/**
 * Dry bulb, from vapour pressure and relative humidity: for a dew point and a relative humidity, or a humidity ratio and one.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if the relative humidity is below 0.01 %, or no temperature from -100 to 250 °C fits.
 * @example
 * const room = { vapourPressure: absolutePressure(929, 'Pa'), relativeHumidity: relativeHumidity(45, '%') };
 * dryBulbFromRelativeHumidity(room).in('°C') //=> 18.0012
 */
export const dryBulbFromRelativeHumidity = calculation({
  name: 'dry bulb from relative humidity',
  task: 'describe humid air',
  inputs: {
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', { min: 0.0015, max: 1.5e6, typical: 930 }),
    /** Vapour pressure over saturation pressure; over ice below 0.01 °C. */
    relativeHumidity: input('RH', 'relative humidity', RELATIVE_HUMIDITY),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'pv == RH * ps(T)',
  uses: { ps: saturationPressure },
  si: (pv, RH) => rootBetween(logSaturationOver(pv / RH, 'stable'), COLDEST, HOTTEST),
  rises: ['pv'],
  falls: ['RH'],
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb and humidity ratio, by adiabatic saturation: for a wet bulb and a dew point too.
 *
 * The wick carries ice below 0.01 °C, water above. From -10 °C to there it may as well carry supercooled water; the answer then has a
 * note with that of water. Who has looked at the wick says so by name.
 *
 * @function
 * @returns One temperature; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError if the humidity ratio exceeds that of air saturated at the wet bulb.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(11.3, '°C') };
 * dryBulbFromWetBulb({ ...room, humidityRatio: humidityRatio(6.2, 'g/kg') }).in('°C') //=> 18.0581
 */
export const dryBulbFromWetBulb = calculation({
  name: 'dry bulb from wet bulb',
  task: 'describe humid air',
  ...WICK.ofHumidityRatio,
  formula: eitherWickText('ps(Tw)', 'ps(Tw)'),
  uses: { ps: saturationPressure },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb of a wick that carries water and humidity ratio, by adiabatic saturation.
 *
 * Below 0 °C the water is supercooled.
 *
 * @function
 * @returns One temperature; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError if the humidity ratio exceeds that of air saturated at the wet bulb.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(-1, '°C') };
 * dryBulbFromWetBulbOverWater({ ...room, humidityRatio: humidityRatio(2.5, 'g/kg') }).in('°C') //=> 2.16648
 */
export const dryBulbFromWetBulbOverWater = calculation({
  name: 'dry bulb from wet bulb over water',
  task: 'describe humid air',
  ...WICK.ofHumidityRatioOverWater,
  formula: wickText('wet', 'pwater(Tw)'),
  uses: { pwater: saturationPressureOverWater },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb of a wick that carries ice and humidity ratio, by adiabatic saturation.
 *
 * @function
 * @returns One temperature; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError if the humidity ratio exceeds that of air saturated at the wet bulb, or the wet bulb is above 0.01 °C.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(-1, '°C') };
 * dryBulbFromWetBulbOverIce({ ...room, humidityRatio: humidityRatio(2.5, 'g/kg') }).in('°C') //=> 2.47614
 */
export const dryBulbFromWetBulbOverIce = calculation({
  name: 'dry bulb from wet bulb over ice',
  task: 'describe humid air',
  ...WICK.ofHumidityRatioOverIce,
  formula: wickText('iced', 'pice(Tw)'),
  uses: { pice: saturationPressureOverIce },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb and relative humidity, by adiabatic saturation.
 *
 * The wick carries ice below 0.01 °C, water above. From -10 °C to there it may as well carry supercooled water; the answer then has a
 * note with that of water. Who has looked at the wick says so by name.
 *
 * @function
 * @returns One temperature; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError if no temperature up to 250 °C fits.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(11.3, '°C') };
 * dryBulbFromWetBulbAndRelativeHumidity({ ...room, relativeHumidity: relativeHumidity(45, '%') }).in('°C') //=> 18.0285
 */
export const dryBulbFromWetBulbAndRelativeHumidity = calculation({
  name: 'dry bulb from wet bulb and relative humidity',
  task: 'describe humid air',
  ...WICK.ofRelativeHumidity,
  formula: 'Wwet(T, p, Tw) == W(p, pv(T, RH))',
  uses: { Wwet: humidityRatioFromWetBulb, W: humidityRatioFromVapourPressure, pv: vapourPressureFromRelativeHumidity },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb of a wick that carries water and relative humidity, by adiabatic saturation.
 *
 * Below 0 °C the water is supercooled.
 *
 * @function
 * @returns One temperature; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError if no temperature up to 250 °C fits.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(-1, '°C') };
 * dryBulbFromWetBulbAndRelativeHumidityOverWater({ ...room, relativeHumidity: relativeHumidity(55, '%') }).in('°C') //=> 1.98326
 */
export const dryBulbFromWetBulbAndRelativeHumidityOverWater = calculation({
  name: 'dry bulb from wet bulb and relative humidity over water',
  task: 'describe humid air',
  ...WICK.ofRelativeHumidityOverWater,
  formula: 'Wwet(T, p, Tw) == W(p, pv(T, RH))',
  uses: {
    Wwet: humidityRatioFromWetBulbOverWater,
    W: humidityRatioFromVapourPressure,
    pv: vapourPressureFromRelativeHumidity,
  },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb of a wick that carries ice and relative humidity, by adiabatic saturation.
 *
 * @function
 * @returns One temperature; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError if no temperature up to 250 °C fits, or the wet bulb is above 0.01 °C.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(-1, '°C') };
 * dryBulbFromWetBulbAndRelativeHumidityOverIce({ ...room, relativeHumidity: relativeHumidity(55, '%') }).in('°C') //=> 2.17108
 */
export const dryBulbFromWetBulbAndRelativeHumidityOverIce = calculation({
  name: 'dry bulb from wet bulb and relative humidity over ice',
  task: 'describe humid air',
  ...WICK.ofRelativeHumidityOverIce,
  formula: 'Wwet(T, p, Tw) == W(p, pv(T, RH))',
  uses: {
    Wwet: humidityRatioFromWetBulbOverIce,
    W: humidityRatioFromVapourPressure,
    pv: vapourPressureFromRelativeHumidity,
  },
  sources: SOURCES,
});

/**
 * Dry bulb, from enthalpy and humidity ratio.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if it lies outside -100 to 250 °C.
 * @example
 * const room = { enthalpy: specificEnergy(33.8, 'kJ/kg'), humidityRatio: humidityRatio(6.2, 'g/kg') };
 * dryBulbFromEnthalpy(room).in('°C') //=> 17.9786
 */
export const dryBulbFromEnthalpy = calculation({
  name: 'dry bulb from enthalpy',
  task: 'describe humid air',
  inputs: {
    /** Enthalpy per mass of dry air, counted from dry air and liquid water at 0 °C. */
    enthalpy: input('h', 'specific energy', ENTHALPY),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', { ...HUMIDITY_RATIO, max: 1 }),
  },
  output: output('T', 'temperature', '°C'),
  formula: '273.15 + (h - 2501000 * W) / (1006 + 1860 * W)',
  si: (h, W) => 273.15 + (h - 2501000 * W) / (1006 + 1860 * W),
  rules: [
    {
      need: 'the temperature must come out between -100 and 250 °C',
      holds: (h, W) => Math.abs((h - 2501000 * W) / (1006 + 1860 * W) - 75) <= 175,
    },
  ],
  rises: ['h'],
  falls: ['W'],
  sources: SOURCES,
});

/**
 * Dry bulb, from enthalpy and relative humidity.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if no temperature from -100 to 250 °C fits.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), enthalpy: specificEnergy(33.8, 'kJ/kg') };
 * dryBulbFromEnthalpyAndRelativeHumidity({ ...room, relativeHumidity: relativeHumidity(45, '%') }).in('°C') //=> 17.9881
 */
export const dryBulbFromEnthalpyAndRelativeHumidity = calculation({
  name: 'dry bulb from enthalpy and relative humidity',
  task: 'describe humid air',
  inputs: {
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Enthalpy per mass of dry air, counted from dry air and liquid water at 0 °C. */
    enthalpy: input('h', 'specific energy', ENTHALPY),
    /** Vapour pressure over saturation pressure; over ice below 0.01 °C. */
    relativeHumidity: input('RH', 'relative humidity', RELATIVE_HUMIDITY),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'h == enthalpy(T, W(p, pv(T, RH)))',
  uses: {
    enthalpy: moistAirEnthalpy,
    W: humidityRatioFromVapourPressure,
    pv: vapourPressureFromRelativeHumidity,
  },
  si: (p, h, RH) => dryBulbOfEnthalpy(saturation, [COLDEST, HOTTEST], p, h, RH),
  rises: ['h', 'p'],
  falls: ['RH'],
  sources: SOURCES,
});
