import { assert, double, property, record } from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  humidAir,
  humidAirFromRelativeHumidity,
  humidAirFromWetBulb,
  wetBulbOverIce,
  wetBulbOverWater,
  type HumidAirMeasures,
} from '../../src/psychrometrics/index.js';
import {
  absolutePressure,
  humidityRatio,
  relativeHumidity,
  specificEnergy,
  temperature,
} from '../../src/units/index.js';

const pressure = absolutePressure(941, 'hPa');
const room = humidAirFromRelativeHumidity({
  temperature: temperature(18, '°C'),
  pressure,
  relativeHumidity: relativeHumidity(45, '%'),
});

const MEASURES = [
  'temperature',
  'wetBulb',
  'dewPoint',
  'relativeHumidity',
  'humidityRatio',
  'vapourPressure',
  'enthalpy',
] as const;
type Measure = (typeof MEASURES)[number];
const OF_VAPOUR: readonly Measure[] = ['dewPoint', 'humidityRatio', 'vapourPressure'];

const pairs = MEASURES.flatMap((a, i) => MEASURES.slice(i + 1).map((b) => [a, b] as const));
const sayTheSame = ([a, b]: readonly [Measure, Measure]): boolean =>
  (OF_VAPOUR.includes(a) && OF_VAPOUR.includes(b)) || (a === 'wetBulb' && b === 'enthalpy');
const good = pairs.filter((pair) => !sayTheSame(pair));

const two = (air: HumidAirMeasures, [a, b]: readonly [Measure, Measure]): HumidAirMeasures => ({
  [a]: air[a],
  [b]: air[b],
});

