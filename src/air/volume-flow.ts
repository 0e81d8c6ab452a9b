import { calculation, derived, input, output } from '../calculation/index.js';

const FLOW = { min: 0, max: 10, typical: 0.2 };
/** From air in a vacuum to the heaviest coolant. */
const DENSITY = { min: 0.05, max: 2000, typical: 1.12 };

/**
 * Mass flow, from a volume flow and the density at the place where that volume was measured.
 *
 * Of air, fuel or coolant alike. For a flow quoted in standard litres or cubic feet use {@link massFlowFromStandardVolumeFlow}.
 *
 * @function
 * @returns One mass flow, of whatever the density counts: humid air, or its dry part.
 * @throws CalculationError if an input is impossible.
 * @example
 * massFlowOfVolume({ volumeFlow: volumeFlow(340, 'cfm'), density: density(1.12177, 'kg/m³') }).in('g/s') //=> 180.002
 */
export const massFlowOfVolume = calculation({
  name: 'mass flow of a volume flow',
  task: 'describe the air',
  inputs: {
    /** Volume per time at the place. */
    volumeFlow: input('V', 'volume flow', FLOW),
    /** Density at the place. */
    density: input('rho', 'density', DENSITY),
  },
  output: output('m', 'mass flow', 'g/s'),
  formula: 'V * rho',
  si: (V, rho) => V * rho,
  rises: ['V', 'rho'],
  sources: [derived('mass conservation')],
});

/**
 * Volume flow at a place, from the mass flow and the density there.
 *
 * @function
 * @returns One volume flow at the actual state.
 * @throws CalculationError if an input is impossible.
 * @example
 * volumeFlowOfMass({ massFlow: massFlow(180, 'g/s'), density: density(1.12177, 'kg/m³') }).in('cfm') //=> 339.997
 */
export const volumeFlowOfMass = calculation({
  name: 'volume flow of a mass flow',
  task: 'describe the air',
  inputs: {
    /** Mass per time. */
    massFlow: input('m', 'mass flow', FLOW),
    /** Density at the place. */
    density: input('rho', 'density', DENSITY),
  },
  output: output('V', 'volume flow', 'm³/h'),
  formula: 'm / rho',
  si: (m, rho) => m / rho,
  rises: ['m'],
  falls: ['rho'],
  sources: [derived('mass conservation')],
});
