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
import { ratio } from '../units/index.js';

/**
 * The exponent of power on charge temperature at fixed manifold pressure, before any gain in spark timing: 0.5 to 0.7.
 *
 * 1 would be density alone. It is less because colder charge takes up more heat from ports and residual gas and flows
 * with more loss. Standards imply 0.5 for indicated and 0.6 for brake power. Fit your own engine's with {@link
 * chargeTemperatureExponent}.
 */
export const usualChargeTemperatureExponent = constant('engine/charge-temperature-exponent', ratio(0.6), {
  label: 'exponent of power on charge temperature',
  source: commonPractice('0.5 to 0.7 at fixed manifold pressure and spark timing'),
  halfWidth: 0.1,
});

/**
 * What a change of charge temperature alone does to airflow and power at the same manifold pressure.
 *
 * Spark timing that a colder charge allows near the knock limit comes on top and is not in it. Do not advance timing on
 * this number: detonation destroys engines.
 *
 * @function
 * @returns Power at the charge temperature over power at the reference temperature.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * powerRatioFromChargeTemperature({
 *   referenceTemperature: temperature(60, '°C'),
 *   chargeTemperature: temperature(40, '°C'),
 * }).in('1') //=> 1.03784
 */
export const powerRatioFromChargeTemperature = calculation({
  name: 'power ratio from charge temperature',
  task: 'describe the engine',
  inputs: {
    /** Charge temperature before the change. */
    referenceTemperature: input('T_ref', 'temperature', { min: 200, max: 600, typical: 333.15 }),
    /** Charge temperature after the change. */
    chargeTemperature: input('T', 'temperature', { min: 200, max: 600, typical: 318.15 }),
    /** Exponent; 1 is density alone. */
    exponent: assumed('n', 'ratio', { min: 0, max: 2, assume: usualChargeTemperatureExponent }),
  },
  output: output('PR', 'ratio', '1'),
  formula: '(T_ref / T)^n',
  si: (Tref, T, n) => (Tref / T) ** n,
  rises: ['T_ref'],
  falls: ['T'],
  sources: [source('heywood', 'section 6.2', 'memory'), commonPractice('power law in charge temperature')],
});

/**
 * The exponent of power on charge temperature that two pulls show, at the same manifold pressure, mixture and spark
 * timing.
 *
 * A small step in temperature makes a large uncertainty: over 20 K a power uncertain by 0.5 % leaves the exponent
 * uncertain by 0.08.
 *
 * @function
 * @returns The exponent; 1 is density alone. Above 1, something besides density changed.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or the two temperatures are the
 * same.
 * @example
 * chargeTemperatureExponent({
 *   referencePower: power(300, 'kW'),
 *   power: power(310, 'kW'),
 *   referenceTemperature: temperature(60, '°C'),
 *   chargeTemperature: temperature(40, '°C'),
 * }).in('1') //=> 0.529632
 */
export const chargeTemperatureExponent = calculation({
  name: 'exponent of power on charge temperature',
  task: 'describe the engine',
  inputs: {
    /** Power before the change. */
    referencePower: input('P_ref', 'power', { min: 1, max: 1e8, typical: 160e3 }),
    /** Power after the change. */
    power: input('P', 'power', { min: 1, max: 1e8, typical: 165e3 }),
    /** Charge temperature before the change. */
    referenceTemperature: input('T_ref', 'temperature', { min: 200, max: 600, typical: 333.15 }),
    /** Charge temperature after the change. */
    chargeTemperature: input('T', 'temperature', { min: 200, max: 600, typical: 318.15 }),
  },
  output: output('n', 'ratio', '1'),
  formula: 'log(P / P_ref) / log(T_ref / T)',
  si: (Pref, P, Tref, T) => Math.log(P / Pref) / Math.log(Tref / T),
  rules: [{ need: 'two different charge temperatures', holds: (_Pref, _P, Tref, T) => Tref !== T }],
  sources: [derived('the power ratio of powerRatioFromChargeTemperature solved for its exponent')],
});

/**
 * Volumetric efficiency on manifold density that is to be expected at another charge temperature, consistent with the
 * exponent of {@link powerRatioFromChargeTemperature}.
 *
 * Density alone would raise airflow by T_ref/T; the exponent says it rises less, and the difference shows as a slightly
 * *lower* volumetric efficiency with colder charge. That is physics, not a fault of the engine or of the log.
 *
 * @function
 * @returns The expected volumetric efficiency on manifold density.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * volumetricEfficiencyAtTemperature({
 *   referenceVolumetricEfficiency: percent(95),
 *   referenceTemperature: temperature(325, 'K'),
 *   chargeTemperature: temperature(315, 'K'),
 * }).in('%') //=> 93.8198
 */
export const volumetricEfficiencyAtTemperature = calculation({
  name: 'volumetric efficiency at another charge temperature',
  task: 'describe the engine',
  inputs: {
    /** Volumetric efficiency on manifold density before the change. */
    referenceVolumetricEfficiency: input('eta_ref', 'ratio', { min: 0.01, max: 2, typical: 0.95 }),
    /** Charge temperature before the change. */
    referenceTemperature: input('T_ref', 'temperature', { min: 200, max: 600, typical: 333.15 }),
    /** Charge temperature after the change. */
    chargeTemperature: input('T', 'temperature', { min: 200, max: 600, typical: 318.15 }),
    /** Exponent of power on charge temperature; 1 is density alone. */
    exponent: assumed('n', 'ratio', { min: 0, max: 2, assume: usualChargeTemperatureExponent }),
  },
  output: output('eta_v', 'ratio', '%'),
  formula: 'eta_ref * (T / T_ref)^(1 - n)',
  si: (etaRef, Tref, T, n) => etaRef * (T / Tref) ** (1 - n),
  rises: ['eta_ref'],
  sources: [derived('airflow by speed and density, with the power law in charge temperature')],
});
