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
import { octaneNumber, ratio, temperature } from '../units/index.js';
import { CHARGE_PRESSURE, CHARGE_TEMPERATURE, END_GAS_PRESSURE_RATIO, OCTANE } from './bounds.js';
import { KNOCK_CAUTIONS, LAW } from './cautions.js';
import { usualPolytropicExponent } from './end-gas.js';

const NO_SCATTER_READ = 'its scatter was not read and is taken wide here';

/** Exponent of octane number in the autoignition delay. */
export const octaneExponentOfDelay = constant('knock/octane-exponent', ratio(LAW.octane), {
  label: 'exponent of octane number',
  source: source('heywood', `equation 9.45; ${NO_SCATTER_READ}`, 'memory'),
  halfWidth: 0.35,
});

/** Exponent of pressure in the autoignition delay. */
export const pressureExponentOfDelay = constant('knock/pressure-exponent', ratio(LAW.pressure), {
  label: 'exponent of pressure',
  source: source('heywood', `equation 9.45; ${NO_SCATTER_READ}`, 'memory'),
  halfWidth: 0.2,
});

/** Temperature in the exponential of the autoignition delay: the largest error of the correlation. */
export const activationTemperatureOfDelay = constant('knock/activation-temperature', temperature(LAW.activation, 'K'), {
  label: 'activation temperature of autoignition',
  source: source('heywood', `equation 9.45; ${NO_SCATTER_READ}`, 'memory'),
  halfWidth: 2000,
});

/** Cylinder pressure over charge pressure where the end gas is about to ignite, to stand for the whole of its history. */
export const usualEndGasPressureRatio = constant('knock/end-gas-pressure-ratio', ratio(40), {
  label: 'pressure ratio of the end gas',
  source: commonPractice('peak pressure near 40 times that at inlet-valve closing; 25 to 55'),
  halfWidth: 15,
});

const before = { pressure: { ...CHARGE_PRESSURE }, temperature: { ...CHARGE_TEMPERATURE, typical: 333.15 } } as const;
const STATES = {
  /** Pressure of the charge before the change. */
  pressureBefore: input('p_1', 'absolute pressure', before.pressure),
  /** Temperature of the charge before the change. */
  temperatureBefore: input('T_1', 'temperature', before.temperature),
  /** Pressure of the charge after the change. */
  pressureAfter: input('p_2', 'absolute pressure', CHARGE_PRESSURE),
  /** Temperature of the charge after the change. */
  temperatureAfter: input('T_2', 'temperature', CHARGE_TEMPERATURE),
} as const;
const END_GAS = {
  /** Cylinder pressure over charge pressure where the end gas is about to ignite, the same before and after. */
  endGasPressureRatio: assumed('r', 'ratio', { ...END_GAS_PRESSURE_RATIO, assume: usualEndGasPressureRatio }),
  /** Exponent of the compression of the unburned mixture. */
  polytropicExponent: assumed('k', 'ratio', { min: 1.2, max: 1.42, assume: usualPolytropicExponent }),
  /** Exponent of pressure in the autoignition delay. */
  pressureExponent: assumed('b', 'ratio', { min: 0.5, max: 3, assume: pressureExponentOfDelay }),
  /** Temperature in the exponential of the autoignition delay. */
  activationTemperature: assumed('B', 'temperature', { min: 500, max: 20000, assume: activationTemperatureOfDelay }),
} as const;

const SOURCES = [
  source('heywood', 'equation 9.45, Douaud and Eyzat 1978', 'memory'),
  derived('ratio of two delays in end gas compressed from two charge states, everything else equal'),
];

function logOfRatio(
  ...[p1, T1, p2, T2, r, k, b, B]: readonly [number, number, number, number, number, number, number, number]
): number {
  return b * Math.log(p2 / p1) + ((B * r ** (-(k - 1) / k)) / T1) * ((T2 - T1) / T2);
}

/**
 * How much nearer to knock one charge state brings the end gas than another, at one engine speed and spark timing: the
 * ratio of their knock integrals.
 *
 * Below 1 the changed charge keeps further away. It is the rawest of the three ways to say it; `octaneRequirementChange`
 * and `chargeTemperatureMargin` say the same in octane numbers and in kelvin.
 *
 * @function
 * @returns Knock integral after over before, with the cautions of this topic.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * knockIntegralRatio({
 *   pressureBefore: absolutePressure(204, 'kPa'),
 *   temperatureBefore: temperature(60, '°C'),
 *   pressureAfter: absolutePressure(204, 'kPa'),
 *   temperatureAfter: temperature(45, '°C'),
 * }).in('1') //=> 0.804453
 */
