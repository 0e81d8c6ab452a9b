/**
 * How often the bands hold the truth: seeded simulations of whole tests, thousands of trials a row.
 *
 *   npx tsx benchmarks/coverage.ts [trials]
 */
import { differenceBand } from '../src/statistics/index.js';
import { normalFrom, pullMaker, seededUniform, type PullScatter } from '../test/statistics/simulated-pulls.js';

interface Scenario extends PullScatter {
  readonly name: string;
  /** Scatter of the candidate over that of the baseline. */
  readonly ratio: number;
}

const wavy = (s: number): number => 1 + 0.8 * s + 0.5 * Math.sin(6 * s);
const onset = (s: number): number => 3 - 2 * Math.min(s / 0.3, 1);
const scenarios: readonly Scenario[] = [
  { name: 'base', points: 41, length: 0.1, offsetShare: 0.3, profile: () => 1, ratio: 1 },
  { name: 'onset', points: 41, length: 0.1, offsetShare: 0.3, profile: onset, ratio: 1.5 },
  { name: 'long', points: 41, length: 0.6, offsetShare: 0.5, profile: wavy, ratio: 1.5 },
  { name: 'ratio 2', points: 41, length: 0.1, offsetShare: 0.3, profile: wavy, ratio: 2 },
];
const sides: readonly (readonly [number, number])[] = [
  [2, 2],
  [3, 3],
  [5, 5],
  [10, 10],
  [3, 6],
  [6, 3],
];

const trials = Number(process.argv[2] ?? 2000);
if (!Number.isInteger(trials) || trials < 1)
  throw new RangeError('the number of trials must be a whole number above 0');

console.log(`Nominal 0.950; ${trials} trials; whole band / average point; median k; ms a band`);
for (const scenario of scenarios) {
  const grid = Array.from({ length: scenario.points }, (_, j) => j);
  for (const [baselinePulls, candidatePulls] of sides) {
    const make = pullMaker(scenario, normalFrom(seededUniform(1 + 100 * baselinePulls + candidatePulls)));
    const factors: number[] = [];
    let whole = 0;
    let points = 0;
    let spent = 0;
    for (let trial = 0; trial < trials; trial++) {
      const baseline = Array.from({ length: baselinePulls }, () => make(1));
      const candidate = Array.from({ length: candidatePulls }, () => make(scenario.ratio));
      const start = performance.now();
      const band = differenceBand(grid, baseline, candidate);
      spent += performance.now() - start;
      const inside = (half: Float64Array): number => band.difference.filter((d, j) => Math.abs(d) <= half[j]!).length;
      if (inside(band.simultaneousHalfWidth) === grid.length) whole += 1;
      points += inside(band.pointwiseHalfWidth) / grid.length;
      factors.push(band.diagnostics.factor);
    }
    factors.sort((a, b) => a - b);
    console.log(
      [
        scenario.name.padEnd(8),
        `${baselinePulls},${candidatePulls}`.padEnd(6),
        (whole / trials).toFixed(3),
        (points / trials).toFixed(3),
        factors[Math.floor(trials / 2)]!.toFixed(2).padStart(6),
        (spent / trials).toFixed(3),
      ].join('  '),
    );
  }
}
