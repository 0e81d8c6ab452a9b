import { calculation, input, output, source } from '../calculation/index.js';

/**
 * Factor from observed to DIN 70020 power: 1013 mbar and 20 °C.
 *
 * Superseded; for comparing with older German figures. It takes the *total* pressure of the barometer, so humidity does
 * not enter: on a hot damp day that hides several per cent.
 *
 * @function
 * @returns The number that observed power or torque is multiplied by.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctionFactorDin70020({
 *   barometer: absolutePressure(980, 'mbar'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.05116
 */
export const correctionFactorDin70020 = calculation({
  name: 'correction factor to DIN 70020',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Total pressure of the room's air, vapour included, at the place, not reduced to sea level. */
    barometer: input('p', 'absolute pressure', { min: 40e3, max: 120e3, typical: 98e3 }),
    /** Temperature of the air that enters the engine's air inlet. */
    inletTemperature: input('T', 'temperature', { min: 220, max: 350, typical: 297.15 }),
  },
  output: output('K', 'ratio', '1'),
  formula: '101300 / p * sqrt(T / 293.15)',
  si: (p, T) => (101300 / p) * Math.sqrt(T / 293.15),
  rises: ['T'],
  falls: ['p'],
  sources: [source('din70020', 'as quoted in public with 1013 mbar and 293 K; the text itself was not read', 'memory')],
});
