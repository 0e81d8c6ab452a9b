import { betweenSigned, overSpeeds, signed, speedRange } from '../comparison/words.js';
import type { Comparison, DifferenceCurve } from '../comparison/index.js';
import { CalculationError } from '../units/index.js';
import { scaleOf, type Scale } from './axis.js';
import { differencePoints, resolvedBars, resolvedRanges } from './difference.js';
import { textAt } from './labels.js';
import { panelAxes, panelBorder, panelHead, type PanelAxes } from './panel-parts.js';
import { layOut, LEFT, type Box } from './panels.js';
import { DASH, INK, isNarrow, plotSpec, rows, type PlotOptions, type PlotSpec, type PlotValue } from './spec.js';
import {
  comparedWords,
  isNoResult,
  labelLines,
  labelText,
  marginText,
  noResultReason,
  numberOf,
  unitOf,
  bandText,
} from './words.js';

/**
 * Several comparisons as small panels, candidate minus baseline over engine speed, each with its band for the whole curve at once: up
 * to three panels side by side, one below the other on a phone. Panels of the same quantity share their value scale, panels over the
 * same range their speed scale. A comparison that gives no result keeps its place as an empty panel that says so.
 *
 * @returns undefined where none of the comparisons has a difference curve that may be read as a result.
 * @throws CalculationError if there is no comparison.
 * @example
 * const picture = smallMultiples(compareAll(day.setup('stock core'), [day.setup('tall core'), day.setup('short inlet hose')]));
 */
export function smallMultiples(comparisons: readonly Comparison[], options: PlotOptions = {}): PlotSpec | undefined {
  if (comparisons.length === 0) {
    throw new CalculationError('smallMultiples', [
      {
        code: 'missing',
        input: 'comparisons',
        need: 'at least one comparison',
        got: 'none',
        mend: 'Make them with compareAll(baseline, candidates).',
      },
    ]);
  }
  if (comparisons.every((comparison) => resultCurve(comparison) === undefined)) return undefined;
  const isShared = sharesValueScale(comparisons);
  const { frame, boxes, panelHeight } = layOut(
    comparisons.map((comparison) => (width) => headOf(comparison, width, isShared)),
    { ...options, across: isNarrow(options) ? 1 : ACROSS, isShared },
  );
  const measures = measuresOf(comparisons, panelHeight);
  const panels = boxes.map((box, i) => {
    const comparison = comparisons[i]!;
    const curve = resultCurve(comparison);
    const measure = measures.get(comparedWords(comparison))!;
    const axes = panelAxes(
      comparison.engineSpeed,
      measure.values,
      box,
      frame.height,
      isShared ? box.isFirst : curve !== undefined,
    );
    return { layer: [...panelHead(box), ...panel(comparison, curve, measure.unit, box, axes)] };
  });
  const note = (text: string, x: number, y: number, align: string): PlotValue =>
    textAt([text], { x: { value: x }, y: { value: y } }, { align });
  const words = [
    ...(isShared ? [note(`difference, ${unitOf(comparisons[0]!)}`, 2 - LEFT, -14, 'left')] : []),
    note('engine speed, rpm', frame.width / 2, frame.height + 10, 'center'),
  ];
  return {
    ...plotSpec({ title: titleOf(comparisons), description: descriptionOf(comparisons) }, frame, [...panels, ...words]),
    // Each panel has a place of its own on the sheet; that panels share a scale lies in their equal domains.
    resolve: { scale: { x: 'independent', y: 'independent' } },
  };
}

const ACROSS = 3;

/** Pixels at the foot of a panel for the bars that mark resolved ranges, and their numbers. */
const FOOT = 22;

/** The curve of a comparison where it may be read as a result. */
export function resultCurve({ outcome, curve }: Comparison): DifferenceCurve | undefined {
  return isNoResult(outcome) ? undefined : curve;
}

/** Whether all comparisons are of one quantity, measured at one place. */
export function sharesValueScale(comparisons: readonly Comparison[]): boolean {
  return new Set(comparisons.map(comparedWords)).size === 1;
}

/** Whether all comparisons cover one range of engine speed. */
export function sharesSpeedScale(comparisons: readonly Comparison[]): boolean {
  return new Set(comparisons.map(({ engineSpeed: { from, to } }) => speedRange(from, to))).size === 1;
}

/** What a panel is called: candidate, baseline, and the unit where panels differ in it. */
function headOf(comparison: Comparison, width: number, isShared: boolean): Box['lines'] {
  const longest = Math.floor(width / 8);
  return {
    bold: labelLines(comparison.candidate.name, longest),
    plain: [
      ...labelLines(`minus ${labelText(comparison.baseline.name)}`, longest),
      ...(isShared ? [] : [`difference, ${unitOf(comparison)}`]),
    ],
  };
}

/** Unit and value scale of the panels of one quantity. */
interface Measure {
  readonly unit: string;
  /** undefined where none of them has a curve. */
  readonly values: Scale | undefined;
}

