import { existsSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, resolve } from 'node:path';
import { build, type Plugin as EsbuildPlugin, transformSync } from 'esbuild';
import { rollup, type Plugin as RollupPlugin } from 'rollup';
import { markForBundlers } from '../../.ci/bundler-marks.mjs';
import { root } from '../../.ci/topics.mjs';

const entry = 'entry.js';
const optional = ['vega', 'vega-lite'];

/** The file of src that the built package would answer with, as a bundler meets it: marked, types gone. */
function published(path: string): string {
  const marked = markForBundlers(readFileSync(path, 'utf8'), path);
  return transformSync(marked, { loader: 'ts', target: 'es2022', sourcefile: path }).code;
}

function locate(specifier: string, importer: string | undefined): string | undefined {
  const own = /^coldside(?:\/(.+))?$/.exec(specifier);
  if (own) return `${root}src/${own[1] === undefined ? '' : `${own[1]}/`}index.ts`;
  if (!specifier.startsWith('.') || importer === undefined) return undefined;
  const path = resolve(dirname(importer), specifier.replace(/\.js$/, '.ts'));
  return existsSync(path) ? path : undefined;
}

/** What esbuild makes of `code` for a browser, with the parts loaded later in the same text. */
export async function bundleWithEsbuild(code: string, minify = false): Promise<string> {
  const plugin: EsbuildPlugin = {
    name: 'published',
    setup(builder) {
      builder.onResolve({ filter: /^(\.|coldside)/ }, ({ path, importer }) => {
        const found = locate(path, importer);
        return found === undefined ? undefined : { path: found, sideEffects: false };
      });
      builder.onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) => ({ contents: published(path), loader: 'js' }));
    },
  };
  const result = await build({
    stdin: { contents: code, resolveDir: root, sourcefile: entry },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'browser',
    target: 'es2022',
    logLevel: 'silent',
    legalComments: 'none',
    minify,
    external: optional,
    plugins: [plugin],
  });
  return result.outputFiles.map((file) => file.text).join('\n');
}

/** What Rollup makes of `code`, packages of others left out. */
export async function bundleWithRollup(code: string): Promise<string> {
  const plugin: RollupPlugin = {
    name: 'published',
    resolveId(specifier, importer) {
      if (specifier === entry) return entry;
      const found = locate(specifier, importer);
      return found === undefined ? { id: specifier, external: true } : { id: found, moduleSideEffects: false };
    },
    load: (id) => (id === entry ? code : published(id)),
  };
  const bundle = await rollup({ input: entry, plugins: [plugin], onwarn: () => undefined });
  const { output } = await bundle.generate({ format: 'es' });
  return output.map((file) => ('code' in file ? file.code : '')).join('\n');
}

/** Modules of Node that a bundle would load before it runs. */
export function nodeModulesLoadedAtOnce(bundle: string): string[] {
  const named = [...bundle.matchAll(/^\s*(?:import|export)\b[^;'"]*['"]([^'"]+)['"]/gm)].map((match) => match[1]!);
  return named.filter((name) => name.startsWith('node:') || builtinModules.includes(name));
}
