/** Two signals after a filter, two samples shorter. */
export interface FilteredPair {
  readonly coefficients: readonly [number, number];
  readonly signals: readonly [Float64Array, Float64Array];
}

/**
 * Whitens a signal by the second-order autoregression that its own autocovariances give (Yule and Walker), and treats another
 * alike: filtering both leaves gain and lag as they are, and takes away the narrow peak that makes unrelated signals look linked.
 *
 * @param driver - about zero.
 */
export function yuleWalkerPair(driver: Float64Array, follower: Float64Array): FilteredPair {
  const [r0, r1, r2] = [0, 1, 2].map((lag) => autocovariance(driver, lag)) as [number, number, number];
  const below = r0 * r0 - r1 * r1;
  const first = (r1 * (r0 - r2)) / below;
  const second = (r0 * r2 - r1 * r1) / below;
  const filter = (values: Float64Array): Float64Array => {
    const rest = Float64Array.from(
      { length: values.length - 2 },
      (_, i) => values[i + 2]! - first * values[i + 1]! - second * values[i]!,
    );
    const mean = rest.reduce((sum, value) => sum + value, 0) / rest.length;
    return rest.map((value) => value - mean);
  };
  return { coefficients: [first, second], signals: [filter(driver), filter(follower)] };
}

function autocovariance(values: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < values.length; i++) sum += values[i]! * values[i - lag]!;
  return sum / values.length;
}
