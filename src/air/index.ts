/**
 * Air as a gas: its constants and density, the barometer at a place, volume flows and what mass they carry.
 *
 * @module air
 */
export {
  dryAirDensity,
  moistAirDensityFromHumidityRatio,
  moistAirDensityFromVapourPressure,
  partialDensityOfDryAir,
} from './density.js';
export { densityRatio } from './density-ratio.js';
export {
  pressureAltitude,
  seaLevelPressureFromStation,
  standardPressure,
  stationPressure,
} from './station-pressure.js';
export { massFlowOfVolume, volumeFlowOfMass } from './volume-flow.js';
export { massFlowFromStandardVolumeFlow, standardVolumeFlowFromMassFlow } from './standard-flow.js';
export { referenceDensity, referenceStates, type ReferenceState } from './reference-states.js';
export { gasConstantFromMolarMass } from './gas-constant.js';
export {
  gasConstantOfDryAir,
  heatCapacityRatioOfAir,
  molarMassOfDryAir,
  specificHeatCapacityOfAir,
} from './constants.js';
