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
    expect(answer.rests.join(' ')).toMatch(
      /A steady drift through the day is taken out by design; as found it is 0\.0 ± 0\.\d kW a pull, which may be none/,
    );
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
    // All of the candidate were made the day before: a day of its own for each set-up.
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

/** A log whose clock is text of a time of day, with a date or without. */
function clockedLog(shape: PullShape, seconds: number, date = ''): string {
  const lines = pullLog({ ...shape, clock: 0 }).split('\n');
  const last = lines[0]!.split(',').length - 1;
  return lines
    .map((line, row) => {
      const at = new Date(1000 * (seconds % 86400) + 50 * (row - 1)).toISOString().slice(11, 23);
      return line
        .split(',')
        .with(last, row === 0 ? 'Clock' : `${date === '' ? '' : `${date} `}${at}`)
        .join(',');
    })
    .join('\n');
}

/** Pulls of the letters' set-ups, each with its start in seconds and perhaps a date. */
function clockedDay(
  letters: string,
  starts: readonly number[],
  dates: readonly string[] = [],
  names?: readonly number[],
) {
  const shapes = scattered(letters.length, 240, 0.5, 5);
  const files = [...letters].map((letter, i) => {
    const setup = (letter === 'A' ? A : B)!;
    return { path: `${setup}/pull ${names?.[i] ?? i}.csv`, setup, data: clockedLog(shapes[i]!, starts[i]!, dates[i]) };
  });
  const day = readPullsFrom(files);
  return { day, answer: compare(day.setup(A!), day.setup(B!), { ...range }) };
}

const hours = (...list: readonly number[]): number[] => list.map((hour) => Math.round(hour * 3600));
const orders = (answer: Comparison): number[] =>
  [...answer.baseline.pulls, ...answer.candidate.pulls].map(({ order }) => order!);

describe('clocks without a date', () => {
  it('are taken as one day, and that is said', () => {
    const { day, answer } = clockedDay('ABABABAB', hours(10, 10.08, 10.33, 10.42, 10.67, 10.75, 11, 11.08));
    expect(answer.rests.join(' ')).toContain(
      'The clocks in the logs have no date: the pulls are taken to be of one day. If they are not, give order: [...].',
    );
    expect(String(day)).toContain('They have no date and are taken as one day.');
  });

  it('go over midnight where they lie more than twelve hours apart and the names of the files agree', () => {
    const { day, answer } = clockedDay('ABBAAB', hours(23, 23.33, 23.67, 24, 24.33, 24.67));
    expect(orders(answer)).toEqual([1, 4, 5, 2, 3, 6]);
    expect(answer.driftSeparable).toBe(true);
    expect(answer.rests.join(' ')).toContain('(ABBAAB)');
    expect(answer.rests.join(' ')).toContain('taken as going over midnight, as the names of the files do');
    expect(day.setup(A!).pulls.map(({ name }) => name)).toEqual(['pull 0.csv', 'pull 3.csv', 'pull 4.csv']);
    expect(day.pulls.map(({ name }) => name)[0]).toBe('pull 0.csv');
  });

  it('do not where the names say that it was one long day, and tell no order where they do not say', () => {
    const long = clockedDay('ABBAAB', hours(6, 6.3, 6.6, 20, 20.3, 20.6)).answer;
    expect(orders(long)).toEqual([1, 4, 5, 2, 3, 6]);
    expect(long.rests.join(' ')).toContain('taken to be of one day');
    // Each set-up on its side of the gap fits either way.
    const either = clockedDay('AAABBB', hours(6, 6.3, 6.6, 20, 20.3, 20.6));
    expect(either.answer.rests.join(' ')).toContain(
      'The clocks in the logs do not tell the order: the clocks have no date and lie more than 12 h apart, and the names of the files do not say whether that is over midnight.',
    );
    expect(either.answer.driftSeparable).toBe(false);
    expect(either.day.order.from).toBe('names');
    const mixed = clockedDay('ABBAAB', hours(6, 6.3, 6.6, 20, 20.3, 20.6), [], [4, 1, 3, 2, 6, 5]).answer;
    expect(mixed.rests.join(' ')).toContain('Change or drift? The order of the pulls is not known.');
  });
});

describe('pulls of several days', () => {
  const starts = hours(10, 10.1, 10.3, 10.4, 10.6, 10.7, 10.9, 11);
  const [monday, tuesday] = ['2026-05-04', '2026-05-05'];

  it('repeat as days, which is said', () => {
    const dates = [0, 0, 0, 0, 1, 1, 1, 1].map((day) => [monday, tuesday][day]!);
    const { answer } = clockedDay('ABBAABBA', starts, dates);
    expect(answer.rests.join(' ')).toContain(
      'The pulls are of 2 sessions (2026-05-04 and 2026-05-05). What repeats is then the session and not the pull',
    );
    expect(answer.driftSeparable).toBe(true);
  });

  it('are no proof where each set-up has a day of its own, however they would interleave by the hour', () => {
    const dates = [...'ABABABAB'].map((letter) => (letter === 'A' ? monday : tuesday)!);
    const { answer } = clockedDay('ABABABAB', starts, dates);
    expect(answer.driftSeparable).toBe(false);
    expect(answer.driftTakenOut).toBe(false);
    expect(answer.rests.join(' ')).toContain(
      'Each set-up has days of its own (2026-05-04 and 2026-05-05), so whatever differs from day to day passes for the change',
    );
    const better = clockedDay('ABABABAB', starts, dates).answer.headline;
    expect(better).not.toContain('With “tall core” the engine');
  });

  it('that go over one midnight are one session', () => {
    const late = hours(23, 23.33, 23.67, 24, 24.33, 24.67);
    const { answer } = clockedDay('ABBAAB', late, [monday, monday, monday, tuesday, tuesday, tuesday]);
    expect(answer.rests.join(' ')).not.toContain('sessions');
    expect(orders(answer)).toEqual([1, 4, 5, 2, 3, 6]);
  });
});

describe('pulls without a clock', () => {
  it('do not hide the order of the others where they are refused', () => {
    const shapes = scattered(8, 240, 0.5, 6);
    const files = [...'ABBAABAB'].map((letter, i) => {
      const setup = (letter === 'A' ? A : B)!;
      // The last two have no clock, and ran lean.
      const spoilt = i > 5 ? { ...shapes[i]!, lambda: () => 0.99 } : { ...shapes[i]!, clock: 36000 + 600 * i };
      return { path: `${setup}/pull ${i}.csv`, setup, data: pullLog(spoilt) };
    });
    const day = readPullsFrom(files);
    const answer = compare(day.setup(A!), day.setup(B!), range);
    expect(answer.baseline.pulls.map(({ accepted }) => accepted)).toEqual([true, true, true, false]);
    expect(answer.driftSeparable).toBe(true);
    expect(answer.rests.join(' ')).toContain('(ABBAAB)');
    const counted = compare(day.setup(A!), day.setup(B!), {
      ...range,
      overrule: { [`${A}/pull 6.csv`]: 'the sensor was cold', [`${B}/pull 7.csv`]: 'the sensor was cold' },
    });
    expect(counted.rests.join(' ')).toContain('The order of the pulls is not known');
  });
});
