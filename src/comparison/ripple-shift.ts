import type { RippleOverPulls } from '../statistics/index.js';
import { medianOf } from '../statistics/signal/index.js';
import type { Pull } from '../sweep/index.js';
import { timeBaseOf } from '../sweep/time-base.js';
import { decimals, named } from './words.js';

/**
 * What a follower logged later in one of two set-ups does to its curve along engine speed: by the lag times the ramp it moves along, and
 * where the curve is steep that passes for a change.
 *
 * @returns nothing where the lags are not told apart, or no pull has a ramp in time.
 */
export function shiftByLag(
  bySetUp: readonly { readonly setUp: string; readonly together: RippleOverPulls | undefined }[],
  pulls: readonly Pull[],
  follower: string,
): string {
  const lags = bySetUp.flatMap(({ setUp, together }) =>
    together?.agree === true && together.lagHalfWidth !== undefined
      ? [{ setUp, lag: together.lag, half: together.lagHalfWidth }]
      : [],
  );
  const ramp = medianOf(pulls.flatMap((pull) => rampOfPull(pull) ?? []));
  const [a, b] = lags;
  if (!a || !b || lags.length !== 2 || ramp === undefined) return '';
  const [earlier, later] = a.lag < b.lag ? [a, b] : [b, a];
  const apart = later.lag - earlier.lag;
  if (apart <= Math.hypot(a.half, b.half)) return '';
  return ` Logged ${decimals(apart, 2)} s later with ${named(later.setUp)}, ${follower} moves ${decimals(apart * ramp, 0)} rpm along engine speed (at ${decimals(ramp, 0)} rpm a second), which where the curve is steep can pass for a gain or a loss.`;
}

/** Change of engine speed from the first reading to the last, in rpm a second, up or down. */
function rampOfPull({ channels }: Pull): number | undefined {
  const { seconds } = timeBaseOf(channels);
  const rpm = channels.engineSpeed?.in('rpm');
  if (seconds === undefined || rpm === undefined) return undefined;
  const first = rpm.findIndex((one) => !Number.isNaN(one));
  const last = rpm.findLastIndex((one) => !Number.isNaN(one));
  return last > first ? Math.abs(rpm[last]! - rpm[first]!) / (seconds[last]! - seconds[first]!) : undefined;
}
