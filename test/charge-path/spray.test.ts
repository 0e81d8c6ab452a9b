import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain } from '../../src/calculation/index.js';
import {
  faceTemperatureWithWaterSpray,
  operatingPoint,
  waterEvaporatedBySpray,
  type Installation,
  type Spray,
} from '../../src/charge-path/index.js';
import { sprayCapacity } from '../../src/intercooler/index.js';
import { humidAirFromRelativeHumidity, moistAirEnthalpy, wetBulb } from '../../src/psychrometrics/index.js';
import { massFlow, percent, ratio, relativeHumidity, temperature, type Quantity } from '../../src/units/index.js';
import { referenceCase, speedOfReference } from './installations.js';

const sprayed = (spray: Spray, face = 27): Installation =>
  ({
    ...referenceCase,
    cooling: { ...referenceCase.cooling, temperature: temperature(face, '°C'), spray },
  }) as Installation;
const solve = (installation: Installation): ReturnType<typeof operatingPoint> =>
  operatingPoint(installation, speedOfReference);
const room = solve(referenceCase).stations.ambient;
const air = {
  airTemperature: temperature(27, '°C'),
  pressure: room.pressure,
  humidityRatio: room.humidityRatio,
  coolingAirFlow: massFlow(0.55, 'kg/s'),
};
const water = (gramsPerSecond: number): Spray => ({
  coolant: 'water',
  flow: massFlow(gramsPerSecond, 'g/s'),
  captureEfficiency: ratio(1),
});

describe('a water spray', () => {
  it('cools the air to its wet bulb and no further, however much is sprayed, and says that water is left', () => {
    const bulb = wetBulb({
      temperature: air.airTemperature,
      pressure: room.pressure,
      humidityRatio: room.humidityRatio,
    });
    const [much, flood] = [solve(sprayed(water(20))), solve(sprayed(water(500)))];
    expect(much.core.coolingAirFace.si).toBeCloseTo(bulb.si, 9);
    expect(flood.power.si).toBe(much.power.si);
    expect(much.notes.some(({ message }) => message.includes('the rest stays liquid'))).toBe(true);
  });

  it('cools by what evaporates below that, without a note', () => {
    const point = solve(sprayed(water(1)));
    // 1 g/s, from droplets of 18 °C to vapour of 27 °C 2.47 MJ/kg, into 0.545 kg/s of dry air of 1.02 kJ/(kg K) with its vapour.
    expect(27 - point.core.coolingAirFace.in('°C')).toBeCloseTo(2.47 / (0.545 * 1.02), 1);
    expect(point.notes.filter(({ message }) => message.includes('liquid'))).toEqual([]);
    expect(explain(point.power).toText()).toContain('water evaporated by a spray');
  });

  it('keeps the enthalpy of air and droplets, and never passes the wet bulb', () => {
    const rooms = fc.record({
      t: fc.double({ min: 5, max: 60, noNaN: true }),
      share: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
      flow: fc.double({ min: 0, max: 50, noNaN: true }),
    });
    fc.assert(
      fc.property(rooms, ({ t, share, flow }) => {
        const airTemperature = temperature(t, '°C');
        const humid = { ...air, airTemperature, humidityRatio: humidAt(airTemperature, share) };
        const bulb = wetBulb({
          temperature: airTemperature,
          pressure: air.pressure,
          humidityRatio: humid.humidityRatio,
        });
        fc.pre(bulb.si > 273.5);
        const sprayFlow = massFlow(flow, 'g/s');
        const evaporatedFlow = waterEvaporatedBySpray({ ...humid, sprayFlow, captureEfficiency: percent(50) });
        const face = faceTemperatureWithWaterSpray({ ...humid, evaporatedFlow });
        const W = humid.humidityRatio.si;
        const taken = (evaporatedFlow.si * (1 + W)) / 0.55;
        const before = enthalpy(airTemperature, W) + taken * 4186 * (bulb.si - 273.15);
        return (
          face.si >= bulb.si - 1e-8 && Math.abs(enthalpy(face, W + taken) - before) < 1e-6 * Math.abs(before) + 1e-3
        );
      }),
      { numRuns: 100, seed: 4 },
    );
  });

  it('is refused where it would freeze, and where it is said as a gas', () => {
    const cold = { ...referenceCase, ambient: { ...referenceCase.ambient, temperature: temperature(1, '°C') } };
    const cooling = { by: 'air' as const, massFlow: massFlow(0.55, 'kg/s'), spray: water(1) };
    expect(() => solve({ ...cold, cooling })).toThrow(/wet bulb is above 0 °C/);
    const capacity = sprayCapacity.water({ waterTemperature: temperature(18, '°C') });
    expect(() => solve(sprayed({ flow: massFlow(3, 'g/s'), capacity }))).toThrow(/say coolant: 'water'/);
    expect(() => solve(sprayed({ ...water(1), capacity } as never))).toThrow(/left out where the coolant is water/);
    expect(() => solve(sprayed({ ...water(1), coolant: 'wine' } as never))).toThrow(/one of 'water'/);
  });
});

describe.each(['carbonDioxide', 'nitrousOxide'] as const)('a spray of %s', (gas) => {
  const capacity = sprayCapacity[gas]({ bottleTemperature: temperature(18, '°C') });
  const spray = (gramsPerSecond: number): Spray => ({ flow: massFlow(gramsPerSecond, 'g/s'), capacity });

  it('brings its cautions to every result it touches', () => {
    const { notes, power } = solve(sprayed(spray(20)));
    for (const word of [/frostbite/, /suffocates/, /Frost from humid air blocks the face/]) {
      expect(notes.some(({ message }) => word.test(message))).toBe(true);
      expect(power.notes.some(({ message }) => word.test(message))).toBe(true);
    }
  });

  it('says so where the face freezes, and is not held at the wet bulb', () => {
    const point = solve(sprayed({ ...spray(100), captureEfficiency: percent(80) }));
    expect(point.core.coolingAirFace.in('°C')).toBeLessThan(0);
    expect(point.notes.some(({ message }) => message.includes('freezes on the fins and blocks the face'))).toBe(true);
  });
});

function humidAt(at: Quantity<'temperature'>, share: number): Quantity<'humidity ratio'> {
  return humidAirFromRelativeHumidity({
    temperature: at,
    pressure: air.pressure,
    relativeHumidity: relativeHumidity(share, '1'),
  }).humidityRatio;
}

const enthalpy = (at: Quantity<'temperature'>, W: number): number => moistAirEnthalpy.kernel(at.si, W);
