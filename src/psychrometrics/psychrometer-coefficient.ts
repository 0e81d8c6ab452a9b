import { assumed, calculation, commonPractice, constant, input, output, source } from '../calculation/index.js';
import { psychrometerCoefficient, ratio } from '../units/index.js';
import { celsius, PRESSURE } from './ranges.js';
import {
  overIce,
  overWater,
  saturationPressureOverIce,
  saturationPressureOverWater,
  TRIPLE_POINT,
} from './saturation-pressure.js';
import { DRIEST, notAboveDryBulb } from './wick-rules.js';

const DRY_BULB = { min: celsius(-40), max: celsius(80), typical: 291.15 };
const WET_BULB = { min: celsius(-40), max: celsius(80), typical: 284.65 };
const COEFFICIENT = { min: 4e-4, max: 2e-3, trusted: [5.5e-4, 1.3e-3], typical: 6.6e-4 } as const;
const TOTAL = { ...PRESSURE, trusted: [5e4, 1.1e5] } as const;
const SOURCES = [
  source('wmo8', 'psychrometric formula', 'memory'),
  source('amsGlossary', 'psychrometric formula', 'read'),
];

const published = (id: string, value: number, label: string, from: ReturnType<typeof source>) =>
  constant(`psychrometrics/${id}`, psychrometerCoefficient(value, '1/K'), { label, source: from });

/**
 * Published psychrometer coefficients that do not depend on the wet bulb. They disagree: by 1.5 % between aspirated instruments, by a
 * fifth and more for bulbs without forced air. One found by comparison with a good instrument beats them all.
 */
export const psychrometerCoefficients = {
  /** Aspirated, iced wick. */
  iceWmo: published(
    'psychrometer-ice-wmo',
    5.75e-4,
    'psychrometer coefficient, iced, WMO',
    source('wmo8', 'aspirated psychrometer, ice', 'memory'),
  ),
  /** Aspirated, iced wick. */
  iceAms: published(
    'psychrometer-ice-ams',
    5.82e-4,
    'psychrometer coefficient, iced, AMS',
    source('amsGlossary', 'psychrometric formula, ice', 'read'),
  ),
  /** Aspirated, wet wick, of a weather station. */
  weatherStation: published(
    'psychrometer-weather-station',
    6.62e-4,
    'psychrometer coefficient, weather station',
    commonPractice('manual of a weather station'),
  ),
  /** Aspirated, iced wick, of a weather station. */
  iceWeatherStation: published(
    'psychrometer-ice-weather-station',
    5.83e-4,
    'psychrometer coefficient, iced, weather station',
    commonPractice('manual of a weather station'),
  ),
  /** Bulbs in a screen or room without forced air: this and more. */
  unventilated: published(
    'psychrometer-unventilated',
    8e-4,
    'psychrometer coefficient, unventilated',
    commonPractice('bulbs without forced air: 0.0008 and more'),
  ),
} as const;

/** Saturation taken as that of pure vapour, until another enhancement factor is chosen. */
const NO_ENHANCEMENT = constant('psychrometrics/no-enhancement', ratio(1), {
  label: 'enhancement factor, left out',
  source: source('ashrae2017', 'simple relations of humid air', 'memory'),
});
const ENHANCEMENT = { min: 1, max: 1.1, assume: NO_ENHANCEMENT };

const depressed = (ps: number, p: number, T: number, Tw: number, A: number, f: number): number =>
  f * ps - A * p * (T - Tw);

/**
 * Psychrometer coefficient of an aspirated psychrometer with a wet wick, as WMO gives it.
 *
 * @function
 * @returns One coefficient.
 * @throws CalculationError if the wet bulb is outside -40 to 80 °C.
 * @example
 * psychrometerCoefficientWmo({ wetBulb: temperature(11.3, '°C') }).in('1/K') //=> 0.000659966
 */
export const psychrometerCoefficientWmo = calculation({
  name: 'psychrometer coefficient, WMO',
  task: 'describe humid air',
  inputs: {
    /** Wet-bulb temperature. */
    wetBulb: input('Tw', 'temperature', WET_BULB),
  },
  output: output('A', 'psychrometer coefficient', '1/K'),
  formula: '6.53e-4 * (1 + 0.000944 * (Tw - 273.15))',
  si: (Tw) => 6.53e-4 * (1 + 0.000944 * (Tw - 273.15)),
  rises: ['Tw'],
  sources: [source('wmo8', 'aspirated psychrometer', 'memory')],
});

/**
 * Psychrometer coefficient of an aspirated psychrometer with a wet wick, as the American Meteorological Society gives it.
 *
 * @function
 * @returns One coefficient; 1 % above {@link psychrometerCoefficientWmo}.
 * @throws CalculationError if the wet bulb is outside -40 to 80 °C.
 * @example
 * psychrometerCoefficientAms({ wetBulb: temperature(11.3, '°C') }).in('1/K') //=> 0.000668577
 */
