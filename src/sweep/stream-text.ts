import type { Encoding } from './decode.js';
import { LogError } from './errors.js';

/** What a log comes in: pieces of its bytes or text, cut anywhere. A file's read stream and a browser's `file.stream()` are such. */
export type LogPieces = AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>;

/** Bytes of the longest byte-order mark. */
const MARK = 3;

/** Turns the bytes of a log into text piece by piece, whatever its byte-order mark and line ends. */
export class StreamedText {
  readonly #file: string;
  #decoder: InstanceType<typeof TextDecoder> | undefined;
  #encoding: Encoding = 'UTF-8';
  #isStart = true;
  /** First bytes, too few to tell a byte-order mark. */
  #first: Uint8Array | undefined;
  #heldReturn = false;

  constructor(file: string) {
    this.#file = file;
  }

  get encoding(): Encoding {
    return this.#encoding;
  }

  /** Text of the next piece, with one kind of line end. */
  next(piece: Uint8Array | string): string {
    if (piece.length === 0) return '';
    if (typeof piece === 'string') return this.#plain(this.#take(piece));
    const bytes = this.#first === undefined ? piece : Uint8Array.from([...this.#first, ...piece]);
    if (this.#isStart && bytes.length < MARK) {
      this.#first = bytes;
      return '';
    }
    this.#first = undefined;
    return this.#plain(this.#decode(bytes));
  }

  #plain(text: string): string {
    this.#isStart = false;
    if (text.includes('\u0000')) {
      throw new LogError({
        code: 'not text',
        file: this.#file,
        expected: 'a text file with one row a line',
        found: 'bytes that are no text',
        mend: "Export the log as CSV from the logger's own program.",
      });
    }
    return this.#oneLineEnd(text);
  }

  /** What is left when the last piece has come. */
  end(): string {
    const first = this.#first === undefined ? '' : this.#plain(this.#decode(this.#first));
    const text = first + this.#oneLineEnd(this.#decoder?.decode() ?? '');
    const held = this.#heldReturn;
    this.#heldReturn = false;
    return held ? `${text}\n` : text;
  }

  #take(text: string): string {
    this.#encoding = 'text';
    return this.#isStart && text.startsWith('\uFEFF') ? text.slice(1) : text;
  }

  #decode(bytes: Uint8Array): string {
    if (this.#isStart && bytes[0] === 0xff && bytes[1] === 0xfe) this.#use('UTF-16LE');
    else if (this.#isStart && bytes[0] === 0xfe && bytes[1] === 0xff) this.#use('UTF-16BE');
    // As long as every byte is ASCII, UTF-8 and Windows-1252 are one; the first that is not decides.
    else if (this.#decoder === undefined && bytes.every((byte) => byte < 0x80)) return new TextDecoder().decode(bytes);
    if (this.#decoder !== undefined) return this.#decodeOn(bytes);
    try {
      this.#use('UTF-8');
      return this.#decoder!.decode(bytes, { stream: true });
    } catch {
      this.#use('Windows-1252');
      return this.#decoder!.decode(bytes, { stream: true });
    }
  }

  #decodeOn(bytes: Uint8Array): string {
    try {
      return this.#decoder!.decode(bytes, { stream: true });
    } catch {
      throw new LogError({
        code: 'not text',
        file: this.#file,
        expected: 'one encoding throughout',
        found: 'bytes that are not UTF-8 after others that are',
        mend: 'Save the log again as UTF-8.',
      });
    }
  }

  #use(encoding: Exclude<Encoding, 'text'>): void {
    this.#encoding = encoding;
    this.#decoder = new TextDecoder(encoding.toLowerCase(), { fatal: encoding === 'UTF-8' });
  }

  /** A return at the end of a piece may be the first half of a line end. */
  #oneLineEnd(text: string): string {
    let whole = this.#heldReturn ? `\r${text}` : text;
    this.#heldReturn = whole.endsWith('\r');
    if (this.#heldReturn) whole = whole.slice(0, -1);
    return whole.includes('\r') ? whole.replaceAll('\r\n', '\n').replaceAll('\r', '\n') : whole;
  }
}
