import { presentRows, quantileOf, resolutionOf } from './robust.js';

/** How often a channel really has a new reading. */
export interface Cadence {
  /** `held`: each reading is repeated until the next; `blank`: the rows between are empty. */
  readonly how: 'held' | 'blank';
  /** Rows from one reading to the next, on average. */
  readonly every: number;
  /** Most rows between two readings. */
  readonly longest: number;
  /** Rows that hold a new reading. */
  readonly fresh: readonly number[];
}

/** Chance of seeing what makes a channel look held, if it were not. */
const unlikely = 1e-4;
const fewestReadings = 6;
/** Gaps beyond this many times the middle one are two that ran together. */
const longestOfUsual = 1.5;

/**
 * Whether a channel is read less often than rows are written, as when a logger polls one quantity after another: rows between are
 * blank, or repeat the last reading. Undefined where every row may be a reading of its own.
 *
 * Repeats alone say little, because a coarse reading that drifts slowly repeats too. A channel counts as held where its changes keep
 * further apart than that many would by chance, and are not all of the one smallest step that a slow drift would show.
 */
export function cadenceOf(values: Float64Array): Cadence | undefined {
  return blankCadence(values) ?? heldCadence(values);
}

function blankCadence(values: Float64Array): Cadence | undefined {
  const rows = presentRows(values);
  if (rows.length < fewestReadings || rows.length > 0.75 * values.length) return undefined;
  const fresh = Array.from(rows);
  const gaps = gapsOf(fresh);
  // A few long gaps in a full channel are lost readings; a rhythm has about the same gap throughout.
  const [low, high] = [quantileOf(gaps, 0.1)!, quantileOf(gaps, 0.9)!];
  if (low < 2 || high > 2 * low + 1) return undefined;
  return { how: 'blank', every: meanOf(gaps), longest: Math.max(...gaps), fresh };
}

function heldCadence(values: Float64Array): Cadence | undefined {
  const rows = presentRows(values);
  if (rows.length < 2 * fewestReadings) return undefined;
  const { changes, running } = changesIn(values, rows);
  // One false change among many, such as a spike within a held reading, is forgiven.
  if (changes < fewestReadings || running > 0.02 * changes) return undefined;
  const places: number[] = [];
  for (let i = 1; i < rows.length; i++) if (values[rows[i]!]! !== values[rows[i - 1]!]!) places.push(i);
  const gaps = gapsOf(places);
  // Of changes by chance, at their rate, so many would not all keep so far apart.
  const apart = quantileOf(gaps, 0.03)!;
  if ((1 - changes / (rows.length - 1)) ** ((apart - 1) * gaps.length) > unlikely) return undefined;
  const step = resolutionOf(values);
  const single = places.filter(
    (i) => Math.abs(Math.abs(values[rows[i]!]! - values[rows[i - 1]!]!) - step) < 0.02 * step,
  );
  if (single.length > 0.7 * places.length) return undefined;
  // A new reading that happens to equal the last makes one gap of two.
  const usual = quantileOf(gaps, 0.5)!;
  const ofOne = gaps.filter((gap) => gap <= longestOfUsual * usual);
  return {
    how: 'held',
    every: meanOf(ofOne),
    longest: Math.max(...ofOne),
    fresh: [0, ...places].map((i) => rows[i]!),
  };
}

/** How often the reading changes, and how often in two rows running. */
function changesIn(values: Float64Array, rows: Int32Array): { readonly changes: number; readonly running: number } {
  let changes = 0;
  let running = 0;
  let last = -2;
  for (let i = 1; i < rows.length; i++) {
    if (values[rows[i]!]! === values[rows[i - 1]!]!) continue;
    changes++;
    if (last === i - 1) running++;
    last = i;
  }
  return { changes, running };
}

const gapsOf = (rows: readonly number[]): number[] => rows.slice(1).map((row, i) => row - rows[i]!);

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
