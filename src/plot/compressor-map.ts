import { decimals } from '../comparison/words.js';
import { surfaceOf, type CompressorMap } from '../compressor/map/compressor-map.js';
import type { Surface } from '../compressor/map/surface.js';
import { massFlow, type Quantity, type UnitOf } from '../units/index.js';
import { along, scaleOf, speedAxis, valueAxis, type Scale } from './axis.js';
import { contourLines, type HeightGrid, type PlanePoint } from './contours.js';
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
import { textAt } from './labels.js';
import { labelText } from './words.js';

/** A point to be shown on a map, such as an operating point. */
export interface PointOnMap {
  readonly correctedFlow: Quantity<'mass flow'>;
  readonly pressureRatio: Quantity<'ratio'>;
  /** Stands beside the point: an engine speed, for instance. */
  readonly label?: string;
}

/** Points joined in their order: one engine over its speed, or the same with another core. */
export interface OperatingLine {
  readonly name: string;
  readonly points: readonly PointOnMap[];
}

/** What a picture of a compressor map shows beside the map, and how large. */
export interface CompressorMapPlotOptions extends PlotOptions {
  /** Two are told apart by ink and dashes: before and after. */
  readonly operatingLines?: readonly OperatingLine[];
  /** Unit of the flow axis; that of the map when left out. */
  readonly flowUnit?: UnitOf<'mass flow'>;
}

/** Steps along each line, and from the lowest speed to the highest, in which the surface is drawn. */
const STEPS = 48;

/**
 * A compressor map: speed lines, lines of equal efficiency, the surge line, and operating lines over it.
 *
 * @throws CalculationError if the map was not made by `compressorMap`.
 * @example
 * const points = speeds.map((rpm) => ({ ...onMap(rpm), label: `${rpm}` }));
 * const svg = await renderSvg(compressorMapPlot(map, { operatingLines: [{ name: 'stock core', points }] }));
 */
export function compressorMapPlot(map: CompressorMap, options: CompressorMapPlotOptions = {}): PlotSpec {
  const { operatingLines = [] } = options;
  const surface = surfaceOf(map);
  const unit = options.flowUnit ?? (map.speedLines[0]!.points[0]!.correctedFlow.unit as 'kg/s');
  const siPerUnit = massFlow(1, unit).si;
  const placed = (point: PointOnMap): PlanePoint => ({ x: point.correctedFlow.in(unit), y: point.pressureRatio.si });
  const narrow = isNarrow(options);
  const frame = frameOf(options, narrow ? 380 : 460, { left: 44, right: 62, top: 30, bottom: 42 });

  const grid = gridOf(surface, siPerUnit);
  const contours = contoursOf(grid);
  const speedLines = map.speedLines.map(({ correctedSpeed }) => ({
    text: grouped(correctedSpeed.in('rpm')),
    points: acrossLine(surface, correctedSpeed.si, siPerUnit),
  }));
  const surge = map.surgeLine?.map(placed) ?? grid.map((row) => row[0]!);
  const operating = operatingLines.map(({ points }) => points.map(placed));

  const shown = [...speedLines.flatMap(({ points }) => points), ...surge, ...operating.flat()];
  const flows = scaleOf(
    shown.map(({ x }) => x),
    narrow ? 4 : 7,
  );
  const ratios = scaleOf(
    shown.map(({ y }) => y),
    narrow ? 4 : 6,
  );
  const plane: Plane = {
    x: positioned('x', flows, speedAxis(flows, `corrected mass flow, ${unit}`)),
    y: positioned('y', ratios, valueAxis(ratios, 'pressure ratio', 44)),
  };
  const labels = contours.map(({ level, lines }) => ({
    ...placeOfLabel(lines),
    text: `${decimals(level * 100, 0)} %`,
  }));
  const last = speedLines.length - 1;
  const wide = ({ x }: PlanePoint): number => along(flows, x, frame.width);
  const layer: PlotValue[] = [
    curves(
      plane,
      contours.flatMap(({ lines }) => lines),
      { color: INK.faint, strokeWidth: 0.8 },
    ),
    curves(
      plane,
      speedLines.map(({ points }) => points),
      { color: INK.quiet, strokeWidth: 1.3 },
    ),
    curves(plane, [surge], { color: INK.text, strokeWidth: 1.6, strokeDash: DASH.margin }),
    texts(plane, labels, { ...SMALL, stroke: 'white', strokeWidth: 6, strokeJoin: 'round' }),
    texts(plane, labels, SMALL),
    texts(
      plane,
      speedLines.map(({ text, points }, i) => ({ ...points.at(-1)!, text: i === last ? `${text} rpm` : text })),
      { fontSize: 11, align: 'left', dx: 4, dy: 5, color: INK.quiet },
    ),
    texts(plane, [{ ...surge[Math.floor(surge.length / 2)]!, text: 'surge' }], { align: 'right', dx: -8 }),
    ...operatingLines.flatMap((line, i) => operatingLayers(plane, line, operating[i]!, i, wide)),
  ];
  const title = `Compressor map of ${labelText(map.name)}`;
  return plotSpec({ title, description: descriptionOf(map, contours, operatingLines) }, frame, layer);
}

type Look = { readonly [key: string]: PlotValue };
const SMALL: Look = { fontSize: 10, align: 'center', color: INK.quiet };

/** Both axes of the picture. */
interface Plane {
  readonly x: PlotValue;
  readonly y: PlotValue;
}

function positioned(field: 'x' | 'y', { domain }: Scale, axis: PlotValue): PlotValue {
  return { field, type: 'quantitative', scale: { domain, nice: false, zero: false }, axis };
}

