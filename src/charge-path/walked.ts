import type { CoreRating } from './arrangements.js';
import type { Path } from './read-installation.js';
import type { Over } from './way.js';

/** A path in quantities or in numbers. */
export type PathOf<V> = Over<Path, V>;

/** What the walk cannot know before the end: it is sought so that the residuals vanish. */
export interface Unknowns<V> {
  /** Mass flow of dry air, all the way. */
  readonly airFlow: V;
  readonly compressorOutletPressure: V;
  readonly coreOutletTemperature: V;
  /** Temperature of the cooling air behind the core; only where some of it is breathed again. */
  readonly coolingAirBehind?: V;
}

/** Places and flows along the path. */
export interface Walked<V> {
  readonly unknowns: Unknowns<V>;
  readonly humidFlow: V;
  readonly inlet: { readonly pressure: V; readonly temperature: V };
  readonly compressor: { readonly pressureRatio: V; readonly efficiency: V; readonly outletTemperature: V };
  /** Temperature of the cooling air at the face of the core, or of the radiator of a liquid loop. */
  readonly face: V;
  readonly core: {
    readonly pressure: V;
    readonly humidityRatio: V;
    readonly condensate: V;
    readonly conductance: V;
    readonly heat: V;
    readonly chargeCapacityRate: V;
    readonly rating: CoreRating<V>;
    /** Air-side effectiveness; undefined with a liquid loop, whose coolant is not air. */
    readonly airSideEffectiveness: V | undefined;
    readonly radiator: CoreRating<V> | undefined;
    /** Charge temperature that the core makes. */
    readonly outletTemperature: V;
  };
  readonly manifold: { readonly pressure: V; readonly temperature: V; readonly vapourPressure: V };
  readonly exhaustPressure: V | undefined;
  readonly fuelFlow: V;
  readonly volumetricEfficiency: V;
  /** Flow of dry air that the engine takes from this manifold. */
  readonly engineFlow: V;
  /** That flow less the one assumed. */
  readonly engineResidual: V;
  /** Charge temperature that the core makes, less the one assumed. */
  readonly coreResidual: V;
  /** Temperature of the cooling air that the core makes, less the one assumed; only where some of it is breathed again. */
  readonly recirculationResidual: V | undefined;
}
