import {
  assumed,
  calculation,
  commonPractice,
  constant,
  derived,
  input,
  output,
  source,
} from '../calculation/index.js';
import { absolutePressure } from '../units/index.js';

/** The dry pressure that SAE J1349, ISO 1585 and UN R85 correct to. */
export const referenceDryPressure = constant('correction/reference-dry-pressure', absolutePressure(99, 'kPa'), {
  label: 'dry pressure of the reference atmosphere',
  source: source('saeJ1349', 'reference atmosphere, 99 kPa of dry air', 'memory'),
});

/**
 * What the barometer does to the charge pressure of an engine whose wastegate works on a spring against the room: boost
 * stays, so the absolute pressure moves by the room's few kilopascal out of a much larger sum.
 *
 * The pressure part of a correction for such an engine. The full pressure term of a standard, 99/p_d, overstates it,
 * and for boost held to an absolute pressure the part is 1. For charge temperature use
 * `powerRatioFromChargeTemperature` of the engine topic, not the room's temperature.
 *
 * @function
 * @returns Charge pressure in the reference atmosphere over charge pressure in the room.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * pressureFactorGaugeSpring({
 *   dryPressure: absolutePressure(95, 'kPa'),
 *   boost: gaugePressure(1, 'bar'),
 * }).in('1') //=> 1.02051
 */
export const pressureFactorGaugeSpring = calculation({
  name: 'pressure factor with boost on a spring against the room',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Pressure of the room's air without its water vapour, at the place, not reduced to sea level. */
    dryPressure: input('p_d', 'absolute pressure', { min: 40e3, max: 120e3, typical: 98e3 }),
    /** Boost, above the pressure of the room. */
    boost: input('b', 'gauge pressure', { min: 0, max: 1e6, typical: 110e3 }),
    /** Dry pressure of the atmosphere to correct to. */
    referencePressure: assumed('p_ref', 'absolute pressure', { min: 40e3, max: 120e3, assume: referenceDryPressure }),
  },
  output: output('F_p', 'ratio', '1'),
  formula: '(p_ref + b) / (p_d + b)',
  si: (pd, b, pRef) => (pRef + b) / (pd + b),
  rises: ['p_ref'],
  falls: ['p_d'],
  sources: [
    derived('boost stays at the spring, the room moves underneath'),
    commonPractice('wastegate spring boost is compared as boost above the room'),
  ],
});
