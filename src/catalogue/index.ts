/**
 * Every calculation of the library with its definition: for docs, tests, live pages and translation into other languages. Importing it
 * loads every topic.
 *
 * @module catalogue
 */
import * as air from '../air/index.js';
import type { Specification, Task } from '../calculation/index.js';
import { TASKS } from '../calculation/index.js';
import * as chargePath from '../charge-path/index.js';
import * as compressor from '../compressor/index.js';
import * as correction from '../correction/index.js';
import * as engine from '../engine/index.js';
import * as fuel from '../fuel/index.js';
import * as intercooler from '../intercooler/index.js';
import * as knock from '../knock/index.js';
import * as psychrometrics from '../psychrometrics/index.js';

/** A calculation in the catalogue: where it is exported and what it is. */
export interface CatalogueEntry {
  /** The topic, which is also the import path: `coldside/compressor`. */
  readonly topic: string;
  /** The name it is exported under. */
  readonly name: string;
  /** Its definition: inputs, formula, sources. */
  readonly spec: Specification;
}

const isCalculation = (value: unknown): value is { readonly spec: Specification } =>
  typeof value === 'function' && 'spec' in value && 'kernel' in value;

/** Every calculation, topic by topic in the order of the layers, in reading order within a topic. */
export function catalogue(): CatalogueEntry[] {
  const topics = {
    air,
    psychrometrics,
    compressor,
    intercooler,
    engine,
    correction,
    fuel,
    knock,
    'charge-path': chargePath,
  };
  return Object.entries(topics).flatMap(([topic, exports]) =>
    Object.entries(exports as Readonly<Record<string, unknown>>).flatMap(([name, value]) =>
      isCalculation(value) ? [{ topic, name, spec: value.spec }] : [],
    ),
  );
}

/** The catalogue by the job a calculation serves, in the order a user meets the jobs. */
export function catalogueByTask(): ReadonlyMap<Task, readonly CatalogueEntry[]> {
  const entries = catalogue();
  return new Map(TASKS.map((task) => [task, entries.filter((entry) => entry.spec.task === task)]));
}
