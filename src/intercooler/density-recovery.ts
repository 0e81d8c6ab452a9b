import { calculation, input, output, source } from '../calculation/index.js';
import { HOT_INLET, HOT_OUTLET, INLET_PRESSURE, OUTLET_PRESSURE } from './bounds.js';

/**
 * Density recovery of a charge cooler: charge density out of it over charge density into it.
 *
 * It holds what the cooling gave and what the pressure loss took, so it tells whether a core is worth its loss. At constant boost in
 * the manifold the loss costs compressor work and not density.
 *
 * @function
 * @returns One ratio; above 1 where the cooling outweighs the loss. Carries a note where the pressure rises through the core.
 * @throws CalculationError if a pressure is not absolute, or an input is physically impossible.
 * @example
 * densityRecovery({
 *   inletPressure: absolutePressure(204.1, 'kPa'), outletPressure: absolutePressure(197.1, 'kPa'),
 *   hotInlet: temperature(121, '°C'), hotOutlet: temperature(44, '°C'),
 * }).in('1') //=> 1.200
 */
export const densityRecovery = calculation({
  name: 'density recovery',
  task: 'rate an intercooler',
  inputs: {
    /** Absolute pressure into the core. */
    inletPressure: input('p1', 'absolute pressure', INLET_PRESSURE),
    /** Absolute pressure out of the core. */
    outletPressure: input('p2', 'absolute pressure', OUTLET_PRESSURE),
    /** Charge temperature into the core. */
    hotInlet: input('T1', 'temperature', HOT_INLET),
    /** Charge temperature out of the core. */
    hotOutlet: input('T2', 'temperature', HOT_OUTLET),
  },
  output: output('D', 'ratio', '1'),
  formula: '(p2 / p1) * (T1 / T2)',
  si: (p1, p2, T1, T2) => (p2 / p1) * (T1 / T2),
  rules: [
    {
      need: 'a pressure that does not rise through the core (else the readings are not consistent)',
      holds: (p1, p2) => p2 <= p1,
      otherwise: 'note',
    },
  ],
  rises: ['p2', 'T1'],
  falls: ['p1', 'T2'],
  sources: [source('dixonHall', 'ideal gas law', 'memory')],
});
