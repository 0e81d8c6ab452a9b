import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { root } from '../../.ci/topics.mjs';
import { inCommandWords } from '../../src/bin/command-words.js';
import { HELP } from '../../src/bin/help.js';
import { readOptionsFile } from '../../src/bin/options-file.js';
import { run } from '../../src/bin/program.js';
import { pullLog, scattered, type PullShape } from '../support/pulls.js';

const folder = mkdtempSync(join(tmpdir(), 'coldside-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function ran(...words: string[]) {
  const printed: string[] = [];
  const warned: string[] = [];
  const code = await run(words, { print: (text) => printed.push(text), warn: (text) => warned.push(text) });
  return { code, printed: printed.join('\n'), warned: warned.join('\n') };
}

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
const fileOf = (content: unknown): string => {
  const file = join(folder, 'options.json');
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
  return file;
};
const [a, b] = [scattered(3, 240, 0.8, 1), scattered(3, 252, 0.8, 2)];
const out = join(folder, 'out.md');
const toMarkdown = ['--report', out];

describe('an options file', () => {
  it('says which column is what where a log does not', async () => {
    const bare = (shape: PullShape) => pullLog(shape).replace('Boost (kPa)', 'Boost');
    const logs = day('bare', { 'stock core': a.map(bare), 'tall core': b.map(bare) });
    const without = await ran(logs, ...toMarkdown);
    expect(without.code).toBe(1);
    expect(without.printed).toContain('"boost": { "header": "Boost", "kind": "gauge pressure", "unit": "kPa" }');
    expect(without.printed).not.toContain('channel(');
    const boost = { header: 'Boost', kind: 'gauge pressure', unit: 'kPa' };
    const { code, printed } = await ran(logs, '--options', fileOf({ reading: { channels: { boost } } }), ...toMarkdown);
    expect(printed).toContain('6 pulls read in 2 set-ups');
    expect(code).toBe(0);
  });

  it('says it for one set-up, with its decimal comma', async () => {
    const comma = (shape: PullShape) =>
      pullLog(shape).replaceAll(',', ';').replaceAll('.', ',').replace('Boost (kPa)', 'Boost');
    const logs = day('comma', { 'stock core': a, 'tall core': b.map(comma) });
    const own = { decimal: ',', boost: { header: 'Boost', kind: 'gauge pressure', unit: 'kPa' } };
    const { code } = await ran(logs, '--options', fileOf({ reading: { setups: { 'tall core': own } } }), ...toMarkdown);
    expect(code).toBe(0);
  });

  it('gives limits, instruments and figures of the engine, in any spelling of a unit', async () => {
    const file = fileOf({
      given: {
        limits: { boost: { quantity: 'pressure difference', value: 1.2, unit: 'psi' } },
        powerPerLambda: { quantity: 'ratio', value: -40, unit: '%' },
        sensors: { torque: { instrument: 1 } },
        overallRatio: { quantity: 'ratio', value: 8.2, unit: '1' },
        step: { quantity: 'rotational speed', value: 200, unit: 'rpm' },
      },
      instruments: [
        {
          label: 'load cell',
          kind: 'torque',
          standardUncertainty: { quantity: 'torque', value: 1, unit: 'Nm' },
        },
      ],
    });
    const { comparison } = await readOptionsFile(file);
    expect(comparison.limits!.boost!.in('kPa')).toBeCloseTo(1.2 * 6.894757, 5);
    expect(comparison.powerPerLambda!.si).toBeCloseTo(-0.4, 12);
    expect(String(comparison.sensors!.torque)).toContain('load cell');
    const logs = day('told', { 'stock core': a, 'tall core': b });
    const { code } = await ran(logs, '--options', file, ...toMarkdown);
    expect(code).toBe(0);
    expect(readFileSync(out, 'utf8')).toContain('load cell');
  });

  it('takes the options of a record as they are, and flags go before it', async () => {
    const logs = day('again', { 'stock core': a, 'tall core': b });
    expect((await ran(logs, '--range', '3500-6000', '--worthwhile', '2 kW', ...toMarkdown)).code).toBe(0);
    const record = JSON.parse(readFileSync(join(folder, 'out.record.json'), 'utf8')) as {
      comparisons: { options: unknown; overall: unknown }[];
    };
    const [first] = record.comparisons;
    const file = fileOf(first!.options);
    expect((await ran(logs, '--options', file, ...toMarkdown)).printed).toContain('averaged from 3500 to 6000 rpm');
    const shorter = await ran(logs, '--options', file, '--range', '4000-5000', ...toMarkdown);
    expect(shorter.printed).toContain('averaged from 4000 to 5000 rpm');
  });

  it.each([
    ['{ "given": ', /options\.json is no JSON/],
    [{ limits: {} }, /the file has no "limits"\. There are: reading, given, instruments\./],
    [{ given: { limts: {} } }, /limts must be one of engineSpeed/],
    [
      { given: { limits: { boost: 8 } } },
      /limits\.boost must be a pressure difference above zero, .* Write for example \{ "quantity": "pressure difference", "value": 6, "unit": "kPa" \}/,
    ],
    [
      { given: { limits: { boost: { value: 8, unit: 'kPa' } } } },
      /given\.limits\.boost must name its quantity, such as \{ "quantity": "pressure difference"/,
    ],
    [
      { given: { limits: { boost: { quantity: 'pressure difference', value: 8, unit: 'kg' } } } },
      /options\.json: given\.limits\.boost: "kg" is not a unit of a pressure difference/,
    ],
    [{ given: { sensors: { torque: { instrument: 2 } } } }, /every instrument that the options use/],
    [{ reading: { decimal: 'x' } }, /reading\.decimal cannot be "x"/],
    [{ reading: { setups: { one: { separator: '' } } } }, /reading\.setups, one\.separator cannot be ""/],
    [{ reading: { chanels: {} } }, /reading has no "chanels"/],
    [{ reading: { channels: { boost: { kind: 'gauge pressure' } } } }, /channels\.boost must name its header/],
    [{ reading: { channels: { boost: { header: 'Boost', kind: 'pressure' } } } }, /"pressure" is no kind of quantity/],
  ])('that is wrong, %j, is refused by what is wrong in it', async (content, message) => {
    const { code, warned } = await ran(day('wrong', { one: a, two: b }), '--options', fileOf(content));
    expect(code).toBe(2);
    expect(warned).toMatch(message);
  });

  it('that is not there is said', async () => {
    const { code, warned } = await ran(folder, '--options', join(folder, 'nowhere.json'));
    expect([code, warned]).toEqual([2, expect.stringContaining('there is no such file')]);
  });

  it('is shown in the help by an example that can be read, on one screen', async () => {
    const [, example] = /such as\n([^]*?)\nWhat comes out/.exec(HELP)!;
    const { reading, comparison } = await readOptionsFile(fileOf(example!));
    expect(reading.channels!.boost).toEqual({ header: 'Boost', kind: 'gauge pressure', unit: 'kPa' });
    expect(comparison.limits!.boost!.in('kPa')).toBeCloseTo(8, 9);
    expect(HELP.split('\n').length).toBeLessThanOrEqual(45);
    expect(Math.max(...HELP.split('\n').map((line) => line.length))).toBeLessThanOrEqual(120);
  });
});

describe('the options file in the README', () => {
  it('can be read', async () => {
    const [, example] = /```json\n([^]*?)```/.exec(readFileSync(`${root}README.md`, 'utf8'))!;
    const { reading, comparison } = await readOptionsFile(fileOf(example!));
    expect(reading.setups!['tall core']!.decimal).toBe(',');
    expect(String(comparison.sensors!.torque)).toContain('load cell');
  });
});

describe('outliers', () => {
  it('are taken out by --outliers missing', async () => {
    const logs = day('outliers', { 'stock core': a, 'tall core': b });
    const { printed } = await ran(logs, '--outliers', 'missing', ...toMarkdown);
    expect(printed).toMatch(/outliers/i);
    expect((await ran(logs, '--outliers', 'away')).warned).toContain('--outliers takes missing or report, got away');
  });
});

describe('what the library says a program should write', () => {
  it.each([
    ["The start is not settled; settled: 'cut' would begin at 3700 rpm.", /; --settled cut would/],
    ["Compare them with loggedPower: 'corrected', which", /--logged corrected, which/],
    [
      "Say which sign is the decimal one: decimal: ',' or decimal: '.'.",
      /: "decimal": "," or "decimal": "\."\. \(.*“reading”/,
    ],
    [
      "Give sensorLags: { chargeTemperature: time(…, 's') }, from",
      /"sensorLags": \{ "chargeTemperature": \{ "quantity": "time", "value": …, "unit": "s" \} \}, from .*“given”/,
    ],
    [
      'say how far they may: limits: { changeBetweenSetUps: 0.4 }.',
      /"limits": \{ "changeBetweenSetUps": 0\.4 \}\. \(.*“given”/,
    ],
    ['Give order: [...], or return', /Give --order with the set-up of each pull, or/],
    ["For one set-up alone: setups: { name: { decimal: '.' } }.", /"setups": \{ "name": \{ "decimal": "\." \} \}/],
    [
      "torque: channel('Torque (N·m)', 'torque',\n      'N·m').",
      /"torque": \{ "header": "Torque \(N·m\)", "kind": "torque", "unit": "N·m" \}\./,
    ],
    ['Name a column by its number where it matters: channel(3).', /: \{ "header": 3 \}\./],
    ['give bestTorqueSpark from a spark loop', /give "bestTorqueSpark" from/],
    ['With more boost the engine makes more power: +3 kW.', /^With more boost the engine makes more power: \+3 kW\.$/],
  ])('is said as the command takes it: %s', (text, words) => {
    expect(inCommandWords(text)).toMatch(words);
  });
});

describe('the exit code', () => {
  it('is 1 where something must be settled before judging, with the report', async () => {
    const logs = day('units', { one: a, two: b.map((shape) => ({ ...shape, torque: 252 * 1.3558 })) });
    const { code, printed } = await ran(logs, ...toMarkdown);
    expect(code).toBe(1);
    expect(printed).toContain('Before judging');
    expect(printed).toContain(`Report: ${out}`);
  });

  it('is 1 where no pull covers the range, which is said', async () => {
    const { code, printed } = await ran(day('range', { one: a, two: b }), '--range', '100-200', ...toMarkdown);
    expect(code).toBe(1);
    expect(printed).toContain(
      'No usable pull of the one set is left: none covers 100 to 200 rpm, they run from 3000 to 6500 rpm.',
    );
  });

  it('is 1 where one of two set-ups could not be read, which is said', async () => {
    const { code, warned } = await ran(day('half', { one: a, two: ['', ''] }), ...toMarkdown);
    expect(code).toBe(1);
    expect(warned).toContain('two has no pull that could be read, and is not compared.');
    expect(warned).not.toContain('Use: coldside');
  });

  it('is 2 where there is only one set-up', async () => {
    const { code, warned } = await ran(day('single', { one: a }), ...toMarkdown);
    expect([code, warned]).toEqual([2, expect.stringContaining('There is only one set-up, "one"')]);
  });
});
