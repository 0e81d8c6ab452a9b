/**
 * Air as a gas: its constants and density, heat capacity, enthalpy and entropy that change with temperature, viscosity and conductivity,
 * how far it is from a perfect gas, the barometer at a place, volume flows and what mass they carry.
 *
 * @module air
 */
export {
  dryAirDensity,
  moistAirDensityFromHumidityRatio,
  moistAirDensityFromVapourPressure,
  partialDensityOfDryAir,
} from './density.js';
export { compressibilityFactor, realGasDensity } from './real-gas.js';
export { dryPartOfDensity } from './dry-part.js';
export {
  secondVirialCoefficientOfAirWithVapour,
  secondVirialCoefficientOfDryAir,
  secondVirialCoefficientOfMoistAir,
  secondVirialCoefficientOfVapour,
} from './virial.js';
export { densityRatio } from './density-ratio.js';
export {
  pressureAltitude,
  seaLevelPressureFromStation,
  standardPressure,
  stationPressure,
} from './station-pressure.js';
export {
  densityAltitude,
  gasConstantOfStandardAtmosphere,
  standardDensity,
  standardTemperature,
} from './standard-atmosphere.js';
export { massFlowOfVolume, volumeFlowOfMass } from './volume-flow.js';
export { massFlowFromStandardVolumeFlow, standardVolumeFlowFromMassFlow } from './standard-flow.js';
export { referenceDensity, referenceStates, type ReferenceState } from './reference-states.js';
export {
  dryAirEnthalpy,
  dryAirEntropyFunction,
  dryAirHeatCapacity,
  moistAirEntropyFunction,
  moistAirGasConstant,
  moistAirHeatCapacity,
  moistAirHeatCapacityRatio,
  moistAirSensibleEnthalpy,
  temperatureFromEntropyFunction,
  temperatureFromSensibleEnthalpy,
} from './moist-gas.js';
export {
  argonEnthalpy,
  argonEntropyFunction,
  argonHeatCapacity,
  carbonDioxideEnthalpy,
  carbonDioxideEntropyFunction,
  carbonDioxideHeatCapacity,
  gasEnthalpy,
  gasEntropyFunction,
  gasHeatCapacity,
  nitrogenEnthalpy,
  nitrogenEntropyFunction,
  nitrogenHeatCapacity,
  oxygenEnthalpy,
  oxygenEntropyFunction,
  oxygenHeatCapacity,
  waterVapourEnthalpy,
  waterVapourEntropyFunction,
  waterVapourHeatCapacity,
} from './gases.js';
export { heatCapacityRatio, mixtureEnthalpy, mixtureHeatCapacity, mixtureMolarMass } from './mixture.js';
export {
  airConductivity,
  airConductivityWhite,
  airPrandtlNumber,
  airViscosity,
  airViscosityWhite,
} from './transport.js';
export { gasConstantFromMolarMass } from './gas-constant.js';
export {
  gasConstantOfDryAir,
  heatCapacityRatioOfAir,
  molarMassOfDryAir,
  specificHeatCapacityOfAir,
} from './constants.js';
