import { moistAirGasConstant, moistAirSensibleEnthalpy } from '../air/index.js';
import { correctedFlow, outletTemperatureVariableHeat } from '../compressor/index.js';
import { backPressureFactor, speedDensityAirflow, volumetricEfficiencyAtTemperature } from '../engine/index.js';
import { fuelMassFlowFromAirflow } from '../fuel/index.js';
import {
  airSideFromTrueEffectiveness,
  condensateFlow,
  cooledTemperature,
  humidityRatioBehindCore,
  liquidLoopChargeTemperature,
  overallConductance,
} from '../intercooler/index.js';
import { vapourPressureFromHumidityRatio } from '../psychrometrics/index.js';
import { rateCore, type CoreRating } from './arrangements.js';
import { conductanceAtFlow, coreOutletPressure } from './core-laws.js';
import { chargeCapacityRateFromHeat, heatFromCharge, latentHeatOfVapour } from './heat.js';
import { humidAirFlow } from './humid-flow.js';
import { passageLoss } from './passage-loss.js';
import type { Path, ThroughSoakingCore } from './read-installation.js';
import { exhaustPressureAheadOfTurbine } from './turbine.js';
import type { Over, Way } from './way.js';

/** A path in quantities or in numbers. */
export type PathOf<V> = Over<Path, V>;

/** What the walk cannot know before the end: it is sought so that the residuals vanish. */
export interface Unknowns<V> {
  /** Mass flow of dry air, all the way. */
  readonly airFlow: V;
  readonly compressorOutletPressure: V;
  readonly coreOutletTemperature: V;
}