export const psychrometerCoefficientAms = calculation({
  name: 'psychrometer coefficient, AMS',
  task: 'describe humid air',
  inputs: {
    /** Wet-bulb temperature. */
    wetBulb: input('Tw', 'temperature', WET_BULB),
  },
  output: output('A', 'psychrometer coefficient', '1/K'),
  formula: '6.6e-4 * (1 + 0.00115 * (Tw - 273.15))',
  si: (Tw) => 6.6e-4 * (1 + 0.00115 * (Tw - 273.15)),
  rises: ['Tw'],
  sources: [source('amsGlossary', 'psychrometric formula; its coefficient of the wet bulb', 'memory')],
});

/**
 * Vapour pressure by the psychrometric formula with a coefficient of one's own choice, wick wet with water.
 *
 * For {@link psychrometerCoefficients}, {@link psychrometerCoefficientWmo}, {@link psychrometerCoefficientAms} or a calibration;
 * {@link vapourPressureFromPsychrometerOverWater} is the same with WMO's coefficient and Buck's enhancement factor.
 *
 * @function
 * @returns One absolute pressure; carries a note outside 50 to 110 kPa.
 * @throws CalculationError if the wet bulb lies above the dry bulb, or below that of perfectly dry air.
 * @example
 * const psychrometer = { temperature: temperature(30, '°C'), wetBulb: temperature(20, '°C') };
 * const inScreen = { ...psychrometer, coefficient: psychrometerCoefficients.unventilated };
 * vapourPressureByPsychrometerCoefficientOverWater({ ...inScreen, pressure: absolutePressure(1000, 'hPa') }).in('Pa') //=> 1538.8
 */
export const vapourPressureByPsychrometerCoefficientOverWater = calculation({
  name: 'vapour pressure by a psychrometer coefficient with a wet wick',
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', DRY_BULB),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', TOTAL),
    /** Temperature of a wick wet with water. */
    wetBulb: input('Tw', 'temperature', WET_BULB),
    /** Psychrometer coefficient of the instrument. */
    coefficient: input('A', 'psychrometer coefficient', COEFFICIENT),
    /** Enhancement factor at the wick: of Buck, Greenspan or CIPM; 1 leaves it out. */
    enhancementFactor: assumed('f', 'ratio', ENHANCEMENT),
  },
  output: output('pv', 'absolute pressure', 'Pa'),
  formula: 'f * pwater(Tw) - A * p * (T - Tw)',
  uses: { pwater: saturationPressureOverWater },
  si: (T, p, Tw, A, f) => depressed(overWater(Tw), p, T, Tw, A, f),
  rules: [notAboveDryBulb, { need: DRIEST, holds: (T, p, Tw, A, f) => depressed(overWater(Tw), p, T, Tw, A, f) >= 0 }],
  rises: ['Tw', 'f'],
  falls: ['T', 'p', 'A'],
  sources: SOURCES,
});

/**
 * Vapour pressure by the psychrometric formula with a coefficient of one's own choice, wick covered with ice.
 *
 * @function
 * @returns One absolute pressure; carries a note outside 50 to 110 kPa.
 * @throws CalculationError if the iced bulb is above 0.01 °C, above the dry bulb, or below that of perfectly dry air.
 * @example
 * const psychrometer = { temperature: temperature(2, '°C'), wetBulb: temperature(-1, '°C') };
 * const iced = { ...psychrometer, coefficient: psychrometerCoefficients.iceAms };
 * vapourPressureByPsychrometerCoefficientOverIce({ ...iced, pressure: absolutePressure(1000, 'hPa') }).in('Pa') //=> 388.072
 */
export const vapourPressureByPsychrometerCoefficientOverIce = calculation({
  name: 'vapour pressure by a psychrometer coefficient with an iced wick',
  task: 'describe humid air',
  inputs: {
    /** Dry-bulb temperature. */
    temperature: input('T', 'temperature', { ...DRY_BULB, typical: 274.15 }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', TOTAL),
    /** Temperature of a wick covered with ice. */
    wetBulb: input('Tw', 'temperature', { min: celsius(-40), max: TRIPLE_POINT, typical: 272.15 }),
    /** Psychrometer coefficient of the instrument. */
    coefficient: input('A', 'psychrometer coefficient', { ...COEFFICIENT, typical: 5.8e-4 }),
    /** Enhancement factor at the wick; 1 leaves it out. */
    enhancementFactor: assumed('f', 'ratio', ENHANCEMENT),
  },
  output: output('pv', 'absolute pressure', 'Pa'),
  formula: 'f * pice(Tw) - A * p * (T - Tw)',
  uses: { pice: saturationPressureOverIce },
  si: (T, p, Tw, A, f) => depressed(overIce(Tw), p, T, Tw, A, f),
  rules: [notAboveDryBulb, { need: DRIEST, holds: (T, p, Tw, A, f) => depressed(overIce(Tw), p, T, Tw, A, f) >= 0 }],
  rises: ['Tw', 'f'],
  falls: ['T', 'p', 'A'],
  sources: SOURCES,
});
