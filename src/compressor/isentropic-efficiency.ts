import { assumed, calculation, derived, input, output, source } from '../calculation/index.js';
import { HEAT_CAPACITY_RATIO, INLET_TEMPERATURE, OUTLET_TEMPERATURE, TRUSTED_RATIO } from './bounds.js';
import { efficiencyRules } from './efficiency-rules.js';
import { idealRise } from './outlet-temperature.js';

/**
 * Isentropic efficiency of a compressor from the temperatures and the pressure ratio measured across it.
 *
 * Heat that reaches the air from the turbine housing counts as work here, so the result reads low: 5 kJ/kg take 0.72 to 0.68 at a
 * pressure ratio of 2, and 0.68 to 0.56 at 1.2. Its uncertainty is mostly that of the rise: 2 K in 97 K are 2 %.
 *
 * @function
 * @returns One ratio. Above 1 it carries a note, because such readings are not consistent; it is never cut off at 1. Carries a note
 * too where the rise is below 20 K, where 1 K of sensor error is more than 5 % of the efficiency.
 * @throws CalculationError if the air does not leave warmer than it came, or an input is physically impossible.
 * @example
 * isentropicEfficiencyFromMeasurement({ inletTemperature: temperature(18, '°C'), outletTemperature: temperature(121, '°C'), pressureRatio: ratio(2.17) }).in('%') //=> 70.03
 */
export const isentropicEfficiencyFromMeasurement = calculation({
  name: 'compressor isentropic efficiency from measurement',
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
  output: output('eta', 'ratio', '%'),
  formula: 'T1 * (PR^((k - 1) / k) - 1) / (T2 - T1)',
  si: efficiency,
  rules: efficiencyRules(efficiency),
  rises: ['T1', 'PR', 'k'],
  falls: ['T2'],
  sources: [
    source('dixonHall', 'isentropic efficiency of a compressor', 'memory'),
    source('caseyFesich2010', 'abstract: heat transfer makes the efficiency from temperatures read low', 'read'),
    derived('the 20 K limit: 1 K of error in the rise is then 5 % of the efficiency'),
  ],
});

function efficiency(T1: number, T2: number, PR: number, k: number): number {
  return (T1 * idealRise(PR, k)) / (T2 - T1);
}
