import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { bundleWithEsbuild, bundleWithRollup } from './bundling.js';
import { writtenCalculations } from './source-files.js';

const one = `import { outletTemperature } from 'coldside/compressor'; console.log(outletTemperature);`;
const unused = `import { outletTemperature } from 'coldside/compressor'; console.log(1);`;
const bundlers = [
  ['esbuild', bundleWithEsbuild],
  ['Rollup', bundleWithRollup],
] as const;

describe.each(bundlers)('a bundle by %s', (_name, bundle) => {
  it('of one calculation carries no other calculation', async () => {
    const text = await bundle(one);
    const named = new Set([...text.matchAll(/\bname: (["'`])(.*?)\1/g)].map((match) => match[2]));
    const carried = writtenCalculations()
      .filter(({ name }) => named.has(name))
      .map(({ name }) => name);
    expect(carried).toEqual(['compressor outlet temperature']);
  });

  it('of an unused calculation carries nothing', async () => {
    expect((await bundle(unused)).replace(/^\/\/.*$/gm, '').trim()).toBe('console.log(1);');
  });
});

it('takes a few kilobytes of a web page', async () => {
  expect(gzipSync(await bundleWithEsbuild(one, true)).length).toBeLessThan(12_000);
});
