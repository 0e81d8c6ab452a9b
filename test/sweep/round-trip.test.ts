import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLog } from 'coldside/sweep';

const channels = [
  { role: 'torque', name: 'Torque', units: { Nm: 1, 'lb-ft': 1.3558179483314004 } },
  { role: 'boost', name: 'Boost', units: { kPa: 1000, psi: 6894.757293168361, bar: 1e5 } },
  { role: 'airFlow', name: 'Air flow', units: { 'g/s': 0.001, 'lb/min': 0.45359237 / 60 } },
  { role: 'lambda', name: 'Lambda', units: { '-': 1 } },
  { role: 'time', name: 'Time', units: { s: 1, ms: 0.001 } },
] as const;

/** How a table may be written. */
const dialects = fc
  .record({
    separator: fc.constantFrom(',', ';', '\t'),
    decimal: fc.constantFrom('.', ','),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
    mark: fc.constantFrom('', '\uFEFF'),
    names: fc.constantFrom('parentheses', 'brackets', 'row', 'tail'),
    separatorLine: fc.boolean(),
    quotes: fc.boolean(),
    trailingLines: fc.integer({ min: 0, max: 3 }),
    bytes: fc.constantFrom('text', 'UTF-8', 'UTF-16'),
  })
  .filter(({ separator, decimal }) => separator !== ',' || decimal === '.');

const tables = fc.array(
  fc.record({
    speed: fc.integer({ min: 500, max: 9000 }),
    values: fc.tuple(
      ...channels.map(() =>
        fc.option(fc.double({ min: -900, max: 900, noNaN: true }).map((value) => Number(value.toFixed(3)))),
      ),
    ),
  }),
  { minLength: 1, maxLength: 12 },
);

describe('a table written in any dialect', () => {
  it('is read back with the same numbers', () => {
    fc.assert(
      fc.property(tables, dialects, fc.array(fc.nat(), { minLength: 5, maxLength: 5 }), (table, dialect, picks) => {
        const units = channels.map(
          ({ units: known }, at) => Object.keys(known)[picks[at]! % Object.keys(known).length]!,
        );
        const cell = (text: string): string => (dialect.quotes && !text.includes('"') ? `"${text}"` : text);
        const named = (name: string, unit: string): string => {
          if (dialect.names === 'parentheses') return `${name} (${unit})`;
          if (dialect.names === 'brackets') return `${name} [${unit}]`;
          return dialect.names === 'tail' && unit !== '-' ? `${name} ${unit}` : name;
        };
        // Three decimals on a number above 999 leave no doubt about which sign is the decimal one.
        const written = (value: number | null): string =>
          value === null ? '' : String(value).replace('.', dialect.decimal);
        const lines = [
          ...(dialect.separatorLine ? [`sep=${dialect.separator}`] : []),
          ['Engine speed', ...channels.map(({ name }) => name)]
            .map((name, at) => cell(named(name, ['rpm', ...units][at]!)))
            .join(dialect.separator),
          ...(dialect.names === 'row' ? [['rpm', ...units].map(cell).join(dialect.separator)] : []),
          ...table.map(({ speed, values }) =>
            [String(speed), ...values.map(written)].map(cell).join(dialect.separator),
          ),
        ];
        const text = dialect.mark + lines.join(dialect.lineEnd) + dialect.lineEnd.repeat(dialect.trailingLines);
        const data =
          dialect.bytes === 'text'
            ? text
            : dialect.bytes === 'UTF-8'
              ? Buffer.from(text, 'utf8')
              : Buffer.from(`\uFEFF${text.replace('\uFEFF', '')}`, 'utf16le');
        const [pull] = readLog(data, { decimal: dialect.decimal as '.' });
        expect([...pull!.channels.engineSpeed!.in('rpm')].map(Math.round)).toEqual(table.map(({ speed }) => speed));
        channels.forEach(({ role, units: known }, at) => {
          const size = (known as Record<string, number>)[units[at]!]!;
          const column = pull!.channels[role]!;
          table.forEach(({ values }, row) => {
            const value = values[at]!;
            if (value === null) expect(column.si[row]).toBeNaN();
            else expect(Math.abs(column.si[row]! - value * size)).toBeLessThanOrEqual(1e-14 * Math.abs(value * size));
          });
        });
      }),
      { numRuns: 400 },
    );
  });

  it('is told apart without being told the decimal sign, wherever one number leaves no doubt', () => {
    fc.assert(
      fc.property(tables, dialects, (table, { separator, decimal }) => {
        const values = table.map(({ values: [value] }) => (value === null ? '' : String(value).replace('.', decimal)));
        const sure = `0${decimal}5`;
        const text =
          ['Engine speed (rpm)', 'Torque (Nm)', 'Lambda'].join(separator) +
          table.map(({ speed }, at) => `\n${[speed, values[at], sure].join(separator)}`).join('');
        const [pull] = readLog(text);
        expect(pull!.dialect.decimal).toBe(decimal);
        table.forEach(({ values: [value] }, at) => expect(pull!.channels.torque!.si[at]).toBe((value ?? NaN) + 0));
      }),
    );
  });
});
