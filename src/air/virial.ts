import { calculation, derived, input, output, source } from '../calculation/index.js';
import { MOLAR_MASS_RATIO } from './constants.js';
import { MOLAR_GAS_CONSTANT } from './nasa-polynomials.js';

const TEMPERATURE = { min: 173.15, max: 523.15, trusted: [173.15, 473.15], typical: 291.15 } as const;
const HUMIDITY_RATIO = { min: 0, max: 1, typical: 0.0062 } as const;
const SOURCES = [source('hylandWexlerAir', 'second virial coefficients', 'memory')];

const ofDryAir = (T: number): number => (34.9568 + (-6687.72 + (-2.10141e6 + 9.24746e7 / T) / T) / T) * 1e-6;
const cross = (T: number): number => (32.366097 + (-14113.8 + (-1.244535e6 - 2.348789e9 / (T * T)) / T) / T) * 1e-6;
const ofVapour = (T: number): number => MOLAR_GAS_CONSTANT * T * (7e-9 - 1.47184e-9 * Math.exp(1734.29 / T));

/** Second virial coefficient of moist air of a humidity ratio, bare. */
export function virialOfMoistAir(T: number, W: number): number {
  const xw = W / (MOLAR_MASS_RATIO + W);
  const xa = MOLAR_MASS_RATIO / (MOLAR_MASS_RATIO + W);
  return xa * xa * ofDryAir(T) + 2 * xa * xw * cross(T) + xw * xw * ofVapour(T);
}

/**
 * Second virial coefficient of dry air: what its molecules do to each other, as a volume.
 *
 * @function
 * @returns One molar volume, negative below 71 °C where attraction prevails.
 * @throws CalculationError if the temperature is outside -100 to 250 °C.
 * @example
 * secondVirialCoefficientOfDryAir({ temperature: temperature(18, '°C') }).in('cm³/mol') //=> -9.05635
 */
export const secondVirialCoefficientOfDryAir = calculation({
  name: 'second virial coefficient of dry air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
  },
  output: output('Baa', 'molar volume', 'cm³/mol'),
  formula: '(34.9568 - 6687.72 / T - 2.10141e6 / T^2 + 9.24746e7 / T^3) * 1e-6',
  si: ofDryAir,
  rises: ['T'],
  sources: SOURCES,
});

/**
 * Second virial cross coefficient of air and water vapour: what the two do to each other.
 *
 * @function
 * @returns One molar volume, negative.
 * @throws CalculationError if the temperature is outside -100 to 250 °C.
 * @example
 * secondVirialCoefficientOfAirWithVapour({ temperature: temperature(18, '°C') }).in('cm³/mol') //=> -31.1184
 */
export const secondVirialCoefficientOfAirWithVapour = calculation({
  name: 'second virial cross coefficient of air and water vapour',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
  },
  output: output('Baw', 'molar volume', 'cm³/mol'),
  formula: '(32.366097 - 14113.8 / T - 1.244535e6 / T^2 - 2.348789e9 / T^4) * 1e-6',
  si: cross,
  rises: ['T'],
  sources: SOURCES,
});

/**
 * Second virial coefficient of water vapour.
 *
 * @function
 * @returns One molar volume, strongly negative.
 * @throws CalculationError if the temperature is outside -100 to 250 °C.
 * @example
 * secondVirialCoefficientOfVapour({ temperature: temperature(18, '°C') }).in('cm³/mol') //=> -1359.53
 */
export const secondVirialCoefficientOfVapour = calculation({
  name: 'second virial coefficient of water vapour',
  task: 'describe the air',
  inputs: {
    /** Temperature of the vapour. */
    temperature: input('T', 'temperature', TEMPERATURE),
  },
  output: output('Bww', 'molar volume', 'cm³/mol'),
  formula: `${MOLAR_GAS_CONSTANT} * T * (7e-9 - 1.47184e-9 * exp(1734.29 / T))`,
  si: ofVapour,
  rises: ['T'],
  sources: [source('hylandWexler', 'second virial coefficient of saturated vapour', 'memory')],
});

/**
 * Second virial coefficient of humid air, from those of its parts and the humidity ratio; of dry air at 0.
 *
 * @function
 * @returns One molar volume.
 * @throws CalculationError if an input is impossible.
 * @example
 * const room = { temperature: temperature(18, '°C'), humidityRatio: humidityRatio(6.2, 'g/kg') };
 * secondVirialCoefficientOfMoistAir(room).in('cm³/mol') //=> -9.61914
 */
export const secondVirialCoefficientOfMoistAir = calculation({
  name: 'second virial coefficient of moist air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('Bm', 'molar volume', 'cm³/mol'),
  formula: `(${MOLAR_MASS_RATIO}^2 * Baa(T) + 2 * ${MOLAR_MASS_RATIO} * W * Baw(T) + W^2 * Bww(T)) / (${MOLAR_MASS_RATIO} + W)^2`,
  uses: {
    Baa: secondVirialCoefficientOfDryAir,
    Baw: secondVirialCoefficientOfAirWithVapour,
    Bww: secondVirialCoefficientOfVapour,
  },
  si: virialOfMoistAir,
  rises: ['T'],
  sources: [...SOURCES, derived('second virial coefficients of a mixture add up by pairs of molecules')],
});
