import { contrastOfRepeats, uncertainty } from '../calculation/index.js';
import {
  combineUncertainty,
  linearModel,
  pullContrast,
  StatisticsError,
  type SplitOrder,
} from '../statistics/index.js';
import type { Quantity } from '../units/index.js';
import { estimateOf } from './overall.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import { equalMixtureSentences } from './mixture-words.js';
import { meanSi } from './pull-means.js';
import type { EqualMixture, Estimate, MixtureWorth } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { outcomeOf } from './verdict.js';
import { decimals, like } from './words.js';

/** What a comparison at equal lambda is made from. */
export interface MixtureInputs {
  readonly names: readonly [string, string];
  readonly accepted: readonly [TakenPull[], TakenPull[]];
  /** The order of the day, where a steady drift is taken out. */
  readonly order: SplitOrder | undefined;
}

/** Fewest degrees of freedom for a slope with lambda to be worth anything. */
const FEWEST_DEGREES = 3;

/** A gauge repeats to about this much: lambda that varies less within the set-ups shows its gauge. Common practice, no source. */
const GAUGE = 0.003;

/** With a variance this many times larger than without lambda, the difference at equal lambda is drawn from far outside what was run. */
const MOST_INFLATION = 10;

/** From this difference of lambda on, what it is worth is told. */
const TOLD_MIXTURE = 0.01;

/**
 * The comparison at equal lambda. What a difference of mixture is worth is told by the pulls, from how the quantity went with lambda
 * within the set-ups (least squares with lambda as a covariate), and by the figure in the options. It stands beside the headline and
 * never in its place: whatever moved lambda may have moved power too.
 */
export function atEqualMixture(inputs: MixtureInputs, options: ResolvedOptions): EqualMixture | undefined {
  const pulls = inputs.accepted.flatMap((side, i) =>
    side.map(({ grid, result }): MixturePull => ({
      side: i,
      lambda: meanSi(grid.channels.lambda),
      mean: result.mean!,
    })),
  );
  if (!pulls.every(hasLambda) || inputs.accepted.some((side) => side.length < 2)) return undefined;
  const averages = [0, 1].map((side) => average(pulls.filter((pull) => pull.side === side).map((pull) => pull.lambda)));
  const [baseline, candidate] = averages as [number, number];
  const lambdaChange = candidate - baseline;
  const squares = pulls.map((pull) => (pull.lambda - averages[pull.side]!) ** 2);
  const lambdaScatter = Math.sqrt(squares.reduce((sum, one) => sum + one, 0) / (pulls.length - 2));
  const own = ownSlope(pulls, { lambdaChange, lambdaScatter }, inputs, options);
  const ways = [...(typeof own === 'string' ? [] : [own]), ...givenSlope(pulls, lambdaChange, inputs, options)];
  const found = {
    label: 'at equal lambda, not the headline',
    lambda: { baseline, candidate },
    lambdaChange,
    lambdaScatter,
    matters: Math.abs(lambdaChange) >= Math.min(TOLD_MIXTURE, options.limits.mixtureBetweenSetUps),
    ways,
    notTold: typeof own === 'string' ? own : undefined,
  } as const;
  return { ...found, sentences: equalMixtureSentences(found, inputs.names, options.units) };
}

interface MixturePull {
  readonly side: number;
  readonly lambda: number | undefined;
  readonly mean: Quantity;
}

type LambdaPull = MixturePull & { readonly lambda: number };

const hasLambda = (pull: MixturePull): pull is LambdaPull => pull.lambda !== undefined;

