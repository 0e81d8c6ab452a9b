import { describe, expect, it } from 'vitest';
import { measured } from '../../src/calculation/index.js';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import { percent, power, ratio } from '../../src/units/index.js';
import { alternating, dayOf, scattered, type PullShape } from '../support/pulls.js';

const RANGE: CompareOptions = { engineSpeed: [3500, 6000], loggedPower: 'observed', worthwhile: power(0.5, 'kW') };

/** kW of the mean over the range for each N·m, which is power at its middle. */
const KW = (2 * Math.PI * 4750) / 60 / 1000;

/** Pulls about a lambda, each with its own, whose torque falls by 50 N·m for each unit of it. */
function at(count: number, torque: number, lambda: number, seed: number, spread = 0.012, scatter = 0.1): PullShape[] {
  return scattered(count, torque, scatter, seed).map((shape, i) => {
    const own = lambda + spread * ((i % 3) - 1);
    return { ...shape, lambda: () => own, torque: shape.torque! - 50 * (own - 0.82) };
  });
}

function comparing(a: readonly PullShape[], b: readonly PullShape[], more: CompareOptions = {}) {
  const [baseline, candidate] = alternating(a, b);
  const day = dayOf({ stock: baseline, tall: candidate });
  return compare(day.setup('stock'), day.setup('tall'), { ...RANGE, ...more });
}

