import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { wordsOf } from '../../src/bin/arguments.js';
import { run } from '../../src/bin/program.js';
import { root } from '../../.ci/topics.mjs';
import { pullLog, scattered, type PullShape } from '../support/pulls.js';

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
    expect(printed).toContain('With “tall core” the engine makes more power: +3.8 kW at the hub');
    expect(printed).toContain('“short inlet hose” changes nothing worth having against “stock core”');
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
    [['-v', demo], /There is no option --v\. There are: --baseline/],
    [[demo, '--range', '6500-3500'], /the lower first, such as 3500-6500, got 6500-3500/],
    [[demo, '--worthwhile', '2'], /--worthwhile takes a difference with its unit, such as "2 kW": "2" has no unit/],
    [[demo, '--report', 'pull 1.csv'], /--report takes a file that ends in \.html or \.md, got pull 1\.csv/],
    [['--baseline', 'a.csv'], /the logs of both set-ups/],
    [[demo, 'other'], /One folder at a time/],
    [[demo, '--range', '3500'], /two engine speeds in rpm/],
    [[demo, '--logged', 'maybe'], /--logged takes observed, corrected or unknown, got maybe/],
    [[demo, '--range', '3500-6500', '--range', '3000-6000'], /given twice/],
    [[demo, '--speeds', 'fast'], /--speeds takes engine speeds in rpm, such as 4000 5000, got fast/],
    [[demo, '--confidence', '95'], /--confidence takes a chance above 0\.5 and below 1, such as 0\.9 or 90%, got 95/],
    [
      [demo, '--swept-volume', '1.8'],
      /--swept-volume takes a volume with its unit, such as "1\.8 L": "1\.8" has no unit/,
    ],
    [
      [demo, '--leave-out', 'tall core/pull 2.csv'],
      /--leave-out takes set-up, pull and the reason, such as .*, got tall core/,
    ],
    [[demo, '--overrule'], /--overrule takes set-up, pull and the reason, .* got nothing/],
    [[demo, '--by', 'noise'], /--by takes power, torque, air flow or air per cycle, got noise/],
    [[demo, '--settled', 'maybe'], /--settled takes cut or leave in, got maybe/],
    [[demo, '--boost-control', 'maybe'], /--boost-control takes open or closed, got maybe/],
    [
      [demo, '--leave-out', 'big core/pull 1.csv=slipped'],
      /--leave-out names big core\/pull 1\.csv, and the set-ups compared are/,
    ],
  ])('refuses %j with how it is used', async (words, message) => {
    const { code, warned } = await ran(...words);
    expect(code).toBe(2);
    expect(warned).toMatch(message);
    expect(warned).toContain('coldside FOLDER');
  });

  it.each([
    [['nowhere'], /nowhere/],
    [[demo, '--baseline', 'Stock core'], /No set-up called "Stock core"/],
  ])('says in one line what is wrong with %j', async (words, message) => {
    const { code, warned } = await ran(...words);
    expect(code).toBe(1);
    expect(warned).toMatch(message);
    expect(warned).not.toContain('    at ');
  });
});

describe('a folder with mistakes in it', () => {
  const day = (name: string, setUps: Readonly<Record<string, readonly (PullShape | string)[]>>): string => {
    for (const [setUp, pulls] of Object.entries(setUps)) {
      mkdirSync(join(folder, name, setUp), { recursive: true });
      pulls.forEach((pull, i) => {
        const log = typeof pull === 'string' ? pull : pullLog(pull);
        writeFileSync(join(folder, name, setUp, `pull ${i + 1}.csv`), log);
      });
    }
    return join(folder, name);
  };
  const [a, b] = [scattered(3, 240, 0.8, 1), scattered(3, 252, 0.8, 2)];
  const toMarkdown = ['--report', join(folder, 'mistakes.md')];

  it('takes the range and the margin as they are typed without quotes, and the order of the pulls', async () => {
    const logs = day('typed', { 'stock core': a, 'tall core': b });
    const words = [
      '--range',
      '3500',
      '6000',
      '--worthwhile=2',
      'kW',
      '--order',
      'stock core',
      'tall core',
      'tall core',
    ];
    const { code, printed } = await ran(logs, ...words, 'stock core', 'stock core', 'tall core', ...toMarkdown);
    expect(code).toBe(0);
    expect(printed).toContain('With “tall core” the engine makes more power');
    expect(printed).toContain('averaged from 3500 to 6000 rpm');
    expect(printed).toContain('The set-ups took turns (ABBAAB)');
  });

  it('compares by torque where the margin is a torque', async () => {
    const logs = day('torque', { 'stock core': a, 'tall core': b });
    const { printed } = await ran(logs, '--worthwhile', '3 lb-ft', '--units', 'us', ...toMarkdown);
    expect(printed).toMatch(/made more torque: \+\d+ lb·ft/);
  });

  it('goes on with the other set-ups where one has no pull that can be read, or cannot be compared', async () => {
    const logs = day('mixed', { 'a stock core': a, broken: ['', ''], copied: a, 'tall core': b });
    const { code, printed, warned } = await ran(logs, ...toMarkdown);
    expect(code).toBe(0);
    expect(printed).toContain('The pulls of “tall core” made more power');
    expect(warned).toContain('broken has no pull that could be read, and is not compared.');
    expect(warned).toContain('copied against a stock core: compare: candidate must be made of other pulls');
  });

  it('says so where no pull can be read', async () => {
    const { code, warned } = await ran(day('empty', { one: [''], two: ['x'] }));
    expect(code).toBe(1);
    expect(warned).toContain('No pull could be read, so there is nothing to compare.');
  });

  it('lets several candidates share the chance', async () => {
    const logs = day('three', { 'a stock core': a, 'tall core': b, duct: scattered(3, 246, 0.8, 9) });
    expect((await ran(logs, ...toMarkdown)).printed).toContain('2 comparisons share the chance of error');
  });

  it('says in one line that the report cannot be written', async () => {
    const logs = day('unwritten', { 'stock core': a, 'tall core': b });
    const { code, warned } = await ran(logs, '--report', join(logs, 'stock core', 'pull 1.csv', 'report.md'));
    expect(code).toBe(1);
    expect(warned).toMatch(
      /^report: path must be a file that can be written, got .*report\.md, where a file stands in the place of a folder/,
    );
    expect(warned).not.toContain('    at ');
  });
});

