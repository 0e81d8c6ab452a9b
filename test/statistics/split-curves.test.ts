import { describe, expect, it } from 'vitest';
import {
  additiveSplit,
  differenceBand,
  driftBand,
  splitCurves,
  type LogFactor,
  type SplitPoint,
} from '../../src/statistics/index.js';
import { workedFactors, workedSensors } from './example-split.js';
import { codeOf } from './printed.js';
import { normalFrom, pullMaker, seededUniform } from './simulated-pulls.js';

const POINTS = 21;
const GRID = Array.from({ length: POINTS }, (_, j) => 3000 + 150 * j);

/** Planted logarithms: what each factor is and how it changes along the grid, s from 0 to 1. */
const PLANTED = [
  { name: 'pressure', level: () => 0.2, change: (s: number) => 0.01 * s },
  { name: 'temperature', level: () => -0.1, change: (s: number) => 0.02 + 0.02 * s },
  { name: 'rest', level: (s: number) => 5 + 0.3 * s, change: (s: number) => -0.008 * Math.sin(3 * s) },
] as const;

/** A test of that many pulls a side whose factors scatter, pressure against the rest as an error of its reading makes them. */
function simulated(pulls: number, seed: number): SplitPoint[] {
  const make = pullMaker(
    { points: POINTS, length: 0.15, offsetShare: 0.3, profile: (s) => 1 + 0.8 * s },
    normalFrom(seededUniform(seed)),
  );
  const side = () => Array.from({ length: pulls }, () => [make(0.004), make(0.003), make(0.005)] as const);
  const sides = [side(), side()];
  return GRID.map((_, j) => {
    const s = j / (POINTS - 1);
    const log = (k: number, which: number): number[] =>
      sides[which]!.map((noise) => {
        const { level, change } = PLANTED[k]!;
        return level(s) + which * change(s) + noise[k]![j]! - (k === 2 ? 0.7 * noise[0][j]! : 0);
      });
    return { factors: PLANTED.map(({ name }, k): LogFactor => ({ name, baseline: log(k, 0), candidate: log(k, 1) })) };
  });
}

/** The planted part of a factor in the units of the whole: its change times the logarithmic mean of the two levels. */
function truth(k: number): number[] {
  return GRID.map((_, j) => {
    const s = j / (POINTS - 1);
    const before = Math.exp(PLANTED.reduce((sum, { level }) => sum + level(s), 0));
    const after = before * Math.exp(PLANTED.reduce((sum, { change }) => sum + change(s), 0));
    return (PLANTED[k]!.change(s) * (after - before)) / Math.log(after / before);
  });
}

