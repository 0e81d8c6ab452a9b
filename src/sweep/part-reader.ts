import { quantity } from '../units/index.js';
import { assignColumns, type Assignment, type Assignments } from './assign.js';
import { LogError } from './errors.js';
import { PullFinder } from './find-pulls.js';
import { sourcesOf } from './origin-of.js';
import { pullOf, type Pull, type Question } from './pull.js';
import { questionsAbout } from './questions.js';
import { CHANNEL_KINDS, type Channels, type ChannelRole } from './roles.js';
import { RowBuffer } from './row-buffer.js';
import { sha256 } from './sha256.js';
import type { ReadLogStreamOptions } from './stream-options.js';
import type { Table } from './table.js';
import { columnOfValues, readValues } from './values.js';
import { quoted } from './words-for-people.js';

const LONGEST_PULL = 500_000;

/** Reads the rows of a log part by part. */
export class PartReader {
  readonly table: Table;
  rows = 0;
  readonly #options: ReadLogStreamOptions;
  readonly #assigned: Assignments;
  readonly #buffer: RowBuffer;
  readonly #finder: PullFinder | undefined;
  readonly #dates = new Map<ChannelRole, string>();
  readonly #questions = new Map<string, Question>();
  #start: number | undefined;
  #label = '';
  #found = 0;
  readonly #seen = new Set<string>();

