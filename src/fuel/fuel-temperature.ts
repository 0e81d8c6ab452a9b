import { assumed, calculation, commonPractice, constant, derived, input, output } from '../calculation/index.js';
import { expansionCoefficient } from '../units/index.js';

/** How much less dense a fuel gets per kelvin: about a tenth of a per cent. */
export const usualFuelExpansion = constant('fuel/expansion', expansionCoefficient(0.1, '%/K'), {
  label: 'thermal expansion of the fuel',
  source: commonPractice('about 0.1 % per kelvin'),
  halfWidth: 2e-4,
});

const inputs = {
  /** Temperature of the fuel before the change, or where its density is known. */
  referenceTemperature: input('T_1', 'temperature', { min: 230, max: 400, typical: 293.15 }),
  /** Temperature of the fuel now. */
  fuelTemperature: input('T_2', 'temperature', { min: 230, max: 400, typical: 313.15 }),
  /** Loss of density per kelvin. */
  expansion: assumed('beta', 'expansion coefficient', { min: 0, max: 0.003, assume: usualFuelExpansion }),
} as const;

const SOURCES = [commonPractice('density falls by about 0.1 % per kelvin')];

function remaining(T1: number, T2: number, beta: number): number {
  return 1 - beta * (T2 - T1);
}

/**
 * Density of a fuel at another temperature than it is known at.
 *
 * @function
 * @returns The density.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelDensityAtTemperature({
 *   referenceDensity: density(0.745, 'kg/L'),
 *   referenceTemperature: temperature(20, '°C'),
 *   fuelTemperature: temperature(40, '°C'),
 * }).in('kg/L') //=> 0.7301
 */
export const fuelDensityAtTemperature = calculation({
  name: 'fuel density at a temperature',
  task: 'fuel the charge',
  inputs: {
    /** Density at the reference temperature. */
    referenceDensity: input('rho_1', 'density', { min: 400, max: 1200, typical: 749 }),
    ...inputs,
  },
  output: output('rho_2', 'density', 'kg/L'),
  formula: 'rho_1 * (1 - beta * (T_2 - T_1))',
  si: (rho, T1, T2, beta) => rho * remaining(T1, T2, beta),
  rises: ['rho_1'],
  falls: ['T_2'],
  sources: SOURCES,
});

/**
 * What warmer fuel does to the fuel mass where volume is metered, as by a carburettor's or a mechanical pump's stroke: it
 * falls with the density.
 *
 * @function
 * @returns Fuel mass after over before. Lambda goes the other way.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelMassRatioByVolume({
 *   referenceTemperature: temperature(20, '°C'),
 *   fuelTemperature: temperature(40, '°C'),
 * }).in('1') //=> 0.98
 */
export const fuelMassRatioByVolume = calculation({
  name: 'fuel mass ratio, metered by volume',
  task: 'fuel the charge',
  inputs,
  output: output('r_f', 'ratio', '1'),
  formula: '1 - beta * (T_2 - T_1)',
  si: remaining,
  falls: ['T_2'],
  sources: SOURCES,
});

/**
 * What warmer fuel does to the fuel mass through an injector at one pressure difference: it falls with the root of the
 * density, half as much as by volume. Twenty kelvin between two pulls is one per cent of lambda.
 *
 * @function
 * @returns Fuel mass after over before. Lambda goes the other way: {@link lambdaWithoutAddedFuel} takes it.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelMassRatioThroughInjector({
 *   referenceTemperature: temperature(20, '°C'),
 *   fuelTemperature: temperature(40, '°C'),
 * }).in('1') //=> 0.989949
 */
export const fuelMassRatioThroughInjector = calculation({
  name: 'fuel mass ratio, through an injector',
  task: 'fuel the charge',
  inputs,
  output: output('r_f', 'ratio', '1'),
  formula: 'sqrt(1 - beta * (T_2 - T_1))',
  si: (T1, T2, beta) => Math.sqrt(remaining(T1, T2, beta)),
  falls: ['T_2'],
  sources: [...SOURCES, derived('orifice flow: mass with the root of the density')],
});
