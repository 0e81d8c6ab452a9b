import { describe, expect, it } from 'vitest';
import { densityRatio, dryAirDensity } from '../../src/air/index.js';
import { absolutePressure, scale, temperature } from '../../src/units/index.js';

const inlet = { inletTemperature: temperature(18, '°C'), inletPressure: absolutePressure(941, 'hPa') };

describe('density ratio', () => {
  it('is 1 where nothing changes', () => {
    const same = { outletTemperature: inlet.inletTemperature, outletPressure: inlet.inletPressure };
    expect(densityRatio({ ...inlet, ...same }).si).toBe(1);
  });

  it('is the pressure ratio where the cooling is perfect', () => {
    const outletPressure = scale(inlet.inletPressure, 2.17);
    expect(densityRatio({ ...inlet, outletTemperature: inlet.inletTemperature, outletPressure }).si).toBeCloseTo(
      2.17,
      14,
    );
  });

  it('is the ratio of the two densities', () => {
    const hot = { temperature: temperature(45, '°C'), pressure: absolutePressure(2.041, 'bar') };
    const cold = { temperature: inlet.inletTemperature, pressure: inlet.inletPressure };
    const ratio = densityRatio({ ...inlet, outletTemperature: hot.temperature, outletPressure: hot.pressure });
    expect(ratio.si).toBeCloseTo(dryAirDensity(hot).si / dryAirDensity(cold).si, 14);
  });

  it('gives about 4 % for a charge 25 °F colder at 8 psi with a little less boost showing (common practice, no source)', () => {
    const before = { inletTemperature: temperature(130, '°F'), inletPressure: absolutePressure(22.7, 'psi') };
    const after = { outletTemperature: temperature(105, '°F'), outletPressure: absolutePressure(22.6, 'psi') };
    const gain = densityRatio({ ...before, ...after }).si - 1;
    expect(gain).toBeGreaterThan(0.035);
    expect(gain).toBeLessThan(0.045);
  });
});
