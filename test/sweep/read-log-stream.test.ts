import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { rotationalAcceleration } from 'coldside/units';
import {
  LogError,
  readLog,
  readLogStream,
  readPulls,
  type LogPieces,
  type Pull,
  type ReadingProgress,
  type ReadLogStreamOptions,
} from 'coldside/sweep';
import { logText } from './made-pulls.js';

async function streamed(source: LogPieces, options: ReadLogStreamOptions = {}): Promise<Pull[]> {
  const pulls: Pull[] = [];
  for await (const pull of readLogStream(source, options)) pulls.push(pull);
  return pulls;
}

/** A text cut into pieces of some length. */
function pieces(text: string | Uint8Array, length: number): (string | Uint8Array)[] {
  return Array.from({ length: Math.ceil(text.length / length) }, (_, i) =>
    typeof text === 'string' ? text.slice(i * length, (i + 1) * length) : text.subarray(i * length, (i + 1) * length),
  );
}

const numbered = (pulls: number, rows = 40): string =>
  logText(
    {
      Pull: (_, row) => Math.floor(row / rows) + 1,
      'Engine speed (rpm)': (_, row) => 2500 + 100 * (row % rows),
      'Charge temp (°C)': (t) => 30 + (t % 7),
      'Torque (Nm)': (_, row) => (row % 11 === 3 ? '' : 200 + (row % rows)),
    },
    { rows: pulls * rows },
  );

/** Idling 10 s, a pull of 11 s, coasting down for 8 s, and again. */
const recording = (times: number, step = 0.1): string =>
  logText(
    {
      'Engine speed (rpm)': (t) => {
        const at = t % 29;
        return at < 10 ? 900 + 15 * Math.sin(3 * t) : at < 21 ? 2500 + 381 * (at - 10) : 6690 - 720 * (at - 21);
      },
      'Boost (kPa)': (t) => (t % 29 >= 10 && t % 29 < 21 ? 110 + Math.sin(9 * t) : -40),
    },
    { rows: Math.round((29 * times) / step), step },
  );

