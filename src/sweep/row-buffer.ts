import { columnOf, NO_NOTES } from '../units/internal.js';
import type { Column } from '../units/index.js';
import { roleWords, type Channels, type ChannelRole } from './roles.js';

type Shape = Pick<Column, 'kind' | 'unit'>;

/** Rows of a log's channels that are not yet known to be a pull: they are added at the end and dropped at the front. */
export class RowBuffer {
  readonly #shapes: ReadonlyMap<ChannelRole, Shape>;
  readonly #numbers: Map<ChannelRole, Float64Array>;
  #lines: Float64Array;
  #first = 0;
  #end = 0;

  constructor(shapes: ReadonlyMap<ChannelRole, Shape>) {
    this.#shapes = shapes;
    this.#lines = new Float64Array(1024);
    this.#numbers = new Map([...shapes.keys()].map((role) => [role, new Float64Array(1024)]));
  }

  get length(): number {
    return this.#end - this.#first;
  }

  /** Adds the row of a batch. */
  add(batch: ReadonlyMap<ChannelRole, Float64Array>, row: number, line: number): void {
    if (this.#end === this.#lines.length) this.#makeRoom();
    for (const [role, numbers] of this.#numbers) numbers[this.#end] = batch.get(role)![row]!;
    this.#lines[this.#end++] = line;
  }

  /** A reading of a row that is held, from 0. */
  at(role: ChannelRole, row: number): number {
    return this.#numbers.get(role)![this.#first + row]!;
  }

  /** Forgets rows at the front. */
  drop(count: number): void {
    this.#first = Math.min(this.#first + count, this.#end);
    if (this.#first === this.#end) this.#first = this.#end = 0;
  }

  /** The rows before one as channels, with the first and last line. */
  take(from: number, to: number): { readonly channels: Channels; readonly lines: readonly [number, number] } {
    const [start, end] = [this.#first + from, this.#first + to];
    const channels = [...this.#numbers].map(([role, numbers]) => {
      const { kind, unit } = this.#shapes.get(role)!;
      return [role, columnOf(kind, numbers.slice(start, end), unit, undefined, NO_NOTES, 0, roleWords(role))];
    });
    return {
      channels: Object.fromEntries(channels) as Channels,
      lines: [this.#lines[start]!, this.#lines[end - 1]!],
    };
  }

  #makeRoom(): void {
    const { length } = this;
    const size = length > this.#lines.length / 2 ? 2 * this.#lines.length : this.#lines.length;
    const moved = (old: Float64Array): Float64Array => {
      const fresh = new Float64Array(size);
      fresh.set(old.subarray(this.#first, this.#end));
      return fresh;
    };
    this.#lines = moved(this.#lines);
    for (const [role, numbers] of this.#numbers) this.#numbers.set(role, moved(numbers));
    this.#first = 0;
    this.#end = length;
  }
}
