import { describe, expect, it } from 'vitest';
import { layerOf, layers, topics } from '../../.ci/topics.mjs';
import { type Import, loadedWith, readSource, rings, sourceFiles } from './source-files.js';

const files = sourceFiles();
const imports = files.flatMap((file) => file.imports);
const list = (wrong: readonly Import[]) => wrong.map(({ from, to }) => `${from} imports ${to}`);
const isIn = (path: string, ...folders: string[]) =>
  folders.some((folder) => path.startsWith(`${folder}/`) || path === `${folder}.ts`);

/** Where each package may be imported, and whether a plain `import` may load it. */
const packages = [
  { name: /^decimal\.js$/, folders: ['units/exact'], plainly: true },
  { name: /^udsv$/, folders: ['sweep'], plainly: true },
  { name: /^vega(-lite)?$/, folders: ['plot', 'report'], plainly: false },
  { name: /^node:/, folders: ['sweep', 'report'], plainly: false },
  { name: /^node:/, folders: ['bin'], plainly: true },
];

function mayImport({ from, to, isDynamic, isTypeOnly }: Import): boolean {
  return packages.some(
    ({ name, folders, plainly }) => name.test(to) && isIn(from, ...folders) && (plainly || isDynamic || isTypeOnly),
  );
}

function pointsUpward({ from, to, isPackage }: Import): boolean {
  return isPackage || from === 'index.ts' || layerOf(to) <= layerOf(from);
}

describe('the folders of src', () => {
  it('are all in the list that says which stands on which', () => {
    expect(files.map(({ path }) => path).filter((path) => path !== 'index.ts' && layerOf(path) < 0)).toEqual([]);
    expect(files.length).toBeGreaterThan(0);
  });

  it('import only what stands before them in that list', () => {
    expect(list(imports.filter((each) => !pointsUpward(each)))).toEqual([]);
  });

  it('never import themselves by the public name', () => {
    expect(list(imports.filter(({ to, isPackage }) => isPackage && /^coldside(\/|$)/.test(to)))).toEqual([]);
  });

  it('import files that exist', () => {
    const paths = new Set(files.map(({ path }) => path));
    expect(list(imports.filter(({ to, isPackage }) => !isPackage && to.endsWith('.ts') && !paths.has(to)))).toEqual([]);
  });

  it('hold no ring of files that import one another', () => {
    expect(rings(files)).toEqual([]);
  });

  it('load a package only where it belongs, and pictures and files only when asked for', () => {
    expect(list(imports.filter((each) => each.isPackage && !mayImport(each)))).toEqual([]);
  });

  it('do nothing while they load', () => {
    const busy = files
      .filter(({ path }) => !isIn(path, 'bin'))
      .flatMap(({ path, actions }) => actions.map((action) => `${path}: ${action}`));
    expect(busy).toEqual([]);
  });

  it('reach the CSV reader only through sweep and what stands on it', () => {
    const loaders = Object.entries(topics())
      .filter(([, file]) =>
        [...loadedWith(file.replace('src/', ''), files)].some((path) =>
          imports.some(({ from, to }) => from === path && to === 'udsv'),
        ),
      )
      .map(([topic]) => topic)
      .filter((topic) => layerOf(topic) < layers.indexOf('sweep'));
    expect(loaders).toEqual([]);
  });
});

describe('src/index.ts', () => {
  it('re-exports the topics and nothing else', () => {
    const index = files.find(({ path }) => path === 'index.ts');
    // Statistics are plain numbers under short names, such as `mean`, that topics use for quantities.
    const others = ['bin', 'units/exact', 'statistics'];
    const expected = Object.values(topics())
      .map((file) => file.replace('src/', ''))
      .filter((file) => !isIn(file, ...others));
    expect(index?.imports.map(({ to }) => to).sort()).toEqual(expected.sort());
    expect(index?.statements.length).toBe(expected.length);
  });
});

describe('the rules themselves', () => {
  const importOf = (path: string, text: string) => readSource(path, text).imports[0]!;

  it('see an import that points downward, whatever its form', () => {
    for (const text of [
      `import { a } from '../compressor/index.js';`,
      `import type { A } from '../compressor/index.js';`,
      `export * from '../compressor/index.js';`,
      `const late = () => import('../compressor/index.js');`,
      `let a: import('../compressor/index.js').A;`,
    ])
      expect(pointsUpward(importOf('units/quantity.ts', text)), text).toBe(false);
    expect(pointsUpward(importOf('compressor/power.ts', `import { a } from '../units/index.js';`))).toBe(true);
  });

  it('see a package loaded at once where it must wait', () => {
    expect(mayImport(importOf('plot/render.ts', `import { View } from 'vega';`))).toBe(false);
    expect(mayImport(importOf('plot/render.ts', `import type { View } from 'vega';`))).toBe(true);
    expect(mayImport(importOf('plot/render.ts', `const vega = () => import('vega');`))).toBe(true);
    expect(mayImport(importOf('units/format.ts', `import { Decimal } from 'decimal.js';`))).toBe(false);
    expect(mayImport(importOf('air/density.ts', `const files = () => import('node:fs');`))).toBe(false);
  });

  it('see a ring, also one of types alone', () => {
    const a = readSource('units/a.ts', `import type { B } from './b.js';`);
    const b = readSource('units/b.ts', `import { type A } from './a.js';`);
    expect(rings([a, b])).toEqual(['units/a.ts -> units/b.ts -> units/a.ts']);
  });

  it('see a statement that runs, and a variable that can change', () => {
    expect(
      readSource('units/a.ts', `register('a'); let count = 0; import './b.js'; const a = make();`).actions,
    ).toHaveLength(3);
  });
});
