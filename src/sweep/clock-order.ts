import { naturalOrder } from './natural-order.js';
import type { Pull } from './pull.js';

/** The order in which pulls were made, by the clocks in their logs. */
export interface ClockOrder {
  /** From the first to the last. */
  readonly pulls: readonly Pull[];
  /** Seconds at which each began: since 1970 where the clocks have dates, else since the midnight before the first. */
  readonly when: ReadonlyMap<Pull, number>;
  /** From where the days are known: the dates in the logs; one day, which nothing says; or over midnight, as the names of the files go. */
  readonly days: 'dates' | 'one day' | 'over midnight';
}

const DAY = 86400;
/** Without dates, what lies further apart than this may as well lie the other way about, over midnight. */
const HALF_A_DAY = DAY / 2;
/** A break between days of at least this long parts two sessions; pulls over midnight are one. */
const NIGHT = 6 * 3600;

/**
 * The order of pulls by their clocks, or why it cannot be told. Clocks without dates are taken as one day, unless pulls lie more than
 * twelve hours apart: then the names of the files must say whether it went over midnight.
 *
 * @param pulls All with a clock.
 */
export function clockOrder(pulls: readonly Pull[]): ClockOrder | string {
  const dated = pulls.filter(({ date }) => date !== undefined).length;
  if (dated > 0 && dated < pulls.length) return `only ${dated} of ${pulls.length} pulls have a date`;
  if (dated > 0) {
    const at = ({ date, startClock }: Pull): number => Date.parse(`${date}T00:00:00Z`) / 1000 + startClock!.si;
    return ordered(pulls, at, 'dates');
  }
  const straight = ordered(pulls, ({ startClock }) => startClock!.si, 'one day');
  const clocks = straight.pulls.map((pull) => straight.when.get(pull)!);
  const gap = clocks.findIndex((clock, at) => at > 0 && clock - clocks[at - 1]! > HALF_A_DAY);
  if (gap < 0) {
    return hasJumpBack(pulls)
      ? 'the clocks have no date, and in the order of the names they jump back by more than 12 h'
      : straight;
  }
  // What lies before the gap is then of the day after.
  const around = ordered(
    pulls,
    ({ startClock }) => startClock!.si + (startClock!.si < clocks[gap]! ? DAY : 0),
    'over midnight',
  );
  const [isStraight, isAround] = [agreesWithNames(straight), agreesWithNames(around)];
  if (isStraight !== isAround) return isAround ? around : straight;
  return 'the clocks have no date and lie more than 12 h apart, and the names of the files do not say whether that is over midnight';
}

function ordered(pulls: readonly Pull[], at: (pull: Pull) => number, days: ClockOrder['days']): ClockOrder {
  const when = new Map(pulls.map((pull) => [pull, at(pull)]));
  return { pulls: [...pulls].sort((a, b) => when.get(a)! - when.get(b)!), when, days };
}

/** The pulls of each set-up by the names of their files, with numbers counted. */
function byNames(pulls: readonly Pull[]): Pull[][] {
  const setUps = new Map<string, Pull[]>();
  for (const pull of pulls) setUps.set(pull.setup ?? '', [...(setUps.get(pull.setup ?? '') ?? []), pull]);
  return [...setUps.values()].map((own) =>
    own.sort((a, b) => naturalOrder(a.file, b.file) || naturalOrder(a.name, b.name)),
  );
}

function hasJumpBack(pulls: readonly Pull[]): boolean {
  return byNames(pulls).some((own) =>
    own.some((pull, at) => at > 0 && own[at - 1]!.startClock!.si - pull.startClock!.si > HALF_A_DAY),
  );
}

function agreesWithNames({ pulls, when }: ClockOrder): boolean {
  return byNames(pulls).every((own) => own.every((pull, at) => at === 0 || when.get(own[at - 1]!)! < when.get(pull)!));
}

/** The pulls by session: a new one begins after a night. One where the days are not known. */
export function sessionsOf({ pulls, when, days }: ClockOrder): Pull[][] {
  const sessions: Pull[][] = [];
  let before: Pull | undefined;
  for (const pull of pulls) {
    const isNew =
      before === undefined ||
      (days === 'dates' && before.date !== pull.date && when.get(pull)! - when.get(before)! > NIGHT);
    if (isNew) sessions.push([]);
    sessions[sessions.length - 1]!.push(pull);
    before = pull;
  }
  return sessions;
}
