import { pressureAltitude } from '../air/index.js';
import type { Pull } from '../sweep/index.js';
import { absolutePressure, pressureDifference } from '../units/index.js';
import type { Objection } from './objection.js';
import type { ResolvedOptions } from './options.js';
import { meanSi } from './pull-means.js';
import type { TakenPull } from './taken-pull.js';
import { decimals, named, shown } from './words.js';

/** Furthest that weather moves the barometer of one place, Pa, however long it takes; common practice, no source. */
const WEATHER_AT_MOST = 5000;

/** One reading of the barometer and when it was made. */
interface Reading {
  readonly pressure: number;
  readonly at: number | undefined;
}

/**
 * Whether the barometer jumps from set-up to set-up by more than weather does in the time between: then one is reduced to sea level, and
 * every correction and every absolute pressure made from it is wrong. The two pulls that lie nearest in time are held against each other.
 */
export function barometerObjections(
  sides: readonly [readonly TakenPull[], readonly TakenPull[]],
  names: readonly [string, string],
  when: (pull: Pull) => number | undefined,
  { limits, units }: ResolvedOptions,
): Objection[] {
  const [a, b] = sides.map((side) =>
    side.flatMap(({ pull, grid }): Reading[] => {
      const pressure = meanSi(grid.channels.barometer);
      return pressure === undefined ? [] : [{ pressure, at: when(pull) }];
    }),
  ) as [Reading[], Reading[]];
  const pairs = a.flatMap((one) => b.map((other) => ({ one, other, seconds: secondsBetween(one, other) })));
  const [nearest] = pairs.sort((x, y) => (x.seconds ?? Infinity) - (y.seconds ?? Infinity));
  if (nearest === undefined) return [];
  const { one, other, seconds } = nearest;
  const hours = seconds === undefined ? undefined : seconds / 3600;
  const byWeather = Math.min(WEATHER_AT_MOST, (hours ?? Infinity) * limits.barometerPerHour.si);
  const allowed = limits.barometerBetweenSetUps.si + byWeather;
  const change = other.pressure - one.pressure;
  if (Math.abs(change) <= allowed) return [];
  const unit = { ...units, 'pressure difference': units['pressure difference'] ?? 'hPa' };
  const [jump, most] = [Math.abs(change), allowed].map((si) => shown(pressureDifference(si, 'Pa'), unit)) as [
    string,
    string,
  ];
  const time = hours === undefined ? 'from one day to another' : `in the ${decimals(hours, 1)} hours between`;
  const metres = heightBetween(one.pressure, other.pressure);
  const height = metres === undefined ? '' : `, as ${decimals(metres, 0)} m of height would make`;
  return [
    {
      outcome: 'reading suspected',
      sentence: `Before judging: the barometer is ${jump} ${change > 0 ? 'higher' : 'lower'} with ${named(names[1])}${height}, and weather moves it by ${most} at most ${time}. Is one of the two reduced to sea level?`,
      mend: "Log the pressure at the place, and mend the one that is not. Where both are right, say how far they may lie apart: limits: { barometerBetweenSetUps: pressureDifference(8, 'kPa') }.",
    },
  ];
}

function secondsBetween(one: Reading, other: Reading): number | undefined {
  return one.at === undefined || other.at === undefined ? undefined : Math.abs(one.at - other.at);
}

/** Height that two pressures lie apart in the standard atmosphere, metres; undefined where they are no pressures of the air. */
function heightBetween(a: number, b: number): number | undefined {
  if (![a, b].every((si) => si >= 4e4 && si <= 1.2e5)) return undefined;
  const [one, other] = [a, b].map((si) => pressureAltitude({ pressure: absolutePressure(si, 'Pa') }).in('m'));
  return Math.abs(one! - other!);
}
