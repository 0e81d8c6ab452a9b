/** Turns the median absolute deviation of normal numbers into their standard deviation: 1/quantile(3/4). */
export const deviationOfNormal = 1.482602218505602;

/** The middle of some numbers, NaN left out; undefined of nothing. */
export function medianOf(values: Iterable<number>): number | undefined {
  return quantileOf(values, 0.5);
}

/** The value below which a share of some numbers lies, NaN left out; undefined of nothing. */
export function quantileOf(values: Iterable<number>, share: number): number | undefined {
  const sorted = Float64Array.from(values)
    .filter((value) => !Number.isNaN(value))
    .sort();
  if (sorted.length === 0) return undefined;
  const place = share * (sorted.length - 1);
  const low = Math.floor(place);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (place - low) * (sorted[high]! - sorted[low]!);
}

const enoughForMedian = 1000;

/** Every few of many numbers: enough for a median, at a tenth of the cost of sorting them all. */
export function thinned(values: Float64Array): Float64Array {
  const stride = Math.floor(values.length / enoughForMedian);
  return stride < 2 ? values : values.filter((_, i) => i % stride === 0);
}

/** The smallest step from reading to reading: what the logger can write, where it writes few figures. 0 if nothing moves. */
export function resolutionOf(values: Float64Array): number {
  let smallest = Infinity;
  let before = NaN;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    const step = Math.abs(value - before);
    // Conversions of unit leave steps of rounding.
    if (step < smallest && step > 1e-9 * Math.abs(value)) smallest = step;
    before = value;
  }
  return smallest === Infinity ? 0 : smallest;
}
