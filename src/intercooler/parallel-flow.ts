import { calculation, input, output, source } from '../calculation/index.js';
import { CAPACITY_RATIO, EFFECTIVENESS, TRANSFER_UNITS } from './bounds.js';

const SOURCES = [
  source('kaysLondon', 'chapter 2, parallel flow', 'memory'),
  source('incropera', 'tables 11.3 and 11.4', 'memory'),
  source('shahSekulic', 'section 3.4', 'memory'),
];

/**
 * Effectiveness of a core whose two flows enter side by side at the same end.
 *
 * It cannot pass 1 / (1 + capacity ratio), however large the core.
 *
 * @function
 * @returns One true effectiveness, see {@link airSideFromTrueEffectiveness}.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectiveness.parallelFlow({ transferUnits: ratio(2), capacityRatio: ratio(0.5) }).in('%') //=> 63.35
 */
export const effectivenessParallelFlow = calculation({
  name: 'parallel-flow effectiveness',
  task: 'size an intercooler',
  inputs: {
    /** Number of transfer units of the core. */
    transferUnits: input('N', 'ratio', TRANSFER_UNITS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('eps', 'ratio', '%'),
  formula: '(1 - exp(-N * (1 + C))) / (1 + C)',
  si: (N, C) => -Math.expm1(-N * (1 + C)) / (1 + C),
  rises: ['N'],
  falls: ['C'],
  sources: SOURCES,
});

/**
 * Number of transfer units that a parallel-flow core needs for an effectiveness.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if the effectiveness is at or above 1 / (1 + capacity ratio), which no parallel-flow core reaches, or an
 * input is physically impossible.
 * @example
 * transferUnits.parallelFlow({ effectiveness: percent(60), capacityRatio: ratio(0.5) }).in('1') //=> 1.535
 */
export const transferUnitsParallelFlow = calculation({
  name: 'transfer units of a parallel-flow core',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness wanted. */
    effectiveness: input('eps', 'ratio', { ...EFFECTIVENESS, typical: 0.6 }),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('N', 'ratio', '1'),
  formula: '-log(1 - eps * (1 + C)) / (1 + C)',
  si: (eps, C) => -Math.log1p(-eps * (1 + C)) / (1 + C),
  rules: [
    {
      need: 'effectiveness must be below 1 / (1 + capacityRatio), the limit of a parallel-flow core without end',
      holds: (eps, C) => eps * (1 + C) < 1,
    },
  ],
  rises: ['eps', 'C'],
  sources: SOURCES,
});
