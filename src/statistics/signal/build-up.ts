import { presentRows, resolutionOf } from './robust.js';
import { requireSeries } from './series.js';
import { fewestToSettle } from './settled-cut.js';
import { ShortSums, shortFit, type ShortFit } from './short-fit.js';

/** Where a signal that begins low has built up. */
export interface BuildUp {
  /** `none`: it begins no lower than what follows; `all along`: it bends everywhere, so that no end of the start can be told. */
  readonly kind: 'built up' | 'none' | 'all along';
  /** First row that has built up; the first with a reading where nothing built up. */
  readonly row: number;
}

/** More means than this along a record show no more of its start. */
const mostMeans = 240;
/** Least of the record that a curve after the start must describe. */
const longestStart = 0.6;
/** The same for a start whose end is told from how it falls off. */
const longestTail = 0.75;
/** Residuals below this share of the level are not worth cutting for. */
const closeEnough = 0.001;
/** What is left of a build-up may be this share of the level, or half the scatter. */
const leftOver = 0.005;
/** What the curve after the start may miss over an eighth of its length before the record is taken to be too long for one parabola. */
const bendLeft = 0.002;
/** A start that is lower by less is none: this share of the level, one and a half steps of the instrument, so many standard deviations of the readings. */
const lowByShare = 0.01;
const lowByDeviations = 3;
const shares = [1, 0.8, 0.64, 0.5, 0.4];
/** Time constants that are tried, as shares of the record. */
const timeConstants = Array.from({ length: 13 }, (_, i) => 0.01 * 1.3 ** i);

/**
 * Where a signal such as boost has built up: from where a parabola describes what follows, as the marginal standard error rule cuts it
 * (White 1997, here on a parabola instead of a mean), and then until what is left of a start that falls off exponentially is small.
 *
 * A build-up lies below what follows, rises, and ends at the latest at the signal's maximum: what comes after it is a bend, a taper or an
 * overshoot. Where one parabola cannot follow the rest of the record, only its first part is looked at.
 *
 * @param times - Rising.
 * @param values - One for each time; NaN where there is no reading.
 * @throws StatisticsError `too-few-points` below 8 readings.
 */
export function buildUp(times: Float64Array, values: Float64Array): BuildUp {
  requireSeries('build-up', times, values, fewestToSettle);
  const means = meansOf(times, values);
  let atMaximum: Found | undefined;
  for (const share of shares) {
    const count = Math.floor(share * means.x.length);
    if (count < fewestToSettle) break;
    const found = within({ ...means, x: means.x.subarray(0, count), y: means.y.subarray(0, count) });
    if (found === undefined) continue;
    if (!found.isAtMaximum) return { kind: found.kind, row: found.row };
    if (atMaximum === undefined || found.row < atMaximum.row) atMaximum = found;
  }
  return atMaximum ? { kind: atMaximum.kind, row: atMaximum.row } : { kind: 'all along', row: means.first[0]! };
}

interface Means {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** First row of each. */
  readonly first: readonly number[];
  readonly level: number;
  /** A start that is lower by less is none. */
  readonly leastLow: number;
}

interface Found extends BuildUp {
  readonly isAtMaximum: boolean;
}

/** Means of neighbouring readings; a single one that jumps is replaced by the middle of it and its neighbours. */
function meansOf(times: Float64Array, values: Float64Array): Means {
  const rows = presentRows(values);
  const each = Math.max(1, Math.floor(rows.length / mostMeans));
  const count = Math.floor(rows.length / each);
  const x = new Float64Array(count);
  const raw = new Float64Array(count);
  const first: number[] = [];
  for (let at = 0; at < count; at++) {
    first.push(rows[at * each]!);
    for (let i = at * each; i < (at + 1) * each; i++) {
      x[at]! += times[rows[i]!]! / each;
      raw[at]! += values[rows[i]!]! / each;
    }
  }
  const y = raw.map((value, i) => {
    const [before, after] = [raw[i - 1], raw[i + 1]];
    if (before === undefined || after === undefined) return value;
    return Math.max(Math.min(before, value), Math.min(Math.max(before, value), after));
  });
  const level = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return { x, y, first, level, leastLow: Math.max(lowByShare * level, 1.5 * resolutionOf(values)) };
}

