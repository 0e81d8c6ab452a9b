import { kindOf } from '../../units/internal.js';
import { formatValue, type UnitPreferences } from '../../units/format.js';
import { KINDS, type Kind } from '../../units/kinds.js';
import type { Leaf, Quantity } from '../../units/origin.js';
import { isColumn } from '../../units/quantity.js';
import type { Key, Node } from '../graph.js';
import type { ExplainedValue } from './model.js';
import { isReading, leafOf } from './readings.js';
import { columnText } from './shown.js';

export function explainedValue(
  node: Node,
  name: string,
  nodes: ReadonlyMap<Key, Node>,
  units: UnitPreferences | undefined,
): ExplainedValue {
  const { value } = node;
  const leaf = leafOf(node);
  const errors = isReading(node, nodes) ? node.inputs.slice(1).map((input) => leafOf(nodes.get(input))) : [leaf];
  return {
    name,
    text: isColumn(value)
      ? columnText(value, units)
      : withKindWord(value, formatValue(asTyped(value, leaf), { units })),
    role: leaf?.role ?? (errors[0] ? 'measured' : 'given'),
    uncertainty: errors
      .flatMap((error) => (error?.uncertainty ? [uncertaintyText(value.kind, error, value.unit)] : []))
      .join(', '),
    source: leaf?.source,
  };
}

/** A reading is a step in the graph, but was typed, not computed. */
function asTyped(value: Quantity, leaf: Leaf | undefined): Quantity {
  if (leaf || value.origin?.type !== 'step') return value;
  const [typed] = value.origin.inputs;
  return typed && !isColumn(typed) && typed.kind === value.kind ? typed : value;
}

/** A bare "110 kPa" does not say whether it is gauge or absolute, which is where people go wrong. */
function withKindWord(value: Quantity, text: string): string {
  if (value.kind === 'gauge pressure') return `${text} gauge`;
  if (value.kind === 'absolute pressure') return `${text} absolute`;
  if (value.kind === 'sea-level pressure') return `${text} at sea level`;
  return text;
}

function uncertaintyText(kind: Kind, { uncertainty, label, role }: Leaf, unit: string): string {
  const { standard, degreesOfFreedom } = uncertainty!;
  const freedom = Number.isFinite(degreesOfFreedom) ? `, ${degreesOfFreedom} degrees of freedom` : '';
  const size = KINDS[kind] && kindOf(kind).units[unit];
  const factor = typeof size === 'number' ? size : size?.[0] === 1 ? 1 : 5 / 9;
  const shown = `${Number((standard / (factor ?? 1)).toPrecision(2))}${unit === '1' ? '' : ` ${unit}`}`;
  const whose = role === 'error' && label !== undefined ? ` (${label})` : '';
  return `standard uncertainty ${shown}${freedom}${whose}`;
}
