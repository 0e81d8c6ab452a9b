import { describe, expect, it } from 'vitest';
import { compare, planTest, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { driftTreatment, orderFinding } from '../../src/comparison/order.js';
import { orderDesign, powerOfTest } from '../../src/statistics/index.js';
import { power } from '../../src/units/index.js';
import { dayOf, type PullShape } from '../support/pulls.js';
import { seeded } from '../support/random.js';

const [A, B] = ['stock core', 'tall core'] as const;
const range: CompareOptions = { engineSpeed: [3500, 6000], loggedPower: 'observed' };

/** Pulls in an order, a quarter of an hour apart, with a gain, a drift from pull to pull, and scatter of their own, N·m. */
function inOrder(
  order: string,
  { gain = 0, drift = 0, scatter = 0.2, seed = 1 }: { gain?: number; drift?: number; scatter?: number; seed?: number },
  options: CompareOptions = {},
): Comparison {
  const random = seeded(seed);
  const uniform = (): number => Math.sqrt(12) * (random() - 0.5);
  const shapes = [...order].map((letter, i): PullShape => {
    const [own, wobble, phase] = [scatter * uniform(), 0.7 * scatter * uniform(), 6 * random()];
    return {
      torque: 240 + (letter === 'B' ? gain : 0) + drift * i + own,
      extra: (speed) => wobble * Math.sin(2 * speed + phase),
      clock: 36000 + 900 * i,
    };
  });
  const of = (letter: string): PullShape[] => shapes.filter((_, i) => order[i] === letter);
  const day = dayOf({ [A]: of('A'), [B]: of('B') });
  return compare(day.setup(A), day.setup(B), { ...range, ...options });
}

const turns = ({ rests }: Comparison): string => rests.find((line) => line.startsWith('The set-ups took turns'))!;

describe('what is said of drift', () => {
  it('does not clear an order in which drift looks like a gain, where it was left in', () => {
    // No gain, and 1 % more from pull to pull: all of what A B A B shows is drift.
    for (const [order, shown] of [
      ['ABAB', '1.0'],
      ['ABABB', '1.7'],
    ] as const) {
      const answer = inOrder(order, { drift: 2.4 });
      expect(answer.relative! * 100).toBeCloseTo(Number(shown), 0);
      expect(answer.driftTakenOut).toBe(false);
      expect(answer.driftSeparable).toBe(false);
      expect(turns(answer)).toContain(
        `but drift over the day can pass for the change: of a steady drift of 1 % from pull to pull, ${shown} % shows in the difference`,
      );
      expect(turns(answer)).toContain(`it is not taken out, which needs 6 pulls, and there are ${order.length}`);
      expect(answer.headline).toMatch(/pulls cannot tell|^The pulls of “tall core” made/);
    }
    const gained = inOrder('ABAB', { gain: 20 });
    expect(gained.headline).toMatch(/^The pulls of “tall core” made more power/);
  });

  it('says that it cancels by itself where the order is balanced', () => {
    const answer = inOrder('ABBA', { gain: 12, drift: 0.5 });
    // 12 N·m over 3500 to 6000 rpm is 5.97 kW, and none of the drift.
    expect(answer.overall!.value.in('kW' as never)).toBeCloseTo(5.97, 0);
    expect(answer.driftSeparable).toBe(true);
    expect(turns(answer)).toBe(
      'The set-ups took turns (ABBA) such that a steady drift over the day cancels in the difference by itself; it is not taken out, which needs 6 pulls, and there are 4.',
    );
    expect(answer.headline).toMatch(/^With “tall core” the engine makes more power/);
  });

  it('says that it is taken out where it is, and that it was left in as asked where it was', () => {
    expect(turns(inOrder('ABABAB', { drift: 1 }))).toBe(
      'The set-ups took turns (ABABAB), and a steady drift over the day is taken out, so it cannot pass for the change.',
    );
    const left = inOrder('ABABAB', { drift: 1 }, { drift: 'leave in' });
    expect(left.driftSeparable).toBe(false);
    expect(turns(left)).toContain('1.0 % shows in the difference, and it is left in, as asked.');
    const nearly = inOrder('ABBAABBAAB', { drift: 1 }, { drift: 'leave in' });
    expect(nearly.driftSeparable).toBe(true);
    expect(turns(nearly)).toContain(
      'cancels in the difference nearly: of a steady drift of 1 % from pull to pull, 0.2 %',
    );
  });

  it('goes by the clock where the rests differ', () => {
    const placed = [0, 900, 1800, 9000].map((clock, i) => ({
      side: 'ABBA'[i] as 'A' | 'B',
      mean: 100 + i,
      order: i + 1,
      clock,
    }));
    // Middle of A 4500 s, of B 1350 s, in steps of 3000 s.
    expect(driftTreatment(orderFinding(placed, 0.95), false, undefined).sentence).toContain(
      '1 % from pull to pull, 1.1 %',
    );
  });

  it('gives the drift with its interval, and calls none seen where that holds zero', () => {
    const drifting = inOrder('ABBAABBA', { gain: 4, drift: 1 });
    // 1 N·m a quarter of an hour over 3500 to 6000 rpm is 4 · 2π/60 · 4750 W = 1.99 kW an hour.
    const [, rate, half] =
      /A steady drift through the day \(\+(\d\.\d+) ± (\d\.\d+) kW an hour\) is taken out; left in/.exec(
        drifting.rests.join(' '),
      )!;
    expect(Math.abs(Number(rate) - 1.99)).toBeLessThan(Number(half));
    const steady = inOrder('ABBAABBA', { gain: 4, scatter: 1 });
    expect(steady.rests.join(' ')).toMatch(
      /A steady drift through the day is taken out by design; as found it is [+−]?\d\.\d ± \d\.\d kW an hour, which may be none; left in/,
    );
  });
});

describe('scatter and plan', () => {
  const drifting = inOrder('ABBAABBA', { gain: 2.4, drift: 3, seed: 4 });

  it('are those of the model of the answer: a drift that is taken out does not scatter', () => {
    const steady = inOrder('ABBAABBA', { gain: 2.4, drift: 0, seed: 4 });
    expect(drifting.pullScatter!.afterDrift).toBe(true);
    expect(drifting.pullScatter!.pooled.si / steady.pullScatter!.pooled.si).toBeCloseTo(1, 6);
    expect(drifting.baseline.overallScatter!.si).toBeGreaterThan(10 * drifting.pullScatter!.pooled.si);
    const limits = [drifting, steady].map(({ scatter }) => scatter!.repeatabilityLimit.candidate.si);
    expect(limits[0]! / limits[1]!).toBeCloseTo(1, 6);
    const lines = [drifting, steady].map(({ rests }) =>
      rests.filter((line) => line.startsWith('Scatter from pull')).map((line) => line.replace(/ \([\d.]+ %\)/, '')),
    );
    expect(lines[0]).toEqual(lines[1]);
    expect(lines[0]![0]).toContain('over the range after a steady drift is taken out.');
    expect(drifting.findings.join(' ')).toContain('in 95 of 100 cases after a steady drift is taken out.');
  });

  it('would resolve about what the interval resolves', () => {
    const half = (drifting.overall!.high.si - drifting.overall!.low.si) / 2;
    const next =
      /With 4 pulls of each and this scatter after a steady drift is taken out, a difference of (\d+\.\d) kW/.exec(
        drifting.next.join(' '),
      )!;
    // Power of four in five takes a little more than the half-width, not ten times as much.
    expect(Number(next[1]) * 1000).toBeGreaterThan(half);
    expect(Number(next[1]) * 1000).toBeLessThan(2 * half + 50);
    const { detectable, scatter } = planTest(drifting, { worthwhile: power(1, 'kW') });
    const design = orderDesign('ABBAABBA');
    expect(powerOfTest(detectable.si, scatter.si, design)).toBeCloseTo(0.8, 3);
    expect(String(planTest(drifting, { worthwhile: power(1, 'kW') }))).toContain(
      'from pull to pull after a steady drift is taken out:',
    );
  });

  it('count the drift as scatter where it is left in', () => {
    const left = inOrder('ABBAABBA', { gain: 2.4, drift: 3, seed: 4 }, { drift: 'leave in' });
    expect(left.pullScatter!.afterDrift).toBe(false);
    expect(left.pullScatter!.pooled.si).toBeGreaterThan(10 * drifting.pullScatter!.pooled.si);
    expect(left.rests.join(' ')).not.toContain('after a steady drift');
  });
});

describe('the words for single speeds', () => {
  it('are another question than the mean over the range, in every place', () => {
    // A gain that the mean resolves and the whole curve does not.
    const answers = Array.from({ length: 60 }, (_, seed) =>
      inOrder('ABBAAB', { gain: 1, scatter: 0.55, seed: seed + 10 }),
    );
    const harder = answers.find(
      ({ outcome, curve }) =>
        outcome.startsWith('better') && curve!.ranges.every((one) => one.outcome === 'not resolved'),
    )!;
    expect(harder).toBeDefined();
    expect(String(harder)).toMatch(
      /Speed by speed, for the whole curve at once: from 3500 to 6000 rpm not resolved \(\+\d\.\d kW\)\. That is a harder question than the mean over the range, which is resolved\./,
    );
    const partly = answers.find(({ curve }) => curve!.ranges.length > 1)!;
    expect(partly.headline).toMatch(/ Speed by speed, for the whole curve at once: more power (from|at) /);
  });
});
