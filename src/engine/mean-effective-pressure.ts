import { assumed, calculation, input, output, source } from '../calculation/index.js';
import { fourStroke, wholeCycles } from './cycle.js';

/**
 * Brake mean effective pressure from torque: the work of a cycle per swept volume, which compares engines of any size
 * and speed.
 *
 * It needs the torque at the crankshaft. Torque at a hub or wheel gives a smaller number by whatever the driveline
 * loses, and a wrong one unless the overall ratio is divided out.
 *
 * @function
 * @returns The mean effective pressure; it is not a gauge or absolute pressure that any sensor would read.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * brakeMeanEffectivePressure({ torque: torque(400, 'N·m'), sweptVolume: volume(2, 'L') }).in('bar') //=> 25.1327
 */
export const brakeMeanEffectivePressure = calculation({
  name: 'brake mean effective pressure',
  task: 'describe the engine',
  inputs: {
    /** Torque at the crankshaft; negative when the engine is motored. */
    torque: input('T', 'torque', { min: -2e4, max: 1e5, typical: 300 }),
    /** Swept volume of all cylinders together. */
    sweptVolume: input('V_d', 'volume', { min: 1e-5, max: 1, typical: 1.8e-3 }),
    /** Revolutions from one working stroke of a cylinder to its next. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
  },
  output: output('p_me', 'mean effective pressure', 'bar'),
  formula: '2 * pi * n_R * T / V_d',
  si: (T, Vd, nR) => (2 * Math.PI * nR * T) / Vd,
  rules: [wholeCycles(2)],
  rises: ['T'],
  sources: [source('heywood', 'equations 2.19 and 2.20', 'memory')],
});

/**
 * Brake mean effective pressure from power at the crankshaft and engine speed.
 *
 * @function
 * @returns The mean effective pressure.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * brakeMeanEffectivePressureFromPower({
 *   power: power(162.9, 'kW'),
 *   engineSpeed: rotationalSpeed(6000, 'rpm'),
 *   sweptVolume: volume(1.8, 'L'),
 * }).in('bar') //=> 18.1
 */
export const brakeMeanEffectivePressureFromPower = calculation({
  name: 'brake mean effective pressure from power',
  task: 'describe the engine',
  inputs: {
    /** Power at the crankshaft; negative when the engine is motored. */
    power: input('P', 'power', { min: -1e8, max: 1e8, typical: 165e3 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0.5, max: 1000, typical: 100 }),
    /** Swept volume of all cylinders together. */
    sweptVolume: input('V_d', 'volume', { min: 1e-5, max: 1, typical: 1.8e-3 }),
    /** Revolutions from one working stroke of a cylinder to its next. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
  },
  output: output('p_me', 'mean effective pressure', 'bar'),
  formula: 'P * n_R / (V_d * n)',
  si: (P, n, Vd, nR) => (P * nR) / (Vd * n),
  rules: [wholeCycles(3)],
  rises: ['P'],
  sources: [source('heywood', 'equations 2.19 and 2.20', 'memory')],
});

/**
 * Torque at the crankshaft from brake mean effective pressure: the inverse of {@link brakeMeanEffectivePressure}.
 *
 * @function
 * @returns The torque.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * torqueFromMeanEffectivePressure({
 *   meanEffectivePressure: meanEffectivePressure(18, 'bar'),
 *   sweptVolume: volume(1.8, 'L'),
 * }).in('N·m') //=> 257.831
 */
export const torqueFromMeanEffectivePressure = calculation({
  name: 'torque from mean effective pressure',
  task: 'describe the engine',
  inputs: {
    /** Brake mean effective pressure; negative when the engine is motored. */
    meanEffectivePressure: input('p_me', 'mean effective pressure', { min: -5e6, max: 2e7, typical: 18e5 }),
    /** Swept volume of all cylinders together. */
    sweptVolume: input('V_d', 'volume', { min: 1e-5, max: 1, typical: 1.8e-3 }),
    /** Revolutions from one working stroke of a cylinder to its next. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
  },
  output: output('T', 'torque', 'N·m'),
  formula: 'p_me * V_d / (2 * pi * n_R)',
  si: (pme, Vd, nR) => (pme * Vd) / (2 * Math.PI * nR),
  rules: [wholeCycles(2)],
  rises: ['p_me'],
  sources: [source('heywood', 'equations 2.19 and 2.20', 'memory')],
});
