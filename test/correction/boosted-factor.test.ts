import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CalculationError } from '../../src/calculation/index.js';
import {
  boostedCorrectionFactor,
  correctedPower,
  correctionFactor,
  pressureFactorGaugeSpring,
  pressureFactorGaugeSpringMoist,
  type BoostedCorrectionRequest,
} from '../../src/correction/index.js';
import { powerRatioFromChargeTemperature } from '../../src/engine/index.js';
import { absolutePressure, gaugePressure, power, ratio, relativeHumidity, temperature } from '../../src/units/index.js';

// 640 m of the standard atmosphere, 24 °C, 45 %: vapour 1343.307 Pa.
const room = {
  pressure: absolutePressure(93.86908, 'kPa'),
  temperature: temperature(24, '°C'),
  relativeHumidity: relativeHumidity(45, '%'),
};
const boost = gaugePressure(95, 'kPa');
const charge = { measured: temperature(45, '°C'), reference: temperature(40, '°C') };

describe('boost that is humid as the room is', () => {
  // (100 + b) 0.99/((p + b) p_d/p) against (99 + b)/(p_d + b) and the standards for unboosted engines, mpmath, 50 digits.
  it('is corrected by 1.0370, where dry boost says 1.0345 and standards for unboosted engines 1.08', () => {
    const dry = absolutePressure(92.525773, 'kPa');
    const moist = pressureFactorGaugeSpringMoist({ barometer: room.pressure, dryPressure: dry, boost }).si;
    expect(moist).toBeCloseTo(1.037, 4);
    expect(pressureFactorGaugeSpring({ dryPressure: dry, boost }).si).toBeCloseTo(1.0345, 4);
    const asUnboosted = (standard: 'SAE J1349 (1990), abbreviated' | 'ISO 1585') =>
      correctionFactor({ standard, room, boost: 'gauge spring' }).si;
    expect(asUnboosted('SAE J1349 (1990), abbreviated')).toBeCloseTo(1.0804, 4);
    expect(asUnboosted('ISO 1585')).toBeCloseTo(1.0824, 4);
  });

  it('agrees with the dry form where neither room nor reference holds vapour', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60e3, max: 110e3, noNaN: true }),
        fc.double({ min: 0, max: 3e5, noNaN: true }),
        (p, b) => {
          const moist = pressureFactorGaugeSpringMoist.kernel(p, p, b, 99e3, 99e3);
          expect(moist).toBeCloseTo(pressureFactorGaugeSpring.kernel(p, b, 99e3), 12);
        },
      ),
    );
  });

  it('refuses dry air at more pressure than the barometer', () => {
    expect(() =>
      pressureFactorGaugeSpringMoist({ barometer: room.pressure, dryPressure: absolutePressure(95, 'kPa'), boost }),
    ).toThrow(/dry pressure must not be above the barometer/);
  });
});

describe('boostedCorrectionFactor', () => {
  it('takes no part of the barometer where a controller holds absolute pressure', () => {
    const factor = boostedCorrectionFactor({ boostControl: 'absolute closed loop' });
    expect(factor.si).toBe(1);
    expect(factor.notes.map(({ message }) => message)).toEqual([
      'Boost is held to an absolute pressure, so nothing is corrected for the barometer. ' +
        'Not corrected for charge temperature: state it beside the figure. This is common practice and no standard.',
    ]);
  });

  it('takes the humid spring part of the barometer, and tells every figure corrected with it', () => {
    const factor = boostedCorrectionFactor({ boostControl: 'gauge spring', room, boost });
    expect(factor.si).toBeCloseTo(1.036976, 6);
    const figure = correctedPower({ observedPower: power(165, 'kW'), correctionFactor: factor });
    expect(figure.notes[0]!.message).toMatch(/^Boost sits on a spring.*no standard\.$/);
  });

  it('corrects to a charge temperature by the power law, not by the temperature of the room', () => {
    const at = (chargeTemperature: BoostedCorrectionRequest['chargeTemperature']) =>
      boostedCorrectionFactor({ boostControl: 'absolute closed loop', chargeTemperature }).si;
    const law = powerRatioFromChargeTemperature({
      referenceTemperature: charge.measured,
      chargeTemperature: charge.reference,
    });
    expect(at(charge)).toBe(law.si);
    expect(at(charge)).toBeGreaterThan(1);
    expect(at({ ...charge, exponent: ratio(1) })).toBeCloseTo(318.15 / 313.15, 12);
    expect(at({ measured: charge.measured, reference: charge.measured })).toBe(1);
  });

  it('names everything that is wrong with a request', () => {
    const problemsOf = (request: unknown) => {
      try {
        boostedCorrectionFactor(request as BoostedCorrectionRequest);
      } catch (error) {
        if (error instanceof CalculationError) return error.problems.map(({ code, input }) => [code, input]);
        throw error;
      }
      return [];
    };
    expect(problemsOf({ boostControl: 'gauge spring' })).toEqual([
      ['missing', 'room'],
      ['missing', 'boost'],
    ]);
    expect(problemsOf({ boostControl: 'unboosted' })).toEqual([['kind', 'boostControl']]);
    expect(problemsOf(undefined)).toEqual([['missing', 'boostControl']]);
    expect(problemsOf({ boostControl: 'absolute closed loop', boost })).toEqual([['unknown', 'boost']]);
    expect(problemsOf({ boostControl: 'absolute closed loop', chargeTemperature: 45 })).toEqual([
      ['kind', 'chargeTemperature'],
    ]);
  });
});
