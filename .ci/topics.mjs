// The topic folders of src, in the order data flows through them: what the build, the docs, package.json and the tests share.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Folders of src from the bottom up: each may import only itself and what stands before it. */
export const layers = [
  'statistics',
  'units',
  'calculation',
  'air',
  'psychrometrics',
  'compressor',
  'intercooler',
  'engine',
  'correction',
  'fuel',
  'knock',
  'charge-path',
  'catalogue',
  'sweep',
  'comparison',
  'plot',
  'report',
  'notebook',
  'teaching',
  'bin',
];

/** Folders with an import path of their own inside a topic's: what they load is kept out of the topic. */
const nested = ['units/exact'];

/**
 * The files of src that users import by name, as `{ 'units/exact': 'src/units/exact/index.ts' }`: each topic folder that exists.
 * @returns {Record<string, string>}
 */
export function topics() {
  const found = layers
    .filter((layer) => layer !== 'bin')
    .flatMap((layer) => [layer, ...nested.filter((folder) => folder.startsWith(`${layer}/`))])
    .filter((topic) => existsSync(`${root}src/${topic}/index.ts`));
  return Object.fromEntries(found.map((topic) => [topic, `src/${topic}/index.ts`]));
}

/**
 * Place of a path under src in {@link layers}, or -1.
 * @param {string} path
 */
export function layerOf(path) {
  return layers.indexOf(path.split('/')[0] ?? '');
}

/** Files of src that are commands, by the name a user types. */
export function commands() {
  return existsSync(`${root}src/bin/coldside.ts`) ? { coldside: 'src/bin/coldside.ts' } : {};
}

/** The fields of package.json that follow from the folders of src. */
export function packageFields() {
  const entries = Object.entries({ ...(existsSync(`${root}src/index.ts`) ? { '': 'src/index.ts' } : {}), ...topics() });
  const built = (/** @type {string} */ topic) => `./dist/${topic === '' ? 'index' : `${topic}/index`}`;
  const exported = entries.map(
    ([topic]) =>
      /** @type {const} */ ([
        topic === '' ? '.' : `./${topic}`,
        {
          import: { types: `${built(topic)}.d.ts`, default: `${built(topic)}.js` },
          require: { types: `${built(topic)}.d.cts`, default: `${built(topic)}.cjs` },
        },
      ]),
  );
  const older = Object.keys(topics()).map((topic) => [topic, [`${built(topic)}.d.cts`]]);
  const bin = Object.entries(commands()).map(([name, file]) => [name, file.replace(/^src\/(.*)\.ts$/, 'dist/$1.js')]);
  return {
    ...(existsSync(`${root}src/index.ts`)
      ? { main: './dist/index.cjs', module: './dist/index.js', types: './dist/index.d.cts' }
      : {}),
    exports: { ...Object.fromEntries(exported), './package.json': './package.json' },
    typesVersions: { '*': Object.fromEntries(older) },
    ...(bin.length > 0 ? { bin: Object.fromEntries(bin) } : {}),
  };
}

/** package.json as it stands, and as the folders of src say it should be. */
export function packageManifest() {
  const text = readFileSync(`${root}package.json`, 'utf8');
  /** @type {Record<string, unknown>} */
  const manifest = JSON.parse(text);
  const fields = packageFields();
  const own = Object.entries(manifest).filter(
    ([key]) => !['main', 'module', 'types', 'exports', 'typesVersions', 'bin'].includes(key),
  );
  const scripts = own.findIndex(([key]) => key === 'scripts');
  const wanted = Object.fromEntries([...own.slice(0, scripts), ...Object.entries(fields), ...own.slice(scripts)]);
  return { text, wanted: `${JSON.stringify(wanted, null, 2)}\n` };
}

if (process.argv[1] === fileURLToPath(import.meta.url) && process.argv.includes('--write'))
  writeFileSync(`${root}package.json`, packageManifest().wanted);
