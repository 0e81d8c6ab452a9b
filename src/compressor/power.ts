import { specificHeatCapacityOfAir } from '../air/constants.js';
import { assumed, calculation, input, output, source } from '../calculation/index.js';
import { INLET_TEMPERATURE, MASS_FLOW, OUTLET_TEMPERATURE } from './bounds.js';

const SOURCES = [
  source('dixonHall', 'steady-flow energy equation', 'memory'),
  source('heywood', 'section 6.8', 'memory'),
];

/**
 * Work that a compressor puts into each kilogram of air, from the temperatures across it.
 *
 * Heat from the turbine housing counts as work. Feed it to {@link compressorPower}.
 *
 * @function
 * @returns One specific energy.
 * @throws CalculationError if the air leaves colder than it came, or an input is physically impossible.
 * @example
 * specificWork({ inletTemperature: temperature(18, '°C'), outletTemperature: temperature(121, '°C') }).in('kJ/kg') //=> 103.5
 */
export const specificWork = calculation({
  name: 'compressor specific work',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Total temperature at the compressor outlet, before any cooler. */
    outletTemperature: input('T2', 'temperature', OUTLET_TEMPERATURE),
    /** Specific heat capacity of the air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', {
      min: 900,
      max: 1300,
      assume: specificHeatCapacityOfAir,
    }),
  },
  output: output('w', 'specific energy', 'kJ/kg'),
  formula: 'cp * (T2 - T1)',
  si: (T1, T2, cp) => cp * (T2 - T1),
  rules: [{ need: 'outletTemperature must not be below inletTemperature', holds: (T1, T2) => T2 >= T1 }],
  rises: ['T2', 'cp'],
  falls: ['T1'],
  sources: SOURCES,
});

/**
 * Power that a compressor puts into the air.
 *
 * @function
 * @returns One power; what the shaft needs is more by the bearing or drive loss, see {@link shaftPower}.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * const work = specificWork({ inletTemperature: temperature(18, '°C'), outletTemperature: temperature(121, '°C') });
 * compressorPower({ massFlow: massFlow(200, 'g/s'), specificWork: work }).in('kW') //=> 20.70
 */
export const compressorPower = calculation({
  name: 'compressor power',
  task: 'compress the charge',
  inputs: {
    /** Mass flow of air through the compressor. */
    massFlow: input('m', 'mass flow', MASS_FLOW),
    /** Work put into each kilogram of it. */
    specificWork: input('w', 'specific energy', { min: 0, max: 1e6, typical: 103500 }),
  },
  output: output('P', 'power', 'kW'),
  formula: 'm * w',
  si: (m, w) => m * w,
  rises: ['m', 'w'],
  sources: SOURCES,
});

/**
 * Power that the shaft or belt must bring to a compressor.
 *
 * @function
 * @returns One power.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * shaftPower({ compressorPower: power(20.7, 'kW'), mechanicalEfficiency: percent(95) }).in('kW') //=> 21.79
 */
export const shaftPower = calculation({
  name: 'compressor shaft power',
  task: 'compress the charge',
  inputs: {
    /** Power put into the air. */
    compressorPower: input('P', 'power', { min: 0, max: 5e6, typical: 20700 }),
    /** Power put into the air over power at the shaft: bearings, gears, belt. */
    mechanicalEfficiency: input('etam', 'ratio', { min: 0.3, max: 1, typical: 0.95 }),
  },
  output: output('Ps', 'power', 'kW'),
  formula: 'P / etam',
  si: (P, etam) => P / etam,
  rises: ['P'],
  falls: ['etam'],
  sources: SOURCES,
});
