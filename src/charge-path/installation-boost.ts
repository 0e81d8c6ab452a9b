import type { Quantity } from '../units/index.js';

/** What decides the boost. */
export type BoostControl =
  | Spring
  | ClosedLoopAbsolute
  | ClosedLoopGauge
  | FixedSpeed
  | FixedSpeedOnMap
  | DisplacementBlower
  | FixedWastegate
  | HeldTorque;

/** A wastegate spring: it holds a gauge pressure where it senses. */
export interface Spring {
  readonly by: 'spring';
  readonly senses: 'compressor outlet' | 'manifold';
  readonly gaugePressure: Quantity<'gauge pressure'>;
  /** How much more boost stands for each 1 % of dry air beyond `atFlow`. */
  readonly droop?: { readonly perPercentAir: Quantity<'pressure difference'>; readonly atFlow: Quantity<'mass flow'> };
}

/** An electronic control that holds an absolute manifold pressure. */
export interface ClosedLoopAbsolute {
  readonly by: 'closed loop, absolute';
  readonly manifoldPressure: Quantity<'absolute pressure'>;
}

/** An electronic control that holds a manifold pressure over the room's. */
export interface ClosedLoopGauge {
  readonly by: 'closed loop, gauge';
  readonly manifoldPressure: Quantity<'gauge pressure'>;
}

/** A compressor at one speed, on a belt or held by a governor: pressure falls as flow grows along its line on the map. */
export interface FixedSpeedOnMap {
  readonly by: 'fixed compressor speed on its map';
  /** Speed of the wheel. */
  readonly speed?: Quantity<'rotational speed'>;
  /** Or turns of the wheel for one of the engine. */
  readonly driveRatio?: Quantity<'ratio'>;
}

/** The same without a map: a straight line through one point. */
export interface FixedSpeed {
  readonly by: 'fixed compressor speed';
  /** A point of the speed line. */
  readonly flowAtPoint: Quantity<'mass flow'>;
  readonly ratioAtPoint: Quantity<'ratio'>;
  /** Inlet temperature at which that line holds: in colder air the same speed makes more. */
  readonly atInletTemperature: Quantity<'temperature'>;
  /** The corrected flow that would take a whole unit of pressure ratio: small on a steep line. */
  readonly fallPerFlow: Quantity<'mass flow'>;
  /** Reference state of the corrected flow. */
  readonly referenceTemperature: Quantity<'temperature'>;
  readonly referencePressure: Quantity<'absolute pressure'>;
}

/** A displacement blower on a belt: so much air a turn, whatever the engine makes of it. */
export interface DisplacementBlower {
  readonly by: 'displacement blower';
  readonly volumePerRevolution: Quantity<'volume'>;
  /** Turns of the blower for one of the engine. */
  readonly driveRatio: Quantity<'ratio'>;
  readonly volumetricEfficiencyUnloaded: Quantity<'ratio'>;
  /** Volumetric efficiency lost for each unit of pressure ratio above 1. */
  readonly slip: Quantity<'ratio'>;
}

/** A turbine whose wastegate stands still: more air makes more boost makes more air. */
export interface FixedWastegate {
  readonly by: 'fixed wastegate';
  readonly turbineArea: Quantity<'area'>;
  readonly wastegateArea: Quantity<'area'>;
  readonly turbineEfficiency: Quantity<'ratio'>;
  readonly exhaustTemperature: Quantity<'temperature'>;
  /** Pressure of the exhaust system behind the turbine, over the room's. */
  readonly exhaustLoss: Quantity<'pressure difference'>;
}

/** A control that holds the torque and lets boost be what it must. */
export interface HeldTorque {
  readonly by: 'held torque';
  readonly torque: Quantity<'torque'>;
}
