import fc from 'fast-check';
import { inspect } from 'node:util';
import { describe, expect, it } from 'vitest';
import {
  CalculationError,
  assumed,
  calculation,
  commonPractice,
  constant,
  each,
  input,
  output,
  source,
} from '../../src/calculation/index.js';
import {
  absolutePressure,
  column,
  gaugePressure,
  isQuantity,
  massFlow,
  moleFraction,
  percent,
  ratio,
  temperature,
  temperatureDifference,
  type Quantity,
} from '../../src/units/index.js';

const heatCapacityRatio = constant('test/heat-capacity-ratio', ratio(1.4), {
  label: 'heat-capacity ratio',
  source: source('heywood', 'appendix D', 'memory'),
  halfWidth: 0.005,
});

const outletTemperature = calculation({
  name: 'outlet temperature',
  task: 'compress the charge',
  inputs: {
    inletTemperature: input('T1', 'temperature', { min: 150, max: 500, typical: 293 }),
    pressureRatio: input('PR', 'ratio', { min: 1, max: 8, trusted: [1, 4], typical: 2 }),
    isentropicEfficiency: input('eta', 'ratio', { min: 0.05, max: 1, typical: 0.7 }),
    heatCapacityRatio: assumed('k', 'ratio', { min: 1.2, max: 1.67, assume: heatCapacityRatio }),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'T1 * (1 + (PR^((k - 1) / k) - 1) / eta)',
  si: (T1, PR, eta, k) => T1 * (1 + (PR ** ((k - 1) / k) - 1) / eta),
  rules: [{ need: 'the outlet must stay below 1000 K', holds: (T1, PR, eta) => T1 * (1 + (PR - 1) / eta) < 4000 }],
  sources: [source('heywood', 'section 6.8', 'memory')],
});

const mixtureMass = calculation({
  name: 'molar mass of a mixture',
  task: 'describe the air',
  inputs: {
    scale: input('s', 'ratio', { min: 0, max: 10, typical: 1 }),
    fractions: each('x', 'mole fraction', { min: 0, max: 1, typical: 0.5 }),
    weights: each('w', 'ratio', { min: 0, max: 100, typical: 28 }),
  },
  output: output('M', 'ratio', '1'),
  formula: 's * sum(x .* w) / sum(x)',
  si: (s, ...lists) => {
    const n = lists.length / 2;
    const x = lists.slice(0, n);
    return (s * x.reduce((sum, xi, i) => sum + xi * lists[n + i]!, 0)) / x.reduce((sum, xi) => sum + xi, 0);
  },
  sources: [commonPractice('for this test')],
});

const typical = { inletTemperature: temperature(18, '°C'), pressureRatio: ratio(2), isentropicEfficiency: percent(70) };

function refusal(run: () => unknown): CalculationError {
  try {
    run();
  } catch (error) {
    if (error instanceof CalculationError) return error;
    throw error;
  }
  throw new Error('it was not refused');
}

describe('a call of a calculation', () => {
  it('gives a quantity in the unit of its definition, and remembers how', () => {
    const hot = outletTemperature(typical);
    expect(hot.in('°C')).toBeCloseTo(109.0940363, 6);
    expect(String(hot)).toBe('109.1 °C');
    expect(hot.origin).toMatchObject({ type: 'step', inputs: [{ si: 291.15 }, { si: 2 }, { si: 0.7 }, { si: 1.4 }] });
  });

  it('takes another value in place of an assumed one', () => {
    expect(outletTemperature({ ...typical, heatCapacityRatio: ratio(1.395) }).si).toBeLessThan(
      outletTemperature(typical).si,
    );
    expect(outletTemperature({ ...typical, heatCapacityRatio: undefined }).si).toBe(outletTemperature(typical).si);
  });

  it('tells everything that is wrong at once, each with how to mend it', () => {
    const error = refusal(() =>
      outletTemperature({ inletTemperature: 18, pressureRatio: ratio(0.46), isentropicEfficiency: ratio(70) } as never),
    );
    expect(error.message).toBe(
      [
        'outlet temperature: 3 inputs need mending',
        "  - inletTemperature must be a temperature, got the bare number 18. Give it a unit: temperature(18, 'K' | '°C' | '°F' | '°R').",
        '  - pressureRatio must be between 1 and 8, got 0.46. Is it upside down? Write ratioOf(outlet, inlet).',
        '  - isentropicEfficiency must be between 0.05 and 1, got 70. For 70 % write percent(70).',
      ].join('\n'),
    );
    expect(error.problems.map(({ code, input }) => [code, input])).toEqual([
      ['kind', 'inletTemperature'],
      ['impossible', 'pressureRatio'],
      ['impossible', 'isentropicEfficiency'],
    ]);
    expect(error.code).toBe('kind');
    expect(inspect(error)).toBe(`CalculationError: ${error.message}`);
  });

  it.each([
    [
      'a temperature difference',
      { inletTemperature: temperatureDifference(18, 'K') },
      'A difference has no place on the scale',
    ],
    ['a pressure for a ratio', { pressureRatio: absolutePressure(2, 'bar') }, 'Use ratioOf(outlet, inlet).'],
    ['a gauge pressure for a ratio', { pressureRatio: gaugePressure(1, 'bar') }, 'Use ratioOf(outlet, inlet).'],
    ['a text', { pressureRatio: '2' }, 'got the text "2"'],
    ['null', { pressureRatio: null }, 'got nothing'],
    [
      'an object that only looks like one',
      { pressureRatio: { kind: 'constructor', si: 2 } },
      'got a value of type object',
    ],
  ])('refuses %s', (_, wrong, words) => {
    expect(refusal(() => outletTemperature({ ...typical, ...wrong } as never)).message).toContain(words);
  });

  it('refuses a misspelt name, which would otherwise be ignored', () => {
    const error = refusal(() => outletTemperature({ ...typical, heatCapcityRatio: ratio(1.3) } as never));
    expect(error.message).toMatch(
      /^outlet temperature: heatCapcityRatio must be one of inletTemperature, .* Did you mean heatCapacityRatio\?$/,
    );
  });

  it('refuses to be called with nothing', () => {
    expect(refusal(() => (outletTemperature as unknown as () => void)()).problems).toHaveLength(3);
  });

  it('answers beyond the trusted range with a note that follows into later results', () => {
    const hot = outletTemperature({ ...typical, pressureRatio: ratio(5), isentropicEfficiency: ratio(1) });
    expect(hot.notes).toEqual([
      {
        code: 'outside trusted range',
        calculation: 'outlet temperature',
        input: 'PR',
        message: 'outlet temperature: pressureRatio is outside the trusted range, 1 to 4.',
      },
    ]);
    const again = outletTemperature({
      ...typical,
      inletTemperature: temperature(hot.in('K') / 2, 'K'),
      isentropicEfficiency: ratio(0.5),
    });
    expect(again.notes).toEqual([]);
    expect(outletTemperature({ ...typical, inletTemperature: hot, pressureRatio: ratio(1) }).notes).toEqual(hot.notes);
    expect(refusal(() => outletTemperature({ ...typical, pressureRatio: ratio(5) }, { strict: true })).code).toBe(
      'outside trusted range',
    );
  });

  it('accepts what came through structuredClone', () => {
    const clone = structuredClone(typical) as typeof typical;
    expect(outletTemperature(clone).si).toBe(outletTemperature(typical).si);
    expect(isQuantity(structuredClone(outletTemperature(typical)))).toBe(true);
  });

  it('never returns anything but a finite number', () => {
    const broken = calculation({
      name: 'broken',
      task: 'describe the air',
      inputs: { x: input('x', 'ratio', { min: -1, max: 1, typical: 0.5 }) },
      output: output('y', 'ratio', '1'),
      formula: 'log(x)',
      si: (x) => Math.log(x),
      sources: [commonPractice('for this test')],
    });
    expect(refusal(() => broken({ x: ratio(-1) })).code).toBe('no answer');
    expect(refusal(() => broken({ x: ratio(0) })).code).toBe('no answer');
  });
});

describe('lists of quantities', () => {
  const half = moleFraction(0.5);

  it('come as arrays of one length', () => {
    expect(mixtureMass({ scale: ratio(1), fractions: [half, half], weights: [ratio(28), ratio(32)] }).si).toBe(30);
    expect(refusal(() => mixtureMass({ scale: ratio(1), fractions: [half, half], weights: [ratio(28)] })).code).toBe(
      'length',
    );
    expect(refusal(() => mixtureMass({ scale: ratio(1), fractions: [], weights: [] })).code).toBe('length');
    expect(
      refusal(() => mixtureMass({ scale: ratio(1), fractions: half as never, weights: [half] as never })).code,
    ).toBe('length');
  });

  it('name the place of a wrong one', () => {
    const error = refusal(() =>
      mixtureMass({ scale: ratio(1), fractions: [half, ratio(0.5) as never], weights: [ratio(28), ratio(32)] }),
    );
    expect(error.problems[0]).toMatchObject({ code: 'kind', input: 'fractions[1]' });
    const low = refusal(() =>
      mixtureMass({ scale: ratio(1), fractions: [half, half], weights: [ratio(28), ratio(200)] }),
    );
    expect(low.problems[0]).toMatchObject({ code: 'impossible', input: 'weights[1]' });
  });

  it('are named value by value where all of them together have no answer', () => {
    const none = moleFraction(0);
    const error = refusal(() =>
      mixtureMass({ scale: ratio(1), fractions: [none, none], weights: [ratio(28), ratio(32)] }),
    );
    expect(error.problems[0]!.got).toBe('scale 1, fractions[0] 0, fractions[1] 0, weights[0] 28, weights[1] 32');
  });
});

describe('a call over columns', () => {
  const ratios = column('ratio', [1, 2, NaN, 3], '1');

  it('does row by row what a call does, and keeps missing rows missing', () => {
    const hot = outletTemperature.columns({ ...typical, pressureRatio: ratios });
    expect([hot.length, hot.missing, hot.refused, hot.unit]).toEqual([4, 1, 0, '°C']);
    expect(hot.si[1]).toBe(outletTemperature(typical).si);
    expect(hot.at(3).si).toBe(outletTemperature({ ...typical, pressureRatio: ratio(3) }).si);
    expect(hot.at(3).origin).toMatchObject({
      type: 'step',
      inputs: [{ si: 291.15 }, { si: 3 }, { si: 0.7 }, { si: 1.4 }],
    });
  });

  it('names the first impossible row and counts them, or counts them as missing when told to', () => {
    const bad = column('ratio', [2, 0.5, 3, 0.4, NaN], '1');
    expect(refusal(() => outletTemperature.columns({ ...typical, pressureRatio: bad })).message).toBe(
      "outlet temperature: pressureRatio must be between 1 and 8, got 0.5 in row 1 (and 1 more of 5 rows). To carry on and count such rows as missing: { badRows: 'missing' }.",
    );
    const hot = outletTemperature.columns({ ...typical, pressureRatio: bad }, { badRows: 'missing' });
    expect([hot.missing, hot.refused]).toEqual([3, 2]);
  });

  it('notes how many rows lie outside the trusted range', () => {
    const hot = outletTemperature.columns({ ...typical, pressureRatio: column('ratio', [2, 5, 6], '1') });
    expect(hot.notes[0]).toMatchObject({ rows: 2, input: 'PR' });
    expect(() =>
      outletTemperature.columns({ ...typical, pressureRatio: column('ratio', [2, 5], '1') }, { strict: true }),
    ).toThrow(CalculationError);
  });

  it('refuses columns of unequal length, of another kind, and none at all', () => {
    expect(
      refusal(() =>
        outletTemperature.columns({
          ...typical,
          pressureRatio: ratios,
          isentropicEfficiency: column('ratio', [0.7], '1'),
        }),
      ).code,
    ).toBe('length');
    expect(
      refusal(() => outletTemperature.columns({ ...typical, pressureRatio: column('mass flow', [1], 'kg/s') as never }))
        .code,
    ).toBe('kind');
    expect(refusal(() => outletTemperature.columns(typical)).message).toContain('Call it without .columns.');
    expect(refusal(() => outletTemperature({ ...typical, pressureRatio: ratios as never })).code).toBe('kind');
  });

  it('agrees with single calls for any possible rows', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 1, max: 8, noNaN: true }), { minLength: 1, maxLength: 20 }), (values) => {
        const over = outletTemperature.columns({ ...typical, pressureRatio: column('ratio', values, '1') });
        expect(Array.from(over.si)).toEqual(
          values.map((value) => outletTemperature({ ...typical, pressureRatio: ratio(value) }).si),
        );
      }),
    );
  });
});

