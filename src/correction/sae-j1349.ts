import { assumed, calculation, constant, input, output, source } from '../calculation/index.js';
import { ratio } from '../units/index.js';

/**
 * The share of indicated power that SAE J1349 takes as leaving the crankshaft when friction was not measured.
 *
 * A convention of the standard, so it carries no uncertainty; the engine's own value may differ by several points.
 */
export const mechanicalEfficiencyOfSaeJ1349 = constant('correction/mechanical-efficiency-of-sae-j1349', ratio(0.85), {
  label: 'mechanical efficiency taken by SAE J1349',
  source: source('saeJ1349', 'default where friction power is unknown', 'memory'),
});

/**
 * Factor from observed to SAE J1349 power: the indicated power is corrected to 99 kPa of dry air and 25 °C, the
 * friction power is not.
 *
 * The form of the 2004 and 2011 revisions for spark ignition. Use {@link correctionFactorSaeJ1349MeasuredFriction}
 * where the friction power is known. With a mechanical efficiency of 1 it is the plain atmospheric factor. It is made
 * for engines whose charge follows the room; see {@link correctionFactor} for boosted ones.
 *
 * @function
 * @returns The number that observed power or torque is multiplied by. Carries a note outside 95 to 101 kPa of dry
 * pressure or 15 to 35 °C.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctionFactorSaeJ1349({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.04846
 */
export const correctionFactorSaeJ1349 = calculation({
  name: 'correction factor to SAE J1349 (2004)',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Pressure of the room's air without its water vapour, at the place, not reduced to sea level. */
    dryPressure: input('p_d', 'absolute pressure', { min: 40e3, max: 120e3, trusted: [95e3, 101e3], typical: 98e3 }),
    /** Temperature of the air that enters the engine's air inlet. */
    inletTemperature: input('T', 'temperature', { min: 220, max: 350, trusted: [288.15, 308.15], typical: 297.15 }),
    /** Brake over indicated power. */
    mechanicalEfficiency: assumed('eta_m', 'ratio', { min: 0.4, max: 1, assume: mechanicalEfficiencyOfSaeJ1349 }),
  },
  output: output('CF', 'ratio', '1'),
  formula: '99000 / p_d * sqrt(T / 298.15) / eta_m - (1 / eta_m - 1)',
  si: (pd, T, etaM) => ((99e3 / pd) * Math.sqrt(T / 298.15)) / etaM - (1 / etaM - 1),
  rises: ['T'],
  falls: ['p_d'],
  sources: [source('saeJ1349', 'AUG2004 and SEP2011, spark ignition; the text itself was not read', 'memory')],
});

/**
 * Factor from observed to SAE J1349 power where the friction power was measured, so that no mechanical efficiency is
 * taken.
 *
 * It is {@link correctionFactorSaeJ1349} with the mechanical efficiency that the two powers give.
 *
 * @function
 * @returns The number that the observed power is multiplied by. Carries a note outside 95 to 101 kPa of dry pressure or
 * 15 to 35 °C.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctionFactorSaeJ1349MeasuredFriction({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 *   observedPower: power(170, 'kW'),
 *   frictionPower: power(30, 'kW'),
 * }).in('1') //=> 1.04846
 */
export const correctionFactorSaeJ1349MeasuredFriction = calculation({
  name: 'correction factor to SAE J1349 (2004) with measured friction',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Pressure of the room's air without its water vapour, at the place, not reduced to sea level. */
    dryPressure: input('p_d', 'absolute pressure', { min: 40e3, max: 120e3, trusted: [95e3, 101e3], typical: 98e3 }),
    /** Temperature of the air that enters the engine's air inlet. */
    inletTemperature: input('T', 'temperature', { min: 220, max: 350, trusted: [288.15, 308.15], typical: 297.15 }),
    /** Brake power as measured. */
    observedPower: input('P_b', 'power', { min: 1, max: 1e8, typical: 170e3 }),
    /** Power lost to friction at that speed, measured by motoring or another means. */
    frictionPower: input('P_f', 'power', { min: 0, max: 1e8, typical: 25e3 }),
  },
  output: output('CF', 'ratio', '1'),
  formula: '(99000 / p_d * sqrt(T / 298.15) * (P_b + P_f) - P_f) / P_b',
  si: (pd, T, Pb, Pf) => ((99e3 / pd) * Math.sqrt(T / 298.15) * (Pb + Pf) - Pf) / Pb,
  rules: [
    {
      need: 'friction power below one and a half times the observed power',
      holds: (_pd, _T, Pb, Pf) => Pf <= 1.5 * Pb,
    },
  ],
  rises: ['T'],
  falls: ['p_d'],
  sources: [source('saeJ1349', 'AUG2004 and SEP2011, spark ignition; the text itself was not read', 'memory')],
});

/**
 * Factor from observed to SAE J1349 power in the abbreviated form of the 1990 revision, with the rounded 1.18 for
 * 1/0.85.
 *
 * Many dynamometers still print this one. It differs from {@link correctionFactorSaeJ1349} by under 0.02 % in ordinary
 * rooms.
 *
 * @function
 * @returns The number that observed power or torque is multiplied by. Carries a note outside 95 to 101 kPa of dry
 * pressure or 15 to 35 °C.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctionFactorSaeJ1349Abbreviated({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.04861
 */
export const correctionFactorSaeJ1349Abbreviated = calculation({
  name: 'correction factor to SAE J1349 (1990), abbreviated',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Pressure of the room's air without its water vapour, at the place, not reduced to sea level. */
    dryPressure: input('p_d', 'absolute pressure', { min: 40e3, max: 120e3, trusted: [95e3, 101e3], typical: 98e3 }),
    /** Temperature of the air that enters the engine's air inlet. */
    inletTemperature: input('T', 'temperature', { min: 220, max: 350, trusted: [288.15, 308.15], typical: 297.15 }),
  },
  output: output('CF', 'ratio', '1'),
  formula: '1.18 * (99000 / p_d * sqrt(T / 298.15)) - 0.18',
  si: (pd, T) => 1.18 * ((99e3 / pd) * Math.sqrt(T / 298.15)) - 0.18,
  rises: ['T'],
  falls: ['p_d'],
  sources: [
    source(
      'saeJ1349',
      'JUN1990, abbreviated form as quoted in public with 990 mbar; the text itself was not read',
      'memory',
    ),
  ],
});
