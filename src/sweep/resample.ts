/** How a channel is brought to a speed. */
export interface Resampling {
  /** Whole width of the window; 0 for straight lines between neighbouring rows. */
  readonly bandwidth: number;
  /** Widest gap between rows with a reading that may be bridged. */
  readonly maximumGap: number;
}

/**
 * How many independent rows would have the scatter of what {@link resample} gives at each speed of a grid: the reciprocal of the sum of
 * its squared weights. NaN where it gives nothing.
 *
 * @param speeds Speeds of the rows with a reading, rising.
 */
export function effectiveRows(speeds: Float64Array, grid: Float64Array, how: Resampling): Float64Array {
  const half = how.bandwidth / 2;
  const result = new Float64Array(grid.length).fill(NaN);
  let right = 0;
  let from = 0;
  let to = 0;
  for (let at = 0; at < grid.length; at++) {
    const speed = grid[at]!;
    while (right < speeds.length && speeds[right]! < speed) right++;
    if (right === speeds.length || (right === 0 && speeds[0]! > speed)) continue;
    const left = speeds[right] === speed ? right : right - 1;
    if (speeds[right]! - speeds[left]! > how.maximumGap) continue;
    while (from < speeds.length && speeds[from]! < speed - half) from++;
    while (to < speeds.length && speeds[to]! <= speed + half) to++;
    result[at] =
      (how.bandwidth > 0 ? rowsOfLine(speeds, from, to, speed) : undefined) ?? rowsBetween(speeds, left, right, speed);
  }
  return result;
}

function rowsOfLine(x: Float64Array, from: number, to: number, speed: number): number | undefined {
  const count = to - from;
  if (count < 2) return undefined;
  let meanX = 0;
  for (let row = from; row < to; row++) meanX += x[row]! / count;
  let sxx = 0;
  for (let row = from; row < to; row++) sxx += (x[row]! - meanX) ** 2;
  if (sxx > 0) return 1 / (1 / count + (speed - meanX) ** 2 / sxx);
  return meanX === speed ? count : undefined;
}

function rowsBetween(x: Float64Array, left: number, right: number, speed: number): number {
  if (left !== right) {
    const share = (speed - x[left]!) / (x[right]! - x[left]!);
    return 1 / (share * share + (1 - share) * (1 - share));
  }
  let count = 0;
  for (let row = right; row < x.length && x[row] === speed; row++) count++;
  return count;
}

/**
 * Values of a channel at the speeds of a grid; NaN where its readings do not reach or leave too wide a gap.
 *
 * In a window, a straight line is laid through the rows and read at the speed asked for. Where rows lie evenly that is their mean;
 * where the window is cut off, at the ends of a pull, a plain mean would be that of another speed.
 *
 * @param speeds Speeds of the rows, rising.
 * @param values The channel's values in those rows; NaN where there is no reading.
 */
export function resample(
  speeds: Float64Array,
  values: Float64Array,
  grid: Float64Array,
  how: Resampling,
): Float64Array {
  const { x, y } = withReadings(speeds, values);
  const count = x.length;
  const half = how.bandwidth / 2;
  const result = new Float64Array(grid.length).fill(NaN);
  let right = 0;
  let from = 0;
  let to = 0;
  for (let at = 0; at < grid.length; at++) {
    const speed = grid[at]!;
    while (right < count && x[right]! < speed) right++;
    if (right === count || (right === 0 && x[0]! > speed)) continue;
    const left = x[right] === speed ? right : right - 1;
    if (x[right]! - x[left]! > how.maximumGap) continue;
    while (from < count && x[from]! < speed - half) from++;
    while (to < count && x[to]! <= speed + half) to++;
    result[at] =
      (how.bandwidth > 0 ? lineThrough(x, y, from, to, speed) : undefined) ?? between(x, y, left, right, speed);
  }
  return result;
}

/** The rows that have a reading; the arrays themselves where all have. */
function withReadings(speeds: Float64Array, values: Float64Array): { x: Float64Array; y: Float64Array } {
  let gap = 0;
  while (gap < speeds.length && !Number.isNaN(values[gap]!)) gap++;
  if (gap === speeds.length) return { x: speeds, y: values };
  const x = speeds.slice();
  const y = values.slice();
  let count = gap;
  for (let row = gap; row < speeds.length; row++) {
    if (Number.isNaN(values[row]!)) continue;
    x[count] = speeds[row]!;
    y[count++] = values[row]!;
  }
  return { x: x.subarray(0, count), y: y.subarray(0, count) };
}

/** Least-squares line through rows `from` to `to`, read at a speed; undefined where they do not make a line. */
function lineThrough(x: Float64Array, y: Float64Array, from: number, to: number, speed: number): number | undefined {
  const count = to - from;
  if (count < 2) return undefined;
  let sumX = 0;
  let sumY = 0;
  for (let row = from; row < to; row++) {
    sumX += x[row]!;
    sumY += y[row]!;
  }
  const meanX = sumX / count;
  const meanY = sumY / count;
  let sxx = 0;
  let sxy = 0;
  for (let row = from; row < to; row++) {
    const dx = x[row]! - meanX;
    sxx += dx * dx;
    sxy += dx * (y[row]! - meanY);
  }
  if (sxx > 0) return meanY + (sxy / sxx) * (speed - meanX);
  return meanX === speed ? meanY : undefined;
}

/** Straight line between two neighbours; rows at exactly this speed are averaged. */
function between(x: Float64Array, y: Float64Array, left: number, right: number, speed: number): number {
  if (left !== right) return y[left]! + ((y[right]! - y[left]!) * (speed - x[left]!)) / (x[right]! - x[left]!);
  let sum = 0;
  let count = 0;
  for (let row = right; row < x.length && x[row] === speed; row++) {
    sum += y[row]!;
    count++;
  }
  return sum / count;
}
