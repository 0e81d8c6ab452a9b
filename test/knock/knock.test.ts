import fc from 'fast-check';
import { inspect } from 'node:util';
import { describe, expect, it } from 'vitest';
import { CalculationError, measured, uncertainty } from '../../src/calculation/index.js';
import {
  activationTemperatureOfDelay,
  autoignitionDelay,
  chargeTemperatureMargin,
  compareKnockMargins,
  endGasKnockIntegral,
  knockIntegral,
  knockIntegralRatio,
  octaneIndex,
  octaneRequirementChange,
  octaneRequirementChangeFromHumidity,
  octaneRequirementChangeFromIntegrals,
  unburnedTemperature,
  type KnockComparisonRequest,
} from '../../src/knock/index.js';
import * as knock from '../../src/knock/index.js';
import {
  absolutePressure,
  humidityRatio,
  octaneNumber,
  ratio,
  scale,
  temperature,
  temperatureDifference,
  time,
  type Quantity,
} from '../../src/units/index.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const codes = ({ notes }: Quantity) => notes.map(({ code }) => code);
const state = (kilopascal: number, celsius: number) => ({
  pressure: absolutePressure(kilopascal, 'kPa'),
  temperature: temperature(celsius, '°C'),
});

describe('the delay of Douaud and Eyzat', () => {
  // Heywood's equation 9.45 from memory, evaluated with mpmath, 50 digits.
  it('counts pressure in atmospheres: 40 bar taken for 40 atm would be 2.2 % short', () => {
    const at = (pressure: Quantity<'absolute pressure'>) =>
      autoignitionDelay({ octaneNumber: octaneNumber(95), pressure, temperature: temperature(850, 'K') }).in('ms');
    expect(at(absolutePressure(40, 'atm'))).toBeCloseTo(2.453284, 6);
    expect(at(absolutePressure(40, 'bar'))).toBeCloseTo(2.509, 3);
    expect(1 - at(absolutePressure(40, 'atm')) / at(absolutePressure(40, 'bar'))).toBeCloseTo(0.022, 3);
  });

  it('says so outside 80 to 100 octane, where alcohols are', () => {
    const alcohol = autoignitionDelay({
      octaneNumber: octaneNumber(108),
      pressure: absolutePressure(40, 'atm'),
      temperature: temperature(850, 'K'),
    });
    expect(codes(alcohol)).toEqual(['caution', 'scatter', 'outside trusted range']);
  });
});

describe('the knock integral', () => {
  const delay = (atm: number, kelvin: number) =>
    autoignitionDelay({
      octaneNumber: octaneNumber(95),
      pressure: absolutePressure(atm, 'atm'),
      temperature: temperature(kelvin, 'K'),
    });

  // Livengood and Wu 1955 with the delays above, evaluated with mpmath, 50 digits.
  it('is the sum of every stay over its delay', () => {
    expect(knockIntegral({ durations: [time(5, 'ms')], delays: [delay(40, 850)] }).si).toBeCloseTo(2.038085, 6);
    const two = knockIntegral({
      durations: [time(3, 'ms'), time(2, 'ms')],
      delays: [delay(30, 800), delay(40, 850)],
    });
    expect(two.si).toBeCloseTo(1.382296, 6);
  });

  it('is 1 after exactly one delay, however it is cut', () => {
    const whole = delay(40, 850);
    const parts = [0.2, 0.3, 0.5].map((share) => scale(whole, ratio(share)));
    const cut = knockIntegral({ durations: parts, delays: parts.map(() => whole) });
    expect(cut.si).toBeCloseTo(1, 12);
  });

  it('along a trace is what delays and unburned temperatures give piece by piece', () => {
    const chargePressure = absolutePressure(204, 'kPa');
    const chargeTemperature = temperature(45, '°C');
    const pressureRatios = [15, 25, 38];
    const durations = pressureRatios.map(() => time(0.5, 'ms'));
    const delays = pressureRatios.map((times) => {
      const pressure = scale(chargePressure, ratio(times));
      return autoignitionDelay({
        octaneNumber: octaneNumber(95),
        pressure,
        temperature: unburnedTemperature({ chargeTemperature, chargePressure, cylinderPressure: pressure }),
      });
    });
    const apart = knockIntegral({ durations, delays });
    const together = endGasKnockIntegral({
      octaneNumber: octaneNumber(95),
      chargePressure,
      chargeTemperature,
      durations,
      pressureRatios: pressureRatios.map((times) => ratio(times)),
    });
    expect(together.si).toBeCloseTo(apart.si, 12);
  });

  it('refuses lists of different length', () => {
    expect(() => knockIntegral({ durations: [time(1, 'ms')], delays: [] })).toThrow(/lists of one length/);
  });
});

