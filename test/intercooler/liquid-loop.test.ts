import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cooledTemperature,
  liquidLoopChargeTemperature,
  liquidLoopColdTemperature,
  liquidLoopHeat,
  liquidLoopHotTemperature,
} from '../../src/intercooler/index.js';
import { heatCapacityRate, percent, temperature } from '../../src/units/index.js';

const loop = {
  hotInlet: temperature(150, '°C'),
  radiatorFace: temperature(30, '°C'),
  chargeCapacityRate: heatCapacityRate(200, 'W/K'),
  coolerEffectiveness: percent(80),
  liquidCapacityRate: heatCapacityRate(600, 'W/K'),
  radiatorEffectiveness: percent(80),
  radiatorAirCapacityRate: heatCapacityRate(1000, 'W/K'),
};

const kelvin = fc.double({ min: 250, max: 440, noNaN: true });
const rate = fc.double({ min: 20, max: 5000, noNaN: true });
const share = fc.double({ min: 0.05, max: 1, noNaN: true });
const anyLoop = fc.tuple(kelvin, kelvin, rate, share, rate, share, rate);

describe('a settled liquid loop', () => {
  it('gives the charge out at 60 °C and the liquid at 37.5 and 67.5 °C in the case solved by hand', () => {
    expect(liquidLoopHeat(loop).in('kW')).toBeCloseTo(18, 12);
    expect(liquidLoopChargeTemperature(loop).in('°C')).toBeCloseTo(60, 11);
    expect(liquidLoopColdTemperature(loop).in('°C')).toBeCloseTo(37.5, 11);
    expect(liquidLoopHotTemperature(loop).in('°C')).toBeCloseTo(67.5, 11);
  });

  it('balances: charge, liquid and air pass the same heat, for any loop', () => {
    fc.assert(
      fc.property(anyLoop, (given) => {
        const [T1, Ta, Ch, ea, CL, eb, Cr] = given;
        const Q = liquidLoopHeat.kernel(...given);
        const cold = liquidLoopColdTemperature.kernel(...given);
        const hot = liquidLoopHotTemperature.kernel(...given);
        fc.pre(Math.abs(T1 - Ta) > 1);
        const size = 1e-9 * Math.abs(Q) + 1e-12 * (Ch + CL) * T1;
        expect(Math.abs(Ch * (T1 - liquidLoopChargeTemperature.kernel(...given)) - Q)).toBeLessThan(size);
        expect(Math.abs(CL * (hot - cold) - Q)).toBeLessThan(size);
        expect(Math.abs(ea * Math.min(Ch, CL) * (T1 - cold) - Q)).toBeLessThan(size);
        expect(Math.abs(eb * Math.min(CL, Cr) * (hot - Ta) - Q)).toBeLessThan(size);
      }),
    );
  });

  it('never warms the charge by a colder radiator face or a better exchanger', () => {
    fc.assert(
      fc.property(anyLoop, fc.constantFrom(1, 3, 5), share, (given, which, factor) => {
        fc.pre(given[0] > given[1]);
        const worse = given.map((value, i) => (i === which && i !== 1 ? value * factor : value));
        if (which === 1) worse[1] = given[1] + factor * (given[0] - given[1]);
        const better = liquidLoopChargeTemperature.kernel(...given);
        expect(liquidLoopChargeTemperature.kernel(...worse)).toBeGreaterThanOrEqual(better - 1e-10);
      }),
    );
  });

  it('is the charge cooler alone at the radiator face where the radiator is perfect and large', () => {
    const perfect = {
      ...loop,
      radiatorEffectiveness: percent(100),
      radiatorAirCapacityRate: heatCapacityRate(5000, 'W/K'),
    };
    const alone = cooledTemperature({
      hotInlet: loop.hotInlet,
      coolantInlet: loop.radiatorFace,
      effectiveness: loop.coolerEffectiveness,
    });
    expect(liquidLoopChargeTemperature(perfect).si).toBeCloseTo(alone.si, 11);
  });

  it('says so where the loop warms the charge', () => {
    const warm = liquidLoopHeat({ ...loop, hotInlet: temperature(20, '°C') });
    expect(warm.si).toBeLessThan(0);
    expect(warm.notes).toMatchObject([{ code: 'rule', message: expect.stringContaining('the loop warms it') }]);
  });
});
