import { calculation, derived, input, output, source } from '../calculation/index.js';
import { dryBulbOfEnthalpy, ENTHALPY, WET_BULB } from './dry-bulb.js';
import { dryBulbRelations, eitherWickText, RELATIVE_HUMIDITY, wickText } from './dry-bulb-relations.js';
import { moistAirEnthalpy } from './enthalpy.js';
import { inAirOverWater } from './enhancement-greenspan.js';
import { humidityRatioFromVapourPressure } from './humidity-ratio.js';
import { celsius, PRESSURE } from './ranges.js';
import { rootBetween } from '../statistics/root-between.js';
import {
  inAir,
  saturationPressureInMoistAir,
  saturationPressureInMoistAirOverIce,
  saturationPressureInMoistAirOverWater,
  vapourPressureFromRelativeHumidityInMoistAir,
} from './saturation-in-moist-air.js';
import { overWater } from './saturation-pressure.js';
import {
  humidityRatioFromWetBulbInMoistAir,
  humidityRatioFromWetBulbInMoistAirOverIce,
  humidityRatioFromWetBulbInMoistAirOverWater,
  IN_AIR,
} from './wet-bulb-in-moist-air.js';

const SPAN = [celsius(-100), celsius(160)] as const;
const TRUSTED_WET_BULB = { ...WET_BULB, trusted: [WET_BULB.min, celsius(100)] } as const;
const SOURCES = [
  source('ashrae2017', 'relations of humid air', 'memory'),
  source('greenspan1976', 'enhancement factor', 'memory'),
  derived('those relations solved for the dry bulb'),
];
/** Where saturated air cannot exist there is no relative humidity in air either. */
const orNothing = (T: number, p: number): number => (overWater(T) < p ? T : NaN);

const WICK = dryBulbRelations({
  wicks: IN_AIR,
  saturated: inAir,
  hottest: SPAN[1],
  withHumidity: orNothing,
  isBelowBoiling: (p, Tw) => overWater(Tw) < p && inAirOverWater(Tw, p) < p,
  pressure: PRESSURE,
  wetBulb: TRUSTED_WET_BULB,
});

/**
 * Dry bulb, from vapour pressure and a relative humidity counted from saturation in air.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if no temperature fits at which saturated air can exist.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), vapourPressure: absolutePressure(929, 'Pa') };
 * dryBulbFromRelativeHumidityInMoistAir({ ...room, relativeHumidity: relativeHumidity(45, '%') }).in('°C') //=> 17.9419
 */
