import { checkChannelMap } from './channel.js';
import { LogError } from './errors.js';
import { PartReader } from './part-reader.js';
import type { Pull } from './pull.js';
import { scanRecords } from './records.js';
import type { ReadLogStreamOptions } from './stream-options.js';
import { StreamedText, type LogPieces } from './stream-text.js';
import { readMoreRows, readTable, type Table } from './table.js';

/** Characters that are read at a time. */
const BATCH = 2e6;
/** A record longer than this is no record. */
const LONGEST_RECORD = 2e6;

/**
 * Reads a log of any length piece by piece and hands on each pull as soon as it is over; memory holds one pull and a few megabytes.
 *
 * Pulls are told by the column that numbers them. Where there is none, a pull is what the engine speed of a long recording rises along:
 * by 1000 rpm or more, without falling back by more than 150 rpm or rising slower than 20 rpm/s.
 *
 * @param source The pieces: a file's read stream, `file.stream()` of a browser, or any list of texts or bytes.
 * @returns The pulls in the order of the log. Their `hash` is that of their own readings.
 * @throws LogError if a part cannot be read, naming file, line and column; pulls handed on before it stay good.
 * @throws CalculationError if the channel map or an option is wrong in itself.
 * @example
 * for await (const pull of readLogStream(createReadStream('day.csv'), { file: 'day.csv' })) console.log(String(pullQuality(pull)));
 */
export async function* readLogStream(
  source: LogPieces,
  options: ReadLogStreamOptions = {},
): AsyncGenerator<Pull, void, undefined> {
  const { file = 'the log', channels: map = {}, onProgress, totalBytes } = options;
  checkChannelMap(map, 'readLogStream');
  const text = new StreamedText(file);
  const log = new LogInParts(file, options, () => text.encoding);
  let bytes = 0;
  let pulls = 0;
  const tell = (): void => onProgress?.({ file, bytes, totalBytes, rows: log.rows, pulls });
  for await (const piece of source) {
    bytes += piece.length;
    for (const pull of log.take(text.next(piece))) {
      pulls++;
      yield pull;
    }
    if (log.isFresh()) tell();
  }
  for (const pull of log.finish(text.end())) {
    pulls++;
    yield pull;
  }
  tell();
}

/** A log that comes in parts: cut into whole records, read, and gathered into pulls. */
class LogInParts {
  readonly #file: string;
  readonly #options: ReadLogStreamOptions;
  readonly #encoding: () => Table['dialect']['encoding'];
  #text: string[] = [];
  #length = 0;
  #line = 1;
  #reader: PartReader | undefined;
  #told = 0;

  constructor(file: string, options: ReadLogStreamOptions, encoding: () => Table['dialect']['encoding']) {
    this.#file = file;
    this.#options = options;
    this.#encoding = encoding;
  }

  get rows(): number {
    return this.#reader?.rows ?? 0;
  }

  /** Whether rows have been read since this was asked last. */
  isFresh(): boolean {
    const isFresh = this.rows > this.#told;
    this.#told = this.rows;
    return isFresh;
  }

  take(text: string): Iterable<Pull> {
    this.#text.push(text);
    this.#length += text.length;
    return this.#length < BATCH ? [] : this.#read(false);
  }

  *finish(text: string): Iterable<Pull> {
    this.#text.push(text);
    yield* this.#read(true);
    if (this.#reader) yield* this.#reader.finish();
  }

  *#read(isEnd: boolean): Iterable<Pull> {
    const all = this.#text.join('');
    const whole = isEnd ? all.length : this.#wholeRecords(all);
    this.#text = [all.slice(whole)];
    this.#length = all.length - whole;
    if (whole === 0 && !(isEnd && this.#reader === undefined)) {
      if (this.#length <= BATCH + LONGEST_RECORD) return;
      throw this.#endless();
    }
    const part = all.slice(0, whole);
    if (this.#reader === undefined) {
      const table = readTable(part, this.#file, this.#options);
      this.#reader = new PartReader(
        { ...table, dialect: { ...table.dialect, encoding: this.#encoding() } },
        this.#options,
      );
      yield* this.#reader.read(table);
    } else yield* this.#reader.read(readMoreRows(part, this.#reader.table, this.#line));
    for (let at = part.indexOf('\n'); at >= 0; at = part.indexOf('\n', at + 1)) this.#line++;
  }

  /** Length of the text that holds whole records only: a line end within quotation marks ends none. */
  #wholeRecords(text: string): number {
    const end = text.lastIndexOf('\n') + 1;
    if (!text.includes('"')) return end;
    const separator = this.#reader?.table.dialect.separator ?? this.#options.separator;
    if (separator === undefined) return this.#endOfEvenQuotes(text, end);
    const { ends, problem } = scanRecords(text.slice(0, end), { separator, from: 0, line: 1 });
    return problem?.what === 'unclosed quote' && ends.length > 0 ? ends[ends.length - 1]! + 1 : end;
  }

  /** Before the separator is known: the last line end with an even number of quotation marks before it. */
  #endOfEvenQuotes(text: string, end: number): number {
    let quotes = 0;
    for (let at = text.indexOf('"'); at >= 0 && at < end; at = text.indexOf('"', at + 1)) quotes++;
    if (quotes % 2 === 0) return end;
    return text.lastIndexOf('\n', text.lastIndexOf('"', end)) + 1;
  }

  #endless(): LogError {
    return new LogError({
      code: 'too large',
      file: this.#file,
      line: this.#line,
      expected: 'rows that end',
      found: `more than ${LONGEST_RECORD / 1e6} million characters without a line end outside quotation marks`,
    });
  }
}
