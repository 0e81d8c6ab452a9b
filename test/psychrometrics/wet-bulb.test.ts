import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  humidityRatioFromVapourPressure,
  humidityRatioFromWetBulb,
  humidityRatioFromWetBulbOverIce,
  humidityRatioFromWetBulbOverWater,
  relativeHumidityFromVapourPressure,
  vapourPressureFromPsychrometerOverIce,
  vapourPressureFromPsychrometerOverWater,
  vapourPressureFromRelativeHumidity,
  wetBulb,
  wetBulbOverIce,
  wetBulbOverWater,
} from '../../src/psychrometrics/index.js';
import { absolutePressure, humidityRatio, temperature } from '../../src/units/index.js';
import { place, states, type State } from './support.js';

const ratioOf = ({ T, p, RH }: State): number =>
  humidityRatioFromVapourPressure.kernel(p, vapourPressureFromRelativeHumidity.kernel(T, RH));

describe('wet bulb', () => {
  it('leads back to the humidity ratio it came from, at any temperature and pressure', () => {
    fc.assert(
      fc.property(states, (state) => {
        const W = ratioOf(state);
        const Tw = wetBulb.kernel(state.T, state.p, W);
        const back = humidityRatioFromWetBulb.kernel(state.T, state.p, Tw);
        // What one digit of the wet bulb is worth in humidity ratio is the best that can come back.
        const digit = Math.abs(humidityRatioFromWetBulb.kernel(state.T, state.p, Tw * (1 - 2 ** -52)) - back);
        expect(Math.abs(back - W)).toBeLessThanOrEqual(4 * digit + 1e-14 * W + 1e-18);
      }),
      { numRuns: 500 },
    );
  });

  it('lies between dew point and dry bulb', () => {
    fc.assert(
      fc.property(states, (state) => {
        const Tw = wetBulb.kernel(state.T, state.p, ratioOf(state));
        expect(Tw).toBeLessThanOrEqual(state.T * (1 + 1e-12));
        expect(ratioOf({ ...state, T: Tw, RH: 1 })).toBeGreaterThanOrEqual(ratioOf(state) * (1 - 1e-12));
      }),
    );
  });

  it('is the dry bulb in saturated air, over water and over ice', () => {
    for (const T of [253.15, 272, 273.16, 275, 291.15, 340]) {
      const W = ratioOf({ T, p: 94100, RH: 1 });
      expect(wetBulb.kernel(T, 94100, W)).toBeCloseTo(T, 9);
    }
  });

  it('comes back from the humidity ratio it gives, with the state of the wick said', () => {
    const kelvin = fc.double({ min: 240, max: 470, noNaN: true });
    const depression = fc.double({ min: 0, max: 30, noNaN: true });
    const pascal = fc.double({ min: 2e4, max: 6e5, noNaN: true });
    const pairs = [
      [humidityRatioFromWetBulbOverWater, wetBulbOverWater, 240, 520],
      [humidityRatioFromWetBulbOverIce, wetBulbOverIce, 180, 273.15],
    ] as const;
    for (const [forward, inverse, coldest, warmest] of pairs) {
      let checked = 0;
      fc.assert(
        fc.property(kelvin, depression, pascal, (T, d, p) => {
          const Tw = T - d;
          const W = forward.kernel(T, p, Tw);
          if (!(Tw > coldest && Tw < warmest && W > 0 && W < 50)) return;
          checked++;
          expect(inverse.kernel(T, p, W)).toBeCloseTo(Tw, 9);
        }),
        { numRuns: 500, seed: 640 },
      );
      expect(checked).toBeGreaterThan(15);
    }
  });
});

describe('wet bulb near 0 °C', () => {
  const cold = { temperature: temperature(5, '°C'), pressure: absolutePressure(941, 'hPa') };

  it('is over ice where a wet wick would freeze: 5 °C, 2 g/kg', () => {
    const air = { ...cold, humidityRatio: humidityRatio(2, 'g/kg') };
    expect(wetBulb(air).si).toBe(wetBulbOverIce(air).si);
    expect(wetBulb(air).notes.map(({ message }) => message)).toEqual([
      'wet bulb: it needs a wick that can be in one state only, wet or iced, which is not so here: ' +
        'this is over ice; over supercooled water it is −0.07 °C.',
    ]);
    expect(wetBulb(air).in('°C')).toBeCloseTo(-0.4094, 4);
    expect(wetBulbOverWater(air).in('°C')).toBeCloseTo(-0.0681, 4);
  });

  it('is over water, with a note, where a wick may be either: 5 °C, 2.15 g/kg', () => {
    const air = { ...cold, humidityRatio: humidityRatio(2.15, 'g/kg') };
    expect(wetBulb(air).si).toBe(wetBulbOverWater(air).si);
    expect(wetBulb(air).in('°C')).toBeGreaterThan(0.01);
    expect(wetBulbOverIce(air).in('°C')).toBeLessThan(0.01);
    expect(wetBulb(air).notes.map(({ message }) => message)).toEqual([
      expect.stringMatching(
        /^wet bulb: it needs a wick .*, which is not so here: this is over water; over ice it is −0\.\d\d °C\.$/,
      ) as string,
    ]);
  });

  it('is over ice, without a note, where it is too cold for water that has not frozen', () => {
    const frost = { temperature: temperature(-15, '°C'), pressure: absolutePressure(941, 'hPa') };
    expect(wetBulb({ ...frost, humidityRatio: humidityRatio(0.8, 'g/kg') }).notes).toEqual([]);
  });

  it('is over water, without a note, where ice would melt: 5 °C, 3 g/kg', () => {
    const air = { ...cold, humidityRatio: humidityRatio(3, 'g/kg') };
    expect(wetBulb(air).si).toBe(wetBulbOverWater(air).si);
    expect(wetBulb(air).notes).toEqual([]);
    expect(() => wetBulbOverIce(air)).toThrow(
      'wet bulb over ice: the wick must stay iced: in air this warm or humid it melts',
    );
  });

  it('answers everywhere across the change and never falls as the air gets more humid', () => {
    const steps = Array.from({ length: 2001 }, (_, i) => 0.0018 + i * 5e-7);
    const bulbs = steps.map((W) => wetBulb.kernel(278.15, 94100, W));
    bulbs.forEach((Tw, i) => expect(Tw).toBeGreaterThan(i === 0 ? 0 : bulbs[i - 1]!));
    const jumps = bulbs.map((Tw, i) => Tw - (bulbs[i - 1] ?? Tw)).filter((jump) => jump > 0.05);
    expect(jumps).toHaveLength(1);
    expect(jumps[0]).toBeCloseTo(0.35, 1);
  });

  it('read as 0 °C from a wick is over ice, with a note that the wick may be wet', () => {
    const reading = humidityRatioFromWetBulb({ ...cold, wetBulb: temperature(0, '°C') });
    expect(reading.si).toBe(humidityRatioFromWetBulbOverIce({ ...cold, wetBulb: temperature(0, '°C') }).si);
    expect(reading.notes.map(({ message }) => message)).toEqual([
      expect.stringMatching(/: this is over ice; over supercooled water it is \d\.\d{3} g\/kg\.$/) as string,
    ]);
    expect(humidityRatioFromWetBulbOverWater({ ...cold, wetBulb: temperature(0, '°C') }).notes).toEqual([]);
  });
});