describe('a split along a grid', () => {
  it('is the worked split at a single speed, figure for figure', () => {
    const { contributions, total } = splitCurves([5000], [{ factors: workedFactors, sensors: workedSensors }]);
    const worked = additiveSplit(workedFactors, workedSensors);
    contributions.forEach((curve, k) => {
      const one = worked.contributions[k]!;
      expect(curve.contribution[0]).toBe(one.contribution);
      expect(curve.pointwiseHalfWidth[0]).toBe(one.combined.halfWidth);
      expect(curve.simultaneousHalfWidth[0]).toBe(one.combined.halfWidth);
    });
    // Charge temperature and total of the worked example, by a separate program.
    expect(contributions[1]!.contribution[0]).toBeCloseTo(9701.47542, 4);
    expect(total.contribution[0]).toBeCloseTo(9766.387244, 5);
  });

  it('adds up at every speed', () => {
    const { contributions, total } = splitCurves(GRID, simulated(4, 1));
    total.contribution.forEach((whole, j) => {
      expect(contributions.reduce((sum, one) => sum + one.contribution[j]!, 0)).toBeCloseTo(whole, 10);
    });
  });

  it('gives the whole the band of a difference of curves, where the change is small', () => {
    const points = simulated(5, 2);
    const { total } = splitCurves(GRID, points);
    const powers = (side: 'baseline' | 'candidate') =>
      Array.from({ length: 5 }, (_, i) =>
        points.map((p) => Math.exp(p.factors.reduce((sum, f) => sum + f[side][i]!, 0))),
      );
    const band = differenceBand(GRID, powers('baseline'), powers('candidate'));
    total.simultaneousHalfWidth.forEach((half, j) => {
      expect(half / band.simultaneousHalfWidth[j]!).toBeCloseTo(1, 1);
    });
  });

  it('follows the order of the day where a drift is taken out', () => {
    const points = simulated(3, 3);
    const order = { letters: 'ABBAAB', pulls: [0, 3, 4, 1, 2, 5] };
    const { total } = splitCurves(GRID, points, { order });
    const powers = order.pulls.map((i) =>
      points.map((p) => Math.exp(p.factors.reduce((sum, f) => sum + [...f.baseline, ...f.candidate][i]!, 0))),
    );
    const band = driftBand(GRID, order.letters, powers);
    expect(total.simultaneousHalfWidth[10]! / band.simultaneousHalfWidth[10]!).toBeCloseTo(1, 1);
    expect(total.contribution[10]! / band.difference[10]!).toBeCloseTo(1, 1);
  });

  it('holds planted parts at a speed chosen beforehand, and everywhere at once, as often as it says', () => {
    const trials = 250;
    const held = PLANTED.map(() => ({ pointwise: 0, everywhere: 0 }));
    for (let seed = 0; seed < trials; seed++) {
      splitCurves(GRID, simulated(4, 1000 + seed)).contributions.forEach((curve, k) => {
        const off = truth(k).map((value, j) => Math.abs(curve.contribution[j]! - value));
        if (off[14]! <= curve.pointwiseHalfWidth[14]!) held[k]!.pointwise++;
        if (off.every((value, j) => value <= curve.simultaneousHalfWidth[j]!)) held[k]!.everywhere++;
      });
    }
    // 250 trials of 0.95 have a standard deviation of 0.014; the band may be wide, as it is for a difference.
    for (const { pointwise, everywhere } of held) {
      expect(pointwise / trials).toBeGreaterThan(0.9);
      expect(pointwise / trials).toBeLessThan(0.985);
      expect(everywhere / trials).toBeGreaterThan(0.92);
    }
    // A band that is too wide says nothing either.
    expect(held.some(({ everywhere }) => everywhere < trials)).toBe(true);
  });

  it('carries sensors that do not cancel along the whole curve', () => {
    const plain = simulated(4, 5);
    const gauge = (shared: boolean) =>
      plain.map((point) => ({
        ...point,
        sensors: [{ name: 'gauge', standardUncertainty: 0.01, shared, baseline: [1, 0, -1], candidate: [1, 0, -1] }],
      }));
    const half = (points: SplitPoint[], k: number): number =>
      splitCurves(GRID, points).contributions[k]!.pointwiseHalfWidth[10]!;
    // One gauge: the logarithms of both sides move alike, and all but a share of the change cancels.
    expect(half(gauge(true), 0) / half(plain, 0)).toBeCloseTo(1, 2);
    expect(half(gauge(false), 0) / half(plain, 0)).toBeGreaterThan(1.5);
    expect(half(gauge(false), 1)).toBeCloseTo(half(plain, 1), 9);
  });

  it('judges each speed by itself, all of them sharing the chance of error, where a factor never scatters', () => {
    const still = simulated(3, 6).map(({ factors }) => ({
      factors: [...factors, { name: 'humidity', baseline: [0.1, 0.1, 0.1], candidate: [0.1, 0.1, 0.1] }],
      sensors: [
        {
          name: 'hygrometer',
          standardUncertainty: 0.001,
          shared: false,
          baseline: [0, 0, 0, 1],
          candidate: [0, 0, 0, 1],
        },
      ],
    }));
    const curve = splitCurves(GRID, still).contributions[3]!;
    expect(curve.method).toBe('each place by itself');
    expect([...curve.contribution].every((value) => value === 0)).toBe(true);
    // Known sensors only: normal quantiles of 0.05 and of 0.05/21.
    expect(curve.simultaneousHalfWidth[0]! / curve.pointwiseHalfWidth[0]!).toBeCloseTo(3.0384 / 1.95996, 2);
  });

  it('refuses speeds out of order, points that are not as many, and factors that change from point to point', () => {
    const points = simulated(3, 7);
    expect(codeOf(() => splitCurves([...GRID].reverse(), points))).toBe('not-increasing');
    expect(codeOf(() => splitCurves(GRID.slice(1), points))).toBe('unequal-lengths');
    expect(codeOf(() => splitCurves([], []))).toBe('too-few-points');
    const odd = points.map((point, j) => (j === 4 ? { factors: point.factors.slice(1) } : point));
    expect(() => splitCurves(GRID, odd)).toThrow(/points\[4\] must have the factors and sensors of the first point/);
  });
});
