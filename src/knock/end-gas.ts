import { assumed, calculation, constant, input, output, source } from '../calculation/index.js';
import { ratio } from '../units/index.js';
import { CHARGE_PRESSURE, CHARGE_TEMPERATURE, END_GAS_PRESSURE } from './bounds.js';
import { KNOCK_CAUTIONS } from './cautions.js';

/** Exponent of the compression of unburned mixture, by piston and flame: 1.30 to 1.35. */
export const usualPolytropicExponent = constant('knock/polytropic-exponent', ratio(1.325), {
  label: 'polytropic exponent of the unburned mixture',
  source: source('heywood', 'section 9.6, 1.30 to 1.35', 'memory'),
  halfWidth: 0.025,
});

/**
 * Temperature of the mixture that the flame has not reached, from the pressure in the cylinder.
 *
 * Ten kelvin of charge temperature are some twenty-five in the end gas: that is what makes charge cooling worth so much
 * near the knock limit.
 *
 * @function
 * @returns The temperature of the unburned mixture, with the cautions of this topic.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * unburnedTemperature({
 *   chargeTemperature: temperature(340, 'K'),
 *   chargePressure: absolutePressure(2, 'bar'),
 *   cylinderPressure: absolutePressure(80, 'bar'),
 *   polytropicExponent: ratio(1.35),
 * }).in('K') //=> 884.765
 */
export const unburnedTemperature = calculation({
  name: 'temperature of the unburned mixture',
  task: 'compare knock margins',
  inputs: {
    /** Temperature of the charge when the inlet valve closes. */
    chargeTemperature: input('T_0', 'temperature', CHARGE_TEMPERATURE),
    /** Pressure of the charge when the inlet valve closes. */
    chargePressure: input('p_0', 'absolute pressure', CHARGE_PRESSURE),
    /** Pressure in the cylinder now. */
    cylinderPressure: input('p', 'absolute pressure', END_GAS_PRESSURE),
    /** Exponent of the compression. */
    polytropicExponent: assumed('k', 'ratio', { min: 1.2, max: 1.42, assume: usualPolytropicExponent }),
  },
  output: output('T_u', 'temperature', 'K'),
  formula: 'T_0 * (p / p_0)^((k - 1) / k)',
  si: (T0, p0, p, k) => T0 * (p / p0) ** ((k - 1) / k),
  rules: [
    { need: 'the pressure in the cylinder must not be below that of the charge', holds: (_T0, p0, p) => p >= p0 },
  ],
  rises: ['T_0', 'p', 'k'],
  falls: ['p_0'],
  notes: KNOCK_CAUTIONS,
  sources: [source('heywood', 'section 9.6, end-gas temperature by a polytropic compression', 'memory')],
});
