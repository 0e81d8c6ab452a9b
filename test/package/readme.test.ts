import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { root } from '../../.ci/topics.mjs';

const read = (path: string) => readFileSync(`${root}${path}`, 'utf8');

describe('README.md', () => {
  it('gives the two commands that the checks run on a fresh clone', () => {
    const readme = read('README.md');
    expect(readme).toContain('npm ci && npm start');
    expect(readme).toContain('npm ci && npm test');
    expect(read('.ci/run')).toMatch(/^step npm ci\nstep npm test$/m);
    expect(read('.ci/run')).toMatch(/^step npm start$/m);
  });
});
