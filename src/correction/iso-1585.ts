import { calculation, input, output, source } from '../calculation/index.js';

/**
 * Factor from observed to ISO 1585 net power for spark ignition, also that of 80/1269/EEC and UN Regulation 85: 99 kPa
 * of dry air and 25 °C.
 *
 * Friction needs no term of its own: the exponents 1.2 and 0.6 already stand for brake power. The reference is 298.15
 * K, so that 25 °C gives exactly 1; with the printed 298 K the factor is 0.03 % larger. An engine that makes up for the
 * room by itself must not be corrected a second time; see {@link correctionFactor}.
 *
 * @function
 * @returns The number that observed power or torque is multiplied by. Carries a note outside 80 to 110 kPa, 15 to 35
 * °C, or where the factor leaves 0.93 to 1.07: the standard wants the conditions stated then.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctionFactorIso1585({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.04964
 */
export const correctionFactorIso1585 = calculation({
  name: 'correction factor to ISO 1585, spark ignition',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Pressure of the room's air without its water vapour, at the place, not reduced to sea level. */
    dryPressure: input('p_d', 'absolute pressure', { min: 40e3, max: 120e3, trusted: [80e3, 110e3], typical: 98e3 }),
    /** Temperature of the air that enters the engine's air inlet. */
    inletTemperature: input('T', 'temperature', { min: 220, max: 350, trusted: [288, 308.15], typical: 297.15 }),
  },
  output: output('alpha_a', 'ratio', '1'),
  formula: '(99000 / p_d)^1.2 * (T / 298.15)^0.6',
  si: sparkIgnitionFactor,
  rules: [
    {
      need: 'a factor between 0.93 and 1.07, the limit of the standard',
      holds: (pd, T) => {
        const factor = sparkIgnitionFactor(pd, T);
        return factor >= 0.93 && factor <= 1.07;
      },
      otherwise: 'note',
    },
  ],
  rises: ['T'],
  falls: ['p_d'],
  sources: [
    source(
      'iso1585',
      'spark ignition; exponents as quoted in public, limits from memory; the text itself was not read',
      'memory',
    ),
  ],
});

function sparkIgnitionFactor(pd: number, T: number): number {
  return (99e3 / pd) ** 1.2 * (T / 298.15) ** 0.6;
}