describe('a log read as a stream', () => {
  it('gives what it gives when read whole, however it is cut into pieces', async () => {
    const text = numbered(5);
    const whole = readLog(text, { file: 'day.csv' });
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 4000 }), fc.boolean(), async (length, asBytes) => {
        const pulls = await streamed(pieces(asBytes ? new TextEncoder().encode(text) : text, length), {
          file: 'day.csv',
        });
        expect(pulls.map(({ name, rows, lines, blankCells }) => ({ name, rows, lines, blankCells }))).toEqual(
          whole.map(({ name, rows, lines, blankCells }) => ({ name, rows, lines, blankCells })),
        );
        pulls.forEach((pull, i) => {
          for (const [role, column] of Object.entries(pull.channels)) {
            expect(column.si).toEqual(whole[i]!.channels[role as 'torque']!.si);
            expect(column.unit).toBe(whole[i]!.channels[role as 'torque']!.unit);
          }
        });
      }),
      { numRuns: 20 },
    );
  });

  it('hands a pull on before the rest has come, and keeps only what it needs', async () => {
    let taken = 0;
    function* slowly(): Generator<string> {
      // Longer than what is read at a time, many times over.
      const text = numbered(3, 30_000);
      for (const piece of pieces(text, 500_000)) {
        taken++;
        yield piece as string;
      }
    }
    const stream = readLogStream(slowly());
    const first = await stream.next();
    expect((first.value as Pull).rows).toBe(30_000);
    expect(taken).toBeLessThan(pieces(numbered(3, 30_000), 500_000).length);
    await stream.return();
  });

  it('finds the pulls of a recording that numbers none', async () => {
    const pulls = await streamed(pieces(recording(4), 3000), { file: 'day.csv' });
    expect(pulls.map(({ name }) => name)).toEqual([
      'day.csv, pull 1',
      'day.csv, pull 2',
      'day.csv, pull 3',
      'day.csv, pull 4',
    ]);
    for (const { channels, rows } of pulls) {
      const speeds = channels.engineSpeed!.in('rpm');
      expect(rows).toBeGreaterThan(105);
      expect(rows).toBeLessThan(115);
      expect(speeds[0]).toBeLessThan(2700);
      expect(speeds[rows - 1]).toBeGreaterThan(6600);
    }
    expect(pulls[1]!.channels.time!.in('s')[0]).toBeGreaterThan(38);
  });

  it('finds only what rises enough, fast enough', async () => {
    expect(await streamed([recording(2)], { findPulls: { rise: 7000 } })).toEqual([]);
    const slow = logText({ 'Engine speed (rpm)': (t) => 1000 + 10 * t }, { rows: 3000, step: 0.1 });
    expect(await streamed([slow])).toEqual([]);
    expect(await streamed([slow], { findPulls: { slowest: rotationalAcceleration(5, 'rpm/s') } })).toHaveLength(1);
    const unfinished = logText({ 'Engine speed (rpm)': (t) => 1500 + 300 * t }, { rows: 100 });
    expect(await streamed([unfinished])).toHaveLength(1);
  });

  it('tells its progress, of all where that is known', async () => {
    const told: ReadingProgress[] = [];
    const text = numbered(6, 60_000);
    await streamed(pieces(text, 300_000), { totalBytes: text.length, onProgress: (progress) => told.push(progress) });
    expect(told.length).toBeGreaterThan(2);
    expect(told.at(-1)).toEqual({
      file: 'the log',
      bytes: text.length,
      totalBytes: text.length,
      rows: 360_000,
      pulls: 6,
    });
    for (let i = 1; i < told.length; i++) {
      expect(told[i]!.bytes).toBeGreaterThanOrEqual(told[i - 1]!.bytes);
      expect(told[i]!.rows).toBeGreaterThanOrEqual(told[i - 1]!.rows!);
    }
  });

  it('understands byte-order marks, Windows text, line ends cut in two, units in a row of their own, decimal commas', async () => {
    const rows = Array.from({ length: 30 }, (_, i) => `${i}`.replace('.', ',')).map(
      (i) => `1;${2500 + 100 * Number(i)};${i},5`,
    );
    const text = `Pull;RPM;Charge temp\r\n;1/min;°C\r\n${rows.join('\r\n')}\r\n`;
    const utf16 = new Uint8Array(2 + 2 * text.length);
    utf16.set([0xff, 0xfe]);
    [...text].forEach((letter, i) => utf16.set([letter.charCodeAt(0) & 0xff, letter.charCodeAt(0) >> 8], 2 + 2 * i));
    const windows = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    const utf8 = new TextEncoder().encode(`\uFEFF${text}`);
    for (const [bytes, encoding] of [
      [utf16, 'UTF-16LE'],
      [windows, 'Windows-1252'],
      [utf8, 'UTF-8'],
    ] as const) {
      for (const length of [1, 7, 10_000]) {
        const [pull] = await streamed(pieces(bytes, length));
        expect(pull!.channels.chargeTemperature!.in('°C')[4]).toBeCloseTo(4.5, 9);
        expect(pull!.dialect).toMatchObject({ separator: ';', decimal: ',', hasUnitsRow: true, encoding });
      }
    }
  });

  it('keeps quotation marks with a line end in them together', async () => {
    const text = `Pull,Engine speed (rpm),Note\n1,2500,"a\nb"\n1,2600,"c"\n2,2500,"d, ""e"\n2,2600,f\n`;
    for (const length of [1, 3, 50]) {
      const pulls = await streamed(pieces(text, length));
      expect(pulls.map(({ rows, lines }) => [rows, lines])).toEqual([
        [2, [2, 4]],
        [2, [5, 6]],
      ]);
    }
  });

  it('keeps them together where a part that is read at a time ends within them', async () => {
    const rows = Array.from(
      { length: 60_000 },
      (_, i) => `${1 + Math.floor(i / 30_000)},${2500 + (i % 3000)},"a note of\ntwo lines, ""and"" more"`,
    );
    const text = `Pull,Engine speed (rpm),Note\n${rows.join('\n')}\n`;
    expect(text.length).toBeGreaterThan(2.5e6);
    for (const separator of [undefined, ','] as const) {
      const pulls = await streamed(pieces(text, 100_001), { separator });
      expect(pulls.map(({ rows: count, lines }) => [count, lines])).toEqual([
        [30_000, [2, 60_000]],
        [30_000, [60_002, 120_000]],
      ]);
    }
  });

  it('counts times of day on from the first, over midnight', async () => {
    const text = `Time,Pull,RPM\n2024-05-04 23:59:58,1,2500\n2024-05-04 23:59:59,1,2600\n2024-05-05 00:00:00,1,2700\n2024-05-05 00:00:01,1,2800\n`;
    const [pull] = await streamed(pieces(text, 30));
    expect([...pull!.channels.time!.in('s')]).toEqual([0, 1, 2, 3]);
    expect(pull!.date).toBe('2024-05-04');
    expect(pull!.startClock!.in('s')).toBe(86398);
  });

  it('counts them from the first row of all parts', async () => {
    const clock = (second: number): string =>
      new Date(Date.UTC(2024, 4, 4, 9) + 1000 * second).toISOString().slice(0, 19);
    const rows = Array.from({ length: 70_000 }, (_, i) => `${clock(i)},1,${2500 + (i % 3000)},${'0'.repeat(20)}`);
    const text = `Time,Pull,RPM,Spare\n${rows.join('\n')}\n`;
    expect(text.length).toBeGreaterThan(2.5e6);
    const [pull] = await streamed(pieces(text, 500_000));
    expect(pull!.channels.time!.si[69_999]).toBe(69_999);
  });

  it('refuses what it cannot read by file, line and column; what came before stays good', async () => {
    const text = `${numbered(3)}4,2500,30\n`;
    const pulls: Pull[] = [];
    const failed = async (): Promise<void> => {
      for await (const pull of readLogStream(pieces(`${numbered(4, 60_000)}x,y,z\n`, 100_000), { file: 'day.csv' }))
        pulls.push(pull);
    };
    await expect(failed()).rejects.toMatchObject({
      name: 'LogError',
      code: 'ragged row',
      file: 'day.csv',
      line: 240_002,
    });
    expect(pulls.length).toBeGreaterThan(0);
    await expect(streamed([text])).rejects.toThrow(LogError);
    await expect(streamed([''])).rejects.toMatchObject({ code: 'empty' });
    await expect(streamed(['RPM,Torque (Nm)\n2500,200\n2600,210\n'])).rejects.toThrow(/no column of time/);
    await expect(streamed([numbered(2)], { longestPull: 30 })).rejects.toMatchObject({
      code: 'too large',
    });
    await expect(streamed([numbered(2), numbered(1).split('\n').slice(1).join('\n')])).rejects.toMatchObject({
      code: 'pull comes back',
    });
    await expect(
      streamed([Uint8Array.from([0x52, 0x50, 0xc2, 0xb0, 0x0a]), Uint8Array.from([0xb0, 0x0a])]),
    ).rejects.toMatchObject({ code: 'not text' });
    await expect(streamed([`Pull,RPM\n1,"${'x\n'.repeat(2_500_000)}`])).rejects.toThrow(LogError);
  });

  it('has a hash of its own readings: the same however it came, another for other readings', async () => {
    const hashes = async (text: string): Promise<string[]> =>
      (await streamed(pieces(text, 777))).map(({ hash }) => hash);
    expect(await hashes(numbered(2))).toEqual((await streamed([numbered(2)])).map(({ hash }) => hash));
    expect(new Set(await hashes(numbered(2).replace('0.05,', '0.06,'))).size).toBe(2);
    expect((await hashes(numbered(2).replace('0.05,', '0.06,')))[0]).not.toBe((await hashes(numbered(2)))[0]);
  });
});

