import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { CalculationError, rotationalSpeed } from '../../src/units/index.js';
import { seeded } from '../support/random.js';
import { alternating, dayOf, pullLog, scattered, type PullShape } from '../support/pulls.js';

/** Boost that begins low and is within 0.5 kPa of its own after the time given, and noise of about 0.2 kPa. */
function building(seconds: number, seed: number): PullShape {
  const random = seeded(seed);
  const low = 60;
  const constant = seconds / Math.log(low / 0.5);
  return { building: (t) => low * Math.exp(-t / constant) + 0.4 * (random() - 0.5) };
}

/** Pulls of 400 rpm/s from 3000 rpm; the one of `late` builds up longest. */
function day(early: number, late: number, candidate: PullShape = {}) {
  const [a, b] = alternating(
    scattered(4, 240, 0.8, 1).map((shape, i) => ({ ...shape, ...building(early, 10 + i) })),
    scattered(4, 252, 0.8, 2).map((shape, i) => ({
      ...shape,
      ...building(i === 2 ? late : early, 20 + i),
      ...candidate,
    })),
  );
  return dayOf({ 'stock core': a, 'tall core': b });
}

function comparison(one: ReturnType<typeof day>, options: CompareOptions = {}): Comparison {
  return compare(one.setup('stock core'), one.setup('tall core'), options);
}

const rpm = ({ engineSpeed: { from, to } }: Comparison): number[] =>
  [from, to].map((speed) => Math.round(speed.in('rpm')));