export const dryBulbFromRelativeHumidityInMoistAir = calculation({
  name: 'dry bulb from relative humidity in moist air',
  task: 'describe humid air',
  inputs: {
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', { min: 0.002, max: 6e5, typical: 930 }),
    /** Vapour over that of saturated air. */
    relativeHumidity: input('RH', 'relative humidity', RELATIVE_HUMIDITY),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'pv == RH * ps(T, p)',
  uses: { ps: saturationPressureInMoistAir },
  si: (p, pv, RH) =>
    orNothing(
      rootBetween((T) => Math.log((RH * inAir(T, p)) / pv), ...SPAN),
      p,
    ),
  rises: ['pv'],
  falls: ['p', 'RH'],
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb and humidity ratio, by adiabatic saturation with the enhancement factor.
 *
 * The wick carries ice below 0.01 °C, water above. From -10 °C to there it may as well carry supercooled water; the answer then has a
 * note with that of water. Who has looked at the wick says so by name.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if the humidity ratio exceeds that of air saturated at the wet bulb.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(11.3, '°C') };
 * dryBulbFromWetBulbInMoistAir({ ...room, humidityRatio: humidityRatio(6.2, 'g/kg') }).in('°C') //=> 18.1388
 */
export const dryBulbFromWetBulbInMoistAir = calculation({
  name: 'dry bulb from wet bulb in moist air',
  task: 'describe humid air',
  ...WICK.ofHumidityRatio,
  formula: eitherWickText('pice(Tw, p)', 'pwater(Tw, p)'),
  uses: { pice: saturationPressureInMoistAirOverIce, pwater: saturationPressureInMoistAirOverWater },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb of a wick that carries water and humidity ratio, by adiabatic saturation with the enhancement factor.
 *
 * Below 0 °C the water is supercooled.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if the humidity ratio exceeds that of air saturated at the wet bulb.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(-1, '°C') };
 * dryBulbFromWetBulbInMoistAirOverWater({ ...room, humidityRatio: humidityRatio(2.5, 'g/kg') }).in('°C') //=> 2.20054
 */
export const dryBulbFromWetBulbInMoistAirOverWater = calculation({
  name: 'dry bulb from wet bulb in moist air over water',
  task: 'describe humid air',
  ...WICK.ofHumidityRatioOverWater,
  formula: wickText('wet', 'pwater(Tw, p)'),
  uses: { pwater: saturationPressureInMoistAirOverWater },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb of a wick that carries ice and humidity ratio, by adiabatic saturation with the enhancement factor.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if the humidity ratio exceeds that of air saturated at the wet bulb, or the wet bulb is above 0.01 °C.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(-1, '°C') };
 * dryBulbFromWetBulbInMoistAirOverIce({ ...room, humidityRatio: humidityRatio(2.5, 'g/kg') }).in('°C') //=> 2.51535
 */
export const dryBulbFromWetBulbInMoistAirOverIce = calculation({
  name: 'dry bulb from wet bulb in moist air over ice',
  task: 'describe humid air',
  ...WICK.ofHumidityRatioOverIce,
  formula: wickText('iced', 'pice(Tw, p)'),
  uses: { pice: saturationPressureInMoistAirOverIce },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb and a relative humidity counted from saturation in air.
 *
 * The wick carries ice below 0.01 °C, water above. From -10 °C to there it may as well carry supercooled water; the answer then has a
 * note with that of water. Who has looked at the wick says so by name.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if no temperature fits at which saturated air can exist.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(11.3, '°C') };
 * dryBulbFromWetBulbAndRelativeHumidityInMoistAir({ ...room, relativeHumidity: relativeHumidity(45, '%') }).in('°C') //=> 18.0404
 */
export const dryBulbFromWetBulbAndRelativeHumidityInMoistAir = calculation({
  name: 'dry bulb from wet bulb and relative humidity in moist air',
  task: 'describe humid air',
  ...WICK.ofRelativeHumidity,
  formula: 'Wwet(T, p, Tw) == W(p, pv(T, p, RH))',
  uses: {
    Wwet: humidityRatioFromWetBulbInMoistAir,
    W: humidityRatioFromVapourPressure,
    pv: vapourPressureFromRelativeHumidityInMoistAir,
  },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb of a wick that carries water and a relative humidity counted from saturation in air.
 *
 * Below 0 °C the water is supercooled.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if no temperature fits at which saturated air can exist.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(-1, '°C') };
 * dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverWater({ ...room, relativeHumidity: relativeHumidity(55, '%') }).in('°C') //=> 1.99074
 */
export const dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverWater = calculation({
  name: 'dry bulb from wet bulb and relative humidity in moist air over water',
  task: 'describe humid air',
  ...WICK.ofRelativeHumidityOverWater,
  formula: 'Wwet(T, p, Tw) == W(p, pv(T, p, RH))',
  uses: {
    Wwet: humidityRatioFromWetBulbInMoistAirOverWater,
    W: humidityRatioFromVapourPressure,
    pv: vapourPressureFromRelativeHumidityInMoistAir,
  },
  sources: SOURCES,
});

/**
 * Dry bulb, from wet bulb of a wick that carries ice and a relative humidity counted from saturation in air.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if no temperature fits at which saturated air can exist, or the wet bulb is above 0.01 °C.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), wetBulb: temperature(-1, '°C') };
 * dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverIce({ ...room, relativeHumidity: relativeHumidity(55, '%') }).in('°C') //=> 2.17940
 */
export const dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverIce = calculation({
  name: 'dry bulb from wet bulb and relative humidity in moist air over ice',
  task: 'describe humid air',
  ...WICK.ofRelativeHumidityOverIce,
  formula: 'Wwet(T, p, Tw) == W(p, pv(T, p, RH))',
  uses: {
    Wwet: humidityRatioFromWetBulbInMoistAirOverIce,
    W: humidityRatioFromVapourPressure,
    pv: vapourPressureFromRelativeHumidityInMoistAir,
  },
  sources: SOURCES,
});

/**
 * Dry bulb, from enthalpy and a relative humidity counted from saturation in air.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if no temperature fits at which saturated air can exist.
 * @example
 * const room = { pressure: absolutePressure(941, 'hPa'), enthalpy: specificEnergy(33.8, 'kJ/kg') };
 * dryBulbFromEnthalpyAndRelativeHumidityInMoistAir({ ...room, relativeHumidity: relativeHumidity(45, '%') }).in('°C') //=> 17.9587
 */
export const dryBulbFromEnthalpyAndRelativeHumidityInMoistAir = calculation({
  name: 'dry bulb from enthalpy and relative humidity in moist air',
  task: 'describe humid air',
  inputs: {
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Enthalpy per mass of dry air, counted from dry air and liquid water at 0 °C. */
    enthalpy: input('h', 'specific energy', ENTHALPY),
    /** Vapour over that of saturated air. */
    relativeHumidity: input('RH', 'relative humidity', RELATIVE_HUMIDITY),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'h == enthalpy(T, W(p, pv(T, p, RH)))',
  uses: {
    enthalpy: moistAirEnthalpy,
    W: humidityRatioFromVapourPressure,
    pv: vapourPressureFromRelativeHumidityInMoistAir,
  },
  si: (p, h, RH) => orNothing(dryBulbOfEnthalpy(inAir, SPAN, p, h, RH), p),
  rises: ['h', 'p'],
  falls: ['RH'],
  sources: SOURCES,
});
