import { calculation, derived, input, output, source } from '../calculation/index.js';
import { dryAirHeatCapacity } from './moist-gas.js';
import { cpMass } from './ideal-gas.js';

const TEMPERATURE = { min: 150, max: 1900, trusted: [170, 1900], typical: 318.15 } as const;

const viscosityAt = (T: number): number => (1.458e-6 * T * Math.sqrt(T)) / (T + 110.4);
const sutherland = (T: number): number => 245.4 * 10 ** (-12 / T);
const conductivityAt = (T: number): number => (2.64638e-3 * T * Math.sqrt(T)) / (T + sutherland(T));

/**
 * Dynamic viscosity of air, by Sutherland's formula with the constants of the standard atmosphere.
 *
 * Good to 2 %. Pressure up to 1 MPa and the vapour of room air change it by less than 1 %.
 *
 * @function
 * @returns One dynamic viscosity.
 * @throws CalculationError if the temperature is outside 150 to 1900 K.
 * @example
 * airViscosity({ temperature: temperature(45, '°C') }).in('µPa·s') //=> 19.3065
 */
export const airViscosity = calculation({
  name: 'viscosity of air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
  },
  output: output('mu', 'dynamic viscosity', 'µPa·s'),
  formula: '1.458e-6 * T^1.5 / (T + 110.4)',
  si: viscosityAt,
  rises: ['T'],
  sources: [
    source('usStandardAtmosphere', 'dynamic viscosity', 'memory'),
    source('iso2533', 'dynamic viscosity', 'memory'),
  ],
});

/**
 * Dynamic viscosity of air, by Sutherland's formula in its three-constant form; within 0.1 % of {@link airViscosity}.
 *
 * @function
 * @returns One dynamic viscosity.
 * @throws CalculationError if the temperature is outside 150 to 1900 K.
 * @example
 * airViscosityWhite({ temperature: temperature(45, '°C') }).in('µPa·s') //=> 19.3172
 */
export const airViscosityWhite = calculation({
  name: 'viscosity of air, three-constant form',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
  },
  output: output('mu', 'dynamic viscosity', 'µPa·s'),
  formula: '1.716e-5 * (T / 273)^1.5 * (273 + 111) / (T + 111)',
  si: (T) => (1.716e-5 * (T / 273) * Math.sqrt(T / 273) * 384) / (T + 111),
  rises: ['T'],
  sources: [source('white', 'Sutherland constants of air', 'memory')],
});

/**
 * Thermal conductivity of air, by the formula of the standard atmosphere.
 *
 * @function
 * @returns One thermal conductivity; good to 2 %.
 * @throws CalculationError if the temperature is outside 150 to 1900 K.
 * @example
 * airConductivity({ temperature: temperature(45, '°C') }).in('W/(m·K)') //=> 0.0276497
 */
export const airConductivity = calculation({
  name: 'thermal conductivity of air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
  },
  output: output('k', 'thermal conductivity', 'W/(m·K)'),
  formula: '2.64638e-3 * T^1.5 / (T + 245.4 * 10^(-12 / T))',
  si: conductivityAt,
  rises: ['T'],
  sources: [source('usStandardAtmosphere', 'coefficient of thermal conductivity', 'memory')],
});

/**
 * Thermal conductivity of air, by Sutherland's formula; within 0.5 % of {@link airConductivity} up to 400 K.
 *
 * @function
 * @returns One thermal conductivity.
 * @throws CalculationError if the temperature is outside 150 to 1900 K.
 * @example
 * airConductivityWhite({ temperature: temperature(45, '°C') }).in('W/(m·K)') //=> 0.0276465
 */
export const airConductivityWhite = calculation({
  name: 'thermal conductivity of air, three-constant form',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
  },
  output: output('k', 'thermal conductivity', 'W/(m·K)'),
  formula: '0.0241 * (T / 273)^1.5 * (273 + 194) / (T + 194)',
  si: (T) => (0.0241 * (T / 273) * Math.sqrt(T / 273) * 467) / (T + 194),
  rises: ['T'],
  sources: [source('white', 'Sutherland constants of air', 'memory')],
});

/**
 * Prandtl number of air: viscosity times heat capacity over conductivity, each by the standard formulas.
 *
 * @function
 * @returns A ratio, 0.69 to 0.72 in a charge cooler.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * airPrandtlNumber({ temperature: temperature(45, '°C') }).in('1') //=> 0.702322
 */
export const airPrandtlNumber = calculation({
  name: 'Prandtl number of air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', { min: 173.15, max: 1200, trusted: [200, 1000], typical: 318.15 }),
  },
  output: output('Pr', 'ratio', '1'),
  formula: 'mu(T) * cp(T) / k(T)',
  uses: { mu: airViscosity, cp: dryAirHeatCapacity, k: airConductivity },
  si: (T) => ((1.458e-6 / 2.64638e-3) * cpMass(T, 0) * (T + sutherland(T))) / (T + 110.4),
  sources: [derived('definition of the Prandtl number')],
});
