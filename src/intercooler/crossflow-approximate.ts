import { calculation, derived, input, output, source } from '../calculation/index.js';
import { rootBetween } from '../statistics/root-between.js';
import { CAPACITY_RATIO, EFFECTIVENESS, TRANSFER_UNITS } from './bounds.js';
import { meanDecay } from './decay.js';

const SOURCES = [
  source('incropera', 'table 11.3', 'memory'),
  derived('compared with the exact series: 3.8 % low to 1.1 % high for capacity ratios up to 1'),
];

const APPROXIMATE = {
  code: 'approximation',
  message:
    'Textbook approximation for crossflow, both flows unmixed: 3.8 % low to 1.1 % high against the exact relation.',
} as const;

/**
 * Effectiveness of a crossflow core with both flows unmixed by the approximation that textbooks print.
 *
 * For checking figures that came from it; {@link effectivenessCrossflowUnmixed} is exact and no harder to use. Against that one it is
 * up to 3.8 % low for small cores (about 0.3 transfer units) and up to 1.1 % high near 3.
 *
 * @function
 * @returns One true effectiveness, with a note that it is an approximation.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectiveness.crossflowUnmixedApproximate({ transferUnits: ratio(2), capacityRatio: ratio(0.5) }).in('%') //=> 73.88
 */
export const effectivenessCrossflowUnmixedApproximate = calculation({
  name: 'crossflow effectiveness, both flows unmixed, textbook approximation',
  task: 'size an intercooler',
  inputs: {
    /** Number of transfer units of the core. */
    transferUnits: input('N', 'ratio', TRANSFER_UNITS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('eps', 'ratio', '%'),
  formula: 'C == 0 ? 1 - exp(-N) : 1 - exp(N^0.22 / C * (exp(-C * N^0.78) - 1))',
  si: approximation,
  notes: [APPROXIMATE],
  rises: ['N'],
  falls: ['C'],
  sources: SOURCES,
});

/**
 * Number of transfer units that a crossflow core, both flows unmixed, needs for an effectiveness by the textbook approximation.
 *
 * {@link transferUnitsCrossflowUnmixed} is exact.
 *
 * @function
 * @returns One ratio, with a note that it is an approximation; solved for to the last digits.
 * @throws CalculationError if the effectiveness is above what 500 transfer units reach, or an input is physically impossible.
 * @example
 * transferUnits.crossflowUnmixedApproximate({ effectiveness: percent(75), capacityRatio: ratio(0.5) }).in('1') //=> 2.093
 */
export const transferUnitsCrossflowUnmixedApproximate = calculation({
  name: 'transfer units of a crossflow core, both flows unmixed, textbook approximation',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness wanted. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('N', 'ratio', '1'),
  formula: 'crossflowApproximation(N, C) == eps',
  uses: { crossflowApproximation: effectivenessCrossflowUnmixedApproximate },
  si: (eps, C) => {
    const least = -Math.log1p(-eps);
    const missing = (N: number): number => approximation(N, C) - eps;
    if (missing(least) >= 0) return least;
    let most = 2 * least;
    while (most < TRANSFER_UNITS.max && missing(most) < 0) most *= 2;
    return rootBetween(missing, least, Math.min(most, TRANSFER_UNITS.max));
  },
  rules: [
    {
      need: 'effectiveness must be below 1 and below what the approximation gives at 500 transfer units',
      holds: (eps, C) => eps < 1 && eps <= approximation(TRANSFER_UNITS.max, C),
    },
  ],
  notes: [APPROXIMATE],
  rises: ['eps', 'C'],
  sources: SOURCES,
});

function approximation(N: number, C: number): number {
  return -Math.expm1(-N * meanDecay(C * N ** 0.78));
}
