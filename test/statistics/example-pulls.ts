/** The worked example of the bands: three smooth invented pulls a side, the candidate 4 to 13 N m up. */
export function examplePulls(points: number): { grid: number[]; baseline: number[][]; candidate: number[][] } {
  const shares = Array.from({ length: points }, (_, j) => j / (points - 1));
  const pull = ([offset, size, phase]: readonly [number, number, number], gain: (s: number) => number): number[] =>
    shares.map(
      (s) =>
        320 +
        90 * s -
        110 * s * s +
        offset +
        size * Math.sin(1.8 * Math.PI * s + phase) +
        0.7 * size * Math.sin(4.6 * Math.PI * s + 2 * phase) +
        gain(s),
    );
  const a = [
    [-3, 2, 0.3],
    [1, 3, 2.1],
    [2.5, 2.5, 4.4],
  ] as const;
  const b = [
    [-2, 2.2, 1.2],
    [0.5, 2.8, 3.9],
    [3, 1.8, 5.6],
  ] as const;
  return {
    grid: shares.map((s) => 2000 + 4000 * s),
    baseline: a.map((one) => pull(one, () => 0)),
    candidate: b.map((one) => pull(one, (s) => 4 + 9 * s)),
  };
}

/** The mean of numbers that need no care. */
export const plainMean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
