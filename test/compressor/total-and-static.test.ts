import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uncertainty } from '../../src/calculation/index.js';
import {
  flowSpeed,
  flowSpeedFromTotalTemperature,
  probeTemperature,
  recoveryFactors,
  staticPressure,
  staticTemperature,
  totalPressure,
  totalTemperature,
  totalTemperatureFromProbe,
} from '../../src/compressor/index.js';
import { absolutePressure, area, massFlow, ratio, speed, subtract, temperature } from '../../src/units/index.js';

const T = fc.double({ min: 230, max: 500, noNaN: true });
const V = fc.double({ min: 0, max: 300, noNaN: true });

describe('total and static', () => {
  it('are one where the air stands', () => {
    const air = { staticTemperature: temperature(121, '°C'), speed: speed(0, 'm/s') };
    expect(totalTemperature(air).si).toBe(air.staticTemperature.si);
    const still = { staticTemperature: air.staticTemperature, totalTemperature: air.staticTemperature };
    expect(totalPressure({ staticPressure: absolutePressure(204.1, 'kPa'), ...still }).si).toBe(204100);
  });

  it('lead back to each other', () => {
    fc.assert(
      fc.property(T, V, fc.double({ min: 5e4, max: 5e5, noNaN: true }), (t, v, p) => {
        const total = totalTemperature.kernel(t, v, 1005);
        expect(Math.abs(staticTemperature.kernel(total, v, 1005) / t - 1)).toBeLessThan(1e-14);
        const pressure = totalPressure.kernel(p, t, total, 1.4);
        expect(Math.abs(staticPressure.kernel(pressure, t, total, 1.4) / p - 1)).toBeLessThan(1e-14);
      }),
    );
  });

  it('agree with the table of isentropic flow at a Mach number of 0.5', () => {
    // NACA Report 1135 (1953), table I: T/T0 = 0.9524, p/p0 = 0.8430; its figures from memory.
    const t = 300;
    const v = 0.5 * Math.sqrt(1.4 * 287.042 * t);
    const total = totalTemperature.kernel(t, v, (1.4 / 0.4) * 287.042);
    expect(t / total).toBeCloseTo(0.9524, 4);
    expect(1 / totalPressure.kernel(1, t, total, 1.4)).toBeCloseTo(0.843, 4);
  });

  it('refuse a total temperature below the static one', () => {
    const given = { staticPressure: absolutePressure(200, 'kPa'), staticTemperature: temperature(121, '°C') };
    expect(() => totalPressure({ ...given, totalTemperature: temperature(120, '°C') })).toThrow(
      /totalTemperature must not be below staticTemperature \(are they the wrong way round\?\)/,
    );
  });
});

describe('speed of air in a pipe', () => {
  const pipe = {
    massFlow: massFlow(200, 'g/s'),
    staticPressure: absolutePressure(204.1, 'kPa'),
    area: area(20, 'cm²'),
  };

  it('is one from static and from total temperature', () => {
    const fromTotal = flowSpeedFromTotalTemperature({ ...pipe, totalTemperature: temperature(121, '°C') });
    const still = staticTemperature({ totalTemperature: temperature(121, '°C'), speed: fromTotal });
    expect(flowSpeed({ ...pipe, staticTemperature: still }).si).toBeCloseTo(fromTotal.si, 11);
  });

  it('asks about the area where the air would be faster than sound', () => {
    expect(() => flowSpeed({ ...pipe, area: area(2, 'cm²'), staticTemperature: temperature(121, '°C') })).toThrow(
      /at most 400 m\/s \(more than sound in cold air: is the area right\?\)/,
    );
  });
});

describe('a probe in moving air', () => {
  const air = { totalTemperature: temperature(121, '°C'), speed: speed(100, 'm/s') };

  it('reads static without recovery, total with all of it, and 1.49 K low at 0.7', () => {
    expect(probeTemperature({ ...air, recoveryFactor: ratio(1) }).si).toBe(air.totalTemperature.si);
    const reading = probeTemperature({ ...air, recoveryFactor: ratio(0) });
    expect(reading.si).toBe(staticTemperature(air).si);
    expect(reading.notes).toMatchObject([{ code: 'outside trusted range', input: 'r' }]);
    const bare = probeTemperature({ ...air, recoveryFactor: ratio(0.7) });
    expect(subtract(air.totalTemperature, bare).in('K')).toBeCloseTo(1.4925, 4);
  });

  it('brings the scatter of recovery factors into the answer', () => {
    const reading = { probeTemperature: temperature(119.5, '°C'), speed: speed(100, 'm/s') };
    const total = totalTemperatureFromProbe({ ...reading, recoveryFactor: recoveryFactors.wireAcrossFlow });
    // 0.07 of 4.975 K, evenly spread.
    expect(uncertainty(total).standard.in('K')).toBeCloseTo((0.07 * 4.9751) / Math.sqrt(3), 3);
  });
});
