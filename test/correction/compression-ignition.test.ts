import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  atmosphericFactors,
  correctedFuelDelivery,
  correctionFactor,
  correctionFactorCompressionIgnition,
  engineFactor,
  engineFactorIso1585,
  engineFactorUnR85,
  fuelDelivery,
  type CorrectionRequest,
} from '../../src/correction/index.js';
import { CalculationError } from '../../src/calculation/index.js';
import {
  absolutePressure,
  density,
  massFlow,
  ratio,
  relativeHumidity,
  rotationalSpeed,
  temperature,
  volume,
} from '../../src/units/index.js';

// The room of most check values: 980 hPa, 30 °C, 50 %, in the printed 303 K against 298 K.
const printed = {
  dryPressure: absolutePressure(95876.985, 'Pa'),
  inletTemperature: temperature(303, 'K'),
  referenceTemperature: temperature(298, 'K'),
};
const room = {
  pressure: absolutePressure(980, 'hPa'),
  temperature: temperature(30, '°C'),
  relativeHumidity: relativeHumidity(50, '%'),
};
const delivery = correctedFuelDelivery({
  fuelDelivery: fuelDelivery({
    fuelMassFlow: massFlow(8, 'g/s'),
    sweptVolume: volume(2, 'L'),
    engineSpeed: rotationalSpeed(4000, 'rpm'),
  }),
  boostPressureRatio: ratio(2.2),
});

describe('the factor for compression ignition', () => {
  // fa^fm with 8 g/s, 2 L, 4000/min, r 2.2, evaluated with mpmath, 50 digits.
  it.each([
    ['UN R85', 'unboosted or mechanically charged', 1.03665],
    ['UN R85', 'turbocharged', 1.03981],
    ['ISO 1585', 'unboosted or mechanically charged', 1.03665],
    ['ISO 1585', 'turbocharged', 1.035543],
    ['ISO 1585', 'turbocharged, charge cooled by engine coolant', 1.028472],
  ] as const)('by %s, %s', (family, engine, value) => {
    const classes: Record<string, (typeof atmosphericFactors)['UN R85']['turbocharged']> = atmosphericFactors[family];
    const factor = correctionFactorCompressionIgnition({
      atmosphericFactor: classes[engine]!(printed),
      engineFactor: engineFactor[family]({ correctedFuelDelivery: delivery }),
    });
    expect(factor.si).toBeCloseTo(value, 6);
    expect(factor.notes).toEqual([]);
  });

  it('is 1 in the reference atmosphere, however hard the engine is worked', () => {
    for (const classes of Object.values(atmosphericFactors)) {
      for (const atmospheric of Object.values(classes)) {
        const atmosphericFactor = atmospheric({
          dryPressure: absolutePressure(99, 'kPa'),
          inletTemperature: temperature(25, '°C'),
        });
        for (const fm of [0.2, 1.2])
          expect(correctionFactorCompressionIgnition({ atmosphericFactor, engineFactor: ratio(fm) }).si).toBe(1);
      }
    }
  });

  it('takes the engine factor as an exponent, not as the multiplier of an old misprint', () => {
    const fa = ratio(1.05);
    const factor = correctionFactorCompressionIgnition({ atmosphericFactor: fa, engineFactor: ratio(0.3) });
    expect(factor.si).toBeCloseTo(1.0147, 4);
    expect(factor.si).not.toBeCloseTo(1.05 * 0.3, 1);
  });

  it('says so outside 0.9 to 1.1', () => {
    const far = correctionFactorCompressionIgnition({ atmosphericFactor: ratio(1.2), engineFactor: ratio(1.2) });
    expect(far.notes.map(({ code }) => code)).toEqual(['rule']);
    expect(far.notes[0]!.message).toMatch(/between 0.9 and 1.1/);
  });
});

