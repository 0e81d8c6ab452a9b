import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { wordsOf } from '../../src/bin/arguments.js';
import { run } from '../../src/bin/program.js';
import { root } from '../../.ci/topics.mjs';

const demo = `${root}docs/examples/demo-data`;
const folder = mkdtempSync(join(tmpdir(), 'coldside-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function ran(...words: string[]) {
  const printed: string[] = [];
  const warned: string[] = [];
  const code = await run(words, { print: (text) => printed.push(text), warn: (text) => warned.push(text) });
  return { code, printed: printed.join('\n'), warned: warned.join('\n') };
}

describe('the command', () => {
  it('compares every set-up of a folder with the first of the day, and writes the report', async () => {
    const file = join(folder, 'report.html');
    const { code, printed } = await ran(
      demo,
      '--range',
      '3500-6500',
      '--worthwhile',
      '2 kW',
      '--logged',
      'observed',
      '--at',
      'at the hub',
      '--report',
      file,
    );
    expect(code).toBe(0);
    expect(printed).toContain('20 pulls read in 4 set-ups');
    expect(printed).toContain('The tall core makes more power: +3.8 kW at the hub');
    expect(printed).toContain('The short inlet hose changes nothing worth having against the stock core');
    expect(printed).toContain(`Report: ${file}`);
    expect(readFileSync(file, 'utf8')).toMatch(/^<!doctype html>/i);
  }, 60_000);

  it('compares two lists of logs', async () => {
    const logs = (setup: string) => [1, 2, 3].map((n) => `${demo}/${setup}/pull ${n}.csv`);
    const { code, printed } = await ran(
      '--baseline',
      ...logs('stock core'),
      '--candidate',
      ...logs('tall core'),
      '--report',
      join(folder, 'two.md'),
    );
    expect(code).toBe(0);
    expect(printed).toMatch(/candidate/);
    expect(readFileSync(join(folder, 'two.md'), 'utf8')).toMatch(/^# /);
  }, 60_000);

  it('shows how it is used', async () => {
    expect((await ran('--help')).code).toBe(0);
    expect((await ran('--help')).printed).toContain('one sub-folder for each set-up');
    expect((await ran()).code).toBe(2);
  });

  it.each([
    [['--baselin', 'a.csv'], /There is no option --baselin/],
    [['--baseline', 'a.csv'], /the logs of both set-ups/],
    [[demo, 'other'], /One folder at a time/],
    [[demo, '--range', '3500'], /two engine speeds in rpm/],
    [[demo, '--logged', 'maybe'], /--logged takes observed or corrected or unknown, got maybe/],
    [[demo, '--range', '3500-6500', '--range', '3000-6000'], /given twice/],
  ])('refuses %j with the help', async (words, message) => {
    const { code, warned } = await ran(...words);
    expect(code).toBe(2);
    expect(warned).toMatch(message);
    expect(warned).toContain('coldside FOLDER');
  });

  it.each([
    [['nowhere'], /nowhere/],
    [[demo, '--worthwhile', '2'], /has no unit/],
    [[demo, '--baseline', 'Stock core'], /No set-up called "Stock core"/],
  ])('says in one line what is wrong with %j', async (words, message) => {
    const { code, warned } = await ran(...words);
    expect(code).toBe(1);
    expect(warned).toMatch(message);
    expect(warned).not.toContain('    at ');
  });
});

describe('a command line', () => {
  it('gives an option every value up to the next option', () => {
    const words = wordsOf(['runs', '--baseline', 'a', 'b', '--range', '1-2'], ['baseline', 'range']);
    expect(words.alone).toEqual(['runs']);
    expect(Object.fromEntries(words.options)).toEqual({ baseline: ['a', 'b'], range: ['1-2'] });
  });
});
