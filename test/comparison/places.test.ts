import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { alternating, dayOf, pullLog, scattered, type PullShape } from '../support/pulls.js';

const [a, b] = alternating(scattered(4, 240, 0.5, 1), scattered(4, 246, 0.5, 2));
const [A, B] = ['stock core', 'tall core'];
const range: CompareOptions = { engineSpeed: [3500, 6000] };
const inTurn = [A, B, B, A, A, B, B, A];

function comparison(
  shapes: readonly [readonly PullShape[], readonly PullShape[]],
  order?: readonly string[],
): Comparison {
  const day = dayOf({ [A!]: shapes[0], [B!]: shapes[1] });
  return compare(day.setup(A!), day.setup(B!), { ...range, ...(order ? { order: order as string[] } : {}) });
}

const given = (answer: Comparison): string => answer.rests.filter((line) => line.includes('given by hand')).join(' ');

describe('an order of the pulls that was given by hand', () => {
  it('is held against the clocks in the logs, which may agree', () => {
    const answer = comparison([a, b], inTurn as string[]);
    expect(given(answer)).toBe('The order of the pulls was given by hand (ABBAABBA); the clocks in the logs agree.');
    expect(answer.overall!.value.si).toBe(comparison([a, b]).overall!.value.si);
  });

  it('goes before clocks that contradict it, and that is said; drift then goes by places and not by clocks', () => {
    const blocks = [
      a.map((shape, i) => ({ ...shape, clock: 36000 + 600 * i })),
      b.map((shape, i) => ({ ...shape, clock: 46000 + 600 * i })),
    ] as const;
    const answer = comparison(blocks, inTurn as string[]);
    expect(given(answer)).toBe(
      'The order of the pulls was given by hand (ABBAABBA), and the clocks in the logs contradict it (AAAABBBB). The order given counts and the clocks do not: make sure which is right, since drift is told from the change by it.',
    );
    expect(answer.rests.join(' ')).toMatch(/A steady drift through the day is taken out by design; as found it is 0\.0 ± 0\.\d kW a pull, which may be none/);
    expect(answer.baseline.pulls.map(({ order }) => order)).toEqual([1, 4, 5, 8]);
    expect(comparison(blocks).driftSeparable).toBe(false);
  });

  it('is all there is where the logs have no clocks', () => {
    const bare = [a, b].map((side) => side.map(({ clock: _, ...shape }) => shape)) as unknown as readonly [
      PullShape[],
      PullShape[],
    ];
    expect(given(comparison(bare, inTurn as string[]))).toBe(
      'The order of the pulls was given by hand (ABBAABBA); the logs have no clocks that could show it.',
    );
    expect(given(comparison(bare))).toBe('');
  });

  it('takes the pulls of one set-up by their clocks, since it names set-ups only', () => {
    // The names of the files run against the clocks.
    const files = [...a.toReversed(), ...b].map((shape, i) => ({
      path: `${i < 4 ? A : B}/pull ${(i % 4) + 1}.csv`,
      setup: (i < 4 ? A : B)!,
      data: pullLog(shape),
    }));
    const day = readPullsFrom(files);
    const shuffled = { ...day.setup(A!), pulls: day.setup(A!).pulls.toReversed() };
    const answer = compare(shuffled, day.setup(B!), { ...range, order: inTurn as string[] });
    expect(given(answer)).toContain('the clocks in the logs agree');
  });
});

describe('the order by the clocks', () => {
  it('goes over midnight where the clocks have a date', () => {
    const dated = (shapes: readonly PullShape[], setup: string, day: string) =>
      shapes.map((shape, i) => {
        const lines = pullLog({ ...shape, clock: 36000 + 600 * i } as PullShape).split('\n');
        const last = lines[0]!.split(',').length - 1;
        const data = lines.map((line, row) => {
          const cells = line.split(',');
          const clock = new Date(Date.UTC(2026, 4, Number(day), 10, 10 * i, 0) + (row - 1) * 50)
            .toISOString()
            .slice(0, 23)
            .replace('T', ' ');
          return cells.with(last, row === 0 ? 'Date time' : clock).join(',');
        });
        return { path: `${setup}/pull ${i + 1}.csv`, setup, data: data.join('\n') };
      });
    const day = readPullsFrom([...dated(a, A!, '5'), ...dated(b, B!, '4')]);
    expect(day.pulls[0]!.date).toBe('2026-05-04');
    const answer = compare(day.setup(A!), day.setup(B!), range);
    // All of the candidate were made the day before.
    expect(answer.rests.join(' ')).toContain('BBBBAAAA');
    expect(answer.candidate.pulls.map(({ order }) => order)).toEqual([1, 2, 3, 4]);
  });

  it('counts the hours between two days in a drift', () => {
    // A B B A on two days at the same times, and 0.5 N·m less each hour, the night included: 249 W an hour at 4750 rpm.
    const letters = 'ABBAABBA';
    const files = [...letters].map((letter, i) => {
      const hours = 24 * Math.floor(i / 4) + (i % 4) / 6;
      const lines = pullLog({ torque: 250 - 0.5 * hours, clock: 0 }).split('\n');
      const last = lines[0]!.split(',').length - 1;
      const start = Date.UTC(2026, 4, 4, 10) + hours * 3600e3;
      const data = lines.map((line, row) => {
        const clock = new Date(start + (row - 1) * 50).toISOString().slice(0, 23).replace('T', ' ');
        return line
          .split(',')
          .with(last, row === 0 ? 'Date time' : clock)
          .join(',');
      });
      const setup = letter === 'A' ? A! : B!;
      return { path: `${setup}/pull ${i}.csv`, setup, data: data.join('\n') };
    });
    const day = readPullsFrom(files);
    const answer = compare(day.setup(A!), day.setup(B!), range);
    expect(answer.rests.join(' ')).toContain('A steady drift through the day (−0.2');
    expect(answer.overall!.value.si).toBeCloseTo(0, 3);
    // On a straight line through all the hours nothing is left to scatter.
    expect(answer.overall!.high.si - answer.overall!.low.si).toBeLessThan(1);
  });
});
