import { moistAirGasConstant, moistAirSensibleEnthalpy } from '../air/index.js';
import {
  airSideFromTrueEffectiveness,
  chargeTemperatureFromWall,
  condensateFlow,
  cooledTemperature,
  humidityRatioBehindCore,
  liquidLoopChargeTemperature,
  liquidLoopHeat,
  numberOfTransferUnits,
  overallConductance,
} from '../intercooler/index.js';
import { rateCore } from './arrangements.js';
import { conductanceAtFlow, coreOutletPressure } from './core-laws.js';
import { chargeCapacityRateFromHeat, heatFromCharge, heatFromEffectiveness, latentHeatOfVapour } from './heat.js';
import type { ThroughSoakingCore } from './read-installation.js';
import type { PathOf, Walked } from './walked.js';
import type { Way } from './way.js';

/** What enters a core, and the temperature it is assumed to leave with. */
export interface IntoCore<V> {
  readonly airFlow: V;
  readonly humidFlow: V;
  readonly p2: V;
  readonly T2: V;
  readonly T3: V;
  readonly face: V;
}

/** The charge through the core. */
export function throughCore<V>(
  way: Way<V>,
  path: PathOf<V>,
  { airFlow, humidFlow, p2, T2, T3, face }: IntoCore<V>,
): Walked<V>['core'] {
  const { core, cooling, humidityRatio: W } = path;
  const gasConstant = way.run(moistAirGasConstant, W);
  const { pressure: loss, atFlow, atDensity, exponent } = core.loss;
  const pressure = way.run(coreOutletPressure, p2, T2, T3, gasConstant, humidFlow, loss, atFlow, atDensity, exponent);
  const condensate = way.run(condensateFlow, airFlow, W, T3, pressure);
  const heat = way.run(
    heatFromCharge,
    humidFlow,
    way.run(moistAirSensibleEnthalpy, T2, W),
    way.run(moistAirSensibleEnthalpy, T3, W),
    condensate,
    way.run(latentHeatOfVapour, T3),
  );
  const chargeCapacityRate = way.run(chargeCapacityRateFromHeat, heat, T2, T3);
  const conductance = conductanceOf(way, core, humidFlow, cooling.flow);
  const rating = rateCore(way, core, conductance, chargeCapacityRate, cooling.capacityRate);
  const whole = {
    pressure,
    humidityRatio: way.run(humidityRatioBehindCore, W, T3, pressure),
    condensate,
    conductance,
    heat,
    chargeCapacityRate,
    rating,
  };
  if (core.soaking !== undefined || core.moment !== undefined) {
    const outletTemperature = soaked(way, path, { humidFlow, T2, chargeCapacityRate });
    return { ...whole, airSideEffectiveness: undefined, radiator: undefined, outletTemperature };
  }
  if (cooling.by === 'air') {
    const effectiveness = way.run(
      airSideFromTrueEffectiveness,
      rating.effectiveness,
      chargeCapacityRate,
      cooling.capacityRate,
    );
    const outletTemperature = way.run(cooledTemperature, T2, face, effectiveness);
    return { ...whole, airSideEffectiveness: effectiveness, radiator: undefined, outletTemperature };
  }
  const { radiator: sides, air } = cooling;
  const radiator = rateCore(
    way,
    sides,
    conductanceOf(way, sides, cooling.flow, air.flow),
    cooling.capacityRate,
    air.capacityRate,
  );
  const outletTemperature = way.run(
    liquidLoopChargeTemperature,
    T2,
    face,
    chargeCapacityRate,
    rating.effectiveness,
    cooling.capacityRate,
    radiator.effectiveness,
    air.capacityRate,
  );
  return { ...whole, airSideEffectiveness: undefined, radiator, outletTemperature };
}

/** Heat that the coolant takes up, from what core and radiator can pass: that of the charge once its temperature is right. */
export function heatTaken<V>(
  way: Way<V>,
  { cooling }: PathOf<V>,
  { rating, radiator, chargeCapacityRate }: Walked<V>['core'],
  T2: V,
  face: V,
): V {
  return cooling.by === 'air'
    ? way.run(heatFromEffectiveness, rating.effectiveness, chargeCapacityRate, cooling.capacityRate, T2, face)
    : way.run(
        liquidLoopHeat,
        T2,
        face,
        chargeCapacityRate,
        rating.effectiveness,
        cooling.capacityRate,
        radiator!.effectiveness,
        cooling.air.capacityRate,
      );
}

/** Charge temperature behind a core whose metal still takes up heat. */
function soaked<V>(
  way: Way<V>,
  { core, cooling }: PathOf<V>,
  { humidFlow, T2, chargeCapacityRate }: { readonly humidFlow: V; readonly T2: V; readonly chargeCapacityRate: V },
): V {
  if (core.moment !== undefined) {
    const conductance = sideAt(way, core.charge, humidFlow);
    const units = way.run(numberOfTransferUnits, conductance, chargeCapacityRate, chargeCapacityRate);
    return way.run(chargeTemperatureFromWall, T2, core.moment.wall, units);
  }
  const flows = {
    hotInlet: T2,
    chargeCapacityRate,
    chargeConductance: sideAt(way, core.charge, humidFlow),
    coolantConductance: sideAt(way, core.coolant, cooling.flow),
  };
  return core.soaking!(flows as ThroughSoakingCore) as V;
}

type Sides<V> = Pick<PathOf<V>['core'], 'charge' | 'coolant'>;

/** Overall conductance between two flows. */
export function conductanceOf<V>(way: Way<V>, { charge, coolant }: Sides<V>, chargeFlow: V, coolantFlow: V): V {
  return way.run(overallConductance, sideAt(way, charge, chargeFlow), sideAt(way, coolant, coolantFlow));
}

/** Conductance between a flow and the wall. */
export function sideAt<V>(way: Way<V>, { conductance, atFlow, exponent }: Sides<V>['charge'], flow: V): V {
  return way.run(conductanceAtFlow, conductance, atFlow, exponent, flow);
}
