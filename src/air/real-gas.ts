import { assumed, calculation, derived, input, output, source } from '../calculation/index.js';
import { gasConstantOfDryAir, MOLAR_MASS_RATIO } from './constants.js';
import { MOLAR_GAS_CONSTANT } from './nasa-polynomials.js';
import { secondVirialCoefficientOfMoistAir, virialOfMoistAir } from './virial.js';

const TEMPERATURE = { min: 173.15, max: 523.15, trusted: [173.15, 473.15], typical: 291.15 } as const;
const PRESSURE = { min: 2e4, max: 1e6, typical: 94100 } as const;
const HUMIDITY_RATIO = { min: 0, max: 1, typical: 0.0062 } as const;
const GAS_CONSTANT = { min: 280, max: 300, assume: gasConstantOfDryAir };
const SOURCES = [
  source('hylandWexlerAir', 'virial equation of state of moist air, its second term', 'memory'),
  derived('the series in pressure cut after the second virial coefficient'),
];

/** Compressibility factor, bare. */
const compressibility = (T: number, p: number, W: number): number =>
  1 + (virialOfMoistAir(T, W) * p) / (MOLAR_GAS_CONSTANT * T);

/**
 * Compressibility factor of air: its volume over that of a perfect gas. Humidity ratio 0 for dry air.
 *
 * @function
 * @returns A ratio: 0.9996 in a room, 0.998 at 4 bar and 0 °C, above 1 in hot charge air.
 * @throws CalculationError if an input is impossible.
 * @example
 * const charge = { temperature: temperature(45, '°C'), pressure: absolutePressure(204, 'kPa') };
 * compressibilityFactor({ ...charge, humidityRatio: humidityRatio(6.2, 'g/kg') }).in('1') //=> 0.999657
 */
export const compressibilityFactor = calculation({
  name: 'compressibility factor of air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('Z', 'ratio', '1'),
  formula: `1 + B(T, W) * p / (${MOLAR_GAS_CONSTANT} * T)`,
  uses: { B: secondVirialCoefficientOfMoistAir },
  si: compressibility,
  sources: SOURCES,
});

/**
 * Density of air as a real gas: with its compressibility factor, within 0.01 % of reference equations from -40 to 60 °C and 60 to
 * 400 kPa, and within 0.04 % to 1 MPa. Humidity ratio 0 for dry air.
 *
 * A perfect gas, as in {@link moistAirDensityFromHumidityRatio}, is 0.04 % short in a room and 0.5 % at 4 bar and -40 °C.
 *
 * @function
 * @returns One density, vapour included.
 * @throws CalculationError if an input is impossible.
 * @example
 * const charge = { temperature: temperature(45, '°C'), pressure: absolutePressure(204, 'kPa') };
 * realGasDensity({ ...charge, humidityRatio: humidityRatio(6.2, 'g/kg') }).in('kg/m³') //=> 2.22627
 */
export const realGasDensity = calculation({
  name: 'density of air as a real gas',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
    /** Gas constant of the dry air. */
    gasConstant: assumed('R', 'specific gas constant', GAS_CONSTANT),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula: `p * (1 + W) / (Z(T, p, W) * R * T * (1 + W / ${MOLAR_MASS_RATIO}))`,
  uses: { Z: compressibilityFactor },
  si: (T, p, W, R) => (p * (1 + W)) / (compressibility(T, p, W) * R * T * (1 + W / MOLAR_MASS_RATIO)),
  rises: ['p'],
  falls: ['T', 'R'],
  sources: SOURCES,
});
