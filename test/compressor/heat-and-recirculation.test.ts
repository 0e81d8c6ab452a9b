import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  apparentIsentropicEfficiency,
  inletTemperatureWithRecirculation,
  isentropicEfficiencyFromMeasurement,
  isentropicEfficiencyWithoutHeat,
  outletTemperature,
  outletTemperatureWithHeat,
  recirculatedFraction,
} from '../../src/compressor/index.js';
import { percent, ratio, specificEnergy, temperature } from '../../src/units/index.js';

describe('heat from the turbine', () => {
  const inletTemperature = temperature(18, '°C');
  const heatIntoAir = specificEnergy(5, 'kJ/kg');

  it('makes the efficiency from temperatures what the apparent one says', () => {
    const given = { inletTemperature, pressureRatio: ratio(2.17), isentropicEfficiency: percent(70) };
    const hot = outletTemperatureWithHeat({ adiabaticOutletTemperature: outletTemperature(given), heatIntoAir });
    const read = isentropicEfficiencyFromMeasurement({
      inletTemperature,
      outletTemperature: hot,
      pressureRatio: given.pressureRatio,
    });
    expect(read.si).toBeCloseTo(apparentIsentropicEfficiency({ ...given, heatIntoAir }).si, 14);
  });

  it('hurts most where little is compressed', () => {
    const given = { inletTemperature, isentropicEfficiency: percent(70), heatIntoAir };
    const loss = (PR: number): number => 0.7 - apparentIsentropicEfficiency({ ...given, pressureRatio: ratio(PR) }).si;
    expect(loss(1.1)).toBeGreaterThan(0.2);
    expect(loss(1.2)).toBeGreaterThan(loss(2));
    expect(loss(2)).toBeGreaterThan(loss(3));
  });

  it('is taken out again', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.4, max: 0.85, noNaN: true }),
        fc.double({ min: 1.05, max: 4, noNaN: true }),
        fc.double({ min: -2000, max: 2e4, noNaN: true }),
        (eta, PR, q) => {
          const apparent = apparentIsentropicEfficiency.kernel(eta, 291.15, PR, q, 1.4, 1005);
          const back = isentropicEfficiencyWithoutHeat.kernel(apparent, 291.15, PR, q, 1.4, 1005);
          expect(Math.abs(back / eta - 1)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  it('cannot be all of the rise', () => {
    const slow = { inletTemperature, pressureRatio: ratio(1.1), apparentEfficiency: percent(30) };
    expect(() => isentropicEfficiencyWithoutHeat({ ...slow, heatIntoAir: specificEnergy(40, 'kJ/kg') })).toThrow(
      /it needs heat that explains less than the whole rise of temperature/,
    );
    expect(() => isentropicEfficiencyWithoutHeat({ ...slow, pressureRatio: ratio(1), heatIntoAir })).toThrow(
      /a pressure ratio above 1/,
    );
  });
});

describe('hot air breathed again', () => {
  const ambientTemperature = temperature(18, '°C');
  const recirculatedTemperature = temperature(45, '°C');

  it('is found from what it does to the inlet', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (f) => {
        const inletTemperature = inletTemperatureWithRecirculation({
          ambientTemperature,
          recirculatedTemperature,
          recirculatedFraction: ratio(f),
        });
        const back = recirculatedFraction({ ambientTemperature, recirculatedTemperature, inletTemperature });
        expect(back.si).toBeCloseTo(f, 12);
      }),
    );
  });

  it('below 0 and above 1 is shown as it is, with a note', () => {
    for (const [inlet, fraction] of [
      [15.3, -0.1],
      [47.7, 1.1],
    ] as const) {
      const found = recirculatedFraction({
        ambientTemperature,
        recirculatedTemperature,
        inletTemperature: temperature(inlet, '°C'),
      });
      expect(found.si).toBeCloseTo(fraction, 10);
      expect(found.notes.map(({ message }) => message).join()).toContain('the three readings are not consistent');
    }
  });

  it('cannot be told where the hot air is hardly hot', () => {
    const given = { ambientTemperature, inletTemperature: temperature(19, '°C') };
    const found = recirculatedFraction({ ...given, recirculatedTemperature: temperature(25, '°C') });
    expect(found.notes.map(({ message }) => message).join()).toContain('sensor errors govern');
    expect(() => recirculatedFraction({ ...given, recirculatedTemperature: temperature(18, '°C') })).toThrow(
      /recirculatedTemperature must be above ambientTemperature/,
    );
  });
});
