import { requirePositive } from '../checks.js';
import { StatisticsError } from '../errors.js';
import {
  deviationOfNormal,
  medianOf,
  presentRows,
  presentValues,
  quantileOf,
  resolutionOf,
  thinned,
} from './robust.js';

/** Readings that leave what their neighbours show, and come back. */
export interface Excursion {
  /** First and last row of it. */
  readonly from: number;
  readonly to: number;
  /** Row of the reading that is furthest off. */
  readonly worst: number;
  readonly value: number;
  /** What the neighbours say for that row: their median. */
  readonly expected: number;
  /** Deviation that an ordinary reading would not reach. */
  readonly limit: number;
}

/** How excursions are looked for. */
export interface ExcursionOptions {
  /** Longest excursion to find, in rows; the neighbourhood is three times as long. */
  readonly longest: number;
  /** How many standard deviations of the ordinary readings count as far off; 8 when left out. */
  readonly threshold?: number;
}

const usualThreshold = 8;
/** A reading that the nine of ten smaller steps from row to row would reach in this many is no fault. */
const stepsToStandOut = 5;
/** At an end of the record a fault steps this many times further than the rows next to it do: a pull begins steeply too. */
const stepsAtAnEnd = 10;
const enoughRowsAtAnEnd = 4;
/** Readings on either side of a running median that are enough. */
const usualHalf = 25;
/** An edge must hold this share of the height within one row: a signal that climbs and falls back is no fault. */
const edgeShare = 0.5;

/**
 * Finds readings that jump away and back: at least `threshold` robust standard deviations (and twice the resolution) from the running
 * median of a neighbourhood three times as long as the excursion may be, and five times further than nine of ten steps from row to row,
 * with at least half of that within a single row at both edges. The standard deviation is that of all the record's deviations from its
 * running median, by their median. At an end of the record, where there is but one edge, that must be ten times the steps next to it,
 * and `longest` at least 4 rows.
 *
 * @param values - In order of time; NaN where there is no reading.
 * @throws StatisticsError if `longest` is not a whole number above 0.
 */
export function excursions(values: Float64Array, options: ExcursionOptions): Excursion[] {
  const { longest, threshold = usualThreshold } = options;
  requirePositive('excursions', 'threshold', threshold);
  if (!Number.isInteger(longest) || longest < 1) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic: 'excursions',
      input: 'longest',
      need: 'be a whole number of rows above 0',
      got: String(longest),
    });
  }
  const rows = presentRows(values);
  const y = presentValues(values);
  // In a shorter record an excursion could be half of all there is.
  if (y.length < 3 * longest) return [];
  const steps = new Float64Array(y.length - 1);
  for (let i = 0; i < steps.length; i++) steps[i] = Math.abs(y[i + 1]! - y[i]!);
  const least = Math.max(stepsToStandOut * quantileOf(thinned(steps), 0.9)!, 2 * resolutionOf(y));
  // Without one step of the size of an edge there is nothing to find, and most channels end here.
  if (!(least > 0) || !hasStep(steps, edgeShare * least)) return [];
  const middle = runningMedian(y, Math.floor(1.5 * longest));
  const deviations = y.map((value, i) => value - middle[i]!);
  const scatter = deviationOfNormal * medianOf(thinned(deviations).map(Math.abs))!;
  const limit = Math.max(threshold * scatter, least);
  const found: Excursion[] = [];
  for (let i = 0; i < y.length; i++) {
    if (!(Math.abs(deviations[i]!) > limit)) continue;
    const sign = Math.sign(deviations[i]!);
    let end = i;
    let worst = i;
    while (end + 1 < y.length && sign * deviations[end + 1]! > limit) {
      end++;
      if (Math.abs(deviations[end]!) > Math.abs(deviations[worst]!)) worst = end;
    }
    // Near an end of the record the excursion may be most of the neighbourhood of its own first rows.
    const belongs = (at: number): boolean =>
      Math.abs(y[at]! - middle[worst]!) > limit && Math.abs(y[at]! - y[worst]!) < Math.abs(y[at]! - middle[worst]!);
    let start = i;
    while (start > 0 && end - start < longest && belongs(start - 1)) start--;
    while (end < y.length - 1 && end - start < longest && belongs(end + 1)) end++;
    if (end - start < longest && hasEdges(y, start, end, deviations[worst]!) && !isStart(steps, start, end, longest)) {
      found.push({
        from: rows[start]!,
        to: rows[end]!,
        worst: rows[worst]!,
        value: y[worst]!,
        expected: middle[worst]!,
        limit,
      });
    }
    i = end;
  }
  return found;
}

