import { CalculationError } from '../units/errors.js';
import type { Kind, Same } from '../units/kinds.js';
import { columnOf, describe, merged, requireOptions } from '../units/internal.js';
import type { Column, Leaf, Note, Quantity } from '../units/origin.js';
import { isColumn } from '../units/quantity.js';
import { keyOf, type Key } from './graph.js';
import { refusal, requireValue } from './refusal.js';
import { inRow, replaySystem, rowOf, type ReplayOptions } from './resolve.js';
import { namesOf, requireHistory, systemOf, type System } from './system.js';

/** Inputs of a result and the values they take instead, of their own kinds. */
export type ScalarChanges<C extends readonly Kind[]> = readonly [
  ...{ readonly [I in keyof C]: readonly [input: Quantity<C[I]>, value: Quantity<Same<C[I]>>] },
];

/** Inputs of a result and the values or columns they take instead, of their own kinds. */
export type ColumnChanges<C extends readonly Kind[]> = readonly [
  ...{
    readonly [I in keyof C]: readonly [
      input: Quantity<C[I]> | Column<C[I]>,
      value: Quantity<Same<C[I]>> | Column<Same<C[I]>>,
    ];
  },
];

/**
 * The same result from other inputs. Every step is computed and checked again as a call would be, and what was solved is solved again.
 *
 * An input is named by the quantity that went in, not by one of equal value. A new value brings its own uncertainty, or none. A column
 * in place of a quantity gives a column: a whole composite over a sweep.
 *
 * @param result - a computed quantity or column.
 * @param changes - pairs of an input and what it is instead.
 * @param options - `{ badRows: 'missing' }` counts rows that cannot be computed as missing.
 * @throws CalculationError if an input did not go into the result, a kind differs, or a step refuses the new values.
 * @example
 * whatIf(power, [[boost, gaugePressure(1.4, 'bar')]])
 */
export function whatIf<K extends Kind, const C extends readonly Kind[]>(
  result: Quantity<K>,
  changes: ScalarChanges<C>,
  options?: ReplayOptions,
): Quantity<K>;
export function whatIf<K extends Kind, const C extends readonly Kind[]>(
  result: Quantity<K> | Column<K>,
  changes: ColumnChanges<C>,
  options?: ReplayOptions,
): Column<K>;
export function whatIf(
  result: Quantity | Column,
  changes: readonly (readonly [Quantity | Column, Quantity | Column])[],
  options: ReplayOptions = {},
): Quantity | Column {
  requireValue('whatIf', 'result', result);
  requireOptions('whatIf', options, { badRows: ['missing'] });
  const system = systemOf([result]);
  const byKey = readChanges(system, changes);
  requireHistory('whatIf', system, byKey);
  if (needsRows(system, byKey)) return rowByRow(system, result, byKey, options);
  return replaySystem('whatIf', system, byKey, options).get(keyOf(result))!;
}

function readChanges(system: System, changes: unknown): Map<Key, Quantity | Column> {
  if (!Array.isArray(changes) || changes.length === 0) {
    throw refusal(
      'whatIf',
      'missing',
      'changes',
      'a list of pairs of an input and its new value',
      describe(changes),
      'Write [[input, value]].',
    );
  }
  const { nodes } = system;
  const byKey = new Map<Key, Quantity | Column>();
  let rows: number | undefined;
  changes.forEach((pair: unknown, i) => {
    if (!Array.isArray(pair) || pair.length !== 2) {
      throw refusal(
        'whatIf',
        'kind',
        `changes[${i}]`,
        'a pair of an input and its new value',
        describe(pair),
        'Write [[input, value]].',
      );
    }
    const [input, value] = pair as [unknown, unknown];
    requireValue('whatIf', `changes[${i}][0]`, input);
    requireValue('whatIf', `changes[${i}][1]`, value);
    const key = keyOf(input);
    const node = nodes.get(key);
    if (!node) throw notAnInput(system, i, input);
    if (value.kind !== input.kind) throw refusal('whatIf', 'kind', `changes[${i}][1]`, input.kind, describe(value));
    if (byKey.has(key))
      throw refusal(
        'whatIf',
        'unknown',
        `changes[${i}][0]`,
        'an input that is changed once',
        `${node.label ?? describe(input)} again`,
      );
    const length = isColumn(value) ? value.si.length : undefined;
    const expected = isColumn(input) ? input.si.length : rows;
    if (isColumn(input) && length === undefined)
      throw refusal('whatIf', 'kind', `changes[${i}][1]`, `a column, in place of a column`, describe(value));
    if (length !== undefined && expected !== undefined && length !== expected) {
      throw refusal('whatIf', 'length', `changes[${i}][1]`, `${expected} rows long`, `${length} rows`);
    }
    if (!isColumn(input)) rows ??= length;
    byKey.set(
      key,
      node.label !== undefined && value.label === undefined && typeof value.named === 'function'
        ? value.named(node.label)
        : value,
    );
  });
  return byKey;
}

