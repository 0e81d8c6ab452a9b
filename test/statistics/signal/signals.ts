/** Times at a step, as many as asked for. */
export const timesAt = (step: number, count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => i * step);

/** A number as a logger writes it. */
export const written = (value: number, places = 3): number => Number(value.toFixed(places));

/**
 * A resonance driven by noise: second-order autoregression about a frequency, of a half-power width, both in cycles a second.
 * The first samples are thrown away, so that it has settled.
 */
export function resonance(
  count: number,
  step: number,
  { frequency, width }: { readonly frequency: number; readonly width: number },
  normal: () => number,
): Float64Array {
  const radius = Math.exp(-Math.PI * width * step);
  const first = 2 * radius * Math.cos(2 * Math.PI * frequency * step);
  const second = -radius * radius;
  const settling = Math.ceil(4 / (Math.PI * width * step));
  let [before, last] = [0, 0];
  const values = new Float64Array(count);
  for (let i = -settling; i < count; i++) {
    [before, last] = [last, first * last + second * before + normal()];
    if (i >= 0) values[i] = last;
  }
  return values;
}