describe('humidity ratio from wet bulb', () => {
  const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };

  it('refuses a wet bulb above the dry bulb', () => {
    expect(() => humidityRatioFromWetBulb({ ...room, wetBulb: temperature(19, '°C') })).toThrow(
      'humidity ratio from wet bulb: the wet bulb must not lie above the dry bulb, got temperature 18 °C, pressure 941 hPa, wetBulb 19 °C.',
    );
  });

  it('refuses a wet bulb below that of perfectly dry air, and accepts one just above it', () => {
    const driest = wetBulb({ ...room, humidityRatio: humidityRatio(0, 'g/kg') }).in('°C');
    expect(() => humidityRatioFromWetBulb({ ...room, wetBulb: temperature(driest - 0.01, '°C') })).toThrow(
      'the wet bulb must not lie below that of perfectly dry air',
    );
    const nearly = humidityRatioFromWetBulb({ ...room, wetBulb: temperature(driest + 0.01, '°C') });
    expect(nearly.si).toBeGreaterThan(0);
    expect(nearly.si).toBeLessThan(2e-5);
  });

  it('refuses a wet bulb at which water boils', () => {
    const hot = { temperature: temperature(150, '°C'), pressure: absolutePressure(1, 'bar') };
    expect(() => humidityRatioFromWetBulb({ ...hot, wetBulb: temperature(110, '°C') })).toThrow(
      'saturation pressure at the wet bulb must stay below the total pressure',
    );
  });

  it('refuses more vapour than saturation', () => {
    expect(() => wetBulb({ ...room, humidityRatio: humidityRatio(20, 'g/kg') })).toThrow('must not exceed saturation');
  });

  it('holds at charge-air pressures, with a note where the enhancement factor would matter', () => {
    const charge = { temperature: temperature(160, '°C'), humidityRatio: humidityRatio(10, 'g/kg') };
    expect(wetBulb({ ...charge, pressure: absolutePressure(2.9, 'bar') }).notes).toEqual([]);
    expect(wetBulb({ ...charge, pressure: absolutePressure(5, 'bar') }).notes[0]!.message).toBe(
      'wet bulb: pressure is outside the trusted range, 20 kPa to 300 kPa.',
    );
  });
});

describe('a psychrometer by its own formula', () => {
  const reading = {
    temperature: temperature(30, '°C'),
    pressure: absolutePressure(1000, 'hPa'),
    wetBulb: temperature(20, '°C'),
  };

  it('gives 39.6 % where adiabatic saturation gives 39.9 % (dry 30 °C, wet 20 °C, 1000 hPa)', () => {
    const instrument = vapourPressureFromPsychrometerOverWater(reading);
    const { temperature: dryBulb } = reading;
    expect(relativeHumidityFromVapourPressure({ temperature: dryBulb, vapourPressure: instrument }).si).toBeCloseTo(
      0.396418,
      6,
    );
    const W = humidityRatioFromWetBulb(reading).si;
    expect(((1e5 * W) / (0.621945 + W) / vapourPressureFromRelativeHumidity.kernel(303.15, 1)).toFixed(6)).toBe(
      '0.398862',
    );
  });

  it('refuses a wet bulb above the dry bulb, or too far below it', () => {
    for (const formula of [vapourPressureFromPsychrometerOverWater, vapourPressureFromPsychrometerOverIce]) {
      expect(() => formula({ ...reading, temperature: temperature(-2, '°C'), wetBulb: temperature(-1, '°C') })).toThrow(
        'above the dry bulb',
      );
      expect(() => formula({ ...reading, wetBulb: temperature(-5, '°C') })).toThrow('below that of perfectly dry air');
    }
  });

  it('finds less vapour over ice than over water for the same reading below 0 °C', () => {
    const frost = { ...place({ T: 272.15, p: 1e5 }), wetBulb: temperature(-2, '°C') };
    const ice = vapourPressureFromPsychrometerOverIce(frost).si;
    expect(vapourPressureFromPsychrometerOverWater(frost).si).toBeGreaterThan(ice);
  });
});
