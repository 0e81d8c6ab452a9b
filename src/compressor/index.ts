/**
 * What a turbocharger or supercharger does to the air: pressure ratio, temperature, efficiency, work and power, with one heat capacity or
 * with one that changes; total and static; heat from the turbine and hot air breathed again; flow and speed as a map shows them; the map
 * itself, read and matched to an engine. Temperatures and pressures are total unless a name says otherwise, pressures absolute.
 *
 * @module compressor
 */
export { outletPressure, pressureRatio } from './pressure-ratio.js';
export { outletTemperature, pressureRatioFromTemperatures } from './outlet-temperature.js';
export {
  dryInlet,
  isentropicEfficiencyVariableHeat,
  isentropicOutletTemperature,
  outletTemperaturePolytropicVariableHeat,
  outletTemperatureVariableHeat,
  polytropicEfficiencyVariableHeat,
  pressureRatioVariableHeat,
  specificWorkVariableHeat,
} from './variable-heat.js';
export { isentropicEfficiencyFromMeasurement } from './isentropic-efficiency.js';
export {
  isentropicEfficiencyFromPolytropic,
  outletTemperaturePolytropic,
  polytropicEfficiencyFromIsentropic,
  polytropicEfficiencyFromMeasurement,
} from './polytropic-efficiency.js';
export { compressorPower, shaftPower, specificWork } from './power.js';
export {
  flowSpeed,
  flowSpeedFromTotalTemperature,
  staticPressure,
  staticTemperature,
  totalPressure,
  totalTemperature,
} from './total-and-static.js';
export { probeTemperature, recoveryFactors, totalTemperatureFromProbe } from './probe-recovery.js';
export {
  apparentIsentropicEfficiency,
  isentropicEfficiencyWithoutHeat,
  outletTemperatureWithHeat,
} from './heat-transfer-bias.js';
export { inletTemperatureWithRecirculation, recirculatedFraction } from './inlet-recirculation.js';
export { compressorMapReferences, type CompressorMapReference } from './map-references.js';
export { correctedFlow, correctedFlowAtReference, massFlowFromCorrectedFlow } from './corrected-flow.js';
export { correctedSpeed, correctedSpeedAtReference, speedFromCorrectedSpeed } from './corrected-speed.js';
export { compressorMap, type CompressorMap, type CompressorMapOptions } from './map/compressor-map.js';
export type { CompressorMapReadings } from './map/readings.js';
export type { CompressorMapData, CompressorMapPoint, CompressorSpeedLine, SurgePoint } from './map/data.js';
export { compressorMapFromJson } from './map/from-json.js';
export type { CompressorMapRecord } from './map/record.js';
export { pointOnMap, type CompressorInlet, type CompressorOperatingPoint } from './map/point-on-map.js';
export { matchEngineToMap, matchEngineToMapAtSpeed, type EngineFlow } from './map/match.js';
export { chokeMargin, surgeMargin, surgeMarginAtSpeed } from './map/margins.js';
