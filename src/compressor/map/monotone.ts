/**
 * Curves through points that rise and fall only where the points do: piecewise cubic, with the slopes of Fritsch and Butland inside and
 * three-point slopes, limited, at the ends. `x` rises.
 */
export interface Curve {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  /** Slope of the curve at each point. */
  readonly slopes: ArrayLike<number>;
}

/** The curve through points. */
export function monotone(x: ArrayLike<number>, y: ArrayLike<number>): Curve {
  return { x, y, slopes: Array.from({ length: x.length }, (_, i) => slopeAt(x, y, i)) };
}

/** Height of a curve at a place between its ends. */
export function heightAt({ x, y, slopes }: Curve, at: number): number {
  const i = intervalAt(x, at);
  return heightBetween(x, y, i, slopes[i]!, slopes[i + 1]!, at);
}

/** The interval that a place lies in; the first or the last where it lies outside. */
export function intervalAt(x: ArrayLike<number>, at: number): number {
  let i = 0;
  while (i < x.length - 2 && at > x[i + 1]!) i++;
  return i;
}

/** Height in the interval after point i, from the slopes at its ends. */
export function heightBetween(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  i: number,
  slope0: number,
  slope1: number,
  at: number,
): number {
  const h = x[i + 1]! - x[i]!;
  const t = (at - x[i]!) / h;
  const s = 1 - t;
  return y[i]! * s * s * (1 + 2 * t) + y[i + 1]! * t * t * (3 - 2 * t) + h * t * s * (slope0 * s - slope1 * t);
}

/** Slope at point i; of the heights, only those of the points next to it are read, and of the second from an end. */
export function slopeAt(x: ArrayLike<number>, y: ArrayLike<number>, i: number): number {
  const last = x.length - 1;
  if (last === 1) return chord(x, y, 0);
  if (i === 0) return endSlope(x[1]! - x[0]!, x[2]! - x[1]!, chord(x, y, 0), chord(x, y, 1));
  if (i === last) {
    const [near, far] = [chord(x, y, last - 1), chord(x, y, last - 2)];
    return endSlope(x[last]! - x[last - 1]!, x[last - 1]! - x[last - 2]!, near, far);
  }
  const before = chord(x, y, i - 1);
  const after = chord(x, y, i);
  if (before * after <= 0) return 0;
  const [h0, h1] = [x[i]! - x[i - 1]!, x[i + 1]! - x[i]!];
  const w0 = 2 * h1 + h0;
  const w1 = h1 + 2 * h0;
  return (w0 + w1) / (w0 / before + w1 / after);
}

function chord(x: ArrayLike<number>, y: ArrayLike<number>, i: number): number {
  return (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
}

function endSlope(h0: number, h1: number, near: number, far: number): number {
  const d = ((2 * h0 + h1) * near - h0 * far) / (h0 + h1);
  if (d * near <= 0) return 0;
  return near * far <= 0 && Math.abs(d) > 3 * Math.abs(near) ? 3 * near : d;
}
