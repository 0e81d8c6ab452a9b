import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { readPullsFrom, type Day } from '../../src/sweep/index.js';
import { time } from '../../src/units/index.js';
import { alternating, pullLog, scattered, type PullShape } from '../support/pulls.js';

/** Torque of some rows of a log as a test wants it; the columns are time, engine speed, torque, ... */
type Spoil = (cells: string[], row: number) => string[];

const torque = (cells: string[], value: number): string[] => cells.with(2, String(value));

/** Four pulls each, the tall core 4.2 N·m better; some logs are spoilt, by `set-up/number`. */
function dayWith(spoilt: Readonly<Record<string, Spoil>>): Day {
  const [a, b] = alternating(scattered(4, 240, 0.6, 3), scattered(4, 244.2, 0.6, 4));
  const log = (shape: PullShape, spoil: Spoil | undefined): string => {
    const [header, ...rows] = pullLog(shape).split('\n');
    return [header, ...rows.map((row, i) => (spoil ? spoil(row.split(','), i).join(',') : row))].join('\n');
  };
  const files = Object.entries({ 'stock core': a, 'tall core': b }).flatMap(([setup, pulls]) =>
    pulls.map((shape, i) => ({
      path: `${setup}/pull ${i + 1}.csv`,
      setup,
      data: log(shape, spoilt[`${setup}/${i + 1}`]),
    })),
  );
  return readPullsFrom(files);
}

const answerOf = (spoilt: Readonly<Record<string, Spoil>>, options: CompareOptions = {}): Comparison => {
  const day = dayWith(spoilt);
  return compare(day.setup('stock core'), day.setup('tall core'), {
    compare: 'torque',
    engineSpeed: [3500, 6000],
    ...options,
  });
};

const at =
  (rows: readonly number[], value: number): Spoil =>
  (cells, row) =>
    rows.includes(row) ? torque(cells, value) : cells;

describe('readings that jump away and back', () => {
  const clean = answerOf({});
  const spoilt = answerOf({ 'tall core/2': at([40, 70, 100, 130], 0), 'stock core/3': at([90], 999) });

  it('are told in what the answer rests on, with their pulls, and with the answer without them', () => {
    expect(clean.outcome).toBe('better');
    expect(spoilt.outcome).toBe('not resolved');
    const line = spoilt.rests.find((each) => each.includes('jump away'))!;
    expect(line).toContain(
      '5 readings jump away from their neighbours and back, and count as they stand: 1 of torque in stock core, pull 3.csv; 4 of torque in tall core, pull 2.csv. With them taken out, the answer is another: ',
    );
    expect(line).toContain("prepare: { outliers: 'missing' } takes them out.");
    // It stands near the top, before what else the answer rests on.
    expect(spoilt.rests.indexOf(line)).toBeLessThan(8);
    expect(spoilt.candidate.pulls[1]!.remarks.join(' ')).toMatch(/The torque jumps to 0 N·m for 1 row/);
    expect(clean.rests.join(' ')).not.toContain('jump away');
  });

  it('leave the answer of the clean pulls where they are taken out', () => {
    const cleaned = answerOf(
      { 'tall core/2': at([40, 70, 100, 130], 0), 'stock core/3': at([90], 999) },
      { prepare: { outliers: 'missing' } },
    );
    expect(cleaned.outcome).toBe('better');
    expect(cleaned.overall!.value.si).toBeCloseTo(clean.overall!.value.si, 1);
    expect(cleaned.rests.join(' ')).not.toContain('jump away');
    expect(cleaned.rests.join(' ')).toContain('Outliers taken out');
    // What is quoted beside the spoilt answer is that answer.
    expect(spoilt.rests.join(' ')).toContain(cleaned.headline);
  });

  it('are counted where they change little, with the difference without them', () => {
    const one = answerOf({ 'tall core/2': at([60], 300) });
    expect(one.rests.join(' ')).toMatch(
      /1 reading jumps away from its neighbours and back, and counts as it stands: 1 of torque in tall core, pull 2\.csv\. With it taken out, the difference is \+\d N·m, between/,
    );
  });

  it('outside the range, or in a channel that nothing rests on, are not told', () => {
    expect(answerOf({ 'tall core/2': at([5], 999) }).rests.join(' ')).not.toContain('jump');
    const humid: Spoil = (cells, row) => (row === 80 ? cells.with(9, '99') : cells);
    expect(answerOf({ 'tall core/2': humid }).rests.join(' ')).not.toContain('jump');
  });

  it('raise no suspicion of units', () => {
    const high = answerOf({
      'tall core/1': at([40, 60, 80, 100, 120], 9999),
      'tall core/2': at([40, 60, 80, 100, 120], 9999),
      'tall core/3': at([40, 60, 80, 100, 120], 9999),
    });
    expect(high.outcome).not.toBe('unit suspected');
    expect(high.objections.join(' ')).not.toContain('Before judging');
    expect(high.rests.join(' ')).toMatch(/15 readings jump away .* With them taken out, the difference is \+4 N·m/);
    // A real slip is still asked about beside a jump.
    const slip = answerOf({
      ...Object.fromEntries(
        [1, 2, 3, 4].map((i): [string, Spoil] => [
          `tall core/${i}`,
          (cells, row) => torque(cells, row === 80 ? 9999 : Number(cells[2]) * 1.3558),
        ]),
      ),
    });
    expect(slip.outcome).toBe('unit suspected');
  });
});

