import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import { dayOf, scattered } from '../support/pulls.js';

const day = dayOf({ 'stock core': scattered(4, 240, 1, 41), 'tall core': scattered(4, 250, 1, 42) });
const of = (options: CompareOptions = {}) =>
  compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6000], ...options });

describe('the area under the curve', () => {
  it('is the trapezoids under the torque curve, nearly, and exactly the mean times the width', () => {
    const answer = of({ compare: 'torque' });
    const { area } = answer;
    const torque = answer.baseline.mean.si;
    const trapezoids = torque.slice(1).reduce((sum, one, i) => sum + 100 * ((one + torque[i]!) / 2), 0);
    expect(area!.baseline / trapezoids).toBeCloseTo(1, 2);
    expect(area!.baseline).toBeCloseTo(answer.baseline.overall!.si * 2500, 6);
    expect(area!.difference).toBeCloseTo(answer.overall!.value.si * 2500, 6);
    expect([area!.low, area!.high].map((end) => end / 2500)).toEqual([
      expect.closeTo(answer.overall!.low.si, 9),
      expect.closeTo(answer.overall!.high.si, 9),
    ]);
    expect(area!.unit).toBe('N·m·rpm');
  });

  it('is told with its interval, rounded to what the interval knows, and that it says what the mean says', () => {
    const line = of({ compare: 'torque' }).findings.find((one) => one.startsWith('Area'))!;
    expect(line.replaceAll('\u00a0', ' ')).toMatch(
      /^Area under the torque curve, which is its mean over the range times the width of 2 500 rpm: 59\d \d00 to 6\d\d \d00 N·m·rpm, \+2\d \d00, between \+2\d \d00 and \+\d\d \d00 N·m·rpm\. It says what the mean says: \+\d\.\d %\.$/,
    );
  });

  it('is in the unit of the answer', () => {
    const { area } = of({ compare: 'torque', units: { torque: 'lb·ft' } });
    expect(area!.unit).toBe('lb·ft·rpm');
    expect(area!.baseline).toBeCloseTo(of({ compare: 'torque' }).area!.baseline / 1.3558179483314004, 4);
  });

  it('is not made of power, nor of air, nor of what is no result', () => {
    expect(of().area).toBeUndefined();
    expect(of({ compare: 'air flow' }).area).toBeUndefined();
    const one = dayOf({ 'stock core': scattered(1, 240, 1, 43), 'tall core': scattered(4, 250, 1, 44) });
    expect(compare(one.setup('stock core'), one.setup('tall core'), { compare: 'torque' }).area).toBeUndefined();
  });
});