describe('the definition of a calculation', () => {
  it('travels with it as data', () => {
    expect(outletTemperature.spec).toMatchObject({
      name: 'outlet temperature',
      formula: 'T1 * (1 + (PR^((k - 1) / k) - 1) / eta)',
    });
    expect(outletTemperature.spec.inputs[1]).toEqual({
      name: 'pressureRatio',
      symbol: 'PR',
      kind: 'ratio',
      min: 1,
      max: 8,
      trusted: [1, 4],
      typical: 2,
    });
    expect(outletTemperature.kernel(291.15, 2, 0.7, 1.4)).toBe(outletTemperature(typical).si);
  });
});

describe('a call as plain JavaScript gets it wrong', () => {
  const loosely = (value: unknown): never => value as never;

  it('does not take null for an input that was left out', () => {
    expect(() => outletTemperature({ ...typical, heatCapacityRatio: loosely(null) })).toThrow(
      'heatCapacityRatio must be a ratio, got nothing',
    );
    expect(outletTemperature({ ...typical, heatCapacityRatio: undefined }).si).toBe(outletTemperature(typical).si);
  });

  it('tells who gives inputs one after another to give them by name', () => {
    expect(() => outletTemperature(loosely(temperature(18, '°C')))).toThrow(
      'outlet temperature: inputs must be one object with the inputs by name, got a temperature (18 °C). Write { inletTemperature, pressureRatio, isentropicEfficiency }.',
    );
    expect(() => outletTemperature(loosely('x'))).toThrow('one object with the inputs by name');
    expect(() => outletTemperature(loosely([1, 2]))).toThrow('one object with the inputs by name');
  });

  it('refuses an option that it does not have', () => {
    expect(() => outletTemperature(typical, loosely({ strikt: true }))).toThrow(
      'strikt must be one of strict, got a value of type boolean. Did you mean strict?',
    );
    const ratios = column('ratio', [2, 0.5], '1');
    expect(() =>
      outletTemperature.columns({ ...typical, pressureRatio: ratios }, loosely({ badRows: 'skip' })),
    ).toThrow(`badRows must be 'missing' or left out, got the text "skip".`);
  });
});

describe('types', () => {
  it('hold kinds apart when compiled', () => {
    // @ts-expect-error a mass flow is not a ratio
    expect(() => outletTemperature({ ...typical, pressureRatio: massFlow(1, 'kg/s') })).toThrow(CalculationError);
    const hot: Quantity<'temperature'> = outletTemperature(typical);
    expect(hot.kind).toBe('temperature');
  });
});
