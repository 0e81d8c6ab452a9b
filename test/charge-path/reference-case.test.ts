import { describe, expect, it } from 'vitest';
import { explain, whatIf } from '../../src/calculation/index.js';
import { operatingPoint, type AirCooling } from '../../src/charge-path/index.js';
import { outletTemperature, outletTemperatureVariableHeat } from '../../src/compressor/index.js';
import { brakeThermalEfficiency, injectorFlowNeeded } from '../../src/fuel/index.js';
import { chargeDewPoint } from '../../src/intercooler/index.js';
import { density, massFlow, percent, ratio, specificEnergy, type Quantity } from '../../src/units/index.js';
import { referenceCase, speedOfReference, withCoolingAir } from './installations.js';

/** The figures as they are printed, computed beside the library with a small solver of their own. */
const printed = (quantity: Quantity, unit: string, text: string): void => {
  const decimals = text.split('.')[1]?.length ?? 0;
  expect(quantity.in(unit as never).toFixed(decimals), quantity.label).toBe(text);
};

describe('the reference case, to the digits printed', () => {
  const point = operatingPoint(referenceCase, speedOfReference);
  const { ambient, compressorInlet, compressorOutlet, coreOutlet, manifold } = point.stations;

  it('has its weather', () => {
    printed(ambient.pressure, 'kPa', '93.86908');
    printed(ambient.temperature, '°C', '24.000');
    printed(ambient.vapourPressure, 'kPa', '1.343307');
    printed(ambient.humidityRatio, 'kg/kg', '0.009029518');
    printed(ambient.density, 'kg/m³', '1.094575');
  });

  it('compresses with a heat capacity that varies, water included', () => {
    printed(compressorInlet.pressure, 'kPa', '92.36908');
    printed(compressorInlet.temperature, '°C', '27.000');
    printed(compressorOutlet.pressure, 'kPa', '188.8691');
    printed(compressorOutlet.temperature, '°C', '120.936');
    printed(point.compressor.pressureRatio, '1', '2.044722');
    printed(point.compressor.power, 'kW', '15.782');
    printed(point.compressor.correctedFlow, 'kg/s', '0.17961');
    const constantRatio = outletTemperature({
      inletTemperature: compressorInlet.temperature,
      pressureRatio: point.compressor.pressureRatio,
      isentropicEfficiency: ratio(0.72),
    });
    printed(constantRatio, '°C', '121.52');
    const ideal = outletTemperatureVariableHeat({
      inletTemperature: compressorInlet.temperature,
      pressureRatio: point.compressor.pressureRatio,
      isentropicEfficiency: ratio(1),
      humidityRatio: compressorInlet.humidityRatio,
    });
    printed(ideal, '°C', '94.714');
  });

  it('cools', () => {
    printed(coreOutlet.pressure, 'kPa', '182.4911');
    printed(coreOutlet.temperature, '°C', '49.959');
    printed(point.core.pressureLoss, 'kPa', '6.378');
    printed(point.core.meanDensity, 'kg/m³', '1.79665');
    printed(point.core.transferUnits, '1', '1.80168');
    printed(point.core.capacityRatio, '1', '0.303611');
    printed(point.core.effectiveness, '1', '0.755593');
    printed(point.core.heat, 'kW', '11.9352');
    printed(point.core.coolingAirBehind, '°C', '48.55');
    expect(point.core.condensate.si).toBe(0);
    const { pressure, humidityRatio } = coreOutlet;
    printed(chargeDewPoint({ pressure, humidityRatio }), '°C', '21.79');
  });

  it('fills the engine', () => {
    printed(manifold.pressure, 'kPa', '181.4911');
    printed(manifold.temperature, '°C', '51.959');
    printed(point.boostReading, 'kPa', '87.622');
    // 12.70850 to the last digit but one: the print rounds it up, and 0.03 Pa decides.
    expect(point.boostReading.in('psi')).toBeCloseTo(12.7085, 4);
    printed(manifold.dryAirDensity, 'kg/m³', '1.916997');
    printed(point.humidAirFlow, 'kg/s', '0.1653527');
    printed(point.airFlow, 'kg/s', '0.1638730');
    printed(point.airFlow, 'lb/min', '21.677');
    printed(point.engine.volumetricEfficiency, '1', '0.950127');
    printed(point.engine.volumetricEfficiencyOnAmbient, '1', '1.67904');
  });

  it('makes power', () => {
    printed(point.engine.fuelFlow, 'g/s', '14.0302');
    printed(point.power, 'kW', '162.932');
    printed(point.power, 'hp', '218.49');
    printed(point.torque, 'N·m', '259.31');
    printed(point.engine.brakeMeanEffectivePressure, 'kPa', '1810.9');
    const efficiency = brakeThermalEfficiency({
      specificFuelConsumption: referenceCase.fuelling.specificFuelConsumption!,
      lowerHeatingValue: specificEnergy(43.44, 'MJ/kg'),
    });
    printed(efficiency, '1', '0.2673');
    const injector = injectorFlowNeeded({
      fuelMassFlow: point.engine.fuelFlow,
      injectors: ratio(4),
      fuelDensity: density(0.745, 'kg/L'),
      dutyLimit: percent(85),
    });
    printed(injector, 'cm³/min', '332.3');
  });

  it('gains what is printed from more cooling air', () => {
    const after = operatingPoint(withCoolingAir(1), speedOfReference);
    printed(after.stations.coreOutlet.temperature, '°C', '42.714');
    expect((after.stations.manifold.pressure.in('kPa') - manifold.pressure.in('kPa')).toFixed(3)).toBe('-0.086');
    expect((100 * (after.airFlow.si / point.airFlow.si - 1)).toFixed(2)).toBe('1.31');
    expect((100 * (after.power.si / point.power.si - 1)).toFixed(2)).toBe('1.31');
    printed(after.core.effectiveness, '1', '0.8327');
    const fuelHeld = operatingPoint(
      {
        ...withCoolingAir(1),
        fuelling: {
          stoichiometricAirFuelRatio: referenceCase.fuelling.stoichiometricAirFuelRatio,
          specificFuelConsumption: referenceCase.fuelling.specificFuelConsumption!,
          fuelMassFlow: point.engine.fuelFlow,
        },
      },
      speedOfReference,
    );
    printed(fuelHeld.engine.lambda, '1', '0.8105');
  });

  it('balances at every station', () => {
    for (const balance of point.balances) expect(balance.relativeDifference, balance.name).toBeLessThan(1e-12);
  });

  it('answers what-if with what solving anew gives', () => {
    const flow = (referenceCase.cooling as AirCooling).massFlow;
    const changed = whatIf(point.power, [[flow, massFlow(1, 'kg/s')]]);
    expect(changed.si).toBeCloseTo(operatingPoint(withCoolingAir(1), speedOfReference).power.si, 6);
  });

  it('explains the balances it satisfies', () => {
    const text = explain(point.power).toText();
    expect(text).toContain('mass flow of dry air');
    expect(text).toContain('charge temperature behind the core');
    expect(text).toMatch(/found so that/);
  });
});
