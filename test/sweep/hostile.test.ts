import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CHANNEL_ROLES, LogError, readLog, readPullsFrom } from 'coldside/sweep';

/** Reads, and lets through only what a caller is told to expect. */
function readsOrRefuses(data: string | Uint8Array): void {
  try {
    for (const pull of readLog(data)) {
      const lengths = new Set(Object.values(pull.channels).map((column) => column.length));
      expect([...lengths]).toEqual([pull.rows]);
      expect(String(pull)).not.toBe('');
    }
  } catch (error) {
    expect(error).toBeInstanceOf(LogError);
    // eslint-disable-next-line no-control-regex -- control characters are what is looked for
    expect((error as LogError).message).not.toMatch(/[\u0000-\u001f]/);
  }
}

const pieces = fc.constantFrom(
  ...['RPM', 'Torque (Nm)', 'Boost (psi)', 'MAP (kPa)', 'IAT (F)', 'pull', 'Time', 'Clock', '__proto__', 'constructor'],
  ...[
    ',',
    ',',
    ';',
    '\t',
    '\n',
    '\n',
    '\r\n',
    '"',
    '""',
    ' ',
    '#',
    'sep=;',
    '(',
    ')',
    '[',
    '-',
    '1',
    '2500',
    '1,5',
    '0.5',
    '1e309',
    'NaN',
  ],
  ...['09:12:00', '\uFEFF', '\u0000', '°', '٣', '\u2028', '😀', 'psi', 'rpm', '%'],
);

describe('a hostile log', () => {
  it('of any bytes is read or refused with a LogError', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), readsOrRefuses), { numRuns: 500 });
  });

  it('of any text is read or refused with a LogError', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 400 }), readsOrRefuses), { numRuns: 500 });
  });

  it('made of the pieces of logs is read or refused with a LogError', () => {
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 80 }), (parts) => readsOrRefuses(parts.join(''))),
      { numRuns: 3000 },
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 60 }), (parts) =>
        readsOrRefuses(`RPM,Torque (Nm)\n2500,150\n${parts.join('')}`),
      ),
      { numRuns: 3000 },
    );
  });

  it('splits into the cells that quotes and separators say, whatever stands in them', () => {
    const cells = fc.string({
      unit: fc.constantFrom('a', '"', ',', ';', '\n', ' ', '#', 'é'),
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(cells, cells), { minLength: 1, maxLength: 6 }),
        fc.constantFrom(',', ';', '\t'),
        (notes, separator) => {
          const quote = (text: string): string => `"${text.replaceAll('"', '""')}"`;
          const rows = notes.map(([a, b], at) => [quote(`x${a}`), String(2500 + at), quote(b), '0.5'].join(separator));
          const [pull] = readLog(`${['note', 'RPM', 'other', 'Lambda'].join(separator)}\n${rows.join('\n')}\n`, {
            separator,
          });
          expect([...pull!.channels.engineSpeed!.in('rpm')].map(Math.round)).toEqual(notes.map((_, at) => 2500 + at));
          expect(pull!.unused.map(({ header }) => header)).toEqual(['note', 'other']);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('with headers named after parts of objects harms nothing', () => {
    const names = [
      '__proto__',
      'constructor',
      'prototype',
      'hasOwnProperty',
      'valueOf',
      'toString',
      'RPM',
      'Torque (__proto__)',
      'Lambda',
    ];
    expect(() => readLog(`${names.join(',')}\n${names.map(() => '1').join(',')}\n`)).toThrow(
      /"__proto__" is not a unit of torque/,
    );
    const [pull] = readLog(`${names.slice(0, 7).join(',')},x\n1,1,1,1,1,1,2500,1\n`);
    expect(Object.keys(pull!.channels)).toEqual(['engineSpeed']);
    expect(Object.getPrototypeOf(pull!.channels)).toBe(Object.prototype);
    expect(({} as Record<string, unknown>)['engineSpeed']).toBeUndefined();
    expect(CHANNEL_ROLES).not.toContain('__proto__');
    const day = readPullsFrom([{ path: '__proto__/a.csv', data: 'RPM,Lambda\n2500,1\n' }]);
    expect(day.setup('__proto__').pulls).toHaveLength(1);
  });

  it('of the most columns and the longest names that are allowed is still read', () => {
    const header = ['RPM', ...Array.from({ length: 999 }, (_, at) => `Boost ${'torque '.repeat(250)}(kPa ${at})`)].join(
      ',',
    );
    expect(readLog(`${header}\n${Array.from({ length: 1000 }, () => 1).join(',')}\n`)[0]!.unused).toHaveLength(999);
    const brackets = `RPM,${'('.repeat(900)}${')'.repeat(900)},${'Boost '.repeat(300)}\n1,1,1\n`;
    expect(readLog(brackets)[0]!.unused).toHaveLength(2);
  });
});