function measuresOf(comparisons: readonly Comparison[], panelHeight: number): Map<string, Measure> {
  const measures = new Map<string, Measure>();
  for (const quantity of new Set(comparisons.map(comparedWords))) {
    const alike = comparisons.filter((comparison) => comparedWords(comparison) === quantity);
    const unit = unitOf(alike[0]!);
    const drawn = alike.flatMap((comparison) => {
      const curve = resultCurve(comparison);
      if (curve === undefined) return [];
      const margin = comparison.worthwhile === undefined ? [] : [numberOf(comparison.worthwhile, unit)];
      return [
        0,
        ...margin.flatMap((value) => [value, -value]),
        ...differencePoints(curve, unit).flatMap(({ low, high }) => [low, high]),
      ];
    });
    const [lowest, highest] = [Math.min(...drawn), Math.max(...drawn)];
    const foot = (FOOT / Math.max(FOOT, panelHeight - FOOT)) * (highest - lowest);
    measures.set(quantity, {
      unit,
      values: drawn.length === 0 ? undefined : scaleOf([lowest - foot, highest], 6, 0.02),
    });
  }
  return measures;
}

function panel(
  comparison: Comparison,
  curve: DifferenceCurve | undefined,
  unit: string,
  box: Box,
  { x, y, speeds, values }: PanelAxes,
): PlotValue[] {
  const [middle, centre] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const border = panelBorder(box, { x, y, speeds, values });
  if (curve === undefined || y === undefined) {
    const place = (at: number) => ({ x: { value: middle }, y: { value: at } });
    const [words, why] = isNoResult(comparison.outcome)
      ? ['not a result', noResultReason(comparison.outcome)]
      : ['no curve', 'too few speeds in every pull'];
    return [
      border,
      textAt([words], place(centre - 8), { align: 'center', fontWeight: 'bold' }),
      textAt([why], place(centre + 8), { align: 'center', color: INK.quiet }),
    ];
  }
  const points = differencePoints(curve, unit);
  const across = (value: number, look: { readonly [key: string]: PlotValue }): PlotValue => ({
    data: rows([{ difference: value }]),
    mark: { type: 'rule', strokeWidth: 1, ...look },
    encoding: { x: { value: box.left }, x2: { value: box.right }, y },
  });
  const margin = comparison.worthwhile && numberOf(comparison.worthwhile, unit);
  return [
    border,
    {
      data: rows(points),
      mark: { type: 'area', opacity: 0.18, color: INK.candidate },
      encoding: { x, y: { ...y, field: 'low' }, y2: { field: 'high' } },
    },
    across(0, { color: INK.text }),
    ...(margin === undefined
      ? []
      : [margin, -margin].map((value) => across(value, { color: INK.quiet, strokeDash: DASH.margin }))),
    { data: rows(points), mark: { type: 'line', color: INK.candidate, strokeWidth: 2 }, encoding: { x, y } },
    ...resolvedMarks(comparison, curve, box, x),
  ];
}

/** A bar at the foot under each resolved range, with its mean difference where that fits. */
function resolvedMarks(
  comparison: Comparison,
  curve: DifferenceCurve,
  { left, right, bottom }: Box,
  x: { readonly [key: string]: PlotValue },
): PlotValue[] {
  const { from, to } = comparison.engineSpeed;
  const pixelsPerRpm = (right - left) / (to.in('rpm') - from.in('rpm'));
  return resolvedBars(comparison, curve).flatMap(({ start, end, outcome, difference }) => {
    const color = outcome === 'better' ? INK.candidate : INK.baseline;
    const text = signed(difference);
    const bar: PlotValue = {
      data: rows([{ speed: start, end }]),
      mark: { type: 'rule', color, strokeWidth: 5 },
      encoding: { x, x2: { field: 'end' }, y: { value: bottom - 4 } },
    };
    if ((end - start) * pixelsPerRpm < text.length * 8) return [bar];
    const look = { color, align: 'center', baseline: 'bottom', fontWeight: 'bold' };
    return [bar, textAt([text], { x, y: { value: bottom - 8 } }, look, { speed: (start + end) / 2 })];
  });
}

function titleOf(comparisons: readonly Comparison[]): string {
  return comparisons.length === 1
    ? 'The difference over engine speed'
    : `${comparisons.length} differences over engine speed, side by side`;
}

function descriptionOf(comparisons: readonly Comparison[]): string {
  const each = comparisons.map((comparison) => {
    const { candidate, baseline, overall, worthwhile } = comparison;
    const { from, to } = comparison.engineSpeed;
    const name = `${labelText(candidate.name)} minus ${labelText(baseline.name)}`;
    if (isNoResult(comparison.outcome)) return `${name}: not a result, ${noResultReason(comparison.outcome)}.`;
    const curve = resultCurve(comparison);
    if (curve === undefined) return `${name}: no curve.`;
    const mean = overall
      ? `mean ${signed(overall.value)}, between ${betweenSigned(overall.low, overall.high)}, from ${speedRange(from, to)}; `
      : '';
    const resolved = resolvedRanges(curve.ranges).map(
      (range) => `${range.outcome} ${overSpeeds(range.from, range.to)} (${signed(range.difference)})`,
    );
    const margin = worthwhile ? `; dashed at ${marginText(worthwhile)}` : '';
    return `${name}: ${mean}${resolved.length === 0 ? 'resolved nowhere' : resolved.join(', ')}${margin}.`;
  });
  const bands = [...new Set(comparisons.map(bandText))].join(' or ');
  return `One panel for each comparison: candidate minus baseline with its ${bands}. ${each.join(' ')}`;
}
