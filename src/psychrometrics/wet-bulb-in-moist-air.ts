import { calculation, derived, input, output, source } from '../calculation/index.js';
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
import { inAirOverIce, inAirOverWater } from './enhancement-greenspan.js';
import { vapourPressureAt } from './humidity-ratio.js';
import { celsius, HUMIDITY_RATIO, PRESSURE, ROUNDING } from './ranges.js';
import {
  inAir,
  saturationPressureInMoistAirOverIce,
  saturationPressureInMoistAirOverWater,
} from './saturation-in-moist-air.js';
import { overWater, TRIPLE_POINT } from './saturation-pressure.js';

const DRY_BULB = {
  min: celsius(-90),
  max: celsius(250),
  trusted: [celsius(-90), celsius(200)],
  typical: 291.15,
} as const;
const WARM_DRY_BULB = { ...DRY_BULB, min: celsius(-40), trusted: [celsius(-40), celsius(200)] } as const;
const WET_BULB = {
  min: COLDEST_ICE,
  max: celsius(160),
  trusted: [COLDEST_ICE, celsius(100)],
  typical: 284.65,
} as const;
const SOURCES = [
  source('ashrae2017', 'equations 33 and 35, adiabatic saturation', 'memory'),
  source('greenspan1976', 'enhancement factor', 'memory'),
  derived("the handbook's balance with saturation in air in place of saturation of pure vapour"),
];

export const WET_IN_AIR = wetWick(inAirOverWater);
export const ICED_IN_AIR = icedWick(inAirOverIce);
export const IN_AIR: WickPair = { wet: WET_IN_AIR, iced: ICED_IN_AIR };

const notAboveDryBulb = {
  need: 'the wet bulb must not lie above the dry bulb',
  holds: (T: number, _p: number, Tw: number): boolean => Tw <= T * ROUNDING,
};
const belowBoiling = {
  need: 'saturation pressure at the wet bulb must stay below the total pressure',
  holds: (_T: number, p: number, Tw: number): boolean => overWater(Tw) < p && inAirOverWater(Tw, p) < p,
};
const notSupersaturated = {
  need: 'the humidity ratio must not exceed saturation at that temperature and pressure (more would condense)',
  holds: (T: number, p: number, W: number): boolean => vapourPressureAt(p, W) <= inAir(T, p) * ROUNDING,
};

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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', WARM_DRY_BULB),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Temperature of a wick wet with water. */
    wetBulb: input('Tw', 'temperature', { ...WET_BULB, min: COLDEST_WATER, trusted: [COLDEST_WATER, celsius(100)] }),
  },
  output: output('W', 'humidity ratio', 'g/kg'),
  formula: balanceText('wet', 'pwater(Tw, p)'),
  uses: { pwater: saturationPressureInMoistAirOverWater },
  si: (T, p, Tw) => humidityRatioAt(WET_IN_AIR, T, p, Tw),
  rules: [
    notAboveDryBulb,
    belowBoiling,
    { need: DRIEST, holds: (T, p, Tw) => humidityRatioAt(WET_IN_AIR, T, p, Tw) >= 0 },
  ],
  rises: ['Tw'],
  falls: ['T', 'p'],
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', { ...DRY_BULB, typical: 274.15 }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Temperature of a wick covered with ice. */
    wetBulb: input('Tw', 'temperature', { min: COLDEST_ICE, max: TRIPLE_POINT, typical: 272.15 }),
  },
  output: output('W', 'humidity ratio', 'g/kg'),
  formula: balanceText('iced', 'pice(Tw, p)'),
  uses: { pice: saturationPressureInMoistAirOverIce },
  si: (T, p, Tw) => humidityRatioAt(ICED_IN_AIR, T, p, Tw),
  rules: [notAboveDryBulb, { need: DRIEST, holds: (T, p, Tw) => humidityRatioAt(ICED_IN_AIR, T, p, Tw) >= 0 }],
  rises: ['Tw'],
  falls: ['T', 'p'],
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', DRY_BULB),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Wet-bulb temperature. */
    wetBulb: input('Tw', 'temperature', WET_BULB),
  },
  output: output('W', 'humidity ratio', 'g/kg'),
  formula: `Tw < ${TRIPLE_POINT} ? Wice(T, p, Tw) : Wwater(T, p, Tw)`,
  uses: {
    Wice: humidityRatioFromWetBulbInMoistAirOverIce,
    Wwater: humidityRatioFromWetBulbInMoistAirOverWater,
  },
  si: (T, p, Tw) => humidityRatioEither(IN_AIR, T, p, Tw),
  rules: [
    notAboveDryBulb,
    belowBoiling,
    { need: DRIEST, holds: (T, p, Tw) => humidityRatioEither(IN_AIR, T, p, Tw) >= 0 },
    {
      need: ONE_STATE,
      otherwise: 'note',
      holds: (T, p, Tw) => Tw >= TRIPLE_POINT || !canBeWet(WET_IN_AIR, T, p, humidityRatioAt(ICED_IN_AIR, T, p, Tw)),
    },
  ],
  falls: ['T', 'p'],
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', WARM_DRY_BULB),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('Tw', 'temperature', '°C'),
  formula: 'W == Wwater(T, p, Tw)',
  uses: { Wwater: humidityRatioFromWetBulbInMoistAirOverWater },
  si: (T, p, W) => wetBulbAt(WET_IN_AIR, T, p, W),
  rules: [{ ...notSupersaturated, holds: (T, p, W) => vapourPressureAt(p, W) <= inAirOverWater(T, p) * ROUNDING }],
  rises: ['T', 'W', 'p'],
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', { ...DRY_BULB, typical: 275.15 }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', { ...HUMIDITY_RATIO, typical: 0.0026 }),
  },
  output: output('Tw', 'temperature', '°C'),
  formula: 'W == Wice(T, p, Tw)',
  uses: { Wice: humidityRatioFromWetBulbInMoistAirOverIce },
  si: (T, p, W) => icedBulbAt(ICED_IN_AIR, T, p, W),
  rules: [
    notSupersaturated,
    {
      need: 'the wick must stay iced: in air this warm or humid it melts',
      holds: (T, p, W) => canBeIced(ICED_IN_AIR, T, p, W),
    },
  ],
  rises: ['T', 'W', 'p'],
  sources: SOURCES,
});

/**
 * Wet bulb, by adiabatic saturation with the enhancement factor: over water where that gives 0.01 °C or more, else over ice.
 *
 * Within 0.05 K of real air below 110 kPa. Without the factor, {@link wetBulb} of the same humidity ratio is up to 0.1 K higher in hot
 * humid air. Near 0 °C a wet and an iced wick both can settle; the answer is the wet one's and carries a note.
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
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', DRY_BULB),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('Tw', 'temperature', '°C'),
  formula: 'W == Weither(T, p, Tw)',
  uses: { Weither: humidityRatioFromWetBulbInMoistAir },
  si: (T, p, W) => wetBulbEither(IN_AIR, T, p, W),
  rules: [
    notSupersaturated,
    {
      need: ONE_STATE,
      otherwise: 'note',
      holds: (T, p, W) => !(canBeWet(WET_IN_AIR, T, p, W) && canBeIced(ICED_IN_AIR, T, p, W)),
    },
  ],
  rises: ['T', 'W', 'p'],
  sources: SOURCES,
});
