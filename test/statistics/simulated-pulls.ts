/** Uniform numbers in (0, 1) from a seed (mulberry32), the same on every machine. */
export function seededUniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
}

/** Standard normal numbers from uniform ones (Box and Muller). */
export function normalFrom(uniform: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** How the pulls of a simulated test scatter about the truth, which is 0 everywhere. */
export interface PullScatter {
  readonly points: number;
  /** Length over which a pull's error stays alike, as a share of the range (Gaussian kernel). */
  readonly length: number;
  /** Share of the variance that is one offset of the whole pull. */
  readonly offsetShare: number;
  /** Standard deviation along the range, s from 0 to 1. */
  readonly profile: (s: number) => number;
}

/** A maker of pulls: each call gives one curve. */
export function pullMaker(scatter: PullScatter, normal: () => number): (deviation: number) => number[] {
  const { points, length, offsetShare, profile } = scatter;
  const shares = Array.from({ length: points }, (_, j) => j / (points - 1));
  const root = choleskyRoot(
    shares.map((s, i) => shares.map((t, j) => Math.exp(-0.5 * ((s - t) / length) ** 2) + (i === j ? 1e-9 : 0))),
  );
  return (deviation) => {
    const noise = shares.map(() => normal());
    const offset = Math.sqrt(offsetShare) * normal();
    return shares.map((s, j) => {
      const smooth = root[j]!.reduce((sum, weight, k) => sum + weight * noise[k]!, 0);
      return deviation * profile(s) * (offset + Math.sqrt(1 - offsetShare) * smooth);
    });
  };
}

function choleskyRoot(matrix: readonly (readonly number[])[]): number[][] {
  const root: number[][] = [];
  matrix.forEach((row, i) => {
    const here: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j === i ? here : root[j]!;
      let rest = row[j]!;
      for (let k = 0; k < j; k++) rest -= here[k]! * other[k]!;
      here.push(j === i ? Math.sqrt(rest) : rest / other[j]!);
    }
    root.push(here);
  });
  return root;
}
