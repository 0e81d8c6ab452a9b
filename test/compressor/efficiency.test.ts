import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  isentropicEfficiencyFromMeasurement,
  isentropicEfficiencyFromPolytropic,
  outletTemperature,
  outletTemperaturePolytropic,
  polytropicEfficiencyFromIsentropic,
  polytropicEfficiencyFromMeasurement,
} from '../../src/compressor/index.js';
import { percent, ratio, temperature } from '../../src/units/index.js';

const room = temperature(18, '°C');
const measured = { inletTemperature: room, outletTemperature: temperature(121, '°C'), pressureRatio: ratio(2.17) };

const ratios = fc.double({ min: 1.000001, max: 8, noNaN: true });

describe('compressor efficiency from measurement', () => {
  it('is not cut off where readings are not consistent, but carries a note', () => {
    const cold = { ...measured, outletTemperature: temperature(60, '°C') };
    for (const efficiency of [isentropicEfficiencyFromMeasurement(cold), polytropicEfficiencyFromMeasurement(cold)]) {
      expect(efficiency.si).toBeGreaterThan(1.6);
      expect(efficiency.notes).toMatchObject([{ code: 'rule', message: expect.stringContaining('not consistent') }]);
    }
    expect(() => isentropicEfficiencyFromMeasurement(cold, { strict: true })).toThrow(/at most 100 %/);
  });

  it('carries a note where the rise is so small that the sensors decide', () => {
    const small = { ...measured, outletTemperature: temperature(36, '°C'), pressureRatio: ratio(1.15) };
    for (const efficiency of [isentropicEfficiencyFromMeasurement(small), polytropicEfficiencyFromMeasurement(small)]) {
      expect(efficiency.notes).toMatchObject([{ message: expect.stringContaining('at least 20 K') }]);
    }
  });

  it('refuses air that leaves no warmer than it came', () => {
    const same = { ...measured, outletTemperature: room };
    expect(() => isentropicEfficiencyFromMeasurement(same)).toThrow(/outletTemperature must be above inletTemperature/);
    expect(() => polytropicEfficiencyFromMeasurement(same)).toThrow(/outletTemperature must be above inletTemperature/);
  });

  it('reads low by the heat that came from the turbine, the more so the smaller the pressure ratio', () => {
    const shift = (PR: number): number => {
      const T2 = outletTemperature.kernel(298.15, PR, 0.7, 1.4);
      return 0.7 - isentropicEfficiencyFromMeasurement.kernel(298.15, T2 + 5000 / 1005, PR, 1.4);
    };
    expect(shift(2)).toBeGreaterThan(0.03);
    expect(shift(1.2)).toBeGreaterThan(3 * shift(2));
  });
});

describe('isentropic and polytropic efficiency', () => {
  it('go into each other and back', () => {
    fc.assert(
      fc.property(ratios, fc.double({ min: 0.2, max: 1, noNaN: true }), (PR, etap) => {
        const isentropic = isentropicEfficiencyFromPolytropic.kernel(etap, PR, 1.4);
        expect(isentropic).toBeLessThanOrEqual(etap * (1 + 1e-14));
        expect(polytropicEfficiencyFromIsentropic.kernel(isentropic, PR, 1.4) / etap).toBeCloseTo(1, 12);
      }),
    );
  });

  it('lead to one outlet temperature', () => {
    fc.assert(
      fc.property(ratios, fc.double({ min: 0.3, max: 1, noNaN: true }), (PR, etap) => {
        const isentropic = isentropicEfficiencyFromPolytropic.kernel(etap, PR, 1.4);
        const one = outletTemperaturePolytropic.kernel(291.15, PR, etap, 1.4);
        expect(outletTemperature.kernel(291.15, PR, isentropic, 1.4) / one).toBeCloseTo(1, 13);
        expect(polytropicEfficiencyFromMeasurement.kernel(291.15, one, PR, 1.4) / etap).toBeCloseTo(1, 8);
      }),
    );
  });

  it('are equal where nothing is compressed, and meet there without a jump', () => {
    const efficiency = percent(72);
    for (const PR of [1, 1 + Number.EPSILON, 1 + 1e-9]) {
      const isentropic = isentropicEfficiencyFromPolytropic({
        polytropicEfficiency: efficiency,
        pressureRatio: ratio(PR),
      });
      const polytropic = polytropicEfficiencyFromIsentropic({
        isentropicEfficiency: efficiency,
        pressureRatio: ratio(PR),
      });
      expect(isentropic.si).toBeCloseTo(0.72, 9);
      expect(polytropic.si).toBeCloseTo(0.72, 9);
    }
  });

  it('are both 1 for an ideal compressor', () => {
    expect(isentropicEfficiencyFromPolytropic.kernel(1, 2.17, 1.4)).toBeCloseTo(1, 14);
    expect(polytropicEfficiencyFromIsentropic.kernel(1, 2.17, 1.4)).toBeCloseTo(1, 14);
  });
});