function hasStep(steps: Float64Array, size: number): boolean {
  for (let i = 0; i < steps.length; i++) if (steps[i]! >= size) return true;
  return false;
}

/** Whether the signal jumps at both edges; at an end of the record one edge must do. */
function hasEdges(y: Float64Array, from: number, to: number, height: number): boolean {
  const jump = (before: number, after: number): boolean =>
    before < 0 || after >= y.length || Math.abs(y[after]! - y[before]!) >= edgeShare * Math.abs(height);
  // A logger that averages as it writes spreads an edge over two rows.
  const edge = (at: number): boolean => jump(at - 1, at) || jump(at - 2, at - 1) || jump(at, at + 1);
  const isWhole = from === 0 && to === y.length - 1;
  return !isWhole && edge(from) && edge(to + 1);
}

/**
 * Whether what stands out at an end of the record is but the steepest part of a curve: where few rows are written a second, that
 * cannot be told.
 */
function isStart(steps: Float64Array, from: number, to: number, longest: number): boolean {
  const last = steps.length - 1;
  if (from > 0 && to <= last) return false;
  if (longest < enoughRowsAtAnEnd) return true;
  const edge = from === 0 ? to : from - 1;
  const next = from === 0 ? steps.slice(edge + 1, edge + 6) : steps.slice(Math.max(0, edge - 5), edge);
  return !(steps[edge]! > stepsAtAnEnd * Math.max(...next));
}

/**
 * Median of the readings within a distance on either side. Near an end the distance shrinks, and the middle of a signal that only rises
 * is then still its own; but the first and last readings take the median of the nearest ones, or no fault there could be seen.
 *
 * In a fast recording it is taken at every few rows, of every few rows, and by straight lines between.
 */
function runningMedian(y: Float64Array, half: number): Float64Array {
  const stride = Math.max(1, Math.floor(half / usualHalf));
  if (stride === 1) return windowMedian(y, half);
  const fewer = Float64Array.from({ length: Math.ceil(y.length / stride) }, (_, i) => y[i * stride]!);
  const middle = windowMedian(fewer, Math.round(half / stride));
  return y.map((_, i) => {
    const low = Math.min(Math.floor(i / stride), middle.length - 2);
    const share = Math.min(1, i / stride - low);
    return middle[low]! + share * (middle[low + 1]! - middle[low]!);
  });
}

function windowMedian(y: Float64Array, half: number): Float64Array {
  const window: number[] = [];
  let [from, to] = [0, 0];
  return y.map((_, i) => {
    const reach = Math.min(half, Math.max(i, 2), Math.max(y.length - 1 - i, 2));
    const [low, high] = [Math.max(0, i - reach), Math.min(y.length - 1, i + reach)];
    while (to <= high) insert(window, y[to++]!);
    while (from < low) remove(window, y[from++]!);
    const upper = window.length >> 1;
    return window.length % 2 === 1 ? window[upper]! : (window[upper - 1]! + window[upper]!) / 2;
  });
}

function place(window: readonly number[], value: number): number {
  let [low, high] = [0, window.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (window[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function insert(window: number[], value: number): void {
  window.splice(place(window, value), 0, value);
}

function remove(window: number[], value: number): void {
  window.splice(place(window, value), 1);
}
