import { argumentName, inputAt, kindOf } from '../../units/internal.js';
import { formatValue, type UnitPreferences } from '../../units/format.js';
import { KINDS, type Kind } from '../../units/kinds.js';
import { fromSi } from '../../units/unit.js';
import { isColumn } from '../../units/quantity.js';
import type { Column, Leaf, Note, Operation, Quantity, Source, Step } from '../../units/origin.js';
import { parseFormula, type Formula, type ShownValue } from '../formula/index.js';
import { graphOf, keyOf, type Key, type Node } from '../graph.js';

/** A value that went in from outside. */
export interface ExplainedValue {
  readonly name: string;
  readonly text: string;
  readonly role: Leaf['role'];
  /** How uncertain it is, in words; empty where nothing is known. */
  readonly uncertainty: string;
  readonly source: Source | undefined;
}

/** One use of a formula: numbers for its symbols, and what came out. */
export interface ExplainedCase {
  readonly name: string;
  /** What stands in place of each symbol. */
  readonly numbers: Readonly<Record<string, ShownValue | { readonly list: readonly ShownValue[] }>>;
  /** The result in SI, where that is not what it shows in. */
  readonly resultSi: ShownValue | undefined;
  readonly result: ShownValue;
  readonly resultText: string;
}

/** One step: a formula once, with one or more uses. */
export interface ExplainedStep {
  readonly name: string;
  readonly symbol: string;
  readonly formulaText: string;
  readonly formula: Formula;
  /** Whether the formula is an equation that the result solves. */
  readonly isEquation: boolean;
  readonly cases: readonly ExplainedCase[];
  /** Functions the formula names, with their own formulas. */
  readonly uses: readonly { readonly symbol: string; readonly name: string; readonly formulaText: string }[];
  readonly sources: readonly Source[];
  readonly notes: readonly string[];
}

/** A value found by solving: the named residual is zero at it. */
export interface ExplainedSolution {
  readonly name: string;
  readonly text: string;
  readonly residual: string;
}

/** The whole of how a result was made, as data. */
export interface ExplanationModel {
  readonly name: string;
  readonly text: string;
  readonly given: readonly ExplainedValue[];
  readonly assumed: readonly ExplainedValue[];
  readonly steps: readonly ExplainedStep[];
  readonly solutions: readonly ExplainedSolution[];
  readonly notes: readonly string[];
}

/** How many uses of one formula become one step with a table. */
const TABLE_FROM = 3;

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

/** A name for every value: its label; else for a step its symbol, made unique; else the argument it was given as. */
function namesOf(nodes: ReadonlyMap<Key, Node>): Map<Key, string> {
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

/** `inletTemperature` as `inlet temperature`. */
export function inWords(name: string): string {
  return name.replace(/([a-z])([A-Z])/g, (_, before: string, after: string) => `${before} ${after.toLowerCase()}`);
}

const leafOf = (node: Node | undefined): Leaf | undefined =>
  node?.value.origin?.type === 'leaf' ? node.value.origin : undefined;

/** Whether a step only lays zero-valued errors on a value. No one works through such a step; its uncertainty is what it says. */
function carriesErrors(node: Node, nodes: ReadonlyMap<Key, Node>): boolean {
  const [, ...errors] = node.inputs;
  return (
    errors.length > 0 &&
    errors.every((input) => ['error', 'scatter'].includes(leafOf(nodes.get(input))?.role ?? 'given'))
  );
}

/** A sensor's reading: a value from outside with the errors of its sensor. */
function isReading(node: Node, nodes: ReadonlyMap<Key, Node>): boolean {
  return carriesErrors(node, nodes) && nodes.get(node.inputs[0]!)?.value.origin?.type !== 'step';
}

/** A computed value with errors laid on it, such as a mean with the scatter of its repeats: to the reader, that value. */
function isScattered(node: Node, nodes: ReadonlyMap<Key, Node>): boolean {
  return carriesErrors(node, nodes) && !isReading(node, nodes);
}

/** The leaves that are shown as part of the readings that use them, and not by themselves. */
function partsOfReadings(nodes: ReadonlyMap<Key, Node>): ReadonlySet<Key> {
  const parts = new Set<Key>();
  const elsewhere = new Set<Key>();
  for (const node of nodes.values()) {
    const into = isReading(node, nodes) ? parts : elsewhere;
    for (const input of node.inputs) into.add(input);
  }
  for (const key of elsewhere) parts.delete(key);
  return parts;
}

function explainedValue(
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

/** Steps by how far they are from the inputs, so that equal steps on equal inputs stand together. */
function stepsOf(
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
  const dimensions = new Set(operation.inputs.map((input) => kindOf(input.kind).dimension));
  return (
    dimensions.size === 1 &&
    !operation.inputs.some((input) => input.kind === 'temperature') &&
    /^[\w\s+/-]+$/.test(operation.formula)
  );
}

function displayUnit(value: Quantity | Column, units: UnitPreferences | undefined): string {
  return units?.[value.kind] ?? value.unit;
}

const firstUnit = (kind: Kind): string => Object.keys(kindOf(kind).units)[0]!;

function shownValue(value: Quantity, unit: string | undefined): ShownValue {
  const inUnit = unit ?? firstUnit(value.kind);
  const number = figures(
    value,
    fromSi(value.kind, value.si, inUnit),
    inUnit,
    unit !== undefined && unit !== value.unit,
  );
  return inUnit === '1' ? { number } : { number, unit: inUnit };
}

/** Given values as typed, computed ones to four figures; kelvins to five, since a degree is a third of a per cent of them. */
function figures(value: Quantity, number: number, unit: string, converted: boolean): string {
  const computed = value.origin?.type === 'step' || (value.origin?.type === 'leaf' && value.origin.role === 'solved');
  if (!computed && !converted) return plainNumber(Number(number.toPrecision(12)));
  if (value.kind === 'temperature' && unit !== 'K' && unit !== '°R') return number.toFixed(1);
  const text = number.toPrecision(unit === 'K' && value.kind === 'temperature' ? 5 : 4);
  return text.includes('e') ? plainNumber(Number(text)) : text;
}

function plainNumber(number: number): string {
  return String(number).replace('e+', 'e');
}

/** A column in place of a symbol: the range of its values. */
function shownColumn(column: Column, unit: string): ShownValue {
  const range = rangeOf(column);
  const number = range
    ? range.map((si) => plainNumber(Number(fromSi(column.kind, si, unit).toPrecision(4)))).join('…')
    : 'no value';
  return unit === '1' ? { number } : { number, unit };
}

function columnText(column: Column, units: UnitPreferences | undefined): string {
  const { number, unit } = shownColumn(column, displayUnit(column, units));
  const missing = column.missing > 0 ? `, ${column.missing} missing` : '';
  return `${number.replace('…', ' to ')}${unit === undefined ? '' : ` ${unit}`} (${column.length} rows${missing})`;
}

function rangeOf(column: Column): readonly [number, number] | undefined {
  let low = Infinity;
  let high = -Infinity;
  for (const si of column.si) {
    if (si < low) low = si;
    if (si > high) high = si;
  }
  return low > high ? undefined : [low, high];
}
