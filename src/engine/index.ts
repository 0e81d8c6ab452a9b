/**
 * Describe an engine: power and torque, mean effective pressure, piston speed, how well it breathes, and what the
 * charge temperature is worth.
 *
 * @module engine
 */
export { powerFromTorque, torqueFromPower } from './power.js';
export {
  brakeMeanEffectivePressure,
  brakeMeanEffectivePressureFromPower,
  torqueFromMeanEffectivePressure,
} from './mean-effective-pressure.js';
export { fourStroke, twoStroke } from './cycle.js';
export { airPerCycle } from './air-per-cycle.js';
export { meanPistonSpeed, sweptVolume } from './geometry.js';
export {
  chargeDensity,
  dryCharge,
  speedDensityAirflow,
  volumetricEfficiency,
  volumetricEfficiencyOnAmbientDensity,
  volumetricEfficiencyOnManifoldDensity,
} from './airflow.js';
export {
  chargeTemperatureExponent,
  powerRatioFromChargeTemperature,
  usualChargeTemperatureExponent,
  volumetricEfficiencyAtTemperature,
} from './charge-temperature.js';
