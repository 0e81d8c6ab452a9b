import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it, vi } from 'vitest';
import { run } from '../../src/bin/program.js';
import { root } from '../../.ci/topics.mjs';

vi.mock('vega', () => {
  throw new Error("Cannot find package 'vega'");
});

const folder = mkdtempSync(join(tmpdir(), 'coldside-'));
afterAll(() => rmSync(folder, { recursive: true }));

it('the command writes the report without pictures where the packages that draw them are not installed', async () => {
  const printed: string[] = [];
  const warned: string[] = [];
  const logs = ['--baseline', 'stock core', '--candidate', 'tall core', '--report', join(folder, 'day.html')];
  const words = [`${root}docs/examples/demo-data`, ...logs];
  const code = await run(words, { print: (text) => printed.push(text), warn: (text) => warned.push(text) });
  expect(code).toBe(0);
  expect(warned.join('\n')).toContain('npm install vega');
  expect(printed.join('\n')).toContain(`Report without pictures: ${join(folder, 'day.md')}`);
  expect(readFileSync(join(folder, 'day.md'), 'utf8')).toMatch(/^# /);
}, 60_000);
