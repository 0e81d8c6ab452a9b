import { decimals, listed, overSpeeds, signed } from '../comparison/words.js';
import type { Comparison, ContributionCurve } from '../comparison/index.js';
import { scaleOf } from './axis.js';
import { textAt } from './labels.js';
import { panelAxes, panelBorder, panelHead } from './panel-parts.js';
import { layOut, LEFT, type Box } from './panels.js';
import { DASH, INK, isNarrow, plotSpec, rows, type PlotOptions, type PlotSpec, type PlotValue } from './spec.js';
import { bandText, isNoResult, labelLines, labelText, numbersOf, unitOf } from './words.js';

/**
 * Where the change comes from at each engine speed: a panel for each factor with its part and the band for its whole curve at once, all
 * to one scale. Where the shade clears zero a bar at the foot says so, dashed where the factor lowers the result.
 *
 * @returns undefined where there is no split along the engine speed, or nothing that may be called a change.
 */
export function splitBySpeedPlot(comparison: Comparison, options: PlotOptions = {}): PlotSpec | undefined {
  const curves = drawnCurves(comparison);
  if (curves.length === 0) return undefined;
  const unit = unitOf(comparison);
  const { frame, boxes, panelHeight } = layOut(
    curves.map(({ factor }) => (width) => ({ bold: labelLines(factor, Math.floor(width / 8)), plain: [] })),
    { ...options, across: isNarrow(options) ? 1 : ACROSS, isShared: true },
  );
  const points = curves.map((curve) => pointsOf(comparison, curve, unit));
  const drawn = [0, ...points.flat().flatMap(({ low, high }) => [low, high])];
  const [lowest, highest] = [Math.min(...drawn), Math.max(...drawn)];
  const foot = (FOOT / Math.max(FOOT, panelHeight - FOOT)) * (highest - lowest);
  const values = scaleOf([lowest - foot, highest], 5, 0.02);
  const panels = boxes.map((box, i): PlotValue => {
    const axes = panelAxes(comparison.engineSpeed, values, box, frame.height, box.isFirst);
    const { x } = axes;
    const y = axes.y!;
    return {
      layer: [
        ...panelHead(box),
        panelBorder(box, axes),
        {
          data: rows(points[i]!),
          mark: { type: 'area', opacity: 0.18, color: INK.candidate },
          encoding: { x, y: { ...y, field: 'low' }, y2: { field: 'high' } },
        },
        {
          data: rows([{ difference: 0 }]),
          mark: { type: 'rule', strokeWidth: 1, color: INK.text },
          encoding: { x: { value: box.left }, x2: { value: box.right }, y },
        },
        { data: rows(points[i]!), mark: { type: 'line', color: INK.candidate, strokeWidth: 2 }, encoding: { x, y } },
        ...rangeMarks(curves[i]!, comparison, box, x),
      ],
    };
  });
  const note = (text: string, x: number, y: number, align: string): PlotValue =>
    textAt([text], { x: { value: x }, y: { value: y } }, { align });
  return {
    ...plotSpec({ title: titleOf(comparison), description: descriptionOf(comparison, curves) }, frame, [
      ...panels,
      note(`part of the change, ${unit}`, 2 - LEFT, -14, 'left'),
      note('engine speed, rpm', frame.width / 2, frame.height + 10, 'center'),
    ]),
    resolve: { scale: { x: 'independent', y: 'independent' } },
  };
}

const ACROSS = 3;

/** Pixels at the foot of a panel for the bars that mark ranges, and their numbers. */
const FOOT = 22;

/** The curves of a split that may be shown: one speed is no curve, and what is no result has no causes. */
export function drawnCurves({ split, outcome }: Comparison): readonly ContributionCurve[] {
  if (split === undefined || isNoResult(outcome)) return [];
  return split.bySpeed.filter(({ part }) => part.si.filter((si) => !Number.isNaN(si)).length > 1);
}

interface Point {
  readonly speed: number;
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  readonly [key: string]: number;
}

function pointsOf(comparison: Comparison, { part, simultaneous }: ContributionCurve, unit: string): Point[] {
  const { from, step } = comparison.engineSpeed;
  const [middle, low, high] = [part, simultaneous.low, simultaneous.high].map((one) => numbersOf(one, unit)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  return Array.from(middle).flatMap((difference, row) =>
    Number.isFinite(difference)
      ? [{ speed: from.in('rpm') + row * step.in('rpm'), difference, low: low[row]!, high: high[row]! }]
      : [],
  );
}

/** A bar at the foot under each range where the shade clears zero, with its mean part where that fits. */
function rangeMarks(
  { ranges }: ContributionCurve,
  comparison: Comparison,
  { left, right, bottom }: Box,
  x: { readonly [key: string]: PlotValue },
): PlotValue[] {
  const { from, to, step } = comparison.engineSpeed;
  const [first, last, half] = [from.in('rpm'), to.in('rpm'), step.in('rpm') / 2];
  const pixels = (right - left) / (last - first);
  return ranges.flatMap((range) => {
    const start = Math.max(first, range.from.in('rpm') - half);
    const end = Math.min(last, range.to.in('rpm') + half);
    const raised = range.outcome === 'raised';
    const color = raised ? INK.candidate : INK.baseline;
    const text = signed(range.part);
    const bar: PlotValue = {
      data: rows([{ speed: start, end }]),
      mark: { type: 'rule', color, strokeWidth: 5, ...(raised ? {} : { strokeDash: DASH.baseline }) },
      encoding: { x, x2: { field: 'end' }, y: { value: bottom - 4 } },
    };
    if ((end - start) * pixels < text.length * 8) return [bar];
    const look = { color, align: 'center', baseline: 'bottom', fontWeight: 'bold' };
    return [bar, textAt([text], { x, y: { value: bottom - 8 } }, look, { speed: (start + end) / 2 })];
  });
}

function titleOf({ baseline, candidate }: Comparison): string {
  return `Where the change from ${labelText(baseline.name)} to ${labelText(candidate.name)} comes from, over engine speed`;
}

/** `charge temperature raised it from 3500 to 6000 rpm (+3.1 kW on average there)`, one for each factor that did; then the others. */
export function curveWords(curves: readonly ContributionCurve[]): string {
  const clear = curves.filter(({ ranges }) => ranges.length > 0);
  const others = curves.filter(({ ranges }) => ranges.length === 0).map(({ factor }) => factor);
  const words = clear.map(({ factor, ranges }) => {
    const where = ranges.map(
      ({ from, to, outcome, part }) => `${outcome} it ${overSpeeds(from, to)} (${signed(part)} on average there)`,
    );
    return `${factor} ${listed(where)}`;
  });
  return [...words, ...(others.length === 0 ? [] : [`nowhere clear of zero: ${listed(others)}`])].join('; ');
}

function descriptionOf(comparison: Comparison, curves: readonly ContributionCurve[]): string {
  const count = decimals(curves.length, 0);
  return `${count} panels, one for each factor of the change, with its own ${bandText(comparison)}. ${curveWords(curves)}.`;
}