export const knockIntegralRatio = calculation({
  name: 'ratio of knock integrals',
  task: 'compare knock margins',
  inputs: { ...STATES, ...END_GAS },
  output: output('I_r', 'ratio', '1'),
  formula: '(p_2 / p_1)^b * exp(B * r^(-(k - 1) / k) * (1 / T_1 - 1 / T_2))',
  si: (p1, T1, p2, T2, r, k, b, B) => Math.exp(logOfRatio(p1, T1, p2, T2, r, k, b, B)),
  rises: ['p_2', 'T_2'],
  falls: ['p_1', 'T_1'],
  notes: KNOCK_CAUTIONS,
  sources: SOURCES,
});

/**
 * What a change of charge state does to the octane number that an engine asks for, at one engine speed and spark timing.
 *
 * Below zero it asks for less: as if the fuel had become better by that much. What else the change moved, such as mixture
 * or residual gas, is left out. Take the size of the figure as the upper end: engines near their knock limit bear about a
 * degree of spark per 6 to 10 K of charge temperature (common practice, no source), which is less than it says.
 *
 * @function
 * @returns Octane requirement after minus before, with the cautions of this topic. Carries a note outside 80 to 100
 * octane. Its `uncertainty` is wide, as the correlation is.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * octaneRequirementChange({
 *   octaneNumber: octaneNumber(95),
 *   pressureBefore: absolutePressure(204, 'kPa'),
 *   temperatureBefore: temperature(60, '°C'),
 *   pressureAfter: absolutePressure(204, 'kPa'),
 *   temperatureAfter: temperature(45, '°C'),
 * }).in('1') //=> -5.88599
 */
export const octaneRequirementChange = calculation({
  name: 'change of octane requirement',
  task: 'compare knock margins',
  inputs: {
    /** Octane number of the fuel before and after. */
    octaneNumber: input('ON', 'octane number', OCTANE),
    ...STATES,
    ...END_GAS,
    /** Exponent of octane number in the autoignition delay. */
    octaneExponent: assumed('a', 'ratio', { min: 1, max: 8, assume: octaneExponentOfDelay }),
  },
  output: output('dON', 'octane number', '1'),
  formula: 'ON * expm1((b * log(p_2 / p_1) + B * r^(-(k - 1) / k) * (1 / T_1 - 1 / T_2)) / a)',
  si: (ON, p1, T1, p2, T2, r, k, b, B, a) => ON * Math.expm1(logOfRatio(p1, T1, p2, T2, r, k, b, B) / a),
  rises: ['p_2', 'T_2'],
  falls: ['p_1', 'T_1'],
  notes: KNOCK_CAUTIONS,
  sources: SOURCES,
});

/**
 * What two knock integrals of one pressure trace, or of two, say of the octane number that an engine asks for.
 *
 * For `endGasKnockIntegral` before and after a change, with the fuel's octane number in both.
 *
 * @function
 * @returns Octane requirement after minus before, with the cautions of this topic. Carries a note outside 80 to 100
 * octane.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * octaneRequirementChangeFromIntegrals({
 *   octaneNumber: octaneNumber(95),
 *   integralBefore: ratio(0.9),
 *   integralAfter: ratio(0.8),
 * }).in('1') //=> -3.23278
 */
export const octaneRequirementChangeFromIntegrals = calculation({
  name: 'change of octane requirement from knock integrals',
  task: 'compare knock margins',
  inputs: {
    /** Octane number of the fuel in both integrals. */
    octaneNumber: input('ON', 'octane number', OCTANE),
    /** Knock integral before the change. */
    integralBefore: input('I_1', 'ratio', { min: 1e-9, max: 1e9, typical: 0.9 }),
    /** Knock integral after the change. */
    integralAfter: input('I_2', 'ratio', { min: 1e-9, max: 1e9, typical: 0.8 }),
    /** Exponent of octane number in the autoignition delay. */
    octaneExponent: assumed('a', 'ratio', { min: 1, max: 8, assume: octaneExponentOfDelay }),
  },
  output: output('dON', 'octane number', '1'),
  formula: 'ON * expm1(log(I_2 / I_1) / a)',
  si: (ON, I1, I2, a) => ON * Math.expm1(Math.log(I2 / I1) / a),
  rises: ['I_2'],
  falls: ['I_1'],
  notes: KNOCK_CAUTIONS,
  sources: SOURCES,
});

