import { describe, expect, it } from 'vitest';
import {
  contrastOfRepeats,
  explain,
  mean,
  meanOfRepeats,
  measured,
  measuredTogether,
  sensor,
  uncertainty,
  whatIf,
} from '../../src/calculation/index.js';
import {
  column,
  massFlow,
  percent,
  power,
  ratioOf,
  temperature,
  temperatureDifference,
  type Quantity,
} from '../../src/units/index.js';
import { messageOf, relativeError } from './small-calculations.js';

const pulls = [301.2, 300.4, 302.1, 300.9, 301.6].map((value) => power(value, 'kW'));

describe('repeats among which one reading stands twice', () => {
  it('carry a note, since the scatter looks smaller than it is', () => {
    const [a, b] = pulls as [Quantity<'power'>, Quantity<'power'>];
    const [note] = meanOfRepeats('peak power', [a, b, b.named('again')]).notes;
    expect(note).toMatchObject({ code: 'counted twice' });
    expect(note!.message).toBe('peak power: repeats 2 and 3 are one reading; give each once.');
    expect(meanOfRepeats('peak power', pulls).notes).toEqual([]);
  });
});

describe('the mean', () => {
  it('of a column leaves missing rows out and claims no scatter', () => {
    const charge = mean(column('temperature', [40, NaN, 44], '°C'));
    expect([charge.kind, charge.in('°C'), charge.unit]).toEqual(['temperature', expect.closeTo(42, 12), '°C']);
    expect(uncertainty(charge).standard.si).toBe(0);
  });

  it('of quantities is an ordinary step: change one and it follows', () => {
    const middle = mean(pulls);
    expect(middle.in('kW')).toBeCloseTo(301.24, 12);
    expect(whatIf(middle, [[pulls[0]!, power(306.2, 'kW')]]).in('kW')).toBeCloseTo(302.24, 12);
  });

  it('of a column follows when the column is another, also of what it was computed from', () => {
    const boost = column('gauge pressure', [50, 60], 'kPa');
    const other = column('gauge pressure', [70, 90], 'kPa');
    const gauge = sensor('gauge pressure', { label: 'gauge', ofReading: percent(1) });
    expect(whatIf(mean(gauge.reads(boost)), [[boost, other]]).in('kPa')).toBeCloseTo(80, 12);
  });

  it('of equal values is exactly that value', () => {
    expect(mean([0.1, 0.1, 0.1].map((value) => temperature(value, 'K'))).si).toBe(0.1);
  });

  it('accepts a column that went through a clone', () => {
    expect(mean(structuredClone(column('power', [1, 3], 'kW'))).in('kW')).toBe(2);
  });

  it('refuses nothing, numbers, mixed kinds and a column without a value', () => {
    expect(messageOf(() => mean([]))).toBe('mean: values must be a list of quantities, got an empty list.');
    expect(messageOf(() => mean([1, 2] as never))).toBe(
      'mean: values must be a list of quantities, got the bare number 1.',
    );
    expect(messageOf(() => mean(power(1, 'kW') as never))).toBe(
      'mean: values must be a column or a list of quantities, got a power (1 kW).',
    );
    expect(messageOf(() => mean([power(1, 'kW'), massFlow(1, 'kg/s')] as never))).toContain(
      'values[1] must be a power, got a mass flow (1 kg/s)',
    );
    expect(messageOf(() => mean(column('power', [NaN, NaN], 'kW')))).toBe(
      'mean: values must be a column with at least one value, got 2 rows, all missing.',
    );
  });
});

