import { standardPressure } from '../../src/air/index.js';
import type { CoreSide, Installation } from '../../src/charge-path/index.js';
import {
  airFuelRatio,
  density,
  gaugePressure,
  lambda,
  length,
  massFlow,
  pressureDifference,
  ratio,
  relativeHumidity,
  rotationalSpeed,
  specificFuelConsumption,
  specificHeatCapacity,
  temperature,
  temperatureDifference,
  thermalConductance,
} from '../../src/units/index.js';

const side = (kilogramsPerSecond: number): CoreSide => ({
  conductance: thermalConductance(600, 'W/K'),
  atFlow: massFlow(kilogramsPerSecond, 'kg/s'),
  exponent: ratio(0.6),
});

export const speedOfReference = rotationalSpeed(6000, 'rpm');

/** The reference case: 1.8 L turbo four at 640 m, spring on the compressor outlet. */
export const referenceCase: Installation = {
  ambient: {
    pressure: standardPressure({ elevation: length(640, 'm') }),
    temperature: temperature(24, '°C'),
    relativeHumidity: relativeHumidity(45, '%'),
  },
  inlet: { loss: pressureDifference(1.5, 'kPa'), heating: temperatureDifference(3, 'K') },
  compressor: { isentropicEfficiency: ratio(0.72) },
  core: {
    arrangement: 'crossflowUnmixed',
    charge: side(0.16),
    coolant: side(0.55),
    loss: {
      pressure: pressureDifference(6, 'kPa'),
      atFlow: massFlow(0.16, 'kg/s'),
      atDensity: density(1.8, 'kg/m³'),
      exponent: ratio(1.8),
    },
  },
  cooling: {
    by: 'air',
    massFlow: massFlow(0.55, 'kg/s'),
    temperature: temperature(27, '°C'),
    specificHeatCapacity: specificHeatCapacity(1007, 'J/(kg·K)'),
  },
  duct: { loss: pressureDifference(1, 'kPa'), heating: temperatureDifference(2, 'K') },
  engine: {
    bore: length(81, 'mm'),
    stroke: length(87.3, 'mm'),
    cylinders: ratio(4),
    volumetricEfficiency: ratio(0.95),
    atChargeTemperature: temperature(325, 'K'),
    densityExponent: ratio(0.6),
  },
  fuelling: {
    stoichiometricAirFuelRatio: airFuelRatio(14.6),
    lambda: lambda(0.8),
    specificFuelConsumption: specificFuelConsumption(310, 'g/kWh'),
  },
  boost: { by: 'spring', senses: 'compressor outlet', gaugePressure: gaugePressure(95, 'kPa') },
};

/** The same with another flow of cooling air. */
export const withCoolingAir = (kilogramsPerSecond: number): Installation => ({
  ...referenceCase,
  cooling: { ...referenceCase.cooling, massFlow: massFlow(kilogramsPerSecond, 'kg/s') } as Installation['cooling'],
});
