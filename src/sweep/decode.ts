import { LogError } from './errors.js';

/** How the bytes of a log were turned into text. */
export type Encoding = 'UTF-8' | 'UTF-16LE' | 'UTF-16BE' | 'Windows-1252' | 'text';

/** A log as text with one kind of line end, and how it was decoded. */
export interface Decoded {
  readonly text: string;
  readonly encoding: Encoding;
}

/** Longest log that is read, in characters or bytes: some hours of a fast logger, and far from what would exhaust a browser tab. */
export const LONGEST_LOG = 1e8;

/**
 * The text of a log, whatever its byte-order mark and line ends.
 *
 * Bytes that are not UTF-8 are read as Windows-1252, because many loggers write the degree sign so.
 */
export function decode(data: string | Uint8Array, file: string): Decoded {
  if (data.length > LONGEST_LOG) {
    throw new LogError({
      code: 'too large',
      file,
      expected: `at most ${LONGEST_LOG / 1e6} MB`,
      found: `${Math.ceil(data.length / 1e6)} MB`,
      mend: 'Cut the pulls out of the recording.',
    });
  }
  const { text, encoding } = typeof data === 'string' ? { text: data, encoding: 'text' as const } : decodeBytes(data);
  if (text.includes('\u0000')) {
    throw new LogError({
      code: 'not text',
      file,
      expected: 'a text file with one row a line',
      found: 'bytes that are no text',
      mend: "Export the log as CSV from the logger's own program.",
    });
  }
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  return { text: plain.includes('\r') ? plain.replaceAll('\r\n', '\n').replaceAll('\r', '\n') : plain, encoding };
}

function decodeBytes(bytes: Uint8Array): Decoded {
  if (bytes[0] === 0xff && bytes[1] === 0xfe)
    return { text: new TextDecoder('utf-16le').decode(bytes), encoding: 'UTF-16LE' };
  if (bytes[0] === 0xfe && bytes[1] === 0xff)
    return { text: new TextDecoder('utf-16be').decode(bytes), encoding: 'UTF-16BE' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'Windows-1252' };
  }
}
