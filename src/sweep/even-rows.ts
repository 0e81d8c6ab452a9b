import { cadenceOf, presentRows } from '../statistics/signal/index.js';
import type { TimeBase } from './time-base.js';

/** A channel at evenly spaced times. */
export interface EvenSignal {
  readonly values: Float64Array;
  /** Seconds from sample to sample. */
  readonly step: number;
  /** Seconds of the first sample since the pull's first row. */
  readonly start: number;
}

/** More samples a second than this show no more of what a pull does. */
const FASTEST = 50;

/**
 * A channel from one row on at evenly spaced times, by straight lines over blanks; a faster logger's rows are averaged. Undefined
 * where there are no times, or a gap in the readings is longer than `longestGap` seconds.
 */
export function evenSignal(
  si: Float64Array,
  { seconds, step }: TimeBase,
  fromRow: number,
  longestGap: number,
): EvenSignal | undefined {
  if (seconds === undefined || step === undefined) return undefined;
  const rows = presentRows(si.subarray(fromRow)).map((row) => row + fromRow);
  if (rows.length < 2) return undefined;
  const [first, last] = [seconds[rows[0]!]!, seconds[rows[rows.length - 1]!]!];
  for (let i = 1; i < rows.length; i++) {
    if (seconds[rows[i]!]! - seconds[rows[i - 1]!]! > longestGap) return undefined;
  }
  const perSample = Math.max(1, Math.floor(1 / (FASTEST * step)));
  const count = Math.floor((last - first) / step + 1e-6) + 1;
  let place = 0;
  const even = Float64Array.from({ length: count }, (_, i) => {
    const t = Math.min(first + i * step, last);
    while (place < rows.length - 2 && seconds[rows[place + 1]!]! <= t) place++;
    const [low, high] = [rows[place]!, rows[place + 1]!];
    const share = (t - seconds[low]!) / (seconds[high]! - seconds[low]!);
    return si[low]! + share * (si[high]! - si[low]!);
  });
  if (perSample === 1) return { values: even, step, start: first };
  const values = Float64Array.from({ length: Math.floor(count / perSample) }, (_, i) => {
    let sum = 0;
    for (let at = i * perSample; at < (i + 1) * perSample; at++) sum += even[at]!;
    return sum / perSample;
  });
  return { values, step: step * perSample, start: first + ((perSample - 1) / 2) * step };
}

/** The readings of a channel that are its own, and how far apart they are. */
export interface RealReadings {
  /** NaN in rows that repeat a reading, or have none. */
  readonly si: Float64Array;
  /** Rows from one to the next, on average. */
  readonly every: number;
}

/** The readings of a channel from one row on, without those that only repeat the last: what is written more often than read shows no more. */
export function realReadings(si: Float64Array, fromRow: number): RealReadings {
  const part = si.subarray(fromRow);
  const cadence = cadenceOf(part);
  if (cadence === undefined) return { si, every: Math.max(1, part.length / Math.max(1, presentRows(part).length)) };
  const real = new Float64Array(si.length).fill(NaN);
  for (const row of cadence.fresh) real[fromRow + row] = part[row]!;
  return { si: real, every: cadence.every };
}
