/**
 * Correct observed power and torque to a standard atmosphere, or leave them as observed and say so; and the other way,
 * from a rating to the power at a site.
 *
 * @module correction
 */
export {
  correctionFactor,
  type BoostReference,
  type CorrectionRequest,
  type DryRoom,
  type HumidRoom,
  type RoomAir,
} from './correction-factor.js';
export {
  correctionFactorSaeJ1349,
  correctionFactorSaeJ1349Abbreviated,
  correctionFactorSaeJ1349MeasuredFriction,
  mechanicalEfficiencyOfSaeJ1349,
} from './sae-j1349.js';
export { correctionFactorIso1585 } from './iso-1585.js';
export {
  correctedFuelDelivery,
  engineFactor,
  engineFactorIso1585,
  engineFactorUnR85,
  fuelDelivery,
} from './engine-factor.js';
export {
  atmosphericFactorLiquidCooledCharge,
  atmosphericFactors,
  atmosphericFactorTurbochargedIso1585,
  atmosphericFactorTurbochargedUnR85,
  atmosphericFactorUnboosted,
  correctionFactorCompressionIgnition,
  referenceInletTemperature,
} from './compression-ignition.js';
export { correctionFactorSaeJ607, correctionFactorSaeJ816 } from './withdrawn-sae.js';
export { correctionFactorDin70020 } from './din-70020.js';
export { boostedCorrectionFactor, type BoostedCorrectionRequest, type ChargeTemperatures } from './boosted-factor.js';
export { pressureFactorGaugeSpring, pressureFactorGaugeSpringMoist, referenceDryPressure } from './boost-control.js';
export {
  correctionFactors,
  correctionStandards,
  isCorrectionStandard,
  standardOfTradeName,
  type CorrectionStandard,
  type CorrectionStandardFacts,
} from './standards.js';
export { correctedPower, correctedTorque } from './corrected.js';
export { referenceAtmospheres, type ReferenceAtmosphere } from './reference-atmospheres.js';
export {
  chargeCooledSiteExponents,
  mechanicalEfficiencyOfIso3046,
  siteExponents,
  sitePowerIso3046,
  sitePowerIso3046ChargeCooled,
  type ChargeCooledSiteExponents,
  type SiteExponents,
} from './site-power.js';
