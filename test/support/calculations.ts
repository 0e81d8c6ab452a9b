import { readdirSync, existsSync } from 'node:fs';
import type { Specification } from '../../src/calculation/index.js';
import type { Column, Quantity } from '../../src/units/index.js';

/** A calculation as the tests that go over all of them see it. */
export interface AnyCalculation {
  (inputs: Record<string, unknown>, options?: object): Quantity;
  columns(inputs: Record<string, unknown>, options?: object): Column;
  kernel(...si: number[]): number;
  readonly spec: Specification;
}

/** A calculation with the topic and the name it is exported under. */
export interface ExportedCalculation {
  readonly topic: string;
  readonly name: string;
  readonly calculation: AnyCalculation;
}

const src = new URL('../../src/', import.meta.url);

/** Every calculation that a topic folder exports, alone or gathered in an object of variants. */
export async function exportedCalculations(): Promise<ExportedCalculation[]> {
  const found: ExportedCalculation[] = [];
  for (const topic of readdirSync(src, { withFileTypes: true })) {
    if (!topic.isDirectory() || !existsSync(new URL(`${topic.name}/index.ts`, src))) continue;
    if (topic.name === 'catalogue') continue;
    const exports = (await import(`../../src/${topic.name}/index.ts`)) as Record<string, unknown>;
    for (const [name, value] of Object.entries(exports)) {
      if (isCalculation(value)) found.push({ topic: topic.name, name, calculation: value });
    }
  }
  return found;
}

function isCalculation(value: unknown): value is AnyCalculation {
  return typeof value === 'function' && 'spec' in value && 'kernel' in value && 'columns' in value;
}
