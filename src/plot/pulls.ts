import { counted, shown } from '../comparison/words.js';
import type { Comparison, PullResult, SideResult } from '../comparison/index.js';
import { along, scaleOf, valueAxis } from './axis.js';
import { labelWidth, sideLabels, textAt } from './labels.js';
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
import { comparedWords, labelText, numberOf, unitOf } from './words.js';

/** A pull with its place along the picture. */
interface PlacedPull {
  readonly place: number;
  readonly value: number;
  readonly side: 'baseline' | 'candidate';
  readonly refused: boolean;
  readonly pull: PullResult;
}

/**
 * The range mean of every pull in the order of the day: does the change stand out of the scatter, and did the day drift? Refused pulls
 * are crosses. Where the order is not known the pulls stand side by side by set-up, and the axis says so.
 *
 * @returns undefined where no pull has a mean.
 */
export function pullsPlot(comparison: Comparison, options: PlotOptions = {}): PlotSpec | undefined {
  const unit = unitOf(comparison);
  const placed = placedPulls(comparison, unit);
  if (placed.length === 0) return undefined;
  const narrow = isNarrow(options);
  const frame = frameOf(options, narrow ? 200 : 210, {
    left: 44,
    right: labelWidth([comparison.baseline.name, comparison.candidate.name], narrow),
    top: 30,
    bottom: 42,
  });
  const isOrdered = hasOrder(comparison);
  const values = scaleOf(
    placed.map(({ value }) => value),
    4,
    0.1,
  );
  const last = Math.max(...placed.map(({ place }) => place));
  const x = {
    field: 'place',
    type: 'quantitative',
    scale: { domain: [0.5, last + 0.5], nice: false, zero: false },
    axis: {
      title: isOrdered ? 'pull, in the order of the day' : 'pull, by set-up (order of the day not known)',
      values: placed.map(({ place }) => place).sort((a, b) => a - b),
      format: 'd',
      grid: false,
      tickSize: 4,
      labelFlush: false,
    },
  } as const;
  const y = {
    field: 'value',
    type: 'quantitative',
    scale: { domain: values.domain, nice: false, zero: false },
    axis: valueAxis(values, `mean ${comparedWords(comparison)}, ${unit}`, 44),
  } as const;
  const points = placed.map(({ pull: _, ...point }) => point);
  const layer: PlotValue[] = [
    ...(['baseline', 'candidate'] as const).flatMap((side) => meanLine(comparison[side], side, unit, y)),
    marks(
      points,
      "datum.side === 'baseline' && !datum.refused",
      { shape: 'square', filled: false, stroke: INK.baseline },
      x,
      y,
    ),
    marks(
      points,
      "datum.side === 'candidate' && !datum.refused",
      { shape: 'circle', filled: true, fill: INK.candidate },
      x,
      y,
    ),
    marks(points, 'datum.refused', { shape: CROSS, filled: false, stroke: INK.text }, x, y),
    ...placed
      .filter(({ refused }) => refused)
      .map(({ place, value }) => {
        const look = { align: 'center', dy: -12, fontSize: 11, color: INK.quiet };
        return textAt(['refused'], { x, y }, look, { place, value });
      }),
    ...sideLabels(
      (['baseline', 'candidate'] as const).flatMap((side) => {
        const { name, overall } = comparison[side];
        if (overall === undefined) return [];
        return [{ name, color: INK[side], y: frame.height - along(values, numberOf(overall, unit), frame.height) }];
      }),
      frame.width,
      narrow,
    ),
  ];
  return plotSpec(
    { title: titleOf(comparison), description: descriptionOf(placed, comparison, isOrdered) },
    frame,
    layer,
  );
}

const CROSS = 'M-0.7,-0.7L0.7,0.7M-0.7,0.7L0.7,-0.7';

/** Whether every pull has its place in the order of the day. */
export function hasOrder({ baseline, candidate }: Comparison): boolean {
  return [...baseline.pulls, ...candidate.pulls].every(({ order }) => order !== undefined);
}

function placedPulls(comparison: Comparison, unit: string): PlacedPull[] {
  const isOrdered = hasOrder(comparison);
  const all = (['baseline', 'candidate'] as const).flatMap((side) =>
    comparison[side].pulls.map((pull) => ({ side, pull })),
  );
  return all
    .flatMap(({ side, pull }, i) => {
      if (pull.mean === undefined) return [];
      const place = isOrdered ? pull.order! : i + 1;
      return [{ place, value: numberOf(pull.mean, unit), side, refused: !pull.accepted, pull }];
    })
    .sort((a, b) => a.place - b.place);
}

function marks(
  points: readonly { readonly [key: string]: PlotValue }[],
  test: string,
  look: { readonly [key: string]: PlotValue },
  x: PlotValue,
  y: PlotValue,
): PlotValue {
  return {
    data: rows(points),
    transform: [{ filter: test }],
    mark: { type: 'point', size: 62, strokeWidth: 1.8, opacity: 1, ...look },
    encoding: { x, y },
  };
}

function meanLine({ overall }: SideResult, side: 'baseline' | 'candidate', unit: string, y: PlotValue): PlotValue[] {
  if (overall === undefined) return [];
  return [
    {
      data: rows([{ value: numberOf(overall, unit) }]),
      mark: { type: 'rule', color: INK[side], strokeWidth: 1, strokeDash: DASH[side] },
      encoding: { y },
    },
  ];
}

function titleOf(comparison: Comparison): string {
  return `Every pull of ${labelText(comparison.baseline.name)} and ${labelText(comparison.candidate.name)}`;
}

function descriptionOf(placed: readonly PlacedPull[], comparison: Comparison, isOrdered: boolean): string {
  const pulls = placed.map(
    ({ side, refused, pull }) =>
      `${labelText(comparison[side].name)}, ${labelText(pull.name)}: ${shown(pull.mean!)}${refused ? ', refused' : ''}`,
  );
  const order = isOrdered ? 'in the order of the day' : 'by set-up, the order of the day not being known';
  return `Means over the range of ${counted(placed.length, 'pull')}, ${order}. ${pulls.join('; ')}.`;
}
