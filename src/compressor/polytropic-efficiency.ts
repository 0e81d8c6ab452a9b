import { assumed, calculation, input, output, source } from '../calculation/index.js';
import {
  HEAT_CAPACITY_RATIO,
  INLET_TEMPERATURE,
  ISENTROPIC_EFFICIENCY,
  OUTLET_TEMPERATURE,
  POLYTROPIC_EFFICIENCY,
  TRUSTED_RATIO,
} from './bounds.js';
import { efficiencyRules } from './efficiency-rules.js';
import { idealRise } from './outlet-temperature.js';

const SOURCES = [source('dixonHall', 'small-stage (polytropic) efficiency', 'memory')];

const exponent = (k: number): number => (k - 1) / k;

/**
 * Temperature of the air leaving a compressor, from its pressure ratio and polytropic efficiency.
 *
 * The polytropic efficiency belongs to the machine and not to its pressure ratio, so use this to go from one ratio to another.
 *
 * @function
 * @returns One total temperature. Carries a note above a pressure ratio of 4.
 * @throws CalculationError if a pressure ratio is given as a pressure or upside down, or an input is physically impossible.
 * @example
 * outletTemperaturePolytropic({ inletTemperature: temperature(18, '°C'), pressureRatio: ratio(2.17), polytropicEfficiency: percent(73) }).in('°C') //=> 121.1
 */
export const outletTemperaturePolytropic = calculation({
  name: 'compressor outlet temperature, polytropic',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', TRUSTED_RATIO),
    /** Polytropic (small-stage) efficiency. */
    polytropicEfficiency: input('etap', 'ratio', POLYTROPIC_EFFICIENCY),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'T1 * PR^((k - 1) / (k * etap))',
  si: (T1, PR, etap, k) => T1 * Math.exp((exponent(k) * Math.log(PR)) / etap),
  rises: ['T1', 'PR', 'k'],
  falls: ['etap'],
  sources: SOURCES,
});

/**
 * Polytropic efficiency of a compressor from the temperatures and the pressure ratio measured across it.
 *
 * Heat from the turbine housing makes it read low, as with {@link isentropicEfficiencyFromMeasurement}.
 *
 * @function
 * @returns One ratio. Above 1 it carries a note, because such readings are not consistent; it is never cut off at 1. Carries a note
 * too where the rise is below 20 K.
 * @throws CalculationError if the air does not leave warmer than it came, or an input is physically impossible.
 * @example
 * polytropicEfficiencyFromMeasurement({ inletTemperature: temperature(18, '°C'), outletTemperature: temperature(121, '°C'), pressureRatio: ratio(2.17) }).in('%') //=> 73.08
 */
export const polytropicEfficiencyFromMeasurement = calculation({
  name: 'compressor polytropic efficiency from measurement',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Total temperature at the compressor outlet, before any cooler. */
    outletTemperature: input('T2', 'temperature', OUTLET_TEMPERATURE),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', TRUSTED_RATIO),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
  },
  output: output('etap', 'ratio', '%'),
  formula: '(k - 1) / k * log(PR) / log(T2 / T1)',
  si: measuredEfficiency,
  rules: efficiencyRules(measuredEfficiency),
  rises: ['T1', 'PR', 'k'],
  falls: ['T2'],
  sources: SOURCES,
});

function measuredEfficiency(T1: number, T2: number, PR: number, k: number): number {
  return (exponent(k) * Math.log(PR)) / Math.log1p((T2 - T1) / T1);
}

/**
 * Polytropic efficiency of a compressor from its isentropic efficiency at one pressure ratio.
 *
 * @function
 * @returns One ratio, never below the isentropic efficiency and equal to it at a pressure ratio of 1.
 * @throws CalculationError if the pressure ratio is below 1, or an input is physically impossible.
 * @example
 * polytropicEfficiencyFromIsentropic({ isentropicEfficiency: percent(72), pressureRatio: ratio(2) }).in('%') //=> 74.57
 */
export const polytropicEfficiencyFromIsentropic = calculation({
  name: 'compressor polytropic efficiency from isentropic efficiency',
  task: 'compress the charge',
  inputs: {
    /** Total-to-total isentropic efficiency. */
    isentropicEfficiency: input('eta', 'ratio', ISENTROPIC_EFFICIENCY),
    /** Outlet over inlet total pressure, both absolute, where that efficiency holds. */
    pressureRatio: input('PR', 'ratio', TRUSTED_RATIO),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
  },
  output: output('etap', 'ratio', '%'),
  formula: 'PR == 1 ? eta : (k - 1) / k * log(PR) / log(1 + (PR^((k - 1) / k) - 1) / eta)',
  si: (eta, PR, k) => (PR === 1 ? eta : (exponent(k) * Math.log(PR)) / Math.log1p(idealRise(PR, k) / eta)),
  rises: ['eta', 'PR', 'k'],
  sources: SOURCES,
});

/**
 * Isentropic efficiency of a compressor at a pressure ratio, from its polytropic efficiency.
 *
 * @function
 * @returns One ratio, never above the polytropic efficiency and equal to it at a pressure ratio of 1.
 * @throws CalculationError if the pressure ratio is below 1, or an input is physically impossible.
 * @example
 * isentropicEfficiencyFromPolytropic({ polytropicEfficiency: percent(80), pressureRatio: ratio(2) }).in('%') //=> 77.97
 */
export const isentropicEfficiencyFromPolytropic = calculation({
  name: 'compressor isentropic efficiency from polytropic efficiency',
  task: 'compress the charge',
  inputs: {
    /** Polytropic (small-stage) efficiency. */
    polytropicEfficiency: input('etap', 'ratio', POLYTROPIC_EFFICIENCY),
    /** Outlet over inlet total pressure, both absolute, at which the isentropic efficiency is wanted. */
    pressureRatio: input('PR', 'ratio', TRUSTED_RATIO),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
  },
  output: output('eta', 'ratio', '%'),
  formula: 'PR == 1 ? etap : (PR^((k - 1) / k) - 1) / (PR^((k - 1) / (k * etap)) - 1)',
  si: (etap, PR, k) => (PR === 1 ? etap : idealRise(PR, k) / Math.expm1((exponent(k) * Math.log(PR)) / etap)),
  rises: ['etap'],
  falls: ['PR', 'k'],
  sources: SOURCES,
});
