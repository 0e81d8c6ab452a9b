import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airSideFromTrueEffectiveness, effectiveness } from '../../src/intercooler/index.js';

/** A core whose conductance grows with each flow, less than in proportion: in series, as heat passes both sides. */
interface Core {
  readonly hot: number;
  readonly cold: number;
  readonly hotExponent: number;
  readonly coldExponent: number;
}

const cp = 1005;

function effectivenessOf(
  core: Core,
  charge: number,
  cooling: number,
): { whole: number; airSide: number; ratio: number } {
  const UA = 1 / (1 / (core.hot * charge ** core.hotExponent) + 1 / (core.cold * cooling ** core.coldExponent));
  const [Ch, Cc] = [charge * cp, cooling * cp];
  const whole = effectiveness.crossflowUnmixed.kernel(UA / Math.min(Ch, Cc), Math.min(Ch, Cc) / Math.max(Ch, Cc));
  return { whole, airSide: airSideFromTrueEffectiveness.kernel(whole, Ch, Cc), ratio: Ch / Cc };
}

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const anyCore = fc.record({
  hot: number(300, 6000),
  cold: number(300, 6000),
  hotExponent: number(0.3, 0.95),
  coldExponent: number(0.3, 0.95),
});
const flow = number(0.02, 1);
const growth = number(1.001, 3);
const ROUNDING = 1e-12;

describe('a crossflow core', () => {
  it('never leaves the charge further from the face with more cooling air at the same face temperature', () => {
    fc.assert(
      fc.property(anyCore, flow, flow, growth, (core, charge, cooling, more) => {
        const [little, much] = [cooling, cooling * more].map((air) => effectivenessOf(core, charge, air).airSide);
        expect(much!).toBeGreaterThanOrEqual(little! - ROUNDING);
      }),
    );
  });

  it('never gains air-side effectiveness with charge flow at the same cooling air', () => {
    fc.assert(
      fc.property(anyCore, flow, flow, growth, (core, charge, cooling, more) => {
        const [little, much] = [charge, charge * more].map((air) => effectivenessOf(core, air, cooling).airSide);
        expect(much!).toBeLessThanOrEqual(little! + ROUNDING);
      }),
    );
  });

  it('loses true effectiveness with charge flow while the charge is the smaller rate, and gains where the cooling air is', () => {
    fc.assert(
      fc.property(anyCore, flow, flow, growth, (core, charge, cooling, more) => {
        const [before, after] = [effectivenessOf(core, charge, cooling), effectivenessOf(core, charge * more, cooling)];
        if (after.ratio <= 1) expect(after.whole).toBeLessThanOrEqual(before.whole + ROUNDING);
        if (before.ratio >= 1) expect(after.whole).toBeGreaterThanOrEqual(before.whole - ROUNDING);
      }),
    );
  });

  it('falls from 0.784 to 0.694 with half as much charge again, in the case computed with 50 digits', () => {
    expect(effectiveness.crossflowUnmixed.kernel(2, 0.3)).toBeCloseTo(0.784184, 6);
    expect(effectiveness.crossflowUnmixed.kernel(2 / Math.sqrt(1.5), 0.45)).toBeCloseTo(0.693505, 6);
  });
});
