import { solveLinear } from './linear.js';

/** Residuals of a system at a point; undefined outside its bounds and where it cannot be computed. */
type Residuals = (at: readonly number[]) => readonly number[] | undefined;

const EPSILON = 2 ** -52;

/**
 * A solution near a known point: Newton's method with differenced slopes, then Broyden's rank-one updates (C. G. Broyden,
 * Math. Comp. 19 (1965) 577), halving a step that leaves the bounds, cannot be computed or does not get nearer.
 *
 * @param widths - how far apart the bounds of each unknown are, which says what is little where it is near zero.
 * @returns The solution to the last digits; undefined where there is none to be reached.
 */
export function solveNear(
  residuals: Residuals,
  start: readonly number[],
  widths: readonly number[],
): number[] | undefined {
  let x = [...start];
  let r = residuals(x);
  let slopes = r && differencedSlopes(residuals, x, r, widths);
  let isFresh = true;
  for (let i = 0; i < 60 && r && slopes; i++) {
    if (r.every((value) => value === 0)) return x;
    const move = solveLinear(
      slopes,
      r.map((value) => -value),
    );
    const size = move && relativeSize(move, x, widths);
    const next = move && size! > 0 ? stepTo(residuals, x, move, size!, r, slopes) : undefined;
    if (next) {
      updateSlopes(slopes, x, next.x, r, next.r);
      [x, r] = [next.x, next.r];
      isFresh = false;
      if (size! <= 2 * EPSILON) return x;
      continue;
    }
    // A step too small to matter that does not get nearer either: the residuals are at their rounding.
    if (size !== undefined && size <= 1e-12) return x;
    if (isFresh) return undefined;
    slopes = differencedSlopes(residuals, x, r, widths);
    isFresh = true;
  }
  return undefined;
}

function relativeSize(move: readonly number[], x: readonly number[], widths: readonly number[]): number {
  return Math.max(...move.map((value, k) => Math.abs(value) / Math.max(Math.abs(x[k]!), 1e-9 * widths[k]!)));
}

function differencedSlopes(
  residuals: Residuals,
  x: readonly number[],
  r: readonly number[],
  widths: readonly number[],
): number[][] | undefined {
  const columns: number[][] = [];
  for (let k = 0; k < x.length; k++) {
    const step = Math.max(1e-7 * Math.abs(x[k]!), 1e-9 * widths[k]!);
    let column: number[] | undefined;
    for (const to of [x[k]! + step, x[k]! - step]) {
      if (column) continue;
      const moved = residuals(x.map((value, j) => (j === k ? to : value)));
      column = moved?.map((value, j) => (value - r[j]!) / (to - x[k]!));
    }
    if (!column) return undefined;
    columns.push(column);
  }
  return r.map((_, j) => columns.map((column) => column[j]!));
}

/** The full step, or the longest of its halves that gets nearer. */
function stepTo(
  residuals: Residuals,
  x: readonly number[],
  move: readonly number[],
  size: number,
  r: readonly number[],
  slopes: readonly (readonly number[])[],
): { x: number[]; r: readonly number[] } | undefined {
  const weights = slopes.map(
    (row) => 1 / row.reduce((sum, slope, k) => sum + Math.abs(slope) * Math.max(Math.abs(x[k]!), EPSILON), 0),
  );
  const norm = (values: readonly number[]): number =>
    Math.max(...values.map((value, j) => Math.abs(value) * weights[j]!));
  const now = norm(r);
  for (let share = 1; share * size > EPSILON; share /= 2) {
    const to = x.map((value, k) => value + share * move[k]!);
    const there = residuals(to);
    if (there && norm(there) < now) return { x: to, r: there };
  }
  return undefined;
}

function updateSlopes(
  slopes: number[][],
  from: readonly number[],
  to: readonly number[],
  before: readonly number[],
  after: readonly number[],
): void {
  const scale = from.map((value, k) => 1 / Math.max(Math.abs(value), Math.abs(to[k]! - value)) ** 2);
  const move = from.map((value, k) => to[k]! - value);
  const length = move.reduce((sum, value, k) => sum + value * value * scale[k]!, 0);
  if (!(length > 0)) return;
  slopes.forEach((row, j) => {
    const foreseen = row.reduce((sum, slope, k) => sum + slope * move[k]!, 0);
    const missed = after[j]! - before[j]! - foreseen;
    row.forEach((slope, k) => (row[k] = slope + (missed * move[k]! * scale[k]!) / length));
  });
}
