import { calculation, derived, input, output } from '../calculation/index.js';

const FLOW = { min: 0, max: 10, typical: 0.2 };

/**
 * Mass flow of a flow quoted in standard cubic feet, normal cubic metres or standard litres.
 *
 * The unit names the reference state, because there is no single standard: the same figure differs by nearly 9 % between 0 °C and 20 °C
 * at 1 bar. It is the mass of dry air, but for `scfm(68F)`, whose reference state is moist: of air with its vapour, 0.3 % less.
 * For a reference state without a unit, take its density and {@link massFlowOfVolume}.
 *
 * @function
 * @returns One mass flow.
 * @throws CalculationError if the flow is below zero or above 10 kg/s.
 * @example
 * massFlowFromStandardVolumeFlow({ standardVolumeFlow: standardVolumeFlow(318, 'scfm(68F)') }).in('g/s') //=> 180.2
 */
export const massFlowFromStandardVolumeFlow = calculation({
  name: 'mass flow of a standard volume flow',
  task: 'describe the air',
  inputs: {
    /** Flow at a reference state, which its unit names. */
    standardVolumeFlow: input('Q', 'standard volume flow', FLOW),
  },
  output: output('m', 'mass flow', 'g/s'),
  formula: 'Q',
  si: (Q) => Q,
  rises: ['Q'],
  sources: [derived('a standard volume is a mass: each unit carries the density of its reference state')],
});

/**
 * A mass flow as the volume flow it would be at a reference state; show it in the unit whose state is wanted.
 *
 * @function
 * @returns One standard volume flow.
 * @throws CalculationError if the flow is below zero or above 10 kg/s.
 * @example
 * standardVolumeFlowFromMassFlow({ massFlow: massFlow(180.2, 'g/s') }).in('scfm(68F)') //=> 317.999
 */
export const standardVolumeFlowFromMassFlow = calculation({
  name: 'standard volume flow of a mass flow',
  task: 'describe the air',
  inputs: {
    /** Mass per time. */
    massFlow: input('m', 'mass flow', FLOW),
  },
  output: output('Q', 'standard volume flow', 'Nm³/h(0C)'),
  formula: 'm',
  si: (m) => m,
  rises: ['m'],
  sources: [derived('a standard volume is a mass: each unit carries the density of its reference state')],
});
