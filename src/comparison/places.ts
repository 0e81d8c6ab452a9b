import type { Pull, SetUp } from '../sweep/index.js';
import { byClock } from '../sweep/day.js';
import type { ResolvedOptions } from './options.js';

/** The order in which the pulls of a comparison were made. */
export interface Places {
  /** Place of each pull, from 1; empty where nobody knows. */
  readonly of: ReadonlyMap<Pull, number>;
  /** Seconds at which a pull began, over days; undefined where clocks are not to be gone by. */
  readonly when: (pull: Pull) => number | undefined;
  /** What a reader must know about an order that was given by hand. */
  readonly remark: string | undefined;
}

/**
 * Each pull's place in the day: by the order given, else by the clocks in the files, else unknown.
 *
 * An order given by hand goes before the clocks, since the clock of a logger may never have been set; where they contradict each other
 * that is said, and the clocks then count for nothing.
 */
export function placesOf(baseline: SetUp, candidate: SetUp, { order }: ResolvedOptions): Places {
  const pulls = [...baseline.pulls, ...candidate.pulls];
  const byTime = pulls.every(
    ({ startClock, date }) => startClock !== undefined && (date === undefined) === (pulls[0]!.date === undefined),
  )
    ? [...pulls].sort(byClock)
    : undefined;
  if (!order) return { of: placed(byTime ?? []), when: byTime ? secondsOf : () => undefined, remark: undefined };
  const left = new Map(
    [baseline, candidate].map((setUp) => [
      setUp.name,
      byTime?.filter((pull) => setUp.pulls.includes(pull)) ?? [...setUp.pulls],
    ]),
  );
  const byHand = order.flatMap((name) => left.get(name)?.shift() ?? []);
  const letters = (inOrder: readonly Pull[]): string =>
    inOrder.map((pull) => (baseline.pulls.includes(pull) ? 'A' : 'B')).join('');
  const given = `The order of the pulls was given by hand (${letters(byHand)})`;
  const isContradicted = byTime !== undefined && byHand.some((pull, place) => pull !== byTime[place]);
  if (isContradicted) {
    const remark = `${given}, and the clocks in the logs contradict it (${letters(byTime)}). The order given counts and the clocks do not: make sure which is right, since drift is told from the change by it.`;
    return { of: placed(byHand), when: () => undefined, remark };
  }
  const agreed = byTime ? 'the clocks in the logs agree' : 'the logs have no clocks that could show it';
  return { of: placed(byHand), when: byTime ? secondsOf : () => undefined, remark: `${given}; ${agreed}.` };
}

const placed = (inOrder: readonly Pull[]): ReadonlyMap<Pull, number> =>
  new Map(inOrder.map((pull, place) => [pull, place + 1]));

function secondsOf({ startClock, date }: Pull): number | undefined {
  const day = date === undefined ? 0 : Date.parse(`${date}T00:00:00Z`) / 1000;
  return startClock && startClock.si + day;
}
