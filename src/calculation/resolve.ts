import { zeroBetween } from '../statistics/root-between.js';
import { CalculationError } from '../units/errors.js';
import { NO_NOTES, columnOf, diagnose, inputAt, merged, quantityOf, showSi } from '../units/internal.js';
import type { Column, Leaf, Note, Quantity, Solution, Step } from '../units/origin.js';
import { isColumn } from '../units/quantity.js';
import { graphOf, keyOf, replay, type Key, type Node } from './graph.js';
import { solveNear } from './newton.js';
import { refusal } from './refusal.js';
import type { System, Unknown } from './system.js';

/** What a replay may be told: to count rows that cannot be computed as missing. */
export interface ReplayOptions {
  readonly badRows?: 'missing';
}

type Values = Map<Key, Quantity | Column>;
type Changes = ReadonlyMap<Key, Quantity | Column>;

/** Computes a system again with other inputs: what was solved and depends on them is solved again, all of it together. */
export function replaySystem(name: string, system: System, changes: Changes, options: ReplayOptions = {}): Values {
  const affected = affectedUnknowns(system, changes);
  if (affected.length === 0) return replay(system.nodes, changes, options);
  const equations = new Equations(name, affected, changes);
  // A column in place of a column changes one answer; in place of a quantity it asks for an answer in each row.
  const sweep = [...changes].find(([key, value]) => isColumn(value) && !isColumn(system.nodes.get(key)!.value));
  if (sweep) return replayRows(system, equations, (sweep[1] as Column).si.length, options);
  const answers = equations.solve(changes);
  const notes = equations.notes(
    equations.with(changes, (unknown, i) => bare(unknown, answers[i]!)),
    options,
  );
  const solutions: Solution[] = [];
  const values = replay(
    system.nodes,
    equations.with(changes, ({ leaf, value }, i) => {
      const { between, ends } = equations.boundsOf(i, answers);
      const solution = { between, ...(ends ? { ends } : {}) } as unknown as Solution;
      solutions.push(solution);
      return quantityOf(value.kind, answers[i]!, value.unit, { ...leaf, solution }, notes, value.label);
    }),
    options,
  );
  // The new answers carry the equations as they are now, so that a what-if of a what-if solves again too.
  solutions.forEach((solution, i) => (solution.residual = values.get(affected[i]!.residualKey) as Quantity));
  return values;
}

/** The unknowns that depend on a changed input, directly, through their bounds or through one another. */
function affectedUnknowns({ nodes, unknowns }: System, changes: Changes): Unknown[] {
  const open = unknowns.filter(({ key }) => !changes.has(key));
  if (open.length === 0) return [];
  const moved = new Set<Key>(changes.keys());
  for (let before = -1; moved.size !== before;) {
    before = moved.size;
    for (const { key, inputs } of nodes.values()) if (inputs.some((input) => moved.has(input))) moved.add(key);
    for (const { key, residualKey } of open) if (moved.has(residualKey)) moved.add(key);
  }
  return open.filter(({ key }) => moved.has(key));
}

const bare = ({ value }: Unknown, si: number): Quantity =>
  quantityOf(value.kind, si, value.unit, undefined, NO_NOTES, value.label);

interface Bounds {
  readonly between: readonly [number, number];
  readonly ends: readonly [Quantity, Quantity] | undefined;
}

/** The residuals of unknowns as one system over other inputs. */
class Equations {
  readonly unknowns: readonly Unknown[];
  readonly #name: string;
  readonly changes: Changes;
  readonly #nodes: ReadonlyMap<Key, Node>;

  constructor(name: string, unknowns: readonly Unknown[], changes: Changes) {
    this.unknowns = unknowns;
    this.#name = name;
    this.changes = changes;
    this.#nodes = graphOf(unknowns.flatMap(({ residual, ends }) => [residual, ...ends]));
  }

  /** The changes and a value for each unknown. */
  with(changes: Changes, answer: (unknown: Unknown, i: number) => Quantity | Column): Changes {
    return new Map([...changes, ...this.unknowns.map((unknown, i) => [unknown.key, answer(unknown, i)] as const)]);
  }

