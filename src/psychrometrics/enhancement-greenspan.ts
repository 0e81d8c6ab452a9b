import { calculation, input, output, source } from '../calculation/index.js';
import { celsius, PRESSURE } from './ranges.js';
import {
  overIce,
  overWater,
  saturationPressureOverIce,
  saturationPressureOverWater,
  TRIPLE_POINT,
} from './saturation-pressure.js';

type Cubic = readonly [number, number, number, number];

/** Coefficients of ln f = alpha (1 - ps/p) + beta (p/ps - 1): alpha and ln beta are cubics in °C. */
interface Coefficients {
  readonly alpha: Cubic;
  readonly logBeta: Cubic;
}

const WATER: Coefficients = {
  alpha: [3.53624e-4, 2.93228e-5, 2.61474e-7, 8.57538e-9],
  logBeta: [-10.7588, 0.0632529, -2.53591e-4, 6.33784e-7],
};
/** The two sets for water meet near 0 °C within 4 parts in 10⁶. */
const SUPERCOOLED_BELOW = 273;
const SUPERCOOLED: Coefficients = {
  alpha: [3.62183e-4, 2.60553e-5, 3.86501e-7, 3.82449e-9],
  logBeta: [-10.7604, 0.0639987, -2.63351e-4, 1.67254e-6],
};
const ICE: Coefficients = {
  alpha: [3.64449e-4, 2.93631e-5, 4.88635e-7, 4.36543e-9],
  logBeta: [-10.7271, 0.0761989, -1.74771e-4, 2.46721e-6],
};

const cubic = ([a, b, c, d]: Cubic, t: number): number => a + t * (b + t * (c + t * d));
const cubicText = ([a, b, c, d]: Cubic): string =>
  `(${a} + (${b}) * (T - 273.15) + (${c}) * (T - 273.15)^2 + (${d}) * (T - 273.15)^3)`;

function factor({ alpha, logBeta }: Coefficients, T: number, p: number, ps: number): number {
  const t = T - 273.15;
  return Math.exp((cubic(alpha, t) * (p - ps)) / p + (Math.exp(cubic(logBeta, t)) * (p - ps)) / ps);
}

const factorText = ({ alpha, logBeta }: Coefficients, ps: string): string =>
  `exp(${cubicText(alpha)} * (1 - ${ps} / p) + exp(${cubicText(logBeta)}) * (p / ${ps} - 1))`;

/** Saturation pressure over water in air of a total pressure, bare; of pure vapour where saturated air cannot exist. */
export function inAirOverWater(T: number, p: number): number {
  const ps = overWater(T);
  return ps < p ? factor(T < SUPERCOOLED_BELOW ? SUPERCOOLED : WATER, T, p, ps) * ps : ps;
}

/** Saturation pressure over ice in air of a total pressure, bare. */
export function inAirOverIce(T: number, p: number): number {
  const ps = overIce(T);
  return ps < p ? factor(ICE, T, p, ps) * ps : ps;
}

const saturationExists = {
  need: 'saturation pressure must stay below the total pressure: air this hot cannot be saturated',
  holds: (T: number, p: number): boolean => overWater(T) < p,
};

/**
 * Enhancement factor over water, Greenspan 1976: how much more vapour saturates air than saturates empty space.
 *
 * A fit of Hyland's measurements and theory up to 2 MPa, so for charge air too; below 0 °C, over supercooled water, Hardy's
 * coefficients. Lies 0.0002 below the newer theory of RP-1485 in a room.
 *
 * @function
 * @returns A ratio a little above 1; carries a note above 100 °C.
 * @throws CalculationError where saturated air cannot exist, or the temperature is outside -50 to 160 °C.
 * @example
 * const charge = { temperature: temperature(45, '°C'), pressure: absolutePressure(204, 'kPa') };
 * enhancementFactorOverWater(charge).in('1') //=> 1.00758
 */
export const enhancementFactorOverWater = calculation({
  name: 'enhancement factor over water, Greenspan 1976',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air and the water. */
    temperature: input('T', 'temperature', {
      min: celsius(-50),
      max: celsius(160),
      trusted: [celsius(-50), celsius(100)],
      typical: 291.15,
    }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
  },
  output: output('f', 'ratio', '1'),
  formula: `T < ${SUPERCOOLED_BELOW} ? ${factorText(SUPERCOOLED, 'pwater(T)')} : ${factorText(WATER, 'pwater(T)')}`,
  uses: { pwater: saturationPressureOverWater },
  si: (T, p) => factor(T < SUPERCOOLED_BELOW ? SUPERCOOLED : WATER, T, p, overWater(T)),
  rules: [saturationExists],
  rises: ['p'],
  sources: [
    source('greenspan1976', 'coefficients over water, 0 to 100 °C', 'memory'),
    source('hardy1998', 'coefficients over supercooled water', 'memory'),
  ],
});

/**
 * Enhancement factor over ice, Greenspan 1976.
 *
 * @function
 * @returns A ratio a little above 1.
 * @throws CalculationError if the temperature is outside -100 °C to the triple point, 0.01 °C.
 * @example
 * const frost = { temperature: temperature(-10, '°C'), pressure: absolutePressure(941, 'hPa') };
 * enhancementFactorOverIce(frost).in('1') //=> 1.00375
 */
export const enhancementFactorOverIce = calculation({
  name: 'enhancement factor over ice, Greenspan 1976',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air and the ice. */
    temperature: input('T', 'temperature', { min: celsius(-100), max: TRIPLE_POINT, typical: 263.15 }),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
  },
  output: output('f', 'ratio', '1'),
  formula: factorText(ICE, 'pice(T)'),
  uses: { pice: saturationPressureOverIce },
  si: (T, p) => factor(ICE, T, p, overIce(T)),
  rises: ['p'],
  sources: [source('greenspan1976', 'coefficients over ice, -100 to 0 °C', 'memory')],
});
