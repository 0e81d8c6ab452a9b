import { calculation, source } from '../calculation/index.js';
import { balanceText, COLDEST_WATER, icedWick, wetWick, type WickPair } from './adiabatic-saturation.js';
import { celsius, SATURATED_PRESSURE } from './ranges.js';
import {
  overIce,
  overWater,
  saturation,
  saturationPressureOverIce,
  saturationPressureOverWater,
  TRIPLE_POINT,
} from './saturation-pressure.js';
import { wickRelations } from './wick-relations.js';

const WET_BULB = { min: celsius(-100), max: celsius(250), typical: 284.65 } as const;
const SOURCES = [
  source('ashrae2017', 'equations 33 and 35, adiabatic saturation', 'memory'),
  source('psychrolib', 'GetHumRatioFromTWetBulb', 'read'),
];

export const WICKS: WickPair = { wet: wetWick(overWater), iced: icedWick(overIce) };
const WICK = wickRelations({
  wicks: WICKS,
  saturated: saturation,
  isBelowBoiling: (Tw, p) => saturation(Tw) < p,
  pressure: SATURATED_PRESSURE,
  wetBulb: WET_BULB,
  waterBulb: { ...WET_BULB, min: COLDEST_WATER },
});

/**
 * Humidity ratio, from dry bulb and the wet bulb of a wick that carries water, by adiabatic saturation.
 *
 * Below 0 °C the water is supercooled. Adiabatic saturation is the thermodynamic wet bulb; a well-aspirated psychrometer reads within
 * a few tenths of a kelvin of it, and {@link vapourPressureFromPsychrometerOverWater} is the instrument's own equation.
 *
 * @function
 * @returns One humidity ratio; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError if the wet bulb lies above the dry bulb, or below that of perfectly dry air.
 * @example
 * const psychrometer = { temperature: temperature(30, '°C'), wetBulb: temperature(20, '°C') };
 * humidityRatioFromWetBulbOverWater({ ...psychrometer, pressure: absolutePressure(1000, 'hPa') }).in('g/kg') //=> 10.7146
 */
export const humidityRatioFromWetBulbOverWater = calculation({
  name: 'humidity ratio from wet bulb over water',
  ...WICK.humidityRatioOverWater,
  formula: balanceText('wet', 'pwater(Tw)'),
  uses: { pwater: saturationPressureOverWater },
  sources: SOURCES,
});

/**
 * Humidity ratio, from dry bulb and the wet bulb of a wick that carries ice, by adiabatic saturation.
 *
 * @function
 * @returns One humidity ratio; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError if the iced bulb is above 0.01 °C, above the dry bulb, or below that of perfectly dry air.
 * @example
 * const psychrometer = { temperature: temperature(2, '°C'), wetBulb: temperature(-1, '°C') };
 * humidityRatioFromWetBulbOverIce({ ...psychrometer, pressure: absolutePressure(941, 'hPa') }).in('g/kg') //=> 2.66969
 */
export const humidityRatioFromWetBulbOverIce = calculation({
  name: 'humidity ratio from wet bulb over ice',
  ...WICK.humidityRatioOverIce,
  formula: balanceText('iced', 'pice(Tw)'),
  uses: { pice: saturationPressureOverIce },
  sources: SOURCES,
});

/**
 * Humidity ratio, from dry and wet bulb by adiabatic saturation: the wick carries ice below the triple point (0.01 °C), water above.
 *
 * From -10 °C to there the wick may as well carry supercooled water; the answer then carries a note with that of water. Who has looked
 * at the wick uses {@link humidityRatioFromWetBulbOverWater} or {@link humidityRatioFromWetBulbOverIce}.
 *
 * @function
 * @returns One humidity ratio; carries a note above 3 bar, where leaving out the enhancement factor costs 1 %.
 * @throws CalculationError if the wet bulb lies above the dry bulb, or below that of perfectly dry air.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * humidityRatioFromWetBulb({ ...room, wetBulb: temperature(11.3, '°C') }).in('g/kg') //=> 6.22378
 */
export const humidityRatioFromWetBulb = calculation({
  name: 'humidity ratio from wet bulb',
  ...WICK.humidityRatio,
  formula: `Tw < ${TRIPLE_POINT} ? Wice(T, p, Tw) : Wwater(T, p, Tw)`,
  uses: { Wice: humidityRatioFromWetBulbOverIce, Wwater: humidityRatioFromWetBulbOverWater },
  sources: SOURCES,
});

/**
 * Wet bulb over water, by adiabatic saturation; below 0 °C over supercooled water.
 *
 * @function
 * @returns One temperature; carries a note above 3 bar, where leaving out the enhancement factor costs 1 % of the vapour.
 * @throws CalculationError if the air holds more vapour than saturation allows.
 * @example
 * const air = { temperature: temperature(5, '°C'), pressure: absolutePressure(941, 'hPa') };
 * wetBulbOverWater({ ...air, humidityRatio: humidityRatio(2, 'g/kg') }).in('°C') //=> -0.0680503
 */
export const wetBulbOverWater = calculation({
  name: 'wet bulb over water',
  ...WICK.wetBulbOverWater,
  formula: 'W == Wwater(T, p, Tw)',
  uses: { Wwater: humidityRatioFromWetBulbOverWater },
  sources: SOURCES,
});

/**
 * Wet bulb over ice, by adiabatic saturation.
 *
 * @function
 * @returns One temperature; carries a note above 3 bar, where leaving out the enhancement factor costs 1 % of the vapour.
 * @throws CalculationError if an iced wick would melt in this air, or the air holds more vapour than saturation allows.
 * @example
 * const air = { temperature: temperature(5, '°C'), pressure: absolutePressure(941, 'hPa') };
 * wetBulbOverIce({ ...air, humidityRatio: humidityRatio(2, 'g/kg') }).in('°C') //=> -0.409355
 */
export const wetBulbOverIce = calculation({
  name: 'wet bulb over ice',
  ...WICK.wetBulbOverIce,
  formula: 'W == Wice(T, p, Tw)',
  uses: { Wice: humidityRatioFromWetBulbOverIce },
  sources: SOURCES,
});

/**
 * Wet bulb, by adiabatic saturation: over water where that gives 0.01 °C or more, else over ice.
 *
 * Near 0 °C both a wet and an iced wick can settle in the same air, the iced one lower by a few tenths of a kelvin (more the drier the
 * air), and down to about -10 °C water on a wick may not have frozen. The answer then carries a note that says which of the two it is and
 * what the other is.
 *
 * @function
 * @returns One temperature; carries a note above 3 bar, where leaving out the enhancement factor costs 1 % of the vapour.
 * @throws CalculationError if the air holds more vapour than saturation allows.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * wetBulb({ ...room, humidityRatio: humidityRatio(6.2, 'g/kg') }).in('°C') //=> 11.2764
 */
export const wetBulb = calculation({
  name: 'wet bulb',
  ...WICK.wetBulb,
  formula: 'W == Weither(T, p, Tw)',
  uses: { Weither: humidityRatioFromWetBulb },
  sources: SOURCES,
});
