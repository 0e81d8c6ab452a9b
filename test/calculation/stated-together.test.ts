import { describe, expect, it } from 'vitest';
import { isCorrelation, triangleOf } from '../../src/calculation/linear.js';
import { monteCarlo, statedTogether, uncertainty } from '../../src/calculation/index.js';
import {
  add,
  percent,
  power,
  ratio,
  ratioOf,
  subtract,
  temperature,
  temperatureDifference,
  type Quantity,
} from '../../src/units/index.js';
import { messageOf } from './small-calculations.js';

const stated = (value: number, standard: number) => ({
  value: power(value, 'kW'),
  standardUncertainty: power(standard, 'kW'),
});

describe('what is stated together', () => {
  const { a, b } = statedTogether(
    'two cells',
    { a: stated(100, 3), b: stated(60, 4) },
    { correlations: [['a', 'b', 0.5]], degreesOfFreedom: 20 },
  );

  it('keeps kinds, names and correlation: u² = 9 + 16 ± 12', () => {
    const typed: Quantity<'power'> = a;
    expect([typed.label, b.in('kW')]).toEqual(['a', 60]);
    expect(uncertainty(add(a, b)).standard.in('kW')).toBeCloseTo(Math.sqrt(37), 6);
    expect(uncertainty(subtract(a, b)).standard.in('kW')).toBeCloseTo(Math.sqrt(13), 6);
    expect(uncertainty(subtract(a, b)).degreesOfFreedom).toBeCloseTo(20, 9);
    expect(uncertainty(a).contributions[0]!.group).toBe('two cells');
  });

  it('is drawn jointly, and as Student’s t where the degrees of freedom are few', () => {
    const drawn = monteCarlo(subtract(a, b), { seed: 1, draws: 50_000 });
    expect(drawn.standard.in('kW') / Math.sqrt((13 * 20) / 18)).toBeCloseTo(1, 1);
    expect(drawn.linear.verdict).toBe('good enough');
  });

  it('takes kinds of any sort, and a share of the value', () => {
    const { probe, shaft } = statedTogether(
      'calibration',
      {
        probe: { value: temperature(20, '°C'), standardUncertainty: temperatureDifference(0.2, 'K') },
        shaft: { value: power(200, 'kW'), standardUncertainty: percent(1) },
      },
      { correlations: [] },
    );
    expect(uncertainty(probe).standard.in('K')).toBe(0.2);
    expect(uncertainty(shaft).standard.in('kW')).toBeCloseTo(2, 12);
    expect(uncertainty(shaft).degreesOfFreedom).toBe(Infinity);
    const wrong = temperature(1, 'K');
    expect(() =>
      // @ts-expect-error the uncertainty of a temperature is a difference
      statedTogether('t', { t: { value: temperature(20, '°C'), standardUncertainty: wrong } }, { correlations: [] }),
    ).toThrow(/t\.standardUncertainty must be a temperature difference/);
  });

  it.each<[string, () => unknown, string]>([
    ['no label', () => statedTogether('', { a: stated(1, 1) }, { correlations: [] }), 'label must be a text'],
    ['nothing', () => statedTogether('g', {}, { correlations: [] }), 'values must be at least one value, by name'],
    [
      'no correlations',
      () => statedTogether('g', { a: stated(1, 1), b: stated(1, 1) }, {} as never),
      "correlations must be a list of two names and a coefficient each, got nothing. Write [['a', 'b', coefficient]].",
    ],
    [
      'an unknown name',
      () => statedTogether('g', { a: stated(1, 1), b: stated(1, 1) }, { correlations: [['a', 'c' as never, 0.5]] }),
      'correlations[0] must be two of a, b, got a and c.',
    ],
    [
      'a coefficient above 1',
      () => statedTogether('g', { a: stated(1, 1), b: stated(1, 1) }, { correlations: [['a', 'b', 1.2]] }),
      'correlations[0] must be a coefficient from -1 to 1, got the bare number 1.2.',
    ],
    [
      'coefficients that cannot be together',
      () =>
        statedTogether(
          'g',
          { a: stated(1, 1), b: stated(1, 1), c: stated(1, 1) },
          {
            correlations: [
              ['a', 'b', 0.9],
              ['b', 'c', 0.9],
              ['a', 'c', -0.9],
            ],
          },
        ),
      'got coefficients that contradict one another.',
    ],
    [
      'a computed value',
      () =>
        statedTogether(
          'g',
          { a: { value: ratioOf(power(1, 'kW'), power(2, 'kW')), standardUncertainty: ratio(0.1) } },
          { correlations: [] },
        ),
      'a.value must be a value as it was stated, got a computed one',
    ],
    [
      'degrees of freedom of zero',
      () => statedTogether('g', { a: stated(1, 1) }, { correlations: [], degreesOfFreedom: 0 }),
      'degreesOfFreedom must be a number above zero',
    ],
  ])('refuses %s', (_, run, message) => {
    expect(messageOf(run)).toContain(message);
  });
});

describe('the triangle of a correlation matrix', () => {
  it('is its Cholesky factor', () => {
    expect(
      triangleOf([
        [1, 0.6],
        [0.6, 1],
      ]),
    ).toEqual([[1], [0.6, expect.closeTo(0.8, 15)]]);
  });

  it('leaves out what follows fully from others', () => {
    const full = [
      [1, 1, 0],
      [1, 1, 0],
      [0, 0, 1],
    ];
    expect(triangleOf(full)).toEqual([[1], [1, 0], [0, 0, 1]]);
    expect(isCorrelation(full)).toBe(true);
    expect(
      isCorrelation([
        [1, 1, 0],
        [1, 1, 0.5],
        [0, 0.5, 1],
      ]),
    ).toBe(false);
  });
});
