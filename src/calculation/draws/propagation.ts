import { CalculationError } from '../../units/errors.js';
import { withArticle } from '../../units/internal.js';
import type { Column, Note, Quantity } from '../../units/origin.js';
import { isColumn } from '../../units/quantity.js';
import { keyOf, type Key } from '../graph.js';
import { replaySystem, rowOf } from '../resolve.js';
import { namesOf, type System } from '../system.js';
import { InputDraws, type UncertainInput } from './inputs.js';

/** Values that the columns of one replay may hold together, which bounds its memory to some 30 MB. */
const MOST_VALUES = 4e6;
const MOST_ROWS = 1e4;

/** Puts draws of the uncertain inputs through the graph of a result, block after block. */
export class Propagation {
  readonly #system: System;
  readonly #result: Key;
  readonly #draws: InputDraws;
  readonly #rowsAtOnce: number;
  readonly #movesColumns: boolean;
  readonly #notes = new NoteCounts();
  /** Draws made so far, and how many of them a step refused. */
  drawn = 0;
  impossible = 0;
  /** Why the first of them was refused. */
  reason: string | undefined;

  constructor(system: System, result: Quantity, inputs: readonly UncertainInput[], seed: number) {
    const { nodes } = system;
    this.#system = system;
    this.#result = keyOf(result);
    this.#draws = new InputDraws(inputs, seed);
    this.#rowsAtOnce = Math.max(1, Math.min(MOST_ROWS, Math.floor(MOST_VALUES / nodes.size)));
    this.#movesColumns = movesColumns(system, inputs);
  }

  /** The possible ones of so many results more, in ascending order. */
  next(count: number): Float64Array {
    const results = new Float64Array(count);
    let possible = 0;
    for (let done = 0; done < count; done += this.#rowsAtOnce) {
      const draws = this.#draws.next(Math.min(this.#rowsAtOnce, count - done));
      const values = this.#movesColumns ? this.#oneByOne(draws) : this.#together(draws);
      for (let row = 0; row < values.length; row++) {
        const value = values[row]!;
        if (Number.isNaN(value)) this.reason ??= this.#reasonOf(draws, row);
        else results[possible++] = value;
      }
    }
    this.drawn += count;
    this.impossible += count - possible;
    return results.slice(0, possible).sort();
  }

  /** What must be known of the results beside those notes the result itself carries: each with how many draws it holds for. */
  notes(): Note[] {
    return this.#notes.asNotes(this.drawn);
  }

  #together(draws: ReadonlyMap<Key, Column>): Float64Array {
    const column = this.#replay(draws, { badRows: 'missing' }) as Column;
    for (const note of column.notes) this.#notes.add(note, note.rows ?? column.length);
    return column.si;
  }

  #oneByOne(draws: ReadonlyMap<Key, Column>): Float64Array {
    const [first] = draws.values();
    return Float64Array.from({ length: first!.length }, (_, row) => {
      const inputs = rowOf(draws, row);
      if ([...inputs.values()].some(({ si }) => Number.isNaN(si))) return NaN;
      try {
        const value = this.#replay(inputs) as Quantity;
        for (const note of value.notes) this.#notes.add(note, 1);
        return value.si;
      } catch (error) {
        if (error instanceof CalculationError) return NaN;
        throw error;
      }
    });
  }

  #replay(inputs: ReadonlyMap<Key, Quantity | Column>, options: { badRows?: 'missing' } = {}): Quantity | Column {
    return replaySystem('monteCarlo', this.#system, inputs, options).get(this.#result)!;
  }

  #reasonOf(draws: ReadonlyMap<Key, Column>, row: number): string {
    const inputs = rowOf(draws, row);
    for (const [key, { kind, si }] of inputs) {
      if (Number.isNaN(si))
        return `${namesOf(this.#system.nodes)(key)} below zero, which ${withArticle(kind)} cannot be`;
    }
    try {
      this.#replay(inputs);
    } catch (error) {
      if (error instanceof CalculationError) return error.message.replace(/\.$/, '');
      throw error;
    }
    return 'a step that has no answer';
  }
}

/** Whether a draw changes a whole column: rows of a log are not draws, so such a graph is computed draw by draw. */
function movesColumns({ nodes, unknowns }: System, inputs: readonly UncertainInput[]): boolean {
  const moved = new Set<Key>([...inputs, ...unknowns].map(({ key }) => key));
  for (const node of nodes.values()) {
    if (!node.inputs.some((input) => moved.has(input))) continue;
    if (isColumn(node.value)) return true;
    moved.add(node.key);
  }
  return false;
}

/** Notes of many draws, each once. */
class NoteCounts {
  readonly #counts = new Map<string, { readonly note: Note; draws: number }>();

  add(note: Note, draws: number): void {
    const message = withoutRows(note);
    const known = this.#counts.get(message);
    if (known) known.draws += draws;
    else this.#counts.set(message, { note: { ...note, message }, draws });
  }

  asNotes(drawn: number): Note[] {
    return [...this.#counts.values()].map(({ note, draws }) => {
      if (draws >= drawn) return note;
      const message = `${note.message.replace(/\.$/, '')}, in ${shareText(draws / drawn)} of the draws.`;
      return { ...note, message, rows: draws };
    });
  }
}

/** The message of a note about a column, without how many rows it holds for. */
function withoutRows({ message, rows }: Note): string {
  return rows === undefined ? message : message.replace(` in ${rows} rows`, '');
}

/** A share of draws in percent, to two figures. */
export function shareText(share: number): string {
  const percent = 100 * share;
  return `${percent >= 10 ? Math.round(percent) : Number(percent.toPrecision(2))} %`;
}
