import { calculation, derived, input, output, source } from '../calculation/index.js';
import { COOLANT_CAPACITY_RATE, COOLANT_INLET } from './bounds.js';

const ANYWHERE = { min: 100, max: 1200 } as const;

/**
 * Mean of the temperatures into and out of one side of a core, at which fluid properties are taken.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * meanTemperature({ inlet: temperature(121, '°C'), outlet: temperature(44, '°C') }).in('°C') //=> 82.5
 */
export const meanTemperature = calculation({
  name: 'mean temperature over a core',
  task: 'size an intercooler',
  inputs: {
    /** Temperature into the core. */
    inlet: input('T1', 'temperature', { ...ANYWHERE, typical: 394.15 }),
    /** Temperature out of the core. */
    outlet: input('T2', 'temperature', { ...ANYWHERE, typical: 317.15 }),
  },
  output: output('Tm', 'temperature', '°C'),
  formula: '(T1 + T2) / 2',
  si: (T1, T2) => (T1 + T2) / 2,
  rises: ['T1', 'T2'],
  sources: [derived('arithmetic mean')],
});

/**
 * Temperature of the coolant out of a core, air or liquid, from the heat it takes up.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if it would be below absolute zero, or an input is physically impossible.
 * @example
 * coolantOutlet({
 *   coolantInlet: temperature(18, '°C'), heat: power(15.5, 'kW'), coolantCapacityRate: heatCapacityRate(670, 'W/K'),
 * }).in('°C') //=> 41.13
 */
export const coolantOutlet = calculation({
  name: 'coolant temperature out of a core',
  task: 'size an intercooler',
  inputs: {
    /** Temperature of the coolant into the core. */
    coolantInlet: input('Tc', 'temperature', COOLANT_INLET),
    /** Heat that the core gives to it; below zero where it warms the charge. */
    heat: input('Q', 'power', { min: -1e7, max: 1e7, typical: 15500 }),
    /** Mass flow times specific heat capacity of the coolant. */
    coolantCapacityRate: input('Cc', 'heat capacity rate', COOLANT_CAPACITY_RATE),
  },
  output: output('Tc2', 'temperature', '°C'),
  formula: 'Tc + Q / Cc',
  si: (Tc, Q, Cc) => Tc + Q / Cc,
  rules: [{ need: 'a coolant that stays above absolute zero', holds: (Tc, Q, Cc) => Tc + Q / Cc > 0 }],
  rises: ['Tc', 'Q'],
  sources: [source('kaysLondon', 'chapter 2', 'memory')],
});
