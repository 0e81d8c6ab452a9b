import { readdirSync, rmSync } from 'node:fs';
import type { Plugin } from 'esbuild';
import { defineConfig } from 'tsup';
import { bundlerMarks } from './.ci/bundler-marks.mjs';
import { root, topics } from './.ci/topics.mjs';

/** Keeps one output file per source file: state is shared between entry points, and a stack trace names the file one can read. */
function oneToOne(extension: string): Plugin {
  return {
    name: 'one-to-one',
    setup(build) {
      build.onResolve({ filter: /^\.\.?\/.*\.js$/ }, ({ path }) => ({
        path: path.replace(/\.js$/, extension),
        external: true,
      }));
    },
  };
}

const sources = readdirSync(`${root}src`, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => path.endsWith('.ts'))
  .map((path) => path.slice(0, -'.ts'.length));
const entries = (names: string[]) => Object.fromEntries(names.map((name) => [name, `src/${name}.ts`]));
const library = sources.filter((name) => !name.startsWith('bin/'));
const programs = sources.filter((name) => name.startsWith('bin/'));

const shared = {
  outDir: 'dist',
  platform: 'neutral',
  target: 'es2022',
  splitting: false,
  sourcemap: true,
  treeshake: false,
  removeNodeProtocol: false,
  silent: true,
} as const;

rmSync(`${root}dist`, { recursive: true, force: true });

export default defineConfig([
  { ...shared, entry: entries(library), format: 'esm', esbuildPlugins: [bundlerMarks(), oneToOne('.js')] },
  {
    ...shared,
    entry: entries(library),
    format: 'cjs',
    outExtension: () => ({ js: '.cjs' }),
    esbuildPlugins: [bundlerMarks(), oneToOne('.cjs')],
  },
  ...(programs.length > 0
    ? [
        {
          ...shared,
          platform: 'node' as const,
          entry: entries(programs),
          format: 'esm' as const,
          esbuildPlugins: [oneToOne('.js')],
        },
      ]
    : []),
  {
    ...shared,
    entry: entries(
      ['index', ...Object.keys(topics()).map((topic) => `${topic}/index`)].filter((name) => sources.includes(name)),
    ),
    format: ['esm', 'cjs'],
    dts: { only: true },
  },
]);
