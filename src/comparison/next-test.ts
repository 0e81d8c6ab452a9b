import type { Objection } from './objections.js';
import type { ResolvedOptions } from './options.js';
import type { Estimate, Outcome, SideResult } from './result.js';
import { detectableDifference, equalSides, pullsNeeded } from '../statistics/index.js';
import { like, shown } from './words.js';

/** How many pulls would settle the question, from the scatter that was found. */
export function nextSteps(
  outcome: Outcome,
  objections: readonly Objection[],
  overall: Estimate | undefined,
  a: SideResult,
  b: SideResult,
  { worthwhile, units, confidence, setUps }: ResolvedOptions,
): string[] {
  const steps: string[] = [];
  steps.push(...objections.flatMap(({ mend }) => (mend === undefined ? [] : [mend])));
  if (objections.some((objection) => objection.outcome === 'too few pulls')) steps.push(...morePulls([a, b]));
  const scatters = [a, b].flatMap((side) => (side.overallScatter ? [side.overallScatter.si] : []));
  if (!overall || scatters.length < 2) return steps;
  const scatter = Math.sqrt(scatters.reduce((sum, s) => sum + s * s, 0) / scatters.length);
  const error = (1 - confidence) / setUps;
  if (worthwhile && outcome === 'not resolved') {
    const { perSide } = pullsNeeded(worthwhile.si, scatter, { error });
    steps.push(
      `About ${perSide} pulls of each would settle a difference of ${shown(worthwhile, units)}, four times in five, if the scatter stays as found.`,
    );
  } else {
    const few = Math.max(2, Math.min(...[a, b].map((side) => side.pulls.filter((pull) => pull.accepted).length)));
    const smallest = detectableDifference(scatter, equalSides(few), { error });
    const quantity = like(overall.value, smallest);
    steps.push(
      `With ${few} pulls of each and this scatter, a difference of ${shown(quantity, units)} would be resolved four times in five.`,
    );
  }
  steps.push('Alternate the set-ups (A B B A A B), with the same rest and the same start temperatures.');
  return steps;
}

/** What would make up for pulls that are too few. Where nearly all lack data, it is the range that was asked for. */
function morePulls(sides: readonly SideResult[]): string[] {
  const few = sides.filter((side) => side.pulls.filter((pull) => pull.accepted).length < 2);
  const lost = few.flatMap((side) => side.pulls);
  const short = lost.filter((pull) => pull.refusals.some((refusal) => refusal.code === 'missing data'));
  const hint =
    lost.length > 1 && short.length > lost.length / 2
      ? [
          'Most of the refused pulls lack values in this range: give engineSpeed within what the pulls reach, or mend the channel.',
        ]
      : [];
  return [
    ...hint,
    ...few.map((side) => {
      const usable = side.pulls.filter((pull) => pull.accepted).length;
      return `Make at least ${usable === 1 ? 'two more pulls' : 'three pulls'} of the ${side.name} set: three give a usable scatter.`;
    }),
  ];
}
