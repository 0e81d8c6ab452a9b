import type { Quantity } from '../units/index.js';
import type { OrderFinding } from './order.js';
import type { ResolvedOptions } from './options.js';
import type { ComparedQuantity, Estimate, SideResult } from './result.js';
import { betweenSigned, counted, decimals, like, listed, sentenceCase, shown, signed } from './words.js';

/** What was compared, where it was measured, and whether it was corrected. */
export function basisOf(compared: ComparedQuantity, { measuredAt, loggedPower }: ResolvedOptions): string {
  const where = measuredAt ? ` ${measuredAt}` : '';
  if (compared === 'air flow' || compared === 'air per cycle') return `${compared}${where}, as logged`;
  const logged = {
    observed: 'as logged, not corrected to a standard atmosphere',
    corrected: 'as logged, already corrected to a standard atmosphere by the logger',
    unknown: 'as logged; whether the logger corrected it is not known',
  }[loggedPower];
  return `${compared}${where}, ${logged}`;
}

/** What the answer rests on and what was not removed, a sentence each. */
export function restsOf(
  a: SideResult,
  b: SideResult,
  finding: OrderFinding | undefined,
  overall: Estimate | undefined,
  compared: ComparedQuantity,
  options: ResolvedOptions,
): string[] {
  const { units } = options;
  const used = (side: SideResult): number => side.pulls.filter((pull) => pull.accepted).length;
  const refused = [a, b].flatMap((side) =>
    side.pulls.filter((pull) => !pull.accepted).map((pull) => `${side.name}, ${pull.name}`),
  );
  const lines = [
    `${counted(used(a), 'pull')} of ${a.name} against ${used(b)} of ${b.name}; ${refused.length === 0 ? 'none refused' : `refused: ${listed(refused)}`}.`,
    `${sentenceCase(basisOf(compared, options))}.`,
    ...(finding ? [finding.sentence] : []),
  ];
  for (const side of [a, b]) {
    if (!side.overallScatter || !side.overall) continue;
    const share = (side.overallScatter.si / side.overall.si) * 100;
    lines.push(
      `Scatter from pull to pull, ${side.name}: ${shown(side.overallScatter, units)} (${decimals(share, 2)} %) standard deviation of the mean over the range.`,
    );
  }
  const drift = finding?.corrected?.interval;
  if (overall && drift) {
    const quantity = (si: number): Quantity => like(overall.value, si);
    lines.push(
      `With a steady drift through the day taken out, the difference is ${signed(quantity(drift.difference), units)}, between ${betweenSigned(quantity(drift.lower), quantity(drift.upper), units)}.`,
    );
  }
  return lines;
}
