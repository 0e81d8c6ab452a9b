// The worked examples of JCGM 101:2008 and JCGM 100:2008. What the documents print is from memory of them; every figure was also computed
// outside, from closed forms (Irwin-Hall, noncentral chi-squared) or from ten million draws of another generator.
import { describe, expect, it } from 'vitest';
import {
  calculation,
  derived,
  input,
  measured,
  measuredTogether,
  monteCarlo,
  output,
  statedTogether,
  uncertainty,
  type MonteCarloUncertainty,
} from '../../src/calculation/index.js';
import { linearModel } from '../../src/statistics/index.js';
import { add, column, ratio, subtract, type Quantity } from '../../src/units/index.js';

type Ratio = Quantity<'ratio'>;

const sources = [derived('made for tests')];
const task = 'describe the air' as const;
const open = { min: -1e12, max: 1e12 };

const normal = (label: string, value: number, standard: number, degreesOfFreedom = Infinity): Ratio =>
  measured(label, ratio(value), { standardUncertainty: ratio(standard), degreesOfFreedom });
const even = (label: string, value: number, halfWidth: number, degreesOfFreedom = Infinity): Ratio =>
  measured(label, ratio(value), { halfWidth: ratio(halfWidth), degreesOfFreedom });
const sumOf = (parts: readonly Ratio[]): Ratio => parts.reduce((sum, part) => add(sum, part));
const si = (ends: readonly Quantity[]): number[] => ends.map((end) => end.si);

/** Both ends within what the draws settle, three times over. */
function expectEnds(
  drawn: MonteCarloUncertainty,
  ends: readonly Quantity[],
  expected: readonly [number, number],
): void {
  const within = 3 * drawn.settledTo.si;
  ends.forEach((end, i) => expect(Math.abs(end.si - expected[i]!)).toBeLessThan(within));
}

describe('JCGM 101, 9.2: four quantities added', () => {
  const four = (make: (label: string, i: number) => Ratio): Ratio =>
    sumOf([0, 1, 2, 3].map((i) => make(`X${i + 1}`, i)));

  it('normal ones: u = 2.0 and ±3.92, which the linear budget has too (9.2.2)', () => {
    const drawn = monteCarlo(
      four((label) => normal(label, 0, 1)),
      { seed: 1, figures: 2, draws: 200_000 },
    );
    expect(drawn.standard.si).toBeCloseTo(2, 1);
    expectEnds(drawn, drawn.interval(), [-3.9199, 3.9199]);
    expect(drawn.linear.verdict).toBe('good enough');
  });

  it('rectangular ones: ±3.88, exactly 3.8794; the budget says 3.92, good enough to two figures (9.2.3)', () => {
    const sum = four((label) => even(label, 0, Math.sqrt(3)));
    const drawn = monteCarlo(sum, { seed: 1, figures: 2, draws: 1_000_000 });
    expect(drawn.standard.si).toBeCloseTo(2, 2);
    expectEnds(drawn, drawn.interval(), [-3.8794067, 3.8794067]);
    expect(si(drawn.linear.budget!.interval())).toEqual(
      [-3.919927969, 3.919927969].map((end) => expect.closeTo(end, 8)),
    );
    expect(drawn.linear.tolerance.si).toBeCloseTo(0.05, 12);
    for (const { si: off } of drawn.linear.off!) expect(Math.abs(off - 0.0405)).toBeLessThan(0.0095);
    expect(drawn.linear.verdict).toBe('good enough');
  });

  it('rectangular ones, one of them ten times as wide: ±17.0 where the budget says ±19.9, not good enough (9.2.4)', () => {
    const drawn = monteCarlo(
      four((label, i) => even(label, 0, (i === 3 ? 10 : 1) * Math.sqrt(3))),
      { seed: 1, figures: 2, draws: 200_000 },
    );
    expect(drawn.standard.si).toBeCloseTo(10.15, 1);
    expectEnds(drawn, drawn.interval(), [-17.02, 17.02]);
    expect(drawn.linear.budget!.interval()[1].si).toBeCloseTo(19.89, 2);
    expect(drawn.linear.tolerance.si).toBeCloseTo(0.5, 12);
    expect(drawn.linear.verdict).toBe('not good enough');
    expect(drawn.linear.statement).toContain('Use the intervals of the draws.');
  });
});

