import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { measured, sensor } from '../../src/calculation/index.js';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import { optionsFrom, optionsRecord } from '../../src/comparison/options-record.js';
import {
  readingOptionsOf,
  readRecord,
  recordOf,
  recordText,
  repeatAnalysis,
  report,
  type AnalysisRecord,
} from '../../src/report/index.js';
import { channel, keepRows, readPullsFrom, setUpOf, type Day } from '../../src/sweep/index.js';
import {
  angle,
  percent,
  type power,
  pressureDifference,
  ratio,
  rotationalSpeed,
  time,
  torque,
  usShop,
  volume,
} from '../../src/units/index.js';
import { compared, demoDay, demoLogs, options, withColumn } from '../plot/demo.js';
import { pullLog, scattered } from '../support/pulls.js';

const day = demoDay();
const answer = compared(day);
const record = recordOf([answer], { day });
const written = (changed: object): AnalysisRecord => readRecord(JSON.stringify(changed));
const codes = (again: ReturnType<typeof repeatAnalysis>) => [...new Set(again.findings.map(({ code }) => code))];
const folder = mkdtempSync(join(tmpdir(), 'coldside-record-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('a record', () => {
  it('holds inputs with their hashes, how each column was read, options, order, refusals and the answer', () => {
    const text = demoLogs().find(({ path }) => path === 'tall core/pull 4.csv')!.text;
    const pull = record.pulls.find(({ setUp, pull: name }) => setUp === 'tall core' && name === 'pull 4.csv')!;
    expect(pull.sha256).toBe(createHash('sha256').update(text).digest('hex'));
    expect(record.readings[pull.reading - 1]).toMatchObject({ decimal: ',', separator: ';' });
    expect(record.readings[pull.reading - 1]!.columns).toContainEqual({
      role: 'torque',
      header: 'Torque [Nm]',
      kind: 'torque',
      unit: 'N·m',
      how: 'guess',
      unitFrom: 'header',
    });
    const [comparison] = record.comparisons;
    expect(comparison!.options.given['worthwhile']).toEqual({ quantity: 'power', value: 2, unit: 'kW' });
    expect(comparison!.optionsGiven).toEqual(['engineSpeed', 'worthwhile', 'loggedPower', 'measuredAt']);
    expect(comparison!.options.given['limits']).toMatchObject({ mixture: 0.05 });
    const refused = comparison!.pulls.filter(({ accepted }) => !accepted);
    expect(refused).toMatchObject([{ pull: 'pull 4.csv', refusals: [{ code: 'mixture' }, { code: 'fuel pressure' }] }]);
    expect(record.order!.from).toBe('clock');
    expect(record.order!.pulls.slice(0, 2)).toEqual(['stock core/pull 1.csv', 'tall core/pull 1.csv']);
    expect(comparison).toMatchObject({ outcome: 'better', headline: answer.headline, draws: { seed: 1 } });
    expect(comparison!.overall!.value.value).toBeCloseTo(
      (answer.overall!.value as ReturnType<typeof power>).in('kW'),
      12,
    );
  });

  it('is the same to the last byte where it is made twice, and names no folder and no hour', () => {
    const elsewhere = readPullsFrom(
      demoLogs().map(({ path, setup, text }) => ({ path: `/home/somebody/logs/${path}`, setup, data: text })),
    );
    expect(recordText(recordOf([compared(elsewhere)], { day: elsewhere }))).toBe(recordText(record));
    expect(recordText(record)).not.toMatch(/somebody|demo-data/);
    expect(recordOf([answer], { day, made: '2 May, afternoon' }).made).toBe('2 May, afternoon');
  });

  it('comes out again with the same options', () => {
    const again = repeatAnalysis(readRecord(recordText(record)), demoDay());
    expect(again.findings).toEqual([]);
    expect(again.agrees).toBe(true);
    expect(again.numbers).toBeGreaterThan(60);
    expect(String(again)).toMatch(/^The analysis repeats: 1 comparison of 11 pulls, \d+ numbers, all as recorded\.$/);
  });

  it('comes out again from every option there is', () => {
    const probe = sensor('torque', { label: 'load cell', ofReading: percent(0.5), halfWidth: torque(2, 'N·m') });
    const gauge = sensor('gauge pressure', {
      label: 'boost gauge',
      standardUncertainty: pressureDifference(300, 'Pa'),
      degreesOfFreedom: 6,
    });
    const every: Required<CompareOptions> = {
      ...options,
      step: rotationalSpeed(125, 'rpm'),
      bandwidth: rotationalSpeed(250, 'rpm'),
      compare: 'torque',
      worthwhile: torque(3, 'lb·ft'),
      confidence: 0.9,
      order: day.pulls.map(({ setup }) => setup!),
      drift: 'leave in',
      leaveOut: { 'stock core/pull 2.csv': 'missed the gear' },
      overrule: { 'tall core/pull 4.csv': 'the pump is what is looked at' },
      engineSpeed: [rotationalSpeed(3500, 'rpm'), rotationalSpeed(6500, 'rpm')],
      loggedPower: 'corrected',
      measuredAt: 'at the hub',
      setUps: 2,
      bestTorqueSpark: angle(20, '°'),
      bestTorqueSparkBySetUp: {
        'tall core': [
          { engineSpeed: 3500, spark: angle(18, '°') },
          { engineSpeed: 6500, spark: angle(24, '°') },
        ],
      },
      boostControl: { 'stock core': 'open', 'tall core': 'open' },
      powerPerLambda: measured('power per lambda', ratio(-0.4), { halfWidth: ratio(0.2) }),
      predicted: { value: percent(3), low: percent(1), high: percent(5) },
      prepare: { outliers: 'missing', delay: { lambda: time(0.1, 's') } },
      prepareBySetUp: { 'tall core': { delay: { lambda: time(0.2, 's') } } },
      settled: 'leave in',
      sensorLags: { chargeTemperature: time(0.5, 's') },
      sweptVolume: volume(1.8, 'L'),
      strokes: 4,
      overallRatio: ratio(1),
      limits: { mixture: 0.2, boost: pressureDifference(1, 'psi') },
      sensors: { torque: probe },
      sensorsBySetUp: { 'tall core': { boost: gauge } },
      atSpeeds: [4000, rotationalSpeed(5000, 'rpm')],
      units: usShop,
    };
    const made = recordOf([compare(day.setup('stock core'), day.setup('tall core'), every)], { day });
    expect(made.comparisons[0]!.optionsGiven).toHaveLength(Object.keys(every).length);
    expect(optionsFrom(made.comparisons[0]!.options).predicted).toEqual(every.predicted);
    const prepared = made.comparisons[0]!.pulls.map((pull) => pull.prepared.join(' '));
    expect(prepared.every((words) => words.includes('lambda'))).toBe(true);
    const again = repeatAnalysis(readRecord(recordText(made)), demoDay());
    expect(String(again)).toContain('The analysis repeats');
    expect(again.findings).toEqual([]);
  });

  it('counts an instrument that was used twice as one', () => {
    const probe = sensor('torque', { label: 'load cell', halfWidth: torque(2, 'N·m') });
    const back = optionsFrom(
      optionsRecord({ sensors: { torque: probe }, sensorsBySetUp: { 'tall core': { torque: probe } } }),
    );
    expect(back.sensorsBySetUp!['tall core']!.torque).toBe(back.sensors!.torque);
    const standard = (one: typeof probe) => {
      const { origin } = one.correction!;
      return origin?.type === 'leaf' ? origin.uncertainty : undefined;
    };
    expect(standard(back.sensors!.torque!)!.standard).toBeCloseTo(2 / Math.sqrt(3), 12);
    expect(standard(back.sensors!.torque!)!.distribution).toBe('rectangular');
  });
});

