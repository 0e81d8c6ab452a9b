import { specificHeatCapacityOfAir } from '../air/index.js';
import { assumed, calculation, commonPractice, constant, derived, input, output } from '../calculation/index.js';
import { massFraction, specificHeatCapacity } from '../units/index.js';

const allOfIt = constant('fuel/all-evaporated', massFraction(1), {
  label: 'share of the fuel that evaporates',
  source: derived('upper bound: all of it'),
});
const noVapour = constant('fuel/no-vapour-heat-capacity', specificHeatCapacity(0, 'J/(kg·K)'), {
  label: 'heat capacity of the fuel vapour',
  source: derived('upper bound: left out'),
});

/**
 * The most that evaporating fuel could cool the charge: all heat taken from the air, none from walls.
 *
 * A bound, not a forecast. Saturation stops alcohols long before it, hot walls give most of the heat in a port, and what
 * evaporates behind the inlet valve is worth more than what does so in front of it.
 *
 * @function
 * @returns The largest possible drop, with a note that it is never reached.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * evaporativeCoolingLimit({
 *   latentHeat: specificEnergy(349, 'kJ/kg'),
 *   lambda: lambda(1),
 *   stoichiometricAirFuelRatio: airFuelRatio(14.6),
 *   heatCapacityOfAir: specificHeatCapacity(1006, 'J/(kg·K)'),
 * }).in('K') //=> 23.7615
 */
export const evaporativeCoolingLimit = calculation({
  name: 'upper bound of cooling by evaporating fuel',
  task: 'fuel the charge',
  inputs: {
    /** Heat that a kilogram of fuel takes up. */
    latentHeat: input('h_fg', 'specific energy', { min: 5e4, max: 3e6, typical: 349e3 }),
    /** Air-fuel ratio over the stoichiometric one. */
    lambda: input('lambda', 'lambda', { min: 0.3, max: 10, typical: 0.8 }),
    /** Stoichiometric ratio of the fuel. */
    stoichiometricAirFuelRatio: input('AFR_st', 'air-fuel ratio', { min: 1, max: 40, typical: 14.6 }),
    /** Share of the fuel that evaporates in the air. */
    evaporatedShare: assumed('x', 'mass fraction', { min: 0, max: 1, assume: allOfIt }),
    /** Specific heat capacity of the air. */
    heatCapacityOfAir: assumed('c_p', 'specific heat capacity', {
      min: 900,
      max: 1300,
      assume: specificHeatCapacityOfAir,
    }),
    /** Specific heat capacity of the fuel's vapour, which is cooled along with the air. */
    heatCapacityOfVapour: assumed('c_v', 'specific heat capacity', { min: 0, max: 5000, assume: noVapour }),
  },
  output: output('dT', 'temperature difference', 'K'),
  formula: 'x * h_fg / (lambda * AFR_st * c_p + c_v)',
  si: (h, lambda, stoichiometric, x, cp, cv) => (x * h) / (lambda * stoichiometric * cp + cv),
  rises: ['x', 'h_fg'],
  falls: ['lambda', 'AFR_st', 'c_p', 'c_v'],
  notes: [
    {
      code: 'upper bound',
      message:
        'An upper bound that is never reached: it takes all heat from the air and none from walls, and knows no ' +
        'saturation. With gasoline in a port 10 to 20 K are seen (common practice, no source).',
    },
  ],
  sources: [
    derived('heat of evaporation against the heat capacity of the air'),
    commonPractice('10 to 20 K are seen with gasoline in a port'),
  ],
});
