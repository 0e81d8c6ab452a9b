import { assumed, calculation, each, input, output, source } from '../calculation/index.js';
import {
  CHARGE_PRESSURE,
  CHARGE_TEMPERATURE,
  END_GAS_PRESSURE,
  END_GAS_PRESSURE_RATIO,
  END_GAS_TEMPERATURE,
  OCTANE,
} from './bounds.js';
import { KNOCK_CAUTIONS, LAW } from './cautions.js';
import { usualPolytropicExponent } from './end-gas.js';

const DURATION = { min: 0, max: 1, typical: 5e-4 } as const;
const DOUAUD_EYZAT = [
  source('heywood', 'equation 9.45', 'memory'),
  source('douaudEyzat1978', 'as Heywood has it; the paper was not read', 'memory'),
];
const LIVENGOOD_WU = source('livengoodWu1955', 'integral of dt/tau', 'memory');

function delay(ON: number, p: number, T: number): number {
  return LAW.delay * (ON / 100) ** LAW.octane * (p / LAW.atmosphere) ** -LAW.pressure * Math.exp(LAW.activation / T);
}

/**
 * Time that a mixture held at one pressure and temperature takes to ignite by itself, after Douaud and Eyzat.
 *
 * The correlation counts pressure in atmospheres; an absolute pressure in any unit is right here.
 *
 * @function
 * @returns The delay, with the cautions of this topic. Carries a note outside 80 to 100 octane.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * autoignitionDelay({
 *   octaneNumber: octaneNumber(95),
 *   pressure: absolutePressure(40, 'atm'),
 *   temperature: temperature(850, 'K'),
 * }).in('ms') //=> 2.45328
 */
export const autoignitionDelay = calculation({
  name: 'autoignition delay',
  task: 'compare knock margins',
  inputs: {
    /** Octane number of the fuel as the engine finds it: the octane index where it is known. */
    octaneNumber: input('ON', 'octane number', OCTANE),
    /** Pressure of the unburned mixture. */
    pressure: input('p', 'absolute pressure', END_GAS_PRESSURE),
    /** Temperature of the unburned mixture. */
    temperature: input('T', 'temperature', END_GAS_TEMPERATURE),
  },
  output: output('tau', 'time', 'ms'),
  formula: `${LAW.delay} * (ON / 100)^${LAW.octane} * (p / ${LAW.atmosphere})^(-${LAW.pressure}) * exp(${LAW.activation} / T)`,
  si: delay,
  rises: ['ON'],
  falls: ['p', 'T'],
  notes: KNOCK_CAUTIONS,
  sources: DOUAUD_EYZAT,
});

/**
 * How far a mixture that goes through several states has come to igniting by itself, after Livengood and Wu: every stay
 * counts by its share of the delay there, and at 1 it ignites.
 *
 * In an engine the stays run from the closing of the inlet valve; knock is expected where 1 is reached before the flame
 * has burned the end gas.
 *
 * @function
 * @returns The integral, with the cautions of this topic.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or the lists differ in length.
 * @example
 * knockIntegral({
 *   durations: [time(3, 'ms'), time(2, 'ms')],
 *   delays: [time(5.29, 'ms'), time(2.45328, 'ms')],
 * }).in('1') //=> 1.38234
 */
export const knockIntegral = calculation({
  name: 'knock integral',
  task: 'compare knock margins',
  inputs: {
    /** How long the mixture stays in each state. */
    durations: each('dt', 'time', DURATION),
    /** Autoignition delay in each state. */
    delays: each('tau', 'time', { min: 1e-7, max: 1e12, typical: 0.0025 }),
  },
  output: output('I', 'ratio', '1'),
  formula: 'sum(dt ./ tau)',
  si: (...values) => {
    const n = values.length / 2;
    let sum = 0;
    for (let i = 0; i < n; i++) sum += values[i]! / values[n + i]!;
    return sum;
  },
  notes: KNOCK_CAUTIONS,
  sources: [LIVENGOOD_WU],
});

/**
 * The knock integral of the end gas along a cylinder-pressure trace, for a charge state in front of the engine: delays by
 * {@link autoignitionDelay}, temperatures by `unburnedTemperature`.
 *
 * Give both charge states of a comparison the same durations and pressure ratios, at one engine speed and spark timing, and
 * compare the two integrals; one alone says little.
 *
 * @function
 * @returns The integral, with the cautions of this topic. Carries a note outside 80 to 100 octane.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or the lists differ in length.
 * @example
 * endGasKnockIntegral({
 *   octaneNumber: octaneNumber(95),
 *   chargePressure: absolutePressure(204, 'kPa'),
 *   chargeTemperature: temperature(45, '°C'),
 *   durations: [time(0.5, 'ms'), time(0.5, 'ms'), time(0.5, 'ms')],
 *   pressureRatios: [ratio(15), ratio(25), ratio(38)],
 * }).in('1') //=> 0.541747
 */
export const endGasKnockIntegral = calculation({
  name: 'knock integral of the end gas',
  task: 'compare knock margins',
  inputs: {
    /** Octane number of the fuel as the engine finds it: the octane index where it is known. */
    octaneNumber: input('ON', 'octane number', OCTANE),
    /** Pressure of the charge when the inlet valve closes. */
    chargePressure: input('p_0', 'absolute pressure', CHARGE_PRESSURE),
    /** Temperature of the charge when the inlet valve closes. */
    chargeTemperature: input('T_0', 'temperature', CHARGE_TEMPERATURE),
    /** Exponent of the compression of the unburned mixture. */
    polytropicExponent: assumed('k', 'ratio', { min: 1.2, max: 1.42, assume: usualPolytropicExponent }),
    /** How long each part of the trace lasts. */
    durations: each('dt', 'time', DURATION),
    /** Cylinder pressure in each part over that of the charge. */
    pressureRatios: each('r', 'ratio', END_GAS_PRESSURE_RATIO),
  },
  output: output('I', 'ratio', '1'),
  formula:
    `sum(dt ./ (${LAW.delay} * (ON / 100)^${LAW.octane} * (p_0 * r / ${LAW.atmosphere}) .^ (-${LAW.pressure})` +
    ` .* exp(1) .^ (${LAW.activation} / T_0 * r .^ (-(k - 1) / k))))`,
  si: (ON, p0, T0, k, ...trace) => {
    const n = trace.length / 2;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const r = trace[n + i]!;
      sum += trace[i]! / delay(ON, p0 * r, T0 * r ** ((k - 1) / k));
    }
    return sum;
  },
  rises: ['p_0', 'T_0'],
  falls: ['ON'],
  notes: KNOCK_CAUTIONS,
  sources: [...DOUAUD_EYZAT, LIVENGOOD_WU],
});