describe('humid air from two measures', () => {
  it('knows seventeen pairs', () => {
    expect(good).toHaveLength(17);
  });

  // Values of PsychroLib 2.5 for 18 °C, 941 hPa, 45 %: dew point 5.9022 °C, wet bulb 11.2773 °C, humidity ratio 0.0062009.
  it.each(good)('gives the same air from %s and %s', (a, b) => {
    const again = humidAir({ pressure, ...two(room, [a, b]) });
    expect(again.temperature.in('°C')).toBeCloseTo(18, 9);
    expect(again.relativeHumidity.in('%')).toBeCloseTo(45, 8);
    expect(again.dewPoint.in('°C')).toBeCloseTo(5.9022, 3);
    expect(again.wetBulb.in('°C')).toBeCloseTo(11.2773, 4);
    expect(again.humidityRatio.in('g/kg')).toBeCloseTo(6.2009, 4);
  });

  it.each(['perfect gas', 'real gas'] as const)('comes back to the air it came from, as a %s', (model) => {
    const states = record({
      t: double({ min: -40, max: 60, noNaN: true }),
      kPa: double({ min: 60, max: 400, noNaN: true }),
      rh: double({ min: 0.02, max: 0.999, noNaN: true }),
    });
    assert(
      property(states, ({ t, kPa, rh }) => {
        const at = absolutePressure(kPa, 'kPa');
        const air = humidAir(
          { temperature: temperature(t, '°C'), pressure: at, relativeHumidity: relativeHumidity(rh, '1') },
          { model },
        );
        // A wick near 0 °C can be in two states, which the wet bulb alone does not tell apart.
        const isClear = air.wetBulb.notes.length === 0 && Math.abs(air.wetBulb.in('°C')) > 0.02;
        for (const pair of good) {
          if (pair.includes('wetBulb') && !isClear) continue;
          const again = humidAir({ pressure: at, ...two(air, pair) }, { model });
          expect(again.temperature.si, pair.join(' and ')).toBeCloseTo(air.temperature.si, 6);
          expect(again.humidityRatio.si / air.humidityRatio.si, pair.join(' and ')).toBeCloseTo(1, 6);
        }
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  it('refuses pairs that say the same thing, and says so', () => {
    const message = 'At a given pressure these two say the same thing: how much vapour there is.';
    for (const pair of pairs.filter(sayTheSame).filter(([a]) => a !== 'wetBulb'))
      expect(() => humidAir({ pressure, ...two(room, pair) })).toThrow(message);
    expect(() => humidAir({ pressure, ...two(room, ['wetBulb', 'enthalpy']) })).toThrow(
      'Wet bulb and enthalpy say nearly the same thing: give another measure in place of one.',
    );
  });

  it('refuses one measure, three, none, and a misspelt one', () => {
    const { temperature: dryBulb, wetBulb, dewPoint } = room;
    const need =
      'two of temperature, wetBulb, dewPoint, relativeHumidity, humidityRatio, vapourPressure, enthalpy beside the pressure';
    expect(() => humidAir({ pressure, wetBulb })).toThrow(need);
    expect(() => humidAir({ pressure })).toThrow(need);
    expect(() => humidAir({ pressure, temperature: dryBulb, wetBulb, dewPoint })).toThrow(need);
    expect(() => humidAir({ pressure, temperature: dryBulb, wetbulb: wetBulb } as never)).toThrow('wetbulb');
  });

  it('refuses a wrong kind, a bare number and a missing pressure', () => {
    const { dewPoint, wetBulb } = room;
    expect(() => humidAir({ pressure, wetBulb: relativeHumidity(45, '%') as never, dewPoint })).toThrow(/wetBulb/);
    expect(() => humidAir({ pressure, wetBulb: 11.3 as never, dewPoint })).toThrow(/wetBulb/);
    expect(() => humidAir({ wetBulb, dewPoint } as never)).toThrow(/pressure/);
  });

  it('refuses measures that contradict each other', () => {
    expect(() => humidAir({ pressure, wetBulb: temperature(5, '°C'), dewPoint: temperature(12, '°C') })).toThrow(
      'the humidity ratio must not exceed that of air saturated at the wet bulb',
    );
    expect(() => humidAir({ pressure, temperature: temperature(5, '°C'), dewPoint: temperature(12, '°C') })).toThrow(
      'more would condense',
    );
    expect(() =>
      humidAir({ pressure, temperature: temperature(25, '°C'), enthalpy: specificEnergy(5, 'kJ/kg') }),
    ).toThrow('the enthalpy must not be below that of dry air at that temperature');
  });

  it('reads as text and as records, also where air this hot cannot be saturated', () => {
    const charge = humidAir(
      {
        temperature: temperature(150, '°C'),
        pressure: absolutePressure(2, 'bar'),
        humidityRatio: room.humidityRatio,
      },
      { model: 'real gas' },
    );
    expect(String(charge)).toMatch(/^humid air at 150\S* °C and 2\S* bar: humidity ratio/);
    expect(Object.keys(charge.toJSON())).not.toContain('relativeHumidity');
    expect(() => charge.relativeHumidity).toThrow('air this hot cannot be saturated');
    expect(charge.wetBulb.in('°C')).toBeLessThan(60);
  });
});

describe('a wick near 0 °C', () => {
  const air = humidAir({ pressure, temperature: temperature(5, '°C'), humidityRatio: humidityRatio(2.1, 'g/kg') });

  it('can be wet or iced in the same air: both are offered by name, and the usual one carries a note', () => {
    const given = { temperature: air.temperature, pressure, humidityRatio: air.humidityRatio };
    expect(air.wetBulbOverWater.si).toBe(wetBulbOverWater(given).si);
    expect(air.wetBulbOverIce.si).toBe(wetBulbOverIce(given).si);
    expect(air.wetBulb.si).toBe(air.wetBulbOverWater.si);
    expect(air.wetBulbOverWater.si - air.wetBulbOverIce.si).toBeGreaterThan(0.2);
    expect(air.wetBulb.notes).toHaveLength(1);
  });

  it('is told apart by who has looked at it', () => {
    const reading = { pressure, temperature: air.temperature, wetBulb: temperature(-0.5, '°C') };
    const wet = humidAir(reading, { wick: 'water' });
    const iced = humidAir(reading, { wick: 'ice' });
    expect(humidAir(reading).humidityRatio.si).toBe(iced.humidityRatio.si);
    expect(humidAirFromWetBulb(reading).humidityRatio.si).toBe(iced.humidityRatio.si);
    expect(wet.wetBulbOverWater.in('°C')).toBeCloseTo(-0.5, 9);
    expect(iced.wetBulbOverIce.in('°C')).toBeCloseTo(-0.5, 9);
    expect(iced.humidityRatio.in('g/kg') - wet.humidityRatio.in('g/kg')).toBeGreaterThan(0.05);
  });

  // Adiabatic saturation over water and over ice, ASHRAE equations 33 and 35, solved for the dry bulb with mpmath, 50 digits.
  it('is believed where the dry bulb is not given: −1 °C and 2.5 g/kg at 941 hPa', () => {
    const reading = { pressure, wetBulb: temperature(-1, '°C'), humidityRatio: humidityRatio(2.5, 'g/kg') };
    expect(humidAir(reading, { wick: 'water' }).temperature.in('°C')).toBeCloseTo(2.166479, 6);
    expect(humidAir(reading, { wick: 'ice' }).temperature.in('°C')).toBeCloseTo(2.476142, 6);
    expect(humidAir(reading).temperature.si).toBe(humidAir(reading, { wick: 'ice' }).temperature.si);
  });

  it.each(['perfect gas', 'real gas'] as const)('is believed with any second measure, as a %s', (model) => {
    for (const wick of ['water', 'ice'] as const) {
      const whole = humidAir(
        { pressure, temperature: temperature(2, '°C'), wetBulb: temperature(-1, '°C') },
        { model, wick },
      );
      const wetBulb = wick === 'water' ? whole.wetBulbOverWater : whole.wetBulbOverIce;
      for (const other of ['relativeHumidity', 'dewPoint', 'humidityRatio', 'vapourPressure'] as const) {
        const again = humidAir({ pressure, wetBulb, [other]: whole[other] }, { model, wick });
        expect(again.temperature.in('°C'), `${wick}, ${other}`).toBeCloseTo(2, 7);
      }
    }
  });

  it('that is not said to be wet or iced carries a note with the other answer, and none once it is said', () => {
    const reading = { pressure, wetBulb: temperature(-1, '°C'), humidityRatio: humidityRatio(2.5, 'g/kg') };
    expect(humidAir(reading).temperature.notes.map(({ message }) => message)).toEqual([
      'dry bulb from wet bulb: it needs a wick that can be in one state only, wet or iced, which is not so here: ' +
        'this is over ice; over supercooled water it is 2.17 °C.',
    ]);
    for (const wick of ['water', 'ice'] as const) expect(humidAir(reading, { wick }).temperature.notes).toEqual([]);
    const humid = { pressure, wetBulb: temperature(-1, '°C'), relativeHumidity: relativeHumidity(55, '%') };
    expect(humidAir(humid).temperature.notes[0]!.message).toMatch(
      /this is over ice; over supercooled water it is 1\.9\d °C/,
    );
    const frost = { ...reading, wetBulb: temperature(-11, '°C'), humidityRatio: humidityRatio(1.2, 'g/kg') };
    expect(humidAir(frost).temperature.notes).toEqual([]);
  });

  it('is refused where no wet bulb is given, and iced where it would have melted', () => {
    const { temperature: dryBulb, dewPoint } = room;
    expect(() => humidAir({ pressure, temperature: dryBulb, dewPoint }, { wick: 'ice' })).toThrow(
      'wick must be left out where no wet bulb is given',
    );
    expect(() => humidAir({ pressure, wetBulb: temperature(5, '°C'), dewPoint }, { wick: 'ice' })).toThrow(
      /over ice: wetBulb must be between/,
    );
  });
});
