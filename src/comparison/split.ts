import type { Quantity } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import type { ChannelRole, Channels } from '../sweep/index.js';
import { factorsOf, meansOf, meanSi, type PullMeans } from './factors.js';
import type { ResolvedOptions } from './options.js';
import type { ComparedQuantity, Contribution, Estimate, Split } from './result.js';
import { additiveSplit } from '../statistics/index.js';
import { splitSensors } from './sensors.js';
import type { TakenPull } from './taken-pull.js';
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
  names: readonly [string, string],
  options: ResolvedOptions,
): Split {
  const means = accepted.map((side) => side.map(({ grid, result }) => meansOf(result.mean!.si, grid.channels))) as [
    PullMeans[],
    PullMeans[],
  ];
  const { factors, notSeparated } = factorsOf(compared, means[0], means[1]);
  const split = additiveSplit(factors, splitSensors(compared, names, accepted, options), {
    confidence: options.confidence,
  });
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
  return { contributions, total: overall, bySpeed: bySpeed(accepted, compared, overall), notSeparated };
}

/** The split at each engine speed, from each pull's channels there. A speed that lacks a channel in any pull is missing. */
function bySpeed(
  accepted: readonly [TakenPull[], TakenPull[]],
  compared: ComparedQuantity,
  shape: Estimate,
): Split['bySpeed'] {
  const rows = accepted[0][0]!.result.curve.length;
  const parts = new Map<string, Float64Array>();
  for (let row = 0; row < rows; row++) {
    const means = accepted.map((side) =>
      side.map(({ grid, result }) => meansOf(result.curve.si[row]!, atRow(grid.channels, row))),
    ) as [PullMeans[], PullMeans[]];
    if (means.flat().some((pull) => !(pull.whole > 0))) continue;
    const { factors } = factorsOf(compared, means[0], means[1]);
    for (const { name, contribution } of additiveSplit(factors).contributions) {
      if (!parts.has(name)) parts.set(name, new Float64Array(rows).fill(NaN));
      parts.get(name)![row] = contribution;
    }
  }
  const { kind, unit } = shape.value;
  return [...parts].map(([factor, si]) => ({ factor, part: columnOf(kind, si, unit, undefined, NO_NOTES, 0) }));
}

/** The channels at one engine speed, as columns of one row. */
function atRow(channels: TakenPull['grid']['channels'], row: number): Channels {
  const one = Object.entries(channels).map(([role, { kind, si, unit }]) => {
    return [role, columnOf(kind, Float64Array.of(si[row]!), unit, undefined, NO_NOTES, 0)] as const;
  });
  return Object.fromEntries(one);
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
