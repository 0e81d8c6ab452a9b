import { initParser } from 'udsv';
import { kindsOfUnit } from '../units/index.js';
import { decode, type Encoding } from './decode.js';
import {
  brokenRecord,
  cutRecords,
  seenDecimal,
  type Cut,
  type DecimalSign,
  type DialectOptions,
  type Separator,
} from './dialect.js';
import { LogError } from './errors.js';
import { looksLikeNumber } from './numbers.js';
import { scanRecords } from './records.js';
import { counted, quoted } from './words-for-people.js';

/** How a log was written, as it was read. */
export interface Dialect {
  readonly separator: Separator;
  readonly decimal: DecimalSign;
  readonly encoding: Encoding;
  /** Whether a row of units stands under the names. */
  readonly hasUnitsRow: boolean;
  /** Lines passed over because they begin with `#`. */
  readonly comments: number;
}

/** A log as text cells: every row as long as the header. */
export interface Table {
  readonly file: string;
  readonly dialect: Dialect;
  /** Whether the decimal sign was told by the caller, so that the other sign can only part thousands. */
  readonly isDecimalTold: boolean;
  readonly header: readonly string[];
  readonly units: readonly string[] | undefined;
  readonly rows: readonly (readonly string[])[];
  /** Line of each row in the file. */
  readonly lines: readonly number[];
}

/**
 * Reads a log into cells.
 *
 * The dialect is settled and every row counted before the parser sees the text: by itself a parser of this speed joins a short row
 * with the next one.
 */
export function readTable(data: string | Uint8Array, file: string, options: DialectOptions): Table {
  const { text, encoding } = decode(data, file);
  const cut = cutRecords(text, file, options);
  const { records, separator } = cut;
  const width = headerWidth(text, file, cut);
  const cells = parse(bodyOf(text, cut, width, file), separator, width);
  if (cells.length !== records.lines.length || cells.some((row) => row.length !== width)) {
    throw new LogError({
      code: 'unreadable',
      file,
      expected: 'rows of equal length',
      found: 'cells that do not line up',
    });
  }
  const header = cells[0]!.map((name) => name.trim().replaceAll(/\s+/g, ' '));
  if (header.every((name) => name === '' || looksLikeNumber(name))) throw noHeader(header, records.lines[0]!, file);
  const hasUnitsRow = cells.length > 1 && isUnitsRow(cells[1]!);
  const rows = cells.slice(hasUnitsRow ? 2 : 1);
  const lines = records.lines.slice(hasUnitsRow ? 2 : 1);
  if (rows.length === 0) {
    throw new LogError({ code: 'empty', file, expected: 'rows of numbers under the column names', found: 'none' });
  }
  const decimal = options.decimal ?? (separator === ',' ? '.' : decimalOf(rows, file));
  const dialect: Dialect = { separator, decimal, encoding, hasUnitsRow, comments: records.comments };
  const units = hasUnitsRow ? cells[1]!.map((unit) => unit.trim()) : undefined;
  return { file, dialect, isDecimalTold: options.decimal !== undefined, header, units, rows, lines };
}

/** More rows of a log that was begun with {@link readTable}. */
export function readMoreRows(
  text: string,
  { file, dialect, header }: Pick<Table, 'file' | 'dialect' | 'header'>,
  line: number,
): Pick<Table, 'rows' | 'lines'> & { readonly comments: number } {
  const { separator } = dialect;
  const records = scanRecords(text, { separator, from: 0, line });
  if (records.problem) throw brokenRecord(records.problem, file);
  if (records.lines.length === 0) return { rows: [], lines: [], comments: records.comments };
  const rows = parse(bodyOf(text, { records, separator }, header.length, file), separator, header.length);
  return { rows, lines: records.lines, comments: records.comments };
}

function headerWidth(text: string, file: string, { records, separator }: Cut): number {
  const line = records.lines[0];
  if (line === undefined) {
    throw new LogError({
      code: 'empty',
      file,
      expected: 'a line of column names and rows of numbers',
      found: 'nothing',
    });
  }
  const header = text.slice(records.starts[0], records.ends[0]);
  const width = records.cells[0]! - trailingSeparators(header, separator);
  if (width < 2) {
    throw new LogError({
      code: 'one column',
      file,
      line,
      expected: 'at least two column names with a comma, semicolon or tab between them',
      found: quoted(header),
      mend: 'If the names stand further down, say in which line: headerLine: 7.',
    });
  }
  return width;
}

