import { calculation, input, output, source } from '../calculation/index.js';

/**
 * Swept volume of all cylinders from bore and stroke.
 *
 * @function
 * @returns The swept volume of the engine, which is what mean effective pressure and volumetric efficiency are counted
 * on.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * sweptVolume({ bore: length(81, 'mm'), stroke: length(87.3, 'mm'), cylinders: ratio(4) }).in('cm³') //=> 1799.43
 */
export const sweptVolume = calculation({
  name: 'swept volume',
  task: 'describe the engine',
  inputs: {
    /** Diameter of a cylinder. */
    bore: input('B', 'length', { min: 0.01, max: 1.2, typical: 0.081 }),
    /** Travel of a piston from one end to the other. */
    stroke: input('L', 'length', { min: 0.01, max: 4, typical: 0.0873 }),
    /** Number of cylinders. */
    cylinders: input('N', 'ratio', { min: 1, max: 48, typical: 4 }),
  },
  output: output('V_d', 'volume', 'cm³'),
  formula: 'pi / 4 * B^2 * L * N',
  si: (B, L, N) => (Math.PI / 4) * B * B * L * N,
  rules: [{ need: 'a whole number of cylinders', holds: (_B, _L, N) => Number.isInteger(N), otherwise: 'note' }],
  sources: [source('heywood', 'section 2.2', 'memory')],
});

/**
 * Mean speed of a piston: two strokes a revolution. It ranks engines of different size by how hard their breathing and
 * their bearings work.
 *
 * @function
 * @returns The mean piston speed.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * meanPistonSpeed({ stroke: length(86, 'mm'), engineSpeed: rotationalSpeed(6500, 'rpm') }).in('m/s') //=> 18.6333
 */
export const meanPistonSpeed = calculation({
  name: 'mean piston speed',
  task: 'describe the engine',
  inputs: {
    /** Travel of a piston from one end to the other. */
    stroke: input('L', 'length', { min: 0.01, max: 4, typical: 0.0873 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0, max: 1000, typical: 100 }),
  },
  output: output('S_p', 'speed', 'm/s'),
  formula: '2 * L * n',
  si: (L, n) => 2 * L * n,
  rises: ['L', 'n'],
  sources: [source('heywood', 'equation 2.9', 'memory')],
});