describe('a repetition', () => {
  const changedDay = (): Day =>
    demoDay(({ path, text }) =>
      path === 'stock core/pull 3.csv' ? { text: withColumn(text, /^Torque/, (value) => value * 1.01) } : {},
    );

  it('finds a log that was changed, and what it does to the numbers', () => {
    const again = repeatAnalysis(record, changedDay());
    expect(again.agrees).toBe(false);
    expect(codes(again)).toEqual(expect.arrayContaining(['log changed', 'number']));
    expect(String(again)).toContain('stock core/pull 3.csv was changed: its SHA-256 is another than recorded.');
    expect(String(again)).toMatch(/tall core against stock core, overall, value: recorded 3\.\d+ kW, now 3\.\d+ kW/);
  });

  it('finds a log that was changed where no number shows it', () => {
    const again = repeatAnalysis(
      record,
      demoDay(({ path, text }) => (path === 'tall core/pull 2.csv' ? { text: `${text}\n` } : {})),
    );
    expect(codes(again)).toEqual(['log changed']);
    expect(again.agrees).toBe(false);
  });

  it('finds a log that is missing or was added', () => {
    const fewer = repeatAnalysis(
      record,
      demoDay(({ path }) => (path === 'tall core/pull 4.csv' ? undefined : {})),
    );
    expect(codes(fewer)).toContain('log missing');
    const more = recordOf([answer], { day: demoDay(({ path }) => (path === 'tall core/pull 4.csv' ? undefined : {})) });
    expect(codes(repeatAnalysis(more, day))).toContain('log added');
  });

  it('finds an option that was changed, by the numbers and by the hash of the record', () => {
    const changed = structuredClone(record) as unknown as {
      comparisons: { options: { given: Record<string, unknown> } }[];
    };
    changed.comparisons[0]!.options.given['confidence'] = 0.9;
    const again = repeatAnalysis(written(changed), day);
    expect(codes(again)).toEqual(expect.arrayContaining(['record changed', 'number']));
    expect(again.agrees).toBe(false);
  });

  it('finds a number that was changed in the record', () => {
    const changed = structuredClone(record) as unknown as { comparisons: { overall: { low: { value: number } } }[] };
    changed.comparisons[0]!.overall.low.value *= 1 + 1e-6;
    expect(codes(repeatAnalysis(written(changed), day))).toEqual(['record changed', 'number']);
  });

  it('lets rounding pass', () => {
    const nudged = structuredClone(record) as unknown as {
      sha256?: string;
      comparisons: { overall: { low: { value: number } } }[];
    };
    nudged.comparisons[0]!.overall.low.value *= 1 + 1e-13;
    expect(codes(repeatAnalysis(written(nudged), day))).toEqual(['record changed']);
  });

  it('says that another version recorded it, which alone is no failure', () => {
    const other = recordOf([answer], { day, version: '0.0.9' });
    const again = repeatAnalysis(other, day, '0.1.0');
    expect(again.agrees).toBe(true);
    expect(again.findings).toEqual([
      { code: 'other version', message: 'Recorded by coldside 0.0.9, repeated by 0.1.0.', fails: false },
    ]);
  });

  it('reads the logs again as they were told to be read', () => {
    const logs = demoLogs().map(({ path, setup, text }) => ({
      path,
      setup,
      data: setup === 'stock core' ? text.replace('Boost (psi)', 'Druck') : text,
    }));
    const told = {
      setups: { 'stock core': { boost: channel('Druck', 'gauge pressure', 'psi'), oilTemperature: false as const } },
    };
    const first = readPullsFrom(logs, told);
    const made = recordOf([compared(first)], { day: first });
    expect(repeatAnalysis(made, readPullsFrom(logs, { setups: pick(made) })).findings).toEqual([]);
    const untold = repeatAnalysis(made, readPullsFrom(logs));
    expect(codes(untold)).toContain('read otherwise');
    expect(String(untold)).toContain('recorded boost from “Druck” as gauge pressure in psi');
  });

  const pick = (made: AnalysisRecord) => readingOptionsOf(made).setups;

  it('finds pulls that were prepared otherwise', () => {
    const cut = day.setup('tall core').pulls.map((pull) => keepRows(pull, (row) => row > 3));
    const prepared: Day = {
      ...day,
      pulls: [...day.setup('stock core').pulls, ...cut],
      setup: (name) => (name === 'tall core' ? setUpOf(name, cut) : day.setup(name)),
      toString: () => '',
    };
    const made = recordOf([compared(prepared)], { day: prepared });
    expect(repeatAnalysis(made, prepared).findings).toEqual([]);
    expect(codes(repeatAnalysis(made, day))).toContain('prepared otherwise');
  });

  it('says in words what stands against making a comparison again', () => {
    const without = demoDay(({ setup }) => (setup === 'stock core' ? undefined : {}));
    const again = repeatAnalysis(record, without);
    expect(codes(again)).toEqual(['log missing', 'not compared']);
    expect(String(again)).toContain('tall core against stock core cannot be compared again: No set-up called');
  });

  it.each([
    ['no JSON', '{', /record must be text in JSON, got \{/],
    ['another file', '{"a":1}', /must be the record of an analysis/],
    ['a later form', JSON.stringify({ ...record, form: 2 }), /must be of form 1, got form 2/],
  ])('refuses %s', (_, text, message) => {
    expect(() => readRecord(text)).toThrow(message);
  });

  it('does not take an analysis without inputs for repeated', () => {
    const blind = repeatAnalysis(recordOf([answer]), day);
    expect(blind.agrees).toBe(false);
    expect(String(blind)).toContain('The record names no logs');
  });
});

describe('a report', () => {
  it('writes the record beside the page, and names its hash', async () => {
    const one = report(answer, { day });
    const path = join(folder, 'day', 'tall core.md');
    await one.write(path);
    const text = readFileSync(join(folder, 'day', 'tall core.record.json'), 'utf8');
    expect(text).toBe(recordText(one.record));
    expect(readFileSync(path, 'utf8')).toContain(createHash('sha256').update(text).digest('hex'));
    expect(repeatAnalysis(readRecord(text), day).agrees).toBe(true);
  });

  it('says plainly where it cannot be written', async () => {
    const file = join(folder, 'a file.md');
    const one = report(answer);
    await one.write(file);
    await expect(one.write(join(file, 'below.md'))).rejects.toThrow(
      /report: path must be a file that can be written, got .*below\.md, where a file stands in the place of a folder\. Give another file or folder\./,
    );
    await expect(one.write(folder)).rejects.toThrow(
      /path must be a file that can be written, got .*, which is a folder/,
    );
  });

  it('names the options that each comparison was made with', () => {
    const free = compare(day.setup('stock core'), day.setup('tall core'));
    expect(recordOf([free], { day }).comparisons[0]!.optionsGiven).toEqual([]);
    expect(repeatAnalysis(recordOf([free], { day }), day).findings).toEqual([]);
  });
});

describe('a column that numbers the pulls of a file, told by a channel map', () => {
  const logOf = (torque: number, seed: number): string =>
    scattered(3, torque, 0.8, seed)
      .map((shape, n) => {
        const [head, ...rows] = pullLog(shape).split('\n');
        return [...(n === 0 ? [`${head!},Try`] : []), ...rows.map((row) => `${row},${n + 1}`)].join('\n');
      })
      .join('\n');
  const files = [
    { path: 'stock core/day.csv', data: logOf(240, 1) },
    { path: 'tall core/day.csv', data: logOf(252, 2) },
  ];
  const told = readPullsFrom(files, { channels: { pull: channel('Try') } });
  const record = recordOf([compare(told.setup('stock core'), told.setup('tall core'), { engineSpeed: [3500, 6000] })], {
    day: told,
  });

  it('is in the record, and the analysis is done again by it', () => {
    expect(told.pulls).toHaveLength(6);
    expect(record.readings[0]!.columns.find(({ role }) => role === 'pull')).toMatchObject({
      header: 'Try',
      how: 'map',
    });
    const again = repeatAnalysis(record, readPullsFrom(files, readingOptionsOf(readRecord(recordText(record)))));
    expect(String(again)).toContain('The analysis repeats');
    expect(again.agrees).toBe(true);
  });
});
