import fc from 'fast-check';
import { inspect } from 'node:util';
import { describe, expect, it } from 'vitest';
import {
  calculation,
  derived,
  input,
  mean,
  meanOfRepeats,
  measured,
  measuredTogether,
  monteCarlo,
  output,
  sensor,
  solve,
  uncertainty,
  whatIf,
} from '../../src/calculation/index.js';
import { Generator } from '../../src/calculation/draws/generator.js';
import { normalDraw } from '../../src/calculation/draws/normal.js';
import { normalCdf, normalQuantile } from '../../src/statistics/index.js';
import {
  absolutePressure,
  column,
  massFlow,
  power,
  pressureDifference,
  ratio,
  ratioOf,
  rotationalSpeed,
  scale,
  subtract,
  temperature,
  temperatureDifference,
  torque,
  type Quantity,
} from '../../src/units/index.js';
import { density, errorOf, kepler, messageOf, outlet, powerOf } from './small-calculations.js';

type Ratio = Quantity<'ratio'>;

const force = measured('torque cell', torque(400, 'N·m'), { standardUncertainty: torque(2, 'N·m') });
const speed = measured('speed pickup', rotationalSpeed(5500, 'rpm'), {
  standardUncertainty: rotationalSpeed(5, 'rpm'),
});
const shaft = powerOf({ torque: force, speed }).named('shaft power');
const normal = (value: number, standard: number): Ratio =>
  measured('x', ratio(value), { standardUncertainty: ratio(standard) });
const si = (ends: readonly Quantity[]): number[] => ends.map((end) => end.si);

/** A calculation of one ratio. */
const of = (si: (x: number) => number, bounds: { min: number; max: number; trusted?: readonly [number, number] }) =>
  calculation({
    name: 'made up',
    task: 'describe the air',
    inputs: { x: input('x', 'ratio', bounds) },
    output: output('y', 'ratio', '1'),
    formula: 'x',
    si,
    sources: [derived('made for tests')],
  });
const open = { min: -1e9, max: 1e9 };

