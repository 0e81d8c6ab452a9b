import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { additiveSplit, type LogFactor, type SplitSensor } from '../../src/statistics/index.js';
import { codeOf, expectPrinted } from './printed.js';

interface Pull {
  readonly power: number;
  readonly pressure: number;
  readonly temperature: number;
  readonly vapour: number;
  readonly air: number;
  readonly fuel: number;
}

const pull = (row: readonly [number, number, number, number, number, number]): Pull => {
  const [power, pressure, temperature, vapour, air, fuel] = row;
  return { power, pressure, temperature, vapour, air, fuel };
};
const baseline = (
  [
    [228400, 221300, 331.2, 0.0121, 0.2402, 0.02041],
    [229900, 222100, 331.9, 0.0121, 0.2411, 0.02052],
    [227900, 220600, 332.4, 0.0122, 0.2391, 0.02036],
  ] as const
).map(pull);
const candidate = (
  [
    [238100, 220900, 318.3, 0.0124, 0.2501, 0.02119],
    [239800, 221900, 318.9, 0.0124, 0.2514, 0.02138],
    [237600, 220200, 317.8, 0.0125, 0.2495, 0.02117],
  ] as const
).map(pull);

const parts: readonly [string, (p: Pull) => number][] = [
  ['charge pressure', (p) => Math.log(p.pressure)],
  ['charge temperature', (p) => -Math.log(p.temperature)],
  ['dry fraction', (p) => Math.log1p(-p.vapour)],
  ['volumetric efficiency', (p) => Math.log((p.air * p.temperature) / (p.pressure * (1 - p.vapour)))],
  ['fuel/air', (p) => Math.log(p.fuel / p.air)],
  ['conversion', (p) => Math.log(p.power / p.fuel)],
];
const factors: LogFactor[] = parts.map(([name, log]) => ({
  name,
  baseline: baseline.map(log),
  candidate: candidate.map(log),
}));

const meanInverse = (pulls: readonly Pull[], of: (p: Pull) => number): number =>
  pulls.reduce((sum, p) => sum + 1 / of(p), 0) / pulls.length;
function sensor(
  name: string,
  standardUncertainty: number,
  shared: boolean,
  moves: (pulls: readonly Pull[]) => readonly number[],
): SplitSensor {
  return { name, standardUncertainty, shared, baseline: moves(baseline), candidate: moves(candidate) };
}
const sensors: SplitSensor[] = [
  sensor('pressure offset', 500, true, (pulls) => {
    const each = meanInverse(pulls, (p) => p.pressure);
    return [each, 0, 0, -each, 0, 0];
  }),
  sensor('temperature offset', 1, true, (pulls) => {
    const each = meanInverse(pulls, (p) => p.temperature);
    return [0, -each, 0, each, 0, 0];
  }),
  sensor('air gain', 0.01, true, () => [0, 0, 0, 1, -1, 0]),
  sensor('power gain', 0.005, true, () => [0, 0, 0, 0, 0, 1]),
  sensor('fuel gain', 0.004, false, () => [0, 0, 0, 0, 1, -1]),
];

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
