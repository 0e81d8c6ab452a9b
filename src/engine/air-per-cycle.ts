import { assumed, calculation, derived, input, output } from '../calculation/index.js';
import { fourStroke, wholeCycles } from './cycle.js';

/**
 * Air that the engine takes in over one cycle, all cylinders together: what a log without torque can be compared by.
 *
 * Unlike mass flow it does not grow with engine speed by itself, so it shows what density and breathing do.
 *
 * @function
 * @returns The mass of air, humid or dry as the flow is.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * airPerCycle({ airMassFlow: massFlow(166.2, 'g/s'), engineSpeed: rotationalSpeed(5500, 'rpm') }).in('g') //=> 3.62618
 */
export const airPerCycle = calculation({
  name: 'air per cycle',
  task: 'describe the engine',
  inputs: {
    /** Mass flow of air into the engine. */
    airMassFlow: input('mdot', 'mass flow', { min: 0, max: 100, typical: 0.19 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0.5, max: 1000, typical: 100 }),
    /** Revolutions from one inlet stroke of a cylinder to its next. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
  },
  output: output('m_a', 'mass', 'g'),
  formula: 'mdot * n_R / n',
  si: (mdot, n, nR) => (mdot * nR) / n,
  rules: [wholeCycles(2)],
  rises: ['mdot'],
  falls: ['n'],
  sources: [derived('mass flow over the number of cycles in a second')],
});
