import { describe, expect, it } from 'vitest';
import {
  brakeMeanEffectivePressure,
  frictionByPart,
  frictionCoefficients,
  frictionMeanEffectivePressure,
  frictionMeanEffectivePressureBarnesMoss,
  grossIndicatedMeanEffectivePressure,
  mechanicalEfficiency,
  netIndicatedMeanEffectivePressure,
  pumpingMeanEffectivePressure,
  pumpingMeanEffectivePressureFromPressures,
} from '../../src/engine/index.js';
import { correctionFactorSaeJ1349, mechanicalEfficiencyOfSaeJ1349 } from '../../src/correction/index.js';
import {
  absolutePressure,
  add,
  length,
  meanEffectivePressure,
  ratio,
  rotationalSpeed,
  speed,
  temperature,
  torque,
  volume,
} from '../../src/units/index.js';

const brake = brakeMeanEffectivePressure({ torque: torque(259, 'N·m'), sweptVolume: volume(1.8, 'L') });
const friction = frictionMeanEffectivePressure({
  peakCylinderPressure: absolutePressure(85, 'bar'),
  meanPistonSpeed: speed(17.46, 'm/s'),
  ...frictionCoefficients.sparkIgnition,
});

describe('indicated and pumping work', () => {
  it('adds up: gross is what the crank gives, friction keeps and gas exchange costs', () => {
    const pumping = pumpingMeanEffectivePressureFromPressures({
      exhaustPressure: absolutePressure(235, 'kPa'),
      manifoldPressure: absolutePressure(204, 'kPa'),
    });
    const net = netIndicatedMeanEffectivePressure({
      brakeMeanEffectivePressure: brake,
      frictionMeanEffectivePressure: friction,
    });
    const gross = grossIndicatedMeanEffectivePressure({
      netIndicatedMeanEffectivePressure: net,
      pumpingMeanEffectivePressure: pumping,
    });
    expect(gross.si).toBeCloseTo(brake.si + friction.si + pumping.si, 6);
    const back = pumpingMeanEffectivePressure({
      grossIndicatedMeanEffectivePressure: gross,
      netIndicatedMeanEffectivePressure: net,
    });
    expect(back.si).toBeCloseTo(pumping.si, 6);
  });

  it('is won, not lost, where boost is above exhaust pressure', () => {
    const won = pumpingMeanEffectivePressureFromPressures({
      exhaustPressure: absolutePressure(180, 'kPa'),
      manifoldPressure: absolutePressure(204, 'kPa'),
    });
    expect(won.in('kPa')).toBeCloseTo(-24, 9);
  });

  it('gives the mechanical efficiency that a power standard else has to assume', () => {
    const known = mechanicalEfficiency({
      brakeMeanEffectivePressure: brake,
      frictionMeanEffectivePressure: friction,
    });
    expect(known.si).toBeGreaterThan(mechanicalEfficiencyOfSaeJ1349.si);
    const room = { dryPressure: absolutePressure(958.77, 'hPa'), inletTemperature: temperature(30, '°C') };
    const assumed = correctionFactorSaeJ1349(room).si;
    expect(correctionFactorSaeJ1349({ ...room, mechanicalEfficiency: known }).si).toBeLessThan(assumed);
  });
});

describe('friction models', () => {
  it("make Chen and Flynn's diesel rougher than a modern spark-ignition engine at any speed", () => {
    for (const metresPerSecond of [5, 10, 16, 20]) {
      const at = { peakCylinderPressure: absolutePressure(90, 'bar'), meanPistonSpeed: speed(metresPerSecond, 'm/s') };
      const diesel = frictionMeanEffectivePressure(at).si;
      const modern = frictionMeanEffectivePressure({ ...at, ...frictionCoefficients.sparkIgnition }).si;
      if (metresPerSecond >= 10) expect(diesel).toBeGreaterThan(modern);
      expect(Math.abs(diesel - modern)).toBeLessThan(1.1e5);
    }
  });

  it('carry the status of their coefficients, from memory or of the trade', () => {
    for (const value of Object.values(frictionCoefficients.chenFlynn))
      expect(value.origin).toMatchObject({ source: { id: 'chenFlynn1965', status: 'memory' } });
    for (const value of Object.values(frictionCoefficients.sparkIgnition))
      expect(value.origin).toMatchObject({ source: { status: 'common practice' } });
    expect(frictionMeanEffectivePressureBarnesMoss.spec.sources.map(({ status }) => status)).toEqual(['memory']);
  });

  const engine = {
    bore: length(86, 'mm'),
    stroke: length(86, 'mm'),
    cylinders: ratio(4),
    engineSpeed: rotationalSpeed(4000, 'rpm'),
  };
  const parts = [
    frictionByPart.crankshaft({
      ...engine,
      bearingDiameter: length(50, 'mm'),
      bearingLength: length(20, 'mm'),
      bearings: ratio(5),
    }),
    frictionByPart.pistons({
      ...engine,
      bearingDiameter: length(45, 'mm'),
      bearingLength: length(18, 'mm'),
      bearings: ratio(4),
    }),
    frictionByPart.gasLoad({
      pressureRatio: ratio(1),
      compressionRatio: ratio(10),
      meanPistonSpeed: speed(11.466666666666667, 'm/s'),
    }),
    frictionByPart.auxiliaries({ engineSpeed: engine.engineSpeed }),
  ];

  it('by part are experimental, and say so on every result and on what is made of it', () => {
    const all = parts.reduce((total, part) => add(total, part));
    for (const result of [...parts, all]) {
      expect(result.notes.map(({ code }) => code)).toEqual(['experimental']);
      expect(result.notes[0]!.message).toMatch(/from memory of SAE 890836 and were not verified/);
    }
    expect(all.in('kPa')).toBeCloseTo(15.1023 + 49.1873 + 20.3648 + 24.246, 3);
  });

  it('by part have a share of the motored total that leaves room for valve gear and pumping', () => {
    const motored = frictionMeanEffectivePressureBarnesMoss({ engineSpeed: engine.engineSpeed });
    const rubbing = parts.reduce((total, part) => add(total, part));
    expect(rubbing.si / motored.si).toBeGreaterThan(0.3);
    expect(rubbing.si / motored.si).toBeLessThan(0.9);
  });

  it('of the gas load say that they were made for unboosted engines', () => {
    const boosted = frictionByPart.gasLoad({
      pressureRatio: ratio(2.17),
      compressionRatio: ratio(9.5),
      meanPistonSpeed: speed(17.46, 'm/s'),
    });
    expect(boosted.notes.map(({ code }) => code)).toEqual(['experimental', 'outside trusted range']);
  });

  it('refuse a mean effective pressure for the peak pressure of the cylinder', () => {
    expect(() =>
      frictionMeanEffectivePressure({
        // @ts-expect-error a mean effective pressure is no pressure in the cylinder
        peakCylinderPressure: meanEffectivePressure(18, 'bar'),
        meanPistonSpeed: speed(16, 'm/s'),
      }),
    ).toThrow(/peakCylinderPressure must be an absolute pressure/);
  });
});
