import { LogError } from './errors.js';
import { MOST_COLUMNS, LONGEST_CELL, MOST_ROWS, scanRecords, type RecordProblem, type Records } from './records.js';
import { counted, quoted } from './words-for-people.js';

/** The character between two cells. */
export type Separator = ',' | ';' | '\t' | '|';

/** The sign between whole and decimal part of a number. */
export type DecimalSign = '.' | ',';

/** What may be said about the writing of a log, where it cannot be told from the log. */
export interface DialectOptions {
  /** The sign between whole and decimal part. It is told from the log when left out, and asked for where it cannot be. */
  readonly decimal?: DecimalSign | undefined;
  /** The character between cells. Told from the log when left out. */
  readonly separator?: Separator | undefined;
  /** The line that holds the column names, from 1. The first line that is neither empty nor a comment when left out. */
  readonly headerLine?: number | undefined;
}

/** The text of a log cut into records by a separator that was told, written in the log, or seen. */
export interface Cut {
  readonly separator: Separator;
  readonly records: Records;
}

// Strongest first: decimal commas stand inside cells parted by tabs or semicolons, while a number never holds either of those.
const SEPARATORS: readonly Separator[] = ['\t', ';', ','];
const SEPARATOR_LINE = /^ *"?sep=(.)"?\s*$/i;
const SAMPLE = 12;

/** Cuts a log into records. A `sep=` line is obeyed; otherwise the separator is the strongest one that fits the first records. */
export function cutRecords(text: string, file: string, options: DialectOptions): Cut {
  let from = 0;
  let line = 1;
  let separator = options.separator;
  const firstLine = lineAt(text, 0);
  const written = SEPARATOR_LINE.exec(firstLine);
  if (written) {
    separator ??= writtenSeparator(written[1]!, file);
    from = firstLine.length + 1;
    line = 2;
  }
  for (; options.headerLine !== undefined && line < options.headerLine && from < text.length; line++) {
    from += lineAt(text, from).length + 1;
  }
  separator ??= seenSeparator(text, from, line);
  const records = scanRecords(text, { separator, from, line });
  if (records.problem) throw brokenRecord(records.problem, file);
  return { separator, records };
}

function lineAt(text: string, from: number): string {
  const end = text.indexOf('\n', from);
  return text.slice(from, end < 0 ? text.length : end);
}

function writtenSeparator(sign: string, file: string): Separator {
  if (sign === '|' || SEPARATORS.includes(sign as Separator)) return sign as Separator;
  throw new LogError({
    code: 'separator',
    file,
    line: 1,
    expected: 'a comma, semicolon, tab or bar after "sep="',
    found: quoted(sign),
  });
}

function seenSeparator(text: string, from: number, line: number): Separator {
  const samples = SEPARATORS.map((separator) => ({
    separator,
    sample: scanRecords(text, { separator, from, line, most: SAMPLE }),
  }));
  const columns = ({ sample }: (typeof samples)[number]): number =>
    sample.problem?.what === 'too many columns' ? MOST_COLUMNS + 1 : (sample.cells[0] ?? 0);
  const fitting = samples.find((each) => columns(each) > 1 && !each.sample.problem && areAlike(each.sample.cells));
  if (fitting) return fitting.separator;
  return samples.reduce((best, each) => (columns(each) > columns(best) ? each : best)).separator;
}

/** A trailing separator makes one cell more or less, which is no other table. */
function areAlike(cells: readonly number[]): boolean {
  return cells.length > 1 && cells.every((count) => Math.abs(count - cells[0]!) <= 1 && count > 1);
}

/** The refusal of a text that cannot be cut into records. */
export function brokenRecord({ what, line }: RecordProblem, file: string): LogError {
  const limits: Record<
    Exclude<RecordProblem['what'], 'unclosed quote' | 'text after quote'>,
    readonly [string, string]
  > = {
    'long cell': [`cells of at most ${LONGEST_CELL} characters`, 'a longer one'],
    'too many columns': [`at most ${counted(MOST_COLUMNS, 'column')}`, 'more'],
    'too many rows': [`at most ${MOST_ROWS / 1e6} million rows`, 'more'],
  };
  if (what === 'unclosed quote' || what === 'text after quote') {
    const found =
      what === 'unclosed quote'
        ? 'a quotation mark that is never closed'
        : 'more text in the cell after the closing quotation mark';
    return new LogError({ code: 'quote', file, line, expected: 'quotation marks in pairs around whole cells', found });
  }
  const [expected, found] = limits[what];
  return new LogError({ code: 'too large', file, line, expected, found });
}

/** Whether the numbers of a table say which sign they use. */
export type SeenDecimal = DecimalSign | 'unclear';

/**
 * The decimal sign of cells that are not parted by commas. `1,234` alone could be a thousand or one and a bit, so it takes one
 * number that can be read in one way only.
 */
export function seenDecimal(rows: readonly (readonly string[])[]): SeenDecimal {
  let isUnclear = false;
  for (const row of rows) {
    for (const cell of row) {
      if (!cell.includes(',')) continue;
      const text = cell.trim();
      if (/^[+-]?\d*,\d+(?:[eE][+-]?\d{1,3})?$/.test(text)) {
        if (!couldBeThousands(text)) return ',';
        isUnclear = true;
      } else if (/^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d*)?$/.test(text)) isUnclear = true;
    }
  }
  if (!isUnclear) return '.';
  const hasPoint = rows.some((row) => row.some((cell) => /^\s*[+-]?\d*\.\d+\s*$/.test(cell)));
  return hasPoint ? '.' : 'unclear';
}

function couldBeThousands(text: string): boolean {
  return /^[+-]?[1-9]\d{0,2},\d{3}$/.test(text);
}
