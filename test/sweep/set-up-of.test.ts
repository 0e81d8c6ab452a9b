import { describe, expect, it } from 'vitest';
import { keepRows, readLog, setUpOf } from 'coldside/sweep';

const text = 'pull,Time (s),RPM,Lambda\n1,0,2500,\n1,1,2600,0.82\n1,2,,0.83\n2,0,2500,0.8\n';
const [first, second] = readLog(text, { file: 'day.csv' }) as [
  ReturnType<typeof readLog>[0],
  ReturnType<typeof readLog>[0],
];

describe('a set-up of chosen pulls', () => {
  it('holds them in the order given, under its name', () => {
    const setup = setUpOf('cold', [second, first]);
    expect(setup.pulls.map(({ name, setup: own }) => `${own}: ${name}`)).toEqual([
      'cold: day.csv, pull 2',
      'cold: day.csv, pull 1',
    ]);
    expect(first.setup).toBeUndefined();
    expect(String(setup)).toContain('cold: 2 pulls');
  });

  it('needs a name, and pulls with names of their own', () => {
    expect(() => setUpOf('', [])).toThrow(/2 inputs need mending\n.*name must be a name.*\n.*at least one pull/);
    expect(() => setUpOf('cold', [first, first])).toThrow(/two called "day\.csv, pull 1"/);
  });
});

describe('some rows of a pull', () => {
  it('are a pull with its own counts', () => {
    const kept = keepRows(first, (row) => row >= 1);
    expect([...kept.channels.time!.in('s')]).toEqual([1, 2]);
    expect([kept.rows, kept.rowsWithoutEngineSpeed, kept.blankCells]).toEqual([2, 1, 1]);
    expect(kept.name).toBe(first.name);
    expect(first.rows).toBe(3);
  });

  it('must leave an engine speed', () => {
    expect(() => keepRows(first, (row) => row === 2)).toThrow(
      /at least one row with an engine speed, got 1 of the 3 rows/,
    );
  });
});
