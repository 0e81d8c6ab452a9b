/** Where the records of a delimited text lie: what the parser needs to be true before it may be trusted with the text. */
export interface Records {
  readonly starts: number[];
  readonly ends: number[];
  /** Cells of each record. */
  readonly cells: number[];
  /** Line of each record, from 1. */
  readonly lines: number[];
  /** Lines that begin with `#` and were passed over. */
  readonly comments: number;
  /** Whether anything but these records lies between the first and the last of them. */
  readonly isContiguous: boolean;
  readonly problem: RecordProblem | undefined;
}

/** Why a text cannot be cut into records. */
export interface RecordProblem {
  readonly what: 'unclosed quote' | 'text after quote' | 'long cell' | 'too many columns' | 'too many rows';
  readonly line: number;
}

/** Most columns, rows and characters of a cell that are read; a real log is far below each. */
export const MOST_COLUMNS = 1000;
export const MOST_ROWS = 2e6;
export const LONGEST_CELL = 2000;

const NEWLINE = 10;
const SPACE = 32;
const QUOTE = 34;
const HASH = 35;

interface Scan {
  readonly separator: string;
  readonly from: number;
  readonly line: number;
  readonly most?: number;
}

/**
 * Cuts a text into records: separators and line ends count outside quotes only, and a quote opens only at the start of a cell.
 * Records without any content are passed over.
 */
export function scanRecords(text: string, { separator, from, line: firstLine, most = MOST_ROWS }: Scan): Records {
  const separatorCode = separator.charCodeAt(0);
  const starts: number[] = [];
  const ends: number[] = [];
  const cells: number[] = [];
  const lines: number[] = [];
  let comments = 0;
  let isContiguous = true;
  let line = firstLine;
  let at = from;
  const result = (problem?: RecordProblem): Records => ({
    starts,
    ends,
    cells,
    lines,
    comments,
    isContiguous,
    problem,
  });
  while (at < text.length) {
    if (isComment(text, at, separatorCode)) {
      comments++;
      isContiguous &&= starts.length === 0;
      const end = text.indexOf('\n', at);
      at = end < 0 ? text.length : end + 1;
      line++;
      continue;
    }
    const start = at;
    const startLine = line;
    let count = 1;
    let cellStart = at;
    let isAtCellStart = true;
    let isAfterQuote = false;
    let isBlank = true;
    for (; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code === NEWLINE) break;
      if (code === separatorCode) {
        if (at - cellStart > LONGEST_CELL) return result({ what: 'long cell', line });
        count++;
        cellStart = at + 1;
        isAtCellStart = true;
        isAfterQuote = false;
      } else if (code === SPACE) continue;
      else if (isAfterQuote) return result({ what: 'text after quote', line });
      else if (code === QUOTE && isAtCellStart) {
        const opened = line;
        at = closingQuote(text, at + 1);
        if (at < 0) return result({ what: 'unclosed quote', line: opened });
        line += newlines(text, cellStart, at);
        isAtCellStart = false;
        isAfterQuote = true;
        isBlank = false;
      } else {
        isAtCellStart = false;
        isBlank = false;
      }
    }
    if (at - cellStart > LONGEST_CELL) return result({ what: 'long cell', line });
    if (!isBlank) {
      if (count > MOST_COLUMNS) return result({ what: 'too many columns', line: startLine });
      starts.push(start);
      ends.push(at);
      cells.push(count);
      lines.push(startLine);
      if (starts.length >= most) return result(most === MOST_ROWS ? { what: 'too many rows', line } : undefined);
    } else if (starts.length > 0 && at > start) isContiguous = false;
    at++;
    line++;
  }
  return result();
}

/** A line that begins with `#`, unless that is the name of a column of row numbers. */
function isComment(text: string, at: number, separatorCode: number): boolean {
  return text.charCodeAt(at) === HASH && text.charCodeAt(at + 1) !== separatorCode;
}

function closingQuote(text: string, from: number): number {
  for (let at = text.indexOf('"', from); at >= 0; at = text.indexOf('"', at + 2)) {
    if (text.charCodeAt(at + 1) !== QUOTE) return at;
  }
  return -1;
}

function newlines(text: string, from: number, to: number): number {
  let count = 0;
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1)) count++;
  return count;
}
