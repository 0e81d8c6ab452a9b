import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  correctedPower,
  correctionFactorDin70020,
  correctionFactorIso1585,
  correctionFactorSaeJ1349,
  correctionFactorSaeJ1349Abbreviated,
  correctionFactorSaeJ1349MeasuredFriction,
  correctionFactorSaeJ607,
  correctionFactorSaeJ816,
  pressureFactorGaugeSpring,
  referenceAtmospheres,
} from '../../src/correction/index.js';
import { absolutePressure, gaugePressure, power, ratio, scale, subtract, temperature } from '../../src/units/index.js';

const room = { dryPressure: absolutePressure(95876.985, 'Pa'), inletTemperature: temperature(30, '°C') };
const rooms = fc.tuple(
  fc.double({ min: 80e3, max: 105e3, noNaN: true }),
  fc.double({ min: 270, max: 320, noNaN: true }),
);
const inAtmosphere = ({
  pressure,
  temperature: inletTemperature,
}: (typeof referenceAtmospheres)[keyof typeof referenceAtmospheres]) => ({
  dryPressure: pressure,
  inletTemperature,
});

describe('a correction factor', () => {
  it.each([
    ['SAE J1349', correctionFactorSaeJ1349(inAtmosphere(referenceAtmospheres['SAE J1349']))],
    ['SAE J1349, abbreviated', correctionFactorSaeJ1349Abbreviated(inAtmosphere(referenceAtmospheres['SAE J1349']))],
    ['SAE J607', correctionFactorSaeJ607(inAtmosphere(referenceAtmospheres['SAE J607']))],
    ['SAE J816', correctionFactorSaeJ816(inAtmosphere(referenceAtmospheres['SAE J816']))],
    ['ISO 1585', correctionFactorIso1585(inAtmosphere(referenceAtmospheres['ISO 1585']))],
    [
      'DIN 70020',
      correctionFactorDin70020({
        barometer: referenceAtmospheres['DIN 70020'].pressure,
        inletTemperature: referenceAtmospheres['DIN 70020'].temperature,
      }),
    ],
  ])('is 1 in the reference atmosphere of %s', (_, factor) => {
    expect(factor.si).toBeCloseTo(1, 12);
    expect(factor.notes).toEqual([]);
  });

  it('reads 4 % more to SAE J607 than to SAE J1349 without friction, in any room (common practice, no source)', () => {
    fc.assert(
      fc.property(rooms, ([dry, T]) => {
        const std = correctionFactorSaeJ607.kernel(dry, T);
        const sae = correctionFactorSaeJ1349.kernel(dry, T, 1);
        expect(std / sae).toBeCloseTo(1.0401, 4);
      }),
    );
  });

  it('makes no gain of one pull printed to two standards', () => {
    const pull = power(180, 'kW');
    const std = correctedPower({ observedPower: pull, correctionFactor: correctionFactorSaeJ607(room) });
    const sae = correctedPower({
      observedPower: pull,
      correctionFactor: correctionFactorSaeJ1349({ ...room, mechanicalEfficiency: ratio(1) }),
    });
    expect(subtract(std, sae).in('kW')).toBeCloseTo(7.5, 1);
  });

  it('leaves 99 kPa of dry air at 29.2347 inHg of 0 °C, not at the 29.92 that some pages print', () => {
    expect(referenceAtmospheres['SAE J1349'].pressure.in('inHg')).toBeCloseTo(29.2347, 4);
  });
});

