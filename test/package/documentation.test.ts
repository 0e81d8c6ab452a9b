import { describe, expect, it } from 'vitest';
import { calculationsIn, readSource, writtenCalculations } from './source-files.js';

const undocumented = (calculations: ReturnType<typeof writtenCalculations>) =>
  calculations.flatMap(({ name, inputs }) =>
    inputs.filter((input) => !input.isDocumented).map((input) => `${name}: ${input.name}`),
  );

describe('the inputs of a calculation', () => {
  it('each have a comment, which the editor and the docs page show', () => {
    const calculations = writtenCalculations();
    expect(undocumented(calculations)).toEqual([]);
    expect(calculations.flatMap(({ inputs }) => inputs).length).toBeGreaterThan(0);
  });

  it('are seen when a comment is missing or is not one for documentation', () => {
    const text = `const a = calculation({ name: 'a', inputs: {\n/** Told. */\ntold: 1,\nbare: 2,\n/* No. */\nplain: 3 } });`;
    expect(undocumented(calculationsIn(readSource('units/a.ts', text).statements))).toEqual(['a: bare', 'a: plain']);
  });
});
