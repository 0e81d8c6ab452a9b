import { perform, performColumns } from '../units/internal.js';
import { reduceColumn } from './reduction.js';
import { isColumn } from '../units/quantity.js';
import type { Column, Operation, Origin, Quantity } from '../units/origin.js';

/** What tells one value of a graph from another: constants of one id are one value, copies of a value share its origin. */
export type Key = string | Origin | Quantity | Column;

/** A value of a graph. */
export interface Node {
  readonly key: Key;
  readonly value: Quantity | Column;
  /** Keys of what it was made from; empty for leaves. */
  readonly inputs: readonly Key[];
  /** The first name any copy of the value was given. */
  readonly label: string | undefined;
}

/** The identity of a value in its graph. */
export function keyOf(value: Quantity | Column): Key {
  const { origin } = value;
  if (!origin) return value;
  return origin.type === 'leaf' && origin.id !== undefined ? origin.id : origin;
}

/**
 * Every value that went into the results, each once, inputs before what is made of them. It is iterative, because a running total
 * is a chain of any length.
 */
export function graphOf(results: readonly (Quantity | Column)[]): Map<Key, Node> {
  const nodes = new Map<Key, Node>();
  const labels = new Map<Key, string>();
  const stack: { readonly value: Quantity | Column; readonly done: boolean }[] = [];
  for (let i = results.length - 1; i >= 0; i--) stack.push({ value: results[i]!, done: false });
  while (stack.length > 0) {
    const { value, done } = stack.pop()!;
    const key = keyOf(value);
    const label = value.label ?? (value.origin?.type === 'leaf' ? value.origin.label : undefined);
    if (label !== undefined && !labels.has(key)) labels.set(key, label);
    if (nodes.has(key)) continue;
    const inputs = value.origin?.type === 'step' ? value.origin.inputs : [];
    if (done || inputs.length === 0) {
      nodes.set(key, { key, value, inputs: inputs.map(keyOf), label: undefined });
      continue;
    }
    stack.push({ value, done: true });
    for (let i = inputs.length - 1; i >= 0; i--)
      if (!nodes.has(keyOf(inputs[i]!))) stack.push({ value: inputs[i]!, done: false });
  }
  for (const [key, node] of nodes) {
    const label = labels.get(key);
    if (label !== undefined) nodes.set(key, { ...node, label });
  }
  return nodes;
}

/** Computes a graph again with other leaves. Every step is checked as a call is. Columns among the new leaves give columns. */
export function replay(
  nodes: ReadonlyMap<Key, Node>,
  changes: ReadonlyMap<Key, Quantity | Column>,
  options: { readonly badRows?: 'missing' } = {},
): Map<Key, Quantity | Column> {
  const values = new Map<Key, Quantity | Column>();
  for (const [key, node] of nodes) {
    const change = changes.get(key);
    if (change) {
      values.set(key, change);
      continue;
    }
    const { origin } = node.value;
    if (origin?.type !== 'step' || !node.inputs.some((input) => values.get(input) !== nodes.get(input)!.value)) {
      values.set(key, node.value);
      continue;
    }
    const inputs = node.inputs.map((input) => values.get(input)!);
    values.set(key, step(origin.operation, inputs, node, options));
  }
  return values;
}

function step(
  operation: Operation,
  inputs: (Quantity | Column)[],
  node: Node,
  options: { readonly badRows?: 'missing' },
): Quantity | Column {
  const result = again(operation, inputs, isOverColumn(node), refusedHere(node) ? { badRows: 'missing' } : options);
  return node.label === undefined ? result : result.named(node.label);
}

function again(
  operation: Operation,
  inputs: (Quantity | Column)[],
  reduces: boolean,
  options: { readonly badRows?: 'missing' },
): Quantity | Column {
  if (!inputs.some(isColumn)) return perform(operation, inputs as Quantity[]);
  return reduces && operation.reduce !== undefined
    ? reduceColumn(operation, inputs[0] as Column)
    : performColumns(operation, inputs, options);
}

/** A mean of quantities stays one of quantities where they become columns of cases: one mean a row. */
function isOverColumn({ value }: Node): boolean {
  return value.origin?.type === 'step' && value.origin.inputs.some(isColumn);
}

/** Whether a step over columns was told to carry on past impossible rows, and had some. */
function refusedHere({ value }: Node): boolean {
  if (!isColumn(value) || !(value.refused > 0) || value.origin?.type !== 'step') return false;
  return value.origin.inputs.every((input) => !isColumn(input) || !(input.refused >= value.refused));
}
