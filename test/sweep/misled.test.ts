import { describe, expect, it } from 'vitest';
import { channel, LogError, readLog, readPullsFrom, type LogFile, type Pull } from 'coldside/sweep';

/** A pull from 2500 to 6500 rpm in 21 rows, with other columns as functions of how far it has come. */
function log(columns: Record<string, (share: number) => number | string>, separator = ','): string {
  const names = Object.keys(columns);
  const rows = Array.from({ length: 21 }, (_, at) => {
    const cells = names.map((name) => columns[name]!(at / 20));
    return [2500 + 200 * at, ...cells].join(separator);
  });
  return `${['Engine speed (rpm)', ...names].join(separator)}\n${rows.join('\n')}\n`;
}

const one = (text: string, options = {}): Pull => readLog(text, options)[0]!;
const rising = (from: number, to: number) => (share: number) => (from + (to - from) * share).toFixed(3);

describe('a tuner is not misled', () => {
  it('by a unit that is not known: it is an error, never a factor of 1', () => {
    expect(() => one(log({ 'Torque (foot-pounds)': () => 150 }))).toThrow(LogError);
    expect(() => one(log({ 'Torque (foot-pounds)': () => 150 }))).toThrow(
      /"foot-pounds" is not a unit of torque; those are 'N·m' \| 'lb·ft'/,
    );
  });

  it('by a column without a unit: its range is shown, and the line to write', () => {
    const text = log({ Boost: rising(109, 111) });
    expect(() => one(text)).toThrow(
      `the log: column "Boost" has no unit. Its values run from 109 to 111. Say what they are, for example boost: channel('Boost', 'gauge pressure', 'kPa').`,
    );
    expect(
      one(text, { channels: { boost: channel('Boost', 'gauge pressure', 'kPa') } }).channels.boost!.in('kPa')[0],
    ).toBeCloseTo(109, 9);
  });

  it('one unit at a time: all columns without one are told together', () => {
    expect(() => one(log({ Torque: () => 150, Boost: () => 1, IAT: () => 30 }))).toThrow(
      /column "Torque" has no unit.*The same goes for "Boost", "IAT"\..*torque: channel\('Torque', 'torque', 'N·m'\)/,
    );
  });

  it('by a channel map that contradicts a written unit: the error names both', () => {
    const text = log({ 'Boost (psi)': rising(5, 16) });
    expect(() => one(text, { channels: { boost: channel('Boost', 'gauge pressure', 'kPa') } })).toThrow(
      /"Boost \(psi\)" says psi in the log, and the channel map says gauge pressure in kPa/,
    );
    expect(() => one(log({ 'Boost (psia)': rising(20, 30) }), { channels: { boost: channel('Boost') } })).toThrow(
      /says psi absolute in the log, and the channel map says gauge pressure/,
    );
    expect(() =>
      one(log({ 'Boost (psi)': rising(5, 16) }), { channels: { torque: channel('Boost', 'torque', 'N·m') } }),
    ).toThrow(/says psi in the log, and the channel map says torque in N·m/);
  });

  it('by "Boost" and "MAP": gauge and absolute are printed', () => {
    const text = String(one(log({ 'Boost (kPa)': rising(40, 110), 'MAP (kPa)': rising(134, 204) })));
    expect(text).toContain('boost "Boost (kPa)" as gauge pressure');
    expect(text).toContain('manifold pressure "MAP (kPa)" as absolute pressure');
  });

  it('by an absolute pressure called boost in a log that was begun on throttle: by its height, or by the air behind the compressor', () => {
    const asks = (columns: Record<string, (share: number) => number | string>): string =>
      one(log(columns))
        .questions.map(({ message }) => message)
        .join(' ');
    expect(asks({ 'Boost (bar)': rising(1.33, 2.05), 'Barometer (hPa)': () => 941 })).toContain(
      '"Boost (bar)" was read as gauge pressure, but it never falls below the air around and rises to 2.05 bar, which is much for a gauge pressure: it may be absolute.',
    );
    const room = { 'Barometer (hPa)': () => 941, 'Room temp (C)': () => 18 };
    // At 1.7 bar absolute and an efficiency of 0.7: 291.15 (1 + ((1.7/0.941)^(2/7) - 1)/0.7) = 367.8 K; gauge without loss 391.7 K.
    expect(asks({ ...room, 'Boost (bar)': rising(1.33, 1.7), 'Compressor outlet temp (C)': rising(60, 94.6) })).toMatch(
      /air compressed so far would leave the compressor at 11\d °C at least, and it read 9\d °C: it may be absolute/,
    );
    // Real gauge pressures are not asked about: 1.33 to 1.7 bar at an efficiency of 0.7, or without that temperature.
    expect(asks({ ...room, 'Boost (bar)': rising(1.33, 1.7), 'Compressor outlet temp (C)': rising(140, 167) })).toBe(
      '',
    );
    expect(asks({ ...room, 'Boost (bar)': rising(1.33, 1.7) })).toBe('');
    expect(asks({ ...room, 'Boost (bar gauge)': rising(1.33, 2.05) })).toBe('');
  });

  it('by two set-ups whose boost lies about one barometer apart: the higher is asked about', () => {
    const file = (setup: string, header: string, from: number, to: number): LogFile => ({
      path: `${setup}/pull 1.csv`,
      setup,
      data: log({ [header]: rising(from, to), 'Barometer (hPa)': () => 941 }),
    });
    const day = readPullsFrom([file('gauge', 'Boost (bar)', 0.6, 0.8), file('vacuum', 'Boost (bar)', 1.5, 1.72)]);
    expect(day.setup('gauge').pulls[0]!.questions).toEqual([]);
    expect(day.setup('vacuum').pulls[0]!.questions[0]!.message).toBe(
      '"Boost (bar)" was read as gauge pressure, but its middle reading is 1.61 bar and that of "gauge" 0.7 bar, about one atmosphere less: it may be absolute.',
    );
    const told = readPullsFrom([file('gauge', 'Boost (bar)', 0.6, 0.8), file('high', 'Boost (bar gauge)', 1.5, 1.72)]);
    expect(told.pulls.flatMap(({ questions }) => questions)).toEqual([]);
    const more = readPullsFrom([file('gauge', 'Boost (bar)', 0.6, 0.8), file('more', 'Boost (bar)', 0.9, 1.1)]);
    expect(more.pulls.flatMap(({ questions }) => questions)).toEqual([]);
  });

  it('by a manifold pressure below vacuum: it asks whether it is boost', () => {
    expect(() => one(log({ 'MAP (psi)': rising(-3.2, 15) }))).toThrow(
      /line 2: column "MAP \(psi\)" holds −3\.2 psi, which is below vacuum, so it is no absolute pressure\. .* boost: channel\('MAP \(psi\)', 'gauge pressure', 'psi'\)/,
    );
    expect(
      one(log({ 'MAP (psi)': rising(-3.2, 15) }), {
        channels: { boost: channel('MAP', 'gauge pressure') },
      }).channels.boost!.in('psi')[0],
    ).toBeCloseTo(-3.2, 9);
  });

  it('by a "boost" near 1 bar before load: it asks whether it is absolute', () => {
    const pull = one(log({ 'Boost (bar)': rising(0.96, 2.05) }));
    expect(pull.questions).toMatchObject([{ code: 'gauge or absolute', role: 'boost' }]);
    expect(pull.questions[0]!.message).toContain('it begins at 0.96 bar, which is the air around, and rises');
    expect(pull.questions[0]!.mend).toContain("manifoldPressure: channel('Boost (bar)', 'absolute pressure')");
    expect(String(pull)).toContain('ASK "Boost (bar)" was read as gauge pressure');
    // A pull that begins on boost is no such thing, nor is one whose header or map says gauge.
    expect(one(log({ 'Boost (bar)': rising(0.4, 1.1) })).questions).toEqual([]);
    expect(one(log({ 'Boost (bar g)': rising(0.96, 2.05) })).questions).toEqual([]);
    expect(
      one(log({ 'Boost (bar)': rising(0.96, 2.05) }), { channels: { boost: channel('Boost', 'gauge pressure') } })
        .questions,
    ).toEqual([]);
  });

  it('by a "boost" that equals the manifold pressure', () => {
    const pull = one(log({ 'Boost (kPa)': rising(150, 205), 'MAP (kPa)': rising(150.5, 204) }));
    expect(pull.questions[0]!.message).toContain('it equals the manifold pressure');
  });

  it('by a "MAP" that never reaches the barometer: it asks whether it is gauge', () => {
    const pull = one(log({ 'MAP (psi)': rising(5.7, 15.5), 'Barometer (hPa)': () => 942 }));
    expect(pull.questions).toMatchObject([{ code: 'gauge or absolute', role: 'manifoldPressure' }]);
    expect(one(log({ 'MAP (kPa)': rising(134, 204), 'Barometer (hPa)': () => 942 })).questions).toEqual([]);
  });

  it('by an "IAT" that does not rise with boost: it asks where it sits', () => {
    const boost = { 'Boost (bar)': rising(0.4, 1.1) };
    const pull = one(log({ ...boost, 'IAT (C)': () => 21 }));
    expect(pull.questions).toMatchObject([{ code: 'before or after the compressor', role: 'chargeTemperature' }]);
    expect(pull.questions[0]!.message).toBe(
      '"IAT (C)" was read as charge temperature, but hardly moves while the engine is on boost: it may sit before the compressor.',
    );
    expect(one(log({ ...boost, 'IAT (C)': rising(24, 40) })).questions).toEqual([]);
    expect(
      one(log({ ...boost, 'IAT (C)': () => 21 }), { channels: { chargeTemperature: channel('IAT') } }).questions,
    ).toEqual([]);
    expect(one(log({ ...boost, 'Charge temp (C)': () => 21 })).questions).toEqual([]);
    expect(one(log({ 'Boost (bar)': rising(0, 0.1), 'IAT (C)': () => 21 })).questions).toEqual([]);
  });

  it('by an air-fuel ratio under the name of lambda, or the other way round', () => {
    expect(one(log({ Lambda: () => 11.9 })).questions).toMatchObject([
      { code: 'lambda or air-fuel ratio', role: 'lambda' },
    ]);
    expect(one(log({ AFR: () => 0.82 })).questions).toMatchObject([
      { code: 'lambda or air-fuel ratio', role: 'airFuelRatio' },
    ]);
    expect(one(log({ Lambda: () => 0.82, AFR: () => 11.9 })).questions).toEqual([]);
  });

  it('by a spark that counts after top dead centre, or another angle; the map is believed', () => {
    const code = 'spark before or after top dead centre';
    const after = one(log({ 'Ignition timing (deg)': rising(-24, -12) }));
    expect(after.questions).toMatchObject([{ code, role: 'sparkAdvance' }]);
    expect(after.questions[0]!.message).toContain(
      'runs from −24° to −12°: it may count from top dead centre the other way.',
    );
    expect(one(log({ 'Ignition timing (deg)': () => 300 })).questions).toMatchObject([{ code }]);
    expect(one(log({ 'Ignition timing (deg)': rising(12, 24) })).questions).toEqual([]);
    const told = { channels: { sparkAdvance: channel('Ignition timing', 'angle', '°') } };
    expect(one(log({ 'Ignition timing (deg)': () => -12 }), told).questions).toEqual([]);
  });

  it('by no spark without a unit, after top dead centre, or asked for rather than given', () => {
    for (const header of [
      'Ignition timing',
      'Ignition timing (deg ATDC)',
      'Ignition timing target (deg)',
      'Knock retard (deg)',
    ])
      expect(one(log({ [header]: () => 20 })).channels.sparkAdvance).toBeUndefined();
  });

  it('by numbers that are already corrected: it says so', () => {
    const pull = one(log({ 'Corrected power (hp)': rising(50, 200), 'SAE torque (lb-ft)': () => 170 }));
    expect(pull.questions.map(({ code, role }) => `${code}: ${role}`)).toEqual([
      'already corrected: power',
      'already corrected: torque',
    ]);
    expect([pull.sources.power!, pull.sources.torque!].map(({ correction }) => correction)).toEqual([
      'corrected',
      'SAE',
    ]);
    expect(
      one(log({ 'Power (hp)': () => 90, 'Corrected power (hp)': () => 95 })).channels.power!.in('hp')[0],
    ).toBeCloseTo(90, 9);
  });

  it('by "1,234" between commas: it asks for the decimal sign', () => {
    expect(() => one(log({ 'Torque (Nm)': () => '"1,234"' }))).toThrow(
      /line 2: .*"1,234".*decimal: ',' or decimal: '\.'/,
    );
    expect(() => one(log({ 'Torque (Nm)': () => '"150,5"' }))).toThrow(/decimal: ','/);
    expect(one(log({ 'Torque (Nm)': () => '"1,234"' }), { decimal: ',' }).channels.torque!.si[0]).toBe(1.234);
    expect(one(log({ 'Torque (Nm)': () => '"1,234"' }), { decimal: '.' }).channels.torque!.si[0]).toBe(1234);
  });

  it('by "1,234" between tabs or semicolons where no other number says which it is', () => {
    for (const separator of ['\t', ';']) {
      const unclear = log({ 'Torque (Nm)': () => '1,234' }, separator);
      expect(() => one(unclear)).toThrow(
        /"1,234" could be 1\.234 or 1234, and no number here says which\..*decimal: ','/,
      );
      expect(
        one(log({ 'Torque (Nm)': () => '1,234', 'Boost (bar)': () => '0,397' }, separator)).channels.torque!.si[0],
      ).toBe(1.234);
      expect(() => one(log({ 'Torque (Nm)': () => '1,234', 'Boost (bar)': () => '0.397' }, separator))).toThrow(
        /decimal: ','/,
      );
    }
  });

  it('by a semicolon in a name, or commas in names between semicolons: the separator is never guessed from one line', () => {
    expect(one('RPM,"Torque (Nm)",Note; free\n2500,150,a\n2510,151,b\n').channels.torque!.length).toBe(2);
    expect(one('Boost, psi;Torque, Nm;RPM\n1,2;3,4;2500\n1,3;3,5;2600\n').channels.torque!.si[1]).toBe(3.5);
    expect(one('"a;b",RPM,"Torque (Nm)"\n1,2500,150\n').channels.torque!.si[0]).toBe(150);
  });

  it('by a decimal comma told for the whole folder where one logger writes points', () => {
    const files: LogFile[] = [
      { path: 'a/1.csv', data: log({ 'Boost (bar)': () => '1.070' }) },
      { path: 'b/1.csv', data: log({ 'Boost (bar)': () => '1,070' }, ';') },
    ];
    const day = readPullsFrom(files, { decimal: ',' });
    expect(day.notRead.map(({ file, error }) => `${file}: ${error.expected}`)).toEqual([
      'a/1.csv: a number with a decimal comma, as it was told',
    ]);
    expect(
      readPullsFrom(files, { setups: { b: { decimal: ',' } } }).pulls.map((pull) => pull.channels.boost!.in('bar')[0]),
    ).toEqual([1.07, 1.07]);
  });
});
