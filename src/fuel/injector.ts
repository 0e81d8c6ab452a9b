import { calculation, input, output, source } from '../calculation/index.js';

/**
 * Pressure that drives fuel through an injector: rail minus manifold.
 *
 * Rail sensors mostly read above the room, manifold sensors absolute: mixing the two is off by the barometer, so both
 * must be absolute here. A regulator referenced to the manifold keeps the difference under boost; a fixed rail pressure
 * loses all of the boost.
 *
 * @function
 * @returns The pressure difference.
 * @throws CalculationError if an input is missing, a gauge pressure or otherwise of the wrong kind, or the manifold is
 * above the rail.
 * @example
 * injectorPressureDifference({
 *   railPressure: absolute(gaugePressure(4.1, 'bar'), absolutePressure(941, 'hPa')),
 *   manifoldPressure: absolutePressure(204, 'kPa'),
 * }).in('bar') //=> 3.001
 */
export const injectorPressureDifference = calculation({
  name: 'pressure difference across the injector',
  task: 'fuel the charge',
  inputs: {
    /** Absolute pressure in the fuel rail. */
    railPressure: input('p_r', 'absolute pressure', { min: 1e5, max: 1e8, typical: 504e3 }),
    /** Absolute pressure in the inlet manifold, or in the cylinder for direct injection. */
    manifoldPressure: input('p_m', 'absolute pressure', { min: 1e3, max: 2e7, typical: 204e3 }),
  },
  output: output('dp', 'pressure difference', 'bar'),
  formula: 'p_r - p_m',
  si: (rail, manifold) => rail - manifold,
  rules: [
    { need: 'the rail pressure must be above the manifold pressure', holds: (rail, manifold) => rail > manifold },
  ],
  rises: ['p_r'],
  falls: ['p_m'],
  sources: [source('saeJ1832', 'differential pressure', 'memory')],
});

/**
 * Static flow of an injector at another pressure difference than it was rated at: it follows the square root.
 *
 * Ratings are usually at 3.0 bar (43.5 psi) of difference.
 *
 * @function
 * @returns The static flow at the pressure difference.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * injectorFlowAtPressure({
 *   ratedFlow: volumeFlow(550, 'cm³/min'),
 *   ratedPressureDifference: pressureDifference(3, 'bar'),
 *   pressureDifference: pressureDifference(4, 'bar'),
 * }).in('cm³/min') //=> 635.085
 */
export const injectorFlowAtPressure = calculation({
  name: 'injector flow at another pressure',
  task: 'fuel the charge',
  inputs: {
    /** Static flow in the rating. */
    ratedFlow: input('Q_1', 'volume flow', { min: 1e-8, max: 1e-3, typical: 9.2e-6 }),
    /** Pressure difference in the rating. */
    ratedPressureDifference: input('dp_1', 'pressure difference', { min: 5e4, max: 5e7, typical: 3e5 }),
    /** Pressure difference now: rail minus manifold. */
    pressureDifference: input('dp_2', 'pressure difference', { min: 1e3, max: 5e7, typical: 3.5e5 }),
  },
  output: output('Q_2', 'volume flow', 'cm³/min'),
  formula: 'Q_1 * sqrt(dp_2 / dp_1)',
  si: (flow, rated, now) => flow * Math.sqrt(now / rated),
  rises: ['Q_1', 'dp_2'],
  falls: ['dp_1'],
  sources: [source('saeJ1832', 'static flow; orifice flow', 'memory')],
});

/**
 * Static volume flow of an injector in another liquid than it was rated with: a heavier one flows slower.
 *
 * Ratings are made with n-heptane or a test fluid; the mass flow rises with the square root of density while the volume
 * flow falls with it.
 *
 * @function
 * @returns The static flow in the fuel.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * injectorFlowInFuel({
 *   ratedFlow: volumeFlow(550, 'cm³/min'),
 *   ratedDensity: density(0.684, 'kg/L'),
 *   fuelDensity: density(0.749, 'kg/L'),
 * }).in('cm³/min') //=> 525.593
 */
export const injectorFlowInFuel = calculation({
  name: 'injector flow in another fuel',
  task: 'fuel the charge',
  inputs: {
    /** Static flow in the rating. */
    ratedFlow: input('Q_1', 'volume flow', { min: 1e-8, max: 1e-3, typical: 9.2e-6 }),
    /** Density of the liquid in the rating. */
    ratedDensity: input('rho_1', 'density', { min: 400, max: 1200, typical: 684 }),
    /** Density of the fuel. */
    fuelDensity: input('rho_2', 'density', { min: 400, max: 1200, typical: 749 }),
  },
  output: output('Q_2', 'volume flow', 'cm³/min'),
  formula: 'Q_1 * sqrt(rho_1 / rho_2)',
  si: (flow, rated, fuel) => flow * Math.sqrt(rated / fuel),
  rises: ['Q_1', 'rho_1'],
  falls: ['rho_2'],
  sources: [source('saeJ1832', 'test fluid; orifice flow', 'memory')],
});
