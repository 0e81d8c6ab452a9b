import { CalculationError } from '../units/errors.js';
import { NO_NOTES, argumentName, differenceUnit, quantityOf, toSi } from '../units/internal.js';
import { differenceKind } from '../units/kinds.js';
import type { Quantity, Step } from '../units/origin.js';
import { isColumn } from '../units/quantity.js';
import { replay, type Key, type Node } from './graph.js';
import { solveLinear } from './linear.js';
import { refusal } from './refusal.js';
import { differenceQuotient, slopeOf } from './slope.js';
import type { System } from './system.js';

/**
 * How a result changes with its inputs, in SI, through every equation that was solved on the way.
 *
 * With residuals R(x, s) = 0 and the result F(x, s): dF/dx = F_x - l R_x, where l solves R_s' l = F_s. All solved values are one system,
 * however they were nested.
 */
export function slopesThrough(name: string, system: System, result: Key, inputs: readonly Key[]): number[] {
  const { nodes, unknowns } = system;
  const fixed = new Set(inputs);
  const free = unknowns.filter(({ key }) => !fixed.has(key));
  const outputs = [result, ...free.map(({ residualKey }) => residualKey)];
  const [direct, ...residuals] = partials(name, nodes, outputs, [...inputs, ...free.map(({ key }) => key)]) as [
    number[],
    ...number[][],
  ];
  if (free.length === 0) return direct;
  const n = inputs.length;
  const transposed = free.map((_, j) => residuals.map((row) => row[n + j]!));
  const weights = solveLinear(transposed, direct.slice(n));
  if (!weights) {
    const labels = free.map(({ leaf }) => leaf.label).join(', ');
    throw refusal(
      name,
      'no answer',
      '',
      'the equations must fix what was solved',
      `a solution that may slide (${labels})`,
      '',
    );
  }
  return inputs.map((_, k) => direct[k]! - weights.reduce((sum, weight, i) => sum + weight * residuals[i]![k]!, 0));
}

/** Partial derivatives of several values of a graph by several of its leaves, row by row. */
function partials(
  name: string,
  nodes: ReadonlyMap<Key, Node>,
  outputs: readonly Key[],
  inputs: readonly Key[],
): number[][] {
  for (const { value } of nodes.values()) if (isColumn(value)) return partialsByReplay(name, nodes, outputs, inputs);
  return partialsInReverse(name, nodes, outputs, inputs);
}

/** One pass from each output back to the leaves; each step is differenced once. */
function partialsInReverse(
  name: string,
  nodes: ReadonlyMap<Key, Node>,
  outputs: readonly Key[],
  inputs: readonly Key[],
): number[][] {
  const order = [...nodes.values()];
  const position = new Map<Key, number>();
  const wanted = new Set(inputs);
  const sources: (number[] | undefined)[] = [];
  const slopes: (number[] | undefined)[] = [];
  const active: boolean[] = [];
  order.forEach((node, at) => {
    position.set(node.key, at);
    const from = wanted.has(node.key) ? [] : node.inputs.map((key) => position.get(key)!);
    active.push(wanted.has(node.key) || from.some((input) => active[input]!));
    const isDifferenced = from.length > 0 && active[at]!;
    sources.push(isDifferenced ? from : undefined);
    slopes.push(isDifferenced ? stepSlopes(name, node, from, active) : undefined);
  });
  return outputs.map((output) => {
    const adjoint = new Float64Array(order.length);
    const start = position.get(output)!;
    adjoint[start] = 1;
    for (let at = start; at >= 0; at--) {
      const from = sources[at];
      if (from === undefined || adjoint[at] === 0) continue;
      for (let i = 0; i < from.length; i++) adjoint[from[i]!]! += adjoint[at]! * slopes[at]![i]!;
    }
    return inputs.map((key) => adjoint[position.get(key)!]!);
  });
}

function stepSlopes(name: string, node: Node, from: readonly number[], active: readonly boolean[]): number[] {
  const { operation, inputs } = node.value.origin as Step;
  const si = inputs.map((input) => (input as Quantity).si);
  return from.map((input, i) => {
    if (!active[input]!) return 0;
    const slope = slopeOf(operation, si, i, (node.value as Quantity).si);
    if (Number.isNaN(slope)) throw stuck(name, `${operation.name}, ${argumentName(operation, i, si.length)}`);
    return slope;
  });
}

function stuck(name: string, where: string): CalculationError {
  return refusal(
    name,
    'no answer',
    '',
    'needs room to move each input a little, to see what it does',
    `none for ${where}`,
    '',
  );
}

/** Where columns are in the way: the whole graph again with each leaf a little off. */
function partialsByReplay(
  name: string,
  nodes: ReadonlyMap<Key, Node>,
  outputs: readonly Key[],
  inputs: readonly Key[],
): number[][] {
  const rows = outputs.map(() => new Array<number>(inputs.length));
  inputs.forEach((key, k) => {
    const leaf = nodes.get(key)!.value as Quantity;
    const seen = new Map<number, Map<Key, unknown> | undefined>();
    const at = (si: number): Map<Key, unknown> | undefined => {
      if (!seen.has(si)) seen.set(si, attempt(nodes, key, quantityOf(leaf.kind, si, leaf.unit, undefined, NO_NOTES)));
      return seen.get(si);
    };
    outputs.forEach((output, j) => {
      const value = (si: number): number => (at(si)?.get(output) as Quantity | undefined)?.si ?? NaN;
      const slope = differenceQuotient(value, leaf.si, (nodes.get(output)!.value as Quantity).si, stepOf(leaf));
      if (Number.isNaN(slope)) throw stuck(name, nodes.get(key)!.label ?? leaf.kind);
      rows[j]![k] = slope;
    });
  });
  return rows;
}

/** A leaf has no bounds to take a range from: its uncertainty, or its unit, says what is little. */
function stepOf(leaf: Quantity): number {
  const { origin } = leaf;
  const spread = (origin?.type === 'leaf' && origin.uncertainty?.standard) || 0;
  const step = Math.max(6e-6 * Math.abs(leaf.si), 1e-3 * spread);
  return step > 0 ? step : 1e-3 * toSi(differenceKind(leaf.kind), 1, differenceUnit(leaf));
}

/** The graph with one leaf changed; undefined where that is impossible, or makes other rows missing than before. */
function attempt(nodes: ReadonlyMap<Key, Node>, key: Key, value: Quantity): Map<Key, unknown> | undefined {
  try {
    const values = replay(nodes, new Map([[key, value]]));
    for (const [other, now] of values) {
      const before = nodes.get(other)!.value;
      if (isColumn(now) && isColumn(before) && now.missing !== before.missing) return undefined;
    }
    return values;
  } catch (error) {
    if (error instanceof CalculationError) return undefined;
    throw error;
  }
}
