import { mkdirSync, mkdtempSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { inspect } from 'node:util';
import { afterEach, describe, expect, it } from 'vitest';
import { channel, LogError, readPulls, readPullsFrom, type LogFile, type ReadPullsOptions } from 'coldside/sweep';

const rows = (cells: (at: number) => string, count = 8): string =>
  Array.from({ length: count }, (_, at) => `${cells(at)}\n`).join('');

const stock = `RPM,Torque (lb-ft),Boost (psi),IAT (F)\n${rows((at) => `${2500 + 500 * at},140,15,${70 + 5 * at}`)}`;
const tall = `RPM;Torque [Nm];MAP [kPa];Charge temp [°C]\n${rows((at) => `${2500 + 500 * at};190,5;204,1;3${at},0`)}`;
const duct = (boost: number) => `RPM,Torque (Nm),Boost\n${rows((at) => `${2500 + 500 * at},195,${boost}`)}`;

/** The day of the first-hour story: one set-up in US units, one with decimal commas, one whose boost has no unit. */
const story: LogFile[] = [
  ...[1, 2, 3, 4].map((at) => ({ path: `stock core/pull ${at}.csv`, data: stock })),
  ...[1, 2, 3, 4, 5].map((at) => ({ path: `tall core/pull ${at}.csv`, data: tall })),
  { path: 'tall core + duct/pull 1.csv', data: duct(109) },
  { path: 'tall core + duct/pull 2.csv', data: duct(110) },
  { path: 'tall core + duct/pull 3.csv', data: duct(111) },
];

const errorOf = (run: () => unknown): LogError => {
  try {
    run();
  } catch (error) {
    if (error instanceof LogError) return error;
    throw error;
  }
  throw new Error('There was none.');
};

describe('a day of logs', () => {
  it('says what was read and as what, and tells a cause in several files once', () => {
    expect(String(readPullsFrom(story))).toBe(
      [
        '9 pulls read in 3 set-ups, 3 not read',
        '  stock core: 4 pulls  torque "Torque (lb-ft)", boost "Boost (psi)" as gauge pressure, charge temperature "IAT (F)", and',
        '      1 more',
        '  tall core: 5 pulls   decimal comma; torque "Torque [Nm]", manifold pressure "MAP [kPa]" as absolute pressure, charge',
        '      temperature "Charge temp [°C]", and 1 more',
        '  The order through the day is not known: no log has a clock. Pulls stand in the order of their names.',
        '  NOT READ 3 files of tall core + duct: column "Boost" has no unit. Its values run from 109 to 111.',
        "           Say what they are, for example boost: channel('Boost', 'gauge pressure', 'kPa').",
      ].join('\n'),
    );
  });

  it('is mended by one line for the set-up, and never stops for one broken file', () => {
    const broken = story.map((file) =>
      file.path === 'tall core + duct/pull 2.csv' ? { ...file, data: `${duct(110)}9.70,5904` } : file,
    );
    const setups = { 'tall core + duct': { boost: channel('Boost', 'gauge pressure', 'kPa') } };
    const day = readPullsFrom(broken, { setups });
    expect(day.pulls).toHaveLength(11);
    expect(String(day)).toContain('11 pulls read in 3 set-ups, 1 not read');
    expect(String(day)).toContain(
      '  NOT READ tall core + duct/pull 2.csv, line 10: needed 3 values as in the header, found 2 ("9.70,5904").\n' +
        '           The logger may have stopped here; cut the file at the last whole row, or leave it out.',
    );
    expect(day.setup('tall core + duct').pulls.map(({ name }) => name)).toEqual(['pull 1.csv', 'pull 3.csv']);
    expect(day.setup('tall core + duct').notRead).toHaveLength(1);
    expect(String(day)).toContain('boost "Boost" as gauge pressure in kPa as told');
  });

  it('makes no set-up of a file beside the folders, from disk or dropped on a page', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'coldside-'));
    const files = [...story.slice(0, 2), { path: 'notes.txt', data: 'Tyres at 2.2 bar.\nColder than last week.\n' }];
    for (const { path, data } of files) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), data);
    }
    const fromDisk = await readPulls(folder);
    rmSync(folder, { recursive: true });
    expect(fromDisk.setups.map(({ name }) => name)).toEqual(['stock core']);
    expect(String(fromDisk)).toContain('2 pulls read in 1 set-up, 1 not read');
    const dropped = readPullsFrom(files.map((file) => ({ ...file, path: `logs/${file.path}` })));
    expect(dropped.setups.map(({ name }) => name)).toEqual(['stock core']);
    expect(dropped.notRead).toHaveLength(1);
  });

  it('answers a misspelt set-up with those there are', () => {
    const day = readPullsFrom(story);
    const error = errorOf(() => day.setup('Tall core'));
    expect(error.message).toBe(
      'No set-up called "Tall core". There are: "stock core", "tall core", "tall core + duct".',
    );
    expect(error.code).toBe('no such set-up');
    expect(errorOf(() => readPullsFrom(story, { setups: { 'tall cor': {} } })).code).toBe('no such set-up');
    expect(errorOf(() => day.setup('__proto__')).code).toBe('no such set-up');
  });

  it('says why a set-up has no pulls', () => {
    const error = errorOf(() => readPullsFrom(story).setup('tall core + duct'));
    expect(error.message).toMatch(
      /^None of the logs of "tall core \+ duct" could be read\. .*pull 1\.csv: column "Boost" has no unit/,
    );
  });

  it('counts the numbers in names: pull 10 after pull 2', () => {
    const names = ['pull 10.csv', 'pull 2.csv', 'Pull 1.csv', 'pull 11.csv'];
    const day = readPullsFrom(names.map((name) => ({ path: `a/${name}`, data: stock })));
    expect(day.pulls.map(({ name }) => name)).toEqual(['Pull 1.csv', 'pull 2.csv', 'pull 10.csv', 'pull 11.csv']);
    expect(day.order).toMatchObject({ from: 'names' });
  });

  describe('in order', () => {
    const clocked = (start: string): string => `Clock,RPM,Torque (Nm)\n${start},2500,150\n${start},2600,151\n`;
    const day = (clocks: Record<string, string>) =>
      readPullsFrom(Object.entries(clocks).map(([path, start]) => ({ path, data: clocked(start) })));

    it('of the clocks in the logs, through all set-ups and within each', () => {
      const read = day({ 'a/1.csv': '11:00:00', 'a/2.csv': '09:00:00', 'b/1.csv': '10:00:00' });
      expect(read.order.from).toBe('clock');
      expect(read.pulls.map(({ file }) => file)).toEqual(['a/2.csv', 'b/1.csv', 'a/1.csv']);
      expect(read.setup('a').pulls.map(({ name }) => name)).toEqual(['2.csv', '1.csv']);
      expect(String(read)).toContain('Order through the day by the clocks in the logs: a, b, a.');
    });

    it('of dates before clocks', () => {
      const read = day({ 'a/1.csv': '2024-05-05 08:00:00', 'a/2.csv': '2024-05-04 09:00:00' });
      expect(read.pulls.map(({ file }) => file)).toEqual(['a/2.csv', 'a/1.csv']);
    });

    it.each([
      ['one log has no clock', { 'a/1.csv': '11:00:00', 'a/2.csv': '' }, /only 1 of 2 pulls have a clock/],
      [
        'one log has no date',
        { 'a/1.csv': '11:00:00', 'a/2.csv': '2024-05-04 09:00:00' },
        /only 1 of 2 pulls have a date/,
      ],
      ['two clocks begin alike', { 'a/1.csv': '00:00:00', 'a/2.csv': '00:00:00' }, /begin alike/],
    ])('of names where %s, and says why', (_, clocks, why) => {
      const files = Object.entries(clocks).map(([path, start]) => ({
        path,
        data: start === '' ? stock : clocked(start),
      }));
      const { order, pulls } = readPullsFrom(files);
      expect(order.from).toBe('names');
      expect(order.words).toMatch(why);
      expect(pulls.map(({ name }) => name)).toEqual(['1.csv', '2.csv']);
    });
  });

  it('tells a question about several pulls once, with how many it is about', () => {
    const flat = `RPM,Boost (psi),IAT (F)\n${rows((at) => `${2500 + 500 * at},15,70`)}`;
    const text = String(readPullsFrom([1, 2, 3].map((at) => ({ path: `a/${at}.csv`, data: at === 3 ? stock : flat }))));
    expect(text.match(/ASK/g)).toHaveLength(1);
    expect(text).toContain('ASK a (2 of 3 pulls): "IAT (F)" was read as charge temperature, but hardly moves');
  });

  it('gives a set-up named by the caller to logs of any folder, and keeps their names apart', () => {
    const day = readPullsFrom([
      { path: 'monday/pull 1.csv', setup: 'baseline', data: stock },
      { path: 'tuesday/pull 1.csv', setup: 'baseline', data: stock },
      { path: 'pull 9.csv', data: tall },
    ]);
    expect(day.setup('baseline').pulls.map(({ name }) => name)).toEqual(['monday/pull 1.csv', 'tuesday/pull 1.csv']);
    expect(day.setup('pulls').pulls.map(({ name }) => name)).toEqual(['pull 9.csv']);
  });

  it('lets a set-up’s map go before that of all logs', () => {
    const bare = `RPM,Boost\n${rows((at) => `${2500 + 500 * at},15`)}`;
    const files = ['a/1.csv', 'b/1.csv'].map((path) => ({ path, data: bare }));
    const options: ReadPullsOptions = {
      channels: { boost: channel('Boost', 'gauge pressure', 'psi') },
      setups: { b: { boost: channel('Boost', 'gauge pressure', 'inHg') } },
    };
    expect(readPullsFrom(files, options).pulls.map(({ sources }) => sources.boost!.unit)).toEqual(['psi', 'inHg']);
  });

  it('shows itself and its set-ups in a notebook', () => {
    const day = readPullsFrom(story);
    expect(inspect(day)).toBe(String(day));
    expect(inspect(day.setup('stock core'))).toBe(String(day.setup('stock core')));
    expect(String(day.setup('stock core'))).toContain('engine speed "RPM"');
    expect(readPullsFrom([]).pulls).toEqual([]);
  });
});

