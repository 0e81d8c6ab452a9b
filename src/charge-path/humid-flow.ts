import { calculation, derived, input, output } from '../calculation/index.js';
import { DRY_FLOW, HUMIDITY_RATIO } from './bounds.js';

const SOURCES = [derived('definition of the humidity ratio')];

/**
 * Mass flow of humid air, from that of the dry air in it.
 *
 * Engines are counted in dry air, which carries the oxygen; compressors and cores pass the vapour too.
 *
 * @function
 * @returns One mass flow, vapour included.
 * @throws CalculationError if an input is impossible.
 * @example
 * humidAirFlow({ dryAirFlow: massFlow(163.9, 'g/s'), humidityRatio: humidityRatio(9, 'g/kg') }).in('g/s') //=> 165.375
 */
export const humidAirFlow = calculation({
  name: 'mass flow of humid air',
  task: 'follow the charge',
  inputs: {
    /** Mass flow of the dry air alone. */
    dryAirFlow: input('m_a', 'mass flow', DRY_FLOW),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('m', 'mass flow', 'g/s'),
  formula: 'm_a * (1 + W)',
  si: (ma, W) => ma * (1 + W),
  rises: ['m_a', 'W'],
  sources: SOURCES,
});

/**
 * Mass flow of the dry air in humid air: what an air meter's reading is worth to an engine.
 *
 * @function
 * @returns One mass flow, vapour left out.
 * @throws CalculationError if an input is impossible.
 * @example
 * dryAirFlow({ humidAirFlow: massFlow(165.375, 'g/s'), humidityRatio: humidityRatio(9, 'g/kg') }).in('g/s') //=> 163.9
 */
export const dryAirFlow = calculation({
  name: 'mass flow of dry air',
  task: 'follow the charge',
  inputs: {
    /** Mass flow of the humid air. */
    humidAirFlow: input('m', 'mass flow', DRY_FLOW),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('m_a', 'mass flow', 'g/s'),
  formula: 'm / (1 + W)',
  si: (m, W) => m / (1 + W),
  rises: ['m'],
  falls: ['W'],
  sources: SOURCES,
});
