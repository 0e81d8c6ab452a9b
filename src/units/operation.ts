import { argumentName, inputAt } from './argument-name.js';
import { CalculationError, type Problem } from './errors.js';
import type { Kind } from './kinds.js';
import type { Column, Note, Operation, OperationInput, Quantity, Rule } from './origin.js';
import { inputProblem, lengthProblem, noAnswerProblem, needed, ruleProblem, showSi } from './problems.js';
import { NO_NOTES, columnOf, isColumn, quantityOf } from './quantity.js';

/** What every call may ask for. */
export interface CallOptions {
  /** Refuse where the inputs would give the answer a note; notes that every answer carries are no reason. */
  readonly strict?: boolean;
}

/** What a call over columns may ask for. */
export interface ColumnsOptions extends CallOptions {
  /** `'missing'` counts impossible rows as missing; otherwise the first one is an error. */
  readonly badRows?: 'missing';
}

const hasLists = (operation: Operation): boolean => operation.inputs[operation.inputs.length - 1]?.list === true;

/** Computes one step from quantities, checked, remembering how. */
export function perform<K extends Kind>(
  operation: Operation & { readonly output: { readonly kind: K } },
  given: readonly Quantity[],
  options?: CallOptions,
): Quantity<K> {
  const { inputs, rules, output } = operation;
  const count = given.length;
  const lists = hasLists(operation);
  const si = new Array<number>(count);
  let notes = operation.notes ?? NO_NOTES;
  for (let i = 0; i < count; i++) {
    const value = given[i];
    const input = lists ? inputAt(operation, i, count) : inputs[i]!;
    if (
      value === undefined ||
      value === null ||
      value.kind !== input.kind ||
      !(value.si >= input.min && value.si <= input.max)
    ) {
      throw diagnose(operation, given);
    }
    si[i] = value.si;
    if (value.notes !== undefined && value.notes.length > 0) notes = merged(notes, value.notes);
    if (input.trusted !== undefined && !(value.si >= input.trusted[0] && value.si <= input.trusted[1])) {
      notes = merged(notes, [outsideTrusted(operation, input, options)]);
    }
  }
  for (let i = 0; i < rules.length; i++) {
    const rule = rules[i]!;
    if (!rule.holds(...si)) notes = merged(notes, [brokenRule(operation, rule, given, si, options)]);
  }
  const result = apply(operation.kernel, si);
  if (!Number.isFinite(result)) throw new CalculationError(operation.name, [noAnswerProblem(operation, given)]);
  return quantityOf(output.kind, result, output.unit, { type: 'step', operation, inputs: given }, notes);
}

/** Calls a kernel without the cost of spreading, for the usual numbers of arguments. */
function apply(kernel: Operation['kernel'], a: readonly number[]): number {
  switch (a.length) {
    case 1:
      return kernel(a[0]!);
    case 2:
      return kernel(a[0]!, a[1]!);
    case 3:
      return kernel(a[0]!, a[1]!, a[2]!);
    case 4:
      return kernel(a[0]!, a[1]!, a[2]!, a[3]!);
    case 5:
      return kernel(a[0]!, a[1]!, a[2]!, a[3]!, a[4]!);
    default:
      return kernel(...a);
  }
}

/** Notes of several inputs together, each once: the same note reaches a result along every path. */
export function merged(notes: readonly Note[], more: readonly Note[]): readonly Note[] {
  if (notes.length === 0) return more;
  const fresh = more.filter((note) => !notes.some((known) => known === note || known.message === note.message));
  return fresh.length === 0 ? notes : [...notes, ...fresh];
}

function outsideTrusted(
  operation: Operation,
  input: OperationInput,
  options: CallOptions | undefined,
  rows?: number,
): Note {
  const [low, high] = input.trusted!;
  const range = `${showSi(input.kind, low, input.assume?.unit)} to ${showSi(input.kind, high, input.assume?.unit)}`;
  const where = rows === undefined ? '' : ` in ${rows} rows`;
  const message = `${operation.name}: ${input.name} is outside the trusted range, ${range}${where}.`;
  if (options?.strict === true) {
    throw new CalculationError(operation.name, [
      {
        code: 'outside trusted range',
        input: input.name,
        need: `within ${range}, where it is trusted`,
        got: 'a value outside',
        mend: '',
      },
    ]);
  }
  const note = { code: 'outside trusted range', calculation: operation.name, input: input.symbol, message };
  return rows === undefined ? note : { ...note, rows };
}

function brokenRule(
  operation: Operation,
  rule: Rule,
  given: readonly Quantity[],
  si: readonly number[],
  options: CallOptions | undefined,
): Note {
  if (rule.otherwise !== 'note' || options?.strict === true) {
    throw new CalculationError(operation.name, [ruleProblem(operation, rule, given)]);
  }
  return {
    code: 'rule',
    calculation: operation.name,
    message: `${operation.name}: ${needed(rule)}, which is not so here${rule.found ? `: ${rule.found(...si)}` : ''}.`,
  };
}

/** Every input that is wrong, each with how to mend it. */
export function diagnose(
  operation: Operation,
  given: readonly unknown[],
  columns: 'refused' | 'accepted' = 'refused',
): CalculationError {
  return new CalculationError(operation.name, inputProblems(operation, given, columns));
}

/** The same as a list, empty where nothing is wrong: an error is costly to make. */
export function inputProblems(
  operation: Operation,
  given: readonly unknown[],
  columns: 'refused' | 'accepted' = 'refused',
): Problem[] {
  return given.flatMap((value, i) => {
    const input = inputAt(operation, i, given.length);
    const problem = inputProblem(input, argumentName(operation, i, given.length), value, columns);
    return problem ? [problem] : [];
  });
}