/** The end of the start in one part of a record; undefined where a parabola does not describe what follows. */
function within({ x: times, y: values, first, level, leastLow }: Means): Found | undefined {
  const count = times.length;
  const length = times[count - 1]! - times[0]!;
  const x = times.map((time) => (time - times[0]!) / length);
  const y = values.map((value) => value - values[count - 1]!);
  const parabola = [x.map(() => 1), x, x.map((each) => each * each)];
  const top = smoothedMaximum(y);
  const best = bestParabola(parabola, y, closeEnough * level);
  if (best === undefined) return undefined;
  const scatter = Math.sqrt(best.fit.sumOfSquares / Math.max(1, count - best.from - 3));
  if (best.from < top && isBent(parabola, y, best, scatter, level)) return undefined;
  // The first half of a start may rise in any way; its end falls off.
  const from = Math.max(Math.floor(best.from / 2), afterSteepestRise(y, best.from));
  const end = best.from === 0 ? 0 : endOfTail(parabola, x, y, from, Math.max(leftOver * level, scatter / 2));
  if (end > longestTail && top > longestTail * count) return undefined;
  const told = x.findIndex((each) => each >= end);
  const settled = Math.max(best.from, told < 0 ? count : told);
  const cut = Math.min(settled, top);
  const none: Found = { kind: 'none', row: first[0]!, isAtMaximum: false };
  if (cut === 0) return none;
  const after = shortFit(parabola, y, Math.min(cut, Math.floor(longestStart * count)));
  if (after === undefined) return undefined;
  const deviation = Math.sqrt(after.sumOfSquares / Math.max(1, count - cut - 3));
  const early = Math.max(1, Math.ceil(cut / 4));
  const low = -meanResidual(parabola, y, after, 0, early);
  if (!(low > lowByDeviations * deviation && low > leastLow)) return none;
  return { kind: 'built up', row: first[cut]!, isAtMaximum: settled > top };
}

/** Place of the largest running mean, a twenty-fifth of the record wide. */
function smoothedMaximum(y: Float64Array): number {
  const half = Math.max(1, Math.round(0.02 * y.length));
  let top = 0;
  let most = -Infinity;
  for (let i = 1; i < y.length - 1; i++) {
    const reach = Math.min(half, i, y.length - 1 - i);
    const around = y.subarray(i - reach, i + reach + 1);
    const mean = around.reduce((sum, each) => sum + each, 0) / around.length;
    if (mean > most) [most, top] = [mean, i];
  }
  return top;
}

interface Parabola {
  readonly from: number;
  readonly fit: ShortFit;
}

function bestParabola(columns: readonly Float64Array[], y: Float64Array, close: number): Parabola | undefined {
  const last = Math.floor(longestStart * y.length);
  const sums = new ShortSums(columns.length);
  let best: Parabola | undefined;
  let least = Infinity;
  for (let from = y.length - 1; from >= 0; from--) {
    sums.add(y[from]!, columns, from);
    const fit = from > last ? undefined : sums.fit();
    if (fit === undefined) continue;
    const kept = y.length - from;
    const criterion = (fit.sumOfSquares + kept * close * close) / (kept * kept);
    if (criterion <= least) [least, best] = [criterion, { from, fit }];
  }
  return best;
}

/** Whether a parabola misses more than chance over eighths of what it should describe. An oscillation averages out over them. */
function isBent(
  columns: readonly Float64Array[],
  y: Float64Array,
  { from, fit }: Parabola,
  scatter: number,
  level: number,
): boolean {
  if (from >= Math.floor(longestStart * y.length)) return true;
  const size = Math.floor((y.length - from) / 8);
  if (size < 2) return false;
  const limit = Math.max((3 * scatter) / Math.sqrt(size), bendLeft * level);
  return Array.from({ length: 8 }, (_, part) => from + part * size).some(
    (start) => Math.abs(meanResidual(columns, y, fit, start, start + size)) > limit,
  );
}

/** Where a start that swings up, as a spool does, begins to fall off: a fiftieth of the record after its steepest rise. */
function afterSteepestRise(y: Float64Array, end: number): number {
  const half = Math.max(1, Math.round(0.02 * y.length));
  let steepest = 0;
  let most = -Infinity;
  for (let i = half; i + half < y.length && i < end; i++) {
    const rise = y[i + half]! - y[i - half]!;
    if (rise > most) [most, steepest] = [rise, i];
  }
  return Math.min(steepest + half, end);
}

/** Until where a start that falls off exponentially onto a parabola is larger than a limit; 0 where there is none. */
function endOfTail(
  columns: readonly Float64Array[],
  x: Float64Array,
  y: Float64Array,
  from: number,
  limit: number,
): number {
  let least = shortFit(columns, y, from)?.sumOfSquares ?? Infinity;
  let end = 0;
  for (const constant of timeConstants) {
    const fall = x.map((each) => Math.exp((x[from]! - each) / constant));
    const fit = shortFit([...columns, fall], y, from);
    const low = -(fit?.coefficients[3] ?? 0);
    if (fit === undefined || !(fit.sumOfSquares < least) || !(low > 0)) continue;
    least = fit.sumOfSquares;
    end = x[from]! + constant * Math.log(Math.max(1, low / limit));
  }
  return end;
}

function meanResidual(
  columns: readonly Float64Array[],
  y: Float64Array,
  { coefficients }: ShortFit,
  from: number,
  to: number,
): number {
  let sum = 0;
  for (let i = from; i < to; i++) {
    sum += y[i]! - coefficients.reduce((height, each, column) => height + each * columns[column]![i]!, 0);
  }
  return sum / (to - from);
}
