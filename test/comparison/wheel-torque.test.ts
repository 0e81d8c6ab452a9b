import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { ratio } from '../../src/units/index.js';
import { pullLog, scattered } from '../support/pulls.js';

/** 1250 N·m against 1280 N·m, as hubs and wheels see them behind gears. */
function comparison(header: string, options: CompareOptions = {}): Comparison {
  const files = ['stock core', 'tall core'].flatMap((setup, i) =>
    scattered(4, 1250 + 30 * i, 2, i + 1).map((shape, n) => ({
      path: `${setup}/pull ${n + 1}.csv`,
      data: pullLog(shape).replace('Torque (N m)', header),
    })),
  );
  const day = readPullsFrom(files);
  return compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6000], ...options });
}

describe('torque at the wheels', () => {
  it('times engine speed is not called power: 1250 N·m at 6000 rpm would be 785 kW', () => {
    const answer = comparison('Wheel torque (N m)');
    expect(answer.outcome).toBe('unit suspected');
    expect(answer.headline).toBe(
      'Before judging: torque at the wheels (“Wheel torque (N m)”) times engine speed is no power, being larger by the overall ratio from the crank to the wheels.',
    );
    expect(answer.next[0]).toMatch(/^Compare by torque, or divide torque in the log by the overall ratio\./);
    expect(comparison('Wheel torque (N m)', { overallRatio: ratio(5) }).outcome).toBe('unit suspected');
  });

  it('is compared by torque, or where the logger has divided by the ratio', () => {
    expect(comparison('Wheel torque (N m)', { compare: 'torque' }).objections).toEqual([]);
    expect(comparison('Wheel torque (N m)', { overallRatio: ratio(1) }).objections).toEqual([]);
  });

  it('is not read out of torque at the crank or the flywheel', () => {
    expect(comparison('Torque (N m)').objections).toEqual([]);
    expect(comparison('Flywheel torque (N m)').objections).toEqual([]);
  });
});
