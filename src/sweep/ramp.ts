import { presentRows } from '../statistics/signal/index.js';

/** Whether engine speed rises or falls through a pull. */
export type RampDirection = 'up' | 'down';

/** The rows of a pull along which engine speed only rises, or only falls. */
export interface Ramp {
  readonly direction: RampDirection;
  /** Rows by rising engine speed. */
  readonly rows: Int32Array;
  /** Rows left out because speed steps back there. */
  readonly backSteps: number;
  /** Rows without an engine speed. */
  readonly blanks: number;
  /** Rows of the longest ramp the other way: many of them mean that the pull holds more than one ramp. */
  readonly otherWay: number;
}

/**
 * The ramp of a pull: in order of time, the most rows whose speed never steps back. One false reading then costs one row, where
 * keeping only what lies above everything before it would lose the rest of the pull.
 */
export function rampOf(speeds: Float64Array, direction?: RampDirection): Ramp {
  const rows = presentRows(speeds);
  const up = direction === 'down' ? undefined : longestRise(rows, (row) => speeds[row]!);
  const down = direction === 'up' ? undefined : longestRise(rows, (row) => -speeds[row]!);
  // A pull goes up unless it plainly goes down: coasting back afterwards often takes longer than the pull.
  const isUp = down === undefined || (up !== undefined && 2 * up.length >= down.length);
  const kept = isUp ? up! : down.reverse();
  return {
    direction: isUp ? 'up' : 'down',
    rows: kept,
    backSteps: rows.length - kept.length,
    blanks: speeds.length - rows.length,
    otherWay: (isUp ? down : up)?.length ?? 0,
  };
}

/** Longest run of rows, in their order, whose value never falls (patience sorting: each length's smallest last value). */
function longestRise(rows: Int32Array, valueOf: (row: number) => number): Int32Array {
  const last: number[] = [];
  const before = new Int32Array(rows.length);
  for (let at = 0; at < rows.length; at++) {
    const value = valueOf(rows[at]!);
    let low = 0;
    let high = last.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (valueOf(rows[last[middle]!]!) <= value) low = middle + 1;
      else high = middle;
    }
    before[at] = low === 0 ? -1 : last[low - 1]!;
    last[low] = at;
  }
  const kept = new Int32Array(last.length);
  let at = last[last.length - 1] ?? -1;
  for (let place = kept.length - 1; place >= 0; place--) {
    kept[place] = rows[at]!;
    at = before[at]!;
  }
  return kept;
}
