import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain, measured, uncertainty } from '../../src/calculation/index.js';
import {
  captureEfficiencyFromTest,
  carbonDioxideInRoom,
  coldestOfSpray,
  largestSprayDrop,
  liquidShareOfNitrousOxide,
  snowShareOfCarbonDioxide,
  sprayCapacity,
  sprayCostPerPull,
  sprayDrop,
  sprayedFaceTemperature,
  sprayFlowForDrop,
  sprayLatentPart,
  sprayMassForPull,
  spraySensiblePart,
} from '../../src/intercooler/index.js';
import { humidAirFromRelativeHumidity } from '../../src/psychrometrics/index.js';
import {
  absolutePressure,
  costPerMass,
  mass,
  massFlow,
  percent,
  relativeHumidity,
  specificHeatCapacity,
  temperature,
  temperatureDifference,
  time,
  volume,
} from '../../src/units/index.js';

const bottleTemperature = temperature(20, '°C');
const capacity = sprayCapacity.carbonDioxide({ bottleTemperature });
const flow = { chargeFlow: massFlow(0.2, 'kg/s'), specificHeatCapacity: specificHeatCapacity(1010, 'J/(kg·K)') };
const charge = { ...flow, chargeTemperature: temperature(45, '°C'), coldest: coldestOfSpray.carbonDioxide };
const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('cold per mass of coolant', () => {
  it('is about 250 kJ/kg in all for carbon dioxide from liquid at 20 °C, never the sublimation heat on top', () => {
    expect(capacity.in('kJ/kg')).toBeCloseTo(249.97, 2);
    const latent = sprayLatentPart.carbonDioxide({ bottleTemperature });
    const sensible = spraySensiblePart.carbonDioxide({});
    expect(latent.si + sensible.si).toBeCloseTo(capacity.si, 9);
    expect(sensible.in('kJ/kg')).toBeCloseTo(83, 0);
    expect(latent.in('kJ/kg')).toBeCloseTo(167, 0);
    const snow = snowShareOfCarbonDioxide({ bottleTemperature });
    expect(snow.in('%')).toBeCloseTo(29, 0);
    // What the snow takes up is the latent part: the 571 kJ/kg count for that share only.
    expect(snow.si * 571).toBeCloseTo(latent.in('kJ/kg'), 9);
    expect(capacity.in('kJ/kg')).toBeLessThan(571);
  });

  it('is 306 kJ/kg from a bottle at 0 °C; nitrous oxide gives 254 and 303, water ten times as much', () => {
    const cold = { bottleTemperature: temperature(0, '°C') };
    expect(sprayCapacity.carbonDioxide(cold).in('kJ/kg')).toBeCloseTo(305.84, 2);
    expect(sprayCapacity.nitrousOxide({ bottleTemperature }).in('kJ/kg')).toBeCloseTo(254.16, 2);
    expect(sprayCapacity.nitrousOxide(cold).in('kJ/kg')).toBeCloseTo(302.98, 2);
    expect(sprayCapacity.water({ waterTemperature: temperature(25, '°C') }).in('kJ/kg')).toBe(2442);
    expect(liquidShareOfNitrousOxide({ bottleTemperature }).in('%')).toBeCloseTo(42.7, 1);
  });

  it('is 571 latent and 83 sensible for dry ice, which is no bottle', () => {
    expect(sprayCapacity.dryIce({}).in('kJ/kg')).toBeCloseTo(571 + 83.24, 2);
  });

  it('is never more than dry ice or the latent heat of the boiling liquid would give, from any bottle', () => {
    fc.assert(
      fc.property(number(244, 304), number(245, 355), (Tb, Tg) => {
        expect(sprayCapacity.carbonDioxide.kernel(Tb, Tg)).toBeLessThan(sprayCapacity.dryIce.kernel(Tg));
        expect(liquidShareOfNitrousOxide.kernel(Tb)).toBeLessThan(1);
        expect(snowShareOfCarbonDioxide.kernel(Tb)).toBeLessThan(1);
      }),
    );
  });

  it('refuses a bottle above the critical temperature, which holds no liquid', () => {
    const warm = (t: number) => ({ bottleTemperature: temperature(t, '°C') });
    expect(() => sprayCapacity.carbonDioxide(warm(31))).toThrow(
      /below 31.0 °C: above, a carbon dioxide bottle holds no liquid/,
    );
    expect(() => sprayLatentPart.carbonDioxide(warm(40))).toThrow(/holds no liquid/);
    expect(sprayCapacity.carbonDioxide(warm(30.9)).in('kJ/kg')).toBeGreaterThan(175);
    expect(() => sprayCapacity.nitrousOxide(warm(36.4))).toThrow(
      /below 36.4 °C: above, a nitrous oxide bottle holds no liquid/,
    );
    expect(sprayCapacity.nitrousOxide(warm(36.3)).in('kJ/kg')).toBeGreaterThan(160);
    expect(sprayCapacity.nitrousOxide(warm(33)).in('kJ/kg')).toBeGreaterThan(190);
  });
});

