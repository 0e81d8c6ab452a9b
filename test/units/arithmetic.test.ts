import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  absolute,
  absolutePressure,
  add,
  CalculationError,
  compareValues,
  gauge,
  gaugePressure,
  massFlow,
  power,
  pressureDifference,
  ratio,
  ratioOf,
  sameQuantity,
  scale,
  seaLevelPressure,
  subtract,
  temperature,
  temperatureDifference,
} from '../../src/units/index.js';

const barometer = absolutePressure(941.2, 'hPa');

describe('arithmetic that keeps kinds right', () => {
  it('takes two temperatures to a temperature difference, and back', () => {
    const rise = subtract(temperature(121, '°C'), temperature(18, '°C'));
    expect([rise.kind, rise.in('K'), String(rise)]).toEqual(['temperature difference', 103, '103.0 K']);
    expect(add(temperature(18, '°C'), rise).in('°C')).toBeCloseTo(121, 10);
    expect(subtract(temperature(121, '°C'), temperatureDifference(10, '°F')).in('K')).toBeCloseTo(388.594444, 6);
  });

  it('takes two pressures of one kind to a pressure difference', () => {
    expect(subtract(absolutePressure(2, 'bar'), absolutePressure(1.9, 'bar')).kind).toBe('pressure difference');
    expect(subtract(gaugePressure(2, 'bar'), pressureDifference(6, 'kPa')).kind).toBe('gauge pressure');
  });

  it('adds and scales amounts of one kind', () => {
    expect(add(power(100, 'kW'), power(50, 'kW')).in('kW')).toBe(150);
    expect(scale(massFlow(100, 'g/s'), ratio(0.5)).in('g/s')).toBeCloseTo(50, 12);
    expect(ratioOf(temperature(600, 'K'), temperature(300, 'K')).si).toBe(2);
  });

  it('refuses sums, products and ratios that mean nothing', () => {
    expect(() => add(temperature(18, '°C'), temperature(18, '°C') as never)).toThrow(/Add a temperature difference/);
    expect(() => add(absolutePressure(1, 'bar'), gaugePressure(1, 'bar') as never)).toThrow(CalculationError);
    expect(() => subtract(absolutePressure(1, 'bar'), gaugePressure(1, 'bar') as never)).toThrow(CalculationError);
    expect(() => ratioOf(gaugePressure(1, 'bar'), gaugePressure(1, 'bar'))).toThrow(/needs absolute pressures/);
    expect(() => ratioOf(power(1, 'W'), massFlow(1, 'kg/s') as never)).toThrow(/of one kind/);
    expect(() => scale(temperature(18, '°C'), 2)).toThrow(/arbitrary zero/);
    expect(() => subtract(temperature(10, 'K'), temperatureDifference(20, 'K'))).toThrow(/must not be below zero/);
    expect(() => ratioOf(power(1, 'W'), power(0, 'W'))).toThrow(/no answer/);
    expect(() => compareValues(power(1, 'W'), massFlow(1, 'kg/s') as never)).toThrow(CalculationError);
  });

  it('sorts by value whatever the unit', () => {
    const sorted = [power(100, 'kW'), power(100, 'hp'), power(100, 'PS')].sort(compareValues);
    expect(sorted.map((one) => one.unit)).toEqual(['PS', 'hp', 'kW']);
    expect(sameQuantity(power(1, 'kW'), power(1000, 'W'))).toBe(true);
  });

  it('adding and taking off again changes nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 300, noNaN: true }),
        (t, dt) => {
          const there = add(temperature(t, '°C'), temperatureDifference(dt, 'K'));
          expect(subtract(there, temperatureDifference(dt, 'K')).si).toBeCloseTo(temperature(t, '°C').si, 9);
        },
      ),
    );
  });
});

describe('gauge and absolute pressure', () => {
  it('cross only over the barometer at the place', () => {
    const manifold = absolute(gaugePressure(1.1, 'bar'), barometer);
    expect(manifold.in('hPa')).toBeCloseTo(2041.2, 9);
    expect(ratioOf(manifold, barometer).si).toBeCloseTo(2.1687208, 7);
    expect(gauge(manifold, barometer).in('bar')).toBeCloseTo(1.1, 12);
  });

  it('refuse a barometer reduced to sea level, in the words of the trade', () => {
    expect(() => absolute(gaugePressure(1.1, 'bar'), seaLevelPressure(1016, 'hPa') as never)).toThrow(
      'absolute pressure: barometer must be an absolute pressure, got a sea-level pressure (1016 hPa). Use stationPressure({ seaLevel, elevation }).',
    );
    expect(() => absolute(gaugePressure(1.1, 'bar'), absolutePressure(94.12, 'Pa'))).toThrow(/Is it in kilo-units/);
    expect(() => absolute(gaugePressure(-1.5, 'bar'), barometer)).toThrow(/below vacuum/);
  });
});
