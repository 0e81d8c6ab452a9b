import { calculation, input, output, source } from '../calculation/index.js';
import { enhancementFactorBuck1981 } from './enhancement-factor.js';
import { celsius, PRESSURE } from './ranges.js';
import {
  overIce,
  overWater,
  saturationPressureOverIce,
  saturationPressureOverWater,
  TRIPLE_POINT,
} from './saturation-pressure.js';
import { DRIEST, notAboveDryBulb } from './wick-rules.js';

const DRY_BULB = { min: celsius(-40), max: celsius(80) };
const TOTAL = { ...PRESSURE, trusted: [5e4, 1.1e5] } as const;
const SOURCES = [
  source('wmo8', 'psychrometric formulas of the aspirated psychrometer', 'memory'),
  source('buck1981', 'enhancement factor over water', 'memory'),
];

const factor = (p: number): number => enhancementFactorBuck1981.kernel(p);
const withWater = (T: number, p: number, Tw: number): number =>
  factor(p) * overWater(Tw) - 6.53e-4 * (1 + 0.000944 * (Tw - 273.15)) * p * (T - Tw);
const withIce = (T: number, p: number, Tw: number): number => factor(p) * overIce(Tw) - 5.75e-4 * p * (T - Tw);

/**
 * Vapour pressure by the psychrometric formula, from an aspirated psychrometer whose wick carries water.
 *
 * What the instrument means by itself, where {@link humidityRatioFromWetBulb} is thermodynamics. Published coefficients differ by
 * 1.5 %, and a wick without forced air needs one higher by a fifth and more (common practice, no source). The vapour pressure includes
 * the enhancement factor: a relative humidity by {@link relativeHumidityFromVapourPressure} comes out 0.4 % of itself high.
 *
 * @function
 * @returns One absolute pressure; carries a note above 1100 hPa.
 * @throws CalculationError if the wet bulb lies above the dry bulb, or below that of perfectly dry air.
 * @example
 * const psychrometer = { temperature: temperature(30, '°C'), wetBulb: temperature(20, '°C') };
 * vapourPressureFromPsychrometerOverWater({ ...psychrometer, pressure: absolutePressure(1000, 'hPa') }).in('Pa') //=> 1683.2
 */
export const vapourPressureFromPsychrometerOverWater = calculation({
  name: 'vapour pressure from a psychrometer with a wet wick',
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', { ...DRY_BULB, typical: 291.15 }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', TOTAL),
    /** Temperature of a wick wet with water. */
    wetBulb: input('Tw', 'temperature', { ...DRY_BULB, typical: 284.65 }),
  },
  output: output('pv', 'absolute pressure', 'Pa'),
  formula: 'f(p) * pwater(Tw) - 6.53e-4 * (1 + 0.000944 * (Tw - 273.15)) * p * (T - Tw)',
  uses: { f: enhancementFactorBuck1981, pwater: saturationPressureOverWater },
  si: withWater,
  rules: [notAboveDryBulb, { need: DRIEST, holds: (T, p, Tw) => withWater(T, p, Tw) >= 0 }],
  rises: ['Tw'],
  falls: ['T'],
  sources: SOURCES,
});

/**
 * Vapour pressure by the psychrometric formula, from an aspirated psychrometer whose wick carries ice.
 *
 * @function
 * @returns One absolute pressure; carries a note above 1100 hPa.
 * @throws CalculationError if the iced bulb is above 0.01 °C, above the dry bulb, or below that of perfectly dry air.
 * @example
 * const psychrometer = { temperature: temperature(2, '°C'), wetBulb: temperature(-1, '°C') };
 * vapourPressureFromPsychrometerOverIce({ ...psychrometer, pressure: absolutePressure(1000, 'hPa') }).in('Pa') //=> 392.512
 */
export const vapourPressureFromPsychrometerOverIce = calculation({
  name: 'vapour pressure from a psychrometer with an iced wick',
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', { ...DRY_BULB, typical: 274.15 }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', TOTAL),
    /** Temperature of a wick covered with ice. */
    wetBulb: input('Tw', 'temperature', { min: celsius(-40), max: TRIPLE_POINT, typical: 272.15 }),
  },
  output: output('pv', 'absolute pressure', 'Pa'),
  formula: 'f(p) * pice(Tw) - 5.75e-4 * p * (T - Tw)',
  uses: { f: enhancementFactorBuck1981, pice: saturationPressureOverIce },
  si: withIce,
  rules: [notAboveDryBulb, { need: DRIEST, holds: (T, p, Tw) => withIce(T, p, Tw) >= 0 }],
  rises: ['Tw'],
  falls: ['T'],
  sources: SOURCES,
});
