import { backPressureFactor, volumetricEfficiencyAtTemperature } from '../engine/index.js';
import { exhaustPressureAheadOfTurbine } from './turbine.js';
import type { PathOf } from './walked.js';
import type { Way } from './way.js';

/** Pressure in the exhaust manifold, where it is known. */
export function exhaustPressureOf<V>(
  way: Way<V>,
  { exhaust, boost, barometer }: PathOf<V>,
  { humidFlow, fuelFlow, p4 }: { readonly humidFlow: V; readonly fuelFlow: V; readonly p4: V },
): V | undefined {
  if (boost.by === 'fixed wastegate') {
    const flow = way.add(humidFlow, fuelFlow);
    const behindTurbine = way.add(barometer, boost.exhaustLoss);
    const area = way.add(boost.turbineArea, boost.wastegateArea);
    return way.run(exhaustPressureAheadOfTurbine, flow, boost.exhaustTemperature, behindTurbine, area);
  }
  return exhaust?.pressureOverManifold === undefined ? undefined : way.scale(p4, exhaust.pressureOverManifold);
}

/** Volumetric efficiency on manifold density as it is here. */
export function breathingOf<V>(way: Way<V>, path: PathOf<V>, p4: V, T4: V, exhaustPressure: V | undefined): V {
  const { volumetricEfficiency, atChargeTemperature, densityExponent, exhaust } = path;
  const free = way.run(
    volumetricEfficiencyAtTemperature,
    volumetricEfficiency,
    atChargeTemperature,
    T4,
    densityExponent,
  );
  if (exhaust === undefined || exhaustPressure === undefined) return free;
  const { pressureOverManifoldAtReference, compressionRatio } = exhaust;
  const here = way.run(backPressureFactor, exhaustPressure, p4, compressionRatio);
  const there = way.run(backPressureFactor, way.scale(p4, pressureOverManifoldAtReference), p4, compressionRatio);
  return way.scale(free, way.ratioOf(here, there));
}
