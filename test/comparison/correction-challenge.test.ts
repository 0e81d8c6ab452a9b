import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { pullLog, scattered } from '../support/pulls.js';

/** STD over SAE by their reference states, 29.92 inHg dry at 60 °F and 99 kPa dry at 25 °C, worked by hand. */
const STD_OVER_SAE = (101.325 / 99) * Math.sqrt(298.15 / 288.7056);

const compared = (heads: readonly [string, string], options: CompareOptions = {}, gain = 1) => {
  const files = heads.flatMap((head, i) =>
    scattered(4, i === 0 ? 240 : 240 * gain, 0.5, 7 + i).map((shape, n) => ({
      path: `${i === 0 ? 'stock core' : 'tall core'}/pull ${n + 1}.csv`,
      data: pullLog(shape).replace('Torque (N m)', head),
    })),
  );
  const day = readPullsFrom(files);
  return compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6000], ...options });
};

describe('a correction to a standard atmosphere', () => {
  it('is asked about before any verdict where one side is said to be corrected and the other is not', () => {
    const answer = compared(['Torque (N m)', 'Corrected torque (N m)'], {}, 1.04);
    expect(answer.outcome).toBe('reading suspected');
    expect(answer.headline).toBe(
      'Before judging: by the headers of the logs power of the pulls of “tall core” is corrected, not said to what, and of the pulls of “stock core” not said to be corrected. A correction alone changes the numbers by as much as a core does.',
    );
  });

  it('is asked about where SAE is held against STD, which differ by 4 % and make a gain of their own', () => {
    expect(STD_OVER_SAE).toBeCloseTo(1.0401, 4);
    const answer = compared(['SAE torque (N m)', 'Torque STD (N m)'], {}, STD_OVER_SAE);
    expect(answer.outcome).toBe('reading suspected');
    expect(answer.headline).toContain('STD reads 4.0 % above SAE');
    expect(compared(['SAE torque (N m)', 'Torque STD (N m)'], { loggedPower: 'corrected' }).outcome).toBe(
      'reading suspected',
    );
  });

  it('is not called unknown where the headers tell it and differ', () => {
    const words = 'what the headers of the logs say of a correction is not the same in all pulls';
    for (const heads of [
      ['SAE torque (N m)', 'Torque STD (N m)'],
      ['Torque (N m)', 'Corrected torque (N m)'],
    ] as const) {
      const answer = compared(heads);
      expect(answer.basis).toBe(`power, as logged; ${words}`);
      expect(answer.rests.join(' ')).toContain(`${words}.`);
    }
    expect(compared(['Torque (N m)', 'Torque (N m)']).basis).toContain('whether the logger corrected it is not known');
    expect(compared(['Torque (N m)', 'SAE torque (N m)'], { loggedPower: 'corrected' }).basis).toBe(
      'power, as logged, already corrected to a standard atmosphere by the logger',
    );
  });

  it('is no question where both sides are said to be corrected to one standard', () => {
    const answer = compared(['Torque SAE J1349 (N m)', 'SAE torque (N m)']);
    expect(answer.objections).toEqual([]);
    expect(answer.basis).toBe('power, as logged, by the headers of the logs corrected to SAE');
  });

  it('is asked about where the option contradicts the header', () => {
    const answer = compared(['SAE torque (N m)', 'SAE torque (N m)'], { loggedPower: 'observed' });
    expect(answer.outcome).toBe('reading suspected');
    expect(answer.headline).toContain('say that power is corrected to SAE, and loggedPower says observed');
    expect(compared(['Uncorrected torque (N m)', 'Torque (N m)'], { loggedPower: 'corrected' }).headline).toContain(
      '“stock core” say that power is as observed, and loggedPower says corrected',
    );
  });

  it('is settled by the option where a header is silent', () => {
    expect(compared(['Torque (N m)', 'Corrected torque (N m)'], { loggedPower: 'corrected' }).objections).toEqual([]);
    expect(compared(['Torque (N m)', 'Observed torque (N m)'], { loggedPower: 'observed' }).objections).toEqual([]);
    expect(compared(['Torque (N m)', 'Torque (N m)']).objections).toEqual([]);
  });

  it('does not matter where air is compared', () => {
    const heads = ['SAE torque (N m)', 'STD torque (N m)'] as const;
    expect(compared(heads, { compare: 'air per cycle' }).objections).toEqual([]);
  });
});
