/**
 * A curve through points that rises and falls only where they do: piecewise cubic, with the slopes of Fritsch and Butland inside and
 * three-point slopes, limited, at the ends. `x` rises. Only the points next to the interval are asked for.
 */
export function monotone(x: readonly number[], y: (i: number) => number, at: number): number {
  const last = x.length - 1;
  let i = 0;
  while (i < last - 1 && at > x[i + 1]!) i++;
  const from = Math.max(0, i - 1);
  const to = Math.min(last, i + 2);
  const values: number[] = [];
  for (let j = from; j <= to; j++) values.push(y(j));
  return between(x, values, from, i, at);
}

/** The curve in the interval after point i, from the values of the points next to it, the first of which is point `from`. */
function between(x: readonly number[], values: readonly number[], from: number, i: number, at: number): number {
  const h = x[i + 1]! - x[i]!;
  const t = (at - x[i]!) / h;
  const y0 = values[i - from]!;
  const y1 = values[i + 1 - from]!;
  const rise = (j: number): number => (values[j + 1 - from]! - values[j - from]!) / (x[j + 1]! - x[j]!);
  const d0 = slope(x, rise, i);
  const d1 = slope(x, rise, i + 1);
  const s = 1 - t;
  return y0 * s * s * (1 + 2 * t) + y1 * t * t * (3 - 2 * t) + h * t * s * (d0 * s - d1 * t);
}

/** Slope of the curve at point i; `rise` is the slope of the chord after a point. */
function slope(x: readonly number[], rise: (j: number) => number, i: number): number {
  const last = x.length - 1;
  if (last === 1) return rise(0);
  const width = (j: number): number => x[j + 1]! - x[j]!;
  if (i === 0) return endSlope(width(0), width(1), rise(0), rise(1));
  if (i === last) return endSlope(width(last - 1), width(last - 2), rise(last - 1), rise(last - 2));
  const before = rise(i - 1);
  const after = rise(i);
  if (before * after <= 0) return 0;
  const w0 = 2 * width(i) + width(i - 1);
  const w1 = width(i) + 2 * width(i - 1);
  return (w0 + w1) / (w0 / before + w1 / after);
}

function endSlope(h0: number, h1: number, near: number, far: number): number {
  const d = ((2 * h0 + h1) * near - h0 * far) / (h0 + h1);
  if (d * near <= 0) return 0;
  return near * far <= 0 && Math.abs(d) > 3 * Math.abs(near) ? 3 * near : d;
}
