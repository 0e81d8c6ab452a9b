import type { Comparison } from '../comparison/index.js';
import { speedAxis, tickLabels, withTicks, type Scale } from './axis.js';
import { textAt } from './labels.js';
import type { Box } from './panels.js';
import { INK, rows, type PlotValue } from './spec.js';

/** The heading of a panel: what it is in bold, and what is said of it below. */
export function panelHead({ lines: { bold, plain }, left, headTop, lineHeight }: Box): PlotValue[] {
  const block = (lines: readonly string[], from: number, look: { readonly [key: string]: PlotValue }): PlotValue =>
    textAt(
      lines,
      { x: { value: left }, y: { value: headTop + (from + lines.length / 2) * lineHeight } },
      { align: 'left', ...look },
    );
  return [block(bold, 0, { fontWeight: 'bold' }), block(plain, bold.length, { color: INK.quiet })];
}

/** Encodings that put numbers over engine speed into a panel. */
export interface PanelAxes {
  readonly x: { readonly [key: string]: PlotValue };
  readonly y: { readonly [key: string]: PlotValue } | undefined;
  readonly speeds: Scale;
  readonly values: Scale | undefined;
}

/** The axes of a panel, with value labels only where it is asked to have them. */
export function panelAxes(
  { from, to }: Comparison['engineSpeed'],
  values: Scale | undefined,
  { left, right, top, bottom }: Box,
  frameHeight: number,
  hasLabels: boolean,
): PanelAxes {
  const speeds = withTicks(from.in('rpm'), to.in('rpm'), 3);
  const scale = { nice: false, zero: false };
  return {
    speeds,
    values,
    x: {
      field: 'speed',
      type: 'quantitative',
      scale: { ...scale, domain: speeds.domain, range: [left, right] },
      axis: { ...(speedAxis(speeds, '') as object), title: null, orient: 'bottom', offset: bottom - frameHeight },
    },
    y: values && {
      field: 'difference',
      type: 'quantitative',
      scale: { ...scale, domain: values.domain, range: [bottom, top] },
      axis: hasLabels
        ? {
            values: values.ticks,
            labelExpr: tickLabels(values, true),
            title: null,
            orient: 'left',
            offset: 0 - left,
            grid: false,
            domain: false,
            ticks: false,
          }
        : null,
    },
  };
}

/** The border of a panel, drawn through its scales, so that the axes also stand where nothing else is drawn. */
export function panelBorder(box: Box, { x, y, speeds, values }: PanelAxes): PlotValue {
  const [[from, to], [low, high]] = [speeds.domain, values?.domain ?? [0, 0]];
  return {
    data: rows([{ speed: from, end: to, difference: low, upper: high }]),
    mark: { type: 'rect', filled: false, stroke: INK.grid, strokeWidth: 1 },
    encoding: {
      x,
      x2: { field: 'end' },
      ...(y ? { y, y2: { field: 'upper' } } : { y: { value: box.top }, y2: { value: box.bottom } }),
    },
  };
}
