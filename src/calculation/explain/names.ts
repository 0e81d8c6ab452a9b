import { argumentName, inWords } from '../../units/internal.js';
import type { Key, Node } from '../graph.js';
import { isScattered } from './readings.js';

/** A name for every value: its label; else for a step its symbol, made unique; else the argument it was given as. */
export function namesOf(nodes: ReadonlyMap<Key, Node>): Map<Key, string> {
  const names = new Map<Key, string>();
  const used = new Map<string, number>();
  const unique = (name: string): string => {
    const before = used.get(name) ?? 0;
    used.set(name, before + 1);
    return before === 0 ? name : `${name}${suffix(before)}`;
  };
  for (const [key, node] of nodes) {
    if (node.label !== undefined) names.set(key, node.label);
    else if (node.value.origin?.type === 'step') names.set(key, unique(node.value.origin.operation.output.symbol));
  }
  for (const [key, node] of nodes) {
    if (isScattered(node, nodes) && nodes.get(node.inputs[0]!)?.label === undefined)
      names.set(node.inputs[0]!, names.get(key)!);
  }
  for (const node of nodes.values()) {
    const { origin } = node.value;
    if (origin?.type !== 'step') continue;
    node.inputs.forEach((input, i) => {
      if (!names.has(input)) names.set(input, inWords(argumentName(origin.operation, i, node.inputs.length)));
    });
  }
  for (const [key, node] of nodes) if (!names.has(key)) names.set(key, node.value.kind);
  return names;
}

/** `b`, `c` ... `z`, then numbers. */
function suffix(index: number): string {
  return index < 25 ? String.fromCharCode('a'.charCodeAt(0) + index) : `_${index + 1}`;
}
