/** Turns the median absolute deviation of normal numbers into their standard deviation: 1/quantile(3/4). */
export const deviationOfNormal = 1.482602218505602;

/** The middle of some numbers, NaN left out; undefined of nothing. */
export function medianOf(values: Iterable<number>): number | undefined {
  return quantileOf(values, 0.5);
}

/** The value below which a share of some numbers lies, NaN left out; undefined of nothing. */
export function quantileOf(values: Iterable<number>, share: number): number | undefined {
  const sorted = presentValues(values instanceof Float64Array ? values : Float64Array.from(values)).sort();
  if (sorted.length === 0) return undefined;
  const place = share * (sorted.length - 1);
  const low = Math.floor(place);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (place - low) * (sorted[high]! - sorted[low]!);
}

/** A copy without NaN. */
export function presentValues(values: Float64Array): Float64Array {
  const kept = new Float64Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) kept[count++] = values[i]!;
  return kept.subarray(0, count);
}

/** Rows that hold a reading. */
export function presentRows(values: Float64Array): Int32Array {
  const kept = new Int32Array(values.length);
  let count = 0;
  for (let row = 0; row < values.length; row++) if (!Number.isNaN(values[row]!)) kept[count++] = row;
  return kept.subarray(0, count);
}

const enoughForMedian = 1000;

/** Every few of many numbers: enough for a median, at a tenth of the cost of sorting them all. */
export function thinned(values: Float64Array): Float64Array {
  const stride = Math.floor(values.length / enoughForMedian);
  if (stride < 2) return values;
  const kept = new Float64Array(Math.ceil(values.length / stride));
  for (let i = 0; i < kept.length; i++) kept[i] = values[i * stride]!;
  return kept;
}

/** The smallest step from reading to reading: what the logger can write, where it writes few figures. 0 if nothing moves. */
export function resolutionOf(values: Float64Array): number {
  let smallest = Infinity;
  let before = NaN;
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    const step = Math.abs(value - before);
    // Conversions of unit leave steps of rounding.
    if (step < smallest && step > 1e-9 * Math.abs(value)) smallest = step;
    before = value;
  }
  return smallest === Infinity ? 0 : smallest;
}
