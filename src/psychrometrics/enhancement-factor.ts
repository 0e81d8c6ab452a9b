import { calculation, input, output, source } from '../calculation/index.js';
import { enhancementFactorOverIce, enhancementFactorOverWater } from './enhancement-greenspan.js';
import { celsius, PRESSURE, TEMPERATURE } from './ranges.js';

/**
 * Enhancement factor of CIPM-2007: how much more vapour saturates air than saturates empty space.
 *
 * For densities to parts in 10⁵ in a laboratory. Calculations of this topic leave the factor at 1, as ASHRAE's simple formulas and the
 * power standards do, unless their name says "in moist air": those take {@link enhancementFactorOverWater}.
 *
 * @function
 * @returns A ratio a little above 1; carries a note outside 600 to 1100 hPa and 15 to 27 °C.
 * @throws CalculationError if an input is impossible.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * enhancementFactorCipm2007(room).in('1') //=> 1.00376
 */
export const enhancementFactorCipm2007 = calculation({
  name: 'enhancement factor, CIPM-2007',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', { ...TEMPERATURE, trusted: [celsius(15), celsius(27)] }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', { ...PRESSURE, trusted: [6e4, 1.1e5] }),
  },
  output: output('f', 'ratio', '1'),
  formula: '1.00062 + 3.14e-8 * p + 5.6e-7 * (T - 273.15)^2',
  si: (T, p) => 1.00062 + 3.14e-8 * p + 5.6e-7 * (T - 273.15) ** 2,
  rises: ['p'],
  sources: [source('cipm2007', 'enhancement factor, constants alpha, beta, gamma', 'memory')],
});

/**
 * Enhancement factor of Buck 1981, for air over water at room temperatures, from the pressure alone.
 *
 * @function
 * @returns A ratio a little above 1; carries a note above 1100 hPa.
 * @throws CalculationError if the pressure is outside 20 to 600 kPa.
 * @example
 * enhancementFactorBuck1981({ pressure: absolutePressure(941, 'hPa') }).in('1') //=> 1.00396
 */
export const enhancementFactorBuck1981 = calculation({
  name: 'enhancement factor, Buck 1981',
  task: 'describe humid air',
  inputs: {
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', { ...PRESSURE, trusted: [2e4, 1.1e5] }),
  },
  output: output('f', 'ratio', '1'),
  formula: '1.0007 + 3.46e-8 * p',
  si: (p) => 1.0007 + 3.46e-8 * p,
  rises: ['p'],
  sources: [source('buck1981', 'enhancement factor over water', 'memory')],
});

/**
 * Enhancement factor of Buck 1996, for air over water, with a term in temperature.
 *
 * @function
 * @returns A ratio a little above 1; carries a note outside -40 to 50 °C or above 1100 hPa.
 * @throws CalculationError if an input is impossible.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * enhancementFactorBuck1996(room).in('1') //=> 1.00391
 */
export const enhancementFactorBuck1996 = calculation({
  name: 'enhancement factor, Buck 1996',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', { ...TEMPERATURE, trusted: [celsius(-40), celsius(50)] }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', { ...PRESSURE, trusted: [2e4, 1.1e5] }),
  },
  output: output('f', 'ratio', '1'),
  formula: '1 + 1e-4 * (7.2 + p / 100 * (0.032 + 5.9e-6 * (T - 273.15)^2))',
  si: (T, p) => 1 + 1e-4 * (7.2 + (p / 100) * (0.032 + 5.9e-6 * (T - 273.15) ** 2)),
  rises: ['p'],
  sources: [source('buck1996', 'enhancement factor over water', 'memory')],
});

/**
 * The published enhancement factors, to choose from by name: over water those of CIPM-2007, Buck and Greenspan, and Greenspan's over ice.
 */
export const enhancementFactor = {
  cipm2007: enhancementFactorCipm2007,
  buck1981: enhancementFactorBuck1981,
  buck1996: enhancementFactorBuck1996,
  greenspanOverWater: enhancementFactorOverWater,
  greenspanOverIce: enhancementFactorOverIce,
} as const;
