import { describe, expect, it } from 'vitest';
import { compare } from '../../src/comparison/index.js';
import { report } from '../../src/report/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { pullLog, scattered } from '../support/pulls.js';

/** Charge that stays at 35 °C in every pull, under a name that may be the air before the compressor, and 120 °C after the compressor. */
const flat = (name: string, scatter = 0) => {
  const files = [0, 1].flatMap((side) =>
    scattered(4, 240 + 8 * side, 0.5, 11 + side).map((shape, n) => ({
      path: `${side === 0 ? 'stock core' : 'tall core'}/pull ${n + 1}.csv`,
      data: pullLog({ ...shape, charge: 35 + scatter * n })
        .split('\n')
        .map((line, row) => {
          if (row === 0) return `${line.replace('Charge temp', name)},Compressor outlet temp (°C)`;
          const cells = line.split(',');
          cells[4] = String(35 + scatter * n);
          return `${cells.join(',')},120`;
        })
        .join('\n'),
    })),
  );
  const day = readPullsFrom(files);
  return compare(day.setup('stock core'), day.setup('tall core'), {
    engineSpeed: [3500, 6000],
    loggedPower: 'observed',
  });
};
const CAVEAT = 'Open to question: what the logs call charge temperature may be something else, and this is made of it.';

describe('a channel with an open question', () => {
  const answer = flat('IAT');
  const findingOf = (start: string, { findings } = answer) => findings.find((line) => line.startsWith(start))!;

  it('is asked about once for all pulls', () => {
    expect(answer.openQuestions.map(({ role, pulls }) => [role, pulls])).toEqual([['chargeTemperature', 8]]);
    expect(answer.rests.join(' ')).toMatch(
      /Open in 8 pulls: "IAT \(°C\)" was read as charge temperature, but hardly moves/,
    );
  });

  it('carries its caveat to every figure made from it: split, density and effectiveness', () => {
    expect(findingOf('Air-side effectiveness')).toContain(CAVEAT);
    expect(findingOf('Charge density alone')).toContain(CAVEAT);
    expect(String(answer)).toMatch(new RegExp(`Why:\\n( {4}.*\\n)+ {4}${CAVEAT}`));
    const { markdown } = report(answer);
    expect(markdown.split(CAVEAT).length - 1).toBeGreaterThanOrEqual(4);
  });

  it('carries none where its name leaves no doubt', () => {
    const sure = flat('Charge temp');
    expect(sure.openQuestions).toEqual([]);
    expect(report(sure).markdown).not.toContain('Open to question');
  });
});

describe('the effectiveness of a core', () => {
  const line = (scatter: number) => flat('Charge temp', scatter).findings.find((one) => one.startsWith('Air-side'))!;

  it('has no scatter from pulls that are alike to the printed digit: (120 − 35) / (120 − 18)', () => {
    expect(((120 - 35) / (120 - 18)) * 100).toBeCloseTo(83.3, 1);
    expect(line(0)).toContain(': 83.3 % with stock core, 83.3 % with tall core (mean of the pulls;');
    expect(line(0)).not.toContain('±');
  });

  it('has one where the pulls differ', () => {
    // 35 to 38 °C: a standard deviation of 1.291 K over 102 K.
    expect(line(1)).toContain('81.9 % ± 1.3 % with stock core');
  });
});
