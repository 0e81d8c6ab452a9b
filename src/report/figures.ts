import { betweenSigned, listed, overSpeeds, sentenceCase, signed, signedPercent } from '../comparison/words.js';
import { caveatOf, ROLES_OF_SPLIT } from '../comparison/open-questions.js';
import type { Comparison } from '../comparison/index.js';
import {
  differencePlot,
  overlayPlot,
  pullsPlot,
  smallMultiples,
  splitBySpeedPlot,
  splitPlot,
  type PlotOptions,
  type PlotSpec,
} from '../plot/index.js';
import { resolvedRanges } from '../plot/difference.js';
import { hasOrder } from '../plot/pulls.js';
import { sharesSpeedScale, sharesValueScale } from '../plot/small-multiples.js';
import {
  acceptedPulls,
  comparedWords,
  isNoResult,
  labelText,
  LESS,
  bandText,
  levelText,
  marginText,
  MORE,
} from '../plot/words.js';
import { rangesTable, splitTable } from './answer.js';
import type { Block, DataTable, Figure } from './document.js';
import { splitBySpeedCaption } from './why.js';
import { noResultWords, pullCounts } from './words.js';

const NARROW = 360;

/** The pictures of a comparison, numbered from a number on. */
export function figureBlocks(comparison: Comparison, id: string, first: number): Block[] {
  const plots: readonly [
    plot: (options: PlotOptions) => PlotSpec | undefined,
    caption: string,
    asText: DataTable | string,
  ][] = [
    [(options) => overlayPlot(comparison, options), overlayCaption(comparison, first), VALUES_BELOW],
    [(options) => differencePlot(comparison, options), differenceCaption(comparison), VALUES_BELOW],
    [
      (options) => splitPlot(comparison, options),
      splitCaption(comparison),
      comparison.split ? splitTable(comparison) : '',
    ],
    [
      (options) => splitBySpeedPlot(comparison, options),
      splitBySpeedCaption(comparison),
      'The values stand under “Causes by engine speed”.',
    ],
    [
      (options) => pullsPlot(comparison, options),
      pullsCaption(comparison),
      'The values stand under “Pulls used and refused”.',
    ],
  ];
  const figures: Figure[] = [];
  for (const [plot, caption, asText] of plots) {
    const wide = plot({});
    const narrow = plot({ width: NARROW });
    if (wide === undefined || narrow === undefined) continue;
    const number = first + figures.length;
    figures.push({ number, id: `${id}-figure-${number}`, caption, wide, narrow, asText });
  }
  return figures.map((figure) => ({ type: 'figure', figure }));
}

/** The differences of several comparisons side by side, as one picture of a number. */
export function sideBySideBlocks(comparisons: readonly Comparison[], id: string, number: number): Block[] {
  const wide = smallMultiples(comparisons);
  const narrow = smallMultiples(comparisons, { width: NARROW });
  if (wide === undefined || narrow === undefined) return [];
  const caption = sideBySideCaption(comparisons);
  const figure: Figure = {
    number,
    id: `${id}-figure-${number}`,
    caption,
    wide,
    narrow,
    asText: rangesTable(comparisons),
  };
  return [{ type: 'figure', figure }];
}

const VALUES_BELOW = 'The values stand under “By engine speed”.';

function sideBySideCaption(comparisons: readonly Comparison[]): string {
  const one = (words: readonly string[]): string => [...new Set(words)].join(' or ');
  const margins = comparisons.flatMap(({ worthwhile }) => (worthwhile ? [marginText(worthwhile)] : []));
  const counts = comparisons.map(
    ({ candidate, baseline }) => `${acceptedPulls(candidate).length} against ${acceptedPulls(baseline).length}`,
  );
  const pulls = new Set(counts).size === 1 ? `each from ${counts[0]!} pulls` : `from ${listed(counts)} pulls`;
  const isOneValueScale = sharesValueScale(comparisons);
  const isOneSpeedScale = sharesSpeedScale(comparisons);
  const scales =
    isOneValueScale && isOneSpeedScale
      ? 'All panels have the same scales.'
      : isOneValueScale
        ? 'Heights compare from panel to panel; the ranges of engine speed differ.'
        : 'Panels of different quantities have scales of their own: read the numbers beside each.';
  return [
    `Candidate minus baseline over engine speed, ${one(comparisons.map(comparedWords))}, ${pulls}.`,
    `Line: mean difference; shade: ${one(comparisons.map(bandText))}.`,
    scales,
    'Where the shade clears zero the difference is resolved and marked at the foot.',
    ...(margins.length === 0 ? [] : [`Dashed: ${one(margins)}, set beforehand.`]),
    ...(comparisons.some(({ options }) => (options.setUps ?? 1) < comparisons.length)
      ? [
          `The ${one(comparisons.map(levelText))} is each panel’s own and not that of all together: for that give compare the option setUps.`,
        ]
      : []),
    'Two candidates are told apart only by comparing them with each other, not by two panels.',
  ].join(' ');
}