/** Lines through points in their order, which is not that of the flow. */
function curves(plane: Plane, lines: readonly (readonly PlanePoint[])[], look: Look): PlotValue {
  return {
    data: rows(lines.flatMap((points, line) => points.map(({ x, y }, order) => ({ x, y, line, order })))),
    mark: { type: 'line', ...look },
    encoding: { ...plane, detail: { field: 'line' }, order: { field: 'order', type: 'quantitative' } },
  };
}

function texts(plane: Plane, labels: readonly (PlanePoint & { readonly text: string })[], look: Look): PlotValue {
  return {
    data: rows(labels.map(({ x, y, text }) => ({ x, y, text }))),
    mark: { type: 'text', ...look },
    encoding: { ...plane, text: { field: 'text' } },
  };
}

const INKS = [INK.baseline, INK.candidate, INK.text] as const;
const DASHES = [DASH.baseline, DASH.candidate, DASH.refused] as const;

/** Width of a label of an engine speed, and a little air. */
const LABEL_WIDTH = 34;

/** An operating line, its points and their labels, and its name in the corner left of surge, which every map leaves empty. */
function operatingLayers(
  plane: Plane,
  { name, points }: OperatingLine,
  places: readonly PlanePoint[],
  i: number,
  wide: (place: PlanePoint) => number,
): PlotValue[] {
  const color = INKS[i % INKS.length]!;
  const strokeDash = DASHES[i % DASHES.length]!;
  const height = 12 + i * 18;
  const labels: (PlanePoint & { readonly text: string })[] = [];
  places.forEach((place, k) => {
    const { label } = points[k]!;
    const before = labels.at(-1);
    if (label === undefined || (before && Math.abs(wide(place) - wide(before)) < LABEL_WIDTH)) return;
    labels.push({ ...place, text: labelText(label, 12) });
  });
  return [
    curves(plane, [places], { color, strokeWidth: 2.4, strokeDash }),
    {
      data: rows(places.map(({ x, y }) => ({ x, y }))),
      mark: { type: 'point', filled: true, size: 36, opacity: 1, color },
      encoding: { ...plane },
    },
    // Labels of the second line stand below it, because the lines of two cores lie close together.
    texts(plane, labels, { fontSize: 11, align: 'center', dy: i === 0 ? -11 : 12, color }),
    {
      data: rows([{}]),
      mark: { type: 'rule', color, strokeWidth: 2.4, strokeDash },
      encoding: { x: { value: 10 }, x2: { value: 38 }, y: { value: height } },
    },
    textAt(
      [labelText(name, 28)],
      { x: { value: 44 }, y: { value: height } },
      { align: 'left', color, fontWeight: 'bold' },
    ),
  ];
}

/** The whole map as a bent grid: rows of one speed, from surge to choke. */
function gridOf(surface: Surface, siPerUnit: number): HeightGrid {
  const [low, high] = surface.speedRange;
  return Array.from({ length: STEPS + 1 }, (_, i) => acrossLine(surface, low + ((high - low) * i) / STEPS, siPerUnit));
}

function acrossLine(surface: Surface, speed: number, siPerUnit: number): HeightGrid[number] {
  return Array.from({ length: STEPS + 1 }, (_, j) => ({
    x: surface.flow(j / STEPS, speed) / siPerUnit,
    y: surface.ratio(j / STEPS, speed),
    height: surface.efficiency(j / STEPS, speed),
  }));
}

/** `160 000`, with a space that does not break. */
function grouped(value: number): string {
  return decimals(value, 0).replace(/\B(?=(\d{3})+$)/g, '\u00A0');
}

interface Contour {
  readonly level: number;
  readonly lines: readonly (readonly PlanePoint[])[];
}

/** Lines of equal efficiency: every five percent, and the last whole percents below the best. */
function contoursOf(grid: HeightGrid): Contour[] {
  const heights = grid.flatMap((row) => row.map(({ height }) => height));
  const [least, best] = [Math.min(...heights), Math.max(...heights)];
  const percents = Array.from({ length: 100 }, (_, percent) => percent).filter((percent) => {
    if (percent <= least * 100 || percent >= best * 100) return false;
    return percent % 5 === 0 || (percent > best * 100 - 4.5 && percent % 2 === 0);
  });
  return percents
    .map((percent) => ({ level: percent / 100, lines: contourLines(grid, percent / 100) }))
    .filter(({ lines }) => lines.length > 0);
}

/** Half way along the longest piece, where a label is least likely to meet another. */
function placeOfLabel(lines: readonly (readonly PlanePoint[])[]): PlanePoint {
  const longest = lines.reduce((most, line) => (line.length > most.length ? line : most));
  return longest[Math.floor(longest.length / 2)]!;
}

function descriptionOf(
  map: CompressorMap,
  contours: readonly Contour[],
  operatingLines: readonly OperatingLine[],
): string {
  const best = contours.at(-1);
  const efficiency = best ? ` and lines of equal efficiency up to ${decimals(best.level * 100, 0)} %` : '';
  const operating = operatingLines.map(({ name, points }) => {
    const [first, last] = [points[0], points.at(-1)];
    if (!first || !last) return ` ${labelText(name)}: no points.`;
    const where = ({ correctedFlow, pressureRatio }: PointOnMap): string =>
      `${String(correctedFlow)} at ${decimals(pressureRatio.si, 2)}`;
    return ` ${labelText(name)}: ${points.length} points from ${where(first)} to ${where(last)}.`;
  });
  const [low, high] = [map.speedLines[0]!, map.speedLines.at(-1)!].map(({ correctedSpeed }) => String(correctedSpeed));
  return `Pressure ratio over corrected mass flow of ${labelText(map.name)}, with ${map.speedLines.length} speed lines from ${low!} to ${high!}${efficiency}.${operating.join('')}`;
}