describe('a comparison at equal lambda', () => {
  // The candidate is 4 N·m better but ran 0.04 leaner, which takes 2 N·m.
  const lean = comparing(at(6, 240, 0.82, 93), at(6, 244, 0.86, 94));

  it('stands beside the headline and never in its place', () => {
    expect(lean.outcome).toBe('cannot be compared');
    expect(lean.headline).toMatch(/^These two sets cannot be compared: .* lambda 0\.86 against 0\.82/);
    const mixture = lean.equalMixture!;
    expect(mixture.label).toBe('at equal lambda, not the headline');
    expect(mixture.ways.map(({ by }) => by)).toEqual(['pulls']);
    expect(mixture.ways[0]!.outcome).toBe('better');
    expect(mixture.sentences.join(' ')).toMatch(
      /0\.040 leaner\. .* At equal lambda, not the headline: \+\d\.\d kW, between .* \(more, and resolved\)/,
    );
  });

  it('recovers what lambda is worth and the difference without it', () => {
    const [way] = lean.equalMixture!.ways;
    const within = (estimate: { low: { si: number }; high: { si: number } }, truth: number): boolean =>
      estimate.low.si < truth * 1000 && truth * 1000 < estimate.high.si;
    expect(lean.equalMixture!.lambdaChange).toBeCloseTo(0.04, 6);
    expect(within(way!.difference, 4 * KW)).toBe(true);
    expect(within(way!.worth, -2 * KW)).toBe(true);
    expect(within(way!.perHundredth, -0.5 * KW)).toBe(true);
    // What was seen is what the change did and what the mixture did.
    expect(way!.difference.value.si + way!.worth.value.si).toBeCloseTo(lean.overall!.value.si, 4);
  });

  it('holds planted worth and difference as often as it says', () => {
    let difference = 0;
    let worth = 0;
    const trials = 60;
    for (let seed = 0; seed < trials; seed++) {
      const one = comparing(at(6, 240, 0.82, 400 + 2 * seed, 0.012, 0.5), at(6, 244, 0.86, 401 + 2 * seed, 0.012, 0.5));
      const [way] = one.equalMixture!.ways;
      if (way!.difference.low.si < 4000 * KW && 4000 * KW < way!.difference.high.si) difference++;
      if (way!.worth.low.si < -2000 * KW && -2000 * KW < way!.worth.high.si) worth++;
    }
    // 57 of 60 expected; 51 or fewer would happen once in a hundred times.
    expect(difference).toBeGreaterThanOrEqual(52);
    expect(worth).toBeGreaterThanOrEqual(52);
    expect(Math.min(difference, worth)).toBeLessThan(trials);
  });

  it('says nothing of the worth of mixture where lambda hardly varied within the set-ups', () => {
    const still = comparing(at(6, 240, 0.82, 95, 0.001), at(6, 244, 0.86, 96, 0.001)).equalMixture!;
    expect(still.ways).toEqual([]);
    expect(still.notTold).toMatch(/within the set-ups lambda varied by only 0\.00\d+, which a gauge does by itself/);
    expect(still.sentences.at(-1)).toMatch(/Repeat with the mixture held equal, or give powerPerLambda/);
  });

  it('says so where lambda moved with the set-up far more than within', () => {
    const apart = comparing(at(6, 240, 0.78, 97, 0.005), at(6, 244, 0.88, 98, 0.005)).equalMixture!;
    expect(apart.ways).toEqual([]);
    expect(apart.notTold).toMatch(
      /differed by 0\.100 between the set-ups and varied by only 0\.00\d within them, so .* cannot be told apart/,
    );
  });

  it('says how many pulls a slope needs', () => {
    const few = comparing(at(2, 240, 0.82, 99), at(2, 244, 0.86, 100)).equalMixture!;
    expect(few.notTold).toBe('a slope with lambda needs 6 accepted pulls, and there are 4');
  });

  it('gives nothing between a set-up and its copy', () => {
    const one = at(6, 240, 0.82, 101);
    const copy = comparing(one, one, { drift: 'leave in', powerPerLambda: ratio(-0.4) });
    expect(copy.equalMixture!.lambdaChange).toBe(0);
    expect(copy.equalMixture!.matters).toBe(false);
    for (const way of copy.equalMixture!.ways) {
      expect(way.difference.value.si).toBeCloseTo(0, 6);
      expect(way.worth.value.si).toBeCloseTo(0, 6);
      expect(way.outcome).not.toMatch(/better|worse/);
    }
    expect(copy.equalMixture!.ways).toHaveLength(2);
  });

  it('takes a figure of the engine’s own, with its error over the difference of lambda', () => {
    // 50 N·m of 240 for each unit of lambda is a share of 0.21.
    const figure = measured('mixture loop', ratio(-50 / 241), { standardUncertainty: ratio(0.02) });
    const given = comparing(at(3, 240, 0.82, 102, 0), at(3, 244, 0.86, 103, 0), {
      powerPerLambda: figure,
      drift: 'leave in',
    });
    const [way] = given.equalMixture!.ways;
    expect(way!.by).toBe('given');
    expect(way!.worth.value.si / 1000).toBeCloseTo(-2 * KW, 1);
    // The figure's error alone: 0.02 of the level for each unit of lambda, over 0.04 of it.
    const level = (given.baseline.overall!.si + given.candidate.overall!.si) / 2;
    expect(way!.worth.standardUncertainty.si).toBeCloseTo(0.02 * 0.04 * level, 3);
    expect(way!.difference.low.si).toBeLessThan(4000 * KW);
    expect(way!.difference.high.si).toBeGreaterThan(4000 * KW);
    expect(given.equalMixture!.sentences.join(' ')).toContain('By the figure that was given, 0.01 leaner is −');
  });

  it('is left out without lambda, and told only where it matters', () => {
    const near = comparing(at(6, 240, 0.82, 104), at(6, 244, 0.821, 105));
    expect(near.equalMixture!.matters).toBe(false);
    expect(String(near)).not.toContain('At equal lambda');
    const some = comparing(at(6, 240, 0.82, 104), at(6, 244, 0.84, 105));
    expect(some.outcome).not.toBe('cannot be compared');
    expect(String(some)).toContain('At equal lambda, not the headline');
  });

  it('refuses a figure that is no ratio, or is one for a hundredth in per cent', () => {
    const wrong = (powerPerLambda: unknown) => () =>
      comparing(at(3, 240, 0.82, 1), at(3, 240, 0.82, 2), { powerPerLambda } as CompareOptions);
    expect(wrong(-0.4)).toThrow(
      /powerPerLambda must be a ratio: the share that it changes by from lambda 0\.8 to 1\.8/,
    );
    expect(wrong(power(1, 'kW'))).toThrow(/powerPerLambda must be a ratio/);
    expect(wrong(percent(-4000))).toThrow(/powerPerLambda must be a ratio/);
  });
});
