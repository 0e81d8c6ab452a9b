import { formatValue, type UnitPreferences } from '../../units/format.js';
import type { Leaf, Quantity } from '../../units/origin.js';
import { graphOf, keyOf, type Key, type Node } from '../graph.js';
import type { ExplainedValue, ExplainedSolution, ExplanationModel } from './model.js';
import { namesOf } from './names.js';
import { isReading, partsOfReadings } from './readings.js';
import { stepsOf } from './steps.js';
import { explainedValue } from './values.js';

/** Walks the history of a result and puts it in the order a reader works through it. */
export function modelOf(result: Quantity, units: UnitPreferences | undefined): ExplanationModel {
  const nodes = wholeGraph(result);
  const names = namesOf(nodes);
  const given: ExplainedValue[] = [];
  const assumed: ExplainedValue[] = [];
  const solutions: ExplainedSolution[] = [];
  const parts = partsOfReadings(nodes);
  for (const [key, node] of nodes) {
    const { origin } = node.value;
    if (origin?.type === 'step' && !isReading(node, nodes)) continue;
    if (parts.has(key)) continue;
    const value = explainedValue(node, names.get(key)!, nodes, units);
    if (value.role === 'solved' && origin?.type === 'leaf' && origin.solution) {
      solutions.push({
        name: value.name,
        text: value.text,
        residual: names.get(keyOf(origin.solution.residual)) ?? 'residual',
      });
    } else (value.role === 'assumed' ? assumed : given).push(value);
  }
  return {
    name: names.get(keyOf(result)) ?? result.kind,
    text: formatValue(result, { units }),
    given,
    assumed,
    steps: stepsOf(nodes, names, units),
    solutions,
    notes: result.notes.map((note) => note.message),
  };
}

/** The graph of a result, and of every equation that a solved value in it satisfies. */
function wholeGraph(result: Quantity): ReadonlyMap<Key, Node> {
  const roots: Quantity[] = [result];
  const seen = new Set<Leaf>();
  for (;;) {
    const nodes = graphOf(roots);
    const found = roots.length;
    for (const { value } of nodes.values()) {
      const { origin } = value;
      if (origin?.type !== 'leaf' || !origin.solution || seen.has(origin)) continue;
      seen.add(origin);
      roots.push(origin.solution.residual);
    }
    if (roots.length === found) return nodes;
  }
}
