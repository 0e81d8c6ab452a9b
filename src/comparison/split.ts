import type { Quantity } from '../units/index.js';
import type { ChannelRole } from '../sweep/index.js';
import { additiveSplit } from '../statistics/index.js';
import { bestTorqueSparkAt } from './best-torque-spark.js';
import { factorPlan } from './factors.js';
import { bestTorqueSparkOf, ownConfidence, type ResolvedOptions } from './options.js';
import { meanSi, meansOverRange, type PullMeans, type SplitPull } from './pull-means.js';
import type { Contribution, Split } from './result.js';
import { splitErrors, splitSensors } from './sensors.js';
import { splitBySpeed, type SplitInputs } from './split-by-speed.js';
import type { TakenPull } from './taken-pull.js';
import { like } from './words.js';

/**
 * The exact split of the change into what the channels can tell apart.
 *
 * Its weights speak of geometric means over the pulls and the headline of plain ones; the small difference goes to the last factor,
 * which is what is left over anyway. So the parts add up to the headline, and at each speed to the difference there.
 */
export function splitOf(inputs: SplitInputs, options: ResolvedOptions): Split {
  const { accepted, overall, names, order } = inputs;
  const sides = splitPulls(accepted, names, options);
  const means = sides.map((side) => side.map((pull) => meansOverRange(pull))) as [PullMeans[], PullMeans[]];
  const { factors, notSeparated } = factorPlan(inputs.compared, means, {
    setUps: names,
    sparkLimit: options.limits.sparkBetweenSetUps.si,
  });
  const errors = splitErrors(names, options);
  const logs = factors.map(({ name, log }) => ({ name, baseline: means[0].map(log), candidate: means[1].map(log) }));
  const confidence = ownConfidence(options);
  const split = additiveSplit(logs, splitSensors(errors, factors, sides, meansOverRange), { confidence, order });
  const quantity = (si: number): Quantity => like(overall.value, si);
  const leftOver = overall.value.si - split.total.contribution;
  const contributions = split.contributions.map((part, i, all): Contribution => {
    const by = i === all.length - 1 ? leftOver : 0;
    return {
      factor: part.name,
      part: {
        value: quantity(part.contribution + by),
        low: quantity(part.lower + by),
        high: quantity(part.upper + by),
        standardUncertainty: quantity(part.combined.standardUncertainty),
        degreesOfFreedom: part.combined.degreesOfFreedom,
      },
      percent: Math.expm1(part.logChange) * 100,
      ...readingsOf(part.name, accepted),
    };
  });
  const bySpeed = splitBySpeed({ ...inputs, factors, errors, sides }, options);
  return { contributions, total: overall, bySpeed, notSeparated };
}

/** The pulls with the spark of best torque of their set-up. */
export function splitPulls(
  accepted: readonly [readonly TakenPull[], readonly TakenPull[]],
  names: readonly [string, string],
  options: ResolvedOptions,
): [SplitPull[], SplitPull[]] {
  return accepted.map((side, i) => {
    const best = bestTorqueSparkOf(names[i]!, options);
    const at = best && side[0] && bestTorqueSparkAt(best, side[0].grid.engineSpeed);
    return side.map((taken): SplitPull => ({ taken, bestTorqueSpark: at }));
  }) as [SplitPull[], SplitPull[]];
}

const READINGS: Readonly<Record<string, readonly Exclude<ChannelRole, 'engineSpeed'>[]>> = {
  'charge pressure': ['manifoldPressure', 'boost'],
  'charge temperature': ['chargeTemperature'],
  'mixture (fuel per air)': ['lambda'],
  'spark timing': ['sparkAdvance'],
};

/** The mean reading of each side for a factor, from a channel that every pull of both sides has. */
function readingsOf(
  factor: string,
  sides: readonly [TakenPull[], TakenPull[]],
): Pick<Contribution, 'baseline' | 'candidate'> {
  const role = READINGS[factor]?.find((one) => sides.flat().every((pull) => pull.grid.channels[one]));
  const mean = (side: readonly TakenPull[]): Quantity | undefined => {
    if (role === undefined) return undefined;
    const columns = side.map((pull) => pull.grid.channels[role]!);
    return like(columns[0]!, columns.reduce((sum, column) => sum + meanSi(column)!, 0) / columns.length);
  };
  return { baseline: mean(sides[0]), candidate: mean(sides[1]) };
}
