import type { Quantity } from '../units/index.js';
import type { SaidCorrection } from '../sweep/index.js';
import type { OrderFinding } from './order.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import type { Answer } from './answer.js';
import type { ComparedQuantity, SideResult } from './result.js';
import { welchDifference, type Interval } from '../statistics/index.js';
import { betweenSigned, counted, decimals, level, like, listed, sentenceCase, shown, signed } from './words.js';

/** What was compared, where it was measured, and whether it was corrected. */
export function basisOf(
  compared: ComparedQuantity,
  { measuredAt, loggedPower }: ResolvedOptions,
  said: SaidCorrection | undefined,
): string {
  const where = measuredAt ? ` ${measuredAt}` : '';
  if (compared === 'air flow' || compared === 'air per cycle') return `${compared}${where}, as logged`;
  const to = said === undefined || said === 'observed' || said === 'corrected' ? 'a standard atmosphere' : said;
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

/** What the answer rests on and what was not removed, a sentence each. */
export function restsOf(
  a: SideResult,
  b: SideResult,
  finding: OrderFinding | undefined,
  answer: Answer | undefined,
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
    ...(finding ? [finding.sentence] : []),
  ];
  for (const side of [a, b]) {
    if (!side.overallScatter || !side.overall) continue;
    const share = (side.overallScatter.si / side.overall.si) * 100;
    lines.push(
      `Scatter from pull to pull, ${side.name}: ${shown(side.overallScatter, units)} (${decimals(share, 2)} %) standard deviation of the mean over the range.`,
    );
  }
  if (answer && finding) lines.push(...driftLines(a, b, finding, answer, options));
  return lines;
}

/** What drift through the day does to the answer, with it and without. */
function driftLines(
  a: SideResult,
  b: SideResult,
  { corrected, made }: OrderFinding,
  { overall, driftTakenOut }: Answer,
  options: ResolvedOptions,
): string[] {
  const { units } = options;
  const quantity = (si: number): Quantity => like(overall.value, si);
  const spread = ({ difference, lower, upper }: Interval): string =>
    `${signed(quantity(difference), units)}, between ${betweenSigned(quantity(lower), quantity(upper), units)}`;
  if (!corrected?.interval) return [];
  if (!driftTakenOut)
    return [`With a steady drift through the day taken out, the difference is ${spread(corrected.interval)}.`];
  const means = (side: SideResult): number[] =>
    side.pulls.flatMap((pull) => (pull.accepted && pull.mean ? [pull.mean.si] : []));
  const leftIn = welchDifference(means(a), means(b), { confidence: ownConfidence(options) });
  const slope = corrected.slope;
  // Clocks are in seconds and far apart; places in the day are 1, 2, 3.
  const byClock = made !== undefined && made.times.length > 1 && made.times[1]! - made.times[0]! > 20;
  const rate =
    slope && `${signed(quantity(slope.value * (byClock ? 3600 : 1)), units)} ${byClock ? 'an hour' : 'a pull'}`;
  return [
    `A steady drift through the day${rate ? ` (${rate})` : ''} is taken out; left in, the difference is ${spread(leftIn)}.`,
  ];
}
