/**
 * Fuel a charge: fuels and blends, mixture, consumption, what an airflow or a power asks for, what a denser charge asks
 * for more of, and whether injectors, pump and line can give it.
 *
 * A wrong number here can hurt an engine and people near it: read the cautions at the calculations that size and lean.
 *
 * @module fuel
 */
export { fuels, type Fuel } from './fuels.js';
export {
  fuelPropertyTable,
  publishedFuelProperties,
  type FuelPropertyRow,
  type PublishedValue,
} from './published-properties.js';
export {
  blendDensity,
  blendLatentHeat,
  blendLowerHeatingValue,
  blendOf,
  blendStoichiometricAirFuelRatio,
  ethanolInPumpE85,
  massFractionOfBlend,
  volumeFractionOfBlend,
} from './blend.js';
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
  carbonOfHexane,
  carbonOfHexaneInfrared,
  hydrogenOfBrettschneider,
  lambdaFromExhaustGas,
  oxygenOfBrettschneider,
} from './exhaust-lambda.js';
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
export { extraFuelForDenserCharge, lambdaWithoutAddedFuel } from './denser-charge.js';
export {
  fuelDensityAtTemperature,
  fuelMassRatioByVolume,
  fuelMassRatioThroughInjector,
  usualFuelExpansion,
} from './fuel-temperature.js';
export { evaporativeCoolingLimit } from './evaporation.js';
export {
  fuelLineFrictionFactor,
  fuelLinePressureLoss,
  fuelLineReynoldsNumber,
  fuelLineVelocity,
  fuelPumpPower,
} from './fuel-line.js';
