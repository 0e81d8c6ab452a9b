import type { CompressorMap } from '../compressor/index.js';
import type { Quantity } from '../units/index.js';
import type { BoostControl } from './installation-boost.js';
import type { AirCooling, Core, LiquidCooling } from './installation-core.js';
import type { Engine, Fuelling } from './installation-engine.js';

export type * from './installation-boost.js';
export type * from './installation-core.js';
export type * from './installation-engine.js';

/**
 * An installation as plain data: what stands between the weather and the crank, in the order the charge meets it. Every value is a
 * quantity; give those that were measured with `measured` and the results carry their uncertainty.
 */
export interface Installation {
  readonly ambient: Ambient;
  /** Filter, hoses and whatever warms the air before the compressor. Nothing when left out. */
  readonly inlet?: Inlet;
  readonly compressor: Compressor;
  readonly core: Core;
  readonly cooling: AirCooling | LiquidCooling;
  /** From the core to the manifold, throttle included. Nothing when left out. */
  readonly duct?: Passage;
  readonly engine: Engine;
  readonly fuelling: Fuelling;
  readonly boost: BoostControl;
  /** Where the boost gauge sits; it reads over the room's pressure. The manifold when left out. */
  readonly gaugeAt?: 'compressor outlet' | 'manifold';
  /** How far the pressure at the vent of the gauge lies below the barometer, as in a cell with an extractor. Nothing when left out. */
  readonly gaugeVentBelowBarometer?: Quantity<'pressure difference'>;
}

/** The air of the room or the road. Humidity in one of two ways. */
export interface Ambient {
  /** The barometer at the place, not reduced to sea level. */
  readonly pressure: Quantity<'absolute pressure'>;
  readonly temperature: Quantity<'temperature'>;
  readonly relativeHumidity?: Quantity<'relative humidity'>;
  readonly humidityRatio?: Quantity<'humidity ratio'>;
}

/** A length of pipe: what pressure it costs and what heat it adds. */
export interface Passage {
  /** Loss of pressure; the same at any flow unless a flow is given with it. */
  readonly loss?: Quantity<'pressure difference'>;
  /** Flow of humid air at which that loss was measured; then it grows with the square of the flow. */
  readonly lossAtFlow?: Quantity<'mass flow'>;
  /** Rise of temperature on the way. */
  readonly heating?: Quantity<'temperature difference'>;
}

/** What the air passes before the compressor. */
export interface Inlet extends Passage {
  /**
   * Share, by mass, of the air breathed that is cooling air from behind the core (behind the radiator of a liquid loop). From three
   * temperatures: `recirculatedFraction`. None when left out.
   */
  readonly recirculatedShare?: Quantity<'ratio'>;
}

/** A compressor: of one efficiency, or with the map of its own. */
export interface Compressor {
  readonly isentropicEfficiency?: Quantity<'ratio'>;
  /** Made by `compressorMap`. A point that it does not hold is refused. */
  readonly map?: CompressorMap;
  /** Power put into the air over power at the shaft. 1 when left out. */
  readonly mechanicalEfficiency?: Quantity<'ratio'>;
  /** What turns it. A belt takes its power from the crankshaft. The exhaust when left out. */
  readonly drivenBy?: 'exhaust' | 'crankshaft';
}