  constructor(table: Table, options: ReadLogStreamOptions) {
    this.table = table;
    this.#options = options;
    this.#assigned = assignColumns(table, options.channels ?? {});
    const shapes = new Map([...this.#assigned.channels].map(([role, { kind, unit }]) => [role, { kind, unit }]));
    const time = this.#assigned.channels.get('time');
    if (time?.unitFrom === 'time of day' && !shapes.has('clock')) shapes.set('clock', { kind: 'time', unit: 's' });
    this.#buffer = new RowBuffer(shapes);
    if (this.#assigned.pull === undefined) {
      const timeRole = shapes.has('time') ? 'time' : shapes.has('clock') ? 'clock' : undefined;
      if (timeRole === undefined) throw noTimes(table.file);
      this.#finder = new PullFinder(this.#buffer, timeRole, options.findPulls ?? {});
    }
  }

  *read({ rows, lines }: Pick<Table, 'rows' | 'lines'>): Iterable<Pull> {
    const part: Table = { ...this.table, rows, lines };
    const batch = this.#numbersOf(part);
    const labels = this.#assigned.pull;
    for (let row = 0; row < rows.length; row++) {
      this.rows++;
      if (labels !== undefined) {
        const label = rows[row]![labels.column - 1]!.trim();
        if (label !== this.#label) {
          yield* this.#takeNumbered();
          this.#begin(label, lines[row]!);
        }
        if (label === '') continue;
      }
      this.#buffer.add(batch, row, lines[row]!);
      if (this.#buffer.length > (this.#options.longestPull ?? LONGEST_PULL)) throw this.#tooLong(lines[row]!);
      const range = this.#finder?.look();
      if (range !== undefined) {
        yield this.#pull(range[0], range[1], undefined);
        this.#finder!.next();
      }
    }
  }

  *finish(): Iterable<Pull> {
    if (this.#finder === undefined) yield* this.#takeNumbered();
    const range = this.#finder?.end();
    if (range !== undefined) yield this.#pull(range[0], range[1], undefined);
  }

  #begin(label: string, line: number): void {
    if (label !== '' && this.#seen.has(label)) {
      throw new LogError({
        code: 'pull comes back',
        file: this.table.file,
        line,
        column: this.#assigned.pull!.header,
        expected: 'the rows of a pull one after another',
        found: `pull ${quoted(label)} again after another pull`,
      });
    }
    this.#seen.add(label);
    this.#label = label;
  }

  *#takeNumbered(): Iterable<Pull> {
    if (this.#buffer.length > 0) yield this.#pull(0, this.#buffer.length, this.#label);
    this.#buffer.drop(this.#buffer.length);
  }

  #numbersOf(part: Table): Map<ChannelRole, Float64Array> {
    const batch = new Map<ChannelRole, Float64Array>();
    for (const [role, each] of this.#assigned.channels) {
      const { numbers, date, questions } = readValues(part, each, this.#dates.get(role));
      for (const question of questions) this.#questions.set(question.code, question);
      if (date !== undefined) this.#dates.set(role, date);
      if (role === 'time' && each.unitFrom === 'time of day') this.#addTimeOfDay(batch, numbers, part, each);
      else batch.set(role, columnOfValues(each.kind, numbers, part, each).si);
    }
    return batch;
  }

  /** A time of day is time since the log's first row, and a clock. */
  #addTimeOfDay(batch: Map<ChannelRole, Float64Array>, numbers: Float64Array, part: Table, each: Assignment): void {
    const start = (this.#start ??= numbers.find((seconds) => !Number.isNaN(seconds)));
    const since = numbers.map((seconds) => seconds - (start ?? 0));
    batch.set('time', columnOfValues(each.kind, since, part, each).si);
    if (!this.#assigned.channels.has('clock')) batch.set('clock', numbers);
  }

  #pull(from: number, to: number, label: string | undefined): Pull {
    const { channels, lines } = this.#buffer.take(from, to);
    const { file } = this.table;
    const base = this.#options.name ?? file.slice(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    const { engineSpeed } = channels;
    if (engineSpeed === undefined || engineSpeed.missing === engineSpeed.length) {
      throw new LogError({
        code: 'no engine speed',
        file,
        line: lines[0],
        column: this.#assigned.channels.get('engineSpeed')!.header,
        expected: 'at least one engine speed in each pull',
        found: 'only blank cells',
      });
    }
    const start = channels.clock?.si.find((si) => !Number.isNaN(si));
    return pullOf({
      name: `${base}, pull ${label ?? ++this.#found}`,
      file,
      setup: this.#options.setup,
      label: label ?? String(this.#found),
      channels,
      sources: sourcesOf(this.#assigned),
      unused: this.#assigned.unused,
      questions: [
        ...this.#assigned.questions,
        ...this.#questions.values(),
        ...questionsAbout(channels, this.#assigned.channels),
      ],
      rows: engineSpeed.length,
      rowsWithoutEngineSpeed: engineSpeed.missing,
      blankCells: Object.values(channels).reduce((sum, { missing }) => sum + missing, 0),
      lines,
      startClock: start === undefined ? undefined : quantity('time', start, 's'),
      date: this.#dates.get('clock') ?? this.#dates.get('time'),
      dialect: this.table.dialect,
      hash: hashOf(channels),
    });
  }

  #tooLong(line: number): LogError {
    const most = this.#options.longestPull ?? LONGEST_PULL;
    return new LogError({
      code: 'too large',
      file: this.table.file,
      line,
      expected: `pulls of at most ${most} rows`,
      found: 'more',
      mend: 'Number the pulls in a column, or raise longestPull.',
    });
  }
}

function hashOf(channels: Channels): string {
  const parts = (Object.keys(CHANNEL_KINDS) as ChannelRole[]).flatMap((role) => channels[role]?.si ?? []);
  const bytes = new Uint8Array(8 * parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const { buffer, byteOffset, byteLength } of parts) {
    bytes.set(new Uint8Array(buffer, byteOffset, byteLength), at);
    at += byteLength;
  }
  return sha256(bytes);
}

function noTimes(file: string): LogError {
  return new LogError({
    code: 'no such column',
    file,
    expected: 'a column of time, or one that numbers the pulls',
    found: 'neither',
    fact: 'The pulls of a long recording are found by how engine speed rises in time, and it has no column of time.',
    mend: 'Say which it is: time: channel(1). Or number the pulls in a column.',
  });
}
