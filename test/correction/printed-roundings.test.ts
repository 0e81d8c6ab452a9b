import { describe, expect, it } from 'vitest';
import {
  correctionFactorDin70020,
  correctionFactorIso1585,
  correctionFactorSaeJ1349Abbreviated,
  correctionFactorSaeJ607,
  correctionFactorSaeJ816,
} from '../../src/correction/index.js';
import { vapourPressureFromRelativeHumidity } from '../../src/psychrometrics/index.js';
import { absolutePressure } from '../../src/units/index.js';
import { expectPrinted } from '../statistics/printed.js';

// 980 hPa, 30 °C, 50 %: 95876.985 Pa of dry air, 28.31246 inHg. The printed forms as quoted in public, evaluated with mpmath.
const DRY = 95876.985;
const INCHES = absolutePressure(DRY, 'Pa').in('inHg');
const TOTAL = 98000;
const T = 303.15;
const DAY_F = 86;

describe('a correction factor against programs that round the constants of its text', () => {
  it('SAE J1349 abbreviated is 5e-6 below 303 K over 298 K, and 0.03 % below one that mixes 303.15 K with 298 K', () => {
    const own = correctionFactorSaeJ1349Abbreviated.kernel(DRY, T);
    const printed = (over: number): number => 1.18 * (99e3 / DRY) * Math.sqrt(over) - 0.18;
    expectPrinted(printed(303 / 298), '1.048616');
    expectPrinted(printed(303.15 / 298), '1.048920');
    expectPrinted(own, '1.048610');
    expect(printed(303 / 298) - own).toBeCloseTo(5e-6, 6);
    expect(printed(303.15 / 298) / own - 1).toBeCloseTo(3e-4, 4);
  });

  it('SAE J607 is 0.006 % above the printed 29.92, 460 and 520', () => {
    const printed = (29.92 / INCHES) * Math.sqrt((DAY_F + 460) / 520);
    expectPrinted(printed, '1.082876');
    expect(correctionFactorSaeJ607.kernel(DRY, T) / printed - 1).toBeCloseTo(6e-5, 5);
  });

  it('SAE J607 is 1.4 % below programs that put the friction form of SAE J1349 on its reference', () => {
    const printed = 1.18 * (29.92 / INCHES) * Math.sqrt((DAY_F + 460) / 520) - 0.18;
    expectPrinted(printed, '1.097794');
    expect(correctionFactorSaeJ607.kernel(DRY, T) / printed - 1).toBeCloseTo(-0.0135, 4);
  });

  it('SAE J816 is within 1e-6 of the printed 29.00, 460 and 545', () => {
    const printed = (29 / INCHES) * Math.sqrt((DAY_F + 460) / 545);
    expectPrinted(printed, '1.025223');
    expect(correctionFactorSaeJ816.kernel(DRY, T) / printed - 1).toBeCloseTo(0, 5);
  });

  it('ISO 1585 is 5e-6 below 303 K over 298 K, and 0.03 % below one that mixes 303.15 K with 298 K', () => {
    const own = correctionFactorIso1585.kernel(DRY, T);
    const printed = (over: number): number => (99e3 / DRY) ** 1.2 * over ** 0.6;
    expectPrinted(printed(303 / 298), '1.049641');
    expectPrinted(printed(303.15 / 298), '1.049953');
    expectPrinted(own, '1.049636');
    expect(printed(303.15 / 298) / own - 1).toBeCloseTo(3e-4, 4);
  });

  it('DIN 70020 is 9e-6 below 303 K over 293 K, and 0.025 % below one that takes a full atmosphere', () => {
    const own = correctionFactorDin70020.kernel(TOTAL, T);
    expectPrinted((101300 / TOTAL) * Math.sqrt(303 / 293), '1.051165');
    expectPrinted((101325 / TOTAL) * Math.sqrt(T / 293.15), '1.051415');
    expectPrinted(own, '1.051156');
  });
});

describe('what a wrong barometer is worth in ISO 1585', () => {
  it('over 5 % where humidity is left out at 35 °C and 80 %', () => {
    const vapour = vapourPressureFromRelativeHumidity.kernel(308.15, 0.8);
    expectPrinted(vapour, '4502.26');
    const right = correctionFactorIso1585.kernel(1e5 - vapour, 308.15);
    expectPrinted(right / correctionFactorIso1585.kernel(1e5, 308.15), '1.056838');
  });

  it('7 % where a barometer reduced to sea level is taken at 500 m', () => {
    const right = correctionFactorIso1585.kernel(95461, 298.15);
    expectPrinted(right / correctionFactorIso1585.kernel(101325, 298.15), '1.0742');
  });
});

describe('inches of mercury of the reference pressure', () => {
  it('depend on the temperature of the mercury and on which pressure is meant', () => {
    expectPrinted(absolutePressure(99, 'kPa').in('inHg'), '29.2347');
    expectPrinted(absolutePressure(99, 'kPa').in('inHg(60F)'), '29.317');
    expectPrinted(absolutePressure(100, 'kPa').in('inHg'), '29.530');
  });
});
