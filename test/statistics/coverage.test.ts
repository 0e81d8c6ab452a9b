import { describe, expect, it } from 'vitest';
import { differenceBand } from '../../src/statistics/index.js';
import { normalFrom, pullMaker, seededUniform, type PullScatter } from './simulated-pulls.js';

const base: PullScatter = { points: 41, length: 0.1, offsetShare: 0.3, profile: () => 1 };
const grid = Array.from({ length: base.points }, (_, j) => 2000 + 100 * j);

// Long runs, more scenarios: benchmarks/coverage.ts. There the same method holds the truth in 0.94 to 0.98 of trials.
describe('coverage of the difference band, seeded', () => {
  it.each([3, 5])(
    'holds the whole truth in 93 to 99 of 100 tests of %i pulls a side',
    (pulls) => {
      const make = pullMaker(base, normalFrom(seededUniform(20_240 + pulls)));
      const trials = 400;
      let whole = 0;
      let points = 0;
      for (let trial = 0; trial < trials; trial++) {
        const side = (): number[][] => Array.from({ length: pulls }, () => make(1));
        const band = differenceBand(grid, side(), side());
        const inside = (half: Float64Array): number => band.difference.filter((d, j) => Math.abs(d) <= half[j]!).length;
        if (inside(band.simultaneousHalfWidth) === grid.length) whole += 1;
        points += inside(band.pointwiseHalfWidth) / grid.length;
      }
      expect(whole / trials).toBeGreaterThanOrEqual(0.93);
      expect(whole / trials).toBeLessThanOrEqual(0.99);
      expect(points / trials).toBeGreaterThanOrEqual(0.92);
      expect(points / trials).toBeLessThanOrEqual(0.98);
    },
    60_000,
  );
});