describe('cautions', () => {
  const said = (notes: readonly { code: string; message: string }[]): string =>
    notes.flatMap(({ code, message }) => (code === 'caution' ? [message] : [])).join(' ');

  it('go with the number to where a person acts on it: flow, mass, cost', () => {
    const drop = { ...charge, temperatureDrop: temperatureDifference(10, 'K'), capacity };
    const perPull = sprayMassForPull({ ...drop, duration: time(10, 's') });
    const results = [
      sprayFlowForDrop(drop),
      perPull,
      sprayCostPerPull({ mass: perPull, price: costPerMass(3.5, '1/kg') }),
      largestSprayDrop({ ...charge, sprayFlow: massFlow(20, 'g/s'), capacity }),
    ];
    for (const { notes } of results) expect(said(notes)).toMatch(/bar.*suffocates.*frostbite.*displaces oxygen/i);
  });

  it('say once that nitrous oxide must not reach the intake in a comparison', () => {
    const { notes } = sprayCapacity.nitrousOxide({ bottleTemperature });
    expect(said(notes).match(/must not reach the intake in a comparison/g)).toHaveLength(1);
    expect(said(notes)).toMatch(/bar.*suffocates.*frostbite/i);
  });

  it('of water are the wet bench and hot metal, up to where a person acts on them', () => {
    const water = sprayCapacity.water({ waterTemperature: bottleTemperature });
    const drop = { ...charge, coldest: temperature(14, '°C'), temperatureDrop: temperatureDifference(10, 'K') };
    const { notes } = sprayFlowForDrop({ ...drop, capacity: water });
    expect(said(notes)).toMatch(/sockets.*slippery floor.*hot exhaust parts/i);
    expect(said(notes)).not.toMatch(/suffocates|frostbite/);
  });

  it('warn of frost and a blocked face below 0 °C', () => {
    const spray = { airTemperature: temperature(5, '°C'), coolingAirFlow: massFlow(0.3, 'kg/s'), capacity };
    const frosted = sprayedFaceTemperature({ ...spray, sprayFlow: massFlow(40, 'g/s') });
    expect(frosted.in('°C')).toBeLessThan(0);
    expect(frosted.notes.filter(({ code }) => code === 'rule')).toMatchObject([
      { message: expect.stringContaining('freezes on the fins and blocks the face') },
    ]);
    const mild = sprayedFaceTemperature({ ...spray, sprayFlow: massFlow(1, 'g/s') });
    expect(mild.notes.filter(({ code }) => code === 'rule')).toEqual([]);
    expect(() => sprayedFaceTemperature({ ...spray, sprayFlow: massFlow(500, 'g/s') })).toThrow(
      /must stay above -78 °C/,
    );
  });

  it('warn of the gas in a closed room by the limits for a day and for a quarter of an hour', () => {
    const room = {
      temperature: temperature(18, '°C'),
      pressure: absolutePressure(941, 'hPa'),
      roomVolume: volume(150, 'm³'),
    };
    const rules = (kilograms: number): number =>
      carbonDioxideInRoom({ ...room, mass: mass(kilograms, 'kg') }).notes.filter(({ code }) => code === 'rule').length;
    expect([0.5, 2, 10].map(rules)).toEqual([0, 1, 2]);
    expect(carbonDioxideInRoom({ ...room, mass: mass(1000, 'kg') }).si).toBeLessThan(1);
  });
});

