import type { Pull, SetUp } from '../sweep/index.js';
import { clockOrder, sessionsOf, type ClockOrder } from '../sweep/clock-order.js';
import type { ResolvedOptions } from './options.js';
import { counted, listed } from './words.js';

/** The order in which the pulls of a comparison were made. */
export interface Places {
  /** Place of each pull, from 1; without those of which nobody knows. */
  readonly of: ReadonlyMap<Pull, number>;
  /** Seconds at which a pull began, over days; undefined where clocks are not to be gone by. */
  readonly when: (pull: Pull) => number | undefined;
  /** What a reader must know about the order. */
  readonly remarks: readonly string[];
}

/**
 * Each pull's place in the day: by the order given, else by the clocks in the files, else unknown. A pull without a clock has no place,
 * and does not take that of the others away.
 *
 * An order given by hand goes before the clocks, since the clock of a logger may never have been set; where they contradict each other
 * that is said, and the clocks then count for nothing.
 */
export function placesOf(baseline: SetUp, candidate: SetUp, { order }: ResolvedOptions): Places {
  const pulls = [...baseline.pulls, ...candidate.pulls];
  const clocked = pulls.filter(({ startClock }) => startClock !== undefined);
  const found = clocked.length === 0 ? undefined : clockOrder(clocked);
  const byTime = typeof found === 'object' ? found : undefined;
  const unknown = typeof found === 'string' ? [`The clocks in the logs do not tell the order: ${found}.`] : [];
  const when = (pull: Pull): number | undefined => byTime?.when.get(pull);
  if (!order) return { of: placed(byTime?.pulls ?? []), when, remarks: byTime ? daysInWords(byTime) : unknown };
  const left = new Map(
    [baseline, candidate].map((setUp) => [
      setUp.name,
      byTime && setUp.pulls.every((pull) => byTime.when.has(pull))
        ? byTime.pulls.filter((pull) => setUp.pulls.includes(pull))
        : [...setUp.pulls],
    ]),
  );
  const byHand = order.flatMap((name) => left.get(name)?.shift() ?? []);
  const letters = (inOrder: readonly Pull[]): string =>
    inOrder.map((pull) => (baseline.pulls.includes(pull) ? 'A' : 'B')).join('');
  const given = `The order of the pulls was given by hand (${letters(byHand)})`;
  if (byTime === undefined) {
    const remark = `${given}; the logs have no clocks that could show it.`;
    return { of: placed(byHand), when, remarks: [remark] };
  }
  const known = byHand.filter((pull) => byTime.when.has(pull));
  if (known.some((pull, place) => pull !== byTime.pulls[place])) {
    const remark = `${given}, and the clocks in the logs contradict it (${letters(byTime.pulls)}). The order given counts and the clocks do not: make sure which is right, since drift is told from the change by it.`;
    return { of: placed(byHand), when: () => undefined, remarks: [remark] };
  }
  return { of: placed(byHand), when, remarks: [`${given}; the clocks in the logs agree.`, ...daysInWords(byTime)] };
}

/** What is to be known of the days of the accepted pulls. */
export interface Sessions {
  /** A sentence for what the answer rests on; none for one session. */
  readonly remark: string | undefined;
  /** Why a difference of days passes for the change: each set-up has days of its own. */
  readonly confounded: string | undefined;
}

/** The days on which pulls were made, where that is more than one: within a session pulls repeat, and a day repeats only as a whole. */
export function sessionsBetween(sides: readonly [readonly Pull[], readonly Pull[]]): Sessions {
  const none = { remark: undefined, confounded: undefined };
  const pulls = sides.flat();
  if (pulls.length === 0 || pulls.some(({ startClock, date }) => startClock === undefined || date === undefined)) {
    return none;
  }
  const order = clockOrder(pulls);
  const sessions = typeof order === 'string' ? [] : sessionsOf(order);
  if (sessions.length < 2) return none;
  const days = listed(sessions.map(([first]) => first!.date!));
  const unit = `The pulls are of ${counted(sessions.length, 'session')} (${days}). What repeats is then the session and not the pull: scatter from pull to pull says nothing of one day against another.`;
  const isMixed = sessions.some((session) => sides.every((side) => session.some((pull) => side.includes(pull))));
  if (isMixed) return { remark: unit, confounded: undefined };
  return {
    remark: unit,
    confounded: `Each set-up has days of its own (${days}), so whatever differs from day to day passes for the change, and the interval does not hold it. Run both set-ups in one session.`,
  };
}

const placed = (inOrder: readonly Pull[]): ReadonlyMap<Pull, number> =>
  new Map(inOrder.map((pull, place) => [pull, place + 1]));

function daysInWords({ days }: ClockOrder): string[] {
  switch (days) {
    case 'dates':
      return [];
    case 'one day':
      return [
        'The clocks in the logs have no date: the pulls are taken to be of one day. If they are not, give order: [...].',
      ];
    case 'over midnight':
      return [
        'The clocks in the logs have no date: the pulls are taken as going over midnight, as the names of the files do.',
      ];
  }
}
