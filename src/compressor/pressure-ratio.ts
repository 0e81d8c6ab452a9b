import { calculation, input, output, source } from '../calculation/index.js';
import { INLET_PRESSURE, OUTLET_PRESSURE, PRESSURE_RATIO } from './bounds.js';

/**
 * Pressure ratio of a compressor: outlet over inlet pressure, both absolute and, where efficiency is at stake, both total.
 *
 * Use it on logged pressures. A boost gauge needs `absolute(boost, barometer)` first, and the inlet lies below the barometer by the
 * loss of filter and hose.
 *
 * @function
 * @returns One ratio, 1 or more.
 * @throws CalculationError if a pressure is not absolute, or the outlet lies below the inlet: then they are the wrong way round, or
 * the compressor is only turned by the air and restricts it.
 * @example
 * const barometer = absolutePressure(941, 'hPa');
 * pressureRatio({ inletPressure: barometer, outletPressure: absolute(gaugePressure(1.1, 'bar'), barometer) }).in('1') //=> 2.169
 */
export const pressureRatio = calculation({
  name: 'compressor pressure ratio',
  task: 'compress the charge',
  inputs: {
    /** Absolute pressure at the compressor inlet. */
    inletPressure: input('p1', 'absolute pressure', INLET_PRESSURE),
    /** Absolute pressure at the compressor outlet. */
    outletPressure: input('p2', 'absolute pressure', OUTLET_PRESSURE),
  },
  output: output('PR', 'ratio', '1'),
  formula: 'p2 / p1',
  si: (p1, p2) => p2 / p1,
  rules: [
    {
      need: 'outletPressure must not be below inletPressure (are they upside down, or is one a gauge reading?)',
      holds: (p1, p2) => p2 >= p1,
    },
  ],
  rises: ['p2'],
  falls: ['p1'],
  sources: [source('saeJ1826', 'SAE J922, pressure ratio', 'memory')],
});

/**
 * Absolute pressure at the compressor outlet, from the inlet pressure and a pressure ratio, such as one read from a map.
 *
 * @function
 * @returns One absolute pressure; take the barometer off with `gauge(absolute, barometer)` for boost.
 * @throws CalculationError if the inlet pressure is not absolute or the ratio is below 1.
 * @example
 * outletPressure({ inletPressure: absolutePressure(941, 'hPa'), pressureRatio: ratio(2.17) }).in('kPa') //=> 204.2
 */
export const outletPressure = calculation({
  name: 'compressor outlet pressure',
  task: 'compress the charge',
  inputs: {
    /** Absolute pressure at the compressor inlet. */
    inletPressure: input('p1', 'absolute pressure', INLET_PRESSURE),
    /** Outlet over inlet pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', PRESSURE_RATIO),
  },
  output: output('p2', 'absolute pressure', 'kPa'),
  formula: 'p1 * PR',
  si: (p1, PR) => p1 * PR,
  rises: ['p1', 'PR'],
  sources: [source('saeJ1826', 'SAE J922, pressure ratio', 'memory')],
});
