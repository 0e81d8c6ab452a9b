import { describe, expect, it } from 'vitest';
import { compressorPower, outletTemperature, shaftPower, specificWork } from '../../src/compressor/index.js';
import { massFlow, percent, ratio, specificHeatCapacity, temperature } from '../../src/units/index.js';

describe('compressor power', () => {
  const inletTemperature = temperature(18, '°C');
  const hot = outletTemperature({ inletTemperature, pressureRatio: ratio(2.17), isentropicEfficiency: percent(70) });
  const work = specificWork({ inletTemperature, outletTemperature: hot });

  it('follows from the work per kilogram and the flow, and the shaft brings the loss on top', () => {
    const into = compressorPower({ massFlow: massFlow(200, 'g/s'), specificWork: work });
    const shaft = shaftPower({ compressorPower: into, mechanicalEfficiency: percent(95) });
    expect(into.in('kW')).toBeCloseTo(20.71, 2);
    // First law: what the shaft brings, less the loss in the bearings, is what the air carries away.
    expect(shaft.si * 0.95).toBeCloseTo(0.2 * 1005 * (hot.si - inletTemperature.si), 8);
  });

  it('is nothing without flow or without work', () => {
    expect(compressorPower({ massFlow: massFlow(0, 'g/s'), specificWork: work }).si).toBe(0);
    expect(specificWork({ inletTemperature, outletTemperature: inletTemperature }).si).toBe(0);
  });

  it('refuses air that leaves colder than it came', () => {
    expect(() => specificWork({ inletTemperature: hot, outletTemperature: inletTemperature })).toThrow(
      /outletTemperature must not be below inletTemperature/,
    );
  });

  it('refuses a specific heat capacity in the wrong thousand', () => {
    const wrong = {
      inletTemperature,
      outletTemperature: hot,
      specificHeatCapacity: specificHeatCapacity(1.005, 'J/(kg·K)'),
    };
    expect(() => specificWork(wrong)).toThrow(/specificHeatCapacity must be between/);
  });
});