describe('JCGM 101, 9.3: calibration of a mass (in milligrams; the budget misses a term of second order)', () => {
  const deviation = calculation({
    name: 'deviation of a mass from its nominal value',
    task,
    inputs: {
      reference: input('mR', 'ratio', open),
      added: input('dm', 'ratio', open),
      air: input('a', 'ratio', open),
      weight: input('rW', 'ratio', { min: 1, max: 1e5 }),
      standard: input('rR', 'ratio', { min: 1, max: 1e5 }),
    },
    output: output('d', 'ratio', '1'),
    formula: '(mR + dm) * (1 + (a - 1.2) * (1 / rW - 1 / rR)) - 100000',
    si: (mR, dm, a, rW, rR) => (mR + dm) * (1 + (a - 1.2) * (1 / rW - 1 / rR)) - 100000,
    sources,
  });
  const drawn = monteCarlo(
    deviation({
      reference: normal('reference mass', 100000, 0.05),
      added: normal('added masses', 1.234, 0.02),
      air: even('air density', 1.2, 0.1),
      weight: even('density of the weight', 8000, 1000),
      standard: even('density of the reference', 8000, 50),
    }),
    { seed: 1 },
  );

  it('gives 1.234 mg, u = 0.075 mg, [1.083, 1.383] mg', () => {
    expect(drawn.settled).toBe(true);
    expect(drawn.mean.si).toBeCloseTo(1.234, 3);
    expect(drawn.standard.si).toBeCloseTo(0.0755, 3);
    expectEnds(drawn, drawn.interval(), [1.0844, 1.3835]);
    expect(si(drawn.shortestInterval())).toEqual([1.0834, 1.3825].map((end) => expect.closeTo(end, 2)));
  });

  it('finds the linear budget, 0.0539 mg and [1.1285, 1.3395] mg, not good enough to 0.005 mg', () => {
    const { budget, tolerance, verdict } = drawn.linear;
    expect(budget!.standard.si).toBeCloseTo(0.0539, 4);
    expect(si(budget!.interval())).toEqual([1.1285, 1.3395].map((end) => expect.closeTo(end, 3)));
    expect(tolerance.si).toBeCloseTo(0.005, 12);
    expect(verdict).toBe('not good enough');
  });
});

describe('JCGM 101, 9.4: comparison loss in microwave power, x1² + x2² with u = 0.005 each', () => {
  const loss = calculation({
    name: 'comparison loss',
    task,
    inputs: { real: input('x1', 'ratio', open), imaginary: input('x2', 'ratio', open) },
    output: output('y', 'ratio', '1'),
    formula: 'x1^2 + x2^2',
    si: (x1, x2) => x1 ** 2 + x2 ** 2,
    sources,
  });
  const stated = (value: number): { value: Ratio; standardUncertainty: Ratio } => ({
    value: ratio(value),
    standardUncertainty: ratio(0.005),
  });

  it.each([
    [0, 0, 50, 50, [0, 149.8], [1.27, 184.4]],
    [0.01, 0, 150, 111.8, [0, 366.0], [8.55, 427.1]],
    [0.05, 0, 2550, 502.5, [1593.6, 3548.6], [1638.5, 3603.4]],
    [0, 0.9, 50, 67.2, [0, 185.1], [0.56, 241.4]],
    [0.01, 0.9, 150, 120.4, [13.05, 397.6], [29.06, 477.9]],
    [0.05, 0.9, 2550, 504.5, [1627, 3556.8], [1696.4, 3659.8]],
  ] as const)(
    'for x1 = %d and correlation %d gives %d and u = %d, in millionths',
    (x1, r, mean, u, shortest, symmetric) => {
      const { real, imaginary } = statedTogether(
        'reflection',
        { real: stated(x1), imaginary: stated(0) },
        { correlations: [['real', 'imaginary', r]] },
      );
      const drawn = monteCarlo(loss({ real, imaginary }), { seed: 2, draws: 200_000 });
      const [low, high] = drawn.shortestInterval();
      // Where the top of a distribution is flat the place of the shortest interval settles slowly; its width does at once.
      expect(Math.abs(low.si * 1e6 - shortest[0])).toBeLessThan(0.06 * u);
      expect(Math.abs((high.si - low.si) * 1e6 - (shortest[1] - shortest[0]))).toBeLessThan(0.02 * u);
      expectEnds(drawn, drawn.interval(), [symmetric[0] * 1e-6, symmetric[1] * 1e-6]);
      expect(Math.abs(drawn.mean.si * 1e6 - mean)).toBeLessThan(0.01 * u);
      expect(Math.abs(drawn.standard.si * 1e6 - u)).toBeLessThan(0.01 * u);
      expect(drawn.linear.verdict).toBe('not good enough');
      expect(drawn.linear.budget!.standard.si).toBeCloseTo(2 * x1 * 0.005, 9);
    },
  );
});

