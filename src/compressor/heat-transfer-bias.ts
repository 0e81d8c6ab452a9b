import { assumed, calculation, derived, input, output, source } from '../calculation/index.js';
import { HEAT_CAPACITY_RATIO, INLET_TEMPERATURE, ISENTROPIC_EFFICIENCY, TRUSTED_RATIO } from './bounds.js';
import { idealRise } from './outlet-temperature.js';
import { HEAT_CAPACITY } from './total-and-static.js';

const HEAT = { min: -5e4, max: 5e4, typical: 5000 } as const;
const SOURCES = [
  source('caseyFesich2010', 'abstract: heat transfer makes the efficiency from temperatures read low', 'read'),
  derived('the heat is added to the rise of the adiabatic compression'),
];

/** Rise that the heat makes, over the ideal rise of the compression. */
const heatShare = (T1: number, PR: number, q: number, k: number, cp: number): number =>
  q / (cp * T1 * idealRise(PR, k));

const compresses = { need: 'a pressure ratio above 1', holds: (_eta: number, _T1: number, PR: number) => PR > 1 };

/**
 * Isentropic efficiency that temperatures show where heat from the turbine reaches the air.
 *
 * Heat counts as work there, so a hot turbine makes a compressor look bad: by up to 20 points at low speed, where the work is small.
 * Divide the heat flow by the air flow for the heat per kilogram.
 *
 * @function
 * @returns One ratio; never above the true one while heat flows in.
 * @throws CalculationError if the heat lost is all that the compression gives, or an input is physically impossible.
 * @example
 * const slow = { inletTemperature: temperature(298.15, 'K'), pressureRatio: ratio(1.2) };
 * apparentIsentropicEfficiency({ isentropicEfficiency: percent(68), ...slow, heatIntoAir: specificEnergy(5, 'kJ/kg') }).in('%') //=> 56.0963
 */
export const apparentIsentropicEfficiency = calculation({
  name: 'apparent isentropic efficiency',
  task: 'compress the charge',
  inputs: {
    /** Isentropic efficiency without heat transfer. */
    isentropicEfficiency: input('eta', 'ratio', ISENTROPIC_EFFICIENCY),
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', TRUSTED_RATIO),
    /** Heat that reaches each kilogram of air between the probes; negative where it is lost. */
    heatIntoAir: input('q', 'specific energy', HEAT),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
    /** Specific heat capacity of the air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('etaa', 'ratio', '%'),
  formula: '1 / (1 / eta + q / (cp * T1 * (PR^((k - 1) / k) - 1)))',
  si: (eta, T1, PR, q, k, cp) => 1 / (1 / eta + heatShare(T1, PR, q, k, cp)),
  rules: [
    compresses,
    {
      need: 'a loss of heat smaller than the work, so that the air still leaves warmer than it came',
      holds: (eta, T1, PR, q, k, cp) => PR <= 1 || 1 / eta + heatShare(T1, PR, q, k, cp) > 0,
    },
  ],
  rises: ['eta'],
  falls: ['q'],
  sources: SOURCES,
});

/**
 * Isentropic efficiency of the compression itself, from the one that temperatures show and the heat that reached the air.
 *
 * The inverse of {@link apparentIsentropicEfficiency}. The heat must come from elsewhere, such as a run without combustion or the
 * energy balance of the turbine.
 *
 * @function
 * @returns One ratio. Above 1 it carries a note, because such readings are not consistent.
 * @throws CalculationError if the heat alone explains the whole rise, or an input is physically impossible.
 * @example
 * const slow = { inletTemperature: temperature(298.15, 'K'), pressureRatio: ratio(1.2) };
 * isentropicEfficiencyWithoutHeat({ apparentEfficiency: percent(56.0963), ...slow, heatIntoAir: specificEnergy(5, 'kJ/kg') }).in('%') //=> 68
 */
export const isentropicEfficiencyWithoutHeat = calculation({
  name: 'isentropic efficiency without heat transfer',
  task: 'compress the charge',
  inputs: {
    /** Isentropic efficiency as the temperatures show it. */
    apparentEfficiency: input('etaa', 'ratio', { min: 0.02, max: 1.5, typical: 0.66 }),
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET_TEMPERATURE),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', TRUSTED_RATIO),
    /** Heat that reached each kilogram of air between the probes; negative where it was lost. */
    heatIntoAir: input('q', 'specific energy', HEAT),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
    /** Specific heat capacity of the air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('eta', 'ratio', '%'),
  formula: '1 / (1 / etaa - q / (cp * T1 * (PR^((k - 1) / k) - 1)))',
  si: withoutHeat,
  rules: [
    compresses,
    {
      need: 'heat that explains less than the whole rise of temperature',
      holds: (etaa, T1, PR, q, k, cp) => PR <= 1 || 1 / etaa > heatShare(T1, PR, q, k, cp),
    },
    {
      need: 'an efficiency of at most 100 % (above it the readings and the heat are not consistent)',
      holds: (etaa, T1, PR, q, k, cp) => PR <= 1 || withoutHeat(etaa, T1, PR, q, k, cp) <= 1,
      otherwise: 'note',
    },
  ],
  rises: ['etaa', 'q'],
  sources: SOURCES,
});

function withoutHeat(etaa: number, T1: number, PR: number, q: number, k: number, cp: number): number {
  return 1 / (1 / etaa - heatShare(T1, PR, q, k, cp));
}

/**
 * Temperature of the air leaving a compressor with the heat from the turbine housing on top.
 *
 * @function
 * @returns One total temperature.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * outletTemperatureWithHeat({ adiabaticOutletTemperature: temperature(121, '°C'), heatIntoAir: specificEnergy(5, 'kJ/kg') }).in('°C') //=> 125.975
 */
export const outletTemperatureWithHeat = calculation({
  name: 'compressor outlet temperature with heat transfer',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the outlet without heat transfer. */
    adiabaticOutletTemperature: input('T2a', 'temperature', { min: 200, max: 900, typical: 394.15 }),
    /** Heat that reaches each kilogram of air; negative where it is lost. */
    heatIntoAir: input('q', 'specific energy', HEAT),
    /** Specific heat capacity of the air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'T2a + q / cp',
  si: (T2a, q, cp) => T2a + q / cp,
  rises: ['T2a', 'q'],
  sources: [source('dixonHall', 'steady-flow energy equation', 'memory')],
});
