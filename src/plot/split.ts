import { betweenSigned, decimals, listed, shown, signed, signedPercent } from '../comparison/words.js';
import type { Comparison, Contribution, Estimate, Split } from '../comparison/index.js';
import { scaleOf, tickLabels } from './axis.js';
import { textAt } from './labels.js';
import { frameOf, INK, isNarrow, plotSpec, rows, type PlotOptions, type PlotSpec, type PlotValue } from './spec.js';
import { isNoResult, labelLines, labelText, numberOf, unitOf } from './words.js';

/** One bar of the waterfall: it starts where the one above it ended. */
export interface SplitBar {
  readonly label: string;
  readonly start: number;
  readonly end: number;
  readonly low: number;
  readonly high: number;
  readonly isTotal: boolean;
}

/**
 * Where the change comes from: a bar for each factor, each starting where the one above ended, and the total below. Whiskers are the
 * intervals of the parts. Factors that raise the result are filled, factors that lower it are outlined.
 *
 * @returns undefined where there is no split, or nothing that may be called a change.
 */
export function splitPlot(comparison: Comparison, options: PlotOptions = {}): PlotSpec | undefined {
  const { split } = comparison;
  if (split === undefined || split.contributions.length === 0 || isNoResult(comparison.outcome)) return undefined;
  const unit = unitOf(comparison);
  const narrow = isNarrow(options);
  const bars = splitBars(split, unit);
  const row = narrow ? 36 : 32;
  const frame = frameOf(options, bars.length * row + 46, {
    left: narrow ? 148 : 190,
    right: narrow ? 102 : 190,
    top: 8,
    bottom: 38,
  });
  const scale = scaleOf([0, ...bars.flatMap(({ start, end, low, high }) => [start, end, low, high])], narrow ? 4 : 6);
  const x = {
    field: 'start',
    type: 'quantitative',
    scale: { domain: scale.domain, nice: false, zero: false },
    axis: {
      values: scale.ticks,
      labelExpr: tickLabels(scale, true),
      title: `change, ${unit}`,
      tickSize: 4,
      labelFlush: false,
    },
  } as const;
  const y = {
    field: 'top',
    type: 'quantitative',
    scale: { domain: [bars.length - 0.5, -0.5], nice: false, zero: false },
    axis: null,
  } as const;
  const data = rows(
    bars.map(({ label: _, ...bar }, i) => ({ ...bar, row: i, top: i - 0.3, bottom: i + 0.3, next: i + 0.7 })),
  );
  const filled = { condition: { test: 'datum.isTotal', value: INK.text }, value: INK.candidate } as const;
  const texts = bars.flatMap((bar, i) => barTexts(bar, split, i, unit, y, frame.width, narrow));
  const layer: PlotValue[] = [
    {
      data,
      transform: [{ filter: 'datum.isTotal || datum.end >= datum.start' }],
      mark: { type: 'rect', opacity: 0.5 },
      encoding: { x, x2: { field: 'end' }, y, y2: { field: 'bottom' }, color: filled },
    },
    {
      data,
      transform: [{ filter: '!datum.isTotal && datum.end < datum.start' }],
      mark: { type: 'rect', fill: 'white', stroke: INK.baseline, strokeWidth: 1.6 },
      encoding: { x, x2: { field: 'end' }, y, y2: { field: 'bottom' } },
    },
    {
      data,
      transform: [{ filter: '!datum.isTotal' }],
      mark: { type: 'rule', color: INK.faint, strokeWidth: 1 },
      encoding: { x: { ...x, field: 'end' }, y: { ...y, field: 'bottom' }, y2: { field: 'next' } },
    },
    {
      data: rows([{ start: 0 }]),
      mark: { type: 'rule', color: INK.text, strokeWidth: 1 },
      encoding: { x },
    },
    {
      data,
      mark: { type: 'rule', color: INK.text, strokeWidth: 1.2 },
      encoding: { x: { ...x, field: 'low' }, x2: { field: 'high' }, y: { ...y, field: 'row' } },
    },
    ...['low', 'high'].map((end) => ({
      data,
      mark: { type: 'tick', orient: 'vertical', color: INK.text, thickness: 1.2, size: 8 },
      encoding: { x: { ...x, field: end }, y: { ...y, field: 'row' } },
    })),
    ...texts,
  ];
  return plotSpec({ title: titleOf(comparison), description: descriptionOf(comparison, split) }, frame, layer);
}

/** The bars of the waterfall in a unit, the total last. Each ends exactly where the next begins, and the last where the total ends. */
export function splitBars({ contributions, total }: Split, unit: string): SplitBar[] {
  let start = 0;
  const bars = contributions.map(({ factor, part }) => {
    const bar = barOf(factor, part, start, unit, false);
    start = bar.end;
    return bar;
  });
  return [...bars, barOf('total', total, 0, unit, true)];
}

function barOf(label: string, part: Estimate, start: number, unit: string, isTotal: boolean): SplitBar {
  const [value, low, high] = [part.value, part.low, part.high].map((one) => numberOf(one, unit)) as [
    number,
    number,
    number,
  ];
  return { label, start, end: start + value, low: start + low, high: start + high, isTotal };
}

function barTexts(
  { label, isTotal }: SplitBar,
  { contributions, total }: Split,
  row: number,
  unit: string,
  y: { readonly [key: string]: PlotValue },
  width: number,
  narrow: boolean,
): PlotValue[] {
  const contribution = contributions[row];
  const part = contribution?.part ?? total;
  const reading = contribution && readingsOf(contribution);
  const text = (lines: readonly string[], x: number, align: string): PlotValue =>
    textAt(lines, { x: { value: x }, y }, { align, fontWeight: isTotal ? 'bold' : 'normal' }, { top: row });
  const name = labelLines(label, narrow ? 22 : 28);
  const interval = betweenSigned(part.low, part.high).replace(' and ', ' to ').replace(` ${unit}`, '');
  const amount = narrow ? [signed(part.value), interval] : [`${signed(part.value)}   (${interval})`];
  return [text(!narrow && reading ? [...name, reading] : name, -10, 'right'), text(amount, width + 10, 'left')];
}

/** `39 to 30 °C`: what a factor was on each side, where that is the same kind of reading on both. */
export function readingsOf({ baseline, candidate }: Contribution): string | undefined {
  if (!baseline || !candidate || baseline.kind !== candidate.kind) return undefined;
  const { kind, unit } = candidate;
  const from = shown(baseline, { [kind]: unit });
  const suffix = ` ${unit}`;
  return `${from.endsWith(suffix) ? from.slice(0, -suffix.length) : from} to ${shown(candidate)}`;
}

function titleOf(comparison: Comparison): string {
  return `Where the change from ${labelText(comparison.baseline.name)} to ${labelText(comparison.candidate.name)} comes from`;
}

function descriptionOf({ relative }: Comparison, { contributions, total }: Split): string {
  const parts = contributions.map(
    ({ factor, part, percent }) =>
      `${factor} ${signed(part.value)} (${percent > 0 ? '+' : ''}${decimals(percent, 1)} %), between ${betweenSigned(part.low, part.high)}`,
  );
  const share = relative === undefined ? '' : ` (${signedPercent(relative)})`;
  return `Waterfall: ${listed(parts)}; total ${signed(total.value)}${share}.`;
}