describe('the start of the pulls, in which boost still builds up', () => {
  // 2 s after 3000 rpm at 400 rpm/s is 3800 rpm.
  const spooling = day(1, 2);

  it('is left out of the range that is shared, one cut for all, with the pull that sets it and half the averaging window', () => {
    const answer = comparison(spooling);
    const [from, to] = rpm(answer) as [number, number];
    const until = answer.settled.until!.in('rpm');
    expect(answer.settled).toMatchObject({ isCut: true, pull: 'tall core, pull 3.csv', building: [] });
    expect(until).toBeGreaterThan(3600);
    expect(until).toBeLessThan(4000);
    expect(from).toBe(Math.ceil((until + 100) / 100) * 100);
    expect(to).toBe(6500);
    expect(answer.rests.join(' ')).toContain(
      `Compared from ${from} to 6500 rpm and not from 3000 to 6500 rpm, one cut for all pulls: boost of tall core, pull 3.csv still builds up until ${Math.round(until)} rpm, the latest of 8 pulls, and readings are averaged over 200 rpm.`,
    );
    expect(answer.headline).toContain(`averaged from ${from} to 6500 rpm`);
  });

  it('is told of with a boost reading that drops out in it, though that lies before the range', () => {
    const usual = building(2, 22).building!;
    const dropping = day(1, 1, { building: (t) => (Math.abs(t - 1.5) < 0.02 ? 110 : usual(t)) });
    const answer = comparison(dropping);
    expect(rpm(answer)[0]).toBeGreaterThan(3700);
    expect(answer.rests.join(' ')).toMatch(/4 readings jump away .* 1 of boost in tall core, pull 1\.csv/);
  });

  it('would have made a difference: a later start of boost takes torque that the part has not taken', () => {
    // The planted transient costs 15 N·m at first; nothing else differs.
    const spool = (seconds: number): PullShape => ({
      ...building(seconds, 7),
      extra: (speed) => -15 * Math.exp((-(speed - 3) * 2.5 * Math.log(120)) / seconds),
    });
    const [a, b] = alternating(
      scattered(4, 240, 0.05, 1).map((shape) => ({ ...shape, ...spool(0.5) })),
      scattered(4, 240, 0.05, 2).map((shape) => ({ ...shape, ...spool(2) })),
    );
    const late = dayOf({ 'stock core': a, 'tall core': b });
    const leftIn = comparison(late, { settled: 'leave in' });
    expect(leftIn.outcome).toBe('worse');
    // 15 N·m falling off over 2/ln(120) s and 0.5/ln(120) s at 400 rpm/s, averaged over 3500 rpm: 0.54 N·m at about 3000 rpm, 170 W.
    expect(leftIn.overall!.value.si).toBeGreaterThan(-200);
    expect(leftIn.overall!.value.si).toBeLessThan(-140);
    expect(Math.abs(comparison(late).overall!.value.si)).toBeLessThan(20);
  });

  it('stays in a range that was given, and is named with what would begin later', () => {
    const answer = comparison(spooling, { engineSpeed: [3100, 6000] });
    expect(rpm(answer)).toEqual([3100, 6000]);
    expect(answer.settled.isCut).toBe(false);
    expect(answer.settled.building).toContain('tall core, pull 3.csv');
    expect(answer.rests.join(' ')).toMatch(
      /The range given is kept, but its start is not settled: boost of tall core, pull 3\.csv still builds up until 3\d\d\d rpm, the latest of 8 pulls; settled: 'cut' would begin at (3|4)\d00 rpm\./,
    );
    expect(answer.candidate.pulls[2]!.remarks).toContain('It still builds up boost at the start of the range.');
  });

  it('goes unmentioned where the range that was given begins after it', () => {
    const answer = comparison(spooling, { engineSpeed: [4200, 6000] });
    expect(answer.settled).toMatchObject({ isCut: false, building: [], remarks: [] });
  });

  it('is cut off a given range on demand, and left in on demand', () => {
    const cut = comparison(spooling, { engineSpeed: [3050, 6000], settled: 'cut' });
    const [from] = rpm(cut) as [number];
    expect((from - 3050) % 100).toBe(0);
    expect(from).toBeGreaterThan(cut.settled.until!.in('rpm') + 99.9);
    expect(from).toBeLessThan(cut.settled.until!.in('rpm') + 200.1);
    const left = comparison(spooling, { settled: 'leave in' });
    expect(rpm(left)).toEqual([3000, 6500]);
    expect(left.rests.join(' ')).toMatch(
      /The start of the pulls is left in, as asked: boost of tall core, pull 3\.csv/,
    );
  });

  it('is not cut off where that would leave less than half of the range, unless it is asked for', () => {
    // 5.5 s of 8.75 s: settled beyond 5000 rpm.
    const slow = day(1, 5);
    const answer = comparison(slow);
    expect(rpm(answer)).toEqual([3000, 6500]);
    expect(answer.rests.join(' ')).toMatch(
      /not cut off, since that would leave less than half of 3000 to 6500 rpm: boost of tall core, pull 3/,
    );
    expect(rpm(comparison(slow, { settled: 'cut' }))[0]).toBeGreaterThan(4800);
    expect(() => comparison(slow, { engineSpeed: [3000, 4500], settled: 'cut' })).toThrow(CalculationError);
    expect(() => comparison(slow, { engineSpeed: [3000, 4500], settled: 'cut' })).toThrow(
      /settled must be a start that leaves some of 3000 to 4500 rpm, got boost of tall core, pull 3\.csv still builds up/,
    );
  });

  it('does not depend on a pull that was left out by hand', () => {
    const without = comparison(spooling, { leaveOut: { 'tall core/pull 3.csv': 'late on the throttle' } });
    expect(without.settled.pull).not.toBe('tall core, pull 3.csv');
    expect(rpm(without)[0]).toBeLessThan(rpm(comparison(spooling))[0]!);
    // With that pull counted after all it is the same range, or the two could not be held against each other.
    const [from, to] = rpm(without) as [number, number];
    const cut = comparison(spooling, { leaveOut: { 'tall core/pull 3.csv': 'late' }, settled: 'cut' });
    const all = comparison(spooling, { engineSpeed: [from, to], settled: 'leave in' });
    expect(cut.rests.join(' ')).toContain(
      `counted that were left out by hand, the difference is +${(all.overall!.value.si / 1000).toFixed(1)} kW, between +${(all.overall!.low.si / 1000).toFixed(1)} and`,
    );
  });

  it('is cut off at the top of pulls that go down', () => {
    const downwards = (log: string): string => {
      const [header, ...rows] = log.split('\n');
      const speeds = rows.map((row) => row.split(',')[1]).toReversed();
      return [header, ...rows.map((row, i) => row.split(',').with(1, speeds[i]!).join(','))].join('\n');
    };
    const log = (torque: number, seconds: number, seed: number): string =>
      downwards(pullLog({ torque, ...building(seconds, seed) }));
    const both = readPullsFrom(
      [0, 1, 2, 3, 4, 5].map((i) => {
        const setup = i % 2 === 0 ? 'stock core' : 'tall core';
        return { path: `${setup}/pull ${i}.csv`, setup, data: log(240 + i / 4, i === 3 ? 2 : 1, 30 + i) };
      }),
    );
    const answer = comparison(both);
    const until = answer.settled.until!.in('rpm');
    expect(until).toBeGreaterThan(5500);
    expect(until).toBeLessThan(5900);
    expect(rpm(answer)).toEqual([3000, Math.floor((until - 100) / 100) * 100]);
    expect(answer.settled.pull).toBe('tall core, pull 3.csv');
  });

  it('names a pull whose boost is still low where the others have settled', () => {
    // A rest of 8 kPa that falls off over 6 s: it passes for a bend.
    const slowly = (shape: PullShape): PullShape => ({
      ...shape,
      building: (t) => shape.building!(t) + 8 * Math.exp(-t / 6),
    });
    const odd = day(0.8, 0.8);
    const [a, b] = alternating(
      scattered(4, 240, 0.8, 1).map((shape, i) => ({ ...shape, ...building(0.8, 60 + i) })),
      scattered(4, 252, 0.8, 2).map((shape, i) => {
        const own = building(0.8, 70 + i);
        return { ...shape, ...(i === 1 ? slowly(own) : own) };
      }),
    );
    const answer = comparison(dayOf({ 'stock core': a, 'tall core': b }));
    expect(answer.settled.stillBuilding).toEqual(['tall core, pull 2.csv']);
    expect(answer.rests.join(' ')).toContain(
      'After that, pressure is still lower than in the other pulls of the set-up in tall core, pull 2.csv: look there.',
    );
    expect(answer.candidate.pulls[1]!.remarks.join(' ')).toContain(
      'Its pressure is lower than in the other pulls just after',
    );
    expect(comparison(odd).settled.stillBuilding).toEqual([]);
  });
});

