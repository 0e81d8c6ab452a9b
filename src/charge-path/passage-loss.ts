import { calculation, derived, input, output } from '../calculation/index.js';
import { CHARGE_FLOW, LOSS } from './bounds.js';

/**
 * Pressure loss of a filter or a pipe at another flow than it was measured at: with the square of the flow.
 *
 * Densities are taken as those of the measurement; for a core, whose density changes much, see {@link coreOutletPressure}.
 *
 * @function
 * @returns One pressure difference.
 * @throws CalculationError if an input is impossible.
 * @example
 * passageLoss({ loss: pressureDifference(1.5, 'kPa'), atFlow: massFlow(165, 'g/s'), flow: massFlow(200, 'g/s') }).in('kPa') //=> 2.20386
 */
export const passageLoss = calculation({
  name: 'pressure loss of a passage',
  task: 'follow the charge',
  inputs: {
    /** Pressure loss where it was measured. */
    loss: input('dp_0', 'pressure difference', { ...LOSS, typical: 1500 }),
    /** Mass flow there, vapour included. */
    atFlow: input('m_0', 'mass flow', { ...CHARGE_FLOW, min: 1e-4 }),
    /** Mass flow wanted. */
    flow: input('m', 'mass flow', CHARGE_FLOW),
  },
  output: output('dp', 'pressure difference', 'kPa'),
  formula: 'dp_0 * (m / m_0)^2',
  si: (dp0, m0, m) => dp0 * (m / m0) ** 2,
  rises: ['dp_0', 'm'],
  falls: ['m_0'],
  sources: [derived('turbulent flow at one density')],
});
