import { calculation, derived, source } from '../calculation/index.js';
import { balanceText, COLDEST_ICE, COLDEST_WATER, icedWick, wetWick, type WickPair } from './adiabatic-saturation.js';
import { inAirOverIce, inAirOverWater } from './enhancement-greenspan.js';
import { celsius, PRESSURE } from './ranges.js';
import {
  inAir,
  saturationPressureInMoistAirOverIce,
  saturationPressureInMoistAirOverWater,
} from './saturation-in-moist-air.js';
import { overWater, TRIPLE_POINT } from './saturation-pressure.js';
import { wickRelations } from './wick-relations.js';

const HOTTEST_TRUSTED = celsius(100);
const WET_BULB = {
  min: COLDEST_ICE,
  max: celsius(160),
  trusted: [COLDEST_ICE, HOTTEST_TRUSTED],
  typical: 284.65,
} as const;
const SOURCES = [
  source('ashrae2017', 'equations 33 and 35, adiabatic saturation', 'memory'),
  source('greenspan1976', 'enhancement factor', 'memory'),
  derived("the handbook's balance with saturation in air in place of saturation of pure vapour"),
];

export const IN_AIR: WickPair = { wet: wetWick(inAirOverWater), iced: icedWick(inAirOverIce) };
const WICK = wickRelations({
  wicks: IN_AIR,
  saturated: inAir,
  isBelowBoiling: (Tw, p) => overWater(Tw) < p && inAirOverWater(Tw, p) < p,
  pressure: PRESSURE,
  wetBulb: WET_BULB,
  waterBulb: { ...WET_BULB, min: COLDEST_WATER, trusted: [COLDEST_WATER, HOTTEST_TRUSTED] },
});

/**
 * Humidity ratio, from dry bulb and the wet bulb of a wick that carries water, by adiabatic saturation with the enhancement factor.
 *
 * @function
 * @returns One humidity ratio; carries a note above a wet bulb of 100 °C.
 * @throws CalculationError if the wet bulb lies above the dry bulb, or below that of perfectly dry air.
 * @example
 * const psychrometer = { temperature: temperature(30, '°C'), wetBulb: temperature(20, '°C') };
 * humidityRatioFromWetBulbInMoistAirOverWater({ ...psychrometer, pressure: absolutePressure(1000, 'hPa') }).in('g/kg') //=> 10.7744
 */
export const humidityRatioFromWetBulbInMoistAirOverWater = calculation({
  name: 'humidity ratio from wet bulb in moist air over water',
  ...WICK.humidityRatioOverWater,
  formula: balanceText('wet', 'pwater(Tw, p)'),
  uses: { pwater: saturationPressureInMoistAirOverWater },
  sources: SOURCES,
});

/**
 * Humidity ratio, from dry bulb and the wet bulb of a wick that carries ice, by adiabatic saturation with the enhancement factor.
 *
 * @function
 * @returns One humidity ratio.
 * @throws CalculationError if the iced bulb is above 0.01 °C, above the dry bulb, or below that of perfectly dry air.
 * @example
 * const psychrometer = { temperature: temperature(2, '°C'), wetBulb: temperature(-1, '°C') };
 * humidityRatioFromWetBulbInMoistAirOverIce({ ...psychrometer, pressure: absolutePressure(941, 'hPa') }).in('g/kg') //=> 2.68366
 */
export const humidityRatioFromWetBulbInMoistAirOverIce = calculation({
  name: 'humidity ratio from wet bulb in moist air over ice',
  ...WICK.humidityRatioOverIce,
  formula: balanceText('iced', 'pice(Tw, p)'),
  uses: { pice: saturationPressureInMoistAirOverIce },
  sources: SOURCES,
});

/**
 * Humidity ratio, from dry and wet bulb by adiabatic saturation with the enhancement factor; the wick carries ice below 0.01 °C.
 *
 * @function
 * @returns One humidity ratio; carries a note just below 0 °C where the wick may as well be wet.
 * @throws CalculationError if the wet bulb lies above the dry bulb, or below that of perfectly dry air.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * humidityRatioFromWetBulbInMoistAir({ ...room, wetBulb: temperature(11.3, '°C') }).in('g/kg') //=> 6.25679
 */
export const humidityRatioFromWetBulbInMoistAir = calculation({
  name: 'humidity ratio from wet bulb in moist air',
  ...WICK.humidityRatio,
  formula: `Tw < ${TRIPLE_POINT} ? Wice(T, p, Tw) : Wwater(T, p, Tw)`,
  uses: {
    Wice: humidityRatioFromWetBulbInMoistAirOverIce,
    Wwater: humidityRatioFromWetBulbInMoistAirOverWater,
  },
  sources: SOURCES,
});

/**
 * Wet bulb over water, by adiabatic saturation with the enhancement factor; below 0 °C over supercooled water.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if the air holds more vapour than saturation allows.
 * @example
 * const air = { temperature: temperature(5, '°C'), pressure: absolutePressure(941, 'hPa') };
 * wetBulbInMoistAirOverWater({ ...air, humidityRatio: humidityRatio(2, 'g/kg') }).in('°C') //=> -0.0890898
 */
export const wetBulbInMoistAirOverWater = calculation({
  name: 'wet bulb in moist air over water',
  ...WICK.wetBulbOverWater,
  formula: 'W == Wwater(T, p, Tw)',
  uses: { Wwater: humidityRatioFromWetBulbInMoistAirOverWater },
  sources: SOURCES,
});

/**
 * Wet bulb over ice, by adiabatic saturation with the enhancement factor.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if an iced wick would melt in this air, or the air holds more vapour than saturation allows.
 * @example
 * const air = { temperature: temperature(5, '°C'), pressure: absolutePressure(941, 'hPa') };
 * wetBulbInMoistAirOverIce({ ...air, humidityRatio: humidityRatio(2, 'g/kg') }).in('°C') //=> -0.430873
 */
export const wetBulbInMoistAirOverIce = calculation({
  name: 'wet bulb in moist air over ice',
  ...WICK.wetBulbOverIce,
  formula: 'W == Wice(T, p, Tw)',
  uses: { Wice: humidityRatioFromWetBulbInMoistAirOverIce },
  sources: SOURCES,
});

/**
 * Wet bulb, by adiabatic saturation with the enhancement factor: over water where that gives 0.01 °C or more, else over ice.
 *
 * Within 0.05 K of real air below 110 kPa. Without the factor, {@link wetBulb} of the same humidity ratio is up to 0.1 K higher in hot
 * humid air. Near 0 °C a wet and an iced wick both can settle; a note says which it is and what the
 * other is.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if the air holds more vapour than saturation allows.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * wetBulbInMoistAir({ ...room, humidityRatio: humidityRatio(6.2, 'g/kg') }).in('°C') //=> 11.2437
 */
export const wetBulbInMoistAir = calculation({
  name: 'wet bulb in moist air',
  ...WICK.wetBulb,
  formula: 'W == Weither(T, p, Tw)',
  uses: { Weither: humidityRatioFromWetBulbInMoistAir },
  sources: SOURCES,
});
