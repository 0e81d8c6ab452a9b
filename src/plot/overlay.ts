import { counted, like, shown, speedRange } from '../comparison/words.js';
import type { Comparison, PullResult, SideResult } from '../comparison/index.js';
import { along, scaleOf, speedAxis, valueAxis, withTicks } from './axis.js';
import { labelWidth, sideLabels } from './labels.js';
import { meanBand } from './mean-band.js';
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
import { acceptedPulls, comparedWords, gridOf, labelText, levelText, numbersOf, unitOf } from './words.js';

interface Curve {
  readonly side: 'baseline' | 'candidate';
  readonly name: string;
  readonly mean: readonly number[];
  readonly half: readonly number[] | undefined;
  readonly pulls: readonly PullResult[];
  readonly refused: readonly PullResult[];
}

/**
 * Both set-ups over engine speed: the mean of each thick, every single pull thin, refused pulls dotted, and the band that holds the
 * whole mean curve at once as a shade. The value axis does not start at zero, so that the curves can be told apart.
 *
 * Whether the difference is resolved must be read from {@link differencePlot}: two bands may overlap where it is.
 */
export function overlayPlot(comparison: Comparison, options: PlotOptions = {}): PlotSpec {
  const unit = unitOf(comparison);
  const grid = gridOf(comparison);
  const curves = [curveOf(comparison, 'baseline', grid, unit), curveOf(comparison, 'candidate', grid, unit)];
  const narrow = isNarrow(options);
  const frame = frameOf(options, narrow ? 280 : 250, {
    left: 44,
    right: labelWidth([comparison.baseline.name, comparison.candidate.name], narrow),
    top: 30,
    bottom: 42,
  });
  const speeds = withTicks(grid[0]!, grid.at(-1)!, narrow ? 3 : 6);
  const singles = curves.flatMap(({ side, pulls, refused }) =>
    [...pulls, ...refused].map((pull) => ({ side, pull, isRefused: !pull.accepted })),
  );
  const singleRows = singles.flatMap(({ side, pull, isRefused }, i) =>
    pointsOf(grid, numbersOf(pull.curve, unit)).map((point) => ({ ...point, side, line: i, refused: isRefused })),
  );
  const meanRows = curves.flatMap(({ side, mean }) => pointsOf(grid, mean).map((point) => ({ ...point, side })));
  const bandRows = curves.flatMap(({ side, mean, half }) =>
    half === undefined
      ? []
      : grid.map((speed, i) => ({ speed, side, low: finite(mean[i]! - half[i]!), high: finite(mean[i]! + half[i]!) })),
  );
  const values = scaleOf(
    [...singleRows.map(({ value }) => value), ...bandRows.flatMap(({ low, high }) => [low, high])].filter(
      (value) => value !== null,
    ),
    narrow ? 4 : 5,
  );
  const x = {
    field: 'speed',
    type: 'quantitative',
    scale: { domain: speeds.domain, nice: false, zero: false },
    axis: speedAxis(speeds, 'engine speed, rpm'),
  } as const;
  const y = {
    field: 'value',
    type: 'quantitative',
    scale: { domain: values.domain, nice: false, zero: false },
    axis: valueAxis(values, `${comparedWords(comparison)}, ${unit}`, 44),
  } as const;
  const layer: PlotValue[] = [
    {
      data: rows(bandRows),
      mark: { type: 'area', opacity: 0.15, invalid: 'break-paths-filter-domains' },
      encoding: { x, y: { ...y, field: 'low' }, y2: { field: 'high' }, color: bySide(INK), detail: { field: 'side' } },
    },
    {
      data: rows(singleRows),
      mark: { type: 'line', strokeWidth: 0.8, opacity: 0.6, invalid: 'break-paths-filter-domains' },
      encoding: {
        x,
        y,
        color: bySide(INK),
        detail: { field: 'line' },
        strokeDash: {
          condition: [
            { test: 'datum.refused', value: DASH.refused },
            { test: "datum.side === 'baseline'", value: [4, 3] },
          ],
          value: DASH.candidate,
        },
      },
    },
    {
      data: rows(meanRows),
      mark: { type: 'line', strokeWidth: 2.6, invalid: 'break-paths-filter-domains' },
      encoding: { x, y, color: bySide(INK), strokeDash: bySide(DASH), detail: { field: 'side' } },
    },
    ...sideLabels(
      curves.flatMap(({ side, name, mean }) => {
        const last = mean.findLast((value) => Number.isFinite(value));
        return last === undefined
          ? []
          : [{ name, color: INK[side], y: frame.height - along(values, last, frame.height) }];
      }),
      frame.width,
      narrow,
    ),
  ];
  return plotSpec({ title: titleOf(comparison), description: descriptionOf(comparison, curves) }, frame, layer);
}

function curveOf(comparison: Comparison, key: 'baseline' | 'candidate', grid: readonly number[], unit: string): Curve {
  const one: SideResult = comparison[key];
  const pulls = acceptedPulls(one);
  const mean = Array.from(numbersOf(one.mean, unit));
  const covered = grid.map((_, row) => row).filter((row) => Number.isFinite(mean[row]));
  const curves = pulls.map((pull) => numbersOf(pull.curve, unit));
  const band = meanBand(
    covered.map((row) => grid[row]!),
    curves.map((curve) => covered.map((row) => curve[row]!)),
    comparison.confidence,
  );
  const half = band && grid.map((_, row) => band[covered.indexOf(row)] ?? NaN);
  return { side: key, name: one.name, mean, half, pulls, refused: one.pulls.filter((pull) => !pull.accepted) };
}

/** A gap in a curve is a null, which breaks the line. */
function pointsOf(grid: readonly number[], values: ArrayLike<number>): { speed: number; value: number | null }[] {
  return grid.map((speed, row) => ({ speed, value: finite(values[row]!) }));
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function bySide(values: { readonly baseline: PlotValue; readonly candidate: PlotValue }): PlotValue {
  return {
    condition: { test: "datum.side === 'baseline'", value: values.baseline },
    value: values.candidate,
  };
}

function titleOf(comparison: Comparison): string {
  return `${labelText(comparison.candidate.name)} and ${labelText(comparison.baseline.name)}: ${comparedWords(comparison)} over engine speed`;
}

function descriptionOf(comparison: Comparison, curves: readonly Curve[]): string {
  const { from, to } = comparison.engineSpeed;
  const sides = curves.map(({ side, name, pulls, refused }) => {
    const { mean } = comparison[side];
    const known = mean.si.filter((si) => !Number.isNaN(si));
    const ends =
      known.length === 0
        ? 'no mean'
        : `mean from ${shown(like(mean, known[0]!))} to ${shown(like(mean, known.at(-1)!))}`;
    const left = refused.length === 0 ? '' : `, ${refused.length} refused`;
    return `${labelText(name)}: ${counted(pulls.length, 'pull')}${left}, ${ends}`;
  });
  const overall = [comparison.baseline, comparison.candidate].flatMap((side) =>
    side.overall ? [`${labelText(side.name)} averages ${shown(side.overall)}`] : [],
  );
  return `Line chart of ${comparedWords(comparison)} from ${speedRange(from, to)} with ${levelText(comparison)} bands. ${[...sides, ...overall].join('. ')}.`;
}
