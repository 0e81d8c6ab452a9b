import { decimals } from '../comparison/words.js';
import type { PlotValue } from './spec.js';

/** An axis that ends where its data ends, with round numbers on it. */
export interface Scale {
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  /** Decimals that the ticks need. */
  readonly places: number;
}

/** A scale that holds all values with a little room. */
export function scaleOf(values: readonly number[], count: number, room = 0.04): Scale {
  const finite = values.filter((value) => Number.isFinite(value));
  const low = Math.min(...finite);
  const high = Math.max(...finite);
  const spread = high > low ? high - low : Math.abs(high) || 1;
  return withTicks(low - room * spread, high + room * spread, count);
}

/** Round numbers, about as many as asked for, between two ends. */
export function withTicks(low: number, high: number, count: number): Scale {
  const rough = (high - low) / count;
  const power = Math.floor(Math.log10(rough));
  const size = rough / 10 ** power;
  const digit = size > 5 ? 10 : size > 2 ? 5 : size > 1 ? 2 : 1;
  const step = digit * 10 ** power;
  const ticks: number[] = [];
  // Counting in whole steps keeps the ticks free of the rounding that adding up would gather.
  for (let i = Math.ceil(low / step - 1e-9); i * step <= high + 1e-9 * step; i++)
    ticks.push(Number((i * step).toPrecision(12)));
  return { domain: [low, high], ticks, places: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) };
}

/** Position of a value along a length of pixels, from the low end. */
export function along({ domain: [low, high] }: Scale, value: number, length: number): number {
  return ((value - low) / (high - low)) * length;
}

/** Tick labels as Vega draws them: the labels are ours, so a true minus sign and no format that depends on a locale. */
export function tickLabels({ ticks, places }: Scale, sign = false): PlotValue {
  const label = (tick: number): string => {
    const text = decimals(tick, places);
    return sign && tick > 0 ? `+${text}` : text;
  };
  const cases = ticks.map(
    (tick) => `abs(datum.value - (${tick})) < ${1e-9 + Math.abs(tick) * 1e-9} ? '${label(tick)}' : `,
  );
  return `${cases.join('')}''`;
}

/** The engine-speed axis. */
export function speedAxis(scale: Scale, title: string): PlotValue {
  return { values: scale.ticks, labelExpr: tickLabels(scale), title, grid: false, labelFlush: false, tickSize: 4 };
}

/** A value axis with its name above it, where it reads without turning the head. */
export function valueAxis(scale: Scale, title: string, left: number, sign = false): PlotValue {
  return {
    values: scale.ticks,
    labelExpr: tickLabels(scale, sign),
    title,
    titleAngle: 0,
    titleAlign: 'left',
    titleAnchor: 'end',
    titleBaseline: 'bottom',
    titleX: -left + 2,
    titleY: -10,
    domain: false,
    ticks: false,
  };
}