describe('JCGM 101, 9.5: calibration of a gauge block (the example of JCGM 100, H.1), in nanometres', () => {
  const lengthDeviation = calculation({
    name: 'deviation of a gauge block from its nominal length',
    task,
    inputs: {
      standard: input('ls', 'ratio', open),
      difference: input('d', 'ratio', open),
      expansion: input('as', 'ratio', open),
      expansionDifference: input('da', 'ratio', open),
      meanDeviation: input('t0', 'ratio', open),
      phase: input('ph', 'ratio', { min: 0, max: 1 }),
      temperatureDifference: input('dt', 'ratio', open),
    },
    output: output('dl', 'ratio', '1'),
    formula:
      '(ls * (1 + as * (t0 + 0.5 * cos(pi * ph) - dt)) + d) / (1 + (as + da) * (t0 + 0.5 * cos(pi * ph))) - 50000000',
    si: (ls, d, as, da, t0, ph, dt) => {
      // The cyclic temperature has an arcsine distribution, which is a cosine of an even phase.
      const t = t0 + 0.5 * Math.cos(Math.PI * ph);
      return (ls * (1 + as * (t - dt)) + d) / (1 + (as + da) * t) - 50000000;
    },
    sources,
  });
  const block = lengthDeviation({
    standard: normal('standard', 50_000_623, 25, 18),
    difference: sumOf([normal('comparison', 215, 6, 24), normal('random', 0, 4, 5), normal('systematic', 0, 7, 8)]),
    expansion: even('expansion', 11.5e-6, 2e-6),
    expansionDifference: even('expansion difference', 0, 1e-6, 50),
    meanDeviation: normal('mean bed temperature', -0.1, 0.2),
    phase: even('phase of the cycle', 0.5, 0.5),
    temperatureDifference: even('difference of temperature', 0, 0.05, 2),
  });

  it('gives 838 nm, u = 36 nm and [745, 932] nm at 99 %', () => {
    const drawn = monteCarlo(block, { seed: 1, level: 0.99, draws: 300_000 });
    expect(drawn.mean.si).toBeCloseTo(838, 0);
    expect(drawn.standard.si).toBeCloseTo(35.8, 0);
    expectEnds(drawn, drawn.interval(), [744.34, 931.66]);
    expectEnds(drawn, drawn.shortestInterval(), [744.5, 931.8]);
  });
});

