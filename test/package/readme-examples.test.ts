import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from '../../.ci/topics.mjs';
import { runExample } from '../support/examples.js';

const folder = `${root}docs/examples/out/readme`;
const blocks = [...readFileSync(`${root}README.md`, 'utf8').matchAll(/```ts\n([\s\S]*?)```/g)].map(
  (match) => match[1]!,
);

beforeAll(() => void mkdirSync(folder, { recursive: true }));
afterAll(() => rmSync(folder, { recursive: true }));

describe('the examples of README.md', () => {
  it('are three: a calculation, a day of pulls, a worked example', () => expect(blocks).toHaveLength(3));

  it.each(blocks.map((code, i) => ({ number: i + 1, code })))(
    'example $number runs as it stands and prints what it says',
    ({ number, code }) => {
      writeFileSync(`${folder}/example-${number}.ts`, code);
      const { lines, errors, exitCode } = runExample(`out/readme/example-${number}`);
      expect(exitCode, errors).toBe(0);
      const promised = [...code.matchAll(/\/\/=> (.*)$/gm)].map((match) => match[1]!);
      expect(promised.length).toBeGreaterThan(0);
      expect(lines.filter((line) => line !== '')).toEqual(promised);
    },
    60_000,
  );
});
