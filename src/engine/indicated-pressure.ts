import { calculation, derived, input, output, source } from '../calculation/index.js';

const EFFECTIVE = { min: -5e6, max: 2e7, typical: 18e5 } as const;
const FRICTION = { min: 0, max: 2e6, typical: 2.5e5 } as const;
const PUMPING = { min: -1e6, max: 2e6, typical: 3e4 } as const;

/**
 * Net indicated mean effective pressure, the work of the gas on the pistons over the whole cycle: what the crankshaft
 * gives and what friction keeps.
 *
 * @function
 * @returns The net indicated mean effective pressure.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * netIndicatedMeanEffectivePressure({
 *   brakeMeanEffectivePressure: meanEffectivePressure(18.1, 'bar'),
 *   frictionMeanEffectivePressure: meanEffectivePressure(2.5, 'bar'),
 * }).in('bar') //=> 20.6
 */
export const netIndicatedMeanEffectivePressure = calculation({
  name: 'net indicated mean effective pressure',
  task: 'describe the engine',
  inputs: {
    /** From torque at the crankshaft. */
    brakeMeanEffectivePressure: input('p_me', 'mean effective pressure', EFFECTIVE),
    /** Bearings, pistons, valve gear and driven auxiliaries, without pumping. */
    frictionMeanEffectivePressure: input('p_mf', 'mean effective pressure', FRICTION),
  },
  output: output('p_mi', 'mean effective pressure', 'bar'),
  formula: 'p_me + p_mf',
  si: (brake, friction) => brake + friction,
  rises: ['p_me', 'p_mf'],
  sources: [source('heywood', 'section 13.1', 'memory')],
});

/**
 * Gross indicated mean effective pressure, the work of compression and expansion alone: the net one and what exchanging
 * the gas costs.
 *
 * @function
 * @returns The gross indicated mean effective pressure.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * grossIndicatedMeanEffectivePressure({
 *   netIndicatedMeanEffectivePressure: meanEffectivePressure(20.6, 'bar'),
 *   pumpingMeanEffectivePressure: meanEffectivePressure(30, 'kPa'),
 * }).in('bar') //=> 20.9
 */
export const grossIndicatedMeanEffectivePressure = calculation({
  name: 'gross indicated mean effective pressure',
  task: 'describe the engine',
  inputs: {
    /** Work of the whole cycle over swept volume. */
    netIndicatedMeanEffectivePressure: input('p_mi', 'mean effective pressure', EFFECTIVE),
    /** Work that exchanging the gas costs; negative where boost pushes the pistons down harder than exhaust holds them. */
    pumpingMeanEffectivePressure: input('p_mp', 'mean effective pressure', PUMPING),
  },
  output: output('p_mig', 'mean effective pressure', 'bar'),
  formula: 'p_mi + p_mp',
  si: (net, pumping) => net + pumping,
  rises: ['p_mi', 'p_mp'],
  sources: [source('heywood', 'section 13.1', 'memory')],
});

/**
 * Pumping mean effective pressure from two indicated ones, as an indicating system gives them.
 *
 * @function
 * @returns The pumping mean effective pressure; above zero it is work lost.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * pumpingMeanEffectivePressure({
 *   grossIndicatedMeanEffectivePressure: meanEffectivePressure(20.9, 'bar'),
 *   netIndicatedMeanEffectivePressure: meanEffectivePressure(20.6, 'bar'),
 * }).in('kPa') //=> 30
 */
export const pumpingMeanEffectivePressure = calculation({
  name: 'pumping mean effective pressure',
  task: 'describe the engine',
  inputs: {
    /** Work of compression and expansion over swept volume. */
    grossIndicatedMeanEffectivePressure: input('p_mig', 'mean effective pressure', { ...EFFECTIVE, typical: 20.9e5 }),
    /** Work of the whole cycle over swept volume. */
    netIndicatedMeanEffectivePressure: input('p_mi', 'mean effective pressure', { ...EFFECTIVE, typical: 20.6e5 }),
  },
  output: output('p_mp', 'mean effective pressure', 'kPa'),
  formula: 'p_mig - p_mi',
  si: (gross, net) => gross - net,
  rises: ['p_mig'],
  falls: ['p_mi'],
  sources: [source('heywood', 'section 13.1', 'memory')],
});

/**
 * Pumping mean effective pressure from the pressures before and behind the engine: what a restriction in the exhaust, or a
 * turbine that must give more compressor pressure, costs.
 *
 * The valves are taken to be wide and the pressures steady; a real engine loses more, mostly with speed.
 *
 * @function
 * @returns The pumping mean effective pressure; below zero where boost is above exhaust pressure and helps.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * pumpingMeanEffectivePressureFromPressures({
 *   exhaustPressure: absolutePressure(235, 'kPa'),
 *   manifoldPressure: absolutePressure(204, 'kPa'),
 * }).in('kPa') //=> 31
 */
export const pumpingMeanEffectivePressureFromPressures = calculation({
  name: 'pumping mean effective pressure from pressures',
  task: 'describe the engine',
  inputs: {
    /** Absolute pressure in the exhaust manifold. */
    exhaustPressure: input('p_e', 'absolute pressure', { min: 2e4, max: 2e6, typical: 235e3 }),
    /** Absolute pressure in the inlet manifold. */
    manifoldPressure: input('p_i', 'absolute pressure', { min: 5e3, max: 2e6, typical: 204e3 }),
  },
  output: output('p_mp', 'mean effective pressure', 'kPa'),
  formula: 'p_e - p_i',
  si: (exhaust, manifold) => exhaust - manifold,
  rises: ['p_e'],
  falls: ['p_i'],
  sources: [
    source('heywood', 'section 13.4, pumping work of an ideal cycle', 'memory'),
    derived('exhaust and inlet stroke at steady pressures'),
  ],
});

/**
 * Brake over net indicated work: the mechanical efficiency that SAE J1349 takes as 0.85 where it is not known.
 *
 * @function
 * @returns The mechanical efficiency.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * mechanicalEfficiency({
 *   brakeMeanEffectivePressure: meanEffectivePressure(18.1, 'bar'),
 *   frictionMeanEffectivePressure: meanEffectivePressure(2.5, 'bar'),
 * }).in('%') //=> 87.8641
 */
export const mechanicalEfficiency = calculation({
  name: 'mechanical efficiency',
  task: 'describe the engine',
  inputs: {
    /** From torque at the crankshaft. */
    brakeMeanEffectivePressure: input('p_me', 'mean effective pressure', { ...EFFECTIVE, min: 1e3 }),
    /** Bearings, pistons, valve gear and driven auxiliaries, without pumping. */
    frictionMeanEffectivePressure: input('p_mf', 'mean effective pressure', FRICTION),
  },
  output: output('eta_m', 'ratio', '%'),
  formula: 'p_me / (p_me + p_mf)',
  si: (brake, friction) => brake / (brake + friction),
  rises: ['p_me'],
  falls: ['p_mf'],
  sources: [source('heywood', 'section 2.5', 'memory')],
});
