import { calculation, input, output, source } from '../calculation/index.js';

/**
 * Factor from observed to SAE J607 power, which US dynamometers print as "STD" or "STP": 29.92 inHg of dry air and 60
 * °F.
 *
 * Withdrawn and written for small unboosted engines, but still common. It reads 4 % above SAE J1349's atmospheric
 * factor in every room, so a gain from one to the other is no gain. The SI references are taken (101.325 kPa, 288.71
 * K); a program with the printed 29.92, 460 and 520 reads 0.006 % less.
 *
 * This is the plain form, the whole of the power corrected. Some programs put the friction form of SAE J1349 (a
 * mechanical efficiency of 0.85, 1.18 and 0.18) on the same reference and print that as "STD" too: 1.097794 in the room
 * of the example where the plain form gives 1.082938. Ask which it is before two figures are compared.
 *
 * @function
 * @returns The number that observed power or torque is multiplied by.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctionFactorSaeJ607({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.08294
 */
export const correctionFactorSaeJ607 = calculation({
  name: 'correction factor to SAE J607',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Pressure of the room's air without its water vapour, at the place, not reduced to sea level. */
    dryPressure: input('p_d', 'absolute pressure', { min: 40e3, max: 120e3, typical: 98e3 }),
    /** Temperature of the air that enters the engine's air inlet. */
    inletTemperature: input('T', 'temperature', { min: 220, max: 350, typical: 297.15 }),
  },
  output: output('CF', 'ratio', '1'),
  formula: '101325 / p_d * sqrt(1.8 * T / 519.67)',
  si: (pd, T) => (101325 / pd) * Math.sqrt((1.8 * T) / 519.67),
  rises: ['T'],
  falls: ['p_d'],
  sources: [
    source('saeJ607', 'reference 29.92 inHg dry and 60 °F as quoted in public; the text itself was not read', 'memory'),
  ],
});

/**
 * Factor from observed to SAE J816 power, the gross rating of US engines until the early 1970s: 29.00 inHg of dry air
 * and 85 °F.
 *
 * For reading old figures only; nothing new is rated to it.
 *
 * @function
 * @returns The number that observed power or torque is multiplied by.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctionFactorSaeJ816({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.02522
 */
export const correctionFactorSaeJ816 = calculation({
  name: 'correction factor to SAE J816',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Pressure of the room's air without its water vapour, at the place, not reduced to sea level. */
    dryPressure: input('p_d', 'absolute pressure', { min: 40e3, max: 120e3, typical: 98e3 }),
    /** Temperature of the air that enters the engine's air inlet. */
    inletTemperature: input('T', 'temperature', { min: 220, max: 350, typical: 297.15 }),
  },
  output: output('CF', 'ratio', '1'),
  formula: '98205.270569889 / p_d * sqrt(1.8 * T / 544.67)',
  si: (pd, T) => (98205.270569889 / pd) * Math.sqrt((1.8 * T) / 544.67),
  rises: ['T'],
  falls: ['p_d'],
  sources: [source('saeJ816', 'reference 29.38 inHg with 0.38 inHg of vapour, 85 °F', 'memory')],
});
