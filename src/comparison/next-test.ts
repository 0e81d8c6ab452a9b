import { detectableDifference, pullsNeeded } from '../statistics/index.js';
import type { Answer } from './answer.js';
import { ownInstruments, type OwnInstruments } from './instruments.js';
import { instrumentsHalfWidth, instrumentsHide, nextDesign, type NextBasis } from './next-design.js';
import type { Objection } from './objection.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import { FEWEST_PULLS_FOR_DRIFT } from './order.js';
import { afterDriftWords } from './pull-scatter.js';
import type { Outcome, PullScatter, SideResult } from './result.js';
import { like, listed, named, shown } from './words.js';

/** What the next steps follow from. */
export interface NextInputs {
  readonly outcome: Outcome;
  readonly objections: readonly Objection[];
  readonly answer: Answer | undefined;
  readonly sides: readonly [SideResult, SideResult];
}

/** How many pulls would settle the question, from the scatter and the instruments of the answer at hand. */
export function nextSteps({ outcome, objections, answer, sides }: NextInputs, options: ResolvedOptions): string[] {
  const steps = objections.flatMap(({ mend }) => (mend === undefined ? [] : [mend]));
  if (objections.some((objection) => objection.outcome === 'too few pulls')) steps.push(...morePulls(sides));
  if (!answer?.scatter || !(answer.scatter.pooled.si > 0)) return steps;
  const { scatter, overall } = answer;
  const basis: NextBasis = {
    scatter: scatter.pooled.si,
    afterDrift: scatter.afterDrift,
    instruments: ownInstruments(overall, sides),
    error: 1 - ownConfidence(options),
  };
  return [
    ...steps,
    ...answer.odd.map(({ mend }) => mend),
    ...(options.worthwhile && outcome === 'not resolved'
      ? [settling(options.worthwhile.si, basis, scatter, sides, options)]
      : [resolvable(basis, scatter, sides, options)]),
    'Alternate the set-ups (A B B A A B), with the same rest and the same start temperatures.',
  ];
}

/** A chance of four in five, as everywhere here. */
const POWER = 0.8;
/** More pulls of each than this is as good as never. */
const MOST = 100;

function settling(
  worthwhile: number,
  basis: NextBasis,
  scatter: PullScatter,
  sides: NextInputs['sides'],
  { units }: ResolvedOptions,
): string {
  const difference = `a difference of ${shown(like(scatter.pooled, worthwhile), units)}`;
  if (basis.instruments && instrumentsHide(worthwhile, basis, POWER)) {
    const half = shown(like(scatter.pooled, instrumentsHalfWidth(basis.instruments, basis.error)), units);
    return `No number of pulls settles ${difference}: ${instrumentWords(basis.instruments, sides)} alone leave ±${half}. Read both set-ups with one and the same instrument.`;
  }
  const design = (perSide: number) => nextDesign(2 * perSide, basis);
  const enough = (perSide: number): boolean =>
    detectableDifference(basis.scatter, design(perSide), { error: basis.error, power: POWER }) <= worthwhile;
  const stays = `four times in five, if the scatter of ${shown(scatter.pooled, units)} from pull to pull${afterDriftWords(scatter)} stays as found`;
  if (!enough(MOST)) {
    return `Not even ${MOST} pulls of each would settle ${difference}, ${stays}. Scatter less${basis.instruments ? ', or read both set-ups with one and the same instrument' : ''}.`;
  }
  const fewest = basis.afterDrift ? FEWEST_PULLS_FOR_DRIFT / 2 : 2;
  const { perSide } = pullsNeeded(worthwhile, basis.scatter, { error: basis.error, power: POWER, design, fewest });
  return `About ${perSide} pulls of each would settle ${difference}, ${stays}.`;
}

function resolvable(
  basis: NextBasis,
  scatter: PullScatter,
  sides: NextInputs['sides'],
  { units }: ResolvedOptions,
): string {
  const few = Math.max(2, Math.min(...sides.map((side) => side.pulls.filter((pull) => pull.accepted).length)));
  const smallest = detectableDifference(basis.scatter, nextDesign(2 * few, basis), {
    error: basis.error,
    power: POWER,
  });
  const given = listed([
    `${few} pulls of each`,
    `this scatter${afterDriftWords(scatter)}`,
    ...(basis.instruments ? [instrumentWords(basis.instruments, sides)] : []),
  ]);
  const words = shown(like(scatter.pooled, smallest), units);
  const difference = /^[0.]+( |$)/.test(words) ? 'smaller than the last digit shown here' : `of ${words}`;
  return `With ${given}, a difference ${difference} would be resolved four times in five.`;
}

/** `the instruments that were not the same in both set-ups (first meter, second meter)`. */
function instrumentWords({ labels }: OwnInstruments, [a, b]: NextInputs['sides']): string {
  return `the instruments that read only one of ${named(a.name)} and ${named(b.name)} (${listed(labels)})`;
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