describe('a folder of logs', () => {
  const made: string[] = [];
  afterEach(() => made.splice(0).forEach((path) => rmSync(path, { recursive: true, force: true })));

  function folderOf(files: Record<string, string>): string {
    const root = mkdtempSync(join(tmpdir(), 'pulls-'));
    made.push(root);
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), text);
    }
    return root;
  }

  it('is read set-up by set-up, and files of other kinds are left alone', async () => {
    const folder = folderOf({
      'README.md': 'what this is',
      'make.ts': 'export {}',
      'stock core/pull 2.csv': stock,
      'stock core/pull 10.CSV': stock,
      'stock core/notes.md': 'windy',
      'stock core/.hidden.csv': 'no log',
      'stock core/~lock.csv': 'no log',
      'tall core/pull 1.txt': tall,
      'empty/notes.md': 'nothing yet',
    });
    const day = await readPulls(folder);
    expect(day.pulls.map(({ file }) => file)).toEqual([
      'stock core/pull 2.csv',
      'stock core/pull 10.CSV',
      'tall core/pull 1.txt',
    ]);
    expect(day.notRead).toEqual([]);
    expect(day.setups.map(({ name }) => name)).toEqual(['stock core', 'tall core']);
  });

  it('is never ordered by the dates of its files', async () => {
    const folder = folderOf({ 'a/1.csv': stock, 'a/2.csv': stock });
    utimesSync(join(folder, 'a/1.csv'), new Date(2024, 5, 1), new Date(2024, 5, 1));
    utimesSync(join(folder, 'a/2.csv'), new Date(2020, 5, 1), new Date(2020, 5, 1));
    expect((await readPulls(folder)).pulls.map(({ name }) => name)).toEqual(['1.csv', '2.csv']);
  });

  it('of logs only is one set-up, named as the folder', async () => {
    const folder = folderOf({ 'logs/1.csv': stock, 'logs/2.csv': stock });
    const day = await readPulls(join(folder, 'logs'));
    expect(day.setups.map(({ name, pulls }) => `${name}: ${pulls.length}`)).toEqual(['logs: 2']);
  });

  it('with logs where they belong to no set-up says so', async () => {
    const folder = folderOf({ 'a/1.csv': stock, 'loose.csv': stock, 'a/deeper/2.csv': stock, 'a/pictures/x.png': '' });
    const day = await readPulls(folder);
    expect(day.pulls).toHaveLength(1);
    expect(day.notRead.map(({ file, error }) => `${file}: ${error.code}`).sort()).toEqual([
      'a/deeper: misplaced',
      'loose.csv: misplaced',
    ]);
  });

  it('with a file that cannot be read goes on with the others', async () => {
    const folder = folderOf({ 'a/1.csv': stock });
    symlinkSync(join(folder, 'nowhere.csv'), join(folder, 'a/2.csv'));
    const day = await readPulls(folder);
    expect(day.pulls).toHaveLength(1);
    expect(day.notRead).toMatchObject([{ file: 'a/2.csv', error: { code: 'unreadable', found: 'nothing there' } }]);
  });

  it('that is not there, is a file or holds no log says what is needed', async () => {
    const folder = folderOf({ 'a/notes.md': '', 'b.csv': stock });
    for (const path of [join(folder, 'nowhere'), join(folder, 'b.csv'), join(folder, 'a')]) {
      await expect(readPulls(path)).rejects.toThrow(/one sub-folder for each set-up/);
      await expect(readPulls(path)).rejects.toMatchObject({ code: 'no logs', file: path });
    }
  });

  it('may be a list of files, or lists by set-up', async () => {
    const folder = folderOf({ 'stock core/1.csv': stock, 'tall core/1.csv': tall, 'tall core/2.csv': tall });
    const [a, b, c] = ['stock core/1.csv', 'tall core/1.csv', 'tall core/2.csv'].map((path) => join(folder, path)) as [
      string,
      string,
      string,
    ];
    const listed = await readPulls([a, c]);
    expect(listed.setups.map(({ name, pulls }) => `${name}: ${pulls.length}`)).toEqual([
      'stock core: 1',
      'tall core: 1',
    ]);
    const named = await readPulls({ baseline: [a], candidate: [b, c] });
    expect(named.setup('candidate').pulls.map(({ name }) => name)).toEqual(['1.csv', '2.csv']);
    expect(named.setup('baseline').pulls[0]!.file).toBe(a);
    await expect(readPulls([])).rejects.toMatchObject({ code: 'no logs' });
    expect((await readPulls([a, join(folder, 'no.csv')])).notRead).toHaveLength(1);
  });
});
