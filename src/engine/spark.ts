import { assumed, calculation, commonPractice, constant, input, output } from '../calculation/index.js';
import { ratio } from '../units/index.js';

/** Share of the torque that one degree of spark timing away from best torque costs; it goes with the square of the angle. */
export const usualSparkSensitivity = constant('engine/spark-sensitivity', ratio(0.00055), {
  label: 'torque lost at one degree from best spark timing',
  source: commonPractice('0.0004 to 0.0007 per square degree'),
  halfWidth: 0.00015,
});

const FROM_BEST = { min: -1, max: 1, trusted: [-0.35, 0.35], typical: 0.1 } as const;
const SENSITIVITY = { min: 1e-5, max: 0.005, assume: usualSparkSensitivity } as const;
const WITHIN_PARABOLA = 'a timing at which the parabola still leaves torque';

/**
 * Torque at a spark timing over that at the timing of best torque: a parabola in the angle between them, common practice.
 *
 * A knock-limited engine runs retarded, and takes colder charge as advance; that gain comes on top of density. Only a
 * knock sensor and someone who knows the engine can say how much advance it bears: detonation destroys engines.
 *
 * @function
 * @returns The torque ratio. Carries a note beyond 20 degrees.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * torqueRatioFromSpark({ fromBestTorque: angle(6, '°') }).in('1') //=> 0.9802
 */
export const torqueRatioFromSpark = calculation({
  name: 'torque ratio from spark timing',
  task: 'describe the engine',
  inputs: {
    /** Angle of the crank between the spark and that of best torque; retarded or advanced are alike. */
    fromBestTorque: input('d', 'angle', FROM_BEST),
    /** Share of the torque lost at one degree from best. */
    sensitivity: assumed('k', 'ratio', SENSITIVITY),
  },
  output: output('T_r', 'ratio', '1'),
  formula: '1 - k * (180 / pi * d)^2',
  si: retained,
  rules: [{ need: WITHIN_PARABOLA, holds: (d, k) => retained(d, k) > 0 }],
  falls: ['k'],
  sources: [commonPractice('torque about its best: 1 - k d², d in degrees')],
});

function retained(d: number, k: number): number {
  return 1 - k * ((180 / Math.PI) * d) ** 2;
}

/**
 * What a change of spark timing alone did to torque between two set-ups: its own share of a gain, to be taken out before
 * the rest is put down to the charge.
 *
 * @function
 * @returns Torque after over torque before. Carries a note beyond 20 degrees from best torque.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * torqueRatioFromSparkChange({
 *   fromBestTorqueBefore: angle(8, '°'),
 *   fromBestTorqueAfter: angle(6, '°'),
 * }).in('1') //=> 1.01596
 */
export const torqueRatioFromSparkChange = calculation({
  name: 'torque ratio from a change of spark timing',
  task: 'describe the engine',
  inputs: {
    /** Angle of the crank between the spark and that of best torque, before the change. */
    fromBestTorqueBefore: input('d_1', 'angle', { ...FROM_BEST, typical: 0.14 }),
    /** Angle of the crank between the spark and that of best torque, after the change. */
    fromBestTorqueAfter: input('d_2', 'angle', FROM_BEST),
    /** Share of the torque lost at one degree from best. */
    sensitivity: assumed('k', 'ratio', SENSITIVITY),
  },
  output: output('T_r', 'ratio', '1'),
  formula: '(1 - k * (180 / pi * d_2)^2) / (1 - k * (180 / pi * d_1)^2)',
  si: (before, after, k) => retained(after, k) / retained(before, k),
  rules: [{ need: WITHIN_PARABOLA, holds: (before, after, k) => retained(before, k) > 0 && retained(after, k) > 0 }],
  sources: [commonPractice('torque about its best: 1 - k d², d in degrees')],
});
