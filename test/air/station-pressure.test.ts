import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  pressureAltitude,
  seaLevelPressureFromStation,
  standardPressure,
  stationPressure,
} from '../../src/air/index.js';
import { absolutePressure, length, seaLevelPressure } from '../../src/units/index.js';

const metres = fc.double({ min: -500, max: 6000, noNaN: true });

describe('station pressure', () => {
  it('is the sea-level pressure at sea level', () => {
    expect(stationPressure({ seaLevel: seaLevelPressure(1016, 'hPa'), elevation: length(0, 'm') }).si).toBe(101600);
  });

  it('shows in hectopascals, as barometers do', () => {
    expect(String(stationPressure({ seaLevel: seaLevelPressure(1016, 'hPa'), elevation: length(640, 'm') }))).toBe(
      '941.2 hPa',
    );
  });

  it('comes back from the sea-level pressure computed from it', () => {
    fc.assert(
      fc.property(metres, fc.double({ min: 8.5e4, max: 1.09e5, noNaN: true }), (h, p0) => {
        const back = seaLevelPressureFromStation.kernel(stationPressure.kernel(p0, h), h);
        expect(Math.abs(back / p0 - 1)).toBeLessThan(1e-15 * 4);
      }),
    );
  });

  it('is standard where the sea-level pressure is', () => {
    fc.assert(
      fc.property(metres, (h) => {
        const standard = standardPressure.kernel(h);
        expect(stationPressure.kernel(101325, h)).toBe(standard);
        expect(pressureAltitude.kernel(standard)).toBeCloseTo(h, 8);
      }),
    );
  });

  it('differs by 0.8 % at 640 m from a reduction with air of -15 °C at the place (hydrostatic column, ISO 2533 constants)', () => {
    const columnMean = 258.15 + (0.0065 * 640) / 2;
    const winter = Math.exp((-9.80665 * 640) / (287.05287 * columnMean));
    const standard = stationPressure.kernel(1e5, 640) / 1e5;
    expect(standard / winter - 1).toBeCloseTo(0.0077, 3);
  });

  it('saves the 7 % that a sea-level barometer at 500 m costs in power correction', () => {
    const place = standardPressure({ elevation: length(500, 'm') });
    expect((101325 / place.si) ** 1.2).toBeCloseTo(1.0742, 4);
  });

  it('refuses a barometer of the place as a sea-level pressure, in the types and at run time', () => {
    const elevation = length(640, 'm');
    // @ts-expect-error a barometer is absolute, not reduced
    expect(() => stationPressure({ seaLevel: absolutePressure(941, 'hPa'), elevation })).toThrow(
      'station pressure: seaLevel must be a sea-level pressure, got an absolute pressure (941 hPa).',
    );
  });

  it('refuses a sea-level pressure that no weather has, such as a station pressure at 2000 m', () => {
    const inputs = { seaLevel: seaLevelPressure(795, 'hPa'), elevation: length(2000, 'm') };
    expect(() => stationPressure(inputs)).toThrow('seaLevel must be between 850 hPa and 1090 hPa, got 795 hPa.');
  });
});
