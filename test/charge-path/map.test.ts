import { describe, expect, it } from 'vitest';
import { whatIf } from '../../src/calculation/index.js';
import { NoSteadyPoint, operatingPoint, type AirCooling, type Installation } from '../../src/charge-path/index.js';
import {
  absolutePressure,
  massFlow,
  pressureDifference,
  ratio,
  rotationalSpeed,
  temperature,
} from '../../src/units/index.js';
import { demoMap } from '../compressor/demo-map.js';
import { referenceCase } from './installations.js';

const map = demoMap();
const speed = rotationalSpeed(6000, 'rpm');
const onMap: Installation = { ...referenceCase, compressor: { map } };

describe('a path with a compressor map', () => {
  it('has the efficiency that the map shows at its flow and pressure ratio', () => {
    const point = operatingPoint(onMap, speed);
    const { correctedFlow, pressureRatio, isentropicEfficiency, onMap: place } = point.compressor;
    expect(isentropicEfficiency.si).toBeCloseTo(map.isentropicEfficiency({ correctedFlow, pressureRatio }).si, 12);
    expect(place!.surgeMargin.si).toBeGreaterThan(0.2);
    expect(place!.outletTemperature.si).toBeCloseTo(point.stations.compressorOutlet.temperature.si, 6);
    for (const balance of point.balances) expect(balance.relativeDifference, balance.name).toBeLessThan(1e-9);
  });

  it('climbs on its map where the core costs more and the manifold keeps its boost: PR = (p + dp)/p1, nearer to surge', () => {
    const at = (kilopascals: number): ReturnType<typeof operatingPoint> => {
      const loss = { ...onMap.core.loss, pressure: pressureDifference(kilopascals, 'kPa') };
      const boost = { by: 'closed loop, absolute', manifoldPressure: absolutePressure(181, 'kPa') } as const;
      return operatingPoint({ ...onMap, boost, core: { ...onMap.core, loss } }, speed);
    };
    const [little, much] = [at(3), at(12)];
    for (const { stations, core, compressor } of [little, much]) {
      const asked = stations.manifold.pressure.si + 1000 + core.pressureLoss.si;
      expect(compressor.pressureRatio.si).toBeCloseTo(asked / stations.compressorInlet.pressure.si, 9);
    }
    expect(much.compressor.onMap!.surgeMargin.si).toBeLessThan(little.compressor.onMap!.surgeMargin.si);
    expect(much.compressor.onMap!.speed.si).toBeGreaterThan(little.compressor.onMap!.speed.si);
  });

  it('answers what-if through the map', () => {
    const point = operatingPoint(onMap, speed);
    const more = massFlow(0.8, 'kg/s');
    const anew = operatingPoint({ ...onMap, cooling: { ...onMap.cooling, massFlow: more } as AirCooling }, speed);
    const changed = whatIf(point.power, [[(onMap.cooling as AirCooling).massFlow, more]]);
    expect(changed.si / anew.power.si).toBeCloseTo(1, 9);
  });

  it('follows the speed line of the map where the compressor keeps its speed', () => {
    const belt: Installation = {
      ...onMap,
      compressor: { map, drivenBy: 'crankshaft' },
      boost: { by: 'fixed compressor speed on its map', speed: rotationalSpeed(125000, 'rpm') },
    };
    const warm = operatingPoint(belt, speed);
    expect(warm.compressor.onMap!.speed.in('rpm')).toBeCloseTo(125000, 3);
    const cooling = { ...belt.cooling, temperature: temperature(12, '°C') } as AirCooling;
    const cold = operatingPoint({ ...belt, cooling }, speed);
    expect(cold.compressor.onMap!.speed.in('rpm')).toBeCloseTo(125000, 3);
    expect(cold.airFlow.si).toBeGreaterThan(warm.airFlow.si);
    expect(cold.stations.manifold.pressure.si).toBeLessThan(warm.stations.manifold.pressure.si);
  });

  it('turns with the engine on a belt of a ratio', () => {
    const belt: Installation = {
      ...onMap,
      boost: { by: 'fixed compressor speed on its map', driveRatio: ratio(125000 / 6000) },
    };
    expect(operatingPoint(belt, speed).compressor.onMap!.speed.in('rpm')).toBeCloseTo(125000, 3);
  });

  it('refuses a point beyond the map, saying on which side', () => {
    const error = catchError(() => operatingPoint(onMap, rotationalSpeed(1800, 'rpm')));
    expect(error).toBeInstanceOf(NoSteadyPoint);
    expect((error as NoSteadyPoint).reason).toBe('beyond the formulas');
    expect((error as NoSteadyPoint).message).toMatch(/surge/);
  });
});

function catchError(run: () => unknown): unknown {
  try {
    run();
  } catch (error) {
    return error;
  }
  return undefined;
}
