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
export { cooledTemperature, coolantTemperatureNeeded } from './cooled-temperature.js';
export { capacityRate, capacityRatio, heatRejected, numberOfTransferUnits } from './capacity.js';
export { densityRecovery } from './density-recovery.js';
export { pressureLoss, pressureLossShare, scaledPressureLoss } from './pressure-loss.js';
export { effectiveness, transferUnits } from './arrangements.js';
export { effectivenessCounterflow, transferUnitsCounterflow } from './counterflow.js';
export { effectivenessParallelFlow, transferUnitsParallelFlow } from './parallel-flow.js';
export { effectivenessCrossflowUnmixed, transferUnitsCrossflowUnmixed } from './crossflow.js';
