import type { Column } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import { splitCurves, type SplitOrder, type ContributionCurve as PlainCurve } from '../statistics/index.js';
import type { Factor } from './factors.js';
import type { ComparedQuantity, ResolvedOptions } from './options.js';
import { meansAtRow, type PullMeans, type SplitPull } from './pull-means.js';
import type { ContributionCurve, DifferenceCurve, Estimate } from './result.js';
import { splitSensors, type SplitError } from './sensors.js';
import type { TakenPull } from './taken-pull.js';
import { level, like } from './words.js';

/** What a split is made from. */
export interface SplitInputs {
  readonly accepted: readonly [TakenPull[], TakenPull[]];
  readonly compared: ComparedQuantity;
  readonly overall: Estimate;
  readonly curve: DifferenceCurve | undefined;
  readonly names: readonly [string, string];
  /** The order of the day, where a steady drift is taken out. */
  readonly order: SplitOrder | undefined;
}

/** What the split at each speed is made from. */
export interface SpeedSplitInputs extends SplitInputs {
  /** The factors that the range means tell apart: the same at every speed. */
  readonly factors: readonly Factor[];
  readonly errors: readonly SplitError[];
  readonly sides: readonly [SplitPull[], SplitPull[]];
}

/** The split at each engine speed, from each pull's channels there. A speed that lacks a channel in any pull is missing. */
export function splitBySpeed(inputs: SpeedSplitInputs, options: ResolvedOptions): ContributionCurve[] {
  const { sides, factors, errors, order } = inputs;
  const { engineSpeed } = sides[0][0]!.taken.grid;
  const rows: number[] = [];
  const points = Array.from(engineSpeed.si.keys()).flatMap((row) => {
    const at = (pull: SplitPull, shift?: Parameters<typeof meansAtRow>[2]): PullMeans => meansAtRow(pull, row, shift);
    const means = sides.map((side) => side.map((pull) => at(pull)));
    const logs = factors.map(({ name, log }) => ({
      name,
      baseline: means[0]!.map(log),
      candidate: means[1]!.map(log),
    }));
    if (!logs.every(({ baseline, candidate }) => [...baseline, ...candidate].every(Number.isFinite))) return [];
    rows.push(row);
    return [{ factors: logs, sensors: splitSensors(errors, factors, sides, at) }];
  });
  if (points.length === 0) return [];
  const rpm = engineSpeed.in('rpm');
  const { confidence, setUps } = options;
  const grid = rows.map((row) => rpm[row]!);
  const { contributions, total } = splitCurves(grid, points, { confidence, setUps, order });
  const beside = leftOver(inputs, grid, total);
  const place = { rows, engineSpeed, shape: inputs.overall.value, confidence, driftTakenOut: order !== undefined };
  return contributions.map((curve, k) => onGrid(curve, place, k === contributions.length - 1 ? beside : undefined));
}

/** What the difference of plain means is beside that of geometric ones at each speed; it goes to what is left over. */
function leftOver({ curve }: SpeedSplitInputs, grid: readonly number[], total: PlainCurve): number[] {
  const speeds = curve?.engineSpeed.in('rpm') ?? [];
  return grid.map((speed, j) => {
    const row = speeds.findIndex((one) => Math.abs(one - speed) < 0.5);
    return row < 0 ? 0 : curve!.difference.si[row]! - total.contribution[j]!;
  });
}

/** Where a curve stands among the speeds of the comparison. */
interface Place {
  readonly rows: readonly number[];
  readonly engineSpeed: Column<'rotational speed'>;
  readonly shape: SplitInputs['overall']['value'];
  readonly confidence: number;
  readonly driftTakenOut: boolean;
}

function onGrid(
  curve: PlainCurve,
  { rows, engineSpeed, shape, confidence, driftTakenOut }: Place,
  beside?: number[],
): ContributionCurve {
  const part = Array.from(curve.contribution, (value, j) => value + (beside?.[j] ?? 0));
  const full = (values: readonly number[]): Column => {
    const si = new Float64Array(engineSpeed.length).fill(NaN);
    rows.forEach((row, j) => (si[row] = values[j]!));
    return columnOf(shape.kind, si, shape.unit, undefined, NO_NOTES, 0);
  };
  const withoutDrift = driftTakenOut ? ' A steady drift through the day is taken out.' : '';
  const around = (half: Float64Array) => ({
    low: full(part.map((value, j) => value - half[j]!)),
    high: full(part.map((value, j) => value + half[j]!)),
  });
  return {
    factor: curve.name,
    part: full(part),
    pointwise: around(curve.pointwiseHalfWidth),
    simultaneous: around(curve.simultaneousHalfWidth),
    ranges: clearRanges(part, curve.simultaneousHalfWidth, rows, engineSpeed, shape),
    method:
      curve.method === 'band of the pull scores'
        ? `${level(confidence)} band for this factor's whole curve at once, as for the difference, from one score for each pull.${withoutDrift}`
        : `${level(confidence)} for each speed by itself, shared out over the speeds (Bonferroni), because the pulls agree exactly in this factor.${withoutDrift}`,
  };
}

/** Runs of neighbouring speeds at which the band clears zero on one side. */
function clearRanges(
  part: readonly number[],
  half: Float64Array,
  rows: readonly number[],
  engineSpeed: Column<'rotational speed'>,
  shape: Place['shape'],
): ContributionCurve['ranges'] {
  const signs = part.map((value, j) => (Math.abs(value) > half[j]! ? Math.sign(value) : 0));
  const found: ContributionCurve['ranges'][number][] = [];
  let from = 0;
  for (let end = 1; end <= signs.length; end++) {
    if (end < signs.length && signs[end] === signs[from]) continue;
    if (signs[from] !== 0) {
      const mean = part.slice(from, end).reduce((sum, value) => sum + value, 0) / (end - from);
      found.push({
        from: engineSpeed.at(rows[from]!),
        to: engineSpeed.at(rows[end - 1]!),
        outcome: signs[from]! > 0 ? 'raised' : 'lowered',
        part: like(shape, mean),
      });
    }
    from = end;
  }
  return found;
}
