import { calculation, derived, input, output } from '../calculation/index.js';

/**
 * Mass of dry air in a volume of humid air, from the density of the mixture and its humidity ratio.
 *
 * For a density by any equation; from pressures alone use {@link partialDensityOfDryAir}.
 *
 * @function
 * @returns One density, vapour left out.
 * @throws CalculationError if an input is impossible.
 * @example
 * dryPartOfDensity({ density: density(1.1222, 'kg/m³'), humidityRatio: humidityRatio(6.2, 'g/kg') }).in('kg/m³') //=> 1.11529
 */
export const dryPartOfDensity = calculation({
  name: 'dry part of a density',
  task: 'describe the air',
  inputs: {
    /** Density of the humid air. */
    density: input('rho', 'density', { min: 0.05, max: 20, typical: 1.12 }),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', { min: 0, max: 100, typical: 0.0062 }),
  },
  output: output('rhod', 'density', 'kg/m³'),
  formula: 'rho / (1 + W)',
  si: (rho, W) => rho / (1 + W),
  rises: ['rho'],
  falls: ['W'],
  sources: [derived('definition of the humidity ratio')],
});
