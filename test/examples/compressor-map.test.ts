import { describe, expect, it, vi } from 'vitest';
import { brokenPromises, promisedLines, runExample } from '../support/examples.js';

// The run is a process of its own, slow to start on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

describe('the example of a compressor map', () => {
  it('prints what its comments promise', () => {
    const { lines, errors, exitCode } = runExample('compressor-map');
    expect(errors).toBe('');
    expect(exitCode).toBe(0);
    const promised = promisedLines('compressor-map');
    expect(promised.length).toBe(8);
    expect(brokenPromises(promised, lines)).toEqual([]);
  });
});
