import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { additiveSplit, driftDifference } from '../../src/statistics/index.js';
import { workedFactors as factors, workedSensors as sensors } from './example-split.js';
import { codeOf, expectPrinted } from './printed.js';

describe('additive split', () => {
  const split = additiveSplit(factors, sensors);

  it('agrees with the worked totals (figures by a separate program)', () => {
    expectPrinted(split.baseline, '228731.7566');
    expectPrinted(split.candidate, '238498.1439');
    expectPrinted(split.logarithmicMean, '233580.9223');
  });

  it.each([
    [
      'charge pressure',
      '-0.001508306708',
      '-352.3116719',
      '693.2817586',
      '3.935263977',
      '1.933507532',
      '-2289.718166',
      '1585.094823',
    ],
    [
      'charge temperature',
      '0.0415336806',
      '9701.47542',
      '328.239449',
      '3.960073472',
      '56.95686371',
      '8793.80423',
      '10609.14661',
    ],
    [
      'dry fraction',
      '-0.00030373083',
      '-70.94572739',
      '11.1467705',
      '3.998927435',
      '0.354728637',
      '-101.8883748',
      '-40.00307994',
    ],
    [
      'volumetric efficiency',
      '0.001878183579',
      '438.7078525',
      '291.004732',
      '3.74013654',
      '29.94270643',
      '-388.8578938',
      '1266.273599',
    ],
    [
      'fuel/air',
      '-0.002408768572',
      '-562.6423846',
      '295.1319861',
      '3.255625284',
      '1321.336227',
      '-3218.457743',
      '2093.172973',
    ],
    [
      'conversion',
      '0.002620521185',
      '612.1037552',
      '148.1056',
      '3.485288775',
      '1321.336777',
      '-1994.025796',
      '3218.233306',
    ],
    ['total', '0.04181157926', '9766.387244', '895.9667332', '3.958744195', '48.83193622', '7270.71926', '12262.05523'],
  ] as const)('agrees with the worked row of %s', (name, delta, watts, pulls, nu, type, low, high) => {
    // prettier-ignore
    const row = [...split.contributions, split.total].find((one) => one.name === name)!;
    expectPrinted(row.logChange, delta);
    expectPrinted(row.contribution, watts);
    expectPrinted(row.pulls.standardUncertainty, pulls);
    expectPrinted(row.pulls.degreesOfFreedom, nu);
    expectPrinted(row.sensors.standardUncertainty, type);
    // The worked intervals are without the floor, which binds where the sensors are small.
    expectPrinted(row.contribution - row.combined.plainHalfWidth, low);
    expectPrinted(row.contribution + row.combined.plainHalfWidth, high);
  });

  it('never shows an interval narrower than the pulls give', () => {
    for (const row of [...split.contributions, split.total]) {
      expect(row.upper - row.contribution).toBeCloseTo(Math.max(row.combined.plainHalfWidth, row.combined.floor), 9);
    }
  });

  const logs = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 });
  const anyFactors = fc.array(fc.record({ baseline: logs, candidate: logs }), { minLength: 1, maxLength: 6 });

  it('adds up exactly, and the other way round with the signs changed (Wood and Lenzen 2006)', () => {
    fc.assert(
      fc.property(anyFactors, (sides) => {
        const named = sides.map((side, i) => ({ name: `factor ${i}`, ...side }));
        const there = additiveSplit(named);
        const sum = there.contributions.reduce((total, one) => total + one.contribution, 0);
        const change = there.candidate - there.baseline;
        const scale = there.candidate + there.baseline;
        expect(Math.abs(sum - change) / scale).toBeLessThan(1e-14);
        expect(Math.abs(there.total.contribution - change) / scale).toBeLessThan(1e-14);
        const back = additiveSplit(named.map((f) => ({ name: f.name, baseline: f.candidate, candidate: f.baseline })));
        back.contributions.forEach((one, k) => {
          expect(Math.abs(one.contribution + there.contributions[k]!.contribution) / scale).toBeLessThan(1e-14);
        });
      }),
    );
  });

  it('stays exact as the change of the whole goes to nothing', () => {
    for (const step of [0, 1e-300, 1e-12, 1e-7, 1e-5, 1e-3]) {
      const opposed = [
        { name: 'up', baseline: [0.1, 0.12, 0.09], candidate: [0.3, 0.33, 0.28] },
        { name: 'down', baseline: [0.3, 0.32, 0.29], candidate: [0.1 + step, 0.13 + step, 0.08 + step] },
      ];
      const got = additiveSplit(opposed);
      expect(got.total.contribution).toBeCloseTo(got.candidate - got.baseline, 12);
      expect(got.contributions[0]!.contribution / got.logarithmicMean).toBeCloseTo(0.2, 12);
    }
  });

  it('has scores that match moving one pull a little', () => {
    const moved = (by: number): number => {
      const shifted = factors.map((factor, k) => ({
        ...factor,
        candidate: [factor.candidate[0]! + (k === 5 ? by : 0), ...Array.from(factor.candidate).slice(1)],
      }));
      return additiveSplit(shifted).contributions[1]!.contribution;
    };
    const slope = (moved(1e-4) - moved(-1e-4)) / 2e-4;
    // Only the logarithmic mean moves this factor: its part is the log change times the slope of that mean.
    const { logarithmicMean, candidate: after, baseline: before } = split;
    const change = Math.log(after / before);
    expect(slope).toBeCloseTo((split.contributions[1]!.logChange * ((after - logarithmicMean) / change)) / 3, 3);
  });

  it('lets a shared gain cancel in every factor but the one that scales the whole', () => {
    const gain = sensors.find((one) => one.name === 'air gain')!;
    const only = additiveSplit(factors, [gain]);
    for (const row of only.contributions) expect(row.sensors.standardUncertainty).toBeLessThan(1e-9);
    const apart = additiveSplit(factors, [{ ...gain, shared: false }]);
    expect(apart.contributions[3]!.sensors.standardUncertainty).toBeGreaterThan(1000);
    expect(apart.total.sensors.standardUncertainty).toBeLessThan(1e-9);
  });

  it('takes a steady drift out of every factor, so that they add up to the difference without it', () => {
    const order = { letters: 'ABBAAB', pulls: [0, 3, 4, 1, 2, 5] };
    const drifting = (by: readonly number[]) =>
      factors.map((factor, k) => {
        const at = (side: Iterable<number>, first: number): number[] =>
          Array.from(side, (value, i) => value + by[k]! * order.pulls.indexOf(first + i));
        return { ...factor, baseline: at(factor.baseline, 0), candidate: at(factor.candidate, 3) };
      });
    const still = additiveSplit(drifting([0, 0, 0, 0, 0, 0]), [], { order });
    const moving = additiveSplit(drifting([0.01, -0.002, 0, 0.004, 0, -0.03]), [], { order });
    moving.contributions.forEach((one, k) => {
      expect(one.logChange).toBeCloseTo(still.contributions[k]!.logChange, 12);
    });
    const whole = driftDifference(
      'ABBAAB',
      order.pulls.map((i) => factors.reduce((sum, f) => sum + [...f.baseline, ...f.candidate][i]!, 0)),
    );
    expect(still.total.logChange).toBeCloseTo(whole.difference, 12);
    const sum = moving.contributions.reduce((total, one) => total + one.contribution, 0);
    expect(sum).toBeCloseTo(moving.candidate - moving.baseline, 6);
    // Nearly the standard error of the drift model on the logarithms, times the logarithmic mean.
    expect(still.total.pulls.standardUncertainty / still.logarithmicMean / whole.interval!.standardError).toBeCloseTo(
      1,
      1,
    );
    expect(still.total.pulls.degreesOfFreedom).toBe(3);
  });

  it('accepts a factor that was the same in every pull', () => {
    const still = { name: 'still', baseline: [1, 1, 1], candidate: [1, 1, 1] };
    const row = additiveSplit([factors[0]!, still]).contributions[1]!;
    expect(row.contribution).toBe(0);
    expect(row.lower).toBeCloseTo(0, 12);
  });

  it('refuses one pull, factors of unequal length, gaps and sensors that do not know every factor', () => {
    const one = { name: 'p', baseline: [1], candidate: [1, 2] };
    expect(codeOf(() => additiveSplit([]))).toBe('too-few-points');
    expect(codeOf(() => additiveSplit([one]))).toBe('too-few-pulls');
    expect(codeOf(() => additiveSplit([factors[0]!, { ...factors[1]!, baseline: [1, 2] }]))).toBe('unequal-lengths');
    expect(codeOf(() => additiveSplit([{ ...factors[0]!, baseline: [1, NaN, 2] }]))).toBe('not-finite');
    expect(() => additiveSplit(factors, [{ ...sensors[0]!, baseline: [1] }])).toThrow(
      'pressure offset.baseline must hold 6 values',
    );
  });
});