/** What the pulls themselves say, or why they cannot. */
function ownSlope(
  pulls: readonly LambdaPull[],
  { lambdaChange, lambdaScatter }: { readonly lambdaChange: number; readonly lambdaScatter: number },
  inputs: MixtureInputs,
  options: ResolvedOptions,
): MixtureWorth | string {
  const { names, order } = inputs;
  const columns = [pulls.map(() => 1), pulls.map((pull) => pull.side), centred(pulls.map((pull) => pull.lambda))];
  const words = ['the mean', 'the change', 'lambda'];
  if (order !== undefined) {
    columns.push(centred(pulls.map((_, i) => placeOf(order, i))));
    words.push('the drift');
  }
  if (pulls.length < columns.length + FEWEST_DEGREES) {
    return `a slope with lambda needs ${columns.length + FEWEST_DEGREES} accepted pulls, and there are ${pulls.length}`;
  }
  if (lambdaScatter < GAUGE) {
    return `within the set-ups lambda varied by only ${decimals(lambdaScatter, 4)}, which a gauge does by itself, so the pulls say nothing of what mixture is worth`;
  }
  let model;
  try {
    model = linearModel('difference at equal lambda', columns, words);
  } catch (error) {
    if (!(error instanceof StatisticsError)) throw error;
    return 'lambda moved only with the set-up or with the drift, so the pulls cannot tell what mixture is worth';
  }
  const without = linearModel('difference', [...columns.slice(0, 2), ...columns.slice(3)], words.slice(1));
  if (model.varianceFactors[1]! > MOST_INFLATION * without.varianceFactors[1]!) {
    return `lambda differed by ${decimals(Math.abs(lambdaChange), 3)} between the set-ups and varied by only ${decimals(lambdaScatter, 3)} within them, so what mixture did and what the change did cannot be told apart`;
  }
  const fit = model.fit(pulls.map((pull) => pull.mean.si));
  const scatter = Math.sqrt(fit.residualSumOfSquares / model.degreesOfFreedom);
  const unit = pulls.map((_, pull) => model.fit(pulls.map((__, other) => Number(other === pull))).coefficients);
  const estimate = (label: string, coefficient: 1 | 2, times = 1): Estimate => {
    const spread = {
      standard: scatter * Math.sqrt(model.varianceFactors[coefficient]!) * Math.abs(times),
      degreesOfFreedom: model.degreesOfFreedom,
    };
    const weights = unit.map((one) => one[coefficient]! * times);
    const means = pulls.map((pull) => pull.mean);
    // Pulls that agree to rounding have no scatter that a budget could hold.
    if (spread.standard === 0 || times === 0)
      return exactly(
        pulls[0]!.mean,
        weights.reduce((sum, w, i) => sum + w * means[i]!.si, 0),
      );
    return estimateOf(contrastOfRepeats(label, means, weights, spread), ownConfidence(options));
  };
  return worthOf(
    'pulls',
    {
      perHundredth: estimate('change for 0.01 of lambda', 2, 0.01),
      worth: estimate('worth of the difference of lambda', 2, lambdaChange),
      difference: estimate(`${names[1]} minus ${names[0]} at equal lambda`, 1),
    },
    inputs,
    options,
  );
}

/** What the figure in the options says: each pull brought to one lambda, and the error of the figure over the difference of lambda. */
function givenSlope(
  pulls: readonly LambdaPull[],
  lambdaChange: number,
  inputs: MixtureInputs,
  options: ResolvedOptions,
): MixtureWorth[] {
  const { powerPerLambda } = options;
  if (powerPerLambda === undefined) return [];
  const budget = powerPerLambda.origin === undefined ? undefined : uncertainty(powerPerLambda);
  const middle = average(pulls.map((pull) => pull.lambda));
  const level = average(pulls.map((pull) => pull.mean.si));
  const shape = pulls[0]!.mean;
  const own = (side: number): LambdaPull[] => pulls.filter((pull) => pull.side === side);
  const contrast = (of: (pull: LambdaPull) => number) => pullContrast(inputs.order)(own(0).map(of), own(1).map(of));
  const estimate = (
    value: number,
    pullsAlone: { standardError: number; degreesOfFreedom: number },
    slope: number,
  ): Estimate => {
    const { halfWidth, standardUncertainty, degreesOfFreedom } = combineUncertainty(
      { standardUncertainty: pullsAlone.standardError, degreesOfFreedom: pullsAlone.degreesOfFreedom },
      [
        {
          standardUncertainty: Math.abs(slope) * (budget?.standard.si ?? 0),
          degreesOfFreedom: budget?.degreesOfFreedom ?? Infinity,
        },
      ],
      { confidence: ownConfidence(options) },
    );
    const quantity = (si: number): Quantity => like(shape, si);
    return {
      value: quantity(value),
      low: quantity(value - halfWidth),
      high: quantity(value + halfWidth),
      standardUncertainty: quantity(standardUncertainty),
      degreesOfFreedom,
    };
  };
  const known = { standardError: 0, degreesOfFreedom: Infinity };
  const change = contrast((pull) => pull.lambda).difference;
  const adjusted = contrast((pull) => pull.mean.si - powerPerLambda.si * level * (pull.lambda - middle));
  const slope = powerPerLambda.si * level;
  return [
    worthOf(
      'given',
      {
        perHundredth: estimate(slope * 0.01, known, level * 0.01),
        worth: estimate(slope * change, known, level * change),
        difference: estimate(adjusted.difference, adjusted, level * lambdaChange),
      },
      inputs,
      options,
    ),
  ];
}

function worthOf(
  by: MixtureWorth['by'],
  parts: Pick<MixtureWorth, 'perHundredth' | 'worth' | 'difference'>,
  { accepted }: MixtureInputs,
  { worthwhile }: ResolvedOptions,
): MixtureWorth {
  const fewest = Math.min(accepted[0].length, accepted[1].length);
  return { by, ...parts, outcome: outcomeOf(parts.difference, worthwhile, fewest) };
}

function exactly(shape: Quantity, si: number): Estimate {
  const value = like(shape, si);
  return { value, low: value, high: value, standardUncertainty: like(shape, 0), degreesOfFreedom: Infinity };
}

/** When a pull was made, by its place among baseline pulls followed by candidate pulls. */
function placeOf({ pulls, times }: SplitOrder, pull: number): number {
  const place = pulls.indexOf(pull);
  return times?.[place] ?? place;
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function centred(values: readonly number[]): number[] {
  const middle = average(values);
  return values.map((value) => value - middle);
}