describe('the mean of repeats', () => {
  it('has the scatter s/√n with n - 1 degrees of freedom: 0.290861 kW for five pulls (computed outside)', () => {
    const budget = uncertainty(meanOfRepeats('power', pulls));
    expect(budget.value.in('kW')).toBeCloseTo(301.24, 12);
    expect(budget.standard.in('kW')).toBeCloseTo(0.290861, 6);
    expect(budget.degreesOfFreedom).toBe(4);
    expect(budget.coverageFactor()).toBeCloseTo(2.776445, 6);
    expect(budget.contributions.map(({ label }) => label)).toEqual(['power, scatter of 5 repeats']);
  });

  it('keeps what the repeats share, whole, and cancels it between two means', () => {
    const cell = sensor('power', { label: 'cell', ofReading: percent(1) });
    const side = (shift: number): Quantity<'power'> =>
      meanOfRepeats(
        `side ${shift}`,
        pulls.map((pull) => cell.reads(power(pull.in('kW') + shift, 'kW'))),
      );
    const one = uncertainty(side(0));
    expect(one.standard.in('kW')).toBeCloseTo(Math.hypot(0.290861, 3.0124 / Math.sqrt(3)), 4);
    expect(side(0).notes).toEqual([]);
    const gain = uncertainty(ratioOf(side(10), side(0)));
    const shares = Object.fromEntries(gain.contributions.map(({ label, share }) => [label, share]));
    expect(shares['cell']).toBeLessThan(1e-15);
  });

  it('says so where a repeat brings noise of its own, which the scatter holds already', () => {
    const noisy = pulls.map((pull, i) => measured(`pull ${i + 1}`, pull, { standardUncertainty: power(1, 'kW') }));
    const { notes } = meanOfRepeats('power', noisy);
    expect(notes).toHaveLength(5);
    expect(notes[0]).toMatchObject({ code: 'counted twice' });
    expect(notes[0]!.message).toBe(
      'power: repeat 1 carries an error of its own (pull 1), which the scatter holds already; give repeats only what they share.',
    );
  });

  it('says so where all repeats are equal', () => {
    const equal = meanOfRepeats('power', [power(300, 'kW'), power(300, 'kW')]);
    expect(equal.notes.map(({ code }) => code)).toEqual(['no scatter']);
    expect(uncertainty(equal).standard.si).toBe(0);
  });

  it('of temperatures has a scatter in kelvins', () => {
    const charge = meanOfRepeats(
      'charge',
      [40, 42].map((value) => temperature(value, '°C')),
    );
    expect(String(uncertainty(charge))).toBe('41.0(10) °C');
    expect(uncertainty(charge).standard.kind).toBe('temperature difference');
  });

  it('refuses one, and a label that is not first', () => {
    expect(messageOf(() => meanOfRepeats('power', [pulls[0]!]))).toContain(
      'repeats must be at least two quantities, got one.',
    );
    expect(messageOf(() => meanOfRepeats(pulls as never, 'power' as never))).toBe(
      'meanOfRepeats: label must be a text that names it in explanations, got a list. The label comes first.',
    );
  });
});

describe('what was measured together', () => {
  it('keeps the kinds and the correlation: a ratio of two that rise together is better known than either', () => {
    const flows = pulls.map((pull) => massFlow(pull.in('kW') / 3, 'g/s'));
    const { output, airflow } = measuredTogether('pulls', { output: pulls, airflow: flows });
    const typed: [Quantity<'power'>, Quantity<'mass flow'>] = [output, airflow];
    expect(typed.map(({ label }) => label)).toEqual(['output', 'airflow']);
    expect(uncertainty(output).standard.in('kW')).toBeCloseTo(0.290861, 6);
    const share = ratioOf(output, power(300, 'kW'));
    const flowShare = ratioOf(airflow, massFlow(100, 'g/s'));
    expect(relativeError(ratioOf(share, flowShare), 1)).toBeLessThan(1e-12);
    expect(uncertainty(ratioOf(share, flowShare)).standard.si).toBeLessThan(1e-10);
  });

  it('keeps the error of a sensor beside the scatter', () => {
    const probe = sensor('temperature', { label: 'probe', halfWidth: temperatureDifference(1, 'K') });
    const { charge } = measuredTogether('pulls', { charge: probe.reads(column('temperature', [40, 42, 41], '°C')) });
    expect(uncertainty(charge).standard.in('K')).toBeCloseTo(Math.hypot(1 / Math.sqrt(3), 1 / Math.sqrt(3)), 9);
    expect(
      uncertainty(charge)
        .contributions.map(({ group }) => group)
        .sort(),
    ).toEqual(['pulls', undefined]);
  });

  it('takes a channel that does not move as one that says nothing', () => {
    const { a, b } = measuredTogether('pulls', { a: pulls, b: pulls.map(() => power(1, 'kW')) });
    expect(b.notes.map(({ code }) => code)).toEqual(['no scatter']);
    expect(uncertainty(b).standard.si).toBe(0);
    expect(uncertainty(a).standard.si).toBeGreaterThan(0);
  });

  it('refuses readings that do not belong together', () => {
    expect(messageOf(() => measuredTogether('pulls', { a: pulls, b: pulls.slice(1) }))).toBe(
      'measuredTogether: all readings must be equally many, got 5 and 4.',
    );
    expect(messageOf(() => measuredTogether('pulls', { a: column('power', [1, NaN], 'kW') }))).toBe(
      'measuredTogether: a must be complete, so that rows belong together, got row 1 without a value. Leave that row out of all of them.',
    );
    expect(messageOf(() => measuredTogether('pulls', { a: [pulls[0]!] }))).toContain(
      'a must be at least two readings of each, got 1',
    );
    expect(messageOf(() => measuredTogether('pulls', { a: 5 as never }))).toBe(
      'measuredTogether: a must be a column or a list of quantities, got the bare number 5.',
    );
    expect(messageOf(() => measuredTogether('pulls', {}))).toContain('at least one');
  });
});

describe('the weights of a contrast in its worked steps', () => {
  it('are shown to the figures of what is computed, not to those of a machine', () => {
    const third = 1 / 3;
    const values = [power(150.1, 'kW'), power(153.2, 'kW'), power(151.4, 'kW')];
    const spread = { standard: 400, degreesOfFreedom: 1 };
    const text = explain(contrastOfRepeats('change', values, [-2 * third, third, third], spread)).toText();
    expect(text).toContain('0.3333');
    expect(text).not.toMatch(/\d\.\d{6,}/);
  });
});