describe('what is said beforehand', () => {
  const report = join(folder, 'told.md');
  const text = () => readFileSync(report, 'utf8');

  it('leaves out and overrules pulls with their reasons, in the pairs that have them', async () => {
    const { code } = await ran(
      demo,
      '--leave-out',
      'stock core/pull 2.csv=missed the gear',
      '--overrule',
      'tall core/pull 4.csv=the pump is what is looked at',
      '--report',
      report,
    );
    expect(code).toBe(0);
    expect(text()).toMatch(/pull 2\.csv: refused\. .*missed the gear/);
    expect(text()).toContain('was overruled (“the pump is what is looked at”)');
  }, 60_000);

  it('compares by torque at speeds and with a confidence of the tester’s choice', async () => {
    const two = ['--candidate', 'tall core', '--range', '3500-6500', '--report', report];
    const { printed } = await ran(demo, ...two, '--by', 'torque', '--speeds', '4000', '5000', '--confidence', '90 %');
    expect(printed).toContain('(90 %)');
    expect(printed).toMatch(/Torque at 4000 rpm: .*\n.*Torque at 5000 rpm: /);
    expect(printed).toMatch(
      /Area under the torque curve, which is its mean over the range times the width of 3.000 rpm/,
    );
  }, 60_000);

  it('takes what is known of the engine', async () => {
    const two = ['--candidate', 'tall core', '--range', '3500-6500', '--report', report];
    const { code } = await ran(
      demo,
      ...two,
      '--swept-volume',
      '1.8 L',
      '--boost-control',
      'open',
      '--settled',
      'leave in',
    );
    expect(code).toBe(0);
    expect(text()).toContain('1.8 L');
  }, 60_000);
});

describe('a recorded analysis', () => {
  const report = join(folder, 'recorded', 'day.md');
  const record = join(folder, 'recorded', 'day.record.json');

  it('is written beside the report, and comes out again', async () => {
    const first = await ran(demo, '--candidate', 'tall core', '--range', '3500-6500', '--report', report);
    expect(first.printed).toContain(`Record: ${record}`);
    const again = await ran('--repeat', record, demo);
    expect(again).toMatchObject({ code: 0, warned: '' });
    expect(again.printed).toMatch(/The analysis repeats: 1 comparison of 11 pulls, \d+ numbers, all as recorded\./);
  }, 60_000);

  it('does not come out from other logs', async () => {
    const { code, printed } = await ran(
      '--repeat',
      record,
      '--baseline',
      `${demo}/stock core/pull 1.csv`,
      '--candidate',
      `${demo}/tall core/pull 1.csv`,
    );
    expect(code).toBe(1);
    expect(printed).not.toContain('The analysis repeats');
  });

  it.each([
    [['--repeat', 'nowhere.json', demo], 1, /The record nowhere\.json could not be read: there is no such file\./],
    [['--repeat', `${demo}/README.md`, demo], 1, /record must be text in JSON/],
    [['--repeat'], 2, /--repeat takes a record, such as day\.record\.json, and the folder of its logs/],
  ])('says what is wrong with %j', async (words, expected, message) => {
    const { code, warned } = await ran(...words);
    expect(code).toBe(expected);
    expect(warned).toMatch(message);
  });
});

describe('a command line', () => {
  it('takes an option with its value behind an equals sign, and a number below zero as a value', () => {
    const words = wordsOf(['--range=1-2', '-3', 'x=y'], ['range']);
    expect(words.alone).toEqual([]);
    expect(Object.fromEntries(words.options)).toEqual({ range: ['1-2', '-3', 'x=y'] });
  });

  it('gives an option every value up to the next option', () => {
    const words = wordsOf(['runs', '--baseline', 'a', 'b', '--range', '1-2'], ['baseline', 'range']);
    expect(words.alone).toEqual(['runs']);
    expect(Object.fromEntries(words.options)).toEqual({ baseline: ['a', 'b'], range: ['1-2'] });
  });
});
