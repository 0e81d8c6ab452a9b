import { readdirSync, readFileSync } from 'node:fs';
import { parse, type Kind, type Quantity } from '../../src/units/index.js';
import type { Specification } from '../../src/calculation/index.js';

/** A check value from outside the project: one row of `test/reference/<topic>.json`. */
export interface ReferenceRow {
  /** The exported name of the calculation. */
  readonly calculation: string;
  /** The published source, as one would find it. */
  readonly source: string;
  /** How the figure came here: `document` and `memory` of the named source, `computed` elsewhere, or `common practice`. */
  readonly read: 'document' | 'memory' | 'computed' | 'common practice';
  /** Texts with units by argument name; a list is an array of texts. */
  readonly input: Readonly<Record<string, string | readonly string[]>>;
  /** Text with unit. */
  readonly output: string;
  /** Largest allowed difference, in the unit of the output. */
  readonly tolerance: number;
  /** Why that tolerance. */
  readonly why: string;
}

const folder = new URL('../reference/', import.meta.url);

/** The rows of one topic. */
export function referenceRows(topic: string): readonly ReferenceRow[] {
  return JSON.parse(readFileSync(new URL(`${topic}.json`, folder), 'utf8')) as ReferenceRow[];
}

/** The topics that have reference rows. */
export function referenceTopics(): string[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .map((file) => file.replace('.json', ''))
    .filter((topic) => {
      const rows = JSON.parse(readFileSync(new URL(`${topic}.json`, folder), 'utf8')) as unknown;
      return Array.isArray(rows) && typeof (rows[0] as Partial<ReferenceRow> | undefined)?.calculation === 'string';
    });
}

/** The inputs of a row as quantities. */
export function inputsOf(row: ReferenceRow, spec: Specification): Record<string, Quantity | Quantity[]> {
  return Object.fromEntries(
    Object.entries(row.input).map(([name, text]) => {
      const input = spec.inputs.find((candidate) => candidate.name === name);
      if (!input) throw new Error(`${row.calculation} has no input ${name}`);
      const read = (item: string): Quantity => parse(input.kind, item);
      return [name, typeof text === 'string' ? read(text) : text.map(read)];
    }),
  );
}

/** The output of a row: value and unit. */
export function outputOf(row: ReferenceRow, kind: Kind): { value: number; unit: string } {
  const expected = parse(kind, row.output);
  return { value: Number.parseFloat(row.output), unit: expected.unit };
}
