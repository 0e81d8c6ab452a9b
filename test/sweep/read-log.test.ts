import { describe, expect, it } from 'vitest';
import { channel, readLog, type Pull } from 'coldside/sweep';
import { isColumn } from 'coldside/units';

const only = (pulls: readonly Pull[]): Pull => {
  expect(pulls).toHaveLength(1);
  return pulls[0]!;
};
const plain = 'Time (s),Engine speed (rpm),Torque (N m)\n0,2500,150.5\n0.1,2550,151\n';

describe('a log', () => {
  it('becomes one pull with typed columns', () => {
    const pull = only(readLog(plain, { file: 'stock core/pull 1.csv', setup: 'stock core' }));
    expect(pull.name).toBe('pull 1.csv');
    expect(pull.file).toBe('stock core/pull 1.csv');
    expect(pull.setup).toBe('stock core');
    expect(pull.rows).toBe(2);
    expect(pull.lines).toEqual([2, 3]);
    expect([...pull.channels.engineSpeed!.in('rpm')]).toEqual([2500, 2550]);
    expect(pull.channels.torque!.kind).toBe('torque');
    expect([...pull.channels.torque!.in('N·m')]).toEqual([150.5, 151]);
    expect(pull.channels.boost).toBeUndefined();
    expect(pull.sources.torque).toEqual({
      role: 'torque',
      header: 'Torque (N m)',
      column: 3,
      kind: 'torque',
      unit: 'N·m',
      how: 'guess',
      unitFrom: 'header',
      correction: undefined,
    });
  });

  it('is converted by the unit in its header', () => {
    // 113.6 lb·ft × 1.3558179483314004 N·m, the foot and pound-force of NIST SP 811 appendix B.8.
    const { channels } = only(readLog('RPM,Torque (lb-ft),Boost (psi),IAT (F)\n2500,113.6,5.67,75.2\n'));
    expect(channels.torque!.si[0]).toBeCloseTo(154.0209, 4);
    // 5.67 psi × 6894.757 Pa (NIST SP 811 appendix B.8).
    expect(channels.boost!.in('kPa')[0]).toBeCloseTo(39.0933, 4);
    expect(channels.boost!.kind).toBe('gauge pressure');
    expect(channels.chargeTemperature!.in('°C')[0]).toBeCloseTo(24, 9);
    expect(channels.engineSpeed!.in('rpm')[0]).toBe(2500);
  });

  it.each([
    ['commas', plain],
    ['semicolons', plain.replaceAll(',', ';')],
    ['tabs', plain.replaceAll(',', '\t')],
    ['semicolons and decimal commas', plain.replaceAll(',', ';').replaceAll('.', ',')],
    ['tabs and decimal commas', plain.replaceAll(',', '\t').replaceAll('.', ',')],
    ['Windows line ends', plain.replaceAll('\n', '\r\n')],
    ['old Macintosh line ends', plain.replaceAll('\n', '\r')],
    ['a byte-order mark', `\uFEFF${plain}`],
    ['no last line end', plain.trimEnd()],
    ['empty lines at its end', `${plain}\n\n  \n,,\n`],
    ['empty lines between', plain.replaceAll('\n', '\n\n')],
    ['quoted cells', plain.replaceAll(/[^,\n]+/g, '"$&"')],
    ['spaces around quoted cells', plain.replaceAll(/[^,\n]+/g, ' "$&" ')],
    ['spaces around cells', plain.replaceAll(',', ' , ')],
    ['a line that names its separator', `sep=;\n${plain.replaceAll(',', ';')}`],
    ['a bar, which only such a line can name', `sep=|\r\n${plain.replaceAll(',', '|')}`],
    ['a separator at the end of every line', plain.replaceAll('\n', ',\n')],
    ['a separator at the end of the rows only', plain.replaceAll(/\n(?=.)/g, ',\n').replace(',\n', '\n')],
    ['comment lines', `# dynamometer, room 2; calm\n${plain.replace('\n0.1', '\n# gear 4\n0.1')}`],
    ['a row of units', 'Time,Engine speed,Torque\ns,rpm,N m\n0,2500,150.5\n0.1,2550,151\n'],
    ['a row of units in brackets', 'Time,Engine speed,Torque\n[s],[rpm],[Nm]\n0,2500,150.5\n0.1,2550,151\n'],
    ['commas before the units', '"Time, s";"Engine speed, rpm";"Torque, Nm"\n0;2500;150.5\n0.1;2550;151\n'],
    ['names of variables', 'time_s,engine_speed_rpm,torque_Nm\n0,2500,150.5\n0.1,2550,151\n'],
    ['bare units', 'Time s,Engine speed rpm,Torque N m\n0,2500,150.5\n0.1,2550,151\n'],
  ])('with %s holds the same numbers', (_, text) => {
    const { channels } = only(readLog(text));
    expect([...channels.time!.in('s')]).toEqual([0, 0.1]);
    expect([...channels.engineSpeed!.in('rpm')]).toEqual([2500, 2550]);
    expect([...channels.torque!.in('N·m')]).toEqual([150.5, 151]);
  });

  it.each([
    ['UTF-8', new TextEncoder().encode(plain), 'UTF-8'],
    ['UTF-8 with its mark', new TextEncoder().encode(`\uFEFF${plain}`), 'UTF-8'],
    ['UTF-16 little-endian', Buffer.from(`\uFEFF${plain}`, 'utf16le'), 'UTF-16LE'],
    ['UTF-16 big-endian', Buffer.from(`\uFEFF${plain}`, 'utf16le').swap16(), 'UTF-16BE'],
    ['a degree sign of Windows', Buffer.from('RPM,IAT (\u00b0C)\n2500,30\n', 'latin1'), 'Windows-1252'],
  ])('in %s is decoded', (_, data, encoding) => {
    const pull = only(readLog(data));
    expect(pull.dialect.encoding).toBe(encoding);
    expect(pull.channels.engineSpeed!.in('rpm')[0]).toBe(2500);
    if (pull.channels.chargeTemperature) expect(pull.channels.chargeTemperature.in('°C')[0]).toBeCloseTo(30, 9);
  });

  it('keeps blank cells as missing and counts them, and those without engine speed apart', () => {
    const pull = only(readLog('RPM,Torque (Nm),Lambda\n2500,,0.82\n,150,NaN\n2600, ,0.83\n'));
    expect(pull.channels.torque!.missing).toBe(2);
    expect(pull.channels.lambda!.missing).toBe(1);
    expect(pull.rowsWithoutEngineSpeed).toBe(1);
    expect(pull.blankCells).toBe(4);
    expect(pull.rows).toBe(3);
    expect(String(pull)).toContain('3 rows, 2500 to 2600 rpm, 4 blank cells, 1 without engine speed');
  });

  it('reads thousands parted by commas only where the point was told to be the decimal sign', () => {
    const text = 'RPM,Torque (Nm)\n"2,500",150.5\n';
    expect(only(readLog(text, { decimal: '.' })).channels.engineSpeed!.in('rpm')[0]).toBe(2500);
    expect(() => readLog(text)).toThrow(/decimal: ','/);
  });

  it('reads decimal commas between commas where they are quoted and told', () => {
    const { channels } = only(readLog('RPM,Torque (Nm)\n"2500","150,5"\n', { decimal: ',' }));
    expect(channels.torque!.in('N·m')[0]).toBe(150.5);
  });

  it('takes a header from further down where the line is told', () => {
    const text = `Log of the day\nDriver: none\n\n${plain}`;
    expect(() => readLog(text)).toThrow(/headerLine/);
    const pull = only(readLog(text, { headerLine: 4 }));
    expect(pull.channels.torque!.length).toBe(2);
    expect(pull.lines).toEqual([5, 6]);
  });

  it('counts lines through quoted line ends', () => {
    const pull = only(readLog('RPM,"Torque\n(Nm)"\n2500,150\n'));
    expect(pull.sources.torque!.header).toBe('Torque (Nm)');
    expect(pull.lines).toEqual([3, 3]);
  });

  it('reads times of day, with and without a date', () => {
    const clock = only(readLog('Clock,RPM\n09:12:00.5,2500\n09:12:01,2550\n'));
    expect([...clock.channels.clock!.in('s')]).toEqual([33120.5, 33121]);
    expect(clock.startClock!.in('s')).toBe(33120.5);
    expect(clock.date).toBeUndefined();
    const dated = only(readLog('Timestamp;RPM\n2024-05-04 23:59:59;2500\n2024-05-05 00:00:01;2550\n'));
    expect([...dated.channels.clock!.in('s')]).toEqual([86399, 86401]);
    expect(dated.date).toBe('2024-05-04');
  });

  it('takes a time column of times of day for both time and clock', () => {
    const { channels } = only(readLog('Time,RPM\n09:12:00,2500\n09:12:02,2550\n'));
    expect([...channels.time!.in('s')]).toEqual([0, 2]);
    expect([...channels.clock!.in('s')]).toEqual([33120, 33122]);
  });

  it('holds several pulls where a column numbers them', () => {
    const pulls = readLog('pull,RPM,Torque (Nm)\n1,2500,150\n1,2600,151\n2,2510,149\n,900,5\n10,2490,148\n', {
      file: 'a/day.csv',
    });
    expect(pulls.map(({ name }) => name)).toEqual(['day.csv, pull 1', 'day.csv, pull 2', 'day.csv, pull 10']);
    expect(pulls.map(({ rows }) => rows)).toEqual([2, 1, 1]);
    expect(pulls.map(({ lines }) => lines)).toEqual([
      [2, 3],
      [4, 4],
      [6, 6],
    ]);
    expect([...pulls[1]!.channels.torque!.in('N·m')]).toEqual([149]);
    expect(pulls[0]!.questions.map(({ message }) => message)).toEqual([
      '1 row without a number in "pull" belongs to no pull.',
    ]);
  });

  it('is one pull where the map says that no column numbers pulls, and follows another column where it says so', () => {
    const text = 'pull,gear,RPM\n1,3,2500\n2,4,2600\n2,4,2700\n';
    expect(readLog(text, { channels: { pull: false } })).toHaveLength(1);
    expect(readLog(text, { channels: { pull: channel('gear') } }).map(({ label }) => label)).toEqual(['3', '4']);
  });

  it('carries the SHA-256 of its file', () => {
    // printf 'RPM,Lambda\n2500,0.82\n' | sha256sum (GNU coreutils)
    expect(only(readLog('RPM,Lambda\n2500,0.82\n')).hash).toBe(
      '5859fb2f59e7b789f92fbf7273b6ae97ee68dc326af25e0bdf329c3ecc523ca2',
    );
  });

  it('survives structuredClone as data, and is frozen', () => {
    const pull = only(readLog(plain, { file: 'a.csv' }));
    const clone = structuredClone(pull);
    expect(isColumn(clone.channels.torque)).toBe(true);
    expect(clone.channels.torque!.si).toEqual(pull.channels.torque!.si);
    expect(clone.sources).toEqual(pull.sources);
    expect(Object.isFrozen(pull)).toBe(true);
    expect(Object.isFrozen(pull.channels)).toBe(true);
  });

  it('shows itself in words', () => {
    expect(String(only(readLog(plain, { file: 'stock core/pull 1.csv' })))).toBe(
      'stock core/pull 1.csv: 2 rows, 2500 to 2550 rpm\n' +
        '  time "Time (s)", engine speed "Engine speed (rpm)", torque "Torque (N m)"',
    );
  });
});
