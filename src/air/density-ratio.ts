import { calculation, input, output, source } from '../calculation/index.js';

const TEMPERATURE = { min: -100 + 273.15, max: 400 + 273.15 };
const PRESSURE = { min: 2e4, max: 1e6 };

/**
 * Density of air at one place over that at another, from temperatures and absolute pressures: ambient to manifold, or across a core.
 *
 * What compressing and cooling together did for the charge; the pressure ratio alone overstates it by the ratio of temperatures.
 * Humidity drops out as long as no water condenses.
 *
 * @function
 * @returns A ratio, above 1 where the outlet air is denser.
 * @throws CalculationError if an input is impossible, such as a gauge pressure.
 * @example
 * densityRatio({
 *   inletTemperature: temperature(18, '°C'),
 *   inletPressure: absolutePressure(941, 'hPa'),
 *   outletTemperature: temperature(45, '°C'),
 *   outletPressure: absolutePressure(2.041, 'bar'),
 * }).in('1') //=> 1.9849
 */
export const densityRatio = calculation({
  name: 'density ratio',
  task: 'describe the air',
  inputs: {
    /** Temperature before. */
    inletTemperature: input('T1', 'temperature', { ...TEMPERATURE, typical: 291.15 }),
    /** Absolute pressure before. */
    inletPressure: input('p1', 'absolute pressure', { ...PRESSURE, typical: 94100 }),
    /** Temperature after. */
    outletTemperature: input('T2', 'temperature', { ...TEMPERATURE, typical: 318.15 }),
    /** Absolute pressure after. */
    outletPressure: input('p2', 'absolute pressure', { ...PRESSURE, typical: 204000 }),
  },
  output: output('DR', 'ratio', '1'),
  formula: 'p2 / p1 * (T1 / T2)',
  si: (T1, p1, T2, p2) => (p2 / p1) * (T1 / T2),
  rises: ['T1', 'p2'],
  falls: ['p1', 'T2'],
  sources: [source('dixonHall', 'perfect gas', 'memory')],
});
