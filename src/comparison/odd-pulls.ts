import type { Quantity } from '../units/index.js';
import { driftDifference, oddPulls, oddPullsInOrder, StatisticsError } from '../statistics/index.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import type { PullsAsMade } from './order.js';
import { differenceWithoutDrift, estimateOf, plainDifference } from './overall.js';
import type { Estimate, Outcome } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { outcomeOf } from './verdict.js';
import { betweenSigned, decimals, like, named, shown, signed } from './words.js';

/** A pull that lies beyond luck from the others. It counts all the same. */
export interface OddPull {
  readonly pull: string;
  readonly setUp: string;
  /** What was found, with the answer that the other pulls give, and what to do. */
  readonly sentence: string;
  /** Said where the verdict hangs on it. */
  readonly reservation: string | undefined;
  /** What to do next. */
  readonly mend: string;
}

/** What odd pulls are looked for in. */
export interface OddPullInputs {
  readonly accepted: readonly [readonly TakenPull[], readonly TakenPull[]];
  readonly names: readonly [string, string];
  /** The order of the pulls, where a steady drift is taken out of the answer. */
  readonly made: PullsAsMade | undefined;
  /** The outcome with all of them. */
  readonly outcome: Outcome;
}

/** Every pull that lies beyond luck from the others, by the model of the answer, with the answer that is left without it. */
export function oddPullsOf(inputs: OddPullInputs, options: ResolvedOptions): OddPull[] {
  const { accepted, names, made } = inputs;
  const values = accepted.flat().map(({ result }) => result.mean!.si);
  const { critical, found } = checksOf(values, accepted[0].length, made);
  return found.map(({ place, off, t }) => {
    const side = place < accepted[0].length ? 0 : 1;
    const taken = accepted.flat()[place]!;
    const name = `${taken.result.name} of ${named(names[side])}`;
    const amount = shown(like(taken.result.mean!, Math.abs(off)), options.units);
    const left = answerWithout(place, inputs, options);
    const hangs = left !== undefined && left.outcome !== inputs.outcome;
    const withoutIt =
      left === undefined
        ? 'Without it too few pulls are left to answer.'
        : `Without it the difference is ${spread(left.estimate, options)}.`;
    return {
      pull: taken.result.name,
      setUp: names[side],
      sentence: `${name} lies ${amount} ${off < 0 ? 'below' : 'above'} what the other pulls foretell${made ? ' after a steady drift' : ''}, which is beyond luck (${decimals(Math.abs(t), 1)} standard errors, and ${decimals(critical, 1)} are the limit). It counts all the same. ${withoutIt} Look at its log before leaving it out.`,
      reservation: hangs
        ? `The verdict hangs on ${name}, which is odd: without it the outcome is “${left.outcome}”, ${spread(left.estimate, options)}.`
        : undefined,
      mend: `Make one more pull of ${named(names[side])}, since ${taken.result.name} is odd.`,
    };
  });
}

interface Odd {
  /** Place among baseline pulls followed by candidate pulls. */
  readonly place: number;
  readonly off: number;
  readonly t: number;
}

function checksOf(
  values: readonly number[],
  baselinePulls: number,
  made: PullsAsMade | undefined,
): { readonly critical: number; readonly found: readonly Odd[] } {
  try {
    if (made) {
      const { critical, pulls } = oddPullsInOrder(
        made.letters,
        made.pulls.map((i) => values[i]!),
        { times: made.times },
      );
      const found = pulls.filter(({ odd }) => odd).map((pull) => ({ ...pull, place: made.pulls[pull.index]! }));
      return { critical, found: found.sort((one, other) => one.place - other.place) };
    }
    const { critical, pulls } = oddPulls(values.slice(0, baselinePulls), values.slice(baselinePulls));
    const places = pulls.map((pull, place) => ({ ...pull, place }));
    return { critical, found: places.filter(({ odd }) => odd) };
  } catch (error) {
    // Pulls that agree exactly but for one cannot be judged by their scatter.
    if (error instanceof StatisticsError && error.code === 'no-scatter') return { critical: Infinity, found: [] };
    throw error;
  }
}

/** The answer that the other pulls give by the same model. */
function answerWithout(
  place: number,
  { accepted, names, made }: OddPullInputs,
  options: ResolvedOptions,
): { readonly estimate: Estimate; readonly outcome: Outcome } | undefined {
  const first = accepted[0].length;
  const means = accepted.map((side, i) =>
    side.flatMap(({ result }, j) => (i * first + j === place ? [] : [result.mean!])),
  ) as [Quantity[], Quantity[]];
  const fewest = Math.min(...means.map((side) => side.length));
  if (fewest < 2) return undefined;
  const rest = made && withoutPull(made, place);
  try {
    const values = means.flat().map(({ si }) => si);
    if (
      rest &&
      driftDifference(
        rest.letters,
        rest.pulls.map((i) => values[i]!),
        { times: rest.times },
      ).interval === undefined
    )
      return undefined;
  } catch (error) {
    if (error instanceof StatisticsError) return undefined;
    throw error;
  }
  const difference = rest
    ? differenceWithoutDrift(`${names[1]} minus ${names[0]}`, means, rest)
    : plainDifference(names, means);
  const estimate = estimateOf(difference, ownConfidence(options));
  return { estimate, outcome: outcomeOf(estimate, options.worthwhile, fewest) };
}

function withoutPull({ letters, times, pulls }: PullsAsMade, place: number): PullsAsMade {
  const kept = [...pulls.keys()].filter((i) => pulls[i] !== place);
  return {
    letters: kept.map((i) => letters[i]).join(''),
    times: kept.map((i) => times[i]!),
    pulls: kept.map((i) => pulls[i]! - (pulls[i]! > place ? 1 : 0)),
  };
}

function spread({ value, low, high }: Estimate, { units }: ResolvedOptions): string {
  return `${signed(value, units)}, between ${betweenSigned(low, high, units)}`;
}
