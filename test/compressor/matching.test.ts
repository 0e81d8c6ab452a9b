import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain, measured, uncertainty, whatIf } from '../../src/calculation/index.js';
import {
  correctedFlow,
  matchEngineToMap,
  matchEngineToMapAtSpeed,
  pointOnMap,
  type EngineFlow,
} from '../../src/compressor/index.js';
import { speedDensityAirflow } from '../../src/engine/index.js';
import { cooledTemperature } from '../../src/intercooler/index.js';
import {
  absolutePressure,
  humidityRatio,
  massFlow,
  percent,
  pressureDifference,
  ratio,
  rotationalSpeed,
  subtract,
  temperature,
  temperatureDifference,
  volume,
} from '../../src/units/index.js';
import { demoMap } from './demo-map.js';

const map = demoMap();
const room = temperature(18, '°C');
const inlet = { inletTemperature: room, inletPressure: absolutePressure(93, 'kPa') };

/** The hill-climb engine with its cooler: 7 kPa of loss, effectiveness 75 %. */
const engine =
  (rpm: number, litres = 1.8): EngineFlow =>
  ({ outletPressure, outletTemperature }) =>
    speedDensityAirflow({
      volumetricEfficiency: percent(95),
      manifoldPressure: subtract(outletPressure, pressureDifference(7, 'kPa')),
      chargeTemperature: cooledTemperature({
        hotInlet: outletTemperature,
        coolantInlet: room,
        effectiveness: percent(75),
      }),
      sweptVolume: volume(litres, 'L'),
      engineSpeed: rotationalSpeed(rpm, 'rpm'),
    });

describe('an operating point', () => {
  const point = pointOnMap(map, { ...inlet, massFlow: massFlow(190, 'g/s'), pressureRatio: ratio(2.2) });

  it('corrects flow and speed to the reference of the map, and back', () => {
    expect(point.correctedFlow.si).toBeCloseTo((0.19 * Math.sqrt(291.15 / 298.15)) / 0.93, 12);
    expect(point.correctedSpeed.si / point.speed.si).toBeCloseTo(Math.sqrt(298.15 / 291.15), 12);
    expect(point.power.si).toBeCloseTo(0.19 * point.specificWork.si, 9);
    expect(point.outletPressure.in('kPa')).toBeCloseTo(204.6, 10);
  });

  it('has margins by their definitions', () => {
    const { pressureRatio, correctedSpeed } = point;
    const surge = map.surgeFlow({ pressureRatio }).si;
    expect(point.surgeMargin.si).toBeCloseTo(1 - surge / point.correctedFlow.si, 12);
    expect(point.chokeMargin.si).toBeCloseTo(map.chokeFlow({ correctedSpeed }).si / point.correctedFlow.si - 1, 12);
    const throttle = (PR: number, flow: number): number => PR / flow;
    const atSurge = throttle(
      map.surgePressureRatio({ correctedSpeed }).si,
      map.surgeFlowAtSpeed({ correctedSpeed }).si,
    );
    expect(point.surgeMarginAtSpeed.si).toBeCloseTo(atSurge / throttle(2.2, point.correctedFlow.si) - 1, 12);
  });

  it('breathes humid air colder and with more work', () => {
    const humid = pointOnMap(map, {
      ...inlet,
      humidityRatio: humidityRatio(10, 'g/kg'),
      massFlow: massFlow(190, 'g/s'),
      pressureRatio: ratio(2.2),
    });
    expect(humid.outletTemperature.si).toBeLessThan(point.outletTemperature.si);
    expect(humid.power.si).toBeGreaterThan(point.power.si);
  });

  it('shows itself, and says which property it does not have', () => {
    expect(String(point)).toMatch(
      /^0\.2019 kg\/s corrected at pressure ratio 2\.2 on hill-climb compressor: efficiency 71\.\d+ %/,
    );
    expect(Object.keys(point.toJSON())).toContain('outletTemperature');
    const low = pointOnMap(map, { ...inlet, massFlow: massFlow(110, 'g/s'), pressureRatio: ratio(1.25) });
    expect(low.isentropicEfficiency.si).toBeGreaterThan(0.6);
    expect(() => low.surgeMargin).toThrow(/a pressure ratio that the surge line of hill-climb compressor reaches/);
  });
});

