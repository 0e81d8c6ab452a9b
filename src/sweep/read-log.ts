import { quantity, type Column } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import { assignColumns, type Assignment, type Assignments } from './assign.js';
import { checkChannelMap, type ChannelMap } from './channel.js';
import type { DialectOptions } from './dialect.js';
import { LogError } from './errors.js';
import { sourcesOf } from './origin-of.js';
import { pullOf, type ColumnOrigin, type Pull, type Question } from './pull.js';
import { questionsAbout } from './questions.js';
import { roleWords, type Channels, type ChannelRole } from './roles.js';
import { sha256 } from './sha256.js';
import { readTable, type Table } from './table.js';
import { columnOfValues, readValues, type Values } from './values.js';
import { counted, quoted } from './words-for-people.js';

/** How one log is read. */
export interface ReadLogOptions extends DialectOptions {
  /** What to call the file in messages. */
  readonly file?: string | undefined;
  /** What to call the pull among those of its set-up; the file's name without its folder when left out. */
  readonly name?: string | undefined;
  /** The set-up the log belongs to. */
  readonly setup?: string | undefined;
  /** Which columns are which channels; what it leaves out is guessed and reported. */
  readonly channels?: ChannelMap | undefined;
}

/**
 * Reads one log: one pull, or several where a column numbers them.
 *
 * Separator, decimal sign, byte-order mark and units are told from the log; units stand in the headers or in a row under them. A
 * blank cell is a missing reading and is counted. What each channel was taken from is in `sources`, what only the owner can know in
 * `questions`. Works in browsers.
 *
 * @param data The log as text, or its bytes.
 * @returns The pulls in the order of the file.
 * @throws LogError if any of it cannot be read, naming file, line and column; never part of a log.
 * @throws CalculationError if the channel map is wrong in itself.
 * @example
 * const [pull] = readLog('Engine speed (rpm),Torque (lb-ft)\n2500,113.6\n2521,114.4\n', { file: 'pull 1.csv' });
 * pull?.channels.torque?.at(0).in('N·m') //=> 154.021
 */
export function readLog(data: string | Uint8Array, options: ReadLogOptions = {}): readonly Pull[] {
  const { file = 'the log', channels: map = {} } = options;
  const name = options.name ?? file.slice(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
  checkChannelMap(map, 'readLog');
  const table = readTable(data, file, options);
  const assigned = assignColumns(table, map);
  const values = new Map([...assigned.channels].map(([role, each]) => [role, readValues(table, each)]));
  const columns = new Map(
    [...assigned.channels].map(([role, each]) => [role, channelColumn(role, each, values.get(role)!, table)]),
  );
  addClockOfTime(assigned, values, columns);
  const hash = sha256(typeof data === 'string' ? new TextEncoder().encode(data) : data);
  const { runs, outside } = pullRuns(table, assigned.pull);
  const date = values.get('clock')?.date ?? values.get('time')?.date;
  return runs.map((run, at) => {
    const channels = Object.fromEntries([...columns].map(([role, column]) => [role, partOf(column, run)])) as Channels;
    const { engineSpeed } = channels;
    if (engineSpeed === undefined || engineSpeed.missing === engineSpeed.length)
      throw emptyEngineSpeed(table, assigned, run);
    const questions = [
      ...assigned.questions,
      ...[...values.values()].flatMap((each) => each.questions),
      ...questionsAbout(channels, assigned.channels),
      ...(at === 0 && outside > 0 ? [rowsOutside(outside, assigned.pull!)] : []),
    ];
    const start = channels.clock?.si.find((si) => !Number.isNaN(si));
    return pullOf({
      name: run.label === undefined ? name : `${name}, pull ${run.label}`,
      file,
      setup: options.setup,
      label: run.label,
      channels,
      sources: sourcesOf(assigned),
      unused: assigned.unused,
      questions,
      rows: run.to - run.from,
      rowsWithoutEngineSpeed: engineSpeed.missing,
      blankCells: Object.values(channels).reduce((sum, { missing }) => sum + missing, 0),
      lines: [table.lines[run.from]!, table.lines[run.to - 1]!],
      startClock: start === undefined ? undefined : quantity('time', start, 's'),
      date,
      dialect: table.dialect,
      hash,
    });
  });
}

function channelColumn(role: ChannelRole, each: Assignment, { numbers }: Values, table: Table): Column {
  if (role !== 'time' || each.unitFrom !== 'time of day') return columnOfValues(each.kind, numbers, table, each);
  const start = numbers.find((seconds) => !Number.isNaN(seconds)) ?? 0;
  return columnOfValues(
    each.kind,
    numbers.map((seconds) => seconds - start),
    table,
    each,
  );
}

/** A time column that holds times of day tells the clock too. */
function addClockOfTime(
  { channels }: Assignments,
  values: Map<ChannelRole, Values>,
  columns: Map<ChannelRole, Column>,
): void {
  const time = channels.get('time');
  if (time?.unitFrom !== 'time of day' || columns.has('clock')) return;
  columns.set('clock', columnOf('time', values.get('time')!.numbers, 's', undefined, NO_NOTES, 0, 'clock'));
}

interface Run {
  readonly label: string | undefined;
  readonly from: number;
  readonly to: number;
}

/** Rows that belong together by the pull column, in the order of the file. */
function pullRuns(
  { rows, lines, file }: Table,
  pull: ColumnOrigin | undefined,
): { readonly runs: Run[]; readonly outside: number } {
  if (pull === undefined) return { runs: [{ label: undefined, from: 0, to: rows.length }], outside: 0 };
  const at = pull.column - 1;
  const runs: Run[] = [];
  const seen = new Set<string>();
  let outside = 0;
  for (let from = 0; from < rows.length;) {
    const label = rows[from]![at]!.trim();
    let to = from + 1;
    while (to < rows.length && rows[to]![at]!.trim() === label) to++;
    if (label === '') outside += to - from;
    else {
      if (seen.has(label)) {
        throw new LogError({
          code: 'pull comes back',
          file,
          line: lines[from]!,
          column: pull.header,
          expected: 'the rows of a pull one after another',
          found: `pull ${quoted(label)} again after another pull`,
        });
      }
      seen.add(label);
      runs.push({ label, from, to });
    }
    from = to;
  }
  if (runs.length === 0) {
    throw new LogError({
      code: 'empty',
      file,
      column: pull.header,
      expected: 'numbers of pulls',
      found: 'only blank cells',
    });
  }
  return { runs, outside };
}

function partOf(column: Column, { from, to }: Run): Column {
  if (from === 0 && to === column.length) return column;
  return columnOf(column.kind, column.si.slice(from, to), column.unit, undefined, NO_NOTES, 0, column.label);
}

function rowsOutside(count: number, { header }: ColumnOrigin): Question {
  const verb = count === 1 ? 'belongs' : 'belong';
  const message = `${counted(count, 'row')} without a number in ${quoted(header)} ${verb} to no pull.`;
  return { code: 'rows outside pulls', role: 'pull', message, mend: 'Number them if they should count.' };
}

function emptyEngineSpeed({ file, lines }: Table, { channels }: Assignments, run: Run): LogError {
  const { header } = channels.get('engineSpeed')!;
  const where = run.label === undefined ? 'the log' : `pull ${run.label}`;
  return new LogError({
    code: 'no engine speed',
    file,
    line: lines[run.from]!,
    column: header,
    expected: `at least one ${roleWords('engineSpeed')} in ${where}`,
    found: 'only blank cells',
  });
}
