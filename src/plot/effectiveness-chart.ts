import { decimals } from '../comparison/words.js';
import { bestTransferUnitsCrossflowBothMixed, effectiveness, effectivenessMultiPass } from '../intercooler/index.js';
import { CalculationError, ratio, type Quantity } from '../units/index.js';
import { along, speedAxis, valueAxis, withTicks, type Scale } from './axis.js';
import { textAt } from './labels.js';
import { frameOf, INK, isNarrow, plotSpec, rows, type PlotOptions, type PlotSpec, type PlotValue } from './spec.js';
import { labelText } from './words.js';

type Ratio = Quantity<'ratio'>;

/** A flow arrangement that has a chart: any of `effectiveness` but passes of another, which `passes` asks for. */
export type ChartedArrangement = Exclude<keyof typeof effectiveness, 'multiPass'>;

/** A core to mark on the chart. */
export interface ChartedCore {
  readonly name: string;
  readonly transferUnits: Ratio;
  /** True effectiveness. */
  readonly effectiveness: Ratio;
}

/** What the chart shows. */
export interface EffectivenessChartOptions extends PlotOptions {
  /** Both flows unmixed when left out. */
  readonly arrangement?: ChartedArrangement;
  /** Passes of the arrangement in overall counterflow; one when left out. */
  readonly passes?: Ratio;
  /** One curve for each; 0, 0.25, 0.5, 0.75 and 1 when left out. */
  readonly capacityRatios?: readonly Ratio[];
  /** Where the axis of transfer units ends; 5 when left out. */
  readonly transferUnits?: Ratio;
  /** Cores to mark. */
  readonly cores?: readonly ChartedCore[];
}

interface Curve {
  readonly capacityRatio: number;
  readonly name: string;
  readonly color: string;
  readonly points: readonly { readonly units: number; readonly effectiveness: number }[];
}

const STEPS = 120;
const LABEL_HEIGHT = 14;

/**
 * Effectiveness over transfer units, one curve for each capacity ratio: the chart of the textbooks, with the cores in question on it.
 * Where both flows mix, a dot on each curve marks the size beyond which a larger core cools less.
 *
 * @throws CalculationError if there is no curve to draw, or an input is physically impossible.
 * @example
 * const svg = await renderSvg(effectivenessChart({ arrangement: 'counterflow' }));
 */
export function effectivenessChart(options: EffectivenessChartOptions = {}): PlotSpec {
  const { arrangement = 'crossflowUnmixed', transferUnits = ratio(5), cores = [] } = options;
  const curves = curvesOf(options, arrangement, transferUnits);
  const narrow = isNarrow(options);
  const frame = frameOf(options, narrow ? 300 : 340, { left: 44, right: 88, top: 30, bottom: 42 });
  const across = withTicks(0, transferUnits.si, narrow ? 4 : 6);
  const up: Scale = withTicks(0, 100, 5);
  const x = {
    field: 'units',
    type: 'quantitative',
    scale: { domain: across.domain, nice: false },
    axis: speedAxis(across, 'number of transfer units'),
  } as const;
  const y = {
    field: 'effectiveness',
    type: 'quantitative',
    scale: { domain: up.domain, nice: false },
    axis: valueAxis(up, 'true effectiveness, %', 44),
  } as const;
  const heights = apart(
    curves.map(({ points }) => frame.height - along(up, points.at(-1)!.effectiveness, frame.height)),
    frame.height,
  );
  const label = (text: string, color: string, height: number, weight: string): PlotValue =>
    textAt(
      [text],
      { x: { value: frame.width + 8 }, y: { value: height } },
      { align: 'left', color, fontWeight: weight },
    );
  const layer: PlotValue[] = [
    ...curves.map(({ points, color }) => ({
      data: rows(points.map((point) => ({ ...point }))),
      mark: { type: 'line', strokeWidth: 2.2, color },
      encoding: { x, y },
    })),
    ...(arrangement === 'crossflowBothMixed' && options.passes === undefined ? bestSizes(curves, across, x, y) : []),
    ...cores.flatMap((core) => marked(core, across, x, y)),
    label('capacity ratio', INK.quiet, Math.min(...heights) - LABEL_HEIGHT - 2, 'normal'),
    ...curves.map(({ name, color }, i) => label(name, color, heights[i]!, 'bold')),
  ];
  const title = titleOf(arrangement, options.passes);
  return plotSpec({ title, description: descriptionOf(title, curves, transferUnits, cores) }, frame, layer);
}

