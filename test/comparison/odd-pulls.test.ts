import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { power } from '../../src/units/index.js';
import { alternating, dayOf, pullLog, scattered, type PullShape } from '../support/pulls.js';
import { seeded } from '../support/random.js';

const range: CompareOptions = { engineSpeed: [3500, 6000], worthwhile: power(2, 'kW'), loggedPower: 'observed' };

/** A gain of 12 N·m, and one pull of the candidate off by a share. */
function withOdd(share: number, options: CompareOptions = {}, pulls = 5): Comparison {
  const [a, b] = alternating(scattered(pulls, 240, 0.8, 1), scattered(pulls, 252, 0.8, 2));
  const odd = b.map((shape, i): PullShape => (i === 2 ? { ...shape, torque: shape.torque! * (1 + share) } : shape));
  const day = dayOf({ 'stock core': a, 'tall core': odd });
  return compare(day.setup('stock core'), day.setup('tall core'), { ...range, ...options });
}

const oddLines = ({ findings }: Comparison): string[] => findings.filter((line) => line.includes('beyond luck'));

describe('a pull that lies beyond luck from the others', () => {
  it.each(['take out', 'leave in'] as const)(
    'is named, kept, and the answer shown without it: drift to %s',
    (drift) => {
      const answer = withOdd(-0.05, { drift });
      expect(answer.candidate.pulls.every(({ accepted }) => accepted)).toBe(true);
      expect(oddLines(answer)).toHaveLength(1);
      // 5 % of about 125 kW.
      expect(oddLines(answer)[0]).toMatch(
        /^Pull 3\.csv of “tall core” lies [56]\.\d kW below what the other pulls foretell.*beyond luck \(\d+\.\d standard errors, and [34]\.\d are the limit\)\. It counts all the same\. Without it the difference is \+[56]\.\d kW, between /,
      );
      expect(answer.next.join(' ')).toContain('Make one more pull of “tall core”, since pull 3.csv is odd.');
      const without = withOdd(-0.05, { drift, leaveOut: { 'tall core/pull 3.csv': 'odd' } });
      const [, value] = /Without it the difference is \+(\d+\.\d) kW/.exec(oddLines(answer)[0]!)!;
      expect(Number(value)).toBeCloseTo(without.overall!.value.si / 1000, 1);
    },
  );

  it('is what the verdict hangs on where the outcome is another without it, and that is said', () => {
    const hanging = withOdd(-0.05);
    expect(hanging.outcome).toBe('better');
    const turned = withOdd(-0.12);
    expect(turned.outcome).toBe('not resolved');
    expect(turned.rests.join(' ')).toMatch(
      /The verdict hangs on pull 3\.csv of “tall core”, which is odd: without it the outcome is “better”, \+[56]\.\d kW, between \+\d\.\d and \+\d\.\d kW\./,
    );
    expect(hanging.rests.join(' ')).not.toContain('hangs on');
  });

  it('is not called where all pulls behave', () => {
    expect(oddLines(withOdd(0))).toEqual([]);
    expect(withOdd(0).next.join(' ')).not.toContain('odd');
  });
});

describe('pulls that happen to be equal at one speed', () => {
  /** Two against two, torque in whole newton metres. */
  function inWholes(seed: number): Comparison {
    const random = seeded(seed);
    const [a, b] = alternating(scattered(2, 240, 1.5, 2 * seed + 1), scattered(2, 246, 1.5, 2 * seed + 2));
    const rounded = (shape: PullShape): string =>
      pullLog({ ...shape, torque: shape.torque! + 0.2 * random() })
        .split('\n')
        .map((line, row) =>
          row === 0
            ? line
            : line
                .split(',')
                .map((cell, column) => (column === 2 ? String(Math.round(Number(cell))) : cell))
                .join(','),
        )
        .join('\n');
    const files = [...a.map((shape) => ['a', shape] as const), ...b.map((shape) => ['b', shape] as const)].map(
      ([setup, shape], i) => ({ path: `${setup}/${i}.csv`, setup, data: rounded(shape) }),
    );
    const day = readPullsFrom(files);
    return compare(day.setup('a'), day.setup('b'), range);
  }

  it('do not stop the comparison', () => {
    let met = 0;
    for (let seed = 0; seed < 60; seed++) {
      const answer = inWholes(seed);
      expect(answer.overall).toBeDefined();
      const scatter = [answer.baseline, answer.candidate].map((side) => side.scatter.si);
      if (!scatter.some((one) => one.some((value) => value < 1e-9))) continue;
      met++;
      if (answer.curve) expect(answer.curve.standardError.si.every((error) => error > 0)).toBe(true);
      else expect(answer.rests.join(' ')).toMatch(/No band for the whole curve.*readings in coarse steps do that/);
    }
    expect(met).toBeGreaterThan(3);
  });

  it('are called copied or clipped only where they agree at most speeds, and the answer stands', () => {
    const [a, b] = alternating(scattered(3, 240, 0.8, 1), scattered(3, 252, 0.8, 2));
    // Clipped at 235 N·m from 4000 rpm up.
    const clip = (shape: PullShape): string =>
      pullLog(shape)
        .split('\n')
        .map((line, row) => {
          const cells = line.split(',');
          if (row > 0 && Number(cells[1]) > 4000) cells[2] = '235';
          return cells.join(',');
        })
        .join('\n');
    const day = readPullsFrom([
      ...a.map((shape, i) => ({ path: `a/${i}.csv`, setup: 'a', data: clip(shape) })),
      ...b.map((shape, i) => ({ path: `b/${i}.csv`, setup: 'b', data: pullLog(shape) })),
    ]);
    const answer = compare(day.setup('a'), day.setup('b'), { ...range, drift: 'leave in' });
    expect(answer.curve).toBeUndefined();
    expect(answer.overall).toBeDefined();
    expect(answer.rests.join(' ')).toMatch(
      /No band for the whole curve, and no verdict speed by speed: all pulls of “a” read the same at 19 of 26 speeds, so there is no scatter to draw it from; look for a copied or clipped channel\. The difference over the whole range stands\./,
    );
  });
});