/** Computes one step row by row. Scalars hold for every row; missing rows stay missing. */
export function performColumns<K extends Kind>(
  operation: Operation & { readonly output: { readonly kind: K } },
  given: readonly (Quantity | Column)[],
  options?: ColumnsOptions,
): Column<K> {
  const { inputs, rules, output, kernel } = operation;
  const count = given.length;
  const rows = commonLength(operation, given);
  const data: Float64Array[] = [];
  const stride: number[] = [];
  const state = new Uint8Array(rows);
  let notes = operation.notes ?? NO_NOTES;
  for (let i = 0; i < count; i++) {
    const value = given[i];
    const input = hasLists(operation) ? inputAt(operation, i, count) : inputs[i]!;
    if (
      value === undefined ||
      value === null ||
      value.kind !== input.kind ||
      (!isColumn(value) && !(value.si >= input.min && value.si <= input.max))
    ) {
      throw diagnose(operation, given, 'accepted');
    }
    data.push(isColumn(value) ? value.si : Float64Array.of(value.si));
    stride.push(isColumn(value) ? 1 : 0);
    notes = merged(notes, value.notes ?? NO_NOTES);
    const outside = checkRows(input, data[i]!, stride[i]!, state);
    if (outside > 0)
      notes = merged(notes, [outsideTrusted(operation, input, options, stride[i] === 0 ? undefined : outside)]);
  }
  const results = new Float64Array(rows);
  const row = new Array<number>(count);
  const bent = rules.map(() => 0);
  let refused = 0;
  let firstBad = -1;
  for (let r = 0; r < rows; r++) {
    if (state[r] === MISSING) {
      results[r] = NaN;
      continue;
    }
    for (let i = 0; i < count; i++) row[i] = data[i]![r * stride[i]!]!;
    let bad = state[r] === IMPOSSIBLE;
    for (let i = 0; i < rules.length && !bad; i++) {
      if (rules[i]!.holds(...row)) continue;
      if (rules[i]!.otherwise === 'note' && options?.strict !== true) bent[i]!++;
      else bad = true;
    }
    const result = bad ? NaN : apply(kernel, row);
    results[r] = result;
    if (!Number.isFinite(result)) {
      results[r] = NaN;
      refused++;
      if (firstBad < 0) firstBad = r;
    }
  }
  if (refused > 0 && options?.badRows !== 'missing') throw badRow(operation, given, firstBad, refused, rows);
  rules.forEach((rule, i) => {
    if (bent[i]! > 0) {
      const message = `${operation.name}: ${needed(rule)}, which is not so in ${bent[i]} rows.`;
      notes = merged(notes, [{ code: 'rule', calculation: operation.name, message, rows: bent[i]! }]);
    }
  });
  const before = given.reduce((most, value) => (isColumn(value) ? Math.max(most, value.refused) : most), 0);
  return columnOf(
    output.kind,
    results,
    output.unit,
    { type: 'step', operation, inputs: given },
    notes,
    before + refused,
  );
}

const MISSING = 1;
const IMPOSSIBLE = 2;

/** Marks the rows that cannot be used and counts those outside the trusted range. */
function checkRows(input: OperationInput, values: Float64Array, stride: number, state: Uint8Array): number {
  const { min, max } = input;
  const [low, high] = input.trusted ?? [-Infinity, Infinity];
  const rows = stride === 0 ? 1 : state.length;
  let outside = 0;
  for (let r = 0; r < rows; r++) {
    const value = values[r]!;
    if (value >= low && value <= high && value >= min && value <= max) continue;
    if (Number.isNaN(value)) state[r] = MISSING;
    else if (!(value >= min && value <= max)) state[r] ||= IMPOSSIBLE;
    else outside++;
  }
  return outside;
}

function commonLength(operation: Operation, given: readonly (Quantity | Column)[]): number {
  let rows = -1;
  for (const value of given) {
    if (!isColumn(value)) continue;
    if (rows >= 0 && value.si.length !== rows) {
      throw new CalculationError(operation.name, [
        lengthProblem(given.filter(isColumn).map((column) => column.si.length)),
      ]);
    }
    rows = value.si.length;
  }
  if (rows < 0) {
    throw new CalculationError(operation.name, [
      {
        code: 'kind',
        input: '',
        need: 'at least one input must be a column',
        got: 'quantities only',
        mend: 'Call it without .columns.',
      },
    ]);
  }
  return rows;
}

/** The error one call with that row would give, with where it is and how many more there are. */
function badRow(
  operation: Operation,
  given: readonly (Quantity | Column)[],
  row: number,
  refused: number,
  rows: number,
): CalculationError {
  const where = `in row ${row} (and ${refused - 1} more of ${rows} rows)`;
  const mend = `To carry on and count such rows as missing: { badRows: 'missing' }.`;
  const values = given.map((value) =>
    isColumn(value) ? quantityOf(value.kind, value.si[row]!, value.unit, undefined, NO_NOTES) : value,
  );
  try {
    perform(operation, values);
  } catch (error) {
    if (!(error instanceof CalculationError)) throw error;
    const [first] = error.problems;
    return new CalculationError(operation.name, [{ ...first!, got: `${first!.got} ${where}`, mend }]);
  }
  // Only `strict` can refuse a row that a plain call accepts.
  return new CalculationError(operation.name, [
    { code: 'rule', input: '', need: 'every rule must hold in every row', got: `a row that bends one, ${where}`, mend },
  ]);
}