describe('monteCarlo', () => {
  it('gives the same draws for the same seed, and others that agree for another', () => {
    const [one, same, other] = [1, 1, 2].map((seed) => monteCarlo(shaft, { seed, draws: 20_000 }));
    expect(JSON.stringify(same)).toBe(JSON.stringify(one));
    expect(same!.drawn.si).toEqual(one!.drawn.si);
    expect(other!.standard.si).not.toBe(one!.standard.si);
    expect(Math.abs(other!.standard.si - one!.standard.si)).toBeLessThan(2 * one!.settledTo.si);
  });

  it('agrees with the budget where the result hardly bends: 230.4 kW and 1.1708 kW (computed outside)', () => {
    const drawn = monteCarlo(shaft, { seed: 1, draws: 100_000 });
    expect(drawn.mean.in('kW')).toBeCloseTo(230.383, 1);
    expect(Math.abs(drawn.standard.in('kW') - 1.170802)).toBeLessThan(0.01);
    expect(Math.abs(drawn.interval()[0].in('kW') - (230.383 - 1.95996 * 1.170802))).toBeLessThan(0.04);
    expect(drawn.linear.verdict).toBe('good enough');
    expect([drawn.draws, drawn.impossible, drawn.seed, drawn.level]).toEqual([100_000, 0, 1, 0.95]);
  });

  it('carries the quantiles of one input through any rising step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        (at, u) => {
          const drawn = monteCarlo(of(Math.exp, open)({ x: normal(at, u) }), { seed: 5, draws: 5000 });
          const expected = [0.025, 0.975].map((p) => at + u * normalQuantile(p));
          drawn.interval().forEach((end, i) => expect(Math.abs(Math.log(end.si) - expected[i]!)).toBeLessThan(0.2 * u));
          expect(Math.log(drawn.median.si)).toBeCloseTo(at, -Math.log10(0.2 * u));
        },
      ),
      { numRuns: 20 },
    );
  });

  it('finds the mean that bending moves: of exp(x) with u = 0.5 it is exp(1/8) times the value', () => {
    const drawn = monteCarlo(of(Math.exp, open)({ x: normal(0, 0.5) }), { seed: 1, draws: 100_000 });
    expect(drawn.value.si).toBe(1);
    expect(drawn.mean.si).toBeCloseTo(Math.exp(0.125), 2);
    expect(drawn.standard.si).toBeCloseTo(Math.sqrt(Math.exp(0.5) - Math.exp(0.25)), 1);
    const [low, high] = si(drawn.interval());
    const [shortLow, shortHigh] = si(drawn.shortestInterval());
    expect(shortHigh! - shortLow!).toBeLessThan(0.9 * (high! - low!));
    expect(shortLow).toBeLessThan(low!);
  });

  it('draws what two values share once, so that it cancels', () => {
    const probe = sensor('temperature', { label: 'probe', halfWidth: temperatureDifference(1, 'K') });
    const fall = subtract(probe.reads(temperature(121, '°C')), probe.reads(temperature(52, '°C')));
    const drawn = monteCarlo(fall, { seed: 1, draws: 2000 });
    expect(drawn.standard.in('K')).toBeLessThan(1e-12);
    expect(drawn.interval()[1].in('K')).toBeCloseTo(69, 12);
    expect(drawn.linear.verdict).toBe('good enough');
    expect(drawn.toText()).toContain('69');
  });

  it('draws what was read together jointly: a ratio of two that rise together does not scatter', () => {
    const pulls = [301.2, 300.4, 302.1, 300.9, 301.6];
    const { output: out, airflow } = measuredTogether('pulls', {
      output: pulls.map((value) => power(value, 'kW')),
      airflow: column(
        'mass flow',
        pulls.map((value) => value / 3),
        'g/s',
      ),
    });
    const quotient = ratioOf(ratioOf(out, power(300, 'kW')), ratioOf(airflow, massFlow(100, 'g/s')));
    const drawn = monteCarlo(quotient, { seed: 1, draws: 5000 });
    expect(drawn.standard.si).toBeLessThan(1e-6);
    expect(monteCarlo(out, { seed: 1, draws: 5000 }).standard.in('kW')).toBeGreaterThan(0.29);
  });

  it('follows a result that was made by a what-if', () => {
    const slower = whatIf(shaft, [[speed, rotationalSpeed(2750, 'rpm')]]);
    const drawn = monteCarlo(slower, { seed: 1, draws: 20_000 });
    expect(drawn.standard.in('kW')).toBeCloseTo(uncertainty(slower).standard.in('kW'), 1);
  });

  it('gives the chance of lying above a limit', () => {
    const drawn = monteCarlo(shaft, { seed: 1, draws: 50_000 });
    const limit = power(231, 'kW');
    const exact = 1 - normalCdf((231 - 230.383) / 1.170802);
    expect(Math.abs(drawn.chanceAbove(limit) - exact)).toBeLessThan(0.01);
    expect([drawn.chanceAbove(power(0, 'kW')), drawn.chanceAbove(power(1000, 'kW'))]).toEqual([1, 0]);
    // @ts-expect-error a limit is of the kind of the result
    expect(() => drawn.chanceAbove(torque(1, 'N·m'))).toThrow(/limit must be power/);
  });

  it('gives any interval that its draws can settle, and refuses others', () => {
    const drawn = monteCarlo(shaft, { seed: 1, draws: 20_000 });
    const [low, high] = drawn.interval(0.5);
    expect((high.in('kW') - low.in('kW')) / (2 * 0.67449 * 1.170802)).toBeCloseTo(1, 1);
    expect(messageOf(() => drawn.interval(0.9999))).toBe(
      'interval: level must be one that 20 000 draws can settle, got 0.9999. It takes 100 000 draws.',
    );
    expect(messageOf(() => drawn.shortestInterval(95))).toContain('For 95 % write 0.95.');
  });
});

