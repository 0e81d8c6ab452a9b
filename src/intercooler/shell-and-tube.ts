import { calculation, derived, input, output, source } from '../calculation/index.js';
import { CAPACITY_RATIO, EFFECTIVENESS, TRANSFER_UNITS } from './bounds.js';

const SOURCES = [
  source('kaysLondon', 'chapter 2, parallel counterflow', 'memory'),
  source('incropera', 'tables 11.3 and 11.4', 'memory'),
];

/**
 * Effectiveness of a cooler with one shell pass, mixed, and two tube passes (or four, six: the difference is slight), as in
 * shell-and-tube water-cooled charge coolers.
 *
 * Two or more shells in series are passes of it: {@link effectivenessMultiPass}.
 *
 * @function
 * @returns One true effectiveness, see {@link airSideFromTrueEffectiveness}.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectiveness.oneShell({ transferUnits: ratio(2), capacityRatio: ratio(0.5) }).in('%') //=> 69.31
 */
export const effectivenessOneShell = calculation({
  name: 'effectiveness of one shell pass with two tube passes',
  task: 'size an intercooler',
  inputs: {
    /** Number of transfer units of the cooler. */
    transferUnits: input('N', 'ratio', TRANSFER_UNITS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('eps', 'ratio', '%'),
  formula: '2 * tanh(N * sqrt(1 + C^2) / 2) / ((1 + C) * tanh(N * sqrt(1 + C^2) / 2) + sqrt(1 + C^2))',
  si: (N, C) => {
    const s = Math.sqrt(1 + C * C);
    const t = Math.tanh((N * s) / 2);
    return (2 * t) / ((1 + C) * t + s);
  },
  rises: ['N'],
  falls: ['C'],
  sources: [...SOURCES, derived('exponentials written as a hyperbolic tangent')],
});

/**
 * Number of transfer units that one shell pass with two tube passes needs for an effectiveness.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if the effectiveness is at or above 2 / (1 + C + sqrt(1 + C²)), which no such cooler reaches, or an input is
 * physically impossible.
 * @example
 * transferUnits.oneShell({ effectiveness: percent(70), capacityRatio: ratio(0.5) }).in('1') //=> 2.090
 */
export const transferUnitsOneShell = calculation({
  name: 'transfer units of one shell pass with two tube passes',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness wanted. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('N', 'ratio', '1'),
  formula: 'log(1 + 2 * sqrt(1 + C^2) * eps / (2 - (1 + C + sqrt(1 + C^2)) * eps)) / sqrt(1 + C^2)',
  si: (eps, C) => {
    const s = Math.sqrt(1 + C * C);
    return Math.log1p((2 * s * eps) / (2 - (1 + C + s) * eps)) / s;
  },
  rules: [
    {
      need: 'effectiveness must be below 2 / (1 + C + sqrt(1 + C^2)), C the capacityRatio: the limit of one shell without end',
      holds: (eps, C) => (1 + C + Math.sqrt(1 + C * C)) * eps < 2,
    },
  ],
  rises: ['eps', 'C'],
  sources: [...SOURCES, derived('exponentials written as a hyperbolic tangent')],
});
