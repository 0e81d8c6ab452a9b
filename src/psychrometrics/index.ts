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
export type { AirPlace, HumidAir } from './humid-air-state.js';
export { saturationPressure, saturationPressureOverIce, saturationPressureOverWater } from './saturation-pressure.js';
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
export { moistAirEnthalpy } from './enthalpy.js';
export { enhancementFactor, enhancementFactorBuck1981, enhancementFactorCipm2007 } from './enhancement-factor.js';