describe('monteCarlo without a number of draws', () => {
  it('stops when every figure is settled to a fifth of half a unit in the first figure of u', () => {
    const drawn = monteCarlo(shaft, { seed: 1 });
    expect(drawn.linear.tolerance.in('kW')).toBeCloseTo(0.5, 12);
    expect(drawn.settled).toBe(true);
    expect(drawn.settledTo.in('kW')).toBeLessThanOrEqual(0.1);
    expect([drawn.draws % 10_000, drawn.draws < 200_000]).toEqual([0, true]);
    const [low, high] = drawn.interval();
    expect(Math.abs(low.in('kW') - 228.0883)).toBeLessThan(0.1);
    expect(Math.abs(high.in('kW') - 232.6777)).toBeLessThan(0.1);
  });

  it('judges by the digits of u in the unit of the result', () => {
    const inWatts = monteCarlo(shaft.to('W'), { seed: 1, draws: 20_000 });
    expect(inWatts.linear.tolerance.in('W')).toBeCloseTo(500, 9);
    const inHorsepower = monteCarlo(shaft.to('PS'), { seed: 1, draws: 20_000, figures: 2 });
    expect(inHorsepower.linear.tolerance.in('PS')).toBeCloseTo(0.05, 9);
  });

  it('stops at the most draws it may make, and says that the figures are not settled', () => {
    const drawn = monteCarlo(shaft, { seed: 1, adaptive: true, draws: 30_000, figures: 2 });
    expect([drawn.draws, drawn.settled]).toEqual([30_000, false]);
    expect(drawn.notes.map(({ code }) => code)).toEqual(['not settled']);
    expect(drawn.notes[0]!.message).toMatch(
      /^monteCarlo: 30 000 draws settle the figures to 0\.0\d+ kW, not to 0\.01 kW/,
    );
  });

  it('takes larger parts for a higher confidence (JCGM 101, 7.9.4)', () => {
    expect(monteCarlo(shaft, { seed: 1, level: 0.999 }).draws % 100_000).toBe(0);
  });
});

describe('monteCarlo with few repeats', () => {
  const repeats = (values: readonly number[]): Quantity<'power'> =>
    meanOfRepeats(
      'power',
      values.map((value) => power(value, 'kW')),
    );

  it('has the interval of Student’s t: 2.776 times 0.290861 kW for five', () => {
    const drawn = monteCarlo(repeats([301.2, 300.4, 302.1, 300.9, 301.6]), { seed: 1, draws: 100_000 });
    expect(Math.abs(drawn.interval()[1].in('kW') - 301.24 - 2.776445 * 0.290861)).toBeLessThan(0.02);
    expect(drawn.notes.map(({ code }) => code)).toEqual(['few degrees of freedom']);
    expect(drawn.notes[0]!.message).toContain(
      'four degrees of freedom or fewer (five repeats), so that the standard uncertainty of the draws is wider',
    );
    expect(drawn.standard.in('kW')).toBeCloseTo(Math.SQRT2 * 0.290861, 1);
    expect(monteCarlo(repeats([301.2, 300.4, 302.1, 300.9, 301.6, 301]), { seed: 1, draws: 50_000 }).notes).toEqual([]);
  });

  it('has no standard uncertainty for three, but an interval: 4.303 times 0.4910 kW', () => {
    const drawn = monteCarlo(repeats([301.2, 300.4, 302.1]), { seed: 1, draws: 100_000 });
    expect(Math.abs(drawn.interval()[1].in('kW') - 301.2333 - 4.302653 * 0.4910307)).toBeLessThan(0.06);
    expect(errorOf(() => drawn.standard).code).toBe('no answer');
    expect(messageOf(() => drawn.standard)).toContain(
      'one with two degrees of freedom or fewer (three repeats), whose Student distribution has none. Take the interval.',
    );
    expect(drawn.mean.in('kW')).toBeCloseTo(301.2, 1);
    expect(drawn.notes.map(({ code }) => code)).toContain('few degrees of freedom');
    expect(drawn.toJSON().standard).toBeNull();
    expect(String(drawn)).toMatch(/^301\.23? kW, 95 % interval 299\.\d+ to 303\.\d+ kW$/);
    expect(drawn.toText()).toMatch(/standard uncertainty +none +0\.49 kW/);
  });

  it('has no mean either for two: the median stands for it', () => {
    const drawn = monteCarlo(repeats([301, 302]), { seed: 1 });
    expect(messageOf(() => drawn.mean)).toContain('Take the median.');
    expect(drawn.median.in('kW')).toBeCloseTo(301.5, 1);
    expect(drawn.toJSON().mean).toBeNull();
    expect(drawn.toText()).toMatch(/mean +none +301\.5/);
  });

  it('is cautious for a difference between two means of three: 99 % where the budget holds 96.5 % (computed outside)', () => {
    const random = Generator.seeded(11);
    const side = (): Quantity<'power'> => repeats(Array.from({ length: 3 }, () => 300 + normalDraw(random.uniform())));
    const holds = ([low, high]: readonly Quantity[]): number => (low!.si <= 0 && high!.si >= 0 ? 1 : 0);
    let [byDraws, byBudget] = [0, 0];
    for (let trial = 0; trial < 300; trial++) {
      const drawn = monteCarlo(subtract(side(), side()), { seed: trial, draws: 4000 });
      byDraws += holds(drawn.interval());
      byBudget += holds(drawn.linear.budget!.interval());
    }
    // Three standard deviations of a count of 300 either way.
    expect(byDraws).toBeGreaterThan(291);
    expect(byBudget).toBeGreaterThan(279);
    expect(byBudget).toBeLessThan(byDraws);
  });

  it('keeps the error that repeats share beside their scatter', () => {
    const cell = sensor('power', { label: 'cell', halfWidth: power(2, 'kW') });
    const read = [301.2, 300.4, 302.1, 300.9, 301.6].map((value) => cell.reads(power(value, 'kW')));
    const drawn = monteCarlo(meanOfRepeats('power', read), { seed: 1, draws: 50_000 });
    // A t with 4 degrees of freedom is √2 times as wide as its scale.
    expect(drawn.standard.in('kW')).toBeCloseTo(Math.hypot(2 / Math.sqrt(3), Math.SQRT2 * 0.290861), 1);
  });
});

