import type { Sensor } from '../calculation/index.js';
import type { Leaf } from '../units/index.js';
import type { ChannelRole } from '../sweep/index.js';
import type { SplitSensor } from '../statistics/index.js';
import { factorsOf, meansOf, type MeanShift, type PullMeans } from './factors.js';
import { sensorsOf, type ResolvedOptions, type SensorSet } from './options.js';
import type { ComparedQuantity } from './result.js';
import type { TakenPull } from './taken-pull.js';

/** One error of one instrument. */
interface SensorError {
  readonly label: string;
  readonly leaf: Leaf;
  readonly shift: MeanShift;
}

/**
 * What the errors of the instruments do to each factor of a split, by moving each reading a little and splitting again. An error of an
 * instrument that read both set-ups stands in both, and so mostly cancels.
 */
export function splitSensors(
  compared: ComparedQuantity,
  names: readonly [string, string],
  sides: readonly [TakenPull[], TakenPull[]],
  options: ResolvedOptions,
): SplitSensor[] {
  const errors = names.map((name) => errorsOf(sensorsOf(name, options)));
  const leaves = new Set(errors.flat().map((error) => error.leaf));
  return [...leaves].map((leaf): SplitSensor => {
    const mine = errors.map((list) => list.find((error) => error.leaf === leaf));
    const effects = mine.map((error, i) => effectOn(error, compared, sides, i as 0 | 1));
    const { standard, degreesOfFreedom } = leaf.uncertainty!;
    return {
      name: (mine[0] ?? mine[1])!.label,
      standardUncertainty: standard,
      degreesOfFreedom,
      shared: mine.every((error) => error !== undefined),
      baseline: effects[0]!,
      candidate: effects[1]!,
    };
  });
}

function errorsOf(sensors: SensorSet): SensorError[] {
  return Object.entries(sensors).flatMap(([role, sensor]) => {
    const { label, correction, gainCorrection } = sensor as Sensor;
    const parts = [
      { quantity: correction, relative: false },
      { quantity: gainCorrection, relative: true },
    ];
    return parts.flatMap(({ quantity, relative }) => {
      const leaf = quantity?.origin;
      if (leaf?.type !== 'leaf' || !leaf.uncertainty) return [];
      // A hundredth of the uncertainty: small enough for a slope, large enough for its digits.
      const by = leaf.uncertainty.standard / 100;
      return [{ label, leaf, shift: { role: role as ChannelRole, by, relative } }];
    });
  });
}

/** Change of the mean logarithm of each factor on one side, per unit of the error. */
function effectOn(
  error: SensorError | undefined,
  compared: ComparedQuantity,
  sides: readonly [TakenPull[], TakenPull[]],
  side: 0 | 1,
): number[] {
  const at = (shift?: MeanShift): readonly number[] => {
    const means = sides.map((pulls, i) =>
      pulls.map(({ grid, result }) => meansOf(result.mean!.si, grid.channels, i === side ? shift : undefined)),
    ) as [PullMeans[], PullMeans[]];
    const { factors } = factorsOf(compared, means[0], means[1]);
    return factors.map((factor) => average(side === 0 ? factor.baseline : factor.candidate));
  };
  const before = at();
  if (!error) return before.map(() => 0);
  return at(error.shift).map((after, k) => (after - before[k]!) / error.shift.by);
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
