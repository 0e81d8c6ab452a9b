import { assumed, calculation, constant, derived, input, output } from '../calculation/index.js';
import { torque } from '../units/index.js';

const INERTIA = { min: 0, max: 1e4, typical: 0.35 } as const;
const RAMP = { min: -1000, max: 1000, typical: 5 } as const;

/**
 * Moment of inertia of a part that turns at another speed, as the crankshaft feels it: it goes with the square of the
 * speed ratio. Add up all parts between the load cell and the crank, the engine's own included, with `add`.
 *
 * @function
 * @returns The moment of inertia referred to the crankshaft.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * reflectedInertia({ momentOfInertia: momentOfInertia(12, 'kg·m²'), speedRatio: ratio(0.24) }).in('kg·m²') //=> 0.6912
 */
export const reflectedInertia = calculation({
  name: 'moment of inertia referred to the crankshaft',
  task: 'describe the engine',
  inputs: {
    /** Moment of inertia of the part about its own axis. */
    momentOfInertia: input('J', 'moment of inertia', { ...INERTIA, typical: 12 }),
    /** Speed of the part over that of the crankshaft. */
    speedRatio: input('i', 'ratio', { min: 0, max: 100, typical: 0.24 }),
  },
  output: output('J_c', 'moment of inertia', 'kg·m²'),
  formula: 'J * i^2',
  si: (J, i) => J * i * i,
  rises: ['J', 'i'],
  sources: [derived('the same kinetic energy at the speed of the crankshaft')],
});

/**
 * Torque that goes into speeding up the masses during a sweep, and that the load cell never sees.
 *
 * A rating at steady speed has none. It is why a slow sweep reads more than a fast one, and why a lighter flywheel looks
 * like power.
 *
 * @function
 * @returns The torque at the crankshaft; below zero when slowing down.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * inertiaTorque({
 *   momentOfInertia: momentOfInertia(0.35, 'kg·m²'),
 *   rampRate: rotationalAcceleration(300, 'rpm/s'),
 * }).in('N·m') //=> 10.9956
 */
export const inertiaTorque = calculation({
  name: 'inertia torque in a sweep',
  task: 'describe the engine',
  inputs: {
    /** Moment of inertia of all that turns between load cell and crank, referred to the crankshaft. */
    momentOfInertia: input('J', 'moment of inertia', INERTIA),
    /** Change of engine speed per time. */
    rampRate: input('a', 'rotational acceleration', RAMP),
  },
  output: output('T_J', 'torque', 'N·m'),
  formula: '2 * pi * J * a',
  si: (J, a) => 2 * Math.PI * J * a,
  rises: ['a'],
  sources: [derived("Newton's second law for rotation; speed counted in revolutions")],
});

/** No drag between crank and load cell: what a sweep assumes when none is given. */
export const noDrag = constant('engine/no-drag', torque(0, 'N·m'), {
  label: 'drag torque between crank and load cell',
  source: derived('none was given'),
});

/**
 * Engine torque in a sweep from the torque at the brake: what the brake holds, what the masses take, and what drags in
 * between.
 *
 * Compare sweeps of one ramp rate only: the moment of inertia is seldom known to better than a tenth.
 *
 * @function
 * @returns The torque at the crankshaft.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * engineTorqueInSweep({
 *   brakeTorque: torque(300, 'N·m'),
 *   momentOfInertia: momentOfInertia(0.35, 'kg·m²'),
 *   rampRate: rotationalAcceleration(600, 'rpm/s'),
 * }).in('N·m') //=> 321.991
 */
export const engineTorqueInSweep = calculation({
  name: 'engine torque in a sweep',
  task: 'describe the engine',
  inputs: {
    /** Torque at the brake, referred to the crankshaft. */
    brakeTorque: input('T_b', 'torque', { min: -2e4, max: 1e5, typical: 300 }),
    /** Moment of inertia of all that turns between load cell and crank, referred to the crankshaft. */
    momentOfInertia: input('J', 'moment of inertia', INERTIA),
    /** Change of engine speed per time. */
    rampRate: input('a', 'rotational acceleration', RAMP),
    /** Torque lost between crank and load cell, referred to the crankshaft. */
    dragTorque: assumed('T_d', 'torque', { min: 0, max: 1e4, assume: noDrag }),
  },
  output: output('T', 'torque', 'N·m'),
  formula: 'T_b + 2 * pi * J * a + T_d',
  si: (Tb, J, a, Td) => Tb + 2 * Math.PI * J * a + Td,
  rises: ['T_b', 'a', 'T_d'],
  sources: [derived('torque balance of what turns between crank and load cell')],
});
