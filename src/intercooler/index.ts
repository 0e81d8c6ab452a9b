/**
 * What a charge cooler does to the charge, and what a core of a given size could do: effectiveness measured and predicted, heat,
 * density and pressure loss.
 *
 * @module intercooler
 */
export {
  airSideEffectiveness,
  airSideFromTrueEffectiveness,
  effectivenessFromMeasurement,
} from './measured-effectiveness.js';
export {
  chargeProbeReading,
  chargeTemperatureFromProbe,
  probeTimeConstant,
  radiationShare,
  stemShare,
} from './temperature-probe.js';
export { cooledTemperature, coolantTemperatureNeeded } from './cooled-temperature.js';
export { capacityRate, capacityRatio, heatRejected, numberOfTransferUnits } from './capacity.js';
export { densityRecovery } from './density-recovery.js';
export { pressureLoss, pressureLossShare, scaledPressureLoss } from './pressure-loss.js';
export { effectiveness, transferUnits } from './arrangements.js';
export { effectivenessCounterflow, transferUnitsCounterflow } from './counterflow.js';
export { effectivenessParallelFlow, transferUnitsParallelFlow } from './parallel-flow.js';
export { effectivenessCrossflowUnmixed, transferUnitsCrossflowUnmixed } from './crossflow.js';
export {
  effectivenessCrossflowUnmixedApproximate,
  transferUnitsCrossflowUnmixedApproximate,
} from './crossflow-approximate.js';
export {
  effectivenessCrossflowLargerMixed,
  effectivenessCrossflowOneMixed,
  effectivenessCrossflowSmallerMixed,
  transferUnitsCrossflowLargerMixed,
  transferUnitsCrossflowSmallerMixed,
} from './crossflow-one-mixed.js';
export {
  bestTransferUnitsCrossflowBothMixed,
  effectivenessCrossflowBothMixed,
  largerTransferUnitsCrossflowBothMixed,
  smallerTransferUnitsCrossflowBothMixed,
} from './crossflow-both-mixed.js';
export { transferUnitsCrossflowBothMixed, type BothMixedSizes, type SizeAndEffectiveness } from './both-mixed-sizes.js';
export { effectivenessOneShell, transferUnitsOneShell } from './shell-and-tube.js';
export {
  effectivenessMultiPass,
  effectivenessOfPasses,
  passEffectiveness,
  transferUnitsMultiPass,
  type PassesFor,
  type PassesOf,
} from './multi-pass.js';
export {
  finEfficiency,
  foulingFactorOfCompressedAir,
  foulingResistance,
  overallConductance,
  sideConductance,
  surfaceEfficiency,
  wallResistance,
} from './conductance.js';
export { coreMassFlux, heatTransferCoefficientFromColburn, prandtlNumber, reynoldsNumber } from './core-flow.js';
export {
  hydraulicDiameter,
  hydraulicDiameterFlatTube,
  hydraulicDiameterRectangle,
  wettedArea,
} from './hydraulic-diameter.js';
export { faceArea, finAreaShareRectangle, freeArea, freeAreaRatio, plateArea, stackHeight } from './passages.js';
export { corePressureLoss, meanDensity } from './core-pressure-loss.js';
export {
  colburnFactorOffsetStrip,
  finAreaShareOffsetStrip,
  frictionFactorOffsetStrip,
  hydraulicDiameterOffsetStrip,
  offsetStripFrictionScatter,
  offsetStripHeatTransferScatter,
} from './offset-strip-fin.js';
export {
  colburnFactorLouvred,
  frictionFactorLouvred,
  louvredFrictionScatter,
  louvredHeatTransferScatter,
} from './louvred-fin.js';
export { coolantOutlet, meanTemperature } from './core-temperatures.js';
export type {
  CoreFlowArrangement,
  CoreGeometry,
  CorePassages,
  LouvredFins,
  OffsetStripFins,
  SideGeometry,
} from './core-geometry.js';
export type { CoreAir, CoreLiquid, FlowsThroughCore, RatedSide } from './core-side.js';
export { coreRating } from './core-rating.js';
export type { RatedCore, RatedCoreResults } from './rated-core.js';
export {
  liquidLoopChargeTemperature,
  liquidLoopColdTemperature,
  liquidLoopHeat,
  liquidLoopHotTemperature,
} from './liquid-loop.js';
export {
  coolingAirBehindCore,
  coolingAirFlow,
  coolingAirSpeedRatio,
  ramPressure,
  stackPressureLoss,
} from './cooling-air.js';
export {
  coolingAirThroughStack,
  type CoolingAirAtCore,
  type CoolingAirDrive,
  type CoolingAirThroughStack,
  type StackedCore,
} from './cooling-air-stack.js';
export {
  chargeDewPoint,
  condensateFlow,
  condensedWater,
  heatRejectedByHumidCharge,
  humidChargeTemperature,
  humidityRatioBehindCore,
} from './condensation.js';
export {
  chargeDewPointInMoistAir,
  condensedWaterInMoistAir,
  condensateFlowInMoistAir,
  humidityRatioBehindCoreInMoistAir,
  heatRejectedByHumidChargeInMoistAir,
  humidChargeTemperatureInMoistAir,
} from './condensation-in-moist-air.js';
export {
  chargeTemperatureFromWall,
  coolDownTemperature,
  coreHeatCapacity,
  coreTimeConstant,
  recoveryTime,
  steadyWallTemperature,
  wallTemperatureAfter,
} from './thermal-mass.js';
export { soakedChargeTemperature } from './soaked-charge.js';
export { settledCore, soakingCore, type CoreFlows, type SoakedCore, type SoakingCore } from './soaking-core.js';
export { heatSoak, type HeatSoak, type RecordedFlows } from './heat-soak.js';
export { timeConstantFromCoolDown, type CoolDownFit } from './time-constant.js';
export {
  liquidShareOfNitrousOxide,
  snowShareOfCarbonDioxide,
  sprayCapacity,
  sprayCapacityOfCarbonDioxide,
  sprayCapacityOfDryIce,
  sprayCapacityOfNitrousOxide,
  sprayCapacityOfWater,
  sprayLatentPart,
  spraySensiblePart,
} from './spray-capacity.js';
export {
  latentPartOfCarbonDioxide,
  latentPartOfNitrousOxide,
  latentPartOfWater,
  sensiblePartOfCarbonDioxide,
  sensiblePartOfNitrousOxide,
  sensiblePartOfWater,
} from './spray-parts.js';
export {
  captureEfficiencyFromTest,
  coldestOfSpray,
  largestSprayDrop,
  sprayCostPerPull,
  sprayDrop,
  sprayedFaceTemperature,
  sprayFlowForDrop,
  sprayMassForPull,
} from './coolant-spray.js';
export { carbonDioxideInRoom } from './spray-room.js';
