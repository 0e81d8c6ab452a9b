import { bestOrder, driftDifference, orderDesign, StatisticsError, type DriftDifference } from '../statistics/index.js';

/** A pull of one side with its place in the day. */
export interface PlacedPull {
  readonly side: 'A' | 'B';
  /** Range mean in SI. */
  readonly mean: number;
  /** Place in the order of the day; undefined where nobody knows it. */
  readonly order: number | undefined;
  /** Seconds, where the files tell. */
  readonly clock: number | undefined;
}

/** What the order of the pulls lets be done about drift. */
export interface OrderFinding {
  /** Why drift cannot be told from the change, in a sentence; undefined where the order of the pulls lets it be told. */
  readonly hidden: string | undefined;
  /** The difference with a steady drift taken out, where that can be done. */
  readonly corrected: DriftDifference | undefined;
  /** The pulls as they were made, where that is known: side by side with when, in any unit of time. */
  readonly made: PullsAsMade | undefined;
}

/** The pulls in the order of the day. */
export interface PullsAsMade {
  readonly letters: string;
  readonly times: readonly number[];
  /** For each of them its place in the list of baseline pulls followed by candidate pulls. */
  readonly pulls: readonly number[];
}

/** Looks at the order of the accepted pulls. */
export function orderFinding(pulls: readonly PlacedPull[], confidence: number): OrderFinding {
  if (pulls.some((pull) => pull.order === undefined)) {
    return {
      hidden:
        'Change or drift? The order of the pulls is not known. Give order: [...], or return to the baseline for two pulls next time.',
      corrected: undefined,
      made: undefined,
    };
  }
  const indices = pulls.map((_, i) => i).sort((i, j) => pulls[i]!.order! - pulls[j]!.order!);
  const inOrder = indices.map((i) => pulls[i]!);
  const letters = inOrder.map((pull) => pull.side).join('');
  const clocks = inOrder.map((pull) => pull.clock);
  const times = clocks.every((clock) => clock !== undefined) ? clocks : inOrder.map((pull) => pull.order!);
  const made = { letters, times, pulls: indices };
  try {
    const { confounded, degreesOfFreedom } = orderDesign(letters, { times });
    const values = inOrder.map((pull) => pull.mean);
    return {
      hidden: confounded
        ? `The order of the pulls (${letters}) hides the change in any drift over the day: the pulls of a set-up stand together. Alternate next time.`
        : undefined,
      corrected: degreesOfFreedom > 0 ? driftDifference(letters, values, { times, confidence }) : undefined,
      made,
    };
  } catch (error) {
    if (!(error instanceof StatisticsError)) throw error;
    const hidden = `The order of the pulls (${letters}) cannot tell drift from the change.`;
    return { hidden, corrected: undefined, made };
  }
}

/** Fewest degrees of freedom that a drift term must leave: below, what it costs is more than what it saves. */
export const FEWEST_DEGREES = 3;

/** Pulls that leave them: the mean, the change and the drift take one each. */
export const FEWEST_PULLS_FOR_DRIFT = FEWEST_DEGREES + 3;

/** What became of a drift through the day. */
export interface DriftTreatment {
  readonly takenOut: boolean;
  /** Whether a steady drift cannot pass for the change: it is taken out, or the order lets it cancel. */
  readonly separable: boolean;
  /** One sentence for the reader. */
  readonly sentence: string;
}

/**
 * A drift that leaves no more than this share of the standard error that it gives the difference itself, by scattering the pulls, has
 * cancelled: it cannot make a difference look resolved.
 */
const CANCELLED = 0.2;

/** Less than this share of the drift from pull to pull is nothing. */
const NOTHING = 0.05;

/** What the reader is told about drift: what was done about it, and not what the order would have allowed. */
export function driftTreatment(
  { hidden, made }: OrderFinding,
  takenOut: boolean,
  drift: 'take out' | 'leave in' | undefined,
): DriftTreatment {
  if (hidden !== undefined || made === undefined) return { takenOut: false, separable: false, sentence: hidden ?? '' };
  const { letters } = made;
  const turns = `The set-ups took turns (${letters})`;
  if (takenOut) {
    const sentence = `${turns}, and a steady drift over the day is taken out, so it cannot pass for the change.`;
    return { takenOut, separable: true, sentence };
  }
  const left =
    drift === 'leave in'
      ? 'it is left in, as asked'
      : `it is not taken out, which needs ${FEWEST_PULLS_FOR_DRIFT} pulls, and there are ${letters.length}`;
  const { leak, ownError } = driftLeftIn(made);
  if (Math.abs(leak) <= NOTHING) {
    const sentence = `${turns} such that a steady drift over the day cancels in the difference by itself; ${left}.`;
    return { takenOut, separable: true, sentence };
  }
  const shows = `of a steady drift of 1 % from pull to pull, ${Math.abs(leak).toFixed(1)} % shows in the difference`;
  if (Math.abs(leak) <= CANCELLED * ownError) {
    const sentence = `${turns} such that a steady drift over the day cancels in the difference nearly: ${shows}, less than the interval allows for; ${left}.`;
    return { takenOut, separable: true, sentence };
  }
  const pulls = letters.length;
  const better = pulls < FEWEST_PULLS_FOR_DRIFT ? ` In the order ${bestOrder(pulls)} it would cancel.` : '';
  return {
    takenOut,
    separable: false,
    sentence: `${turns}, but drift over the day can pass for the change: ${shows}, and ${left}.${better}`,
  };
}

/**
 * What a drift of one from pull to pull does to the difference of plain means: how much of it shows, and the standard error that it
 * gives by scattering the pulls.
 */
function driftLeftIn({ letters, times }: PullsAsMade): { readonly leak: number; readonly ownError: number } {
  const step = (times[times.length - 1]! - times[0]!) / (times.length - 1);
  const of = (letter: string) => {
    const own = times.filter((_, i) => letters[i] === letter).map((time) => time / step);
    const mean = own.reduce((sum, time) => sum + time, 0) / own.length;
    const squares = own.reduce((sum, time) => sum + (time - mean) ** 2, 0);
    return { mean, variance: own.length < 2 ? 0 : squares / (own.length - 1) / own.length };
  };
  const [a, b] = [of('A'), of('B')];
  return { leak: b.mean - a.mean, ownError: Math.sqrt(a.variance + b.variance) };
}
