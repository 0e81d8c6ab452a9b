import { contrastOfRepeats } from '../calculation/index.js';
import { linearModel, StatisticsError } from '../statistics/index.js';
import type { Quantity } from '../units/index.js';
import { estimateOf } from './answer.js';
import { meanSi } from './factors.js';
import type { EqualMixture } from './result.js';
import type { TakenPull } from './taken-pull.js';

/** Fewest degrees of freedom for a slope with lambda to be worth anything. */
const FEWEST_DEGREES = 3;

/**
 * The difference at equal lambda: how the compared quantity goes with lambda from pull to pull within the set-ups, and the difference that
 * is left with that taken out (least squares with lambda as a covariate). It is a hint and no result, because within a set-up lambda varies
 * little, and whatever moves it may move power too.
 */
export function atEqualMixture(
  names: readonly [string, string],
  accepted: readonly [TakenPull[], TakenPull[]],
  confidence: number,
): EqualMixture | undefined {
  const pulls = accepted.flatMap((side, i) =>
    side.map(({ grid, result }) => ({ side: i, lambda: meanSi(grid.channels.lambda), mean: result.mean! })),
  );
  const lambdas = pulls.map((pull) => pull.lambda);
  if (pulls.length < FEWEST_DEGREES + 3 || !lambdas.every((lambda) => lambda !== undefined)) return undefined;
  const middle = lambdas.reduce((sum, lambda) => sum + lambda, 0) / lambdas.length;
  try {
    const model = linearModel(
      'difference at equal lambda',
      [pulls.map(() => 1), pulls.map((pull) => pull.side), lambdas.map((lambda) => lambda - middle)],
      ['the mean', 'the change', 'lambda'],
    );
    const weightsOf = (coefficient: number): number[] =>
      pulls.map((_, pull) => model.fit(pulls.map((__, other) => Number(other === pull))).coefficients[coefficient]!);
    const fit = model.fit(pulls.map((pull) => pull.mean.si));
    const scatter = Math.sqrt(fit.residualSumOfSquares / model.degreesOfFreedom);
    const label = `${names[1]} minus ${names[0]} at equal lambda`;
    const difference: Quantity = contrastOfRepeats(
      label,
      pulls.map((pull) => pull.mean),
      weightsOf(1),
      {
        standard: scatter * Math.sqrt(model.varianceFactors[1]!),
        degreesOfFreedom: model.degreesOfFreedom,
      },
    );
    const average = (side: number): number => {
      const own = pulls.filter((pull) => pull.side === side);
      return own.reduce((sum, pull) => sum + pull.lambda!, 0) / own.length;
    };
    return { difference: estimateOf(difference, confidence), lambdaChange: average(1) - average(0) };
  } catch (error) {
    // Lambda that is the same in every pull, or moves only with the set-up, tells nothing.
    if (error instanceof StatisticsError) return undefined;
    throw error;
  }
}
