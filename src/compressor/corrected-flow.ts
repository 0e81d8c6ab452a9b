import { calculation, derived, input, output, source } from '../calculation/index.js';
import {
  CORRECTED_FLOW,
  INLET_PRESSURE,
  INLET_TEMPERATURE,
  MASS_FLOW,
  NEW_REFERENCE_PRESSURE,
  NEW_REFERENCE_TEMPERATURE,
  REFERENCE_PRESSURE,
  REFERENCE_TEMPERATURE,
} from './bounds.js';

const SOURCES = [
  source('saeJ1826', 'corrected air flow and speed', 'memory'),
  source('dixonHall', 'dimensional analysis: corrected flow and speed', 'memory'),
];

/**
 * Mass flow through a compressor as it would be at the reference state of a map.
 *
 * A map shows corrected flow, and each maker has a reference state of its own, so none is assumed here: take one of
 * {@link compressorMapReferences} or the one written on the map.
 *
 * @function
 * @returns One mass flow, to be read on a map of that reference state only.
 * @throws CalculationError if the reference state is missing, or an input is physically impossible.
 * @example
 * correctedFlow({
 *   massFlow: massFlow(200, 'g/s'), inletTemperature: temperature(18, '°C'), inletPressure: absolutePressure(941, 'hPa'),
 *   ...compressorMapReferences.saeJ1826,
 * }).in('g/s') //=> 210.0
 */
export const correctedFlow = calculation({
  name: 'compressor corrected flow',
  task: 'compress the charge',
  inputs: {
    /** Mass flow through the compressor. */
    massFlow: input('m', 'mass flow', MASS_FLOW),
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Total absolute pressure at the compressor inlet. */
    inletPressure: input('p1', 'absolute pressure', INLET_PRESSURE),
    /** Temperature of the map's reference state. */
    referenceTemperature: input('Tref', 'temperature', REFERENCE_TEMPERATURE),
    /** Absolute pressure of the map's reference state. */
    referencePressure: input('pref', 'absolute pressure', REFERENCE_PRESSURE),
  },
  output: output('mc', 'mass flow', 'kg/s'),
  formula: 'm * sqrt(T1 / Tref) / (p1 / pref)',
  si: (m, T1, p1, Tref, pref) => (m * Math.sqrt(T1 / Tref) * pref) / p1,
  rises: ['m', 'T1', 'pref'],
  falls: ['p1', 'Tref'],
  sources: SOURCES,
});

/**
 * Mass flow through a compressor at its inlet state, from a corrected flow read on a map.
 *
 * @function
 * @returns One mass flow.
 * @throws CalculationError if the reference state is missing, or an input is physically impossible.
 * @example
 * massFlowFromCorrectedFlow({
 *   correctedFlow: massFlow(210, 'g/s'), inletTemperature: temperature(18, '°C'), inletPressure: absolutePressure(941, 'hPa'),
 *   ...compressorMapReferences.saeJ1826,
 * }).in('g/s') //=> 200.0
 */
export const massFlowFromCorrectedFlow = calculation({
  name: 'compressor mass flow from corrected flow',
  task: 'compress the charge',
  inputs: {
    /** Corrected flow as the map shows it. */
    correctedFlow: input('mc', 'mass flow', CORRECTED_FLOW),
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Total absolute pressure at the compressor inlet. */
    inletPressure: input('p1', 'absolute pressure', INLET_PRESSURE),
    /** Temperature of the map's reference state. */
    referenceTemperature: input('Tref', 'temperature', REFERENCE_TEMPERATURE),
    /** Absolute pressure of the map's reference state. */
    referencePressure: input('pref', 'absolute pressure', REFERENCE_PRESSURE),
  },
  output: output('m', 'mass flow', 'kg/s'),
  formula: 'mc * (p1 / pref) / sqrt(T1 / Tref)',
  si: (mc, T1, p1, Tref, pref) => (mc * p1) / (pref * Math.sqrt(T1 / Tref)),
  rises: ['mc', 'p1', 'Tref'],
  falls: ['T1', 'pref'],
  sources: SOURCES,
});

/**
 * A corrected flow moved from the reference state of one map to that of another, so that two maps can be laid over each other.
 *
 * @function
 * @returns One mass flow, to be read on a map of the new reference state only.
 * @throws CalculationError if a reference state is missing, or an input is physically impossible.
 * @example
 * const { aerospace, saeJ1826 } = compressorMapReferences;
 * correctedFlowAtReference({
 *   correctedFlow: massFlow(210, 'g/s'), ...aerospace,
 *   newReferenceTemperature: saeJ1826.referenceTemperature, newReferencePressure: saeJ1826.referencePressure,
 * }).in('g/s') //=> 203.7
 */
export const correctedFlowAtReference = calculation({
  name: 'compressor corrected flow at another reference state',
  task: 'compress the charge',
  inputs: {
    /** Corrected flow as the first map shows it. */
    correctedFlow: input('mc', 'mass flow', CORRECTED_FLOW),
    /** Temperature of the first map's reference state. */
    referenceTemperature: input('Tref', 'temperature', REFERENCE_TEMPERATURE),
    /** Absolute pressure of the first map's reference state. */
    referencePressure: input('pref', 'absolute pressure', REFERENCE_PRESSURE),
    /** Temperature of the reference state wanted. */
    newReferenceTemperature: input('Tnew', 'temperature', NEW_REFERENCE_TEMPERATURE),
    /** Absolute pressure of the reference state wanted. */
    newReferencePressure: input('pnew', 'absolute pressure', NEW_REFERENCE_PRESSURE),
  },
  output: output('mnew', 'mass flow', 'kg/s'),
  formula: 'mc * (pnew / pref) * sqrt(Tref / Tnew)',
  si: (mc, Tref, pref, Tnew, pnew) => (mc * pnew * Math.sqrt(Tref / Tnew)) / pref,
  rises: ['mc', 'Tref', 'pnew'],
  falls: ['pref', 'Tnew'],
  sources: [...SOURCES, derived('the corrected flow at both reference states, one divided by the other')],
});
