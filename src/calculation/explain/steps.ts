import { inputAt } from '../../units/internal.js';
import { dimensionOf } from '../../units/kinds.js';
import { formatValue, type UnitPreferences } from '../../units/format.js';
import { isColumn } from '../../units/quantity.js';
import type { Note, Operation, Quantity, Step } from '../../units/origin.js';
import { parseFormula, type ShownValue } from '../formula/index.js';
import type { Key, Node } from '../graph.js';
import type { ExplainedCase, ExplainedStep } from './model.js';
import { carriesErrors } from './readings.js';
import { columnText, displayUnit, firstUnit, shownColumn, shownValue } from './shown.js';

/** How many uses of one formula become one step with a table. */
const TABLE_FROM = 3;

/** Steps by how far they are from the inputs, so that equal steps on equal inputs stand together. */
export function stepsOf(
  nodes: ReadonlyMap<Key, Node>,
  names: ReadonlyMap<Key, string>,
  units: UnitPreferences | undefined,
): ExplainedStep[] {
  const depth = new Map<Key, number>();
  const groups = new Map<
    string,
    { readonly operation: Operation; readonly members: [Key, Node][]; readonly depth: number }
  >();
  const ids = new Map<Operation, number>();
  for (const [key, node] of nodes) {
    const { origin } = node.value;
    if (origin?.type !== 'step' || carriesErrors(node, nodes)) {
      depth.set(key, origin?.type === 'step' ? (depth.get(node.inputs[0]!) ?? 0) : 0);
      continue;
    }
    const level = 1 + Math.max(...node.inputs.map((input) => depth.get(input) ?? 0));
    depth.set(key, level);
    if (!ids.has(origin.operation)) ids.set(origin.operation, ids.size);
    const group = `${level}/${ids.get(origin.operation)}`;
    if (!groups.has(group)) groups.set(group, { operation: origin.operation, members: [], depth: level });
    groups.get(group)!.members.push([key, node]);
  }
  const steps: ExplainedStep[] = [];
  const inOrder = [...groups.values()].sort((a, b) => a.depth - b.depth);
  for (const { operation, members } of inOrder) {
    const cases = members.map(([key, node]) => explainedCase(operation, node, names.get(key)!, units));
    const rows = cases.length >= TABLE_FROM ? [cases] : cases.map((one) => [one]);
    rows.forEach((together, i) => {
      const notes = members.slice(i, i + together.length).flatMap(([, node]) => ownNotes(node, nodes));
      steps.push(stepOf(operation, together, [...new Set(notes.map((note) => note.message))]));
    });
  }
  return steps;
}

function stepOf(operation: Operation, cases: readonly ExplainedCase[], notes: readonly string[]): ExplainedStep {
  const formula = parseFormula(operation.formula);
  return {
    name: operation.name,
    symbol: operation.output.symbol,
    formulaText: operation.formula,
    formula,
    isEquation: formula.type === 'comparison' && formula.operator === '==',
    cases,
    uses: Object.entries(operation.uses ?? {}).map(([symbol, used]) => ({
      symbol,
      name: used.name,
      formulaText: used.formula,
    })),
    sources: operation.sources,
    notes,
  };
}

/** Notes that a step added, as against those that came with its inputs. */
function ownNotes(node: Node, nodes: ReadonlyMap<Key, Node>): readonly Note[] {
  const inherited = new Set(node.inputs.flatMap((input) => nodes.get(input)!.value.notes.map((note) => note.message)));
  return node.value.notes.filter((note) => !inherited.has(note.message));
}

function explainedCase(
  operation: Operation,
  node: Node,
  name: string,
  units: UnitPreferences | undefined,
): ExplainedCase {
  const value = node.value as Quantity;
  const { inputs } = value.origin as Step;
  const own = keepsOwnUnits(operation);
  const numbers: Record<string, ShownValue | { list: ShownValue[] }> = {};
  inputs.forEach((input, i) => {
    const spec = inputAt(operation, i, inputs.length);
    const shown = isColumn(input)
      ? shownColumn(input, displayUnit(input, units))
      : shownValue(input, own ? displayUnit(input, units) : undefined);
    if (spec.list !== true) numbers[spec.symbol] = shown;
    else ((numbers[spec.symbol] ??= { list: [] }) as { list: ShownValue[] }).list.push(shown);
  });
  const unit = displayUnit(value, units);
  const siUnit = firstUnit(value.kind);
  return {
    name,
    numbers,
    resultSi: own || unit === siUnit || isColumn(value) ? undefined : shownValue(value, undefined),
    result: isColumn(value) ? shownColumn(value, unit) : shownValue(value, unit),
    resultText: isColumn(value) ? columnText(value, units) : formatValue(value, { units }),
  };
}

/**
 * Sums and ratios of like values read best in the units they came in. Any other formula has constants in SI, so its numbers are SI.
 */
function keepsOwnUnits(operation: Operation): boolean {
  if (operation.formula === 'mean(x)') return operation.inputs[0]!.kind !== 'temperature';
  if (/[0-9]/.test(operation.formula.replace(/[A-Za-z_]\w*/g, ''))) return false;
  const dimensions = new Set(operation.inputs.map((input) => dimensionOf(input.kind)));
  return (
    dimensions.size === 1 &&
    !operation.inputs.some((input) => input.kind === 'temperature') &&
    /^[\w\s+/-]+$/.test(operation.formula)
  );
}
