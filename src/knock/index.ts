/**
 * Compare the knock margins of two charge states of one engine at one speed, in octane numbers and in degrees of charge
 * temperature.
 *
 * Indicative only. Every result says so: it is never a licence to run, and no number to set spark or boost by.
 *
 * @module knock
 */
export {
  compareKnockMargins,
  type ChargeState,
  type KnockComparison,
  type KnockComparisonRecord,
  type KnockComparisonRequest,
} from './comparison.js';
export {
  activationTemperatureOfDelay,
  chargeTemperatureMargin,
  knockIntegralRatio,
  octaneExponentOfDelay,
  octaneRequirementChange,
  octaneRequirementChangeFromHumidity,
  octaneRequirementChangeFromIntegrals,
  pressureExponentOfDelay,
  usualEndGasPressureRatio,
  usualOctanePerHumidity,
} from './margin.js';
export { octaneIndex } from './octane-index.js';
export { autoignitionDelay, endGasKnockIntegral, knockIntegral } from './autoignition.js';
export { unburnedTemperature, usualPolytropicExponent } from './end-gas.js';