/** A lift of 12 rows at -30 N·m, in which engine speed falls back. */
const lift =
  (rows: number): Spoil =>
  (cells, row) =>
    row < 80 || row >= 80 + rows ? cells : torque(cells, -30).with(1, String(Number(cells[1]) - 35 * (row - 79)));

describe('a lift of the throttle', () => {
  it('within the range refuses the pull, with how long, how low and how far engine speed fell back', () => {
    const answer = answerOf({ 'tall core/3': lift(12) });
    const pull = answer.candidate.pulls[2]!;
    expect(pull.accepted).toBe(false);
    expect(pull.refusals.map(({ code }) => code)).toContain('off load');
    expect(pull.refusals.map(({ reason }) => reason).join(' ')).toMatch(
      /It was off load at 4580 rpm for 0\.60 s \(12 rows\): torque fell to −30 N·m, and engine speed fell back by \d+ rpm; 0\.20 s is allowed\./,
    );
    expect(answer.rests[0]).toContain('refused: pull 3.csv of tall core');
    expect(answer.outcome).toBe('better');
  });

  it('is refused too where outliers are taken out, and has a limit of its own', () => {
    const spoilt = { 'tall core/3': lift(12) };
    expect(answerOf(spoilt, { prepare: { outliers: 'missing' } }).candidate.pulls[2]!.accepted).toBe(false);
    const codes = answerOf(spoilt, { limits: { offLoad: time(1, 's') } }).candidate.pulls[2]!.refusals;
    expect(codes.map(({ code }) => code)).not.toContain('off load');
  });

  it('is none where single readings drop out, before load, or outside the range', () => {
    const fine = (spoil: Spoil): boolean =>
      answerOf({ 'tall core/3': spoil }).candidate.pulls[2]!.refusals.every(({ code }) => code !== 'off load');
    expect(fine(at([80, 81], 0))).toBe(true);
    const early: Spoil = (cells, row) => (row < 20 ? torque(cells, 5) : cells);
    const wide = answerOf({ 'tall core/3': early }, { engineSpeed: [3000, 6000] }).candidate.pulls[2]!.refusals;
    expect(wide.map(({ code }) => code)).not.toContain('off load');
    expect(fine((cells, row) => (row > 150 ? torque(cells, -20) : cells))).toBe(true);
    expect(fine((cells, row) => (row >= 5 && row < 15 ? torque(cells, -20) : cells))).toBe(true);
  });
});
