import { calculation, commonPractice, derived, input, output, source } from '../calculation/index.js';

const MANIFOLD = { min: 200, max: 600, typical: 313 } as const;
const WALL = { min: 250, max: 700, typical: 380 } as const;
const SHARE = { min: 0, max: 0.99, typical: 0.3 } as const;

/**
 * Temperature of the charge when the inlet valve closes, warmed on its way in by ports, valves and cylinder.
 *
 * @function
 * @returns The temperature of the charge in the cylinder.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * chargeTemperatureAfterWallHeating({
 *   manifoldTemperature: temperature(313, 'K'),
 *   wallTemperature: temperature(380, 'K'),
 *   heatedShare: ratio(0.25),
 * }).in('K') //=> 329.75
 */
export const chargeTemperatureAfterWallHeating = calculation({
  name: 'charge temperature after wall heating',
  task: 'describe the engine',
  inputs: {
    /** Temperature of the charge in the manifold. */
    manifoldTemperature: input('T_m', 'temperature', MANIFOLD),
    /** Mean temperature of the walls that the charge meets. */
    wallTemperature: input('T_w', 'temperature', WALL),
    /** Share of the way to the wall's temperature that the charge is warmed; residual gas acts the same way. */
    heatedShare: input('b', 'ratio', SHARE),
  },
  output: output('T_ch', 'temperature', 'K'),
  formula: 'T_m + b * (T_w - T_m)',
  si: (Tm, Tw, b) => Tm + b * (Tw - Tm),
  rises: ['T_m', 'T_w'],
  sources: [source('heywood', 'section 6.2', 'memory'), derived('warmed by a share of the distance to the wall')],
});

/**
 * The exponent of power on charge temperature that wall heating leaves: why colder charge gives less than its density
 * says.
 *
 * An estimate where nothing was measured: neither wall temperature nor share are known well. Fit the engine's own by
 * `chargeTemperatureExponent` or `fitChargeTemperatureExponent`.
 *
 * @function
 * @returns The exponent; 1 is density alone.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * chargeTemperatureExponentFromWallHeating({
 *   manifoldTemperature: temperature(313, 'K'),
 *   wallTemperature: temperature(380, 'K'),
 *   heatedShare: ratio(0.4),
 * }).in('1') //=> 0.552678
 */
export const chargeTemperatureExponentFromWallHeating = calculation({
  name: 'exponent of power on charge temperature from wall heating',
  task: 'describe the engine',
  inputs: {
    /** Temperature of the charge in the manifold. */
    manifoldTemperature: input('T_m', 'temperature', MANIFOLD),
    /** Mean temperature of the walls that the charge meets. */
    wallTemperature: input('T_w', 'temperature', WALL),
    /** Share of the way to the wall's temperature that the charge is warmed: 0.25 to 0.40 fits the exponents seen. */
    heatedShare: input('b', 'ratio', SHARE),
  },
  output: output('n', 'ratio', '1'),
  formula: '(1 - b) * T_m / ((1 - b) * T_m + b * T_w)',
  si: (Tm, Tw, b) => ((1 - b) * Tm) / ((1 - b) * Tm + b * Tw),
  rises: ['T_m'],
  falls: ['T_w', 'b'],
  sources: [
    derived('density of the charge in the cylinder against manifold temperature, at fixed wall temperature'),
    commonPractice('residual gas of 3 to 7 % at full load acts the same way'),
  ],
});
