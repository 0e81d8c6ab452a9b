import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** What an example in docs/examples did when it was run as a reader runs it. */
export interface ExampleRun {
  readonly lines: readonly string[];
  readonly errors: string;
  readonly exitCode: number | null;
}

/** Runs docs/examples/<name>.ts in a process of its own. */
export function runExample(name: string, ...args: readonly string[]): ExampleRun {
  const run = spawnSync(process.execPath, ['--import', 'tsx', `docs/examples/${name}.ts`, ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  return { lines: run.stdout.split('\n'), errors: run.stderr, exitCode: run.status };
}

/** The lines that the `//=>` comments of an example say it prints, in their order. */
export function promisedLines(name: string): string[] {
  const text = readFileSync(`${root}docs/examples/${name}.ts`, 'utf8');
  return [...text.matchAll(/^\s*\/\/=> (.*)$/gm)].map((match) => match[1]!);
}

/** Promises that a run did not keep: lines that are not among those printed, or come in another order. */
export function brokenPromises(promised: readonly string[], printed: readonly string[]): string[] {
  let from = 0;
  return promised.filter((line) => {
    const at = printed.indexOf(line, from);
    if (at >= 0) from = at + 1;
    return at < 0;
  });
}
