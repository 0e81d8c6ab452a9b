import type { Quantity } from '../units/index.js';
import type { ChannelRole } from '../sweep/index.js';
import { factorsOf, meansOf, meanSi, type PullMeans } from './factors.js';
import type { ResolvedOptions } from './options.js';
import type { ComparedQuantity, Contribution, Estimate, Split } from './result.js';
import { additiveSplit } from '../statistics/index.js';
import type { TakenPull } from './taken-pulls.js';
import { like } from './words.js';

/**
 * The exact split of the change into what the channels can tell apart.
 *
 * Its weights speak of geometric means over the pulls and the headline of plain ones, with the drift through the day taken out where
 * that was done; the small difference goes to the last factor, which is what is left over anyway. So the parts add up to the headline.
 */
export function splitOf(
  accepted: readonly [TakenPull[], TakenPull[]],
  compared: ComparedQuantity,
  overall: Estimate,
  { confidence }: ResolvedOptions,
): Split {
  const means = accepted.map((side) => side.map(({ grid, result }) => meansOf(result.mean!.si, grid.channels))) as [
    PullMeans[],
    PullMeans[],
  ];
  const { factors, notSeparated } = factorsOf(compared, means[0], means[1]);
  const split = additiveSplit(factors, [], { confidence });
  const quantity = (si: number): Quantity => like(overall.value, si);
  const leftOver = overall.value.si - split.total.contribution;
  const estimate = (part: (typeof split.contributions)[number], by = 0): Estimate => ({
    value: quantity(part.contribution + by),
    low: quantity(part.lower + by),
    high: quantity(part.upper + by),
    standardUncertainty: quantity(part.combined.standardUncertainty),
    degreesOfFreedom: part.combined.degreesOfFreedom,
  });
  const contributions: Contribution[] = split.contributions.map((part, i, all) => ({
    factor: part.name,
    part: estimate(part, i === all.length - 1 ? leftOver : 0),
    percent: Math.expm1(part.logChange) * 100,
    ...readingsOf(part.name, accepted),
  }));
  return { contributions, total: overall, notSeparated };
}

const READINGS: Readonly<Record<string, readonly Exclude<ChannelRole, 'engineSpeed'>[]>> = {
  'charge pressure': ['manifoldPressure', 'boost'],
  'charge temperature': ['chargeTemperature'],
  'mixture (fuel per air)': ['lambda'],
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
