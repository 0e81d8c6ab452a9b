import { describe, expect, it } from 'vitest';
import { measured, sensor } from '../../src/calculation/index.js';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import { angle, temperature } from '../../src/units/index.js';
import { alternating, dayOf, scattered, type PullShape } from '../support/pulls.js';

const RANGE: CompareOptions = { engineSpeed: [3500, 6000], loggedPower: 'observed' };

function comparing(a: readonly PullShape[], b: readonly PullShape[], more: CompareOptions = {}) {
  const [baseline, candidate] = alternating(a, b);
  const day = dayOf({ stock: baseline, tall: candidate });
  return compare(day.setup('stock'), day.setup('tall'), { ...RANGE, ...more });
}

const pulls = (torque: number, seed: number, spark?: number) =>
  scattered(5, torque, 0.5, seed, spark === undefined ? {} : { spark: () => spark });
const factors = ({ split }: ReturnType<typeof comparing>): string[] => split!.contributions.map(({ factor }) => factor);
const sparkPart = ({ split }: ReturnType<typeof comparing>) =>
  split!.contributions.find(({ factor }) => factor === 'spark timing');

describe('spark in a comparison', () => {
  it('keeps the rest from being called conversion efficiency where it differed, or was not logged', () => {
    const differs = comparing(pulls(240, 1, 18), pulls(246, 2, 21));
    expect(factors(differs).at(-1)).toBe('spark and conversion efficiency');
    expect(differs.split!.notSeparated).toContain(
      'Spark from conversion efficiency: spark was 18.0° with “stock” and 21.0° with “tall”; give bestTorqueSpark from a spark loop at constant speed, or hold spark equal.',
    );
    const unknown = comparing(pulls(240, 1), pulls(246, 2));
    expect(factors(unknown).at(-1)).toBe('spark and conversion efficiency');
    expect(unknown.split!.notSeparated).toContain('Spark from conversion efficiency: log spark advance.');
  });

  it('needs no part where it was equal within the limit, which can be set', () => {
    const equal = comparing(pulls(240, 3, 18), pulls(246, 4, 18.6));
    expect(factors(equal).at(-1)).toBe('conversion efficiency');
    expect(equal.split!.notSeparated.join(' ')).not.toContain('Spark');
    const strict = comparing(pulls(240, 3, 18), pulls(246, 4, 18.6), {
      limits: { sparkBetweenSetUps: angle(0.5, '°') },
    });
    expect(factors(strict).at(-1)).toBe('spark and conversion efficiency');
  });

  // 6 and 3 degrees from best: 1 - 0.00055 x 36 = 0.9802 and 1 - 0.00055 x 9 = 0.99505, so 1.5150 % more torque by spark alone.
  const worth = comparing(pulls(240, 5, 18), pulls(240 * (0.99505 / 0.9802), 6, 21), {
    bestTorqueSpark: angle(24, '°'),
  });

  it('has a part of its own where the spark of best torque is known', () => {
    expect(factors(worth).slice(-2)).toEqual(['spark timing', 'conversion efficiency']);
    const part = worth.split!.contributions.find(({ factor }) => factor === 'spark timing')!;
    expect(part.percent).toBeCloseTo(1.515, 3);
    expect(part.baseline!.kind).toBe('angle');
    expect([part.baseline!, part.candidate!].map((one) => one.si * (180 / Math.PI)).map(Math.round)).toEqual([18, 21]);
    const sum = worth.split!.contributions.reduce((total, one) => total + one.part.value.si, 0);
    expect(sum).toBeCloseTo(worth.overall!.value.si, 6);
  });

  it('carries what a degree costs as an error that both set-ups share', () => {
    // d ln(1 - k d²)/dk = -d²/(1 - k d²): 36/0.9802 less 9/0.99505, times 0.00015/√3.
    const relative = (36 / 0.9802 - 9 / 0.99505) * (0.00015 / Math.sqrt(3));
    const level = (worth.baseline.overall!.si + worth.candidate.overall!.si) / 2;
    const part = sparkPart(worth)!.part;
    expect(part.standardUncertainty.si / level).toBeCloseTo(relative, 5);
    const conversion = worth.split!.contributions.at(-1)!.part;
    expect(conversion.standardUncertainty.si).toBeGreaterThan(part.standardUncertainty.si * 0.99);
  });

  it('carries the error of the spark of best torque, shared where one was given for both', () => {
    const best = measured('spark loop', angle(24, '°'), { standardUncertainty: angle(2, '°') });
    const sides = [pulls(240, 5, 18), pulls(243.6, 6, 21)] as const;
    const uncertain = comparing(...sides, { bestTorqueSpark: best });
    const apart = comparing(...sides, {
      bestTorqueSparkBySetUp: {
        stock: best,
        tall: measured('second loop', angle(24, '°'), { standardUncertainty: angle(2, '°') }),
      },
    });
    const wide = (one: typeof apart): number => sparkPart(one)!.part.standardUncertainty.si;
    expect(wide(uncertain)).toBeGreaterThan(2 * wide(worth));
    // Shared, the slopes of 6 and 3 degrees subtract; apart, they add in squares.
    expect(wide(apart)).toBeGreaterThan(wide(uncertain) * 1.5);
  });

  it('is worth exactly nothing where it was equal', () => {
    const equal = comparing(pulls(240, 7, 19), pulls(246, 8, 19), { bestTorqueSpark: angle(24, '°') });
    const { value, low, high } = sparkPart(equal)!.part;
    expect([value.si, low.si, high.si]).toEqual([0, 0, 0]);
    expect(equal.split!.bySpeed.find(({ factor }) => factor === 'spark timing')!.part.si.every((si) => si === 0)).toBe(
      true,
    );
  });

  it('follows a spark of best torque along the engine speed', () => {
    const rising: CompareOptions['bestTorqueSpark'] = [
      { engineSpeed: 3000, spark: angle(20, '°') },
      { engineSpeed: 6500, spark: angle(27, '°') },
    ];
    const { bySpeed } = comparing(pulls(240, 9, 18), pulls(246, 10, 20), { bestTorqueSpark: rising }).split!;
    const { part } = bySpeed.find(({ factor }) => factor === 'spark timing')!;
    // 3500 rpm: best at 21, 3 and 1 degrees from it; 6000 rpm: best at 26, 8 and 6 degrees.
    const share = (before: number, after: number): number =>
      Math.log((1 - 0.00055 * after ** 2) / (1 - 0.00055 * before ** 2));
    const ratio = part.si[part.length - 1]! / part.si[0]!;
    expect(ratio).toBeGreaterThan((share(8, 6) / share(3, 1)) * (6000 / 3500) * 0.9);
    expect(ratio).toBeLessThan((share(8, 6) / share(3, 1)) * (6000 / 3500) * 1.1);
  });

  it('is not judged beyond 20 degrees from best torque', () => {
    const far = comparing(pulls(240, 11, 2), pulls(246, 12, 8), { bestTorqueSpark: angle(25, '°') });
    expect(factors(far).at(-1)).toBe('spark and conversion efficiency');
    expect(far.split!.notSeparated.join(' ')).toContain('spark lay 23° from bestTorqueSpark, and beyond 20°');
  });

  it('widens its own part, and the rest, by the error of its sensor', () => {
    const wheel = (label: string) => sensor('angle', { label, halfWidth: angle(1, '°') });
    const own = comparing(pulls(240, 5, 18), pulls(243.6, 6, 21), {
      bestTorqueSpark: angle(24, '°'),
      sensorsBySetUp: { stock: { sparkAdvance: wheel('first') }, tall: { sparkAdvance: wheel('second') } },
    });
    expect(sparkPart(own)!.part.standardUncertainty.si).toBeGreaterThan(
      1.5 * sparkPart(worth)!.part.standardUncertainty.si,
    );
  });

  it('stops no comparison, and is said with what it is worth', () => {
    expect(worth.objections).toEqual([]);
    const said = worth.fairness.find(({ what }) => what === 'spark')!;
    expect(said).toMatchObject({
      state: 'differs',
      stops: false,
      baseline: '18.0°',
      candidate: '21.0°',
      allowed: '1.0°',
    });
    expect(worth.rests.join(' ')).toMatch(
      /Spark was not equal: 21\.0° with “tall” against 18\.0° with “stock”; it is worth \+1\.\d kW, between .*takes its gain as spark/,
    );
    const unknown = comparing(pulls(240, 1, 18), pulls(246, 2, 21));
    expect(unknown.rests.join(' ')).toContain('what it is worth cannot be told without bestTorqueSpark');
  });

  it('refuses a spark of best torque that is no angle, not in order, or does not hold the range', () => {
    const refusal = (bestTorqueSpark: unknown) => () =>
      comparing(pulls(240, 1, 18), pulls(246, 2, 21), { bestTorqueSpark } as CompareOptions);
    expect(refusal(24)).toThrow(/bestTorqueSpark must be an angle, or a list of \{ engineSpeed, spark \}/);
    expect(refusal(temperature(24, '°C'))).toThrow(/bestTorqueSpark must be an angle/);
    expect(refusal([])).toThrow(/bestTorqueSpark must be an angle/);
    expect(refusal([{ engineSpeed: 3000, spark: 24 }])).toThrow(/bestTorqueSpark must be an angle/);
    const point = (engineSpeed: number) => ({ engineSpeed, spark: angle(24, '°') });
    expect(refusal([point(6000), point(3000)])).toThrow(/with rising engine speed, got 6000 rpm, 3000 rpm/);
    expect(refusal([point(4000), point(6000)])).toThrow(
      /bestTorqueSpark must be given over the whole range that is compared, 3500 to 6000 rpm, got 4000 to 6000 rpm/,
    );
    expect(() =>
      comparing(pulls(240, 1, 18), pulls(246, 2, 21), { bestTorqueSparkBySetUp: { stock: 24 } } as never),
    ).toThrow(/bestTorqueSparkBySetUp\['stock'\] must be an angle/);
  });
});
