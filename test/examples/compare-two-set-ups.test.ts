import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/comparison/index.js';
import { signed } from '../../src/comparison/words.js';
import { root } from '../../.ci/topics.mjs';
import { demoDay, options } from '../plot/demo.js';

const day = demoDay();
const shared = { ...options, setUps: 3 };
const answers = [
  compare(day.setup('stock core'), day.setup('tall core'), shared),
  compare(day.setup('tall core'), day.setup('tall core + duct'), shared),
  compare(day.setup('stock core'), day.setup('short inlet hose'), shared),
];
const readme = readFileSync(`${root}docs/examples/demo-data/README.md`, 'utf8');

/** Planted: the README of the demo day says how. */
const truth = [3.87, 0.56, 0.01];

describe('the comparisons of npm start', () => {
  it('share the chance of error', () => {
    expect(readFileSync(`${root}docs/examples/compare-two-set-ups.ts`, 'utf8')).toContain('setUps: 3,');
  });

  it('show one resolved gain, one open question, one equivalence and one refused pull', () => {
    expect(answers.map(({ outcome }) => outcome)).toEqual(['better', 'not resolved', 'equivalent']);
    const refused = answers[0]!.candidate.pulls.filter(({ accepted }) => !accepted);
    expect(refused.map(({ name }) => name)).toEqual(['pull 4.csv']);
  });

  it('hold what was planted', () => {
    answers.forEach(({ overall }, i) => {
      expect(overall!.low.si).toBeLessThan(truth[i]! * 1000);
      expect(overall!.high.si).toBeGreaterThan(truth[i]! * 1000);
    });
  });

  it('are what the README of the demo day says', () => {
    for (const { overall } of answers) {
      const [value, low, high] = [overall!.value, overall!.low, overall!.high].map((one) => signed(one));
      expect(readme).toContain(`${low!.replace(' kW', '')} … ${high!}`);
      expect(readme).toContain(value);
    }
  });
});
