import type { Kind, Same, UnitOf } from '../units/kinds.js';
import { CalculationError } from '../units/errors.js';
import {
  describe,
  diagnose,
  perform,
  performColumns,
  requireOptions,
  unknownNames,
  type CallOptions,
  type ColumnsOptions,
} from '../units/internal.js';
import type { Column, Operation, OperationInput, Quantity } from '../units/origin.js';
import { isColumn, isQuantity } from '../units/quantity.js';
import type {
  Arguments,
  AssumedInput,
  Bounds,
  ColumnArguments,
  Definition,
  Inputs,
  ListInput,
  Output,
  RequiredInput,
  Specification,
} from './definition.js';

/** A calculation: call it with quantities, or over columns; its definition travels with it as data. */
export interface Calculation<I extends Inputs, K extends Kind> {
  (inputs: Arguments<I>, options?: CallOptions): Quantity<K>;
  /** The same over columns, row by row; quantities hold for every row. */
  columns(inputs: ColumnArguments<I>, options?: ColumnsOptions): Column<K>;
  /** The bare formula on SI numbers in the order of the inputs, unchecked. */
  kernel(...si: number[]): number;
  /** The definition as data. */
  readonly spec: Specification<K>;
}

/** An input that must be given. */
/* @__NO_SIDE_EFFECTS__ */
export function input<K extends Kind>(symbol: string, kind: K, bounds: Bounds): RequiredInput<K> {
  return { need: 'required', symbol, kind, ...bounds };
}

/** An input for which a value is assumed when none is given. The assumed value is an input of the result like any other. */
/* @__NO_SIDE_EFFECTS__ */
export function assumed<K extends Kind>(
  symbol: string,
  kind: K,
  bounds: Bounds & { readonly assume: Quantity<Same<K>> },
): AssumedInput<K> {
  return { need: 'assumed', symbol, kind, ...bounds };
}

/** A list of quantities. Lists come after the other inputs; several lists have one length. */
/* @__NO_SIDE_EFFECTS__ */
export function each<K extends Kind>(symbol: string, kind: K, bounds: Bounds): ListInput<K> {
  return { need: 'list', symbol, kind, ...bounds };
}

/** What a calculation gives, and the unit it shows in. */
/* @__NO_SIDE_EFFECTS__ */
export function output<K extends Kind>(symbol: string, kind: K, unit: UnitOf<K>): Output<K> {
  return { symbol, kind, unit };
}

/**
 * Makes a calculation from its definition.
 *
 * @returns A function of quantities by name, with `.columns`, `.kernel` and `.spec`.
 */
/* @__NO_SIDE_EFFECTS__ */
export function calculation<const I extends Inputs, K extends Kind>(definition: Definition<I, K>): Calculation<I, K> {
  const spec = specification(definition);
  const { inputs, name } = spec;
  const names = inputs.map((item) => item.name);
  const lists = inputs.some((item) => item.list === true);

  const call = (args: Arguments<I>, options?: CallOptions): Quantity<K> => {
    if (options !== undefined) requireOptions(name, options, CALL_OPTIONS);
    return perform(spec, positional((args ?? {}) as Record<string, unknown>) as Quantity[], options);
  };

  /** The arguments in the order of the inputs. A name that is not an input would be ignored silently, so it is an error. */
  function positional(args: Record<string, unknown>): unknown[] {
    const given = new Array<unknown>(names.length);
    let unmatched = 0;
    for (const name in args) if (args[name] !== undefined) unmatched++;
    for (let i = 0; i < names.length; i++) {
      const value = args[names[i]!];
      if (value !== undefined) unmatched--;
      given[i] = value === undefined ? inputs[i]!.assume : value;
    }
    if (unmatched > 0) throw unknownArgument(spec, args, names, given);
    return lists ? flatten(given) : given;
  }

  function flatten(given: unknown[]): unknown[] {
    const first = inputs.findIndex((item) => item.list === true);
    const length = (given[first] as unknown[] | undefined)?.length;
    const equal = given.slice(first).every((list) => Array.isArray(list) && list.length === length && list.length > 0);
    if (!equal) throw unequalLists(spec, names.slice(first), given.slice(first));
    return [...given.slice(0, first), ...(given.slice(first) as unknown[][]).flat()];
  }

  const columns = (args: ColumnArguments<I>, options?: ColumnsOptions): Column<K> => {
    if (options !== undefined) requireOptions(name, options, COLUMNS_OPTIONS);
    return performColumns(spec, positional((args ?? {}) as Record<string, unknown>) as (Quantity | Column)[], options);
  };

  return Object.assign(call, { columns, kernel: definition.si, spec });
}

function specification<I extends Inputs, K extends Kind>(definition: Definition<I, K>): Specification<K> {
  const { name, task, output: result, formula, si, sources } = definition;
  const uses: Record<string, Operation> = {};
  for (const symbol in definition.uses) uses[symbol] = definition.uses[symbol]!.spec;
  return {
    name,
    task,
    inputs: Object.entries(definition.inputs).map(([argument, item]) => operationInput(argument, item)),
    output: result,
    formula,
    kernel: si,
    rules: definition.rules ?? [],
    rises: definition.rises ?? [],
    falls: definition.falls ?? [],
    sources,
    ...(definition.notes ? { notes: definition.notes.map((note) => ({ ...note, calculation: name })) } : {}),
    ...(definition.uses ? { uses } : {}),
  };
}

function operationInput(name: string, { need, ...item }: RequiredInput | AssumedInput | ListInput): OperationInput {
  return { name, ...item, ...(need === 'list' ? { list: true } : {}) };
}

const CALL_OPTIONS = { strict: [true, false] } as const;
const COLUMNS_OPTIONS = { ...CALL_OPTIONS, badRows: ['missing'] } as const;

/** Inputs go by name: one after another, as a formula in a spreadsheet takes them, they could change places unseen. */
function notByName(spec: Operation, args: unknown): CalculationError {
  const names = spec.inputs.flatMap((item) => (item.assume === undefined ? [item.name] : []));
  return new CalculationError(spec.name, [
    {
      code: 'kind',
      input: 'inputs',
      need: 'one object with the inputs by name',
      got: describe(args),
      mend: `Write { ${names.join(', ')} }.`,
    },
  ]);
}

function unknownArgument(
  spec: Operation,
  args: Record<string, unknown>,
  names: readonly string[],
  given: unknown[],
): CalculationError {
  if (typeof args !== 'object' || isQuantity(args) || isColumn(args) || Array.isArray(args)) {
    return notByName(spec, args);
  }
  const problems = unknownNames(args, names);
  const scalars = given.filter((_, i) => spec.inputs[i]!.list !== true);
  const others = diagnose({ ...spec, inputs: spec.inputs.filter((item) => item.list !== true) }, scalars).problems;
  return new CalculationError(spec.name, [...problems, ...others]);
}

function unequalLists(spec: Operation, names: readonly string[], given: readonly unknown[]): CalculationError {
  const lengths = given.map((list) => (Array.isArray(list) ? `${list.length}` : describe(list))).join(' and ');
  return new CalculationError(spec.name, [
    {
      code: 'length',
      input: names.join(' and '),
      need: 'lists of one length, with at least one value',
      got: lengths,
      mend: '',
    },
  ]);
}
