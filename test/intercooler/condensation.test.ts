import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chargeDewPoint,
  chargeDewPointInMoistAir,
  condensateFlow,
  condensedWater,
  condensedWaterInMoistAir,
  heatRejected,
  heatRejectedByHumidCharge,
  heatRejectedByHumidChargeInMoistAir,
  humidChargeTemperature,
  humidChargeTemperatureInMoistAir,
  humidityRatioBehindCore,
  humidityRatioBehindCoreInMoistAir,
} from '../../src/intercooler/index.js';
import {
  humidAirFromRelativeHumidity,
  moistAirEnthalpy,
  saturationHumidityRatio,
} from '../../src/psychrometrics/index.js';
import {
  absolutePressure,
  humidityRatio,
  massFlow,
  power,
  relativeHumidity,
  temperature,
} from '../../src/units/index.js';

const sultry = humidAirFromRelativeHumidity({
  temperature: temperature(35, '°C'),
  pressure: absolutePressure(100, 'kPa'),
  relativeHumidity: relativeHumidity(70, '%'),
});
const charge = { humidityRatio: sultry.humidityRatio, pressure: absolutePressure(220, 'kPa') };

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('water from humid charge', () => {
  it('drops out below 43 °C in sultry air at 2.2 bar: 3.9 g per kg at 40 °C, three quarters of a gram a second', () => {
    expect(sultry.humidityRatio.in('kg/kg')).toBeCloseTo(0.02550617, 8);
    expect(chargeDewPoint(charge).in('°C')).toBeCloseTo(43.0391, 4);
    const outlet = { ...charge, temperature: temperature(40, '°C') };
    expect(condensedWater(outlet).in('kg/kg')).toBeCloseTo(0.0039081, 8);
    expect(condensateFlow({ ...outlet, dryAirFlow: massFlow(0.2, 'kg/s') }).in('g/s')).toBeCloseTo(0.78162, 5);
  });

  // Greenspan's factor, computed with mpmath, 50 digits: dew point 42.887 °C, 3.734 g/kg.
  it('is 4.5 % less with the enhancement factor, under a dew point 0.15 K lower', () => {
    const outlet = { ...charge, temperature: temperature(40, '°C') };
    expect(condensedWaterInMoistAir(outlet).in('g/kg')).toBeCloseTo(3.734, 3);
    expect(condensedWater(outlet).si / condensedWaterInMoistAir(outlet).si - 1).toBeCloseTo(0.0466, 3);
    expect(chargeDewPoint(charge).si - chargeDewPointInMoistAir(charge).si).toBeCloseTo(0.152, 2);
    expect(chargeDewPointInMoistAir({ ...charge, pressure: absolutePressure(400, 'kPa') }).notes).toEqual([]);
  });

  it('is conserved with the enhancement factor too, and its heat gives back the temperature', () => {
    fc.assert(
      fc.property(number(0, 0.04), number(245, 380), number(1e5, 5e5), (W, T, p) => {
        const [left, water] = [
          humidityRatioBehindCoreInMoistAir.kernel(W, T, p),
          condensedWaterInMoistAir.kernel(W, T, p),
        ];
        expect(left + water).toBeCloseTo(W, 15);
        expect(water).toBeLessThanOrEqual(condensedWater.kernel(W, T, p));
        const heat = heatRejectedByHumidChargeInMoistAir.kernel(0.2, 430, T, W, p);
        expect(humidChargeTemperatureInMoistAir.kernel(0.2, 430, heat, W, p)).toBeCloseTo(T, 9);
      }),
    );
  });

  it('is none above the dew point, and none where air is too hot to be saturated at all', () => {
    const dewPoint = chargeDewPoint(charge);
    expect(condensedWater({ ...charge, temperature: temperature(dewPoint.si + 1e-6, 'K') }).si).toBe(0);
    expect(condensedWater({ ...charge, temperature: temperature(dewPoint.si - 1e-3, 'K') }).si).toBeGreaterThan(0);
    expect(condensedWater({ ...charge, temperature: temperature(150, '°C') }).si).toBe(0);
    expect(humidityRatioBehindCore({ ...charge, temperature: temperature(150, '°C') }).si).toBe(
      charge.humidityRatio.si,
    );
  });

  it('is conserved: what leaves as vapour and as water is what came, and the vapour that stays can stay', () => {
    fc.assert(
      fc.property(number(0, 0.05), number(243.15, 380), number(3e4, 5e5), (W, T, p) => {
        const [left, water] = [humidityRatioBehindCore.kernel(W, T, p), condensedWater.kernel(W, T, p)];
        expect(left + water).toBeCloseTo(W, 15);
        if (water > 0) expect(left).toBeCloseTo(saturationHumidityRatio.kernel(T, p), 15);
      }),
    );
  });

  it('carries a note where it is frost, and above 3 bar', () => {
    const frost = condensedWater({ ...charge, temperature: temperature(-5, '°C') });
    expect(frost.notes).toMatchObject([{ code: 'rule', message: expect.stringContaining('frost grows in the core') }]);
    const high = chargeDewPoint({ ...charge, pressure: absolutePressure(400, 'kPa') });
    expect(high.notes).toMatchObject([{ code: 'outside trusted range', input: 'p' }]);
  });
});

