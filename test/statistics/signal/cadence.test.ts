import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cadenceOf } from '../../../src/statistics/index.js';
import { normalFrom, seededUniform } from '../simulated-pulls.js';
import { timesAt, written } from './signals.js';

const times = timesAt(0.05, 200);
const normal = normalFrom(seededUniform(41));
const fast = times.map((t) => written(30 + 4 * t + 0.5 * normal(), 1));
const held = (every: number, phase = 0): Float64Array =>
  times.map((_, i) => fast[Math.max(0, Math.floor((i - phase) / every) * every + phase)]!);

describe('how often a channel is read', () => {
  it.each([2, 3, 5, 10])('is every %i rows where it repeats between', (every) => {
    const found = cadenceOf(held(every, 1));
    expect(found).toMatchObject({ how: 'held' });
    expect(Math.abs(found!.every - every)).toBeLessThan(0.25 * every);
    const changes = Array.from(found!.fresh).slice(1);
    for (const row of changes) expect((row - 1) % every).toBe(0);
  });

  it('is every few rows where cells between are blank', () => {
    const blank = times.map((_, i) => (i % 4 === 1 ? fast[i]! : NaN));
    expect(cadenceOf(blank)).toMatchObject({ how: 'blank', every: 4, longest: 4 });
  });

  it('is every row where readings change in rows running, where a coarse one drifts, or where nothing moves', () => {
    expect(cadenceOf(fast)).toBeUndefined();
    expect(cadenceOf(times.map((t) => Math.round(20 + 3 * t)))).toBeUndefined();
    expect(cadenceOf(times.map(() => 941.2))).toBeUndefined();
    expect(cadenceOf(times.map((t) => Math.round(20 + 0.8 * normal() + t / 20)))).toBeUndefined();
  });

  it('is every row where a few readings are lost by chance', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(199), { maxLength: 30 }), (lost) => {
        const gappy = fast.slice();
        for (const row of lost) gappy[row] = NaN;
        expect(cadenceOf(gappy)).toBeUndefined();
      }),
    );
  });

  it('is not told from a handful of readings', () => {
    expect(cadenceOf(held(5).slice(0, 20))).toBeUndefined();
  });
});