describe('the unburned mixture', () => {
  it('feels 10 K of charge temperature as about 25 K at 40 times the pressure', () => {
    const at = (kelvin: number, k: number) => unburnedTemperature.kernel(kelvin, 2e5, 80e5, k);
    for (const k of [1.32, 1.35]) {
      expect(at(350, k) - at(340, k)).toBeGreaterThan(24);
      expect(at(350, k) - at(340, k)).toBeLessThan(27);
    }
    expect(at(340, 1.35)).toBeCloseTo(884.765, 3);
    expect(at(340, 1.32)).toBeCloseTo(831.49, 2);
  });
});

describe('the octane index', () => {
  it('is the research number for a weighting of 0, the motor number for 1, and beyond RON below 0', () => {
    const index = (K: number) =>
      octaneIndex({
        researchOctaneNumber: octaneNumber(98),
        motorOctaneNumber: octaneNumber(87),
        weighting: ratio(K),
      }).si;
    expect([index(0), index(1), index(-0.5)]).toEqual([98, 87, 103.5]);
  });

  it('says so where the two ratings are the wrong way round', () => {
    const swapped = octaneIndex({
      researchOctaneNumber: octaneNumber(87),
      motorOctaneNumber: octaneNumber(98),
      weighting: ratio(0),
    });
    expect(codes(swapped)).toContain('rule');
  });
});

