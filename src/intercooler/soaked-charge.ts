import { calculation, derived, input, output } from '../calculation/index.js';
import { advanceCells, outletsOfCells } from './core-cells.js';
import { CORE_HEAT_CAPACITY, DURATION, SOAK_FLOWS, WALL } from './soak-inputs.js';

/** Cells along each flow where none are asked for: within 0.1 K of the settled core, for a few microseconds a step. */
export const USUAL_CELLS = 10;

/**
 * Charge temperature behind a core some time into a pull, from a core of one temperature at its start: heat soak, and what a
 * pre-chilled core is worth.
 *
 * The wall is cut into ten by ten cells of a crossflow core, each between the two flows that reach it, so that the answer is right both
 * at the first moment, when the wall is uniform, and at the end, when the core has settled. Steady flows; for a pull whose flows change
 * use {@link soakingCore}. Its formula names the cells `crossflowCells`.
 *
 * @function
 * @returns One temperature, exact for such cells at any time. Ten by ten cells settle within 0.1 K of a real crossflow core.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * const pull = {
 *   hotInlet: temperature(121, '°C'), chargeCapacityRate: heatCapacityRate(202, 'W/K'), chargeTransferUnits: ratio(2),
 *   coolantInlet: temperature(18, '°C'), coolantCapacityRate: heatCapacityRate(500, 'W/K'), coolantTransferUnits: ratio(1),
 *   heatCapacity: heatCapacity(5382, 'J/K'), time: time(5, 's'),
 * };
 * soakedChargeTemperature({ ...pull, startTemperature: temperature(18, '°C') }).in('°C') //=> 40.96
 * soakedChargeTemperature({ ...pull, startTemperature: temperature(-10, '°C') }).in('°C') //=> 25.08
 */
export const soakedChargeTemperature = calculation({
  name: 'charge temperature behind a soaking core',
  task: 'follow an intercooler through a pull',
  inputs: {
    ...SOAK_FLOWS,
    /** Heat capacity of the metal of the core. */
    heatCapacity: input('K', 'heat capacity', CORE_HEAT_CAPACITY),
    /** Temperature of the whole core at the start. */
    startTemperature: input('T0', 'temperature', WALL),
    /** Time since then. */
    time: input('t', 'time', DURATION),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'crossflowCells(T1, Ch, Nh, Tc, Cc, Nc, K, T0, t)',
  si: (T1, Ch, Nh, Tc, Cc, Nc, K, T0, t) => {
    const flow = {
      hotInlet: T1,
      chargeCapacityRate: Ch,
      chargeUnits: Nh,
      coolantInlet: Tc,
      coolantCapacityRate: Cc,
      coolantUnits: Nc,
    };
    const start = new Float64Array(USUAL_CELLS * USUAL_CELLS).fill(T0);
    return outletsOfCells(USUAL_CELLS, advanceCells(USUAL_CELLS, K, start, flow, t).walls, flow).charge;
  },
  rises: ['T1', 'Tc', 'T0'],
  sources: [
    derived('a crossflow core cut into cells, each solved exactly in time'),
    derived('the same cells integrated numerically with scipy'),
  ],
});
