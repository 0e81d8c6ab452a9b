import type { Quantity } from '../units/index.js';
import type { ChannelRole } from '../sweep/index.js';
import { factorsOf, meansOf, meanSi, type PullMeans } from './factors.js';
import type { ResolvedOptions } from './options.js';
import type { ComparedQuantity, Contribution, Estimate, Split } from './result.js';
import { additiveSplit } from './statistics/index.js';
import type { TakenPull } from './taken-pulls.js';
import { like } from './words.js';

/** The exact split of the change into what the channels can tell apart. */
export function splitOf(
  accepted: readonly [TakenPull[], TakenPull[]],
  compared: ComparedQuantity,
  whole: Quantity,
  { confidence }: ResolvedOptions,
): Split {
  const means = accepted.map((side) => side.map(({ grid, result }) => meansOf(result.mean!.si, grid.channels))) as [
    PullMeans[],
    PullMeans[],
  ];
  const { factors, notSeparated } = factorsOf(compared, means[0], means[1]);
  const split = additiveSplit(factors, [], { confidence });
  const quantity = (si: number): Quantity => like(whole, si);
  const estimate = (part: (typeof split.contributions)[number]): Estimate => ({
    value: quantity(part.contribution),
    low: quantity(part.lower),
    high: quantity(part.upper),
    standardUncertainty: quantity(part.combined.standardUncertainty),
    degreesOfFreedom: part.combined.degreesOfFreedom,
  });
  const contributions: Contribution[] = split.contributions.map((part) => ({
    factor: part.name,
    part: estimate(part),
    percent: Math.expm1(part.logChange) * 100,
    baseline: readingOf(part.name, accepted[0]),
    candidate: readingOf(part.name, accepted[1]),
  }));
  return { contributions, total: estimate(split.total), notSeparated };
}

const READINGS: Readonly<Record<string, readonly Exclude<ChannelRole, 'engineSpeed'>[]>> = {
  'charge pressure': ['manifoldPressure', 'boost'],
  'charge temperature': ['chargeTemperature'],
  'mixture (fuel per air)': ['lambda'],
};

/** Mean reading of a side for a factor, over its accepted pulls. */
function readingOf(factor: string, side: readonly TakenPull[]): Quantity | undefined {
  const role = READINGS[factor]?.find((candidate) => side.every((pull) => pull.grid.channels[candidate]));
  if (role === undefined) return undefined;
  const columns = side.map((pull) => pull.grid.channels[role]!);
  const si = columns.reduce((sum, column) => sum + meanSi(column)!, 0) / columns.length;
  return like(columns[0]!, si);
}
