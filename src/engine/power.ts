import { calculation, input, output, source } from '../calculation/index.js';

/**
 * Power from torque and speed at the same shaft.
 *
 * @function
 * @returns The power of that shaft.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * powerFromTorque({ torque: torque(400, 'N·m'), engineSpeed: rotationalSpeed(5500, 'rpm') }).in('kW') //=> 230.383
 */
export const powerFromTorque = calculation({
  name: 'power from torque',
  task: 'describe the engine',
  inputs: {
    /** Torque; negative when the engine is motored. */
    torque: input('T', 'torque', { min: -2e4, max: 1e6, typical: 300 }),
    /** Speed of the shaft that carries the torque. */
    engineSpeed: input('n', 'rotational speed', { min: 0, max: 1000, typical: 100 }),
  },
  output: output('P', 'power', 'kW'),
  formula: '2 * pi * n * T',
  si: (T, n) => 2 * Math.PI * n * T,
  rises: ['T'],
  sources: [source('heywood', 'section 2.3', 'memory')],
});

/**
 * Torque from power and speed at the same shaft.
 *
 * @function
 * @returns The torque of that shaft.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible; a shaft at rest has no power to
 * take torque from.
 * @example
 * torqueFromPower({ power: power(165, 'kW'), engineSpeed: rotationalSpeed(6000, 'rpm') }).in('N·m') //=> 262.606
 */
export const torqueFromPower = calculation({
  name: 'torque from power',
  task: 'describe the engine',
  inputs: {
    /** Power; negative when the engine is motored. */
    power: input('P', 'power', { min: -1e8, max: 1e8, typical: 165e3 }),
    /** Speed of the shaft that carries the power. */
    engineSpeed: input('n', 'rotational speed', { min: 0.5, max: 1000, typical: 100 }),
  },
  output: output('T', 'torque', 'N·m'),
  formula: 'P / (2 * pi * n)',
  si: (P, n) => P / (2 * Math.PI * n),
  rises: ['P'],
  sources: [source('heywood', 'section 2.3', 'memory')],
});