describe('matching at a pressure ratio', () => {
  it('finds where the engine takes what the compressor gives, as stepping by hand does', () => {
    const pressureRatio = ratio(2.2);
    const matched = matchEngineToMap(map, { ...inlet, pressureRatio, engineFlow: engine(6000) });
    // By hand: from a guessed efficiency the temperature and the flow, then the efficiency at that flow, until nothing moves.
    let flow = massFlow(150, 'g/s');
    for (let step = 0; step < 60; step++)
      flow = massFlow(engine(6000)(pointOnMap(map, { ...inlet, massFlow: flow, pressureRatio })).si, 'kg/s');
    expect(matched.massFlow.si).toBeCloseTo(flow.si, 12);
    const second = engine(6000)(pointOnMap(map, { ...inlet, massFlow: massFlow(150, 'g/s'), pressureRatio }));
    expect(Math.abs(second.si / flow.si - 1)).toBeLessThan(0.02);
  });

  it('moves right on the map with engine speed', () => {
    const flows = [3500, 4500, 5500, 6500].map(
      (rpm) =>
        matchEngineToMap(map, { ...inlet, pressureRatio: ratio(2.17), engineFlow: engine(rpm) }).correctedFlow.si,
    );
    flows.slice(1).forEach((flow, i) => expect(flow).toBeGreaterThan(flows[i]!));
  });

  it('says whether the engine takes too little or too much', () => {
    const match = (rpm: number) => () =>
      matchEngineToMap(map, { ...inlet, pressureRatio: ratio(2.2), engineFlow: engine(rpm) });
    expect(match(2500)).toThrow(
      /an engine that takes a flow on hill-climb compressor at pressure ratio 2\.2, got .* where it surges below .*\. The compressor is too large/,
    );
    expect(match(8500)).toThrow(/got .* where it ends at .*\. The compressor is too small/);
  });

  it('gives an answer whose history leads back: what-if moves the whole match, and uncertainty goes through it', () => {
    const inletTemperature = measured('inlet', room, { standardUncertainty: temperatureDifference(1, 'K') });
    const state = { ...inlet, inletTemperature, pressureRatio: ratio(2.2), engineFlow: engine(6000) };
    const matched = matchEngineToMap(map, state);
    const hot = temperature(30, '°C');
    const again = matchEngineToMap(map, { ...state, inletTemperature: hot });
    expect(whatIf(matched.massFlow, [[inletTemperature, hot]]).si).toBeCloseTo(again.massFlow.si, 9);
    expect(whatIf(matched.outletTemperature, [[inletTemperature, hot]]).si).toBeCloseTo(again.outletTemperature.si, 6);
    expect(whatIf(matched.speed, [[inletTemperature, hot]]).si).toBeCloseTo(again.speed.si, 5);
    expect(whatIf(matched.surgeMargin, [[inletTemperature, hot]]).si).toBeCloseTo(again.surgeMargin.si, 7);
    expect(uncertainty(matched.massFlow).standard.in('g/s')).toBeCloseTo(0.2, 1);
    expect(explain(matched.massFlow).toText()).toContain('corrected flow = ');
  });
});

describe('matching at a speed of the wheel', () => {
  it('lies on the speed line and takes what the engine takes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4500, max: 6500 }), fc.integer({ min: 100, max: 140 }), (rpm, thousands) => {
        const speed = rotationalSpeed(thousands * 1000, 'rpm');
        const matched = matchEngineToMapAtSpeed(map, { ...inlet, speed, engineFlow: engine(rpm) });
        const taken = correctedFlow({ massFlow: engine(rpm)(matched), ...inlet, ...map.reference });
        expect(Math.abs(taken.si / matched.correctedFlow.si - 1)).toBeLessThan(1e-12);
        expect(
          map.correctedSpeed({ correctedFlow: matched.correctedFlow, pressureRatio: matched.pressureRatio }).si /
            matched.correctedSpeed.si,
        ).toBeCloseTo(1, 7);
        expect(matched.speed.si).toBe(speed.si);
      }),
      { numRuns: 30 },
    );
  });

  it('falls in pressure ratio when the engine takes more', () => {
    const speed = rotationalSpeed(130000, 'rpm');
    const [less, more] = [5000, 6500].map((rpm) =>
      matchEngineToMapAtSpeed(map, { ...inlet, speed, engineFlow: engine(rpm) }),
    );
    expect(more!.pressureRatio.si).toBeLessThan(less!.pressureRatio.si);
    expect(more!.massFlow.si).toBeGreaterThan(less!.massFlow.si);
  });

  it('says that a large engine chokes it', () => {
    const choked = () =>
      matchEngineToMapAtSpeed(map, { ...inlet, speed: rotationalSpeed(130000, 'rpm'), engineFlow: engine(6500, 3) });
    expect(choked).toThrow(/on hill-climb compressor at 130000 rpm, got .* The compressor is too small/);
  });
});