describe('spray and drop', () => {
  const whole = { captureEfficiency: percent(100) };

  it('need 0.83 g/s of water or 8.1 of carbon dioxide for 10 K off 0.2 kg/s, if all of the cold reached the charge', () => {
    const drop = { ...charge, ...whole, temperatureDrop: temperatureDifference(10, 'K') };
    const water = sprayCapacity.water({ waterTemperature: temperature(25, '°C') });
    expect(sprayFlowForDrop({ ...drop, capacity: water }).in('g/s')).toBeCloseTo(0.8272, 4);
    expect(sprayFlowForDrop({ ...drop, capacity }).in('g/s')).toBeCloseTo(8.08, 2);
  });

  it('are inverses of each other, and no drop is above the largest', () => {
    fc.assert(
      fc.property(number(0.02, 1), number(0.1, 60), number(1e5, 3e6), number(0.05, 1), (m, dT, q, use) => {
        const flow = sprayFlowForDrop.kernel(m, dT, q, use, 1005);
        expect(sprayDrop.kernel(flow, m, q, use, 1005)).toBeCloseTo(dT, 9);
        expect(largestSprayDrop.kernel(flow, m, q, 1005)).toBeGreaterThanOrEqual(dT * (1 - 1e-12));
        expect(captureEfficiencyFromTest.kernel(dT, flow, m, q, 1005)).toBeCloseTo(use, 9);
        expect(sprayMassForPull.kernel(m, dT, 10, q, use, 1005)).toBeCloseTo(10 * flow, 9);
      }),
    );
  });

  it('is mostly uncertain by the capture efficiency, assumed or measured', () => {
    const drop = { ...charge, temperatureDrop: temperatureDifference(10, 'K'), capacity };
    const assumed = uncertainty(sprayFlowForDrop(drop));
    expect(assumed.contributions[0]!.label).toContain('capture efficiency');
    expect(assumed.standard.si / sprayFlowForDrop(drop).si).toBeCloseTo(0.15 / Math.sqrt(3) / 0.45, 1);
    const captureEfficiency = measured('capture', percent(36), { standardUncertainty: percent(3) });
    const known = sprayFlowForDrop({ ...drop, captureEfficiency });
    expect(uncertainty(known).standard.si / known.si).toBeLessThan(0.1);
    expect(explain(known).toText()).toContain('capture');
  });

  it('carries a note where more cold arrived than was sprayed', () => {
    const test = {
      ...flow,
      sprayFlow: massFlow(5, 'g/s'),
      capacity,
      temperatureDrop: temperatureDifference(20, 'K'),
    };
    const result = captureEfficiencyFromTest(test);
    expect(result.in('%')).toBeGreaterThan(100);
    expect(result.notes.filter(({ code }) => code === 'rule')).toHaveLength(1);
  });

  it('is refused where it would take the charge below the coolant itself: 1 kg/s on 10 g/s is no 24870 K', () => {
    const flood = { ...charge, chargeFlow: massFlow(10, 'g/s'), sprayFlow: massFlow(1, 'kg/s'), capacity };
    const words =
      /the charge must not come below the coolant itself, however much of it is sprayed, got .*coldest 194\.7 K/;
    expect(() => largestSprayDrop(flood)).toThrow(words);
    expect(() => sprayDrop(flood)).toThrow(words);
    const deep = { ...charge, capacity, temperatureDrop: temperatureDifference(124, 'K') };
    expect(() => sprayFlowForDrop(deep)).toThrow(words);
    expect(() => sprayMassForPull({ ...deep, duration: time(10, 's') })).toThrow(words);
    // 45 °C is 123.45 K above the sublimation point of carbon dioxide, 133.45 K above the boiling point of nitrous oxide.
    const cold = { ...deep, temperatureDrop: temperatureDifference(123.4, 'K') };
    expect(sprayFlowForDrop(cold).in('g/s')).toBeGreaterThan(200);
    expect(sprayFlowForDrop({ ...deep, coldest: coldestOfSpray.nitrousOxide }).in('g/s')).toBeGreaterThan(200);
  });

  it('of water ends at the wet bulb of the cooling air: 18 °C and 45 % at 941 hPa, 11.3 °C', () => {
    const air = humidAirFromRelativeHumidity({
      temperature: temperature(18, '°C'),
      pressure: absolutePressure(941, 'hPa'),
      relativeHumidity: relativeHumidity(45, '%'),
    });
    const water = sprayCapacity.water({ waterTemperature: temperature(18, '°C') });
    const warm = { ...charge, coldest: air.wetBulb, capacity: water };
    expect(sprayFlowForDrop({ ...warm, temperatureDrop: temperatureDifference(33, 'K') }).si).toBeGreaterThan(0);
    expect(() => sprayFlowForDrop({ ...warm, temperatureDrop: temperatureDifference(34, 'K') })).toThrow(
      /must not come below the coolant itself/,
    );
  });

  it('at the face is refused for water, whose limit is the wet bulb and not its heat', () => {
    const spray = {
      airTemperature: temperature(18, '°C'),
      coolingAirFlow: massFlow(0.55, 'kg/s'),
      sprayFlow: massFlow(20, 'g/s'),
    };
    const water = sprayCapacity.water({ waterTemperature: temperature(18, '°C') });
    expect(() => sprayedFaceTemperature({ ...spray, capacity: water })).toThrow(
      /no further than to its wet bulb, and no more of it evaporates than brings the air there/,
    );
    for (const gas of [capacity, sprayCapacity.dryIce({}), sprayCapacity.nitrousOxide({ bottleTemperature })])
      expect(sprayedFaceTemperature({ ...spray, capacity: gas }).in('°C')).toBeLessThan(18);
  });

  it('costs what the bottle costs by weight, in the currency of the label', () => {
    const paid = sprayCostPerPull({ mass: mass(1, 'lb'), price: costPerMass(2, '1/lb') }).named('francs');
    expect(paid.in('1')).toBeCloseTo(2, 14);
    expect(paid.label).toBe('francs');
  });
});
