import { calculation, derived, input, output, source } from '../calculation/index.js';

/**
 * Mass flow of fuel that an airflow needs at a mixture: what a colder, denser charge asks for more of.
 *
 * Airflow that rises by some per cent without more fuel leans the mixture by the same per cent; on a boosted engine
 * near full load that can lead to detonation.
 *
 * @function
 * @returns The mass flow of fuel.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelMassFlowFromAirflow({
 *   airMassFlow: massFlow(163.9, 'g/s'),
 *   lambda: lambda(0.8),
 *   stoichiometricAirFuelRatio: fuels.gasoline.stoichiometricAirFuelRatio,
 * }).in('g/s') //=> 14.0325
 */
export const fuelMassFlowFromAirflow = calculation({
  name: 'fuel mass flow from airflow',
  task: 'fuel the charge',
  inputs: {
    /** Mass flow of dry air into the engine. */
    airMassFlow: input('mdot_a', 'mass flow', { min: 0, max: 100, typical: 0.19 }),
    /** Air-fuel ratio over the stoichiometric one. */
    lambda: input('lambda', 'lambda', { min: 0.05, max: 100, typical: 0.8 }),
    /** Stoichiometric ratio of the fuel. */
    stoichiometricAirFuelRatio: input('AFR_st', 'air-fuel ratio', { min: 1, max: 40, typical: 14.6 }),
  },
  output: output('mdot_f', 'mass flow', 'g/s'),
  formula: 'mdot_a / (lambda * AFR_st)',
  si: (air, lambda, stoichiometric) => air / (lambda * stoichiometric),
  rises: ['mdot_a'],
  falls: ['lambda', 'AFR_st'],
  sources: [source('heywood', 'sections 2.9 and 3.3', 'memory')],
});

/**
 * Volume flow of fuel, as pumps and injectors are rated, from its mass flow.
 *
 * @function
 * @returns The volume flow at the density given.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelVolumeFlow({
 *   fuelMassFlow: massFlow(69, 'kg/h'),
 *   fuelDensity: density(0.745, 'kg/L'),
 * }).in('cm³/min') //=> 1543.62
 */
export const fuelVolumeFlow = calculation({
  name: 'fuel volume flow',
  task: 'fuel the charge',
  inputs: {
    /** Mass flow of fuel. */
    fuelMassFlow: input('mdot_f', 'mass flow', { min: 0, max: 10, typical: 0.015 }),
    /** Density of the fuel at its temperature. */
    fuelDensity: input('rho_f', 'density', { min: 400, max: 1200, typical: 749 }),
  },
  output: output('Q', 'volume flow', 'cm³/min'),
  formula: 'mdot_f / rho_f',
  si: (fuel, density) => fuel / density,
  rises: ['mdot_f'],
  falls: ['rho_f'],
  sources: [derived('definition of density')],
});

/**
 * Mass flow of fuel from its volume flow: an injector rated in cm³/min in pounds per hour.
 *
 * @function
 * @returns The mass flow.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelMassFlow({
 *   fuelVolumeFlow: volumeFlow(550, 'cm³/min'),
 *   fuelDensity: density(0.72, 'kg/L'),
 * }).in('lb/h') //=> 52.3818
 */
export const fuelMassFlow = calculation({
  name: 'fuel mass flow',
  task: 'fuel the charge',
  inputs: {
    /** Volume flow of fuel. */
    fuelVolumeFlow: input('Q', 'volume flow', { min: 0, max: 0.1, typical: 9.2e-6 }),
    /** Density of the fuel at its temperature. */
    fuelDensity: input('rho_f', 'density', { min: 400, max: 1200, typical: 749 }),
  },
  output: output('mdot_f', 'mass flow', 'g/s'),
  formula: 'Q * rho_f',
  si: (flow, density) => flow * density,
  rises: ['Q', 'rho_f'],
  sources: [derived('definition of density')],
});
