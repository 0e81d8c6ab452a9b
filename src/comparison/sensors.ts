import type { Sensor } from '../calculation/index.js';
import { usualSparkSensitivity } from '../engine/index.js';
import type { Leaf } from '../units/index.js';
import type { ChannelRole } from '../sweep/index.js';
import type { SplitSensor } from '../statistics/index.js';
import { bestTorqueSparkUncertainty } from './best-torque-spark.js';
import type { Factor } from './factors.js';
import { bestTorqueSparkOf, sensorsOf, type ResolvedOptions, type SensorSet } from './options.js';
import type { MeanShift, PullMeans, SplitPull } from './pull-means.js';

/** One error that bears on a split: what it moves on each side, undefined where it does not stand. */
export interface SplitError {
  readonly name: string;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  readonly shared: boolean;
  readonly shifts: readonly [MeanShift | undefined, MeanShift | undefined];
}

/**
 * The errors that bear on a split: of the instruments, of the spark of best torque, and of what a degree of spark is worth. An error of
 * an instrument that read both set-ups stands in both, and so mostly cancels.
 */
export function splitErrors(names: readonly [string, string], options: ResolvedOptions): SplitError[] {
  const found = names.map((name) => errorsOf(sensorsOf(name, options)));
  const leaves = new Set(found.flat().map((error) => error.leaf));
  const instruments = [...leaves].map((leaf): SplitError => {
    const [a, b] = found.map((list) => list.find((error) => error.leaf === leaf)) as [
      SensorError | undefined,
      SensorError | undefined,
    ];
    const { standard, degreesOfFreedom } = leaf.uncertainty!;
    return {
      name: (a ?? b)!.label,
      standardUncertainty: standard,
      degreesOfFreedom,
      shared: a !== undefined && b !== undefined,
      shifts: [a?.shift, b?.shift],
    };
  });
  return [...instruments, ...sparkErrors(names, options)];
}

interface SensorError {
  readonly label: string;
  readonly leaf: Leaf;
  readonly shift: MeanShift;
}

/** A hundredth of the uncertainty: small enough for a slope, large enough for its digits. */
const STEP = 0.01;

/** The channels that a split reads; the instruments of others have no part in it. */
const READ: ReadonlySet<string> = new Set<ChannelRole>([
  'torque',
  'power',
  'manifoldPressure',
  'boost',
  'barometer',
  'chargeTemperature',
  'roomTemperature',
  'intakeTemperature',
  'relativeHumidity',
  'airFlow',
  'lambda',
  'sparkAdvance',
]);

function errorsOf(sensors: SensorSet): SensorError[] {
  return Object.entries(sensors).flatMap(([role, sensor]) => {
    if (!READ.has(role)) return [];
    const { label, correction, gainCorrection } = sensor as Sensor;
    const parts = [
      { quantity: correction, relative: false },
      { quantity: gainCorrection, relative: true },
    ];
    return parts.flatMap(({ quantity, relative }) => {
      const leaf = quantity?.origin;
      if (leaf?.type !== 'leaf' || !leaf.uncertainty) return [];
      const by = leaf.uncertainty.standard * STEP;
      return [{ label, leaf, shift: { role: role as ChannelRole, by, relative } }];
    });
  });
}

/** One engine has one loss for each degree, so that error is shared; the spark of best torque is, where one was given for both. */
function sparkErrors(names: readonly [string, string], options: ResolvedOptions): SplitError[] {
  const [a, b] = names.map((name) => bestTorqueSparkOf(name, options));
  if (a === undefined || b === undefined) return [];
  const sensitivity = usualSparkSensitivity.origin as Leaf;
  const errorOf = (
    name: string,
    role: MeanShift['role'],
    standard: number,
    degreesOfFreedom: number,
    stands: readonly [boolean, boolean],
  ): SplitError[] => {
    if (standard === 0) return [];
    const shift: MeanShift = { role, by: standard * STEP, relative: false };
    return [
      {
        name,
        standardUncertainty: standard,
        degreesOfFreedom,
        shared: stands[0] && stands[1],
        shifts: [stands[0] ? shift : undefined, stands[1] ? shift : undefined],
      },
    ];
  };
  const loss = errorOf(sensitivity.label!, 'sparkSensitivity', sensitivity.uncertainty!.standard, Infinity, [
    true,
    true,
  ]);
  const best = (spark: typeof a, stands: readonly [boolean, boolean]): SplitError[] => {
    const { standard, degreesOfFreedom } = bestTorqueSparkUncertainty(spark);
    return errorOf('spark of best torque', 'bestTorqueSpark', standard, degreesOfFreedom, stands);
  };
  return [...loss, ...(a === b ? best(a, [true, true]) : [...best(a, [true, false]), ...best(b, [false, true])])];
}

/** What each error does to each factor, by moving it a little and taking the logarithms again. */
export function splitSensors(
  errors: readonly SplitError[],
  factors: readonly Factor[],
  sides: readonly [readonly SplitPull[], readonly SplitPull[]],
  means: (pull: SplitPull, shift?: MeanShift) => PullMeans,
): SplitSensor[] {
  if (errors.length === 0) return [];
  const before = sides.map((side) => side.map((pull) => logsOf(factors, means(pull))));
  const slopes = (shift: MeanShift | undefined, side: 0 | 1): number[] => {
    const total = factors.map(() => 0);
    if (shift === undefined) return total;
    sides[side].forEach((pull, i) => {
      logsOf(factors, means(pull, shift)).forEach((after, k) => {
        total[k]! += (after - before[side]![i]![k]!) / shift.by / sides[side].length;
      });
    });
    return total;
  };
  return errors.map(({ shifts, ...error }) => ({
    ...error,
    baseline: slopes(shifts[0], 0),
    candidate: slopes(shifts[1], 1),
  }));
}

function logsOf(factors: readonly Factor[], pull: PullMeans): number[] {
  return factors.map(({ log }) => log(pull));
}
