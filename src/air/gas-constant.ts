import { calculation, input, output, source } from '../calculation/index.js';

/**
 * Gas constant of a gas, from its molar mass.
 *
 * For a gas other than dry air, whose own is {@link gasConstantOfDryAir}.
 *
 * @function
 * @returns The molar gas constant over the molar mass.
 * @throws CalculationError if the molar mass is outside 1 to 200 g/mol.
 * @example
 * gasConstantFromMolarMass({ molarMass: molarMass(18.01528, 'g/mol') }).in('J/(kg·K)') //=> 461.523
 */
export const gasConstantFromMolarMass = calculation({
  name: 'gas constant of a gas',
  task: 'describe the air',
  inputs: {
    /** Molar mass of the gas. */
    molarMass: input('M', 'molar mass', { min: 0.001, max: 0.2, typical: 0.028966 }),
  },
  output: output('R', 'specific gas constant', 'J/(kg·K)'),
  formula: '8.31446261815324 / M',
  si: (M) => 8.31446261815324 / M,
  falls: ['M'],
  sources: [source('siBrochure', 'molar gas constant from its exact defining constants', 'memory')],
});
