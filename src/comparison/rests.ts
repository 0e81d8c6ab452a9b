import type { Quantity } from '../units/index.js';
import type { SaidCorrection } from '../sweep/index.js';
import type { OrderFinding, PullsAsMade } from './order.js';
import { afterDriftWords } from './pull-scatter.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import type { Answer } from './answer.js';
import type { ComparedQuantity, SideResult } from './result.js';
import { studentTFactor, welchDifference, type DriftDifference, type Interval } from '../statistics/index.js';
import {
  betweenSigned,
  counted,
  decimals,
  level,
  like,
  listed,
  plusMinus,
  sentenceCase,
  shown,
  signed,
} from './words.js';

/** What was compared, where it was measured, and whether it was corrected. */
export function basisOf(
  compared: ComparedQuantity,
  { measuredAt, loggedPower }: ResolvedOptions,
  said: SaidCorrection | 'differs' | undefined,
): string {
  const where = measuredAt ? ` ${measuredAt}` : '';
  if (compared === 'air flow' || compared === 'air per cycle') return `${compared}${where}, as logged`;
  if (said === 'differs' && loggedPower === 'unknown')
    return `${compared}${where}, as logged; what the headers of the logs say of a correction is not the same in all pulls`;
  const to =
    said === undefined || said === 'differs' || said === 'observed' || said === 'corrected'
      ? 'a standard atmosphere'
      : said;
  const byHeader =
    said === undefined
      ? 'as logged; whether the logger corrected it is not known'
      : `as logged, by the headers of the logs ${said === 'observed' ? 'not corrected' : 'corrected'} to ${to}`;
  const logged = {
    observed: 'as logged, not corrected to a standard atmosphere',
    corrected: `as logged, already corrected to ${to} by the logger`,
    unknown: byHeader,
  }[loggedPower];
  return `${compared}${where}, ${logged}`;
}

/** An answer, and what it was made from. */
export interface FoundAnswer {
  readonly answer: Answer;
  readonly finding: OrderFinding;
  /** Whether it counts, no objection standing before it. */
  readonly isResult: boolean;
}

/** What the answer rests on and what was not removed, a sentence each. */
export function restsOf(
  a: SideResult,
  b: SideResult,
  found: FoundAnswer | undefined,
  options: ResolvedOptions,
  basis: string,
): string[] {
  const { units } = options;
  const used = (side: SideResult): number => side.pulls.filter((pull) => pull.accepted).length;
  const refused = [a, b].flatMap((side) => {
    const names = side.pulls.filter((pull) => !pull.accepted).map((pull) => pull.name);
    return names.length === 0 ? [] : [`${listed(names)} of ${side.name}`];
  });
  const idle = [a, b].flatMap((side) =>
    side.pulls
      .filter((pull) => options.overrule[`${side.name}/${pull.name}`] !== undefined && pull.refusals.length === 0)
      .map((pull) => `${pull.name} of ${side.name}`),
  );
  const lines = [
    `${counted(used(a), 'pull')} of ${a.name} against ${used(b)} of ${b.name}; ${refused.length === 0 ? 'none refused' : `refused: ${refused.join('; ')}`}.`,
    `${sentenceCase(basis)}.`,
    ...(idle.length === 0 ? [] : [`Overruled without need, since nothing refuses it: ${listed(idle)}.`]),
    ...(options.setUps === 1
      ? []
      : [
          `${options.setUps} comparisons share the chance of error: the ${level(options.confidence)} holds for all of their intervals together, so each interval is wider than it would be alone.`,
        ]),
    ...(found ? [found.answer.drift.sentence] : []),
  ];
  for (const side of [a, b]) {
    const scatter = found?.answer.scatter;
    const own = scatter ? (side === a ? scatter.baseline : scatter.candidate).standardDeviation : side.overallScatter;
    if (!own || !side.overall) continue;
    const share = (own.si / side.overall.si) * 100;
    lines.push(
      `Scatter from pull to pull, ${side.name}: ${shown(own, units)} (${decimals(share, 2)} %) standard deviation of the mean over the range${scatter ? afterDriftWords(scatter) : ''}.`,
    );
  }
  if (!found?.isResult) return lines;
  const { answer, finding } = found;
  lines.push(...driftLines(a, b, finding, answer, options));
  if (answer.noBand !== undefined) lines.push(answer.noBand);
  for (const { reservation } of answer.odd) if (reservation !== undefined) lines.push(reservation);
  return lines;
}

/** What drift through the day does to the answer, with it and without. */
function driftLines(
  a: SideResult,
  b: SideResult,
  { corrected, made }: OrderFinding,
  { overall, drift: { takenOut } }: Answer,
  options: ResolvedOptions,
): string[] {
  const { units } = options;
  const quantity = (si: number): Quantity => like(overall.value, si);
  const spread = ({ difference, lower, upper }: Interval): string =>
    `${signed(quantity(difference), units)}, between ${betweenSigned(quantity(lower), quantity(upper), units)}`;
  if (!corrected?.interval) return [];
  if (!takenOut)
    return [`With a steady drift through the day taken out, the difference is ${spread(corrected.interval)}.`];
  const means = (side: SideResult): number[] =>
    side.pulls.flatMap((pull) => (pull.accepted && pull.mean ? [pull.mean.si] : []));
  const leftIn = welchDifference(means(a), means(b), { confidence: ownConfidence(options) });
  const rate = rateOf(corrected, made!, options);
  const leftInWords = `left in, the difference is ${spread(leftIn)}.`;
  return [
    rate.isSeen
      ? `A steady drift through the day (${rate.words(quantity)}) is taken out; ${leftInWords}`
      : `A steady drift through the day is taken out by design; as found it is ${rate.words(quantity)}, which may be none; ${leftInWords}`,
  ];
}

/** The drift with its interval, in words, and whether that excludes none. */
function rateOf(
  { slope, degreesOfFreedom }: DriftDifference,
  { times }: PullsAsMade,
  options: ResolvedOptions,
): { readonly isSeen: boolean; readonly words: (quantity: (si: number) => Quantity) => string } {
  // Clocks are in seconds and far apart; places in the day are 1, 2, 3.
  const byClock = times.length > 1 && times[1]! - times[0]! > 20;
  const times_ = byClock ? 3600 : 1;
  const { value, standardError } = slope!;
  const half = studentTFactor(1 - ownConfidence(options), degreesOfFreedom) * standardError!;
  return {
    isSeen: Math.abs(value) > half,
    words: (quantity) =>
      plusMinus(quantity(value * times_), quantity(half * times_), options.units) + (byClock ? ' an hour' : ' a pull'),
  };
}