describe('the forms of SAE J1349', () => {
  it('agree where the measured friction is what the mechanical efficiency says', () => {
    fc.assert(
      fc.property(rooms, fc.double({ min: 0.6, max: 1, noNaN: true }), ([dry, T], eta) => {
        const friction = 100e3 * (1 / eta - 1);
        const measured = correctionFactorSaeJ1349MeasuredFriction.kernel(dry, T, 100e3, friction);
        expect(measured).toBeCloseTo(correctionFactorSaeJ1349.kernel(dry, T, eta), 12);
      }),
    );
  });

  it('correct only the indicated power: what friction takes stays as it was', () => {
    const observedPower = power(170, 'kW');
    const frictionPower = power(30, 'kW');
    const factor = correctionFactorSaeJ1349MeasuredFriction({ ...room, observedPower, frictionPower });
    const indicated = correctedPower({ observedPower, correctionFactor: factor }).in('kW') + 30;
    const atmospheric = correctionFactorSaeJ1349({ ...room, mechanicalEfficiency: ratio(1) });
    expect(indicated).toBeCloseTo(scale(power(200, 'kW'), atmospheric).in('kW'), 9);
  });

  it('differ by the rounding of 1/0.85 to 1.18 only', () => {
    expect(correctionFactorSaeJ1349Abbreviated(room).si - correctionFactorSaeJ1349(room).si).toBeCloseTo(0.000145, 6);
  });

  it('say where the room is outside what the standard was written for', () => {
    const high = correctionFactorSaeJ1349({ ...room, dryPressure: absolutePressure(93.2, 'kPa') });
    expect(high.notes.map(({ code, input }) => [code, input])).toEqual([['outside trusted range', 'p_d']]);
    const hot = correctionFactorSaeJ1349({ ...room, inletTemperature: temperature(38, '°C') });
    expect(hot.notes.map(({ code, input }) => [code, input])).toEqual([['outside trusted range', 'T']]);
  });

  it('refuse friction that is most of the power', () => {
    const powers = { observedPower: power(10, 'kW'), frictionPower: power(16, 'kW') };
    expect(() => correctionFactorSaeJ1349MeasuredFriction({ ...room, ...powers })).toThrow(
      /friction power below one and a half/,
    );
  });
});

describe('ISO 1585', () => {
  it('states it where the factor leaves 0.93 to 1.07, and still answers', () => {
    const damp = correctionFactorIso1585({ ...room, dryPressure: absolutePressure(92, 'kPa') });
    expect(damp.si).toBeGreaterThan(1.07);
    expect(damp.notes.map(({ code }) => code)).toEqual(['rule']);
    expect(damp.notes[0]!.message).toBe(
      'correction factor to ISO 1585, spark ignition: it needs a factor between 0.93 and 1.07, the limit of the standard, which is not so here.',
    );
  });

  it('stays within 0.2 % of SAE J1349 in ordinary rooms, though one has a friction term and the other exponents', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 95e3, max: 101e3, noNaN: true }),
        fc.double({ min: 288.15, max: 308.15, noNaN: true }),
        (dry, T) => {
          const difference = correctionFactorIso1585.kernel(dry, T) - correctionFactorSaeJ1349.kernel(dry, T, 0.85);
          expect(Math.abs(difference)).toBeLessThan(0.002);
        },
      ),
    );
  });
});

describe('boost on a spring against the room', () => {
  it('takes the whole pressure term without boost and less and less of it with more', () => {
    const dryPressure = absolutePressure(93.2, 'kPa');
    const at = (bar: number) => pressureFactorGaugeSpring({ dryPressure, boost: gaugePressure(bar, 'bar') }).si;
    expect(at(0)).toBeCloseTo(99 / 93.2, 12);
    expect(at(0.5)).toBeGreaterThan(at(1.1));
    expect(at(10)).toBeLessThan(1.006);
  });

  it('refuses absolute manifold pressure for boost, in the types and at run time', () => {
    const dryPressure = absolutePressure(93.2, 'kPa');
    // @ts-expect-error boost is a gauge pressure
    expect(() => pressureFactorGaugeSpring({ dryPressure, boost: absolutePressure(2.04, 'bar') })).toThrow(
      /boost must be a gauge pressure, got an absolute pressure \(2\.04 bar\)\. Use gauge\(absolute, barometer\)\./,
    );
  });
});
