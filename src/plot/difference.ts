import { overSpeeds, shown, signed, signedPercent, SPEED_BY_SPEED, speedRange } from '../comparison/words.js';
import type { Comparison, DifferenceCurve, SpeedRange } from '../comparison/index.js';
import type { Quantity } from '../units/index.js';
import { scaleOf, speedAxis, valueAxis, withTicks } from './axis.js';
import { labelWidth, textAt } from './labels.js';
import {
  DASH,
  frameOf,
  INK,
  isNarrow,
  plotSpec,
  rows,
  type PlotOptions,
  type PlotSpec,
  type PlotValue,
} from './spec.js';
import { bandText, isNoResult, labelText, LESS, marginText, MORE, numberOf, numbersOf, unitOf } from './words.js';

/**
 * Candidate minus baseline over engine speed, with the band for the whole curve at once: where the shade clears zero the difference
 * is resolved, and a bar at the foot says so. Dashed lines mark the difference that was called worthwhile beforehand.
 *
 * @returns undefined where the comparison has no difference curve, as with too few pulls.
 */
export function differencePlot(comparison: Comparison, options: PlotOptions = {}): PlotSpec | undefined {
  const { curve } = comparison;
  if (curve === undefined) return undefined;
  const unit = unitOf(comparison);
  const narrow = isNarrow(options);
  const frame = frameOf(options, 250, {
    left: 44,
    right: labelWidth([comparison.baseline.name, comparison.candidate.name], narrow),
    top: 30,
    bottom: 42,
  });
  const { from, to } = comparison.engineSpeed;
  const speeds = withTicks(from.in('rpm'), to.in('rpm'), narrow ? 3 : 6);
  const points = differencePoints(curve, unit);
  const margin = comparison.worthwhile && numberOf(comparison.worthwhile, unit);
  const drawn = [
    0,
    ...(margin === undefined ? [] : [margin, -margin]),
    ...points.flatMap(({ low, high }) => [low, high]),
  ];
  const lowest = Math.min(...drawn);
  const highest = Math.max(...drawn);
  // Room at the foot for the bars that mark resolved ranges.
  const values = scaleOf([lowest - 0.14 * (highest - lowest), highest], narrow ? 4 : 5, 0.02);
  const x = {
    field: 'speed',
    type: 'quantitative',
    scale: { domain: speeds.domain, nice: false, zero: false },
    axis: speedAxis(speeds, 'engine speed, rpm'),
  } as const;
  const y = {
    field: 'difference',
    type: 'quantitative',
    scale: { domain: values.domain, nice: false, zero: false },
    axis: { ...(valueAxis(values, `difference, ${unit}`, 44, true) as object), grid: false },
  } as const;
  const across = (value: number, mark: PlotValue): PlotValue => ({
    data: rows([{ difference: value }]),
    mark,
    encoding: { y },
  });
  const layer: PlotValue[] = [
    {
      data: rows(points),
      mark: { type: 'area', opacity: 0.18, color: INK.candidate },
      encoding: { x, y: { ...y, field: 'low' }, y2: { field: 'high' } },
    },
    across(0, { type: 'rule', color: INK.text, strokeWidth: 1 }),
    ...(margin === undefined
      ? []
      : [margin, -margin].map((value) =>
          across(value, { type: 'rule', color: INK.quiet, strokeWidth: 1, strokeDash: DASH.margin }),
        )),
    {
      data: rows(points),
      mark: { type: 'line', color: INK.candidate, strokeWidth: 2.4 },
      encoding: { x, y },
    },
    ...marginLabels(comparison, values.domain, frame),
    ...(isNoResult(comparison.outcome) ? [] : resolvedMarks(comparison, curve, x, frame.height)),
  ];
  return plotSpec({ title: titleOf(comparison), description: descriptionOf(comparison, curve) }, frame, layer);
}

/** The difference and the band for the whole curve, one row for each engine speed. */
export function differencePoints(
  curve: DifferenceCurve,
  unit: string,
): { speed: number; difference: number; low: number; high: number }[] {
  const speed = curve.engineSpeed.in('rpm');
  const [difference, low, high] = [curve.difference, curve.simultaneous.low, curve.simultaneous.high].map((column) =>
    numbersOf(column, unit),
  ) as [Float64Array, Float64Array, Float64Array];
  return Array.from(speed, (rpm, i) => ({ speed: rpm, difference: difference[i]!, low: low[i]!, high: high[i]! }));
}

