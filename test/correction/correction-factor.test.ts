import { describe, expect, it } from 'vitest';
import {
  correctedPower,
  correctedTorque,
  correctionFactor,
  correctionFactorIso1585,
  correctionFactorSaeJ1349,
  correctionStandards,
  standardOfTradeName,
  type CorrectionRequest,
  type CorrectionStandard,
} from '../../src/correction/index.js';
import { CalculationError } from '../../src/calculation/index.js';
import {
  absolutePressure,
  density,
  power,
  ratio,
  relativeHumidity,
  temperature,
  torque,
} from '../../src/units/index.js';

const humid = {
  pressure: absolutePressure(980, 'hPa'),
  temperature: temperature(30, '°C'),
  relativeHumidity: relativeHumidity(50, '%'),
};
const dry = { dryPressure: absolutePressure(95876.985, 'Pa'), temperature: temperature(30, '°C') };
const powers = { observedPower: power(170, 'kW'), frictionPower: power(30, 'kW') };
const diesel = { charging: 'unboosted or mechanically charged', correctedFuelDelivery: density(40, 'mg/L') };
const standards = Object.keys(correctionStandards) as Exclude<CorrectionStandard, 'none'>[];

const request = (standard: CorrectionStandard, further: object = {}): CorrectionRequest =>
  ({
    standard,
    room: humid,
    boost: 'unboosted',
    ...(standard === 'SAE J1349 (2004), measured friction' ? powers : {}),
    ...(standard.endsWith('compression ignition') ? diesel : {}),
    ...further,
  }) as CorrectionRequest;

describe('correctionFactor', () => {
  // Formulas of the standards evaluated with mpmath, 50 digits, for 980 hPa, 30 °C, 50 % (saturation pressure by Hyland and Wexler).
  it.each([
    ['SAE J1349 (2004)', 1.048465],
    ['SAE J1349 (1990), abbreviated', 1.04861],
    ['SAE J607', 1.082938],
    ['SAE J816', 1.025224],
    ['ISO 1585', 1.049636],
    ['UN R85', 1.049636],
    ['JIS D 1001 (1993)', 1.049636],
    ['DIN 70020', 1.051156],
    ['none', 1],
  ] as const)('takes the room to %s', (standard, value) => {
    expect(correctionFactor(request(standard)).si).toBeCloseTo(value, 5);
  });

  it('gives the same from dry pressure as from barometer and humidity', () => {
    for (const standard of standards) {
      if (standard === 'DIN 70020') continue;
      expect(correctionFactor(request(standard, { room: dry })).si).toBeCloseTo(
        correctionFactor(request(standard)).si,
        7,
      );
    }
  });

  it('counts humidity: 80 % at 35 °C and 100 kPa is over 5 % of ISO power, and nothing to DIN', () => {
    const air = { pressure: absolutePressure(100, 'kPa'), temperature: temperature(35, '°C') };
    const damp = { ...air, relativeHumidity: relativeHumidity(80, '%') };
    const bone = { ...air, relativeHumidity: relativeHumidity(0, '%') };
    const change = (standard: 'ISO 1585' | 'DIN 70020') =>
      correctionFactor({ standard, room: damp, boost: 'unboosted' }).si /
      correctionFactor({ standard, room: bone, boost: 'unboosted' }).si;
    expect(change('ISO 1585')).toBeCloseTo(1.0568, 4);
    expect(change('DIN 70020')).toBe(1);
  });

  it('takes the temperature at the engine inlet where it is another than the room', () => {
    const factor = correctionFactor({
      standard: 'ISO 1585',
      room: dry,
      boost: 'unboosted',
      inletTemperature: temperature(35, '°C'),
    });
    expect(factor.si).toBe(
      correctionFactorIso1585({ dryPressure: dry.dryPressure, inletTemperature: temperature(35, '°C') }).si,
    );
  });

  it('takes another mechanical efficiency where one is known', () => {
    const factor = correctionFactor({
      standard: 'SAE J1349 (2004)',
      room: dry,
      boost: 'unboosted',
      mechanicalEfficiency: ratio(0.9),
    });
    const { dryPressure, temperature: inletTemperature } = dry;
    expect(factor.si).toBe(
      correctionFactorSaeJ1349({ dryPressure, inletTemperature, mechanicalEfficiency: ratio(0.9) }).si,
    );
  });

  it.each(standards)('names the standard, its revision and what it rests on: %s', (standard) => {
    const { notes } = correctionFactor(request(standard));
    const { title, revision, restsOn } = correctionStandards[standard];
    expect(notes.find(({ code }) => code === 'standard')?.message).toBe(`${title} (${revision}). ${restsOn}`);
    expect(restsOn).toMatch(/not read/);
  });

  it.each(standards)('warns of boost in the name of the standard, and not for an unboosted engine: %s', (standard) => {
    const boostNote = (boost: string) =>
      correctionFactor(request(standard, { boost })).notes.find(({ code }) => code === 'boost control')?.message;
    expect(boostNote('unboosted')).toBeUndefined();
    expect(boostNote('absolute closed loop')).toContain(`${standard} corrects it a second time`);
    if (standard.endsWith('compression ignition')) expect(boostNote('gauge spring')).not.toContain('less than');
    else expect(boostNote('gauge spring')).toContain(`less than ${standard} takes`);
    expect(boostNote('unknown')).toContain(`the factor of ${standard} may overstate`);
  });

  it('leaves power as observed when asked, says so, and asks nothing of the room', () => {
    const factor = correctionFactor({ standard: 'none' });
    expect(factor.notes.map(({ message }) => message)).toEqual([
      'Power is as observed: no correction to a standard atmosphere.',
    ]);
    const corrected = correctedPower({ observedPower: power(165, 'kW'), correctionFactor: factor });
    expect(corrected.in('kW')).toBe(165);
    expect(corrected.notes).toEqual(factor.notes);
  });

  it('tells its notes to every figure corrected with it', () => {
    const factor = correctionFactor(request('SAE J607', { boost: 'gauge spring' }));
    const figure = correctedTorque({ observedTorque: torque(300, 'N·m'), correctionFactor: factor });
    expect(figure.notes.map(({ code }) => code)).toEqual(['standard', 'boost control']);
    expect(figure.in('N·m')).toBeCloseTo(324.88, 2);
  });
});

