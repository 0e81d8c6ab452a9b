import { describe, expect, it } from 'vitest';
import { topics } from '../../.ci/topics.mjs';
import { bundleWithEsbuild, nodeModulesLoadedAtOnce } from './bundling.js';

describe('a web page', () => {
  it.each(Object.keys(topics()))('can import coldside/%s', async (topic) => {
    const text = await bundleWithEsbuild(`export * from 'coldside/${topic}';`);
    expect(text.length).toBeGreaterThan(100);
    expect(nodeModulesLoadedAtOnce(text)).toEqual([]);
  });

  it('would be refused a module of Node that loads at once, and given one that waits', () => {
    expect(nodeModulesLoadedAtOnce(`import { readFile } from 'node:fs/promises';\nimport fs from "fs";`)).toHaveLength(
      2,
    );
    expect(nodeModulesLoadedAtOnce(`const read = async () => (await import('node:fs/promises')).readFile;`)).toEqual(
      [],
    );
  });
});