  notes(inputs: Changes, options: ReplayOptions): readonly Note[] {
    const values = replay(this.#nodes, inputs, options);
    return this.unknowns.reduce<readonly Note[]>(
      (notes, { residualKey }) => merged(notes, values.get(residualKey)!.notes),
      NO_NOTES,
    );
  }

  /** Between what an answer is sought, with the changed inputs and the answers. */
  boundsOf(i: number, answers: readonly number[], changes = this.changes): Bounds {
    return boundsIn(this.unknowns[i]!, this.#at(changes, answers));
  }

  #at(changes: Changes, answers: readonly number[]): Values {
    return replay(
      this.#nodes,
      this.with(changes, (unknown, i) => bare(unknown, answers[i]!)),
    );
  }

  /**
   * The answers with changed inputs: from the known ones at once; a single equation also by its bounds; else step by step from the old
   * inputs to the new ones.
   */
  solve(changes: Changes): number[] {
    const trial = new Trial((at) => this.#at(changes, at), this.unknowns);
    const known = this.unknowns.map(({ value }) => value.si);
    const near =
      solveNear(trial.residuals, trial.inside(known), trial.widths) ??
      (this.unknowns.length === 1 ? trial.byBounds(known) : undefined);
    if (!near && trial.computed === 0) this.#refuseWhateverTheAnswer(changes);
    const answers = near ?? this.#inSteps(changes, known, trial);
    if (answers) return answers;
    // Nothing could be computed anywhere: the new inputs themselves are impossible, and that error says why.
    if (trial.refused && trial.computed === 0) throw trial.refused;
    const where = this.unknowns.map((unknown, i) => {
      const { kind, unit } = unknown.value;
      const [low, high] = trial.bounds(known)[i]!;
      return `${unknown.leaf.label} between ${showSi(kind, low, unit)} and ${showSi(kind, high, unit)}`;
    });
    const got = trial.refused ? `none; on the way: ${trial.refused.message}` : 'none';
    const mend = 'Solve it anew with these inputs and a wider `between`.';
    throw refusal(
      this.#name,
      'not converged',
      '',
      `the equation must still have an answer (${where.join(', ')})`,
      got,
      mend,
    );
  }

  /** Throws where a step cannot take the new inputs, whatever the answers are: going towards them in steps would be of no use. */
  #refuseWhateverTheAnswer(changes: Changes): void {
    const fixed = replay(this.#independentNodes(), changes);
    for (const { value, inputs } of this.#nodes.values()) {
      const { operation } = (value.origin?.type === 'step' ? value.origin : {}) as Partial<Step>;
      if (operation === undefined) continue;
      const given = inputs.map((key) => fixed.get(key) ?? this.#nodes.get(key)!.value);
      const isRefused = given.some((input, i) => {
        const { min, max } = inputAt(operation, i, given.length);
        return !isColumn(input) && !(input.si >= min && input.si <= max);
      });
      if (isRefused) throw diagnose(operation, given, 'accepted');
    }
  }

  #independentNodes(): Map<Key, Node> {
    const kept = new Map<Key, Node>();
    const answers = new Set(this.unknowns.map(({ key }) => key));
    for (const [key, node] of this.#nodes) {
      if (!answers.has(key) && node.inputs.every((input) => kept.has(input))) kept.set(key, node);
    }
    return kept;
  }

  #inSteps(changes: Changes, known: readonly number[], last: Trial): number[] | undefined {
    let answers: readonly number[] = known;
    let done = 0;
    for (let step = 0.5; step >= SMALLEST_STEP;) {
      const to = Math.min(1, done + step);
      const part = new Map([...changes].map(([key, value]) => [key, this.#partWay(key, value, to)]));
      const trial = to === 1 ? last : new Trial((at) => this.#at(part, at), this.unknowns);
      const next = solveNear(trial.residuals, trial.inside(answers), trial.widths);
      if (next && to === 1) return next;
      if (next) [answers, done] = [next, to];
      else step /= 2;
    }
    return undefined;
  }

  #partWay(key: Key, value: Quantity | Column, share: number): Quantity | Column {
    const from = this.#nodes.get(key)?.value;
    if (share === 1 || from === undefined || isColumn(value) || isColumn(from)) return value;
    return quantityOf(value.kind, from.si + share * (value.si - from.si), value.unit, undefined, NO_NOTES);
  }
}

const SMALLEST_STEP = 1 / 1024;

/** Bounds as they are among computed values; as they were where they have no history. */
function boundsIn({ ends, between }: Unknown, values: Values): Bounds {
  const [first, second] = ends.map((end) => values.get(keyOf(end)) as Quantity);
  if (!first || !second) return { between, ends: undefined };
  return { between: [Math.min(first.si, second.si), Math.max(first.si, second.si)], ends: [first, second] };
}

/** Tries of a system with certain inputs. */
class Trial {
  readonly #compute: (at: readonly number[]) => Values;
  readonly #unknowns: readonly Unknown[];
  /** The first error on the way, and how many tries could be computed. */
  refused: CalculationError | undefined;
  computed = 0;

  constructor(compute: (at: readonly number[]) => Values, unknowns: readonly Unknown[]) {
    this.#compute = compute;
    this.#unknowns = unknowns;
  }

  get widths(): number[] {
    return this.#unknowns.map(({ between: [low, high] }) => high - low);
  }

  readonly residuals = (at: readonly number[]): number[] | undefined => {
    const values = this.#attempt(at);
    if (!values) return undefined;
    const isInside = this.#unknowns.every((unknown, i) => {
      const [low, high] = boundsIn(unknown, values).between;
      return at[i]! >= low && at[i]! <= high;
    });
    return isInside ? this.#unknowns.map(({ residualKey }) => (values.get(residualKey) as Quantity).si) : undefined;
  };

  bounds(at: readonly number[]): (readonly [number, number])[] {
    const values = this.#attempt(at);
    return this.#unknowns.map((unknown) => (values ? boundsIn(unknown, values).between : unknown.between));
  }

  /** A start moved between the bounds, where they are no longer around it. */
  inside(at: readonly number[]): number[] {
    const bounds = this.bounds(at);
    return at.map((x, i) => {
      const [low, high] = bounds[i]!;
      return x >= low && x <= high ? x : (low + high) / 2;
    });
  }

  /** A single unknown sought from bound to bound. */
  byBounds(known: readonly number[]): number[] | undefined {
    const [[low, high]] = this.bounds(known) as [readonly [number, number]];
    let isPossible = true;
    const f = (x: number): number => {
      const value = this.residuals([x])?.[0];
      isPossible &&= value !== undefined;
      return value ?? 0;
    };
    const atLow = f(low);
    const atHigh = f(high);
    if (!isPossible || atLow > 0 === atHigh > 0) return undefined;
    const root = zeroBetween(f, low, high, atLow, atHigh);
    return isPossible && root !== undefined ? [root] : undefined;
  }

  #attempt(at: readonly number[]): Values | undefined {
    try {
      const values = this.#compute(at);
      this.computed++;
      return values;
    } catch (error) {
      if (!(error instanceof CalculationError)) throw error;
      this.refused ??= error;
      return undefined;
    }
  }
}

/** Row by row from the known answers; then the graph once over columns of answers. */
function replayRows(system: System, equations: Equations, rows: number, options: ReplayOptions): Values {
  const { unknowns } = equations;
  const data = unknowns.map(() => new Float64Array(rows).fill(NaN));
  let refused = 0;
  for (let row = 0; row < rows; row++) {
    const inputs = rowOf(equations.changes, row);
    if ([...inputs.values()].some(({ si }) => Number.isNaN(si))) continue;
    try {
      equations.solve(inputs).forEach((answer, i) => (data[i]![row] = answer));
    } catch (error) {
      if (!(error instanceof CalculationError)) throw error;
      if (options.badRows !== 'missing') throw inRow(error, row, rows);
      refused++;
    }
  }
  const answers = (notes: readonly Note[]): Changes =>
    equations.with(equations.changes, ({ value, leaf }, i) => {
      const origin: Leaf = { type: 'leaf', role: 'solved', ...(leaf.label === undefined ? {} : { label: leaf.label }) };
      return columnOf(value.kind, data[i]!, value.unit, origin, notes, refused, value.label);
    });
  return replay(system.nodes, answers(equations.notes(answers(NO_NOTES), options)), options);
}

/** One row of changed inputs, as bare quantities. */
export function rowOf(changes: Changes, row: number): Map<Key, Quantity> {
  return new Map(
    [...changes].map(([key, value]) => [
      key,
      isColumn(value) ? quantityOf(value.kind, value.si[row]!, value.unit, undefined, NO_NOTES, value.label) : value,
    ]),
  );
}

/** The error of one row, saying which. */
export function inRow(error: CalculationError, row: number, rows: number): CalculationError {
  const mend = `To carry on and count such rows as missing: { badRows: 'missing' }.`;
  const [first] = error.problems;
  return new CalculationError(error.calculation, [{ ...first!, got: `${first!.got} (row ${row} of ${rows})`, mend }]);
}
