/** One thing wrong with a call: data for a form, words for a person. */
export interface Problem {
  /** Stable: `kind`, `missing`, `unknown`, `impossible`, `rule`, `no answer`, `not converged`, `length`. */
  readonly code:
    | 'kind'
    | 'missing'
    | 'unknown'
    | 'impossible'
    | 'rule'
    | 'no answer'
    | 'not converged'
    | 'length'
    | 'outside trusted range';
  /** Name of the argument, or empty where it is about several. */
  readonly input: string;
  /** What is needed, to follow "must be". */
  readonly need: string;
  /** What came, in words. */
  readonly got: string;
  /** How to mend it; empty where nothing useful can be said. */
  readonly mend: string;
}

const INSPECT = Symbol.for('nodejs.util.inspect.custom');

/** Everything wrong with one call of a calculation. Test `problems[i].code`, never the words. */
export class CalculationError extends Error {
  override readonly name = 'CalculationError';
  /** The calculation that refused. */
  readonly calculation: string;
  readonly problems: readonly Problem[];

  /** True for an error of another copy of the library too: a program may hold its ES modules beside its CommonJS. */
  static override [Symbol.hasInstance](value: unknown): value is CalculationError {
    return isNamed(value, 'CalculationError') && Array.isArray(value['problems']);
  }

  constructor(calculation: string, problems: readonly Problem[]) {
    super(messageOf(calculation, problems));
    this.calculation = calculation;
    this.problems = problems;
  }

  /** Code of the first problem. */
  get code(): Problem['code'] {
    return (this.problems[0] as Problem).code;
  }

  /** @internal A notebook shows the words, not the stack of the kernel. */
  [INSPECT](): string {
    return `${this.name}: ${this.message}`;
  }
}

/** A text that is no unit, or could be several. */
export class UnitError extends Error {
  override readonly name = 'UnitError';
  readonly code: 'unknown unit' | 'ambiguous unit' | 'not a number';

  /** True for an error of another copy of the library too. */
  static override [Symbol.hasInstance](value: unknown): value is UnitError {
    return isNamed(value, 'UnitError') && typeof value['code'] === 'string';
  }

  constructor(code: UnitError['code'], message: string) {
    super(message);
    this.code = code;
  }

  /** @internal */
  [INSPECT](): string {
    return `${this.name}: ${this.message}`;
  }
}

function isNamed(value: unknown, name: string): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && 'name' in value && value.name === name && 'message' in value;
}

function messageOf(calculation: string, problems: readonly Problem[]): string {
  const [first] = problems as readonly [Problem];
  if (problems.length === 1) return `${calculation}: ${sentence(first)}`;
  return `${calculation}: ${problems.length} inputs need mending\n${problems.map((problem) => `  - ${sentence(problem)}`).join('\n')}`;
}

function sentence({ input, need, got, mend }: Problem): string {
  const fact = input ? `${input} must be ${need}, got ${got}.` : `${need}, got ${got}.`;
  return mend ? `${fact} ${mend}` : fact;
}
