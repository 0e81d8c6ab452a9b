import type { CompressorOperatingPoint } from '../compressor/index.js';
import type { Note, Quantity } from '../units/index.js';
import type { Balance } from './balances.js';
import type { CylinderState } from './cylinder.js';
import type { Installation } from './installation.js';
import type { Station } from './station.js';

/** What the compressor does. */
export interface CompressorResult {
  readonly pressureRatio: Quantity<'ratio'>;
  readonly isentropicEfficiency: Quantity<'ratio'>;
  /** Flow corrected to 298.15 K and 100 kPa. */
  readonly correctedFlow: Quantity<'mass flow'>;
  /** Power put into the air. */
  readonly power: Quantity<'power'>;
  /** Power its shaft takes. */
  readonly shaftPower: Quantity<'power'>;
  /** The point on its map, with speed and margins to surge and choke; undefined without a map. */
  readonly onMap: CompressorOperatingPoint | undefined;
}

/** What the core does. */
export interface CoreResult {
  readonly conductance: Quantity<'thermal conductance'>;
  readonly transferUnits: Quantity<'ratio'>;
  readonly capacityRatio: Quantity<'ratio'>;
  /** True effectiveness: of the smaller heat capacity rate, whichever side that is. Above 1 while chilled metal helps. */
  readonly effectiveness: Quantity<'ratio'>;
  /** Share of the way from hot charge to the air at the face that the charge is cooled; undefined with a liquid loop. */
  readonly airSideEffectiveness: Quantity<'ratio'> | undefined;
  /** Heat taken out of the charge, that of condensing water included. */
  readonly heat: Quantity<'power'>;
  readonly pressureLoss: Quantity<'pressure difference'>;
  /** Density of the charge that the loss goes by. */
  readonly meanDensity: Quantity<'density'>;
  /** Water that drops out. */
  readonly condensate: Quantity<'mass flow'>;
  /** Temperature of the cooling air at the face: of the core, or of the radiator of a liquid loop. */
  readonly coolingAirFace: Quantity<'temperature'>;
  /** Temperature of the cooling air behind. */
  readonly coolingAirBehind: Quantity<'temperature'>;
}

/** What the engine does. */
export interface EngineResult {
  readonly sweptVolume: Quantity<'volume'>;
  /** On the density of dry air in the manifold. */
  readonly volumetricEfficiency: Quantity<'ratio'>;
  /** On the density of dry air in the room. */
  readonly volumetricEfficiencyOnAmbient: Quantity<'ratio'>;
  readonly fuelFlow: Quantity<'mass flow'>;
  readonly lambda: Quantity<'lambda'>;
  readonly exhaustPressure: Quantity<'absolute pressure'> | undefined;
  /** Share of the torque that the spark timing leaves; undefined where it is that of best torque. */
  readonly sparkRatio: Quantity<'ratio'> | undefined;
  /** Power before a belt-driven compressor takes its part. */
  readonly grossPower: Quantity<'power'>;
  readonly power: Quantity<'power'>;
  readonly torque: Quantity<'torque'>;
  readonly brakeMeanEffectivePressure: Quantity<'mean effective pressure'>;
}

/** A solved steady point. */
export interface OperatingPoint {
  readonly installation: Installation;
  readonly engineSpeed: Quantity<'rotational speed'>;
  readonly stations: {
    readonly ambient: Station;
    readonly compressorInlet: Station;
    readonly compressorOutlet: Station;
    readonly coreOutlet: Station;
    readonly manifold: Station;
  };
  /** The charge in the cylinders. */
  readonly cylinder: CylinderState;
  /** Mass flow of dry air. */
  readonly airFlow: Quantity<'mass flow'>;
  /** Mass flow of humid air through the compressor. */
  readonly humidAirFlow: Quantity<'mass flow'>;
  readonly compressor: CompressorResult;
  readonly core: CoreResult;
  readonly engine: EngineResult;
  readonly power: Quantity<'power'>;
  readonly torque: Quantity<'torque'>;
  /** What the boost gauge reads, where it sits. */
  readonly boostReading: Quantity<'gauge pressure'>;
  /** Both sides of every balance of mass and heat. */
  readonly balances: readonly Balance[];
  /** What a reader of the results must know. */
  readonly notes: readonly Note[];
  /** The stations as a table, and the main results. */
  toString(): string;
  /** As plain data. */
  toJSON(): object;
}
