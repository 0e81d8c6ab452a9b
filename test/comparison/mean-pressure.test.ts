import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { meanEffectivePressure, ratio, volume } from '../../src/units/index.js';
import { alternating, dayOf, pullLog, scattered } from '../support/pulls.js';

function comparison(torque: number, options: CompareOptions = {}): Comparison {
  const [a, b] = alternating(scattered(4, torque, 0.5, 1), scattered(4, 1.02 * torque, 0.5, 2));
  const day = dayOf({ 'stock core': a, 'tall core': b });
  return compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6000], ...options });
}

const litres = (value: number): CompareOptions => ({ sweptVolume: volume(value, 'L') });

describe('the mean effective pressure of a pull', () => {
  it('is that of its highest torque: 4 pi T/V of a four-stroke engine', () => {
    const answer = comparison(240, litres(1.8));
    expect(answer.outcome).toBe('better');
    // 240 N·m of 1.8 L: 4 pi 240/1.8e-3 = 16.76 bar, give or take the scatter.
    const [pull] = answer.baseline.pulls;
    expect(pull!.highestMeanEffectivePressure!.in('bar')).toBeCloseTo(16.76, 0);
    expect(
      comparison(240, { ...litres(1.8), strokes: 2 }).baseline.pulls[0]!.highestMeanEffectivePressure!.in('bar'),
    ).toBeCloseTo(8.4, 0);
    expect(comparison(240).baseline.pulls[0]!.highestMeanEffectivePressure).toBeUndefined();
  });

  it('asks before any verdict where no engine reaches it: 1300 N·m of 1.8 L would be 90 bar', () => {
    // Torque in lb·in read as N·m, on both sides alike: no ratio between the sides gives that away.
    const answer = comparison(1300, litres(1.8));
    expect(answer.outcome).toBe('unit suspected');
    expect(answer.headline).toMatch(
      /^Before judging: 4 pulls of “stock core” would have had a mean effective pressure of up to 9\d\.\d bar, and boosted spark-ignition engines stay below 40\.0 bar: is the unit of torque right, was it measured behind gears \(measuredAt, overallRatio\), and the swept volume\?/,
    );
    expect(answer.objections).toHaveLength(2);
    expect(answer.next.join(' ')).toContain('Say the unit of torque');
    expect(comparison(1300).outcome).toBe('better');
  });

  it('is held against a limit that can be set, half of it for a two-stroke engine', () => {
    const strict: CompareOptions = {
      ...litres(1.8),
      limits: { meanEffectivePressure: meanEffectivePressure(15, 'bar') },
    };
    expect(comparison(240, strict).outcome).toBe('unit suspected');
    // 700 N·m of a two-stroke engine of 1.8 L are 24 bar.
    expect(comparison(700, { ...litres(1.8), strokes: 2 }).outcome).toBe('unit suspected');
    expect(comparison(500, { ...litres(1.8), strokes: 2 }).outcome).toBe('better');
  });

  it('is not judged from torque behind gears without their ratio, and that is said', () => {
    const hub: CompareOptions = { ...litres(1.8), measuredAt: 'at the hub' };
    const answer = comparison(1900, hub);
    expect(answer.outcome).toBe('better');
    expect(answer.rests.join(' ')).toContain(
      'Torque was measured at the hub, and without overallRatio the mean effective pressure cannot be told: it was not judged.',
    );
    const told = comparison(1900, { ...hub, overallRatio: ratio(8) });
    expect(told.outcome).toBe('better');
    expect(told.baseline.pulls[0]!.highestMeanEffectivePressure!.in('bar')).toBeCloseTo(
      (4 * Math.PI * 1900) / 8 / 1.8e-3 / 1e5,
      0,
    );
    expect(comparison(1900, { ...hub, overallRatio: ratio(1) }).outcome).toBe('unit suspected');
  });

  it('needs no ratio where power was logged, which gears do not change', () => {
    const files = [0, 1, 2, 3].map((i) => {
      const lines = pullLog({ torque: 240 + i }).split('\n');
      const data = lines.map((line, row) => {
        const cells = line.split(',');
        return cells
          .with(2, row === 0 ? 'Power (kW)' : String((2 * Math.PI * Number(cells[1]) * Number(cells[2])) / 60000))
          .join(',');
      });
      const setup = i < 2 ? 'stock core' : 'tall core';
      return { path: `${setup}/${i}.csv`, setup, data: data.join('\n') };
    });
    const day = readPullsFrom(files);
    const answer = compare(day.setup('stock core'), day.setup('tall core'), {
      engineSpeed: [3500, 6000],
      ...litres(1.8),
      measuredAt: 'at the wheels',
    });
    expect(answer.baseline.pulls[0]!.highestMeanEffectivePressure!.in('bar')).toBeCloseTo(16.76, 1);
    expect(answer.rests.join(' ')).not.toContain('overallRatio');
  });

  it('needs inputs that an engine can have', () => {
    expect(() => comparison(240, { sweptVolume: 1.8 as never })).toThrow(/sweptVolume must be a volume above zero/);
    expect(() => comparison(240, { ...litres(1.8), strokes: 3 as never })).toThrow(/strokes must be 2 or 4/);
    expect(() => comparison(240, { ...litres(1.8), overallRatio: ratio(0) })).toThrow(
      /overallRatio must be a ratio above zero/,
    );
  });
});
