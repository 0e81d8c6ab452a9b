import type { Leaf } from '../../units/origin.js';
import type { Key, Node } from '../graph.js';

export const leafOf = (node: Node | undefined): Leaf | undefined =>
  node?.value.origin?.type === 'leaf' ? node.value.origin : undefined;

/** Whether a step only lays zero-valued errors on a value. No one works through such a step; its uncertainty is what it says. */
export function carriesErrors(node: Node, nodes: ReadonlyMap<Key, Node>): boolean {
  const [, ...errors] = node.inputs;
  return (
    errors.length > 0 &&
    errors.every((input) => ['error', 'scatter'].includes(leafOf(nodes.get(input))?.role ?? 'given'))
  );
}

/** A sensor's reading: a value from outside with the errors of its sensor. */
export function isReading(node: Node, nodes: ReadonlyMap<Key, Node>): boolean {
  return carriesErrors(node, nodes) && nodes.get(node.inputs[0]!)?.value.origin?.type !== 'step';
}

/** A computed value with errors laid on it, such as a mean with the scatter of its repeats: to the reader, that value. */
export function isScattered(node: Node, nodes: ReadonlyMap<Key, Node>): boolean {
  return carriesErrors(node, nodes) && !isReading(node, nodes);
}

/** The leaves that are shown as part of the readings that use them, and not by themselves. */
export function partsOfReadings(nodes: ReadonlyMap<Key, Node>): ReadonlySet<Key> {
  const parts = new Set<Key>();
  const elsewhere = new Set<Key>();
  for (const node of nodes.values()) {
    const into = isReading(node, nodes) ? parts : elsewhere;
    for (const input of node.inputs) into.add(input);
  }
  for (const key of elsewhere) parts.delete(key);
  return parts;
}