const MOST_NAMES = 12;

function notAnInput(system: System, i: number, input: Quantity | Column): CalculationError {
  const nameOf = namesOf(system.nodes);
  const leaves = [...system.nodes.values()].filter(({ inputs }) => inputs.length === 0);
  const names = leaves.slice(0, MOST_NAMES).map(({ key }) => nameOf(key));
  const more = leaves.length > MOST_NAMES ? ` and ${leaves.length - MOST_NAMES} more` : '';
  const got = `${describe(input)}${input.label === undefined ? '' : ` "${input.label}"`}, which did not`;
  const mend = `Its inputs are ${names.join(', ')}${more}. Pass the very quantity that was used, not one of equal value.`;
  return refusal('whatIf', 'unknown', `changes[${i}][0]`, 'a quantity that went into the result', got, mend);
}

/** Rows of a sweep are not rows of a log: where a quantity becomes a column in a graph that has columns, each row is a replay. */
function needsRows({ nodes }: System, changes: ReadonlyMap<Key, Quantity | Column>): boolean {
  let becomesColumn = false;
  for (const [key, value] of changes) becomesColumn ||= isColumn(value) && !isColumn(nodes.get(key)!.value);
  if (!becomesColumn) return false;
  for (const { value } of nodes.values()) if (isColumn(value)) return true;
  return false;
}

function rowByRow(
  system: System,
  result: Quantity | Column,
  changes: ReadonlyMap<Key, Quantity | Column>,
  options: ReplayOptions,
): Column {
  if (isColumn(result)) {
    const mend = 'Take one row of the result, with .at(row), or change the input to one value at a time.';
    throw refusal(
      'whatIf',
      'kind',
      'result',
      'a quantity where one input becomes a column and others are columns already',
      'a column',
      mend,
    );
  }
  const swept = new Map(
    [...changes].filter(([key, value]) => isColumn(value) && !isColumn(system.nodes.get(key)!.value)),
  );
  const kept = new Map([...changes].filter(([key]) => !swept.has(key)));
  const rows = ([...swept.values()][0] as Column).si.length;
  const data = new Float64Array(rows).fill(NaN);
  let notes: readonly Note[] = [];
  let refused = 0;
  for (let row = 0; row < rows; row++) {
    const inputs = rowOf(swept, row);
    if ([...inputs.values()].some(({ si }) => Number.isNaN(si))) continue;
    try {
      const value = replaySystem('whatIf', system, new Map([...kept, ...inputs]), options).get(
        keyOf(result),
      ) as Quantity;
      data[row] = value.si;
      notes = merged(notes, value.notes);
    } catch (error) {
      if (!(error instanceof CalculationError)) throw error;
      if (options.badRows !== 'missing') throw inRow(error, row, rows);
      refused++;
    }
  }
  const origin: Leaf = { type: 'leaf', role: 'solved', label: result.label ?? 'a what-if over a column' };
  return columnOf(result.kind, data, result.unit, origin, notes, refused, result.label);
}
