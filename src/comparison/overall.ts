import { contrastOfRepeats, meanOfRepeats, uncertainty } from '../calculation/index.js';
import { subtract, type Quantity } from '../units/index.js';
import { driftDifference, driftWeights, studentTFactor } from '../statistics/index.js';
import type { OrderFinding } from './order.js';
import type { Estimate } from './result.js';
import { like } from './words.js';

/** The difference of plain means, one number a pull. */
export function plainDifference(
  names: readonly [string, string],
  [baseline, candidate]: readonly [readonly Quantity[], readonly Quantity[]],
): Quantity {
  return subtract(meanOfRepeats(names[1], candidate), meanOfRepeats(names[0], baseline));
}

/** The difference as a weighted sum of the pulls, in which a steady drift cancels. */
export function differenceWithoutDrift(
  label: string,
  [baseline, candidate]: readonly [readonly Quantity[], readonly Quantity[]],
  { letters, times, pulls }: NonNullable<OrderFinding['made']>,
): Quantity {
  const values = [...baseline, ...candidate];
  const inOrder = pulls.map((i) => values[i]!);
  const { interval } = driftDifference(
    letters,
    inOrder.map(({ si }) => si),
    { times },
  );
  const { standardError, degreesOfFreedom } = interval!;
  return contrastOfRepeats(label, inOrder, driftWeights(letters, { times }), {
    standard: standardError,
    degreesOfFreedom,
  });
}

/**
 * The difference with its interval from the budget. Where sensors add to the scatter of the pulls, the interval is never narrower than the
 * scatter alone gives: a sensor that is known well would otherwise lend its degrees of freedom to scatter that is known badly.
 */
export function estimateOf(difference: Quantity, confidence: number): Estimate {
  const budget = uncertainty(difference);
  const scatter = budget.contributions.filter(
    ({ input }) => input.origin?.type === 'leaf' && input.origin.role === 'scatter',
  );
  const variance = scatter.reduce((sum, { contribution }) => sum + contribution.si ** 2, 0);
  const degrees =
    variance ** 2 / scatter.reduce((sum, one) => sum + one.contribution.si ** 4 / one.degreesOfFreedom, 0);
  const floor = variance > 0 ? studentTFactor(1 - confidence, degrees) * Math.sqrt(variance) : 0;
  const half = Math.max(floor, budget.expanded(confidence).si);
  return {
    value: difference,
    low: like(difference, difference.si - half),
    high: like(difference, difference.si + half),
    standardUncertainty: budget.standard,
    degreesOfFreedom: budget.degreesOfFreedom,
  };
}