describe('impossible draws', () => {
  const near = measured('gauge', absolutePressure(20, 'kPa'), { standardUncertainty: pressureDifference(8, 'kPa') });
  const warm = temperature(20, '°C');

  it('are counted, left out and told: a normal input cut off at 1.25 u leaves 10.56 % out', () => {
    const drawn = monteCarlo(density({ pressure: near, temperature: warm }), { seed: 1, draws: 50_000 });
    expect(Math.abs(drawn.impossible / drawn.draws - normalCdf(-1.25))).toBeLessThan(0.005);
    expect(drawn.drawn.length).toBe(drawn.draws - drawn.impossible);
    const perPascal = 1 / (287.05 * 293.15);
    expect(drawn.drawn.si[0]).toBeGreaterThanOrEqual(10_000 * perPascal);
    const cut = normalCdf(-1.25);
    const expected = 20_000 + 8000 * normalQuantile(cut + 0.025 * (1 - cut));
    expect(drawn.interval()[0].si / perPascal / expected).toBeCloseTo(1, 2);
    expect(drawn.notes.map(({ code }) => code)).toEqual(['impossible draws']);
    expect(drawn.notes[0]!.message).toMatch(
      /^monteCarlo: 1[01] % of the draws are impossible and were left out \(such as density: pressure must be between 10 kPa and 2000 kPa, got/,
    );
  });

  it('are those too that an input cannot have: no pressure is below zero', () => {
    const low = measured('vacuum', absolutePressure(1, 'kPa'), { standardUncertainty: pressureDifference(2, 'kPa') });
    const drawn = monteCarlo(scale(low, 2), { seed: 1, draws: 20_000 });
    expect(Math.abs(drawn.impossible / drawn.draws - normalCdf(-0.5))).toBeLessThan(0.01);
    expect(drawn.notes[0]!.message).toContain('vacuum below zero, which an absolute pressure cannot be');
    expect(monteCarlo(low, { seed: 1, draws: 20_000 }).impossible).toBe(drawn.impossible);
  });

  it('go untold below one in a hundred', () => {
    const drawn = monteCarlo(of((x) => x, { min: -3, max: 3 })({ x: normal(0, 1) }), { seed: 1, draws: 20_000 });
    expect(drawn.impossible).toBeGreaterThan(0);
    expect(drawn.notes).toEqual([]);
  });

  it('are refused where hardly any other is left, with the reason', () => {
    const wild = measured('gauge', absolutePressure(20, 'kPa'), { standardUncertainty: pressureDifference(8, 'bar') });
    const narrow = of((x) => x, { min: 0.99, max: 1.01 })({ x: normal(1, 0.5) });
    expect(messageOf(() => monteCarlo(narrow, { seed: 1 }))).toMatch(
      /^monteCarlo: needs inputs that are possible in at least a tenth of the draws, got 1\.\d %, for such reasons as: made up: x must be between 0\.99 and 1\.01/,
    );
    expect(
      monteCarlo(density({ pressure: wild, temperature: warm }), { seed: 1, draws: 5000 }).impossible,
    ).toBeGreaterThan(1000);
  });
});

describe('notes of draws', () => {
  it('say in what share of the draws an input leaves the trusted range', () => {
    const edge = measured('ratio', ratio(4), { standardUncertainty: ratio(0.1) });
    const hot = outlet({ inletTemperature: temperature(20, '°C'), pressureRatio: edge, efficiency: ratio(0.7) });
    const { notes } = monteCarlo(hot, { seed: 1, draws: 20_000 });
    expect(notes.map(({ code }) => code)).toEqual(['outside trusted range']);
    expect(notes[0]!.message).toMatch(
      /^outlet temperature: pressureRatio is outside the trusted range, 1 to 4, in (49|50|51) % of the draws\.$/,
    );
  });

  it('are told once where every draw has them, and keep those of the value itself', () => {
    const wide = measured('ratio', ratio(6), { standardUncertainty: ratio(0.01) });
    const hot = outlet({ inletTemperature: temperature(20, '°C'), pressureRatio: wide, efficiency: ratio(0.7) });
    expect(monteCarlo(hot, { seed: 1, draws: 2000 }).notes.map(({ message }) => message)).toEqual([
      expect.stringContaining('is outside the trusted range, 1 to 4.'),
    ]);
    const flat = meanOfRepeats('flat', [power(300, 'kW'), power(300, 'kW')]);
    const drawn = monteCarlo(subtract(flat, measured('loss', power(2, 'kW'), { halfWidth: power(1, 'kW') })), {
      seed: 1,
      draws: 2000,
    });
    expect(drawn.notes.map(({ code }) => code)).toContain('no scatter');
  });
});

describe('monteCarlo through solved equations', () => {
  const anomalyOf = (eccentricity: Ratio): Ratio =>
    solve({ label: 'eccentric anomaly', kind: 'ratio', unit: '1', between: [ratio(0), ratio(7)] }, (anomaly) => ({
      residual: kepler({ anomaly, eccentricity, mean: ratio(1) }),
    })).solution;

  it('solves again for each draw: the quantiles of the input come out as those of the answer', () => {
    const drawn = monteCarlo(anomalyOf(normal(0.5, 0.1)), { seed: 1, draws: 5000 });
    const expected = [0.025, 0.975].map((p) => anomalyOf(ratio(0.5 + 0.1 * normalQuantile(p))).si);
    drawn.interval().forEach((end, i) => expect(Math.abs(end.si - expected[i]!)).toBeLessThan(0.015));
    // At e = 0.5 the answer is 1.49870113351785 (computed outside).
    expect(drawn.median.si).toBeCloseTo(1.4987, 2);
  });

  it('counts draws without an answer, also where a step before the equation refuses them', () => {
    const share = of((x) => x, { min: 0, max: 1 });
    const drawn = monteCarlo(anomalyOf(share({ x: normal(0.5, 0.3) })), { seed: 1, draws: 2000 });
    expect(Math.abs(drawn.impossible / 2000 - 2 * normalCdf(-0.5 / 0.3))).toBeLessThan(0.02);
    expect(drawn.notes[0]!.message).toContain('such as made up: x must be between 0 and 1, got');
  });
});

describe('monteCarlo through a logged channel', () => {
  const probe = sensor('temperature', { label: 'probe', halfWidth: temperatureDifference(1, 'K') });
  const logged = probe.reads(column('temperature', [300, 310, NaN, 320], 'K'));

  it('computes the whole channel for each draw', () => {
    const rows = density.columns({ pressure: absolutePressure(150, 'kPa'), temperature: logged });
    const drawn = monteCarlo(mean(rows), { seed: 1, draws: 4000 });
    const at = (error: number): number =>
      [300, 310, 320].reduce((sum, T) => sum + 150e3 / (287.05 * (T + error)), 0) / 3;
    expect(drawn.interval()[0].si / at(0.95)).toBeCloseTo(1, 3);
    expect(drawn.interval()[1].si / at(-0.95)).toBeCloseTo(1, 3);
    expect(drawn.linear.budget!.contributions.map(({ label }) => label)).toEqual(['probe']);
  });

  it('leaves a draw out that a row of the channel refuses', () => {
    const edge = probe.reads(column('temperature', [300, 499.5], 'K'));
    const rows = density.columns({ pressure: absolutePressure(150, 'kPa'), temperature: edge });
    const drawn = monteCarlo(mean(rows), { seed: 1, draws: 4000 });
    expect(Math.abs(drawn.impossible / 4000 - 0.25)).toBeLessThan(0.03);
    expect(drawn.notes[0]!.message).toMatch(/temperature must be between .* in row 1/);
  });
});

describe('the linear budget', () => {
  it('is found wanting where the result has its smallest value', () => {
    const drawn = monteCarlo(of((x) => x * x, open)({ x: normal(0, 1) }), { seed: 1, draws: 20_000 });
    expect(drawn.linear.budget!.standard.si).toBeLessThan(1e-4);
    expect(drawn.linear.verdict).toBe('not good enough');
    expect(drawn.shortestInterval()[0].si).toBeLessThan(0.01);
    expect(drawn.shortestInterval()[1].si / 1.959964 ** 2).toBeCloseTo(1, 1);
  });

  it('is not judged where the draws are too few to tell', () => {
    const few = Array.from({ length: 10 }, (_, seed) => monteCarlo(shaft, { seed, draws: 2000, figures: 2 }));
    // Some come within the tolerance, and some beyond it, by luck.
    const off = few.map(({ linear }) => Math.max(...linear.off!.map((by) => by.si)));
    expect(new Set(off.map((by) => by < few[0]!.linear.tolerance.si))).toEqual(new Set([true, false]));
    expect(new Set(few.map(({ linear }) => linear.verdict))).toEqual(new Set(['too few draws to tell']));
    expect(few[0]!.linear.statement).toContain('cannot be told from 2 000 draws');
  });

  it('may not exist where draws do', () => {
    const lonely = of((x) => (x === 1 || Math.abs(x - 1) > 0.01 ? x : NaN), open);
    const drawn = monteCarlo(lonely({ x: normal(1, 1) }), { seed: 1, draws: 5000 });
    expect(drawn.linear.verdict).toBe('no budget');
    expect(drawn.linear.statement).toMatch(/^There is no linear budget to compare with \(uncertainty: needs room/);
    expect(drawn.toText()).toContain('mean');
    expect(drawn.toJSON().linear.interval).toBeNull();
  });
});

describe('the forms of a Monte Carlo result', () => {
  const drawn = monteCarlo(shaft, { seed: 1, draws: 100_000 });

  it('are text, beside the linear budget', () => {
    expect(String(drawn)).toBe('230.4(12) kW');
    const [caption, empty, head, ...rows] = drawn.toText().split('\n');
    expect([caption, empty]).toEqual([
      'shaft power: 230.4(12) kW; 95 % interval 228.1 to 232.7 kW (100 000 draws, seed 1)',
      '',
    ]);
    expect(head).toBe('                                 draws  linear budget');
    expect(rows.slice(0, 4)).toEqual([
      'mean                          230.4 kW       230.4 kW',
      'median                        230.4 kW',
      'standard uncertainty            1.2 kW         1.2 kW',
      'symmetric interval, low end   228.1 kW       228.1 kW',
    ]);
    expect(rows.at(-3)).toMatch(
      /^The linear budget is good enough: .*, within 0\.5 kW, half a unit in the first figure/,
    );
    expect(rows.at(-2)).toMatch(/^The draws settle these figures to 0\.0\d+ kW\.$/);
    expect(rows.at(-1)).toMatch(
      /^Source: JCGM 101:2008, .* Monte Carlo method, clauses 6\.4, 7 and 8: .*, from memory$/,
    );
    expect(inspect(drawn)).toBe(drawn.toText());
  });

  it('are Markdown and HTML, with what came from outside escaped', () => {
    const hostile = monteCarlo(shaft.named('<script>|*x*'), { seed: 1, draws: 2000 });
    expect(hostile.toHtml()).toContain('&lt;script&gt;|*x*');
    expect(hostile.toHtml()).not.toContain('<script>');
    expect(hostile.toMarkdown()).toContain('&lt;script&gt;\\|\\*x\\*');
    expect(drawn.toMarkdown()).toContain('| standard uncertainty | 1.2 kW | 1.2 kW |');
  });

  it('are plain data, without the draws', () => {
    const record = JSON.parse(JSON.stringify(drawn)) as ReturnType<typeof drawn.toJSON>;
    expect(record).toMatchObject({ draws: 100_000, impossible: 0, seed: 1, level: 0.95, settled: true, notes: [] });
    expect(record.standard).toEqual({ kind: 'power', value: expect.closeTo(1.17, 1), unit: 'kW' });
    expect(record.linear.verdict).toBe('good enough');
    expect(record.interval[0].unit).toBe('kW');
    expect(record.sources).toEqual([{ id: 'jcgm101', where: expect.stringContaining('clauses'), status: 'memory' }]);
  });

  it('keep the digits of very small results', () => {
    const small = monteCarlo(of((x) => x * 1e-12, open)({ x: normal(5, 0.1) }), { seed: 1, draws: 20_000 });
    expect(small.toText()).toMatch(/symmetric interval, low end +4\.80\de−12/);
  });
});

describe('monteCarlo refuses', () => {
  it.each([
    [{}, 'monteCarlo: seed must be a whole number from 0 up, such as 1, got nothing.'],
    [{ seed: -1 }, 'seed must be a whole number from 0 up, such as 1, got -1.'],
    [{ seed: 0.5 }, 'seed must be a whole number'],
    [{ seed: 1, level: 95 }, 'For 95 % write 0.95.'],
    [{ seed: 1, draws: 100 }, 'draws must be a whole number from 2 000 to 100 000 000 for 95 %, got 100.'],
    [{ seed: 1, draws: 1e9 }, 'draws must be a whole number from 2 000 to 100 000 000'],
    [
      { seed: 1, draws: 5000, adaptive: true },
      'draws must be a whole number from 20 000 to 100 000 000 for 95 % and adaptive',
    ],
    [{ seed: 1, level: 0.999999999 }, 'level must be one that a hundred million draws can settle, got 0.999999999.'],
    [{ seed: 1, figures: 3 }, 'figures must be 1 or 2, got 3.'],
    [{ seed: 1, adaptive: 1 }, 'adaptive must be true or false, got 1.'],
  ])('%j', (options, message) => {
    expect(messageOf(() => monteCarlo(shaft, options as never))).toContain(message);
  });

  it('a result that nothing makes uncertain, a column and a number', () => {
    expect(messageOf(() => monteCarlo(power(1, 'kW'), { seed: 1 }))).toBe(
      'monteCarlo: result must be made of at least one uncertain input, got none. State what is not known exactly with measured, sensor or meanOfRepeats.',
    );
    expect(messageOf(() => monteCarlo(column('power', [1], 'kW') as never, { seed: 1 }))).toContain(
      'result must be a quantity, got a column of power.',
    );
    expect(errorOf(() => monteCarlo(5 as never, { seed: 1 })).code).toBe('kind');
  });

  it('a row whose history was not kept', () => {
    const e = measured('e', ratio(0.5), { halfWidth: ratio(0.1) });
    const { solution } = solve({ label: 'E', kind: 'ratio', unit: '1', between: [ratio(0), ratio(7)] }, (anomaly) => ({
      residual: kepler({ anomaly, eccentricity: e, mean: ratio(1) }),
    }));
    const swept = whatIf(solution, [[e, column('ratio', [0.4, 0.5], '1')]]);
    expect(messageOf(() => monteCarlo(swept.at(0), { seed: 1 }))).toContain('needs a result with its whole history');
  });
});