describe('correctionFactor, given something wrong', () => {
  const problemsOf = (wrong: unknown) => {
    try {
      correctionFactor(wrong as CorrectionRequest);
    } catch (error) {
      if (error instanceof CalculationError) return error.problems;
      throw error;
    }
    return [];
  };

  it('tells the standard that people mean by STD and SAE', () => {
    expect(problemsOf({ standard: 'STD', room: humid, boost: 'unboosted' })[0]).toMatchObject({
      code: 'kind',
      input: 'standard',
      got: 'the text "STD"',
      mend: "People mean 'SAE J607' by that.",
    });
    expect(standardOfTradeName('JIS')).toBe('JIS D 1001 (1993)');
    expect(standardOfTradeName('sae')).toBe('SAE J1349 (2004)');
    expect(standardOfTradeName('uncorrected')).toBe('none');
    expect(standardOfTradeName('constructor')).toBeUndefined();
    expect(problemsOf({ standard: 'constructor' })[0]).toMatchObject({ code: 'kind', input: 'standard' });
  });

  it('never takes a boost control or a room for granted, and says both at once', () => {
    const problems = problemsOf({ standard: 'ISO 1585' });
    expect(problems.map(({ code, input }) => [code, input])).toEqual([
      ['missing', 'boost'],
      ['missing', 'room'],
    ]);
    expect(problemsOf({ standard: 'ISO 1585', room: humid, boost: 'wastegate' })[0]).toMatchObject({
      code: 'kind',
      input: 'boost',
    });
    expect(problemsOf(undefined)[0]).toMatchObject({ code: 'missing', input: 'standard' });
  });

  it('does not ignore an input that the standard has no use for', () => {
    const wrong = { standard: 'ISO 1585', room: humid, boost: 'unboosted', mechanicalEfficiency: ratio(0.9) };
    expect(problemsOf(wrong)[0]).toMatchObject({ code: 'unknown', input: 'mechanicalEfficiency' });
    const refused = () =>
      correctionFactor({
        standard: 'ISO 1585',
        room: dry,
        boost: 'unboosted',
        // @ts-expect-error ISO 1585 has no friction term
        mechanicalEfficiency: ratio(0.9),
      });
    expect(refused).toThrow(/mechanicalEfficiency must be one of standard, boost, room, inletTemperature for ISO 1585/);
  });

  it('does not take dry pressure for the barometer of DIN 70020, or two pressures for one room', () => {
    // @ts-expect-error DIN 70020 takes the total pressure
    expect(() => correctionFactor({ standard: 'DIN 70020', room: dry, boost: 'unboosted' })).toThrow(
      /total barometer, got its dry pressure/,
    );
    expect(problemsOf({ standard: 'ISO 1585', room: { ...dry, ...humid }, boost: 'unboosted' })[0]).toMatchObject({
      input: 'room',
    });
    expect(problemsOf({ standard: 'ISO 1585', room: humid.pressure.si, boost: 'unboosted' })[0]).toMatchObject({
      input: 'room',
      got: 'the bare number 98000',
    });
  });

  it('asks for what is missing in the room', () => {
    const { pressure, temperature: roomTemperature } = humid;
    const room = { pressure, temperature: roomTemperature };
    // @ts-expect-error humidity enters
    expect(() => correctionFactor({ standard: 'ISO 1585', room, boost: 'unboosted' })).toThrow(
      /relativeHumidity must be a relative humidity, got nothing/,
    );
  });
});