describe('the two engine factors', () => {
  it('are one line between 40 and 65 mg/L, and differ below', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0401, max: 0.2, noNaN: true }), (qc) => {
        expect(engineFactorIso1585.kernel(qc)).toBe(engineFactorUnR85.kernel(qc));
      }),
    );
    expect(engineFactorUnR85.kernel(0.03)).toBe(0.3);
    expect(engineFactorIso1585.kernel(0.03)).toBe(0.2);
  });

  it('have no jump but the 0.0008 that the printed 37.2 leaves', () => {
    const step = (factor: typeof engineFactorUnR85, at: number) =>
      Math.abs(factor.kernel(at * (1 + 1e-9)) - factor.kernel(at * (1 - 1e-9)));
    for (const factor of [engineFactorUnR85, engineFactorIso1585]) expect(step(factor, 0.065)).toBeLessThan(1e-6);
    expect(step(engineFactorUnR85, 0.04)).toBeLessThan(1e-6);
    expect(step(engineFactorIso1585, 0.0372)).toBeCloseTo(0.0008, 6);
  });

  it('refuse a fuel delivery in mg/L written as kg/m³', () => {
    expect(() => engineFactorUnR85({ correctedFuelDelivery: density(54.5, 'kg/m³') })).toThrow(
      /correctedFuelDelivery must be within 2 mg\/L to 400 mg\/L|correctedFuelDelivery must be/,
    );
  });
});

describe('correctionFactor for compression ignition', () => {
  const request = (further: object): CorrectionRequest =>
    ({
      standard: 'UN R85, compression ignition',
      room,
      boost: 'gauge spring',
      charging: 'turbocharged',
      correctedFuelDelivery: delivery,
      ...further,
    }) as CorrectionRequest;
  const problemsOf = (further: object) => {
    try {
      correctionFactor(request(further));
    } catch (error) {
      if (error instanceof CalculationError) return error.problems;
      throw error;
    }
    return [];
  };

  // The values above with 303.15 K over 298.15 K, the pair that makes 25 °C exactly 1.
  it.each([
    ['UN R85, compression ignition', 'turbocharged', 1.0398],
    ['ISO 1585, compression ignition', 'turbocharged', 1.03553],
    ['ISO 1585, compression ignition', 'turbocharged, charge cooled by engine coolant', 1.02847],
    ['JIS D 1001 (1993), compression ignition', 'turbocharged', 1.03553],
  ] as const)('takes limits and exponents from one text: %s, %s', (standard, charging, value) => {
    expect(correctionFactor(request({ standard, charging })).si).toBeCloseTo(value, 4);
  });

  it('uses the limits of the text it is asked for', () => {
    const easy = { correctedFuelDelivery: density(30, 'mg/L') };
    const un = correctionFactor(request(easy)).si;
    const iso = correctionFactor(request({ ...easy, standard: 'ISO 1585, compression ignition' })).si;
    expect(Math.log(un)).toBeCloseTo(0.3 * (0.7 * Math.log(99 / 95.876985) + 1.5 * Math.log(303.15 / 298.15)), 6);
    expect(Math.log(iso)).toBeCloseTo(0.2 * (0.7 * Math.log(99 / 95.876985) + 1.2 * Math.log(303.15 / 298.15)), 6);
  });

  it('says that the sources disagree, and what is not known of the Japanese standard', () => {
    const messages = (further: object) =>
      correctionFactor(request(further))
        .notes.map(({ message }) => message)
        .join(' ');
    expect(messages({})).toMatch(/exponents from memory.*Sources disagree on limits and exponents/);
    expect(messages({})).not.toMatch(/overstates/);
    expect(messages({ boost: 'absolute closed loop' })).toMatch(/corrects it a second time/);
    const jis = messages({ standard: 'JIS D 1001 (1993), compression ignition' });
    expect(jis).toMatch(/First page read.*Editions before 1993.*not offered/);
  });

  it('needs the class of the engine, knows its names, and sees a turbocharger without boost', () => {
    expect(problemsOf({ charging: undefined })[0]).toMatchObject({ code: 'missing', input: 'charging' });
    expect(problemsOf({ charging: 'turbocharged, charge cooled by engine coolant' })[0]).toMatchObject({
      code: 'kind',
      input: 'charging',
      need: "one of 'unboosted or mechanically charged', 'turbocharged'",
    });
    expect(problemsOf({ boost: 'unboosted' })[0]).toMatchObject({ code: 'rule', input: 'boost' });
    expect(problemsOf({ standard: 'ISO 1585' })[0]).toMatchObject({ code: 'unknown', input: 'charging' });
    expect(problemsOf({ charging: 'constructor' })[0]).toMatchObject({ code: 'kind', input: 'charging' });
  });
});