/** Height of a line of these labels, pixels. */
const LABEL_LINE = 12;

/** What the lines across are, beside them; pushed apart where the margin is small on the scale. */
function marginLabels(
  { worthwhile, baseline }: Comparison,
  [lowest, highest]: readonly [number, number],
  { width, height }: { readonly width: number; readonly height: number },
): PlotValue[] {
  const placeOf = (value: number): number => ((highest - value) / (highest - lowest)) * height;
  const label = (y: number, text: string, color: string): PlotValue =>
    textAt([text], { x: { value: width + 8 }, y: { value: y } }, { align: 'left', color, fontSize: 11 });
  const middle = placeOf(0);
  const zero = label(middle, 'no change', INK.text);
  if (worthwhile === undefined) return [zero];
  const margin = numberOf(worthwhile, baseline.mean.unit);
  return [
    zero,
    label(Math.min(placeOf(margin), middle - LABEL_LINE), `+${shown(worthwhile)}`, INK.quiet),
    label(Math.max(placeOf(-margin), middle + LABEL_LINE), `−${shown(worthwhile)}`, INK.quiet),
  ];
}

/** A bar at the foot under each resolved range, with its mean difference where there is room. */
function resolvedMarks(
  comparison: Comparison,
  curve: DifferenceCurve,
  x: { readonly [key: string]: PlotValue },
  height: number,
): PlotValue[] {
  const whole = comparison.engineSpeed.to.in('rpm') - comparison.engineSpeed.from.in('rpm');
  return resolvedBars(comparison, curve).flatMap(({ start, end, outcome, difference }) => {
    const color = outcome === 'better' ? INK.candidate : INK.baseline;
    const words = `${(outcome === 'better' ? MORE : LESS)[comparison.compared]}: ${signed(difference)}`;
    const bar: PlotValue = {
      data: rows([{ speed: start, end }]),
      mark: { type: 'rule', color, strokeWidth: 5 },
      encoding: { x, x2: { field: 'end' }, y: { value: height - 4 } },
    };
    const isWide = (end - start) / whole > 0.4;
    const place = { x, y: { value: height - 9 } };
    const text = textAt(
      [words],
      place,
      { color, align: 'center', baseline: 'bottom', fontWeight: 'bold' },
      { speed: (start + end) / 2 },
    );
    return isWide ? [bar, text] : [bar];
  });
}

/** Ranges of engine speed where the difference is resolved. */
export function resolvedRanges(ranges: readonly SpeedRange[]): readonly SpeedRange[] {
  return ranges.filter(({ outcome }) => outcome === 'better' || outcome === 'worse');
}

/** Where the bars that mark resolved ranges start and end, in rpm: a grid speed stands for the window around it. */
export function resolvedBars(
  { engineSpeed }: Comparison,
  { ranges }: DifferenceCurve,
): { start: number; end: number; outcome: SpeedRange['outcome']; difference: Quantity }[] {
  const [first, last, step] = [engineSpeed.from, engineSpeed.to, engineSpeed.step].map((speed) => speed.in('rpm')) as [
    number,
    number,
    number,
  ];
  return resolvedRanges(ranges).map(({ from, to, outcome, difference }) => ({
    start: Math.max(from.in('rpm') - step / 2, first),
    end: Math.min(to.in('rpm') + step / 2, last),
    outcome,
    difference,
  }));
}

function titleOf({ candidate, baseline }: Comparison): string {
  return `${labelText(candidate.name)} minus ${labelText(baseline.name)} over engine speed`;
}

function descriptionOf(comparison: Comparison, curve: DifferenceCurve): string {
  const { from, to } = comparison.engineSpeed;
  const mean =
    comparison.overall && comparison.relative !== undefined
      ? ` Mean over the range ${signed(comparison.overall.value)} (${signedPercent(comparison.relative)}).`
      : '';
  const margin = comparison.worthwhile ? ` Dashed lines at ${marginText(comparison.worthwhile)}, set beforehand.` : '';
  const ranges = isNoResult(comparison.outcome)
    ? ' Not a result: see the objections.'
    : ` ${SPEED_BY_SPEED}: ${curve.ranges
        .map(({ from: a, to: b, outcome, difference }) => `${overSpeeds(a, b)} ${outcome} (${signed(difference)})`)
        .join('; ')}.`;
  return `Difference from ${speedRange(from, to)} with its ${bandText(comparison)}.${mean}${ranges}${margin}`;
}
