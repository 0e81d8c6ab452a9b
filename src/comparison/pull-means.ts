import type { Column } from '../units/index.js';
import type { ChannelRole } from '../sweep/index.js';
import { humidityRatioFromVapourPressure, saturationPressure } from '../psychrometrics/index.js';
import { usualSparkSensitivity } from '../engine/index.js';
import { DEGREES } from './best-torque-spark.js';
import type { TakenPull } from './taken-pull.js';

/** What explains the result of one pull, over the range or at one speed, in SI; what was not logged is undefined. */
export interface PullMeans {
  /** The compared quantity. */
  readonly whole: number;
  readonly manifoldPressure: number | undefined;
  readonly chargeTemperature: number | undefined;
  /** Vapour mass over dry-air mass of the room air, which the charge keeps. */
  readonly humidityRatio: number | undefined;
  readonly airFlow: number | undefined;
  readonly lambda: number | undefined;
  readonly sparkAdvance: number | undefined;
  /** Share of the torque that spark timing leaves, by its mean square distance from best torque; where that is known. */
  readonly sparkRetained: number | undefined;
}

/** Something moved, to see what follows: by a fixed amount in SI, or by a share of it. */
export interface MeanShift {
  readonly role: ChannelRole | 'bestTorqueSpark' | 'sparkSensitivity';
  readonly by: number;
  readonly relative: boolean;
}

/** A pull as a split reads it. */
export interface SplitPull {
  readonly taken: TakenPull;
  /** Spark of best torque at each speed of the grid, in radians, where it was given. */
  readonly bestTorqueSpark: Float64Array | undefined;
}

/** The means of a pull over the range. Rows without a value are left out of each. */
export function meansOverRange(pull: SplitPull, shift?: MeanShift): PullMeans {
  const { channels } = pull.taken.grid;
  return meansFrom(
    pull.taken.result.mean!.si,
    (role) => meanSi(channels[role as 'boost']),
    squareOverRange,
    pull,
    shift,
  );
}

/** The same at one speed. */
export function meansAtRow(pull: SplitPull, row: number, shift?: MeanShift): PullMeans {
  const { channels } = pull.taken.grid;
  const at = (role: ChannelRole): number | undefined => {
    const si = channels[role as 'boost']?.si[row];
    return si === undefined || Number.isNaN(si) ? undefined : si;
  };
  return meansFrom(pull.taken.result.curve.si[row]!, at, (one, moved) => squareAtRow(one, moved, row), pull, shift);
}

function meansFrom(
  compared: number,
  read: (role: ChannelRole) => number | undefined,
  squareFrom: (pull: SplitPull, moved: Moved) => number | undefined,
  pull: SplitPull,
  shift: MeanShift | undefined,
): PullMeans {
  const moved: Moved = (role, value) =>
    shift?.role !== role ? value : shift.relative ? value * (1 + shift.by) : value + shift.by;
  const of = (role: ChannelRole): number | undefined => {
    const value = read(role);
    return value === undefined ? undefined : moved(role, value);
  };
  const { role } = shift ?? {};
  const logged = role !== undefined && makes(role, pull.taken.result.curve) ? read(role as ChannelRole) : undefined;
  const barometer = of('barometer');
  const boost = of('boost');
  const room = of('roomTemperature') ?? of('intakeTemperature');
  const humidity = of('relativeHumidity');
  const vapour = humidity !== undefined && room !== undefined ? humidity * saturationPressure.kernel(room) : undefined;
  const square = squareFrom(pull, moved);
  return {
    whole: logged === undefined ? compared : (compared * moved(role!, logged)) / logged,
    manifoldPressure:
      of('manifoldPressure') ?? (boost !== undefined && barometer !== undefined ? boost + barometer : undefined),
    chargeTemperature: of('chargeTemperature'),
    humidityRatio:
      vapour !== undefined && barometer !== undefined
        ? humidityRatioFromVapourPressure.kernel(barometer, vapour)
        : undefined,
    airFlow: of('airFlow'),
    lambda: of('lambda'),
    sparkAdvance: of('sparkAdvance'),
    // Torque about its best is a parabola in degrees, so its mean over a range goes with the mean of the squares.
    sparkRetained: square === undefined ? undefined : 1 - moved('sparkSensitivity', usualSparkSensitivity.si) * square,
  };
}

/** Whether the compared quantity is made from a channel, in proportion to it. */
function makes(role: MeanShift['role'], { kind }: Column): boolean {
  return kind === 'power' || kind === 'torque' ? role === 'torque' || role === 'power' : role === 'airFlow';
}

type Moved = (role: MeanShift['role'], value: number) => number;

/** Square of the distance from best torque at a row, in degrees of the crank. */
function squareAtRow({ taken, bestTorqueSpark }: SplitPull, moved: Moved, row: number): number | undefined {
  const spark = taken.grid.channels.sparkAdvance?.si[row];
  if (spark === undefined || Number.isNaN(spark) || bestTorqueSpark === undefined) return undefined;
  const distance = moved('sparkAdvance', spark) - moved('bestTorqueSpark', bestTorqueSpark[row]!);
  return (distance * DEGREES) ** 2;
}

function squareOverRange(pull: SplitPull, moved: Moved): number | undefined {
  const { sparkAdvance } = pull.taken.grid.channels;
  if (sparkAdvance === undefined) return undefined;
  let sum = 0;
  let count = 0;
  for (let row = 0; row < sparkAdvance.length; row++) {
    const square = squareAtRow(pull, moved, row);
    if (square === undefined) continue;
    sum += square;
    count++;
  }
  return count === 0 ? undefined : sum / count;
}

/** Mean of a column's rows that have a value. */
export function meanSi(column: Column | undefined): number | undefined {
  if (!column) return undefined;
  let sum = 0;
  let count = 0;
  for (const si of column.si) {
    if (Number.isNaN(si)) continue;
    sum += si;
    count++;
  }
  return count === 0 ? undefined : sum / count;
}