describe('heat of humid charge', () => {
  const flow = { dryAirFlow: massFlow(0.2, 'kg/s'), hotInlet: temperature(121, '°C') };

  it('balances with the enthalpy of moist air and of the water that leaves', () => {
    fc.assert(
      fc.property(number(0, 0.05), number(250, 380), number(60, 150), number(8e4, 4e5), (W, T2, above, p) => {
        const T1 = T2 + above;
        fc.pre(T1 < 520);
        const [W2, water] = [humidityRatioBehindCore.kernel(W, T2, p), condensedWater.kernel(W, T2, p)];
        const balance = moistAirEnthalpy.kernel(T1, W) - moistAirEnthalpy.kernel(T2, W2) - water * 4186 * (T2 - 273.15);
        const heat = heatRejectedByHumidCharge.kernel(0.2, T1, T2, W, p);
        expect(Math.abs(heat - 0.2 * balance)).toBeLessThan(1e-9 * heat);
      }),
    );
  });

  it('is that of dry air where there is no vapour', () => {
    const dry = { ...flow, hotOutlet: temperature(40, '°C'), humidityRatio: humidityRatio(0, 'g/kg') };
    const humid = heatRejectedByHumidCharge({ ...dry, pressure: charge.pressure });
    const plain = heatRejected({ massFlow: flow.dryAirFlow, hotInlet: flow.hotInlet, hotOutlet: dry.hotOutlet });
    expect(humid.si / plain.si).toBeCloseTo(1006 / 1005, 12);
  });

  it('gives back the outlet temperature it was computed from, with and without water', () => {
    fc.assert(
      fc.property(number(0, 0.04), number(245, 380), number(1e5, 3e5), (W, T2, p) => {
        const T1 = 420;
        const heat = heatRejectedByHumidCharge.kernel(0.2, T1, T2, W, p);
        expect(humidChargeTemperature.kernel(0.2, T1, heat, W, p)).toBeCloseTo(T2, 9);
      }),
    );
  });

  it('leaves condensing charge warmer than dry charge by the same heat', () => {
    const given = { ...flow, heat: power(18.94, 'kW'), pressure: charge.pressure };
    const wet = humidChargeTemperature({ ...given, humidityRatio: charge.humidityRatio });
    const dry = humidChargeTemperature({ ...given, humidityRatio: humidityRatio(0, 'g/kg') });
    expect(wet.si - dry.si).toBeGreaterThan(12);
    expect(wet.si - dry.si).toBeLessThan(14);
  });

  it('refuses charge that enters below its dew point, and more heat than there is', () => {
    const given = { ...flow, ...charge };
    expect(() => humidChargeTemperature({ ...given, hotInlet: temperature(40, '°C'), heat: power(1, 'kW') })).toThrow(
      /hotInlet must be above the dew point/,
    );
    expect(() => humidChargeTemperature({ ...given, heat: power(200, 'kW') })).toThrow(/above -80 °C/);
  });

  it('carries a note where the core warms the charge', () => {
    const warmed = heatRejectedByHumidCharge({ ...flow, ...charge, hotOutlet: temperature(130, '°C') });
    expect(warmed.si).toBeLessThan(0);
    expect(warmed.notes).toHaveLength(1);
  });
});
