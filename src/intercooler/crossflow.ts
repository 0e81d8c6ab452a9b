import { calculation, derived, input, output, source } from '../calculation/index.js';
import { rootBetween } from '../statistics/root-between.js';
import { CAPACITY_RATIO, EFFECTIVENESS, TRANSFER_UNITS } from './bounds.js';
import { counterflowUnits } from './counterflow.js';

/**
 * Effectiveness of a crossflow core with both flows unmixed, exact: the usual bar-and-plate or tube-and-fin charge cooler.
 *
 * The exact series of Mason, in which P(n, x) is the chance that more than n events happen where x are expected:
 * the sum over n from 0 of P(n, N) P(n, C N), divided by C N. Its formula names that sum `crossflowSeries`.
 *
 * @function
 * @returns One true effectiveness, see {@link airSideFromTrueEffectiveness}. Good to the last digits for any core, also where both
 * capacity rates are equal or one is without bound.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectiveness.crossflowUnmixed({ transferUnits: ratio(2), capacityRatio: ratio(0.5) }).in('%') //=> 73.24
 */
export const effectivenessCrossflowUnmixed = calculation({
  name: 'crossflow effectiveness, both flows unmixed',
  task: 'size an intercooler',
  inputs: {
    /** Number of transfer units of the core. */
    transferUnits: input('N', 'ratio', TRANSFER_UNITS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('eps', 'ratio', '%'),
  formula: 'crossflowSeries(N, C)',
  si: crossflowSeries,
  rises: ['N'],
  falls: ['C'],
  sources: [
    source('mason1955', 'series of Poisson tails', 'memory'),
    source('baclic1978', 'the same in Bessel functions', 'memory'),
    derived('both forms against each other, 50 digits'),
  ],
});

/**
 * Number of transfer units that a crossflow core, both flows unmixed, needs for an effectiveness.
 *
 * @function
 * @returns One ratio, solved for to the last digits.
 * @throws CalculationError if the effectiveness is above what 500 transfer units reach, or an input is physically impossible.
 * @example
 * transferUnits.crossflowUnmixed({ effectiveness: percent(75), capacityRatio: ratio(0.5) }).in('1') //=> 2.156
 */
export const transferUnitsCrossflowUnmixed = calculation({
  name: 'transfer units of a crossflow core, both flows unmixed',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness wanted. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('N', 'ratio', '1'),
  formula: 'crossflowSeries(N, C) == eps',
  uses: { crossflowSeries: effectivenessCrossflowUnmixed },
  si: (eps, C) => {
    const least = counterflowUnits(eps, C);
    const missing = (N: number): number => crossflowSeries(N, C) - eps;
    if (missing(least) >= 0) return least;
    let most = 2 * least;
    while (most < TRANSFER_UNITS.max && missing(most) < 0) most *= 2;
    return rootBetween(missing, least, Math.min(most, TRANSFER_UNITS.max));
  },
  rules: [
    {
      need: 'effectiveness must be below 1 and below what a crossflow core of 500 transfer units reaches',
      holds: (eps, C) => eps < 1 && eps <= crossflowSeries(TRANSFER_UNITS.max, C),
    },
  ],
  rises: ['eps', 'C'],
  sources: [source('mason1955', 'series of Poisson tails, solved for the transfer units', 'memory')],
});

/**
 * The series of Mason. With the tails of the second flow written out and the order of summing turned round, it is the sum over m from
 * 1 of p(m, C N) / (C N), p the chance of m events, times P(0, N) + ... + P(m - 1, N). A small core is summed so. For a large one the
 * same sum over 1 - P gives what is missing to 1. All terms are positive, so that rounding stays that of the larger ones.
 */
function crossflowSeries(N: number, C: number): number {
  const isSmall = N <= 1;
  const M = C * N;
  let chance = Math.exp(-N);
  let tail = isSmall ? -Math.expm1(-N) : chance;
  let tails = tail;
  let share = Math.exp(-M);
  let sum = share * tails;
  for (let m = 1; m < M || share > 1e-22; m++) {
    chance *= N / m;
    tail += isSmall ? -chance : chance;
    tails += tail;
    share *= M / (m + 1);
    sum += share * tails;
  }
  return isSmall ? sum : 1 - sum;
}
