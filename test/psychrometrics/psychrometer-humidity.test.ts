import { describe, expect, it } from 'vitest';
import {
  enhancementFactor,
  relativeHumidityFromVapourPressure,
  saturationPressure,
  vapourPressureFromPsychrometerOverWater,
} from '../../src/psychrometrics/index.js';
import { absolutePressure, temperature } from '../../src/units/index.js';
import { expectPrinted } from '../statistics/printed.js';

describe('relative humidity of a psychrometer reading', () => {
  // Aspirated psychrometer (WMO-No. 8, from memory) with Buck's enhancement factor of 1981, evaluated with mpmath, 50 digits.
  it('depends on whether saturation is of pure vapour or of air: 0.396418 against 0.394776 at 30 and 20 °C', () => {
    const pressure = absolutePressure(100, 'kPa');
    const dryBulb = temperature(30, '°C');
    const vapourPressure = vapourPressureFromPsychrometerOverWater({
      temperature: dryBulb,
      wetBulb: temperature(20, '°C'),
      pressure,
    });
    expectPrinted(vapourPressure.in('Pa'), '1683.204');
    expectPrinted(relativeHumidityFromVapourPressure({ temperature: dryBulb, vapourPressure }).si, '0.396418');
    const saturated = enhancementFactor.buck1981({ pressure }).si * saturationPressure({ temperature: dryBulb }).si;
    expectPrinted(vapourPressure.si / saturated, '0.394776');
    expect(saturated).toBeGreaterThan(saturationPressure({ temperature: dryBulb }).si);
  });
});
