import { beforeAll, describe, expect, it, vi } from 'vitest';
import { brokenPromises, promisedLines, runExample, type ExampleRun } from '../support/examples.js';

// Each run is a process of its own, slow to start on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

describe('the reference scenarios', () => {
  let run: ExampleRun;
  beforeAll(() => {
    run = runExample('reference-scenarios');
  });
  const powerOf = (name: string): number => {
    const line = run.lines.find((text) => text.startsWith(name.padEnd(25)))!;
    return Number(line.trim().split(/\s+/).at(-2));
  };

  it('print what their comments promise', () => {
    expect(run.errors).toBe('');
    expect(run.exitCode).toBe(0);
    expect(promisedLines('reference-scenarios').length).toBeGreaterThan(5);
    expect(brokenPromises(promisedLines('reference-scenarios'), run.lines)).toEqual([]);
  });

  it('come in the order that cooling gives: a fan beats the car behind its radiator, and speed helps the car', () => {
    const [still, slow, middle, fast, fan] = [
      'bench, still air',
      'car, 60 km/h',
      'car, 110 km/h',
      'car, 160 km/h',
      'bench, fan',
    ].map(powerOf);
    expect(slow).toBeGreaterThan(still!);
    expect(middle).toBeGreaterThan(slow!);
    expect(fast).toBeGreaterThan(middle!);
    expect(fan).toBeGreaterThan(fast!);
  });
});
