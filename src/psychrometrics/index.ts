/**
 * Humid air: how much vapour it holds, said in any of the usual ways, and what follows from it, from frost to hot charge air.
 *
 * @module psychrometrics
 */
export {
  humidAirFromDewPoint,
  humidAirFromHumidityRatio,
  humidAirFromRelativeHumidity,
  humidAirFromVapourPressure,
  humidAirFromWetBulb,
} from './humid-air.js';
export { humidAir, type HumidAirMeasures, type HumidAirOptions } from './humid-air-from-two.js';
export type { AirPlace, HumidAir } from './humid-air-state.js';
export { saturationPressure, saturationPressureOverIce, saturationPressureOverWater } from './saturation-pressure.js';
export {
  saturationIapws,
  saturationPressureIf97,
  saturationPressureWagnerPruss,
  saturationTemperatureIf97,
  sublimationPressureIapws,
} from './iapws.js';
export {
  dryPressure,
  relativeHumidityFromVapourPressure,
  relativeHumidityOverWater,
  vapourPressureFromRelativeHumidity,
  vapourPressureFromRelativeHumidityOverWater,
} from './vapour-pressure.js';
export {
  degreeOfSaturation,
  humidityRatioFromVapourPressure,
  saturationHumidityRatio,
  specificHumidity,
  vapourPressureFromHumidityRatio,
} from './humidity-ratio.js';
export { dewPoint, dewPointOverWater, relativeHumidityFromDewPoint, vapourPressureFromDewPoint } from './dew-point.js';
export {
  humidityRatioFromWetBulb,
  humidityRatioFromWetBulbOverIce,
  humidityRatioFromWetBulbOverWater,
  wetBulb,
  wetBulbOverIce,
  wetBulbOverWater,
} from './wet-bulb.js';
export { vapourPressureFromPsychrometerOverIce, vapourPressureFromPsychrometerOverWater } from './psychrometer.js';
export {
  psychrometerCoefficientAms,
  psychrometerCoefficients,
  psychrometerCoefficientWmo,
  vapourPressureByPsychrometerCoefficientOverIce,
  vapourPressureByPsychrometerCoefficientOverWater,
} from './psychrometer-coefficient.js';
export { humidityRatioFromEnthalpy, moistAirEnthalpy } from './enthalpy.js';
export {
  dryBulbFromEnthalpy,
  dryBulbFromEnthalpyAndRelativeHumidity,
  dryBulbFromRelativeHumidity,
  dryBulbFromWetBulb,
  dryBulbFromWetBulbOverIce,
  dryBulbFromWetBulbOverWater,
  dryBulbFromWetBulbAndRelativeHumidity,
  dryBulbFromWetBulbAndRelativeHumidityOverIce,
  dryBulbFromWetBulbAndRelativeHumidityOverWater,
} from './dry-bulb.js';
export {
  enhancementFactor,
  enhancementFactorBuck1981,
  enhancementFactorBuck1996,
  enhancementFactorCipm2007,
} from './enhancement-factor.js';
export { enhancementFactorOverIce, enhancementFactorOverWater } from './enhancement-greenspan.js';
export {
  degreeOfSaturationInMoistAir,
  dewPointInMoistAir,
  relativeHumidityInMoistAir,
  saturationHumidityRatioInMoistAir,
  saturationPressureInMoistAir,
  saturationPressureInMoistAirOverIce,
  saturationPressureInMoistAirOverWater,
  vapourPressureFromRelativeHumidityInMoistAir,
} from './saturation-in-moist-air.js';
export {
  humidityRatioFromWetBulbInMoistAir,
  humidityRatioFromWetBulbInMoistAirOverIce,
  humidityRatioFromWetBulbInMoistAirOverWater,
  wetBulbInMoistAir,
  wetBulbInMoistAirOverIce,
  wetBulbInMoistAirOverWater,
} from './wet-bulb-in-moist-air.js';
export {
  dryBulbFromEnthalpyAndRelativeHumidityInMoistAir,
  dryBulbFromRelativeHumidityInMoistAir,
  dryBulbFromWetBulbAndRelativeHumidityInMoistAir,
  dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverIce,
  dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverWater,
  dryBulbFromWetBulbInMoistAir,
  dryBulbFromWetBulbInMoistAirOverIce,
  dryBulbFromWetBulbInMoistAirOverWater,
} from './dry-bulb-in-moist-air.js';
export {
  carbonDioxideOfCipm2007,
  compressibilityFactorCipm2007,
  moistAirDensityCipm2007,
  saturationPressureCipm2007,
  vapourMoleFractionCipm2007,
} from './cipm-2007.js';
export type { Wick } from './model.js';
