import { describe, expect, it } from 'vitest';
import { channel, readLog, type Pull } from 'coldside/sweep';
import { dateOrderOf, readClock } from '../../src/sweep/clock-text.js';

/** A log of three rows whose first column is as given. */
function logOf(header: string, cells: readonly string[], separator = ','): Pull {
  const rows = cells.map((cell, i) => [cell, 3000 + 10 * i, 200 + i].join(separator));
  return readLog([[header, 'RPM', 'Torque (Nm)'].join(separator), ...rows].join('\n'), { file: 'a.csv' })[0]!;
}

const ask = (pull: Pull): string => pull.questions.map(({ message, mend }) => `${message} ${mend}`).join('\n');

describe('a time of day in a log', () => {
  it.each([
    ['04.05.2026 10:00:00', '2026-05-04', 36000],
    ['4.5.26 10:00', '2026-05-04', 36000],
    ['2026-05-04T10:00:00.123+02:00', '2026-05-04', 36000.123],
    ['2026-05-04T10:00:00Z', '2026-05-04', 36000],
    ['2026/05/04 10:00:00', '2026-05-04', 36000],
    ['13/04/2026 10:00:00', '2026-04-13', 36000],
    ['04/13/2026 10:00:00', '2026-04-13', 36000],
    ['05/05/2026 10:00:00', '2026-05-05', 36000],
    ['10:00:00 AM', undefined, 36000],
    ['12:00:05 am', undefined, 5],
    ['12:30 PM', undefined, 45000],
    ['10:00:00 p.m.', undefined, 79200],
    ['04.05.2026 10:00:00,5', '2026-05-04', 36000.5],
  ])('reads %s', (cell, date, seconds) => {
    expect(readClock(cell)).toEqual({ date, seconds, isDateUnclear: false });
  });

  it('takes the hour of a date whose day and month could be either, and not the date', () => {
    expect(readClock('05/04/2026 10:00:00')).toEqual({ date: undefined, seconds: 36000, isDateUnclear: true });
    expect(readClock('05/04/2026 10:00:00', 'month first')!.date).toBe('2026-05-04');
    expect(readClock('05/04/2026 10:00:00', 'day first')!.date).toBe('2026-04-05');
    expect(dateOrderOf(['05/04/2026 10:00', '13/04/2026 10:00'])).toBe('day first');
    expect(dateOrderOf(['05/04/2026 10:00', '04/13/2026 10:00'])).toBe('month first');
    expect(dateOrderOf(['13/04/2026 10:00', '04/13/2026 10:00'])).toBeUndefined();
  });

  it.each(['25:00:00', '13:00 PM', '0:00 AM', '10:61', '31.02.2026 10:00', '45/45/2026 10:00', 'soon', '1.234', ''])(
    'is not %j',
    (cell) => {
      expect(readClock(cell)).toBeUndefined();
    },
  );
});

describe('a log with a common timestamp', () => {
  it('is read, with what its clock says', () => {
    const cells = ['04.05.2026 10:00:00', '04.05.2026 10:00:01', '04.05.2026 10:00:02'];
    expect(logOf('Timestamp', cells)).toMatchObject({ date: '2026-05-04', questions: [] });
    expect(logOf('Timestamp', cells, ';').startClock!.in('s')).toBe(36000);
    expect(logOf('Time', ['11:59:59 AM', '12:00:00 PM', '12:00:01 PM']).channels.time!.in('s')).toEqual(
      Float64Array.of(0, 1, 2),
    );
  });

  it('asks about a date that could be two, and uses the time of day', () => {
    const pull = logOf('Time', ['05/04/2026 10:00:00', '05/04/2026 10:00:01', '05/04/2026 10:00:02']);
    expect(pull.date).toBeUndefined();
    expect(pull.startClock!.in('s')).toBe(36000);
    expect(ask(pull)).toContain(
      '"Time" holds "05/04/2026 10:00:00", whose day and month could be either number: only the time of day is used.',
    );
  });

  it('goes on over midnight, with a date or without', () => {
    const times = (cells: readonly string[]) => logOf('Clock', cells).channels.clock!.in('s');
    const on = Float64Array.of(86399, 86400, 86401);
    expect(times(['23:59:59', '00:00:00', '00:00:01'])).toEqual(on);
    expect(times(['04/05/2026 23:59:59', '05/05/2026 00:00:00', '05/05/2026 00:00:01'])).toEqual(on);
    expect(times(['30/04/2026 23:59:59', '01/05/2026 00:00:00', '01/05/2026 00:00:01'])).toEqual(on);
  });

  it('loses an optional column that cannot be read, with a word, and is not stopped by it', () => {
    const pull = logOf('Time', ['soon', 'later', 'then']);
    expect(pull.channels.time).toBeUndefined();
    expect(ask(pull)).toContain(
      '"Time" would be time, but "soon" is no time that can be read; the column is left out.',
    );
    expect(ask(logOf('Lambda', ['n/a', 'n/a', 'n/a']))).toContain('"Lambda" would be lambda, but "n/a" is no number');
    const one = logOf('Clock', ['10:00:00', '??', '10:00:02']);
    expect(one.channels.clock!.missing).toBe(1);
    expect(ask(one)).toContain('1 cell of "Clock" is no time and was taken as blank.');
    // A column that was named is not given up.
    const named = { channels: { clock: channel('Clock') } };
    expect(() => readLog('Clock,RPM\n09:12:00,2500\nlater,2550\n', named)).toThrow(
      /line 3.*time of day, found "later"/,
    );
    // What a pull cannot do without, and a number that is broken among others, still stop it.
    expect(() => logOf('Power (kW)', ['x', 'y', 'z'])).toThrow(/needed a number, found "x"/);
    expect(() => logOf('Lambda', ['0.82', 'n/a', '0.82'])).toThrow(/line 3: column "Lambda" needed a number/);
  });
});
