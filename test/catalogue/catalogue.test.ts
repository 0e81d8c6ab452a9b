import { describe, expect, it } from 'vitest';
import { workOf, works } from '../../src/calculation/index.js';
import { catalogue, catalogueByTask } from '../../src/catalogue/index.js';
import { exportedCalculations } from '../support/calculations.js';

describe('the catalogue', () => {
  it('lists every calculation that a topic exports, once', async () => {
    const label = ({ topic, name }: { topic: string; name: string }): string => `${topic}.${name}`;
    const listed = catalogue().map(label).sort();
    expect(listed).toEqual((await exportedCalculations()).map(label).sort());
    expect(new Set(listed).size).toBe(listed.length);
  });

  it('has every calculation under the job it serves, and no job without one', () => {
    const byTask = catalogueByTask();
    expect([...byTask.values()].flat()).toHaveLength(catalogue().length);
    for (const [task, entries] of byTask) expect(entries.length, task).toBeGreaterThan(0);
  });

  it('gives each calculation a name of its own', () => {
    const names = catalogue().map(({ spec }) => spec.name);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });

  it('rests on works that are all written out', () => {
    const cited = new Set(catalogue().flatMap(({ spec }) => spec.sources.map(({ id }) => id)));
    for (const id of cited) expect(workOf(id), id).not.toBe(id);
    expect(Object.keys(works()).length).toBeGreaterThan(10);
  });
});