describe('pulls that cannot tell where they have settled', () => {
  it('are said to, and nothing is cut: without pressure, without times, too short', () => {
    const edited = (edit: (cells: string[]) => string[], rows = 200) =>
      readPullsFrom(
        [0, 1, 2, 3].map((i) => {
          const lines = pullLog({ torque: 240 + 5 * (i % 2) + i / 4, ...building(1, 80 + i) }).split('\n');
          const every = Math.ceil(lines.length / rows);
          const kept = lines.filter((_, row) => row === 0 || (row - 1) % every === 0);
          return {
            path: `${i}.csv`,
            setup: i < 2 ? 'stock core' : 'tall core',
            data: kept.map((line) => edit(line.split(',')).join(',')).join('\n'),
          };
        }),
      );
    const rests = (one: ReturnType<typeof edited>): string => {
      const answer = comparison(one, { step: rotationalSpeed(700, 'rpm'), limits: { missing: 0.9 } });
      expect(answer.settled.isCut).toBe(false);
      return answer.rests.join(' ');
    };
    expect(rests(edited((cells) => cells.toSpliced(3, 1)))).toContain(
      'Where pressure has built up cannot be told in any pull, so no start is cut off. It has none of boost, manifold pressure, which would show it.',
    );
    expect(rests(edited((cells) => cells.toSpliced(0, 1)))).toContain('so no start is cut off. It has no times.');
    expect(rests(edited((cells) => cells, 6))).toMatch(
      /so no start is cut off\. [67] readings of boost are too few to tell\./,
    );
  });

  it('do not keep the others from being cut', () => {
    const files = [0, 1, 2, 3].map((i) => {
      const log = pullLog({ torque: 240 + i / 4, ...building(1, 90 + i) });
      return {
        path: `${i}.csv`,
        setup: i < 2 ? 'stock core' : 'tall core',
        data: i === 0 ? log.replace('Boost (kPa)', 'Remark') : log,
      };
    });
    const answer = comparison(readPullsFrom(files));
    expect(answer.settled.isCut).toBe(true);
    expect(answer.rests.join(' ')).toMatch(
      /cannot be told in 1 of 4 pulls, so they do not count .* stock core, 0\.csv: It has none of boost/,
    );
  });

  it('are those that show no start: then that is said where nobody gave a range', () => {
    const steady = dayOf({ 'stock core': scattered(3, 240, 0.8, 1), 'tall core': scattered(3, 252, 0.8, 2) });
    expect(comparison(steady).rests.join(' ')).toContain(
      'No pull shows boost still building up at its start, so nothing is cut off.',
    );
    expect(comparison(steady, { engineSpeed: [3500, 6000] }).settled.remarks).toEqual([]);
  });
});