/**
 * The margin that a change of charge state gives, in degrees of charge temperature: how much warmer the charge after the
 * change would have to be, at its pressure, to be as near to knock as before.
 *
 * At one pressure it is the difference of the two charge temperatures; more boost after the change takes from it.
 *
 * @function
 * @returns The margin; below zero the change brought the engine nearer to knock. With the cautions of this topic.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or no charge temperature at all would
 * bring the end gas that near.
 * @example
 * chargeTemperatureMargin({
 *   pressureBefore: absolutePressure(204, 'kPa'),
 *   temperatureBefore: temperature(60, '°C'),
 *   pressureAfter: absolutePressure(210, 'kPa'),
 *   temperatureAfter: temperature(45, '°C'),
 * }).in('K') //=> 11.4803
 */
export const chargeTemperatureMargin = calculation({
  name: 'knock margin in charge temperature',
  task: 'compare knock margins',
  inputs: { ...STATES, ...END_GAS },
  output: output('dT', 'temperature difference', 'K'),
  formula: '1 / (1 / T_1 + b / B * r^((k - 1) / k) * log(p_2 / p_1)) - T_2',
  si: (p1, T1, p2, T2, r, k, b, B) => T1 / bracket(p1, T1, p2, r, k, b, B) - T2,
  rules: [
    {
      need: 'a pressure after the change at which some charge temperature would bring the end gas as near to knock',
      holds: (p1, T1, p2, _T2, r, k, b, B) => bracket(p1, T1, p2, r, k, b, B) > 0,
    },
  ],
  rises: ['p_1', 'T_1'],
  falls: ['p_2', 'T_2'],
  notes: KNOCK_CAUTIONS,
  sources: SOURCES,
});

function bracket(p1: number, T1: number, p2: number, r: number, k: number, b: number, B: number): number {
  return 1 + ((T1 * b) / B) * r ** ((k - 1) / k) * Math.log(p2 / p1);
}

/** How much less octane an engine asks for per gram of water vapour in a kilogram of dry air. */
export const usualOctanePerHumidity = constant('knock/octane-per-humidity', octaneNumber(0.3), {
  label: 'octane requirement per gram of vapour and kilogram of dry air',
  source: commonPractice("0.25 to 0.35, a fuel maker's page that was read"),
  halfWidth: 0.05,
});

/**
 * What more or less humid air does to the octane number that an engine asks for: vapour slows the burn and cools it.
 *
 * @function
 * @returns Octane requirement after minus before, with the cautions of this topic.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * octaneRequirementChangeFromHumidity({
 *   humidityRatioBefore: humidityRatio(6.2, 'g/kg'),
 *   humidityRatioAfter: humidityRatio(10.2, 'g/kg'),
 * }).in('1') //=> -1.2
 */
export const octaneRequirementChangeFromHumidity = calculation({
  name: 'change of octane requirement from humidity',
  task: 'compare knock margins',
  inputs: {
    /** Vapour per mass of dry air before the change. */
    humidityRatioBefore: input('W_1', 'humidity ratio', { min: 0, max: 0.1, typical: 0.0062 }),
    /** Vapour per mass of dry air after the change. */
    humidityRatioAfter: input('W_2', 'humidity ratio', { min: 0, max: 0.1, typical: 0.0092 }),
    /** Octane requirement lost per gram of vapour in a kilogram of dry air. */
    octanePerHumidity: assumed('c', 'octane number', { min: 0, max: 2, assume: usualOctanePerHumidity }),
  },
  output: output('dON', 'octane number', '1'),
  formula: '-c * 1000 * (W_2 - W_1)',
  si: (W1, W2, c) => -c * 1e3 * (W2 - W1),
  rises: ['W_1'],
  falls: ['W_2'],
  notes: KNOCK_CAUTIONS,
  sources: [commonPractice("octane requirement falls 0.25 to 0.35 per g/kg, a fuel maker's page that was read")],
});
