import { calculation, derived, input, output } from '../calculation/index.js';

/**
 * Observed power times a correction factor. State the standard, its revision, the factor and the room beside it, never
 * "corrected" alone.
 *
 * The notes of the factor, such as the one about boosted engines, come along.
 *
 * @function
 * @returns The power in the atmosphere of the standard.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctedPower({ observedPower: power(165, 'kW'), correctionFactor: ratio(1.0485) }).in('kW') //=> 173.002
 */
export const correctedPower = calculation({
  name: 'corrected power',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Power as measured, at the hub, wheel or crankshaft; the corrected power is that of the same place. */
    observedPower: input('P_o', 'power', { min: 0, max: 1e8, typical: 165e3 }),
    /** Factor of the chosen standard. */
    correctionFactor: input('CF', 'ratio', { min: 0.3, max: 3, typical: 1.05 }),
  },
  output: output('P_c', 'power', 'kW'),
  formula: 'CF * P_o',
  si: (Po, CF) => CF * Po,
  rises: ['P_o', 'CF'],
  sources: [derived('definition of a correction factor: it multiplies what was observed')],
});

/**
 * Observed torque times a correction factor: the same factor as for power, because the speed is not corrected.
 *
 * @function
 * @returns The torque in the atmosphere of the standard.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctedTorque({ observedTorque: torque(300, 'N·m'), correctionFactor: ratio(1.0485) }).in('N·m') //=> 314.55
 */
export const correctedTorque = calculation({
  name: 'corrected torque',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Torque as measured. */
    observedTorque: input('T_o', 'torque', { min: 0, max: 1e6, typical: 300 }),
    /** Factor of the chosen standard. */
    correctionFactor: input('CF', 'ratio', { min: 0.3, max: 3, typical: 1.05 }),
  },
  output: output('T_c', 'torque', 'N·m'),
  formula: 'CF * T_o',
  si: (To, CF) => CF * To,
  rises: ['T_o', 'CF'],
  sources: [derived('definition of a correction factor: it multiplies what was observed')],
});
