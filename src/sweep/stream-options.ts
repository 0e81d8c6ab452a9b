import type { FindPullsOptions } from './find-pulls.js';
import type { ReadLogOptions } from './read-log.js';

/** How far the reading of a stream has come. */
export interface ReadingProgress {
  readonly file: string;
  /** Bytes (of text pieces: characters) taken so far. */
  readonly bytes: number;
  /** All there are, where that was told. */
  readonly totalBytes: number | undefined;
  /** Rows and pulls read so far; undefined where a file is taken whole and read later. */
  readonly rows: number | undefined;
  readonly pulls: number | undefined;
}

/** How a log is read as a stream. */
export interface ReadLogStreamOptions extends ReadLogOptions {
  /** How pulls are told where no column numbers them. */
  readonly findPulls?: FindPullsOptions | undefined;
  /** Most rows of one pull, which bound the memory; 500 000 when left out. */
  readonly longestPull?: number | undefined;
  /** Length of the stream, for the progress. */
  readonly totalBytes?: number | undefined;
  /** Called a few times a second of reading. */
  readonly onProgress?: ((progress: ReadingProgress) => void) | undefined;
}
