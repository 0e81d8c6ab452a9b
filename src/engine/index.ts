/**
 * Describe an engine: power and torque, mean effective pressure and friction, piston speed, how well it breathes, what
 * the charge temperature is worth, what boost does when the charge gets colder, and what a sweep hides.
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
export { chargeTemperatureAfterWallHeating, chargeTemperatureExponentFromWallHeating } from './charge-heating.js';
export {
  fitChargeTemperatureExponent,
  type ChargeTemperatureFit,
  type ChargeTemperaturePoint,
} from './charge-temperature-fit.js';
export {
  manifoldPressureChangeOutletSpring,
  manifoldPressureForSameAir,
  pressureBeforeFixedRestriction,
} from './boost-change.js';
export { backPressureFactor } from './back-pressure.js';
export { torqueRatioFromSpark, torqueRatioFromSparkChange, usualSparkSensitivity } from './spark.js';
export {
  grossIndicatedMeanEffectivePressure,
  mechanicalEfficiency,
  netIndicatedMeanEffectivePressure,
  pumpingMeanEffectivePressure,
  pumpingMeanEffectivePressureFromPressures,
} from './indicated-pressure.js';
export {
  frictionCoefficients,
  frictionMeanEffectivePressure,
  frictionMeanEffectivePressureBarnesMoss,
  type FrictionCoefficients,
} from './friction.js';
export {
  frictionByPart,
  frictionOfAuxiliaries,
  frictionOfCrankshaft,
  frictionOfGasLoad,
  frictionOfPistons,
} from './friction-by-part.js';
export { engineTorqueInSweep, inertiaTorque, noDrag, reflectedInertia } from './sweep-inertia.js';
