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
 * and for boost held to an absolute pressure the part is 1. It takes the boost for dry air;
 * {@link pressureFactorGaugeSpringMoist} counts the vapour that boost holds too and is to be preferred. For charge
 * temperature see {@link boostedCorrectionFactor}.
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

const referenceBarometer = constant('correction/reference-barometer', absolutePressure(100, 'kPa'), {
  label: 'barometer of the reference atmosphere, vapour included',
  source: source('saeJ1349', '99 kPa of dry air with 1 kPa of vapour', 'memory'),
});

/**
 * What the barometer and the humidity of the room do to the dry charge pressure of an engine whose wastegate works on a
 * spring against the room. Boost is humid air as the room is: compressing keeps the share of vapour in it.
 *
 * The better form of {@link pressureFactorGaugeSpring}: at 640 m, 24 °C, 45 % and 95 kPa of boost it is 1.0370 where the
 * dry form says 1.0345 and the pressure term of an unboosted engine 1.070. Water that condenses in the charge cooler is
 * left out.
 *
 * @function
 * @returns Dry charge pressure in the reference atmosphere over that in the room.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or a dry pressure is above its
 * barometer.
 * @example
 * pressureFactorGaugeSpringMoist({
 *   barometer: absolutePressure(93.86908, 'kPa'),
 *   dryPressure: absolutePressure(92.525773, 'kPa'),
 *   boost: gaugePressure(95, 'kPa'),
 * }).in('1') //=> 1.03698
 */
export const pressureFactorGaugeSpringMoist = calculation({
  name: 'pressure factor with humid boost on a spring against the room',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Total pressure of the room's air, at the place, not reduced to sea level. */
    barometer: input('p', 'absolute pressure', { min: 40e3, max: 120e3, typical: 98e3 }),
    /** Pressure of the room's air without its water vapour. */
    dryPressure: input('p_d', 'absolute pressure', { min: 40e3, max: 120e3, typical: 97e3 }),
    /** Boost, above the pressure of the room. */
    boost: input('b', 'gauge pressure', { min: 0, max: 1e6, typical: 110e3 }),
    /** Barometer of the atmosphere to correct to, vapour included. */
    referenceBarometer: assumed('p_0', 'absolute pressure', { min: 40e3, max: 120e3, assume: referenceBarometer }),
    /** Dry pressure of the atmosphere to correct to. */
    referencePressure: assumed('p_ref', 'absolute pressure', { min: 40e3, max: 120e3, assume: referenceDryPressure }),
  },
  output: output('F_p', 'ratio', '1'),
  formula: '(p_0 + b) * (p_ref / p_0) / ((p + b) * (p_d / p))',
  si: (p, pd, b, p0, pRef) => ((p0 + b) * (pRef / p0)) / ((p + b) * (pd / p)),
  rules: [
    { need: 'the dry pressure must not be above the barometer', holds: (p, pd) => pd <= p },
    {
      need: 'the dry reference pressure must not be above its barometer',
      holds: (_p, _pd, _b, p0, pRef) => pRef <= p0,
    },
  ],
  rises: ['p_ref'],
  falls: ['p_d'],
  sources: [
    derived('boost stays at the spring and keeps the share of vapour of the room'),
    commonPractice('wastegate spring boost is compared as boost above the room'),
  ],
});
