import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { humidAirFromRelativeHumidity } from '../../src/psychrometrics/index.js';
import {
  chargeCooledSiteExponents,
  correctedPower,
  referenceAtmospheres,
  siteExponents,
  sitePowerIso3046,
  sitePowerIso3046ChargeCooled,
} from '../../src/correction/index.js';
import { absolutePressure, power, ratio, temperature } from '../../src/units/index.js';

const rating = {
  sitePressure: absolutePressure(100, 'kPa'),
  siteTemperature: temperature(298.15, 'K'),
  siteVapourPressure: absolutePressure(950.76, 'Pa'),
};
const rated = { ratedPower: power(160, 'kW') };

describe('site power by ISO 3046', () => {
  it.each(Object.keys(siteExponents) as (keyof typeof siteExponents)[])(
    'is the rated power where the rating holds, and less on a hill: %s',
    (engine) => {
      const at = (site: typeof rating) => sitePowerIso3046({ ...rated, ...site, ...siteExponents[engine] });
      expect(at(rating).in('kW')).toBeCloseTo(160, 10);
      const hill = at({ ...rating, sitePressure: absolutePressure(941, 'hPa') });
      expect(hill.in('kW')).toBeLessThan(160);
    },
  );

  it('goes the other way than a correction factor: thin air makes the answer smaller than what was put in', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60e3, max: 99e3, noNaN: true }),
        fc.double({ min: 299, max: 320, noNaN: true }),
        (p, T) => {
          const site = sitePowerIso3046({
            ...rated,
            ...rating,
            sitePressure: absolutePressure(p, 'Pa'),
            siteTemperature: temperature(T, 'K'),
            ...siteExponents['diesel, turbocharged'],
          });
          expect(site.si).toBeLessThan(160e3);
        },
      ),
    );
  });

  it('gives a power, which no correction can be made with, in the types and at run time', () => {
    const site = sitePowerIso3046({ ...rated, ...rating, ...siteExponents['diesel, turbocharged'] });
    expect(() =>
      correctedPower({
        observedPower: power(160, 'kW'),
        // @ts-expect-error a site power is no factor
        correctionFactor: site,
      }),
    ).toThrow(/correctionFactor must be a ratio, got a power/);
  });

  // ISO 3046 reference humidity, 30 % at 25 °C; 0.9508 kPa is what the Hyland-Wexler formula gives (mpmath, 50 digits).
  it('rates at 99.05 kPa of dry air: the same atmosphere as the 99 kPa of the road standards', () => {
    const { pressure, temperature: airTemperature, relativeHumidity } = referenceAtmospheres['ISO 3046-1'];
    const air = humidAirFromRelativeHumidity({ pressure, temperature: airTemperature, relativeHumidity });
    expect(air.vapourPressure.in('kPa')).toBeCloseTo(0.9508, 4);
    expect(air.dryPressure.in('kPa')).toBeCloseTo(99.05, 2);
    const assumed = sitePowerIso3046.spec.inputs.find(({ name }) => name === 'ratedVapourPressure')!.assume!;
    expect(assumed.in('Pa')).toBeCloseTo(air.vapourPressure.in('Pa'), 1);
  });

  it('counts the charge coolant of a cooled engine as much as its exponent says', () => {
    const at = (celsius: number) =>
      sitePowerIso3046ChargeCooled({
        ...rated,
        ...rating,
        siteCoolantTemperature: temperature(celsius, '°C'),
        ...chargeCooledSiteExponents,
        mechanicalEfficiency: ratio(1),
      }).si;
    expect(at(25) / at(45)).toBeCloseTo(318.15 / 298.15, 10);
  });

  it('says of every exponent that it is from memory', () => {
    for (const exponents of [...Object.values(siteExponents), chargeCooledSiteExponents]) {
      for (const value of Object.values(exponents)) {
        expect(value.origin).toMatchObject({ role: 'assumed', source: { id: 'iso3046', status: 'memory' } });
      }
    }
  });

  it('refuses a site at which friction would take all the power', () => {
    expect(() =>
      sitePowerIso3046({
        ...rated,
        ...rating,
        sitePressure: absolutePressure(40, 'kPa'),
        siteTemperature: temperature(350, 'K'),
        ...siteExponents['diesel, turbocharged'],
        pressureExponent: ratio(2),
      }),
    ).toThrow(/a site at which the engine still gives power/);
  });
});