describe('JCGM 100, H.2: resistance and reactance measured together, drawn as a multivariate t with 4 degrees of freedom', () => {
  const readings = measuredTogether('five readings', {
    V: [5.007, 4.994, 5.005, 4.99, 4.999].map((value) => ratio(value)),
    I: column('ratio', [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3], '1'),
    phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433].map((value) => ratio(value)),
  });
  const reactance = calculation({
    name: 'reactance',
    task,
    inputs: {
      V: input('V', 'ratio', open),
      I: input('I', 'ratio', { min: 1e-6, max: 1 }),
      phi: input('phi', 'ratio', { min: -2, max: 2 }),
    },
    output: output('X', 'ratio', '1'),
    formula: 'V / I * sin(phi)',
    si: (V, I, phi) => (V / I) * Math.sin(phi),
    sources,
  });

  it('agrees with the budget, 219.847 and u = 0.29558 with 4 degrees of freedom, on the interval', () => {
    const X = reactance(readings);
    const drawn = monteCarlo(X, { seed: 1, draws: 200_000 });
    expectEnds(drawn, drawn.interval(), [219.0252, 220.6676]);
    expect(drawn.linear.verdict).toBe('good enough');
    // Student's t with 4 degrees of freedom is √2 times as wide as its scale.
    expect(drawn.standard.si / uncertainty(X).standard.si).toBeCloseTo(Math.SQRT2, 1);
  });
});

describe('JCGM 100, H.3: calibration line of a thermometer', () => {
  const indicated = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const corrections = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const from20 = indicated.map((t) => t - 20);
  const line = linearModel('line', [indicated.map(() => 1), from20], ['intercept', 'slope']);
  const { coefficients, residualSumOfSquares } = line.fit(corrections);
  const [y1, y2] = coefficients as [number, number];
  const scatter = Math.sqrt(residualSumOfSquares / line.degreesOfFreedom);
  const [u1, u2] = line.varianceFactors.map((factor) => scatter * Math.sqrt(factor)) as [number, number];
  const sumOfSquares = from20.reduce((sum, t) => sum + t * t, 0);
  const r = -from20.reduce((sum, t) => sum + t, 0) / Math.sqrt(from20.length * sumOfSquares);
  const { intercept, slope } = statedTogether(
    'calibration line',
    {
      intercept: { value: ratio(y1), standardUncertainty: ratio(u1) },
      slope: { value: ratio(y2), standardUncertainty: ratio(u2) },
    },
    { correlations: [['intercept', 'slope', r]], degreesOfFreedom: line.degreesOfFreedom },
  );
  const correction = calculation({
    name: 'correction of a thermometer',
    task,
    inputs: { intercept: input('y1', 'ratio', open), slope: input('y2', 'ratio', open), at: input('t', 'ratio', open) },
    output: output('b', 'ratio', '1'),
    formula: 'y1 + y2 * (t - 20)',
    si: (a, b, t) => a + b * (t - 20),
    sources,
  });
  const at30 = correction({ intercept, slope, at: ratio(30) });

  it('has y1 = -0.1712(29), y2 = 0.00218(67), r = -0.930, s = 0.0035 with 9 degrees of freedom', () => {
    expect([y1, u1, y2, u2, r, scatter].map((value) => Number(value.toPrecision(3)))).toEqual([
      -0.171, 0.00288, 0.00218, 0.000668, -0.93, 0.0035,
    ]);
    expect(line.degreesOfFreedom).toBe(9);
  });

  it('corrects 30 °C by -0.1494(41), the correlation included, with 9 degrees of freedom', () => {
    const budget = uncertainty(at30);
    expect(budget.value.si).toBeCloseTo(-0.14937681, 8);
    expect(budget.standard.si).toBeCloseTo(0.0041385958, 9);
    expect(budget.degreesOfFreedom).toBeCloseTo(9, 9);
    expect(budget.contributions.map(({ group }) => group)).toEqual(['calibration line', 'calibration line']);
  });

  it('is drawn jointly: the interval of Student’s t with 9 degrees of freedom', () => {
    const drawn = monteCarlo(at30, { seed: 1, draws: 100_000 });
    expectEnds(drawn, drawn.interval(), [-0.158738967, -0.140014659]);
    expect(drawn.standard.si).toBeCloseTo(0.004692726, 4);
    expect(drawn.linear.verdict).toBe('good enough');
    expect(subtract(drawn.mean, at30).si).toBeCloseTo(0, 4);
  });
});
