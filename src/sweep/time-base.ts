import { medianOf } from '../statistics/signal/index.js';
import type { Channels } from './roles.js';
import { counted } from './words-for-people.js';

/** The times of a pull's rows. */
export interface TimeBase {
  /** What the times were taken from; `engine speed` where no channel gives usable ones. */
  readonly base: 'time' | 'clock' | 'engine speed';
  /** Seconds since the first row, rising; undefined without a time base. */
  readonly seconds: Float64Array | undefined;
  /** Seconds from row to row, the middle value. */
  readonly step: number | undefined;
  /** Places where rows are missing: more than one and a half steps apart. */
  readonly breaks: readonly TimeBreak[];
  readonly remarks: readonly string[];
}

/** Rows that should be there and are not. */
export interface TimeBreak {
  /** The row before. */
  readonly row: number;
  readonly seconds: number;
}

const LONGEST_STEP = 1.5;

/** A pull's times are asked for at every step, and the middle step of many rows is not had for nothing. */
const known = new WeakMap<Channels, TimeBase>();

/** The times of rows, from the time channel, or else from the clock. */
export function timeBaseOf(channels: Channels): TimeBase {
  const before = known.get(channels);
  if (before !== undefined) return before;
  const base = timesOf(channels);
  known.set(channels, base);
  return base;
}

function timesOf(channels: Channels): TimeBase {
  const remarks: string[] = [];
  for (const base of ['time', 'clock'] as const) {
    const column = channels[base];
    if (column === undefined || column.length < 2) continue;
    const usable = risingSeconds(column.si);
    if (typeof usable === 'string') {
      remarks.push(`${base} ${usable}`);
      continue;
    }
    if (usable.spread > 0) {
      remarks.push(
        `${base} stands still in ${counted(usable.spread, 'row')}; such rows were spread evenly until it moves on.`,
      );
    }
    const { seconds } = usable;
    const steps = new Float64Array(seconds.length - 1);
    for (let row = 0; row < steps.length; row++) steps[row] = seconds[row + 1]! - seconds[row]!;
    const step = medianOf(steps)!;
    const breaks: TimeBreak[] = [];
    for (let row = 0; row < steps.length; row++)
      if (steps[row]! > LONGEST_STEP * step) breaks.push({ row, seconds: steps[row]! });
    return { base, seconds, step, breaks, remarks };
  }
  return { base: 'engine speed', seconds: undefined, step: undefined, breaks: [], remarks };
}

/** Seconds that rise from row to row: blanks and equal stamps by straight lines between the stamps about them. */
function risingSeconds(si: Float64Array): { readonly seconds: Float64Array; readonly spread: number } | string {
  const stamps: number[] = [];
  let still = 0;
  for (let row = 0; row < si.length; row++) {
    const stamp = si[row]!;
    const before = stamps.length === 0 ? -Infinity : si[stamps[stamps.length - 1]!]!;
    if (Number.isNaN(stamp)) still++;
    else if (stamp > before) stamps.push(row);
    else if (stamp === before) still++;
    else return `steps back at row ${row + 1}, so it is not used.`;
  }
  if (stamps.length < 2) return 'never moves, so it is not used.';
  const start = si[stamps[0]!]!;
  const seconds = new Float64Array(si.length);
  let place = 0;
  for (let row = 0; row < si.length; row++) {
    while (place < stamps.length - 2 && stamps[place + 1]! <= row) place++;
    const [low, high] = [stamps[place]!, stamps[place + 1]!];
    seconds[row] = si[low]! - start + ((row - low) * (si[high]! - si[low]!)) / (high - low);
  }
  const [first] = seconds;
  return { seconds: first === 0 ? seconds : seconds.map((second) => second - first!), spread: still };
}

/** The row at or after a time since the start; as many as there are rows where none is. */
export function rowAtSecond(seconds: Float64Array, second: number): number {
  let [low, high] = [0, seconds.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (seconds[middle]! < second - 1e-9) low = middle + 1;
    else high = middle;
  }
  return low;
}