function curvesOf(
  { passes, capacityRatios = [0, 0.25, 0.5, 0.75, 1].map((C) => ratio(C)) }: EffectivenessChartOptions,
  arrangement: ChartedArrangement,
  most: Ratio,
): Curve[] {
  if (capacityRatios.length === 0) {
    throw new CalculationError('effectivenessChart', [
      { code: 'length', input: 'capacityRatios', need: 'at least one capacity ratio', got: 'none', mend: '' },
    ]);
  }
  const cell = effectiveness[arrangement];
  const at = (units: Ratio, capacityRatio: Ratio): Ratio =>
    passes
      ? effectivenessMultiPass({ cell, transferUnits: units, capacityRatio, passes })
      : cell({ transferUnits: units, capacityRatio });
  return capacityRatios.map((capacityRatio, i) => ({
    capacityRatio: capacityRatio.si,
    name: decimals(capacityRatio.si, 2).replace(/\.?0+$/, ''),
    color: shade(capacityRatios.length === 1 ? 0 : i / (capacityRatios.length - 1)),
    points: Array.from({ length: STEPS + 1 }, (_, step) => {
      const units = (most.si * step) / STEPS;
      return { units, effectiveness: 100 * at(ratio(units), capacityRatio).si };
    }),
  }));
}

/** From the ink of one set-up to that of the other over a violet between, all dark enough on paper. */
function shade(share: number): string {
  const stops = [
    [0x13, 0x4f, 0x8f],
    [0x7a, 0x3a, 0x78],
    [0xa8, 0x43, 0x0a],
  ] as const;
  const [from, to, within] = share < 0.5 ? [stops[0], stops[1], 2 * share] : [stops[1], stops[2], 2 * share - 1];
  const parts = from.map((part, i) => Math.round(part + within * (to[i]! - part)));
  return `#${parts.map((part) => part.toString(16).padStart(2, '0')).join('')}`;
}

/** Heights of labels pushed apart from the top down, and back up where they would run out below. */
function apart(heights: readonly number[], bottom: number): number[] {
  const order = heights.map((_, i) => i).sort((a, b) => heights[a]! - heights[b]!);
  const placed = [...heights];
  order.forEach((i, place) => {
    if (place > 0) placed[i] = Math.max(placed[i]!, placed[order[place - 1]!]! + LABEL_HEIGHT);
  });
  order.toReversed().forEach((i, place, all) => {
    const limit = place === 0 ? bottom : placed[all[place - 1]!]! - LABEL_HEIGHT;
    placed[i] = Math.min(placed[i]!, limit);
  });
  return placed;
}

function bestSizes(curves: readonly Curve[], { domain: [, most] }: Scale, x: PlotValue, y: PlotValue): PlotValue[] {
  return curves.flatMap(({ capacityRatio, color }) => {
    if (capacityRatio < bestTransferUnitsCrossflowBothMixed.spec.inputs[0]!.min) return [];
    const transferUnits = bestTransferUnitsCrossflowBothMixed({ capacityRatio: ratio(capacityRatio) });
    if (transferUnits.si > most) return [];
    const best = effectiveness.crossflowBothMixed({ transferUnits, capacityRatio: ratio(capacityRatio) });
    return [dot(transferUnits.si, 100 * best.si, color, x, y)];
  });
}

function marked(core: ChartedCore, { domain: [, most] }: Scale, x: PlotValue, y: PlotValue): PlotValue[] {
  const [units, share] = [core.transferUnits.si, 100 * core.effectiveness.si];
  if (units > most) return [];
  const isRight = units > 0.7 * most;
  const look = {
    align: isRight ? 'right' : 'left',
    dx: isRight ? -9 : 9,
    dy: 5,
    baseline: 'top',
    fontWeight: 'bold',
  } as const;
  const place = { x, y };
  const data = { units, effectiveness: share };
  const words = [labelText(core.name, 28)];
  return [
    dot(units, share, INK.text, x, y),
    // A rim of paper keeps the name readable where it crosses curves.
    textAt(words, place, { ...look, color: 'white', stroke: 'white', strokeWidth: 4, opacity: 0.85 }, data),
    textAt(words, place, { ...look, color: INK.text }, data),
  ];
}

function dot(units: number, share: number, color: string, x: PlotValue, y: PlotValue): PlotValue {
  return {
    data: rows([{ units, effectiveness: share }]),
    mark: { type: 'point', filled: true, size: 60, color, opacity: 1 },
    encoding: { x, y },
  };
}

function titleOf(arrangement: ChartedArrangement, passes: Ratio | undefined): string {
  const { name } = effectiveness[arrangement].spec;
  const times = passes ? `, ${decimals(passes.si, 0)} passes in overall counterflow` : '';
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}${times}, over transfer units`;
}

function descriptionOf(title: string, curves: readonly Curve[], most: Ratio, cores: readonly ChartedCore[]): string {
  const ends = curves.map(
    ({ name, points }) => `${decimals(points.at(-1)!.effectiveness, 1)} % at capacity ratio ${name}`,
  );
  const marks = cores.map(
    ({ name, transferUnits, effectiveness: share }) =>
      ` ${labelText(name)}: ${decimals(100 * share.si, 1)} % with ${decimals(transferUnits.si, 2)} transfer units.`,
  );
  return `${title}. With ${decimals(most.si, 1)} transfer units: ${ends.join(', ')}.${marks.join('')}`;
}
