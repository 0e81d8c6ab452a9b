import { calculation, derived, input, output, source } from '../calculation/index.js';
import { rootBetween } from '../statistics/root-between.js';
import { CAPACITY_RATIO, EFFECTIVENESS, TRANSFER_UNITS } from './bounds.js';
import { meanDecay } from './decay.js';
import { counterflowUnits } from './counterflow.js';

const SOURCES = [source('kaysLondon', 'chapter 2, crossflow, both fluids mixed', 'memory')];

/** Below this capacity ratio the maximum differs from 1 by less than a rounding that matters to anyone. */
export const LEAST_CAPACITY_RATIO = 1e-6;

/**
 * Effectiveness of a crossflow core in which both flows mix across their passages.
 *
 * It passes a maximum: beyond {@link bestTransferUnitsCrossflowBothMixed} a larger core of this kind cools less, so that most
 * effectivenesses belong to two sizes, see {@link transferUnitsCrossflowBothMixed}.
 *
 * @function
 * @returns One true effectiveness, see {@link airSideFromTrueEffectiveness}.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectiveness.crossflowBothMixed({ transferUnits: ratio(2), capacityRatio: ratio(0.5) }).in('%') //=> 69.08
 */
export const effectivenessCrossflowBothMixed = calculation({
  name: 'crossflow effectiveness, both flows mixed',
  task: 'size an intercooler',
  inputs: {
    /** Number of transfer units of the core. */
    transferUnits: input('N', 'ratio', TRANSFER_UNITS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('eps', 'ratio', '%'),
  formula: 'C * N == 0 ? 1 - exp(-N) : N / (N / (1 - exp(-N)) + C * N / (1 - exp(-C * N)) - 1)',
  si: bothMixed,
  falls: ['C'],
  sources: SOURCES,
});

/**
 * Number of transfer units at which a crossflow core with both flows mixed is best; a larger one cools less.
 *
 * @function
 * @returns One ratio, solved for to the last digits.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * bestTransferUnitsCrossflowBothMixed({ capacityRatio: ratio(1) }).in('1') //=> 2.983
 */
export const bestTransferUnitsCrossflowBothMixed = calculation({
  name: 'best transfer units of a crossflow core, both flows mixed',
  task: 'size an intercooler',
  inputs: {
    /** Smaller heat capacity rate over the larger; without it there is no maximum. */
    capacityRatio: input('C', 'ratio', { ...CAPACITY_RATIO, min: LEAST_CAPACITY_RATIO }),
  },
  output: output('N', 'ratio', '1'),
  formula: '(N / 2 / sinh(N / 2))^2 + (C * N / 2 / sinh(C * N / 2))^2 == 1',
  si: bestUnits,
  falls: ['C'],
  sources: [...SOURCES, derived('where the effectiveness neither rises nor falls with transfer units')],
});

/**
 * Number of transfer units that a crossflow core, both flows mixed, needs for an effectiveness: the smaller core that does it.
 *
 * @function
 * @returns One ratio at or below the best one, solved for to the last digits.
 * @throws CalculationError if the effectiveness is above the maximum of such cores, or an input is physically impossible.
 * @example
 * smallerTransferUnitsCrossflowBothMixed({ effectiveness: percent(55), capacityRatio: ratio(1) }).in('1') //=> 1.956
 */
export const smallerTransferUnitsCrossflowBothMixed = calculation({
  name: 'smaller transfer units of a crossflow core, both flows mixed',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness wanted. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('N', 'ratio', '1'),
  formula: 'bothMixed(N, C) == eps',
  uses: { bothMixed: effectivenessCrossflowBothMixed },
  si: (eps, C) => {
    const [least, most] = [counterflowUnits(eps, C), bestUnits(C)];
    const missing = (N: number): number => bothMixed(N, C) - eps;
    if (least >= most || missing(least) >= 0) return Math.min(least, most);
    return rootBetween(missing, least, most);
  },
  rules: [
    {
      need: 'effectiveness must be below 1 and no more than a crossflow core with both flows mixed reaches at its best',
      holds: (eps, C) => eps < 1 && eps <= bothMixed(bestUnits(C), C),
    },
  ],
  rises: ['eps', 'C'],
  sources: [...SOURCES, derived('solved for the transfer units below the maximum')],
});

/**
 * Number of transfer units at which a crossflow core, both flows mixed, has become so large that its effectiveness is down again to
 * the one given.
 *
 * @function
 * @returns One ratio at or above the best one, solved for to the last digits.
 * @throws CalculationError if the effectiveness is above the maximum of such cores or not above the limit 1 / (1 + capacity ratio) of
 * cores without end, or an input is physically impossible.
 * @example
 * largerTransferUnitsCrossflowBothMixed({ effectiveness: percent(55), capacityRatio: ratio(1) }).in('1') //=> 5.177
 */
export const largerTransferUnitsCrossflowBothMixed = calculation({
  name: 'larger transfer units of a crossflow core, both flows mixed',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness given. */
    effectiveness: input('eps', 'ratio', { ...EFFECTIVENESS, typical: 0.55 }),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', { ...CAPACITY_RATIO, min: LEAST_CAPACITY_RATIO, typical: 1 }),
  },
  output: output('N', 'ratio', '1'),
  formula: 'bothMixed(N, C) == eps',
  uses: { bothMixed: effectivenessCrossflowBothMixed },
  si: (eps, C) => {
    const least = bestUnits(C);
    // Far beyond the maximum the exponentials vanish, and before that they only bring the root nearer.
    const most = eps / (eps * (1 + C) - 1);
    const surplus = (N: number): number => eps - bothMixed(N, C);
    if (surplus(least) >= 0) return least;
    return surplus(most) <= 0 ? most : rootBetween(surplus, least, most);
  },
  rules: [
    {
      need: 'effectiveness must be no more than a crossflow core with both flows mixed reaches at its best',
      holds: (eps, C) => eps <= bothMixed(bestUnits(C), C),
    },
    {
      need: 'effectiveness must be above 1 / (1 + capacityRatio), down to which it falls in a core without end',
      holds: (eps, C) => eps * (1 + C) > 1,
    },
  ],
  falls: ['eps'],
  sources: [...SOURCES, derived('solved for the transfer units above the maximum')],
});

function bothMixed(N: number, C: number): number {
  return N / (1 / meanDecay(N) + 1 / meanDecay(C * N) - 1);
}

/** Transfer units of the maximum; beyond all bounds where the larger capacity rate is. */
function bestUnits(C: number): number {
  if (C < 1e-100) return TRANSFER_UNITS.max;
  return rootBetween((N) => Math.sinh(N / 2) * lackOfSpread((C * N) / 2) - N / 2, 1, TRANSFER_UNITS.max);
}

/** The root of 1 - (x / sinh x)^2, by series near zero, where the difference would lose all digits. */
function lackOfSpread(x: number): number {
  if (x < 1e-8) return x / Math.sqrt(3);
  if (x > 0.5) return Math.sqrt(1 - (x / Math.sinh(x)) ** 2);
  let term = x;
  let excess = 0;
  for (let k = 2; term > excess * 1e-18; k += 2) {
    term *= (x * x) / (k * (k + 1));
    excess += term;
  }
  const sinh = x + excess;
  return Math.sqrt(excess * (sinh + x)) / sinh;
}