function overlayCaption(comparison: Comparison, number: number): string {
  const { basis, candidate, baseline, curve, outcome } = comparison;
  const refused = [candidate, baseline].flatMap(({ pulls }) => pulls.filter(({ accepted }) => !accepted)).length;
  const dotted = refused === 0 ? '' : ' Dotted: refused, not in the mean.';
  const alone = [candidate, baseline].filter((side) => acceptedPulls(side).length < 2);
  const without =
    alone.length === 0
      ? ''
      : ` No shade for ${listed(alone.map(({ name }) => labelText(name)))}: one pull has no scatter.`;
  const isTest = curve !== undefined && !isNoResult(outcome);
  const test = isTest ? ` Do not judge by the gap between the shades; Figure ${number + 1} is the test.` : '';
  return `${noResultWords(comparison)}${sentenceCase(basis)}. Thick: mean of ${pullCounts(comparison)} (dashed); thin: single pulls; shade: ${levelText(comparison)} band for each whole curve.${without}${dotted} The upright axis does not start at zero.${test}`;
}

function differenceCaption(comparison: Comparison): string {
  const { candidate, baseline, curve, worthwhile, compared } = comparison;
  if (curve === undefined) return '';
  const dashed = worthwhile ? ` Dashed: ${marginText(worthwhile)}, set beforehand.` : '';
  const what = `${noResultWords(comparison)}${sentenceCase(labelText(candidate.name))} minus ${labelText(baseline.name)}, ${pullCounts(comparison)}; shade: ${bandText(comparison)}.`;
  if (isNoResult(comparison.outcome)) return `${what}${dashed}`;
  const ranges = resolvedRanges(curve.ranges).map(
    ({ from, to, outcome, difference }) =>
      `${(outcome === 'better' ? MORE : LESS)[compared]} ${overSpeeds(from, to)} (${signed(difference)})`,
  );
  const found = ranges.length === 0 ? 'here it does so nowhere' : `marked at the foot: ${listed(ranges)}`;
  return `${what} Where the shade clears zero the difference is resolved; ${found}.${dashed}`;
}

function splitCaption(comparison: Comparison): string {
  const { split, overall, relative } = comparison;
  if (split === undefined) return '';
  const { value, low, high } = split.total;
  const share = relative === undefined ? '' : ` (${signedPercent(relative)})`;
  // Parts that multiply are split by the means of their logarithms, which lie a hair beside the plain means.
  const isBeside = overall !== undefined && signed(overall.value) !== signed(value);
  const beside = isBeside
    ? ` (The answer's ${signed(overall.value)} is of plain means, this of means of logarithms.)`
    : '';
  const caveat = caveatOf(comparison.openQuestions, ROLES_OF_SPLIT);
  const unresolved =
    comparison.outcome === 'not resolved' || comparison.outcome === 'equivalent'
      ? ` The whole is not resolved: anything between ${betweenSigned(low, high)} fits.`
      : '';
  return `Where ${signed(value)}${share} comes from, by ${pullCounts(comparison)}. Filled bars raise the result, outlined bars lower it; they add up to it exactly.${beside} Whiskers: ${levelText(comparison)} for each part alone, not to be added.${unresolved}${caveat === undefined ? '' : ` ${caveat}`}`;
}

function pullsCaption(comparison: Comparison): string {
  const order = hasOrder(comparison)
    ? 'in the order of the day'
    : 'by set-up, because the order of the day is not known';
  const refused = [comparison.candidate, comparison.baseline].some(({ pulls }) =>
    pulls.some(({ accepted }) => !accepted),
  )
    ? ' Crosses were refused and are in no mean.'
    : '';
  return `${noResultWords(comparison)}Mean of each pull over the range, ${order}; lines: mean of ${pullCounts(comparison)}. The scatter about a line is what the difference is judged by.${refused}`;
}
