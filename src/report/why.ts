import { decimals, listed, sentenceCase, shown, signed } from '../comparison/words.js';
import { caveatOf, ROLES_OF_SPLIT } from '../comparison/open-questions.js';
import type { Comparison } from '../comparison/index.js';
import { RIPPLE_LIMITS } from '../comparison/ripple.js';
import { curveWords, drawnCurves } from '../plot/split-by-speed.js';
import { bandText, gridOf, labelText, numberOf, unitOf } from '../plot/words.js';
import { list, paragraph, type Block, type DataTable } from './document.js';
import { quantityLike, rowOf } from './numbers.js';
import { pullCounts } from './words.js';

/** What must be equal for the comparison to be fair, on both sides, and whether it was. */
export function fairnessBlocks({ fairness, baseline, candidate }: Comparison): Block[] {
  const table: DataTable = {
    caption: 'What must be equal for a fair comparison',
    look: 'stacked',
    columns: [
      { head: 'what', align: 'left' },
      { head: 'was it', align: 'left' },
      { head: labelText(baseline.name), align: 'right' },
      { head: labelText(candidate.name), align: 'right' },
      { head: 'allowed', align: 'right' },
    ],
    rows: fairness.map((check) => [check.what, check.state, check.baseline, check.candidate, check.allowed]),
  };
  const told = fairness.filter(({ state }) => state !== 'equal').map(({ sentence }) => sentence);
  return [{ type: 'table', table }, ...list(told)];
}

/** The comparison at equal lambda, in a place of its own; nothing where the mixture was equal. */
export function mixtureBlocks({ equalMixture, openQuestions }: Comparison): Block[] {
  if (!equalMixture?.matters) return [];
  const caveat = caveatOf(openQuestions, ['lambda']);
  return [
    ...list([...equalMixture.sentences, ...(caveat === undefined ? [] : [caveat])]),
    paragraph(
      'Whatever moved lambda may have moved power too, so this stands beside the answer and never in its place.',
      'note',
    ),
  ];
}

/** Whether torque follows the ripple of boost, with what that cannot say; nothing where no pull shows a ripple. */
export function rippleBlocks({ ripple }: Comparison): Block[] {
  if (ripple === undefined) return [];
  const table: DataTable = {
    caption: `Ripple of ${ripple.driver === 'boost' ? 'boost' : 'manifold pressure'} in each pull, and torque with it`,
    columns: [
      { head: 'pull', align: 'left' },
      { head: 'times a second', align: 'right' },
      { head: 'cycles', align: 'right' },
      { head: 'goes with it', align: 'right' },
      { head: 'between', align: 'right' },
    ],
    rows: ripple.pulls.map(({ pull, ripple: { frequency, cycles, coherence, share } }) => [
      labelText(pull),
      decimals(frequency, 2),
      decimals(cycles, 0),
      `${decimals(coherence * 100, 0)} %`,
      `${decimals(share[0] * 100, 0)} and ${decimals(share[1] * 100, 0)} %`,
    ]),
  };
  const without =
    ripple.without.length === 0
      ? []
      : [paragraph(`No ripple: ${listed(ripple.without.map((name) => labelText(name)))}.`, 'note')];
  return [
    paragraph(sentenceCase(ripple.answer)),
    { type: 'table', table },
    ...without,
    ...list(RIPPLE_LIMITS, 'small'),
  ];
}

/** Each factor's part at each engine speed with its band, for where the picture cannot stand. */
export function splitBySpeedTable(comparison: Comparison): DataTable | undefined {
  const curves = drawnCurves(comparison);
  if (curves.length === 0) return undefined;
  const unit = unitOf(comparison);
  const bare = (text: string): string => text.replaceAll(` ${unit}`, '');
  return {
    caption: `Parts of the change in ${unit}, each ± half of its own ${bandText(comparison)}`,
    look: 'wide',
    columns: [
      { head: 'rpm', align: 'right' },
      ...curves.map(({ factor }) => ({ head: factor, align: 'right' }) as const),
    ],
    rows: gridOf(comparison).map((speed, row) => [
      decimals(speed, 0),
      ...curves.map(({ part, simultaneous }) => {
        const [value, low, high] = [part, simultaneous.low, simultaneous.high].map((one) => rowOf(one, row, unit));
        if (value === undefined || low === undefined || high === undefined) return 'missing';
        const half = quantityLike(value, (numberOf(high, unit) - numberOf(low, unit)) / 2, unit);
        return `${bare(signed(value))} ± ${bare(shown(half))}`;
      }),
    ]),
  };
}

/** The parts over engine speed in their table, and how the bands were found; nothing where there is no such split. */
export function splitBySpeedBlocks(comparison: Comparison): Block[] {
  const table = splitBySpeedTable(comparison);
  if (table === undefined) return [];
  const methods = [...new Set(drawnCurves(comparison).map(({ method }) => method))];
  return [{ type: 'table', table }, paragraph(methods.join(' '), 'note')];
}

/** What the picture of the parts over engine speed shows, and how to read it. */
export function splitBySpeedCaption(comparison: Comparison): string {
  const curves = drawnCurves(comparison);
  const caveat = caveatOf(comparison.openQuestions, ROLES_OF_SPLIT);
  return [
    `Where the change comes from at each engine speed, by ${pullCounts(comparison)}; at each speed the parts add up to the difference.`,
    `Shade: ${bandText(comparison)}, of that one factor; the bands of several factors must not be added or read together.`,
    'Where the shade clears zero the factor raised the result (bar) or lowered it (dashed bar).',
    `${sentenceCase(curveWords(curves))}.`,
    ...(caveat === undefined ? [] : [caveat]),
  ].join(' ');
}