/** The records alone, each as long as the header, as one text. */
function bodyOf(text: string, { records, separator }: Cut, width: number, file: string): string {
  const { starts, ends, cells, lines, isContiguous } = records;
  if (isContiguous && cells.every((count) => count === width)) return text.slice(starts[0], ends[ends.length - 1]);
  return cells
    .map((count, at) => {
      const record = text.slice(starts[at], ends[at]);
      const surplus = count - width;
      if (surplus === 0) return record;
      if (surplus < 0 || trailingSeparators(record, separator) < surplus) {
        throw raggedRow({ record, count, width, line: lines[at]!, file, isLast: at === cells.length - 1, separator });
      }
      return withoutTrailing(record, separator, surplus);
    })
    .join('\n');
}

function trailingSeparators(record: string, separator: Separator): number {
  let count = 0;
  for (let at = record.length - 1; at >= 0; at--) {
    if (record[at] === separator) count++;
    else if (record[at] !== ' ') break;
  }
  return count;
}

function withoutTrailing(record: string, separator: Separator, count: number): string {
  let end = record.length;
  for (let left = count; left > 0; left--) end = record.lastIndexOf(separator, end - 1);
  return record.slice(0, end);
}

interface RaggedRow {
  readonly record: string;
  readonly count: number;
  readonly width: number;
  readonly line: number;
  readonly file: string;
  readonly isLast: boolean;
  readonly separator: Separator;
}

function raggedRow({ record, count, width, line, file, isLast, separator }: RaggedRow): LogError {
  const stopped = 'The logger may have stopped here; cut the file at the last whole row, or leave it out.';
  const commas = 'If these are decimal commas, the cells must be parted by another character, or be quoted.';
  return new LogError({
    code: 'ragged row',
    file,
    line,
    expected: `${counted(width, 'value')} as in the header`,
    found: `${count} (${quoted(record, 20)})`,
    mend: count < width ? (isLast ? stopped : '') : separator === ',' ? commas : '',
  });
}

function parse(body: string, separator: Separator, width: number): string[][] {
  const columns = Array.from({ length: width }, (_, at) => ({
    name: String(at),
    type: 's' as const,
    repl: { empty: undefined, null: undefined, NaN: undefined },
  }));
  const encl = body.includes('"') ? '"' : '';
  return initParser({ col: separator, row: '\n', encl, esc: encl, trim: true, cols: columns }).stringArrs(body);
}

function noHeader(header: readonly string[], line: number, file: string): LogError {
  return new LogError({
    code: 'no header',
    file,
    line,
    expected: 'column names',
    found: `numbers only (${quoted(header.join(' '), 20)})`,
    mend: 'Put a line of column names with their units above them.',
  });
}

/** A row without numbers in which at least every second cell that says anything says a unit. */
function isUnitsRow(cells: readonly string[]): boolean {
  let units = 0;
  let others = 0;
  for (const cell of cells) {
    const text = cell.trim().replace(/^[[(](.*)[\])]$/, '$1');
    if (text === '' || text === '-' || text === '1') continue;
    if (looksLikeNumber(text)) return false;
    if (text.length <= 20 && kindsOfUnit(text).length > 0) units++;
    else others++;
    if (others > cells.length / 2) return false;
  }
  return units > 0 && units >= others;
}

function decimalOf(rows: readonly (readonly string[])[], file: string): DecimalSign {
  const seen = seenDecimal(rows);
  if (seen !== 'unclear') return seen;
  const example = rows
    .flat()
    .find((cell) => cell.includes(',') && looksLikeNumber(cell))!
    .trim();
  throw new LogError({
    code: 'ambiguous number',
    file,
    expected: 'numbers that can be read in one way',
    found: quoted(example),
    fact: `${quoted(example)} could be ${example.replace(',', '.')} or ${example.replaceAll(',', '')}, and no number here says which.`,
    mend: "Say which sign is the decimal one: decimal: ',' or decimal: '.'.",
  });
}
