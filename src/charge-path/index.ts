/**
 * The way of the charge from the weather to the crank: an installation as plain data, solved to a steady point.
 *
 * @module charge-path
 */
export { operatingPoint } from './operating-point.js';
export { overSpeeds, type RefusedSpeed, type SpeedSweep } from './over-speeds.js';
export type { PowerFactor, PowerPart, ScenarioComparison, StationChange } from './scenario-result.js';
export { compareScenarios, type ScenarioOptions } from './compare-scenarios.js';
export type { PullInTime, PullMoment } from './pull-result.js';
export { throughPull } from './pull.js';
export type { ChargeSensor, PullOptions } from './read-pull.js';
export type { CylinderState } from './cylinder.js';
export type { CompressorResult, CoreResult, EngineResult, OperatingPoint } from './point-result.js';
export type { Station, StationName } from './station.js';
export type { Balance, BalanceSide } from './balances.js';
export { NoSteadyPoint } from './refusal.js';
export type { Reason } from './solve-path.js';
export type {
  AirCooling,
  Ambient,
  BoostControl,
  ClosedLoopAbsolute,
  ClosedLoopGauge,
  Compressor,
  Core,
  CoreLoss,
  CoreSide,
  DisplacementBlower,
  Engine,
  Exhaust,
  FixedSpeed,
  FixedSpeedOnMap,
  FixedWastegate,
  Fuelling,
  GasSpray,
  HeldTorque,
  Inlet,
  Installation,
  LiquidCooling,
  Passage,
  Spark,
  Spray,
  Walls,
  WaterSpray,
  Spring,
} from './installation.js';
export type { Arrangement } from './arrangements.js';
export { dryAirFlow, humidAirFlow } from './humid-flow.js';
export { passageLoss } from './passage-loss.js';
export { conductanceAtFlow, coreOutletPressure } from './core-laws.js';
export { conductanceBeyondSide, coreFromGeometry, flowExponent } from './core-from-geometry.js';
export { chargeCapacityRateFromHeat, heatFromCharge, heatFromEffectiveness, latentHeatOfVapour } from './heat.js';
export { displacementBlowerFlow, drivenSpeed, noDroop, speedLinePressureRatio, springPressure } from './boost-laws.js';
export { exhaustPressureAheadOfTurbine, turbinePower } from './turbine.js';
export { contributionToChange } from './contribution.js';
export { indicatedMeanEffectivePressure, powerFromFuelFlow } from './engine-laws.js';
export { faceTemperatureWithWaterSpray, waterEvaporatedBySpray } from './water-spray.js';
