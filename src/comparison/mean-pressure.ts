import {
  brakeMeanEffectivePressure,
  brakeMeanEffectivePressureFromPower,
  fourStroke,
  twoStroke,
} from '../engine/index.js';
import type { Column, Quantity } from '../units/index.js';
import type { GriddedPull } from './curves.js';
import type { ResolvedOptions } from './options.js';
import type { TakenPull } from './taken-pull.js';
import { counted, like, named, shown } from './words.js';

type MeanPressure = Quantity<'mean effective pressure'>;

/** Where torque was measured behind gears, the torque there is not that of the crank. */
const BEHIND_GEARS = /\b(hub|wheel|roller|axle)s?\b/i;

/**
 * The highest mean effective pressure that a pull would have had, which tells a slip of units where both sides have the same one.
 * Undefined where the swept volume is not given, or torque comes from behind gears of which the ratio is not.
 */
export function highestMeanPressure(
  { channels, engineSpeed }: GriddedPull,
  options: ResolvedOptions,
): MeanPressure | undefined {
  const { sweptVolume, strokes, overallRatio } = options;
  if (sweptVolume === undefined) return undefined;
  const more = { sweptVolume, revolutionsPerCycle: strokes === 2 ? twoStroke : fourStroke };
  if (channels.torque) {
    if (overallRatio === undefined && isBehindGears(options)) return undefined;
    const row = highestRow(channels.torque.si);
    if (row === undefined) return undefined;
    const torque = like(channels.torque, channels.torque.si[row]! / (overallRatio?.si ?? 1));
    return brakeMeanEffectivePressure({ torque, ...more });
  }
  // No gears change power; what they lose makes this a little too low, which is no matter for a slip of units.
  if (!channels.power) return undefined;
  const row = highestRow(channels.power.si.map((si, at) => si / engineSpeed.si[at]!));
  if (row === undefined) return undefined;
  return brakeMeanEffectivePressureFromPower({
    power: at(channels.power, row),
    engineSpeed: at(engineSpeed, row),
    ...more,
  });
}

/** What the mean effective pressure makes one ask before any verdict: a sentence for each side with pulls beyond the limit. */
export function meanPressureSuspicions(
  sides: readonly [readonly TakenPull[], readonly TakenPull[]],
  names: readonly [string, string],
  { limits, units, strokes, measuredAt }: ResolvedOptions,
): string[] {
  // A two-stroke engine burns twice as often, at about half the pressure.
  const limit = like(limits.meanEffectivePressure, limits.meanEffectivePressure.si * (strokes === 2 ? 0.5 : 1));
  return sides.flatMap((side, i) => {
    const beyond = side.flatMap(({ result }) => {
      const own = result.highestMeanEffectivePressure;
      return own !== undefined && own.si > limit.si ? [own] : [];
    });
    if (beyond.length === 0) return [];
    const most = beyond.reduce((highest, one) => (one.si > highest.si ? one : highest));
    const where =
      measuredAt === '' ? 'was it measured behind gears (measuredAt, overallRatio)' : 'is the overall ratio right';
    return [
      `${counted(beyond.length, 'pull')} of ${named(names[i]!)} would have had a mean effective pressure of up to ${shown(most, units)}, and boosted spark-ignition engines stay below ${shown(limit, units)}: is the unit of torque right, ${where}, and the swept volume?`,
    ];
  });
}

/** Why no mean effective pressure was judged, where a swept volume was given for it. */
export function meanPressureLines(sides: readonly (readonly TakenPull[])[], options: ResolvedOptions): string[] {
  if (options.sweptVolume === undefined || options.overallRatio !== undefined || !isBehindGears(options)) return [];
  if (!sides.flat().some(({ grid }) => grid.channels.torque)) return [];
  return [
    `Torque was measured ${options.measuredAt}, and without overallRatio the mean effective pressure cannot be told: it was not judged.`,
  ];
}

const isBehindGears = ({ measuredAt }: ResolvedOptions): boolean => BEHIND_GEARS.test(measuredAt);

function highestRow(values: Float64Array): number | undefined {
  let row: number | undefined;
  values.forEach((value, at) => {
    if (!Number.isNaN(value) && (row === undefined || value > values[row]!)) row = at;
  });
  return row !== undefined && values[row]! > 0 ? row : undefined;
}

const at = <K extends 'power' | 'rotational speed'>(column: Column<K>, row: number): Quantity<K> =>
  like(column, column.si[row]!);
