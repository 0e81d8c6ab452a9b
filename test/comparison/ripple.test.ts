import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { root } from '../../.ci/topics.mjs';
import { rippleFollows } from '../../src/comparison/index.js';
import { rippleOf } from '../../src/comparison/ripple.js';
import { readPullsFrom, type SetUp } from '../../src/sweep/index.js';
import { CalculationError } from '../../src/units/index.js';
import { seeded } from '../support/random.js';

/** Pulls whose boost hunts at 1.6 Hz with a wandering phase, and whose torque follows it by 3 N·m/kPa, 0.12 s later unless said, or does its own. */
function hunting(follows: boolean, pulls = 4, { lag = 0.12, setup = 'hunting', seed = 7 } = {}): SetUp {
  const random = seeded(follows ? seed : 8);
  const files = Array.from({ length: pulls }, (_, pull) => {
    const noise = (): number => random() + random() + random() - 1.5;
    const phases = [6 * random(), 6 * random()];
    const wander = (t: number, phase: number): number => 2 * Math.sin(0.9 * t + phase);
    const wave = (t: number, phase: number): number => Math.sin(2 * Math.PI * 1.6 * t + phase + wander(t, phase));
    const rows = Array.from({ length: 260 }, (_, i) => {
      const t = i * 0.05;
      const boost = 110 + 1.2 * wave(t, phases[0]!) + 0.05 * noise();
      const torque =
        250 + (follows ? 3.6 * wave(t - lag, phases[0]!) : 3.6 * wave(t, phases[1]! + pull)) + 0.3 * noise();
      return [t.toFixed(2), (2500 + 300 * t).toFixed(1), torque.toFixed(3), boost.toFixed(3)].join(',');
    });
    const data = ['Time (s),Engine speed (rpm),Torque (N m),Boost (kPa)', ...rows].join('\n');
    return { path: `${setup}/pull ${pull + 1}.csv`, setup, data };
  });
  return readPullsFrom(files).setup(setup);
}

describe('torque that follows the ripple of boost', () => {
  const linked = rippleFollows(hunting(true));

  it('is found in every pull, with its size and delay, and the pulls agree', () => {
    expect(linked.pulls).toHaveLength(4);
    expect(linked.together!.agree).toBe(true);
    expect(linked.together!.lag).toBeCloseTo(0.12, 1);
    // 3 N·m for each kPa.
    expect(linked.together!.gain / 1e-3).toBeCloseTo(3, 0);
    expect(linked.answer).toMatch(
      /^In 4 pulls torque follows the ripple of boost: \d+ to \d+ % of the ripple in torque goes with it, 0\.1\d ± 0\.\d+ s later\.$/,
    );
  });

  it('comes at once where the delay is none, and is logged before only where it is', () => {
    const answer = (lag: number): string => rippleFollows(hunting(true, 4, { lag })).answer;
    expect(answer(0)).toMatch(/goes with it, at once \(0\.0\d ± 0\.\d+ s\)\.$/);
    expect(answer(-0.12)).toMatch(/goes with it, and is logged 0\.1\d ± 0\.\d+ s before it/);
  });

  it('is not claimed where torque has a ripple of its own', () => {
    const apart = rippleFollows(hunting(false));
    expect(apart.together!.agree).toBe(false);
    expect(apart.answer).toContain('do not agree that torque follows the ripple of boost');
  });

  it('is no proof in one pull alone', () => {
    expect(rippleFollows(hunting(true, 1)).answer).toContain('one pull cannot tell a link from a coincidence');
  });

  it('is seen in the demo day, whose torque follows boost by construction', () => {
    const files = [1, 2, 3, 4, 5].map((n) => {
      const path = `docs/examples/demo-data/stock core/pull ${n}.csv`;
      return { path, setup: 'stock core', data: readFileSync(`${root}${path}`) };
    });
    const found = rippleFollows(readPullsFrom(files).setup('stock core'));
    expect(found.together!.agree).toBe(true);
    expect(String(found)).toContain('times a second');
  });

  it('has a delay of its own in each set-up where they differ', () => {
    const at = (lag: number, setup: string, seed: number) => hunting(true, 4, { lag, setup, seed }).pulls;
    const apart = rippleOf([...at(0, 'stock core', 7), ...at(0.12, 'tall core', 9)])!;
    expect(apart.together).toBeUndefined();
    expect(apart.bySetUp.map(({ setUp }) => setUp)).toEqual(['stock core', 'tall core']);
    expect(apart.bySetUp[0]!.together!.lag).toBeCloseTo(0, 1);
    expect(apart.bySetUp[1]!.together!.lag).toBeCloseTo(0.12, 1);
    expect(apart.answer).toMatch(
      /not the same in the set-ups, in size or in time: stock core: in 4 pulls, .*0\.0\d ± 0\.\d+ s.*; tall core: in 4 pulls, 0\.1\d ± 0\.\d+ s later\./,
    );
    // 0.12 s at 300 rpm a second are 36 rpm.
    const [, seconds, rpm] =
      /Logged (0\.1\d) s later with “tall core”, torque moves (3\d) rpm along engine speed \(at 300 rpm a second\), which where the curve is steep can pass for a gain or a loss\.$/.exec(
        apart.answer,
      )!;
    expect(Math.abs(Number(rpm) - 300 * Number(seconds))).toBeLessThan(2);
    const alike = rippleOf([...at(0.12, 'stock core', 7), ...at(0.12, 'tall core', 9)])!;
    expect(alike.bySetUp).toEqual([]);
    expect(alike.together!.lag).toBeCloseTo(0.12, 1);
    expect(alike.answer).toMatch(/^In 8 pulls torque follows/);
  });

  it('needs both channels', () => {
    expect(() => rippleFollows(hunting(true), { driver: 'manifoldPressure' })).toThrow(CalculationError);
  });

  it('is looked for in the pulls of both set-ups of a comparison at once', () => {
    const both = rippleOf([...hunting(true).pulls, ...hunting(true, 2).pulls])!;
    expect(both.pulls).toHaveLength(6);
    expect(both.pulls[0]!.pull).toBe('hunting, pull 1.csv');
    expect(both.together!.agree).toBe(true);
    const mixed = rippleOf([...hunting(true).pulls, ...hunting(false).pulls])!;
    expect(mixed.together!.gain).toBeLessThan(both.together!.gain);
    const quiet = hunting(true).pulls.map((pull) => ({ ...pull, channels: { ...pull.channels, torque: undefined } }));
    expect(rippleOf(quiet as never)).toBeUndefined();
    expect(rippleOf([])).toBeUndefined();
  });
});
