import { assumed, calculation, input, output, source } from '../calculation/index.js';
import {
  HEAT_CAPACITY_RATIO,
  INLET_TEMPERATURE,
  ISENTROPIC_EFFICIENCY,
  OUTLET_TEMPERATURE,
  TRUSTED_RATIO,
} from './bounds.js';

/** Rise of temperature in an ideal compression over the inlet temperature, in a form that keeps its digits near a ratio of 1. */
export function idealRise(PR: number, k: number): number {
  return Math.expm1(((k - 1) / k) * Math.log(PR));
}

/**
 * Temperature of the air leaving a compressor, from its pressure ratio and isentropic efficiency.
 *
 * One heat-capacity ratio for the whole compression: at a pressure ratio of 2 this reads 0.3 K high, at 4.5 from 2.7 K (inlet 25 °C,
 * efficiency 72 %) to 6.2 K (50 °C, 60 %). Above 2.5 use {@link outletTemperatureVariableHeat}, which is within 0.2 K of real air. With
 * a polytropic efficiency use {@link outletTemperaturePolytropic}. Heat from the turbine housing comes on top.
 *
 * @function
 * @returns One total temperature. Carries a note above a pressure ratio of 4.
 * @throws CalculationError if a pressure ratio is given as a pressure or upside down, a temperature as a difference, or an input is
 * physically impossible.
 * @example
 * outletTemperature({ inletTemperature: temperature(18, '°C'), pressureRatio: ratio(2.17), isentropicEfficiency: percent(70) }).in('°C') //=> 121.1
 */
export const outletTemperature = calculation({
  name: 'compressor outlet temperature',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', TRUSTED_RATIO),
    /** Total-to-total isentropic efficiency. */
    isentropicEfficiency: input('eta', 'ratio', ISENTROPIC_EFFICIENCY),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'T1 * (1 + (PR^((k - 1) / k) - 1) / eta)',
  si: (T1, PR, eta, k) => T1 * (1 + idealRise(PR, k) / eta),
  rises: ['T1', 'PR', 'k'],
  falls: ['eta'],
  sources: [
    source('dixonHall', 'isentropic efficiency of a compressor', 'memory'),
    source('heywood', 'section 6.8', 'memory'),
  ],
});

/**
 * Pressure ratio that a compressor must have made, from the temperatures across it and its isentropic efficiency.
 *
 * The inverse of {@link outletTemperature}; use it where pressures were not logged, and trust it less: an error of 1 K in 100 K moves
 * the ratio by 0.7 %, and heat from the turbine counts as pressure.
 *
 * @function
 * @returns One ratio of total pressures. Carries a note above 4, where one heat-capacity ratio is not trusted.
 * @throws CalculationError if the air leaves colder than it came, or an input is physically impossible.
 * @example
 * pressureRatioFromTemperatures({ inletTemperature: temperature(18, '°C'), outletTemperature: temperature(121, '°C'), isentropicEfficiency: percent(70) }).in('1') //=> 2.169
 */
export const pressureRatioFromTemperatures = calculation({
  name: 'compressor pressure ratio from temperatures',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Total temperature at the compressor outlet. */
    outletTemperature: input('T2', 'temperature', OUTLET_TEMPERATURE),
    /** Total-to-total isentropic efficiency. */
    isentropicEfficiency: input('eta', 'ratio', ISENTROPIC_EFFICIENCY),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
  },
  output: output('PR', 'ratio', '1'),
  formula: '(1 + eta * (T2 - T1) / T1)^(k / (k - 1))',
  si: ratioFromRise,
  rules: [
    { need: 'outletTemperature must not be below inletTemperature', holds: (T1, T2) => T2 >= T1 },
    {
      need: 'a pressure ratio of at most 4 (above it one heat-capacity ratio is not trusted)',
      holds: (T1, T2, eta, k) => ratioFromRise(T1, T2, eta, k) <= 4,
      otherwise: 'note',
    },
  ],
  rises: ['T2', 'eta'],
  falls: ['T1', 'k'],
  sources: [source('dixonHall', 'isentropic efficiency of a compressor', 'memory')],
});

function ratioFromRise(T1: number, T2: number, eta: number, k: number): number {
  return Math.exp((k / (k - 1)) * Math.log1p((eta * (T2 - T1)) / T1));
}
