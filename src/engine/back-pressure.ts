import { heatCapacityRatioOfAir } from '../air/index.js';
import { assumed, calculation, input, output, source } from '../calculation/index.js';

/**
 * What exhaust back pressure does to the air an engine takes in: burned gas left in the clearance volume expands and
 * takes the place of charge.
 *
 * Multiply volumetric efficiency on manifold density by it; compare two set-ups by the ratio of their factors. A core that
 * needs more pressure from the compressor needs more from the turbine too, so it costs more than its density says.
 *
 * @function
 * @returns The factor: 1 where exhaust and manifold pressure are equal, above 1 where boost is above the exhaust.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or nothing could flow in.
 * @example
 * backPressureFactor({
 *   exhaustPressure: absolutePressure(260, 'kPa'),
 *   manifoldPressure: absolutePressure(200, 'kPa'),
 *   compressionRatio: ratio(9.5),
 * }).in('1') //=> 0.97479
 */
export const backPressureFactor = calculation({
  name: 'breathing factor of exhaust back pressure',
  task: 'describe the engine',
  inputs: {
    /** Absolute pressure in the exhaust manifold. */
    exhaustPressure: input('p_e', 'absolute pressure', { min: 2e4, max: 2e6, typical: 235e3 }),
    /** Absolute pressure in the inlet manifold. */
    manifoldPressure: input('p_i', 'absolute pressure', { min: 5e3, max: 2e6, typical: 204e3 }),
    /** Largest over smallest volume of a cylinder. */
    compressionRatio: input('r_c', 'ratio', { min: 4, max: 25, typical: 9.5 }),
    /** Heat-capacity ratio of the gas. */
    heatCapacityRatio: assumed('k', 'ratio', { min: 1.2, max: 1.67, assume: heatCapacityRatioOfAir }),
  },
  output: output('f', 'ratio', '1'),
  formula: 'r_c / (r_c - 1) - (p_e / p_i + k - 1) / (k * (r_c - 1))',
  si: breathing,
  rules: [{ need: 'a back pressure that lets charge in', holds: (pe, pi, rc, k) => breathing(pe, pi, rc, k) > 0 }],
  rises: ['p_i'],
  falls: ['p_e'],
  sources: [source('heywood', 'equation 6.2, volumetric efficiency of an ideal cycle', 'memory')],
});

function breathing(pe: number, pi: number, rc: number, k: number): number {
  return rc / (rc - 1) - (pe / pi + k - 1) / (k * (rc - 1));
}