describe('the margin between two charge states', () => {
  const args = fc.tuple(
    between(120e3, 300e3),
    between(290, 380),
    between(120e3, 300e3),
    between(290, 380),
    between(25, 55),
    between(1.3, 1.35),
  );

  it('is none between a state and itself, and turns its sign when before and after change places', () => {
    fc.assert(
      fc.property(args, ([p1, T1, p2, T2, r, k]) => {
        const octane = (...s: [number, number, number, number]) =>
          octaneRequirementChange.kernel(95, ...s, r, k, 1.7, 3800, 3.402);
        expect(octane(p1, T1, p1, T1)).toBe(0);
        expect(chargeTemperatureMargin.kernel(p1, T1, p1, T1, r, k, 1.7, 3800)).toBeCloseTo(0, 10);
        expect(Math.sign(octane(p1, T1, p2, T2))).toBe(-Math.sign(octane(p2, T2, p1, T1)));
        const there = knockIntegralRatio.kernel(p1, T1, p2, T2, r, k, 1.7, 3800);
        expect(there * knockIntegralRatio.kernel(p2, T2, p1, T1, r, k, 1.7, 3800)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('says one thing in three ways: integral, octane numbers and kelvin agree', () => {
    fc.assert(
      fc.property(args, ([p1, T1, p2, T2, r, k]) => {
        const margin = chargeTemperatureMargin.kernel(p1, T1, p2, T2, r, k, 1.7, 3800);
        // With the charge that much warmer it is as near to knock as before.
        expect(knockIntegralRatio.kernel(p1, T1, p2, T2 + margin, r, k, 1.7, 3800)).toBeCloseTo(1, 9);
        // On a fuel worse by that much it is as near to knock as before.
        const octane = 95 + octaneRequirementChange.kernel(95, p1, T1, p2, T2, r, k, 1.7, 3800, 3.402);
        const [before, after] = [
          autoignitionDelay.kernel(95, p1 * r, T1 * r ** ((k - 1) / k)),
          autoignitionDelay.kernel(octane, p2 * r, T2 * r ** ((k - 1) / k)),
        ];
        expect(after / before).toBeCloseTo(1, 9);
      }),
    );
  });

  it('grows with colder charge and shrinks with boost, whatever the correlation is given', () => {
    fc.assert(
      fc.property(args, ([p, T, , , r, k]) => {
        const octane = (p2: number, T2: number) =>
          octaneRequirementChange.kernel(95, p, T, p2, T2, r, k, 1.7, 3800, 3.402);
        expect(octane(p, T - 10)).toBeLessThan(0);
        expect(octane(p * 1.05, T)).toBeGreaterThan(0);
      }),
    );
  });

  it('at one pressure is the difference of the charge temperatures, without any scatter of the correlation', () => {
    const { chargeTemperatureMargin: margin, temperatureScatter } = compareKnockMargins({
      octaneNumber: octaneNumber(98),
      before: state(204, 60),
      after: state(204, 45),
    });
    expect(margin.in('K')).toBeCloseTo(15, 10);
    expect(temperatureScatter.in('K')).toBeCloseTo(0, 9);
  });

  it('from the integrals of one trace is near that of one end-gas state', () => {
    const integral = (kelvin: number) =>
      endGasKnockIntegral({
        octaneNumber: octaneNumber(95),
        chargePressure: absolutePressure(204, 'kPa'),
        chargeTemperature: temperature(kelvin, 'K'),
        durations: [10, 20, 30, 40].map(() => time(0.3, 'ms')),
        pressureRatios: [10, 20, 30, 40].map((times) => ratio(times)),
      });
    const byTrace = octaneRequirementChangeFromIntegrals({
      octaneNumber: octaneNumber(95),
      integralBefore: integral(333.15),
      integralAfter: integral(318.15),
    });
    const byState = octaneRequirementChange.kernel(95, 1, 333.15, 1, 318.15, 34, 1.325, 1.7, 3800, 3.402);
    expect(byTrace.si).toBeCloseTo(byState, 0);
  });

  it('falls 0.25 to 0.35 octane numbers for each gram of vapour in a kilogram of dry air (common practice)', () => {
    const change = octaneRequirementChangeFromHumidity({
      humidityRatioBefore: humidityRatio(6, 'g/kg'),
      humidityRatioAfter: humidityRatio(7, 'g/kg'),
    });
    const half = uncertainty(change).standard.si * Math.sqrt(3);
    expect(change.si - half).toBeCloseTo(-0.35, 10);
    expect(change.si + half).toBeCloseTo(-0.25, 10);
  });
});

describe('compareKnockMargins', () => {
  const colder = { octaneNumber: octaneNumber(98), before: state(204, 60), after: state(204, 45) };

  it('gives the difference in octane numbers with a scatter that the temperature exponent dominates', () => {
    const { octaneRequirementChange: change, octaneScatter } = compareKnockMargins(colder);
    expect(change.si).toBeCloseTo(-6.07, 2);
    expect(octaneScatter.si / Math.abs(change.si)).toBeGreaterThan(0.25);
    expect(uncertainty(change).contributions[0]!.input).toBe(activationTemperatureOfDelay);
  });

  it('counts humidity where both states have it', () => {
    const dry = compareKnockMargins(colder).octaneRequirementChange.si;
    const damp = compareKnockMargins({
      ...colder,
      before: { ...colder.before, humidityRatio: humidityRatio(6, 'g/kg') },
      after: { ...colder.after, humidityRatio: humidityRatio(10, 'g/kg') },
    });
    expect(damp.octaneRequirementChange.si - dry).toBeCloseTo(-1.2, 9);
    const half = compareKnockMargins({
      ...colder,
      after: { ...colder.after, humidityRatio: humidityRatio(10, 'g/kg') },
    });
    expect(half.octaneRequirementChange.si).toBe(dry);
  });

  it('says that it is not counted where only one state has it', () => {
    const vapour = { humidityRatio: humidityRatio(10, 'g/kg') };
    for (const [name, states] of [
      ['before', { before: { ...colder.before, ...vapour } }],
      ['after', { after: { ...colder.after, ...vapour } }],
    ] as const) {
      const comparison = compareKnockMargins({ ...colder, ...states });
      const words = `Humidity was given for the charge ${name} only, so it is not counted: give it for both states.`;
      expect(comparison.octaneRequirementChange.notes.map(({ message }) => message)).toContain(words);
      expect(comparison.cautions).toContain(words);
      expect(String(comparison)).toContain(words);
      expect(JSON.stringify(comparison)).toContain(words);
    }
    expect(String(compareKnockMargins(colder))).not.toContain('Humidity');
  });

  it('says at one pressure that no uncertainty of the correlation can be in the kelvin, and only there', () => {
    const words = /15\.0 K warmer \(0\.0 by definition, see below\)/;
    expect(String(compareKnockMargins(colder))).toMatch(words);
    expect(String(compareKnockMargins(colder))).toMatch(/says nothing of how right the correlation is/);
    const boosted = compareKnockMargins({ ...colder, after: state(230, 45) });
    expect(String(boosted)).not.toMatch(/by definition/);
  });

  it('refuses a misspelt name in a state, but takes a state that knows more than it asks for', () => {
    const before = { ...colder.before, humidity: humidityRatio(6, 'g/kg') };
    expect(() => compareKnockMargins({ ...colder, before } as never)).toThrow(
      'before.humidity must be one of pressure, temperature, humidityRatio, got a humidity ratio (6 g/kg). Did you mean humidityRatio?',
    );
    class Station {
      readonly flow = 1;
      readonly pressure = colder.before.pressure;
      readonly temperature = colder.before.temperature;
    }
    const known = compareKnockMargins({ ...colder, before: new Station() });
    expect(known.octaneRequirementChange.si).toBe(compareKnockMargins(colder).octaneRequirementChange.si);
  });

  it('adds what was measured to its scatter', () => {
    const probe = measured('charge probe', temperature(45, '°C'), {
      standardUncertainty: temperatureDifference(2, 'K'),
    });
    const { temperatureScatter } = compareKnockMargins({ ...colder, after: { ...colder.after, temperature: probe } });
    expect(temperatureScatter.in('K')).toBeCloseTo(2, 9);
  });

  it('takes back with boost what colder charge gave', () => {
    const boosted = compareKnockMargins({ ...colder, after: state(230, 45) });
    expect(boosted.chargeTemperatureMargin.si).toBeLessThan(15);
    expect(boosted.octaneRequirementChange.si).toBeGreaterThan(compareKnockMargins(colder).octaneRequirementChange.si);
    expect(boosted.temperatureScatter.si).toBeGreaterThan(0);
  });

  it('shows the cautions wherever it is shown', () => {
    const comparison = compareKnockMargins(colder);
    for (const text of [String(comparison), inspect(comparison), JSON.stringify(comparison)]) {
      expect(text).toMatch(/never a licence to run/);
      expect(text).toMatch(/no two-stage ignition, alcohols outside the fit/);
    }
    expect(String(comparison).split('\n')[0]).toMatch(
      /^Asks for 6\.1 octane numbers less \(standard uncertainty \d\.\d\);$/,
    );
    const worse = compareKnockMargins({ ...colder, before: colder.after, after: colder.before });
    expect(String(worse)).toMatch(/octane numbers more.*\n.*15\.0 K colder/);
  });

  it('names what is missing, misspelt or no charge state', () => {
    const problemsOf = (request: unknown) => {
      try {
        compareKnockMargins(request as KnockComparisonRequest);
      } catch (error) {
        if (error instanceof CalculationError) return error.problems.map(({ code, input }) => [code, input]);
        throw error;
      }
      return [];
    };
    expect(problemsOf(undefined)).toEqual([
      ['missing', 'before'],
      ['missing', 'after'],
      ['missing', 'octaneNumber'],
    ]);
    expect(problemsOf({ ...colder, after: { temperature: colder.after.temperature } })).toEqual([['kind', 'after']]);
    expect(problemsOf({ ...colder, engineSpeed: 1 })).toEqual([['unknown', 'engineSpeed']]);
    expect(() => compareKnockMargins({ ...colder, octaneNumber: ratio(98) as never })).toThrow(
      /octaneNumber must be an octane number/,
    );
  });
});

describe('every result of this topic', () => {
  it('carries the caution and the limits of the fit, however good its inputs', () => {
    const calculations = Object.values(knock).filter((value) => typeof value === 'function' && 'spec' in value);
    expect(calculations.length).toBeGreaterThanOrEqual(9);
    for (const { spec } of calculations as unknown as (typeof autoignitionDelay)[])
      expect(
        spec.notes?.map(({ code }) => code),
        spec.name,
      ).toEqual(['caution', 'scatter']);
    const comparison = compareKnockMargins({
      octaneNumber: octaneNumber(95),
      before: state(204, 60),
      after: state(204, 45),
    });
    for (const result of [
      comparison.octaneRequirementChange,
      comparison.chargeTemperatureMargin,
      comparison.integralRatio,
    ])
      expect(codes(result)).toEqual(['caution', 'scatter']);
  });
});
