import { calculation, input, output, source } from '../calculation/index.js';
import {
  balanceText,
  canBeIced,
  canBeWet,
  COLDEST_ICE,
  COLDEST_WATER,
  DRIEST,
  humidityRatioAt,
  humidityRatioEither,
  icedBulbAt,
  icedWick,
  ONE_STATE,
  wetBulbAt,
  wetBulbEither,
  wetWick,
  type WickPair,
} from './adiabatic-saturation.js';
import { vapourPressureAt } from './humidity-ratio.js';
import { celsius, HUMIDITY_RATIO, ROUNDING, SATURATED_PRESSURE } from './ranges.js';
import {
  overIce,
  overWater,
  saturation,
  saturationPressureOverIce,
  saturationPressureOverWater,
  TRIPLE_POINT,
} from './saturation-pressure.js';

const DRY_BULB = {
  min: celsius(-90),
  max: celsius(250),
  trusted: [celsius(-90), celsius(200)],
  typical: 291.15,
} as const;
const WARM_DRY_BULB = { ...DRY_BULB, min: celsius(-40), trusted: [celsius(-40), celsius(200)] } as const;
const WET_BULB = { min: celsius(-100), max: celsius(250), typical: 284.65 } as const;
const SOURCES = [
  source('ashrae2017', 'equations 33 and 35, adiabatic saturation', 'memory'),
  source('psychrolib', 'GetHumRatioFromTWetBulb', 'read'),
];

const WET = wetWick(overWater);
const ICED = icedWick(overIce);
const EITHER: WickPair = { wet: WET, iced: ICED };

const notAboveDryBulb = {
  need: 'the wet bulb must not lie above the dry bulb',
  holds: (T: number, _p: number, Tw: number): boolean => Tw <= T * ROUNDING,
};
const belowBoiling = {
  need: 'saturation pressure at the wet bulb must stay below the total pressure',
  holds: (_T: number, p: number, Tw: number): boolean => saturation(Tw) < p,
};
const notSupersaturated = {
  need: 'the humidity ratio must not exceed saturation at that temperature and pressure (more would condense)',
  holds: (T: number, p: number, W: number): boolean => vapourPressureAt(p, W) <= saturation(T) * ROUNDING,
};

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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', WARM_DRY_BULB),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', SATURATED_PRESSURE),
    /** Temperature of a wick wet with water. */
    wetBulb: input('Tw', 'temperature', { ...WET_BULB, min: COLDEST_WATER }),
  },
  output: output('W', 'humidity ratio', 'g/kg'),
  formula: balanceText('wet', 'pwater(Tw)'),
  uses: { pwater: saturationPressureOverWater },
  si: (T, p, Tw) => humidityRatioAt(WET, T, p, Tw),
  rules: [
    notAboveDryBulb,
    { ...belowBoiling, holds: (_T, p, Tw) => overWater(Tw) < p },
    { need: DRIEST, holds: (T, p, Tw) => humidityRatioAt(WET, T, p, Tw) >= 0 },
  ],
  rises: ['Tw'],
  falls: ['T', 'p'],
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', { ...DRY_BULB, typical: 274.15 }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', SATURATED_PRESSURE),
    /** Temperature of a wick covered with ice. */
    wetBulb: input('Tw', 'temperature', { min: COLDEST_ICE, max: TRIPLE_POINT, typical: 272.15 }),
  },
  output: output('W', 'humidity ratio', 'g/kg'),
  formula: balanceText('iced', 'pice(Tw)'),
  uses: { pice: saturationPressureOverIce },
  si: (T, p, Tw) => humidityRatioAt(ICED, T, p, Tw),
  rules: [notAboveDryBulb, { need: DRIEST, holds: (T, p, Tw) => humidityRatioAt(ICED, T, p, Tw) >= 0 }],
  rises: ['Tw'],
  falls: ['T', 'p'],
  sources: SOURCES,
});

/**
 * Humidity ratio, from dry and wet bulb by adiabatic saturation: the wick carries ice below the triple point (0.01 °C), water above.
 *
 * Just below 0 °C with the air above it, the wick may as well be wet at a higher reading; the answer then carries a note. Who has
 * looked at the wick uses {@link humidityRatioFromWetBulbOverWater} or {@link humidityRatioFromWetBulbOverIce}.
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', DRY_BULB),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', SATURATED_PRESSURE),
    /** Wet-bulb temperature. */
    wetBulb: input('Tw', 'temperature', WET_BULB),
  },
  output: output('W', 'humidity ratio', 'g/kg'),
  formula: `Tw < ${TRIPLE_POINT} ? Wice(T, p, Tw) : Wwater(T, p, Tw)`,
  uses: { Wice: humidityRatioFromWetBulbOverIce, Wwater: humidityRatioFromWetBulbOverWater },
  si: (T, p, Tw) => humidityRatioEither(EITHER, T, p, Tw),
  rules: [
    notAboveDryBulb,
    belowBoiling,
    { need: DRIEST, holds: (T, p, Tw) => humidityRatioEither(EITHER, T, p, Tw) >= 0 },
    {
      need: ONE_STATE,
      otherwise: 'note',
      holds: (T, p, Tw) => Tw >= TRIPLE_POINT || !canBeWet(WET, T, p, humidityRatioAt(ICED, T, p, Tw)),
    },
  ],
  falls: ['T', 'p'],
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', WARM_DRY_BULB),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', SATURATED_PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('Tw', 'temperature', '°C'),
  formula: 'W == Wwater(T, p, Tw)',
  uses: { Wwater: humidityRatioFromWetBulbOverWater },
  si: (T, p, W) => wetBulbAt(WET, T, p, W),
  rules: [{ ...notSupersaturated, holds: (T, p, W) => vapourPressureAt(p, W) <= overWater(T) * ROUNDING }],
  rises: ['T', 'W', 'p'],
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', { ...DRY_BULB, typical: 275.15 }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', SATURATED_PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', { ...HUMIDITY_RATIO, typical: 0.0026 }),
  },
  output: output('Tw', 'temperature', '°C'),
  formula: 'W == Wice(T, p, Tw)',
  uses: { Wice: humidityRatioFromWetBulbOverIce },
  si: (T, p, W) => icedBulbAt(ICED, T, p, W),
  rules: [
    notSupersaturated,
    {
      need: 'the wick must stay iced: in air this warm or humid it melts',
      holds: (T, p, W) => canBeIced(ICED, T, p, W),
    },
  ],
  rises: ['T', 'W', 'p'],
  sources: SOURCES,
});

/**
 * Wet bulb, by adiabatic saturation: over water where that gives 0.01 °C or more, else over ice.
 *
 * Near 0 °C both a wet and an iced wick can settle in the same air, the iced one lower by a few tenths of a kelvin (more the drier the
 * air); the answer is then that of the wet one and carries a note. {@link wetBulbOverIce} gives the other.
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', DRY_BULB),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', SATURATED_PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('Tw', 'temperature', '°C'),
  formula: 'W == Weither(T, p, Tw)',
  uses: { Weither: humidityRatioFromWetBulb },
  si: (T, p, W) => wetBulbEither(EITHER, T, p, W),
  rules: [
    notSupersaturated,
    { need: ONE_STATE, otherwise: 'note', holds: (T, p, W) => !(canBeWet(WET, T, p, W) && canBeIced(ICED, T, p, W)) },
  ],
  rises: ['T', 'W', 'p'],
  sources: SOURCES,
});
