import { calculation, derived, input, output, source } from '../calculation/index.js';
import { INLET_TEMPERATURE, NEW_REFERENCE_TEMPERATURE, REFERENCE_TEMPERATURE, WHEEL_SPEED } from './bounds.js';

const SOURCES = [
  source('saeJ1826', 'corrected air flow and speed', 'memory'),
  source('dixonHall', 'dimensional analysis: corrected flow and speed', 'memory'),
];

/**
 * Speed of a compressor as it would be at the reference state of a map: the same blade speed over the speed of sound.
 *
 * @function
 * @returns One rotational speed, to be read on a map of that reference temperature only.
 * @throws CalculationError if the reference temperature is missing, or an input is physically impossible.
 * @example
 * correctedSpeed({
 *   speed: rotationalSpeed(120000, 'rpm'), inletTemperature: temperature(18, '°C'),
 *   referenceTemperature: compressorMapReferences.saeJ1826.referenceTemperature,
 * }).in('rpm') //=> 121434
 */
export const correctedSpeed = calculation({
  name: 'compressor corrected speed',
  task: 'compress the charge',
  inputs: {
    /** Speed of the compressor wheel. */
    speed: input('n', 'rotational speed', WHEEL_SPEED),
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Temperature of the map's reference state. */
    referenceTemperature: input('Tref', 'temperature', REFERENCE_TEMPERATURE),
  },
  output: output('nc', 'rotational speed', 'rpm'),
  formula: 'n / sqrt(T1 / Tref)',
  si: (n, T1, Tref) => n / Math.sqrt(T1 / Tref),
  rises: ['n', 'Tref'],
  falls: ['T1'],
  sources: SOURCES,
});

/**
 * Speed of a compressor at its inlet state, from a corrected speed read on a map.
 *
 * @function
 * @returns One rotational speed.
 * @throws CalculationError if the reference temperature is missing, or an input is physically impossible.
 * @example
 * speedFromCorrectedSpeed({
 *   correctedSpeed: rotationalSpeed(121434, 'rpm'), inletTemperature: temperature(18, '°C'),
 *   referenceTemperature: compressorMapReferences.saeJ1826.referenceTemperature,
 * }).in('rpm') //=> 120000
 */
export const speedFromCorrectedSpeed = calculation({
  name: 'compressor speed from corrected speed',
  task: 'compress the charge',
  inputs: {
    /** Corrected speed as the map shows it. */
    correctedSpeed: input('nc', 'rotational speed', WHEEL_SPEED),
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Temperature of the map's reference state. */
    referenceTemperature: input('Tref', 'temperature', REFERENCE_TEMPERATURE),
  },
  output: output('n', 'rotational speed', 'rpm'),
  formula: 'nc * sqrt(T1 / Tref)',
  si: (nc, T1, Tref) => nc * Math.sqrt(T1 / Tref),
  rises: ['nc', 'T1'],
  falls: ['Tref'],
  sources: SOURCES,
});

/**
 * A corrected speed moved from the reference temperature of one map to that of another.
 *
 * @function
 * @returns One rotational speed, to be read on a map of the new reference temperature only.
 * @throws CalculationError if a reference temperature is missing, or an input is physically impossible.
 * @example
 * correctedSpeedAtReference({
 *   correctedSpeed: rotationalSpeed(121434, 'rpm'),
 *   referenceTemperature: compressorMapReferences.saeJ1826.referenceTemperature,
 *   newReferenceTemperature: compressorMapReferences.aerospace.referenceTemperature,
 * }).in('rpm') //=> 119380
 */
export const correctedSpeedAtReference = calculation({
  name: 'compressor corrected speed at another reference state',
  task: 'compress the charge',
  inputs: {
    /** Corrected speed as the first map shows it. */
    correctedSpeed: input('nc', 'rotational speed', WHEEL_SPEED),
    /** Temperature of the first map's reference state. */
    referenceTemperature: input('Tref', 'temperature', REFERENCE_TEMPERATURE),
    /** Temperature of the reference state wanted. */
    newReferenceTemperature: input('Tnew', 'temperature', NEW_REFERENCE_TEMPERATURE),
  },
  output: output('nnew', 'rotational speed', 'rpm'),
  formula: 'nc * sqrt(Tnew / Tref)',
  si: (nc, Tref, Tnew) => nc * Math.sqrt(Tnew / Tref),
  rises: ['nc', 'Tnew'],
  falls: ['Tref'],
  sources: [...SOURCES, derived('the corrected speed at both reference states, one divided by the other')],
});
