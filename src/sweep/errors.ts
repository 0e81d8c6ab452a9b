import { onOneLine } from './words-for-people.js';

/** What can be wrong with a log, a folder of logs or the way to read them. Stable: callers test it. */
export type LogErrorCode =
  | 'not text'
  | 'too large'
  | 'empty'
  | 'no header'
  | 'one column'
  | 'ragged row'
  | 'quote'
  | 'separator'
  | 'not a number'
  | 'ambiguous number'
  | 'impossible value'
  | 'unknown unit'
  | 'no unit'
  | 'units disagree'
  | 'no such column'
  | 'several columns'
  | 'one column for two'
  | 'no engine speed'
  | 'pull comes back'
  | 'unreadable'
  | 'misplaced'
  | 'no logs'
  | 'no such set-up';

/** The parts of one refusal. */
export interface LogProblem {
  readonly code: LogErrorCode;
  /** The file, as the user knows it; left out where it is about a folder or a name. */
  readonly file?: string | undefined;
  /** Line of the file, from 1. */
  readonly line?: number | undefined;
  /** The column's header as it stands in the file. */
  readonly column?: string | undefined;
  readonly expected: string;
  readonly found: string;
  /** The fact in words, where "needed …, found …" would read badly. */
  readonly fact?: string | undefined;
  /** How to mend it. */
  readonly mend?: string | undefined;
  /** Lowest and highest value of the column, where that helps to tell what it is. */
  readonly range?: readonly [low: number, high: number] | undefined;
}

const INSPECT = Symbol.for('nodejs.util.inspect.custom');

/**
 * A log that cannot be read, and nothing of it was: there is never half a sweep. `code` is stable; `file`, `line`, `column`,
 * `expected` and `found` say where and why, and the message says it in one line.
 */
export class LogError extends Error {
  override readonly name = 'LogError';
  readonly code: LogErrorCode;
  readonly file: string | undefined;
  readonly line: number | undefined;
  readonly column: string | undefined;
  readonly expected: string;
  readonly found: string;
  /** What is wrong, without the file and line. */
  readonly fact: string;
  /** How to mend it, or empty. */
  readonly mend: string;
  /** Lowest and highest value of the column, where that helps to tell what it is. */
  readonly range: readonly [low: number, high: number] | undefined;

  constructor(problem: LogProblem) {
    const { code, file, line, column, expected, found, mend = '', range } = problem;
    const fact = problem.fact ?? factOf(problem);
    super(onOneLine(`${placeOf(file, line)}${fact}${mend === '' ? '' : ` ${mend}`}`));
    this.code = code;
    this.file = file;
    this.line = line;
    this.column = column;
    this.expected = expected;
    this.found = found;
    this.fact = onOneLine(fact);
    this.mend = onOneLine(mend);
    this.range = range;
  }

  /** @internal A notebook shows the words, not the stack of the kernel. */
  [INSPECT](): string {
    return `${this.name}: ${this.message}`;
  }
}

function placeOf(file: string | undefined, line: number | undefined): string {
  if (file === undefined) return line === undefined ? '' : `line ${line}: `;
  return `${file}${line === undefined ? '' : `, line ${line}`}: `;
}

function factOf({ column, expected, found }: LogProblem): string {
  return `${column === undefined ? '' : `column "${column}" `}needed ${expected}, found ${found}.`;
}
