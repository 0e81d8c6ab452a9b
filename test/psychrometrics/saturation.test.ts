import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  enhancementFactor,
  saturationPressure,
  saturationPressureOverIce,
  saturationPressureOverWater,
} from '../../src/psychrometrics/index.js';
import { absolutePressure, scale, temperature, temperatureDifference } from '../../src/units/index.js';

const at = (t: number) => saturationPressure({ temperature: temperature(t, '°C') }).in('Pa');
const magnus = (t: number, a: number, b: number, c: number): number => a * Math.exp((b * t) / (c + t));

describe('saturation pressure', () => {
  it('changes from ice to water at the triple point, where the two meet within 6 parts in 10⁹', () => {
    const ice = saturationPressureOverIce.kernel(273.16);
    const water = saturationPressureOverWater.kernel(273.16);
    expect(water / ice - 1).toBeCloseTo(5.79e-9, 11);
    expect(saturationPressure.kernel(273.16)).toBe(water);
    expect(saturationPressure.kernel(273.15999999)).toBe(saturationPressureOverIce.kernel(273.15999999));
  });

  it('would jump by 1 part in 10⁴ if it changed at 0 °C', () => {
    expect(saturationPressureOverWater.kernel(273.15) / saturationPressureOverIce.kernel(273.15) - 1).toBeCloseTo(
      9.7e-5,
      6,
    );
  });

  it('rises with temperature without a step down anywhere', () => {
    const kelvin = fc.double({ min: 173.16, max: 523, noNaN: true });
    fc.assert(
      fc.property(kelvin, (T) => {
        expect(saturationPressure.kernel(T * (1 + 1e-12))).toBeGreaterThan(saturationPressure.kernel(T));
      }),
      { examples: [[273.16], [273.16 * (1 - 1e-12)], [273.15], [300], [273]] },
    );
  });

  it('agrees at 25 °C with the Magnus forms of Sonntag, Alduchov-Eskridge and Bolton, and with Buck 1981, to 0.3 %', () => {
    const forms = [
      magnus(25, 611.2, 17.62, 243.12),
      magnus(25, 610.94, 17.625, 243.04),
      magnus(25, 611.2, 17.67, 243.5),
      magnus(25, 611.21, 17.502, 240.97),
    ];
    expect(forms.map((form) => Number(form.toFixed(3)))).toEqual([3160.057, 3161.736, 3167.429, 3167.035]);
    for (const form of forms) expect(Math.abs(form / at(25) - 1)).toBeLessThan(0.003);
  });

  it('agrees with Buck 1996 over water and over ice to 3 parts in 10⁴ (coefficients from memory)', () => {
    const buckWater = 611.21 * Math.exp((18.678 - 25 / 234.5) * (25 / (257.14 + 25)));
    const buckIce = 611.15 * Math.exp((23.036 + 10 / 333.7) * (-10 / (279.82 - 10)));
    expect(Math.abs(buckWater / at(25) - 1)).toBeLessThan(3e-4);
    expect(Math.abs(buckIce / at(-10) - 1)).toBeLessThan(3e-4);
  });

  it('keeps true at 100 °C, where a Magnus form is 2.4 % high', () => {
    expect(at(100) / 101418).toBeCloseTo(1, 4);
    expect(magnus(100, 611.2, 17.62, 243.12) / at(100)).toBeCloseTo(1.024, 3);
  });

  it('still answers above 200 °C, with a note, and not above 250 °C', () => {
    expect(saturationPressure({ temperature: temperature(200, '°C') }).notes).toEqual([]);
    const [note] = saturationPressure({ temperature: temperature(220, '°C') }).notes;
    expect(note?.message).toBe('saturation pressure: temperature is outside the trusted range, −100 °C to 200 °C.');
    expect(() => at(251)).toThrow('temperature must be between −100 °C and 250 °C, got 251 °C.');
  });

  it('answers right at its bounds in °C', () => {
    expect(at(-100)).toBeCloseTo(0.0014051, 7);
    expect(at(250)).toBeGreaterThan(3.9e6);
    expect(saturationPressureOverWater({ temperature: temperature(-40, '°C') }).notes).toEqual([]);
  });

  it('refuses ice that would melt and a temperature difference', () => {
    expect(() => saturationPressureOverIce({ temperature: temperature(1, '°C') })).toThrow(
      'saturation pressure over ice: temperature must be between −100 °C and 0.01 °C, got 1 °C.',
    );
    // @ts-expect-error a difference has no place on the scale
    expect(() => saturationPressure({ temperature: temperatureDifference(18, 'K') })).toThrow('must be a temperature');
  });

  it('takes an enhancement factor by scaling', () => {
    const pressure = absolutePressure(200, 'kPa');
    const pure = saturationPressure({ temperature: temperature(30, '°C') });
    expect(scale(pure, enhancementFactor.buck1981({ pressure })).si / pure.si).toBeCloseTo(1.00762, 10);
    expect(enhancementFactor.buck1981({ pressure }).notes).toHaveLength(1);
    expect(() => enhancementFactor.buck1981({ pressure }, { strict: true })).toThrow('where it is trusted');
  });
});
