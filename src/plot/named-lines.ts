import { textAt } from './labels.js';
import { rows, type Frame, type PlotValue } from './spec.js';
import { along, type Scale } from './axis.js';
import { labelLines } from './words.js';

/** A line with its name beside its end. */
export interface NamedLine {
  readonly name: string;
  readonly points: readonly { readonly x: number; readonly y: number }[];
  /** Its colour; by its place among the lines when left out. */
  readonly color?: string;
  /** Dash pattern; solid when left out. */
  readonly dash?: readonly number[];
  /** Whether each point is marked. */
  readonly isMarked?: boolean;
}

const LINE_HEIGHT = 13;

/** Colours from the one end of a set of lines to the other, all dark enough on paper and told apart by colour-blind readers. */
export function lineColor(i: number, count: number): string {
  const stops = [
    [0x13, 0x4f, 0x8f],
    [0x1b, 0x7a, 0x6e],
    [0x7a, 0x3a, 0x78],
    [0xa8, 0x43, 0x0a],
  ] as const;
  const place = count < 2 ? 0 : (i / (count - 1)) * (stops.length - 1);
  const from = stops[Math.floor(place)]!;
  const to = stops[Math.min(stops.length - 1, Math.floor(place) + 1)]!;
  const share = place - Math.floor(place);
  return `#${from
    .map((part, k) =>
      Math.round(part + share * (to[k]! - part))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}

/** The layers of lines with their names beside the drawing area, pushed apart where they would overlap. */
export function namedLines(
  lines: readonly NamedLine[],
  encoding: { readonly x: PlotValue; readonly y: PlotValue },
  up: Scale,
  frame: Frame,
  nameLength: number,
): PlotValue[] {
  const names = lines.map(({ name }) => labelLines(name, nameLength));
  const ends = lines.map(({ points }) => frame.height - along(up, points.at(-1)!.y, frame.height));
  const heights = apart(
    ends,
    names.map((own) => own.length * LINE_HEIGHT + 2),
    frame.height,
  );
  return lines.flatMap((line, i) => {
    const color = line.color ?? lineColor(i, lines.length);
    const data = rows(line.points.map((point) => ({ ...point })));
    const drawn: PlotValue[] = [
      {
        data,
        mark: { type: 'line', strokeWidth: 2.2, color, ...(line.dash ? { strokeDash: line.dash } : {}) },
        encoding,
      },
    ];
    if (line.isMarked)
      drawn.push({ data, mark: { type: 'point', filled: true, size: 44, opacity: 1, color }, encoding });
    return [
      ...drawn,
      textAt(
        names[i]!,
        { x: { value: frame.width + 10 }, y: { value: heights[i]! } },
        { align: 'left', color, fontWeight: 'bold' },
      ),
    ];
  });
}

/** Heights of names pushed apart from the top down, and back up where they would run out below. */
function apart(heights: readonly number[], sizes: readonly number[], bottom: number): number[] {
  const order = heights.map((_, i) => i).sort((a, b) => heights[a]! - heights[b]!);
  const placed = [...heights];
  const between = (i: number, j: number): number => (sizes[i]! + sizes[j]!) / 2;
  order.forEach((i, place) => {
    const before = order[place - 1];
    if (before !== undefined) placed[i] = Math.max(placed[i]!, placed[before]! + between(i, before));
  });
  order.toReversed().forEach((i, place, all) => {
    const after = all[place - 1];
    const limit = after === undefined ? bottom : placed[after]! - between(i, after);
    placed[i] = Math.min(placed[i]!, limit);
  });
  return placed;
}
