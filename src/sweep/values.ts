import { kindOf, toSi, columnOf, NO_NOTES } from '../units/internal.js';
import type { Column, Kind } from '../units/index.js';
import type { Assignment } from './assign.js';
import { dateOrderOf, readClock, type ClockReading, type DateOrder } from './clock-text.js';
import { LogError } from './errors.js';
import type { Question } from './pull.js';
import { isUnsettled, readCell } from './numbers.js';
import { roleWords, type ChannelRole } from './roles.js';
import type { Table } from './table.js';
import { counted, figure, quoted } from './words-for-people.js';

/** The numbers of one column of a log, in the unit they were written in. */
export interface Values {
  readonly numbers: Float64Array;
  readonly blanks: number;
  /** Dates of a clock that has them, by row. */
  readonly date: string | undefined;
  /** What the column leaves open. */
  readonly questions: readonly Question[];
}

/**
 * Reads a column's cells; the first that is neither a number nor blank is an error that names it.
 *
 * @param firstDate Date from which the times of a clock count, where rows before these had one.
 */
export function readValues(table: Table, assignment: Assignment, firstDate?: string): Values {
  return assignment.unitFrom === 'time of day'
    ? readTimes(table, assignment, firstDate)
    : readNumbers(table, assignment);
}

function readNumbers(table: Table, assignment: Assignment): Values {
  const { rows, dialect, isDecimalTold } = table;
  const { at } = assignment;
  const numbers = new Float64Array(rows.length);
  let blanks = 0;
  for (let row = 0; row < rows.length; row++) {
    const cell = rows[row]![at]!;
    const value = readCell(cell, dialect.decimal, isDecimalTold);
    if (value === undefined) throw notANumber(table, assignment, row);
    if (Number.isNaN(value)) blanks++;
    numbers[row] = value;
  }
  return { numbers, blanks, date: undefined, questions: [] };
}

function notANumber(
  { file, lines, rows, dialect, isDecimalTold }: Table,
  { header, at }: Assignment,
  row: number,
): LogError {
  const cell = rows[row]![at]!;
  const place = { file, line: lines[row]!, column: header, found: quoted(cell) };
  const sign = dialect.decimal === ',' ? 'comma' : 'point';
  if (isUnsettled(cell) && isDecimalTold) {
    return new LogError({
      ...place,
      code: 'not a number',
      expected: `a number with a decimal ${sign}, as it was told`,
      mend: `For one set-up alone: setups: { name: { decimal: '${dialect.decimal}' } }.`,
    });
  }
  if (isUnsettled(cell)) {
    return new LogError({
      ...place,
      code: 'ambiguous number',
      expected: `numbers with a decimal ${sign}`,
      fact: `column ${quoted(header)} holds ${quoted(cell)}, where a comma or point could part thousands or decimals.`,
      mend: "Say which sign is the decimal one: decimal: ',' or decimal: '.'.",
    });
  }
  return new LogError({
    ...place,
    code: 'not a number',
    expected: 'a number',
    mend: 'Leave the cell blank if there was no reading.',
  });
}

/** A step back by more than this is midnight, and not a clock that was set. */
const HALF_A_DAY = 43200;

