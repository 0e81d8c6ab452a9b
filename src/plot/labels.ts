import { FONT_SIZE, rows, type PlotValue } from './spec.js';
import { labelLines } from './words.js';

/** A name to stand beside the drawing area, at a height in pixels from its top. */
export interface SideLabel {
  readonly name: string;
  readonly color: string;
  readonly y: number;
}

const LINE = FONT_SIZE + 1;

/** Width that names beside a drawing area need: bold text is about two thirds as wide as it is high. */
export function labelWidth(names: readonly string[], isNarrow: boolean): number {
  const lines = names.flatMap((name) => labelLines(name, isNarrow ? NARROW : WIDE));
  return 16 + Math.max(8, ...lines.map((line) => Array.from(line).length)) * FONT_SIZE * 0.67;
}

const NARROW = 12;
const WIDE = 20;

/** Names beside a drawing area of a width, pushed apart where they would overlap. */
export function sideLabels(labels: readonly SideLabel[], width: number, isNarrow: boolean): PlotValue[] {
  const placed = labels
    .map(({ name, color, y }) => ({ lines: labelLines(name, isNarrow ? NARROW : WIDE), color, y }))
    .sort((a, b) => a.y - b.y);
  const [upper, lower] = placed;
  if (upper && lower) {
    const missing = ((upper.lines.length + lower.lines.length) * LINE) / 2 + 3 - (lower.y - upper.y);
    if (missing > 0) {
      upper.y -= missing / 2;
      lower.y += missing / 2;
    }
  }
  return placed.map(({ lines, color, y }) =>
    textAt(lines, { x: { value: width + 8 }, y: { value: y } }, { align: 'left', color, fontWeight: 'bold' }),
  );
}

/** Lines of text at a place of the drawing area, centred on it from top to bottom. */
export function textAt(
  lines: readonly string[],
  encoding: { readonly [key: string]: PlotValue },
  look: { readonly [key: string]: PlotValue },
  data: { readonly [key: string]: PlotValue } = {},
): PlotValue {
  const dy = ((1 - lines.length) * LINE) / 2;
  return { data: rows([data]), mark: { type: 'text', text: lines, lineHeight: LINE, dy, ...look }, encoding };
}
