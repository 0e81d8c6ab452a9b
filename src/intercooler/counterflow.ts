import { calculation, input, output, source } from '../calculation/index.js';
import { CAPACITY_RATIO, EFFECTIVENESS, TRANSFER_UNITS } from './bounds.js';

const SOURCES = [
  source('kaysLondon', 'chapter 2, counterflow', 'memory'),
  source('incropera', 'tables 11.3 and 11.4', 'memory'),
  source('shahSekulic', 'section 3.4', 'memory'),
];

/**
 * Effectiveness of a counterflow core: the best that any arrangement of the same size can do.
 *
 * @function
 * @returns One true effectiveness, see {@link airSideFromTrueEffectiveness}.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectiveness.counterflow({ transferUnits: ratio(2), capacityRatio: ratio(0.5) }).in('%') //=> 77.46
 */
export const effectivenessCounterflow = calculation({
  name: 'counterflow effectiveness',
  task: 'size an intercooler',
  inputs: {
    /** Number of transfer units of the core. */
    transferUnits: input('N', 'ratio', TRANSFER_UNITS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('eps', 'ratio', '%'),
  formula: 'C == 1 ? N / (1 + N) : (1 - exp(-N * (1 - C))) / (1 - C * exp(-N * (1 - C)))',
  si: (N, C) => {
    if (C === 1) return N / (1 + N);
    const passed = -Math.expm1(-N * (1 - C));
    return passed / (1 - C + C * passed);
  },
  rises: ['N'],
  falls: ['C'],
  sources: SOURCES,
});

/**
 * Number of transfer units that a counterflow core needs for an effectiveness.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if the effectiveness is 1, which no core reaches, or an input is physically impossible.
 * @example
 * transferUnits.counterflow({ effectiveness: percent(75), capacityRatio: ratio(0.5) }).in('1') //=> 1.833
 */
export const transferUnitsCounterflow = calculation({
  name: 'transfer units of a counterflow core',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness wanted. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('N', 'ratio', '1'),
  formula: 'C == 1 ? eps / (1 - eps) : log((1 - eps * C) / (1 - eps)) / (1 - C)',
  si: counterflowUnits,
  rules: [
    { need: 'effectiveness must be below 1, the limit of a counterflow core without end', holds: (eps) => eps < 1 },
  ],
  rises: ['eps', 'C'],
  sources: SOURCES,
});

/** Transfer units of a counterflow core: fewer than any other arrangement needs. */
export function counterflowUnits(eps: number, C: number): number {
  const odds = eps / (1 - eps);
  const x = odds * (1 - C);
  return x === 0 ? odds : odds * (Math.log1p(x) / x);
}
