import type { Quantity } from '../../units/index.js';
import type { CompressorMapReference } from '../map-references.js';

/** One measured point of a speed line. */
export interface CompressorMapPoint {
  /** Mass flow corrected to the reference state of the map. */
  readonly correctedFlow: Quantity<'mass flow'>;
  /** Outlet over inlet total pressure. */
  readonly pressureRatio: Quantity<'ratio'>;
  /** Total-to-total isentropic efficiency. */
  readonly isentropicEfficiency: Quantity<'ratio'>;
}

/** The points of one corrected speed, from surge to choke; their order does not matter. */
export interface CompressorSpeedLine {
  /** Speed corrected to the reference temperature of the map. */
  readonly correctedSpeed: Quantity<'rotational speed'>;
  /** Three points or more. */
  readonly points: readonly CompressorMapPoint[];
}

/** One point of a surge line. */
export interface SurgePoint {
  readonly correctedFlow: Quantity<'mass flow'>;
  readonly pressureRatio: Quantity<'ratio'>;
}

/** A compressor map as it is given. */
export interface CompressorMapData {
  /** Shown in results and errors. */
  readonly name?: string;
  /** The state that its flows and speeds are corrected to; maps without one cannot be used. */
  readonly reference: CompressorMapReference;
  /** Two speed lines or more; their order does not matter. */
  readonly speedLines: readonly CompressorSpeedLine[];
  /** Where it is known apart from the lines; otherwise the points of least flow stand for it. */
  readonly surgeLine?: readonly SurgePoint[];
}