/** Times of day as seconds since midnight of the first date. */
function readTimes({ rows, file, lines }: Table, { at, header, role, how }: Assignment, firstDate?: string): Values {
  const numbers = new Float64Array(rows.length);
  let order: DateOrder | undefined;
  let unclear: string | undefined;
  let notTimes = 0;
  let blanks = 0;
  let date = firstDate;
  let midnights = 0;
  let before = NaN;
  const read = (cell: string): ClockReading | undefined => {
    const clock = readClock(cell, order);
    if (!clock?.isDateUnclear || unclear !== undefined) return clock;
    unclear = cell;
    order = dateOrderOf(rows.map((row) => row[at]!));
    return readClock(cell, order);
  };
  for (let row = 0; row < rows.length; row++) {
    const cell = rows[row]![at]!;
    const clock = cell.trim() === '' ? undefined : read(cell);
    if (clock === undefined) {
      if (cell.trim() !== '' && how === 'map') {
        throw new LogError({
          code: 'not a number',
          file,
          line: lines[row]!,
          column: header,
          expected: 'a time of day',
          found: quoted(cell),
        });
      }
      if (cell.trim() !== '') notTimes++;
      blanks++;
      numbers[row] = NaN;
      continue;
    }
    // Where some dates could be two days, those that could not help no further.
    const day = unclear !== undefined && order === undefined ? undefined : clock.date;
    date ??= day;
    if (day === undefined && before - clock.seconds > HALF_A_DAY) midnights++;
    before = clock.seconds;
    numbers[row] = clock.seconds + (daysBetween(date, day) + midnights) * 86400;
  }
  const questions = [
    ...(unclear !== undefined && order === undefined ? [dayOrMonth(header, role, unclear)] : []),
    ...(notTimes > 0 ? [cellsLeftOut(header, role, notTimes)] : []),
  ];
  const isDateUsed = unclear === undefined || order !== undefined;
  return { numbers, blanks, date: isDateUsed ? date : firstDate, questions };
}

function cellsLeftOut(header: string, role: Assignment['role'], count: number): Question {
  return {
    code: 'cannot be read',
    role,
    message: `${counted(count, 'cell')} of ${quoted(header)} ${count === 1 ? 'is no time and was' : 'are no times and were'} taken as blank.`,
    mend: 'Look at the log: the rows keep their place by the times about them.',
  };
}

function dayOrMonth(header: string, role: Assignment['role'], cell: string): Question {
  return {
    code: 'day or month',
    role,
    message: `${quoted(header)} holds ${quoted(cell)}, whose day and month could be either number: only the time of day is used.`,
    mend: 'Write dates as 2026-05-04 where pulls of several days are compared.',
  };
}

function daysBetween(first: string | undefined, date: string | undefined): number {
  if (first === undefined || date === undefined || first === date) return 0;
  const days = (Date.parse(`${date}T00:00:00Z`) - Date.parse(`${first}T00:00:00Z`)) / 86400000;
  return Number.isFinite(days) ? Math.round(days) : 0;
}

/** The column of a channel; a value that its kind cannot have is an error, because it means the kind is another. */
export function columnOfValues<K extends Kind>(
  kind: K,
  numbers: Float64Array,
  table: Table,
  assignment: Assignment,
): Column<K> {
  const { unit, role } = assignment;
  const minimum = kindOf(kind).minimum ?? -Infinity;
  const si = new Float64Array(numbers.length);
  for (let row = 0; row < numbers.length; row++) {
    const value = toSi(kind, numbers[row]!, unit);
    if (value < minimum) throw impossible(table, assignment, row, numbers[row]!);
    si[row] = value;
  }
  return columnOf(kind, si, unit, undefined, NO_NOTES, 0, roleWords(role));
}

function impossible(
  { file, lines }: Table,
  { header, kind, unit, role }: Assignment,
  row: number,
  value: number,
): LogError {
  const isManifold = role === 'manifoldPressure';
  const other: ChannelRole = isManifold ? 'boost' : (role as ChannelRole);
  const limit = kind === 'temperature' ? 'absolute zero' : 'vacuum';
  return new LogError({
    code: 'impossible value',
    file,
    line: lines[row]!,
    column: header,
    expected: `${kind} above ${limit}`,
    found: `${figure(value)} ${unit}`,
    fact: `column ${quoted(header)} holds ${figure(value)} ${unit}, which is below ${limit}, so it is no ${kind}.`,
    mend: isManifold
      ? `If it counts from the air around, it is boost: ${other}: channel('${header.slice(0, 60)}', 'gauge pressure', '${unit}').`
      : `Leave the cell blank if there was no reading, or mend the unit.`,
  });
}
