/**
 * Fuel a charge: mixture, consumption, what an airflow or a power asks for, and whether the injectors can give it.
 *
 * A wrong number here can hurt an engine and people near it: read the cautions at the calculations that size and lean.
 *
 * @module fuel
 */
export { fuels, type Fuel } from './fuels.js';
export {
  noOxygenInFuel,
  oxygenMoleFractionOfAir,
  stoichiometricAirFuelRatio,
  stoichiometricAirFuelRatioFromHydrogenRatio,
} from './stoichiometry.js';
export {
  airFuelRatioFromLambda,
  equivalenceRatioFromLambda,
  lambdaFromAirFuelRatio,
  lambdaFromEquivalenceRatio,
  lambdaFromFlows,
} from './mixture.js';
export {
  brakeSpecificFuelConsumption,
  brakeThermalEfficiency,
  fuelMassFlowFromPower,
  specificFuelConsumptionFromEfficiency,
} from './consumption.js';
export { fuelMassFlow, fuelMassFlowFromAirflow, fuelVolumeFlow } from './flow.js';
export { injectorFlowAtPressure, injectorFlowInFuel, injectorPressureDifference } from './injector.js';
export {
  fuelPerShot,
  injectorDutyCycle,
  injectorFlowNeeded,
  pulseWidthFromFuelPerShot,
  usualDutyLimit,
} from './pulse.js';
