import { describe, expect, it } from 'vitest';
import { uncertainty } from '../../src/calculation/index.js';
import { coreFromGeometry, operatingPoint, type Installation } from '../../src/charge-path/index.js';
import { coreRating } from '../../src/intercooler/index.js';
import { scale, temperature } from '../../src/units/index.js';
import { benchCore, benchFlows } from '../intercooler/bench-core.js';
import { referenceCase, speedOfReference } from './installations.js';

const core = coreFromGeometry(benchCore, benchFlows);

describe('a core from its geometry', () => {
  it('grows with flow as finned passages do', () => {
    for (const side of [core.charge, core.coolant]) {
      expect(side.exponent.si).toBeGreaterThan(0.3);
      expect(side.exponent.si).toBeLessThan(0.85);
    }
    expect(core.loss.exponent!.si).toBeGreaterThan(1.4);
    expect(core.loss.exponent!.si).toBeLessThan(2);
  });

  it('works in an installation as it was rated, where it was rated', () => {
    const installation: Installation = {
      ...referenceCase,
      core,
      cooling: { by: 'air', massFlow: benchFlows.coolant.massFlow, temperature: temperature(18, '°C') },
    };
    const point = operatingPoint(installation, speedOfReference);
    const { compressorOutlet, coreOutlet } = point.stations;
    const rated = coreRating(benchCore, {
      charge: {
        massFlow: point.humidAirFlow,
        inletTemperature: compressorOutlet.temperature,
        inletPressure: compressorOutlet.pressure,
      },
      coolant: { ...benchFlows.coolant, inletTemperature: temperature(18, '°C') },
    });
    expect(Math.abs(coreOutlet.temperature.si - rated.chargeOutlet.si)).toBeLessThan(1);
    expect(point.core.pressureLoss.si / rated.chargePressureLoss.si).toBeCloseTo(1, 1);
  });

  it('carries the scatter of its correlations into the power', () => {
    const rate = uncertainty(
      operatingPoint({ ...referenceCase, core }, speedOfReference).stations.coreOutlet.temperature,
    );
    expect(rate.standard.in('K')).toBeGreaterThan(0.1);
  });

  it('is one for the flows it is asked for', () => {
    const more = {
      charge: { ...benchFlows.charge, massFlow: scale(benchFlows.charge.massFlow, 1.5) },
      coolant: benchFlows.coolant,
    };
    expect(coreFromGeometry(benchCore, more).charge.conductance.si).toBeGreaterThan(core.charge.conductance.si);
  });
});
