// Packs the package as it would be published and uses the tarball as a stranger would: linted, installed, imported, type-checked.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { commands, root } from './topics.mjs';

/** The compiler inside the TypeScript notebook kernel: declarations must still be readable to it. */
const oldestCompiler = '5.0.4';

const work = mkdtempSync(join(tmpdir(), 'coldside-package-'));
const windows = process.platform === 'win32';

/**
 * @param {string} program
 * @param {string[]} args
 * @param {string} cwd
 */
function run(program, args, cwd = work) {
  return execFileSync(program, args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'], shell: windows });
}

/**
 * @param {string} name
 * @param {() => string | void} check
 */
function step(name, check) {
  try {
    const said = check();
    console.log(`ok    ${name}${said ? `: ${said}` : ''}`);
  } catch (error) {
    const { stdout } = /** @type {{ stdout?: string }} */ (error);
    if (stdout) console.error(stdout);
    console.error(`FAIL  ${name}`);
    throw error;
  }
}

/** @param {string} name */
const tool = (name) => join(root, 'node_modules', '.bin', name);

try {
  run('npm', ['pack', '--ignore-scripts', '--silent', '--pack-destination', work], root);
  const tarball = join(work, readdirSync(work).find((file) => file.endsWith('.tgz')) ?? '');

  step('publint', () => void run(tool('publint'), ['run', tarball, '--strict']));
  step('are the types wrong', () => void run(tool('attw'), [tarball, '--no-emoji', '--format', 'ascii']));

  writeFileSync(join(work, 'package.json'), '{ "name": "stranger", "private": true }');
  const quiet = ['--no-audit', '--no-fund', '--ignore-scripts', '--silent'];
  step('install', () => void run('npm', ['install', ...quiet, tarball, `typescript@${oldestCompiler}`]));

  /** @type {{ name: string, exports: Record<string, unknown> }} */
  const manifest = JSON.parse(readFileSync(join(work, 'node_modules/coldside/package.json'), 'utf8'));
  const subpaths = Object.keys(manifest.exports).filter((key) => key !== './package.json');
  const names = subpaths.map((key) => manifest.name + key.slice(1));
  const listed = JSON.stringify(names);

  writeFileSync(
    join(work, 'modules.mjs'),
    `for (const name of ${listed}) console.log(name, Object.keys(await import(name)).sort().join());`,
  );
  writeFileSync(
    join(work, 'common.cjs'),
    `for (const name of ${listed}) console.log(name, Object.keys(require(name)).sort().join());`,
  );
  const exportsSeenBy = (/** @type {string} */ file) => {
    let text = '';
    step(`every subpath imports, ${file}`, () => {
      text = run(process.execPath, [file]);
      return `${names.length} subpaths`;
    });
    return text;
  };
  const modules = exportsSeenBy('modules.mjs');
  const common = exportsSeenBy('common.cjs');
  step('both copies export the same names, and some', () => {
    if (modules !== common) throw new Error(`Exports differ.\nimport:\n${modules}\nrequire:\n${common}`);
    const empty = modules.split('\n').filter((line) => line.endsWith(' '));
    if (empty.length > 0) throw new Error(`No exports: ${empty.join()}`);
  });

  const uses = names.map(
    (name, index) => `import * as topic${index} from '${name}';\nexport type T${index} = typeof topic${index};\n`,
  );
  for (const extension of ['mts', 'cts']) writeFileSync(join(work, `stranger.${extension}`), uses.join(''));
  writeFileSync(join(work, 'stranger.ts'), uses.join(''));
  const strict = ['--noEmit', '--strict', '--exactOptionalPropertyTypes', '--target', 'es2022', '--lib', 'es2022'];
  /** @type {[string, string[]][]} */
  const resolutions = [
    ['node16', ['stranger.mts', 'stranger.cts', '--module', 'node16', '--moduleResolution', 'node16']],
    ['bundler', ['stranger.ts', '--module', 'esnext', '--moduleResolution', 'bundler']],
    ['node10', ['stranger.ts', '--module', 'commonjs', '--moduleResolution', 'node10']],
  ];
  const compilers = {
    [oldestCompiler]: join(work, 'node_modules/typescript/bin/tsc'),
    current: join(root, 'node_modules/typescript/bin/tsc'),
  };
  for (const [version, compiler] of Object.entries(compilers))
    for (const [name, args] of resolutions)
      step(
        `types resolve, TypeScript ${version}, ${name}`,
        () => void run(process.execPath, [compiler, ...args, ...strict]),
      );

  for (const name of Object.keys(commands()))
    step(`command ${name} --help`, () => void run('npx', ['--no-install', name, '--help']));
} catch (error) {
  console.error(String(error));
  process.exitCode = 1;
} finally {
  rmSync(work, { recursive: true, force: true });
}
