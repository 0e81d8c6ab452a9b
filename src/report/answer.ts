import { betweenSigned, overSpeeds, signed, signedPercent, SPEED_BY_SPEED } from '../comparison/words.js';
import { caveatOf, ROLES_OF_SPLIT } from '../comparison/open-questions.js';
import type { Comparison, Contribution } from '../comparison/index.js';
import { resultCurve } from '../plot/small-multiples.js';
import { readingsOf } from '../plot/split.js';
import { acceptedPulls, isNoResult, labelText, numberOf, unitOf } from '../plot/words.js';
import { quantityLike } from './numbers.js';
import { list, paragraph, type Block, type Cell, type DataTable } from './document.js';
import { outcomeWords, subjectOf } from './words.js';

/** The answer in its sentence, the interval as one bar, and the cautions that bear on it. */
export function answerBlocks(comparison: Comparison, id: string): Block[] {
  const { headline, objections, cautions } = comparison;
  return [
    ...sentencesOf(headline),
    ...list(objections.slice(1)),
    ...(isNoResult(comparison.outcome) || comparison.overall === undefined
      ? []
      : [{ type: 'interval', comparison, id: `${id}-interval` } as const]),
    ...(cautions.length === 0 ? [] : [paragraph(`Caution. ${cautions.join(' ')}`, 'caution')]),
  ];
}

/** The answer large; what it is speed by speed after it. */
function sentencesOf(headline: string): Block[] {
  const at = headline.indexOf(BY_SPEED);
  if (at < 0) return [paragraph(headline, 'answer')];
  return [paragraph(headline.slice(0, at), 'answer'), paragraph(headline.slice(at + 1))];
}

const BY_SPEED = ` ${SPEED_BY_SPEED}: `;

const LARGEST = 3;

/** The three largest causes, what is left, and the whole. */
export function whyBlocks(comparison: Comparison): Block[] {
  const { split, outcome } = comparison;
  if (isNoResult(outcome))
    return [paragraph('No cause is given: what was seen is not a result until the objection is met.')];
  if (split === undefined || split.contributions.length === 0)
    return [paragraph('The logs hold no channels that would tell where a change comes from.')];
  const note =
    outcome === 'not resolved' || outcome === 'equivalent'
      ? [paragraph('The whole is not resolved: the parts say what the best estimate is made of.', 'note')]
      : [];
  const unclear =
    split.notSeparated.length === 0 ? [] : [paragraph(`Not told apart. ${split.notSeparated.join(' ')}`, 'note')];
  const caveat = caveatOf(comparison.openQuestions, ROLES_OF_SPLIT);
  const open = caveat === undefined ? [] : [paragraph(caveat)];
  const drift = comparison.driftTakenOut
    ? [
        paragraph(
          'A steady drift through the day is taken out of every part, as of the whole; the readings beside them are plain means.',
          'note',
        ),
      ]
    : [];
  return [...note, { type: 'table', table: causes(comparison, split.contributions) }, ...drift, ...open, ...unclear];
}

function causes(comparison: Comparison, contributions: readonly Contribution[]): DataTable {
  const { total } = comparison.split!;
  const unit = unitOf(comparison);
  const size = ({ part }: Contribution): number => Math.abs(part.value.si);
  const largest = [...contributions].sort((a, b) => size(b) - size(a)).slice(0, LARGEST);
  const row = ({ factor, part, percent, ...sides }: Contribution): string[] => {
    const reading = readingsOf({ factor, part, percent, ...sides });
    return [
      reading === undefined ? factor : `${factor}, ${reading}`,
      signed(part.value),
      betweenSigned(part.low, part.high),
    ];
  };
  const shownSum = largest.reduce((sum, { part }) => sum + numberOf(part.value, unit), 0);
  const rest = quantityLike(total.value, numberOf(total.value, unit) - shownSum, unit);
  return {
    caption: 'The largest parts of the change',
    look: 'compact',
    hasTotal: true,
    columns: [
      { head: 'from', align: 'left' },
      { head: 'change', align: 'right' },
      { head: 'between', align: 'right' },
    ],
    rows: [
      ...largest.map(row),
      ...(contributions.length > largest.length ? [['everything else', signed(rest), '']] : []),
      ['together', signed(total.value), betweenSigned(total.low, total.high)],
    ],
  };
}

/** All parts of the change, for where the picture cannot stand. */
export function splitTable({ split }: Comparison): DataTable {
  const { contributions, total } = split!;
  return {
    caption: 'Where the change comes from',
    columns: [
      { head: 'from', align: 'left' },
      { head: 'baseline to candidate', align: 'left' },
      { head: 'change', align: 'right' },
      { head: 'alone', align: 'right' },
      { head: 'between', align: 'right' },
    ],
    rows: [
      ...contributions.map((one) => [
        one.factor,
        readingsOf(one) ?? '',
        signed(one.part.value),
        signedPercent(one.percent / 100),
        betweenSigned(one.part.low, one.part.high),
      ]),
      ['together', '', signed(total.value), '', betweenSigned(total.low, total.high)],
    ],
  };
}

/** The answers of several comparisons, one a row. */
export function answersTable(comparisons: readonly Comparison[], idOf: (i: number) => string): DataTable {
  return {
    caption: 'The answers; each is explained below',
    look: 'stacked',
    columns: [
      { head: 'compared', align: 'left' },
      { head: 'answer', align: 'left' },
      { head: 'difference', align: 'right' },
      { head: 'between', align: 'right' },
      { head: 'pulls', align: 'right' },
    ],
    rows: comparisons.map((comparison, i): Cell[] => {
      const { overall, relative, candidate, baseline } = comparison;
      const estimate = isNoResult(comparison.outcome) ? undefined : overall;
      const share = relative === undefined ? '' : ` (${signedPercent(relative)})`;
      return [
        { text: subjectOf(comparison), to: idOf(i) },
        outcomeWords(comparison),
        estimate ? `${signed(estimate.value)}${share}` : 'not a result',
        estimate ? betweenSigned(estimate.low, estimate.high) : '',
        `${acceptedPulls(candidate).length} against ${acceptedPulls(baseline).length}`,
      ];
    }),
  };
}

/** What each comparison found speed by speed, for where the picture of several cannot stand. */
export function rangesTable(comparisons: readonly Comparison[]): DataTable {
  return {
    caption: `The differences ${SPEED_BY_SPEED.toLowerCase()}`,
    columns: [
      { head: 'compared', align: 'left' },
      { head: 'engine speed', align: 'left' },
      { head: 'found', align: 'left' },
      { head: 'mean difference', align: 'right' },
    ],
    rows: comparisons.flatMap((comparison): string[][] => {
      const subject = subjectOf(comparison);
      const curve = resultCurve(comparison);
      if (curve === undefined)
        return [[subject, '', outcomeWords(comparison), isNoResult(comparison.outcome) ? 'not a result' : 'no curve']];
      return curve.ranges.map(({ from, to, outcome, difference }) => [
        subject,
        overSpeeds(from, to),
        outcome,
        signed(difference),
      ]);
    }),
  };
}

/** `tall core, stock core`, each set-up once. */
export function setUpNames(comparisons: readonly Comparison[]): string[] {
  return [...new Set(comparisons.flatMap(({ candidate, baseline }) => [candidate.name, baseline.name]))].map((name) =>
    labelText(name),
  );
}