describe('a folder of logs', () => {
  const folder = mkdtempSync(join(tmpdir(), 'logs-'));
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  it('tells its progress file by file', async () => {
    const [one, two] = ['one.csv', 'two.csv'].map((name) => join(folder, name)) as [string, string];
    for (const path of [one, two]) writeFileSync(path, numbered(1));
    const told: ReadingProgress[] = [];
    const day = await readPulls({ stock: [one, two] }, { onProgress: (progress) => told.push(progress) });
    expect(day.pulls).toHaveLength(2);
    expect(told.map(({ file, bytes }) => [file, bytes])).toEqual(
      [one, two].map((path) => [path, new TextEncoder().encode(numbered(1)).length]),
    );
  });

  it('streams a log of more than 100 MB', async () => {
    const path = join(folder, 'long.csv');
    // Blank columns make it long without making it slow.
    const wide = numbered(2, 60_000)
      .split('\n')
      .map((line, i) => (line === '' ? '' : `${line},${i === 0 ? 'Note' : ' '.repeat(900)}`))
      .join('\n');
    writeFileSync(path, wide);
    const told: ReadingProgress[] = [];
    const day = await readPulls({ stock: [path] }, { onProgress: (progress) => told.push(progress) });
    expect(wide.length).toBeGreaterThan(1e8);
    expect(day.notRead).toEqual([]);
    expect(day.pulls.map(({ name, rows, setup }) => [name, rows, setup])).toEqual([
      ['long.csv, pull 1', 60_000, 'stock'],
      ['long.csv, pull 2', 60_000, 'stock'],
    ]);
    expect(told.length).toBeGreaterThan(10);
  }, 120_000);
});
