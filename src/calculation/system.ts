import type { Kind } from '../units/kinds.js';
import { NO_NOTES, argumentName, inWords, quantityOf } from '../units/internal.js';
import type { Column, Leaf, Quantity } from '../units/origin.js';
import { graphOf, keyOf, type Key, type Node } from './graph.js';
import { refusal } from './refusal.js';

/** A value that was found by solving, in the graph of some result. */
export interface Unknown {
  readonly key: Key;
  readonly value: Quantity;
  readonly leaf: Leaf;
  /** The equation's residual, and its key in the graph. */
  readonly residual: Quantity;
  readonly residualKey: Key;
  /** SI bounds of the answer, and the values they came from. */
  readonly between: readonly [number, number];
  readonly ends: readonly Quantity[];
}

/** Everything that went into results, equations of what was solved included. */
export interface System {
  /** Inputs before what is made of them. A solved value is an input here; its residual stands among the nodes too. */
  readonly nodes: ReadonlyMap<Key, Node>;
  /** All that was solved, nested or one after another: together they are one system of equations. */
  readonly unknowns: readonly Unknown[];
}

/** The graph of results with the equations that their solved inputs satisfy. */
export function systemOf(results: readonly (Quantity | Column)[]): System {
  const roots = [...results];
  const bounds: Quantity[] = [];
  const unknowns = new Map<Key, Unknown>();
  for (;;) {
    const nodes = graphOf(roots);
    const before = unknowns.size;
    for (const { key, value } of (bounds.length === 0 ? nodes : graphOf([...roots, ...bounds])).values()) {
      const unknown = unknowns.has(key) ? undefined : unknownOf(key, value);
      if (!unknown) continue;
      unknowns.set(key, unknown);
      roots.push(unknown.residual);
      // What only bounds an answer is no input of it, but may have been solved too.
      bounds.push(...unknown.ends.filter(({ origin }) => origin !== undefined));
    }
    if (unknowns.size === before) return { nodes, unknowns: [...unknowns.values()] };
  }
}

function unknownOf(key: Key, value: Quantity | Column): Unknown | undefined {
  const { origin } = value;
  if (origin?.type !== 'leaf' || origin.solution === undefined) return undefined;
  const { residual, between, ends } = origin.solution;
  // While its equation is still being computed, an unknown around this one has no residual yet.
  if ((residual as Quantity | undefined) === undefined) return undefined;
  return {
    key,
    value: value as Quantity,
    leaf: origin,
    residual,
    residualKey: keyOf(residual),
    between,
    ends: ends ?? [],
  };
}

/** Refuses a result some of whose history was not kept: what is asked of it would be silently wrong. */
export function requireHistory(name: string, { nodes }: System, replaced: ReadonlyMap<Key, unknown> = new Map()): void {
  for (const { key, value, label } of nodes.values()) {
    const { origin } = value;
    if (origin?.type !== 'leaf' || origin.role !== 'solved' || origin.solution !== undefined || replaced.has(key))
      continue;
    const mend =
      'Columns do not keep how each of their rows was solved: ask whatIf for that row alone, with quantities.';
    throw refusal(
      name,
      'kind',
      '',
      'needs a result with its whole history',
      `one that rests on a row of ${label ?? 'a solved column'}`,
      mend,
    );
  }
}

/** Names for the values of a graph: their label, or the argument they were first given as (arithmetic has no telling ones), or their kind. */
export function namesOf(nodes: ReadonlyMap<Key, Node>): (key: Key) => string {
  let byArgument: ReadonlyMap<Key, string> | undefined;
  return (key) => {
    const node = nodes.get(key);
    return node?.label ?? (byArgument ??= argumentsOf(nodes)).get(key) ?? node?.value.kind ?? '';
  };
}

function argumentsOf(nodes: ReadonlyMap<Key, Node>): Map<Key, string> {
  const names = new Map<Key, string>();
  for (const { value, inputs } of nodes.values()) {
    if (value.origin?.type !== 'step') continue;
    const { operation } = value.origin;
    inputs.forEach((key, i) => {
      const name = argumentName(operation, i, inputs.length);
      if (!names.has(key) && !/^(first|second|values|reading)\b/.test(name)) names.set(key, inWords(name));
    });
  }
  return names;
}

/** The same value with its methods back, if it is a clone, which is plain data. */
export function withMethods<K extends Kind>(value: Quantity<K>): Quantity<K> {
  if (typeof value.toJSON === 'function') return value;
  return quantityOf(value.kind, value.si, value.unit, undefined, value.notes ?? NO_NOTES, value.label);
}
