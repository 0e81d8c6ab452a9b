import { escapeHtml } from '../calculation/formula/index.js';
import { betweenSigned, shown, signed, speedRange } from '../comparison/words.js';
import type { Comparison } from '../comparison/index.js';
import { INK } from './spec.js';
import { isNoResult, labelText, LESS, levelText, MORE, numberOf, unitOf } from './words.js';

/** How the interval bar is drawn. */
export interface IntervalBarOptions {
  /** Prefix of the ids; give each picture of a page its own. */
  readonly id?: string;
}

/**
 * The answer as one bar: the interval of the difference on a line with zero and, where one was set, the worthwhile difference on both
 * sides. It is drawn without a renderer and takes the width of its place, down to a phone's.
 *
 * @returns An SVG element; undefined where the comparison has no difference that may be called a result.
 */
export function intervalBar(comparison: Comparison, { id = 'interval' }: IntervalBarOptions = {}): string | undefined {
  const { overall, worthwhile, compared, outcome } = comparison;
  if (overall === undefined || isNoResult(outcome)) return undefined;
  const unit = unitOf(comparison);
  const [value, low, high] = [overall.value, overall.low, overall.high].map((one) => numberOf(one, unit)) as [
    number,
    number,
    number,
  ];
  const margin = worthwhile && numberOf(worthwhile, unit);
  const known = [0, low, high, ...(margin === undefined ? [] : [margin, -margin])];
  // A difference of exactly nothing still needs a line to stand on.
  const reach = known.every((x) => x === 0) ? [-1, 1] : known;
  const [from, to] = [Math.min(...reach), Math.max(...reach)];
  const room = 0.07 * (to - from);
  const at = (x: number): number => ((x - from + room) / (to - from + 2 * room)) * 100;
  const percent = (x: number): string => `${at(x).toFixed(2)}%`;
  const vertical = (x: number, y1: number, y2: number, look: string): string =>
    `<line x1="${percent(x)}" x2="${percent(x)}" y1="${y1}" y2="${y2}" ${look}/>`;
  const text = (x: number, y: number, words: string, room: number, look = ''): string =>
    `<text x="${percent(x)}" y="${y}" text-anchor="${anchorAt(at(x), room)}" ${look}>${escapeHtml(words)}</text>`;
  const isTight = margin !== undefined && margin / (to - from) < 0.14;
  const margins =
    margin === undefined
      ? ''
      : [margin, -margin]
          .map(
            (x) =>
              vertical(x, 24, 58, `stroke="${INK.quiet}" stroke-dasharray="5 4"`) +
              (isTight ? '' : text(x, 72, `${x > 0 ? '+' : '−'}${shown(worthwhile!)}`, 10, `fill="${INK.quiet}"`)),
          )
          .join('');
  const words = `${signed(overall.value)}, between ${betweenSigned(overall.low, overall.high)}`;
  const title = `Difference of ${labelText(comparison.candidate.name)} from ${labelText(comparison.baseline.name)}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}-title" aria-describedby="${id}-desc" width="100%" height="94" font-family="sans-serif" font-size="12" fill="${INK.text}">`,
    `<title id="${id}-title">${escapeHtml(title)}</title>`,
    `<desc id="${id}-desc">${escapeHtml(descriptionOf(comparison, words))}</desc>`,
    `<line x1="0" x2="100%" y1="58" y2="58" stroke="${INK.faint}"/>`,
    vertical(0, 24, 62, `stroke="${INK.text}" stroke-width="1.5"`),
    margins,
    text(0, 72, '0', 3),
    `<line x1="${percent(low)}" x2="${percent(high)}" y1="40" y2="40" stroke="${INK.candidate}" stroke-width="12" stroke-opacity="0.35"/>`,
    ...[low, high].map((x) => vertical(x, 32, 48, `stroke="${INK.candidate}" stroke-width="2"`)),
    vertical(value, 30, 50, `stroke="${INK.candidate}" stroke-width="4"`),
    text(value, 16, words, 32, `font-weight="bold" fill="${INK.candidate}"`),
    `<text x="0" y="90" fill="${INK.quiet}">← ${escapeHtml(LESS[compared])}</text>`,
    `<text x="100%" y="90" text-anchor="end" fill="${INK.quiet}">${escapeHtml(MORE[compared])} →</text>`,
    '</svg>',
  ].join('');
}

/** Text with less room than it needs towards an end grows inward. */
function anchorAt(percent: number, room: number): 'start' | 'middle' | 'end' {
  return percent < room ? 'start' : percent > 100 - room ? 'end' : 'middle';
}

function descriptionOf(comparison: Comparison, words: string): string {
  const { from, to } = comparison.engineSpeed;
  const shared = comparison.options.setUps ?? 1;
  const together = shared === 1 ? '' : ` for all ${shared} comparisons together`;
  const margin = comparison.worthwhile
    ? ` Dashed: ${shown(comparison.worthwhile)} either way, the difference called worthwhile beforehand.`
    : '';
  return `${words}, interval of the mean from ${speedRange(from, to)}, ${levelText(comparison)}${together}.${margin}`;
}