/** Places and flows along the path. */
export interface Walked<V> {
  readonly unknowns: Unknowns<V>;
  readonly humidFlow: V;
  readonly inlet: { readonly pressure: V; readonly temperature: V };
  readonly compressor: { readonly pressureRatio: V; readonly efficiency: V; readonly outletTemperature: V };
  readonly core: {
    readonly gasConstant: V;
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
}

/** Walks the path once, from assumed unknowns to how far they are off. */
export function walk<V>(way: Way<V>, path: PathOf<V>, unknowns: Unknowns<V>): Walked<V> {
  const { airFlow, compressorOutletPressure: p2, coreOutletTemperature: T3 } = unknowns;
  const W = path.humidityRatio;
  const humidFlow = way.run(humidAirFlow, airFlow, W);
  const p1 = behind(way, path.barometer, path.inlet, humidFlow);
  const T1 = warmed(way, path.ambientTemperature, path.inlet);
  const pressureRatio = way.ratioOf(p2, p1);
  const efficiency = path.efficiency ?? efficiencyOnMap(way, path, { humidFlow, p1, T1, pressureRatio });
  const T2 = way.run(outletTemperatureVariableHeat, T1, pressureRatio, efficiency, W);
  const core = throughCore(way, path, { airFlow, humidFlow, p2, T2, T3 });
  const p4 = behind(way, core.pressure, path.duct, humidFlow);
  const T4 = warmed(way, T3, path.duct);
  const fuelFlow =
    path.fuelling.fuelMassFlow ??
    way.run(fuelMassFlowFromAirflow, airFlow, path.fuelling.lambda!, path.fuelling.stoichiometricAirFuelRatio);
  const exhaustPressure = exhaustPressureOf(way, path, { humidFlow, fuelFlow, p4 });
  const breathing = breathingOf(way, path, p4, T4, exhaustPressure);
  const vapourPressure = way.run(vapourPressureFromHumidityRatio, p4, core.humidityRatio);
  const { sweptVolume, speed, revolutionsPerCycle, gasConstant } = path;
  const taken = way.run(
    speedDensityAirflow,
    breathing,
    p4,
    T4,
    sweptVolume,
    speed,
    vapourPressure,
    revolutionsPerCycle,
    gasConstant,
  );
  return {
    unknowns,
    humidFlow,
    inlet: { pressure: p1, temperature: T1 },
    compressor: { pressureRatio, efficiency, outletTemperature: T2 },
    core,
    manifold: { pressure: p4, temperature: T4, vapourPressure },
    exhaustPressure,
    fuelFlow,
    volumetricEfficiency: breathing,
    engineFlow: taken,
    engineResidual: way.subtract(taken, airFlow),
    coreResidual: way.subtract(core.outletTemperature, T3),
  };
}

function efficiencyOnMap<V>(
  way: Way<V>,
  path: PathOf<V>,
  at: { readonly humidFlow: V; readonly p1: V; readonly T1: V; readonly pressureRatio: V },
): V {
  const { efficiency, searched } = path.map!;
  return way.run(way.isSearch ? searched.efficiency : efficiency, flowOnMap(way, path, at), at.pressureRatio);
}

/** Flow as the compressor map shows it. */
export function flowOnMap<V>(
  way: Way<V>,
  { map }: PathOf<V>,
  { humidFlow, p1, T1 }: { readonly humidFlow: V; readonly p1: V; readonly T1: V },
): V {
  const { referenceTemperature, referencePressure } = map!.reference;
  return way.run(correctedFlow, humidFlow, T1, p1, referenceTemperature, referencePressure);
}

type Passage<V> = PathOf<V>['inlet'];

function behind<V>(way: Way<V>, pressure: V, { loss, lossAtFlow }: Passage<V>, flow: V): V {
  if (loss === undefined) return pressure;
  return way.subtract(pressure, lossAtFlow === undefined ? loss : way.run(passageLoss, loss, lossAtFlow, flow));
}

function warmed<V>(way: Way<V>, temperature: V, { heating }: Passage<V>): V {
  return heating === undefined ? temperature : way.add(temperature, heating);
}

interface IntoCore<V> {
  readonly airFlow: V;
  readonly humidFlow: V;
  readonly p2: V;
  readonly T2: V;
  readonly T3: V;
}

function throughCore<V>(
  way: Way<V>,
  path: PathOf<V>,
  { airFlow, humidFlow, p2, T2, T3 }: IntoCore<V>,
): Walked<V>['core'] & { readonly outletTemperature: V } {
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
    gasConstant,
    pressure,
    humidityRatio: way.run(humidityRatioBehindCore, W, T3, pressure),
    condensate,
    conductance,
    heat,
    chargeCapacityRate,
    rating,
  };
  if (core.soaking !== undefined) {
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
    const outletTemperature = way.run(cooledTemperature, T2, cooling.face, effectiveness);
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
    air.face,
    chargeCapacityRate,
    rating.effectiveness,
    cooling.capacityRate,
    radiator.effectiveness,
    air.capacityRate,
  );
  return { ...whole, airSideEffectiveness: undefined, radiator, outletTemperature };
}

/** Charge temperature behind a core whose metal still takes up heat; only ever walked in numbers. */
function soaked<V>(
  way: Way<V>,
  { core, cooling }: PathOf<V>,
  { humidFlow, T2, chargeCapacityRate }: { readonly humidFlow: V; readonly T2: V; readonly chargeCapacityRate: V },
): V {
  const flows = {
    hotInlet: T2,
    chargeCapacityRate,
    chargeConductance: sideAt(way, core.charge, humidFlow),
    coolantConductance: sideAt(way, core.coolant, cooling.flow),
  };
  return core.soaking!(flows as ThroughSoakingCore) as V;
}

type Sides<V> = Pick<PathOf<V>['core'], 'charge' | 'coolant'>;

function conductanceOf<V>(way: Way<V>, { charge, coolant }: Sides<V>, chargeFlow: V, coolantFlow: V): V {
  return way.run(overallConductance, sideAt(way, charge, chargeFlow), sideAt(way, coolant, coolantFlow));
}

/** Conductance between a flow and the wall. */
export function sideAt<V>(way: Way<V>, { conductance, atFlow, exponent }: Sides<V>['charge'], flow: V): V {
  return way.run(conductanceAtFlow, conductance, atFlow, exponent, flow);
}

function exhaustPressureOf<V>(
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
function breathingOf<V>(way: Way<V>, path: PathOf<V>, p4: V, T4: V, exhaustPressure: V | undefined): V {
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
