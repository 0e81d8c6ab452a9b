import {
  correctedFlow,
  inletTemperatureWithRecirculation,
  outletTemperatureVariableHeat,
} from '../compressor/index.js';
import { speedDensityAirflow } from '../engine/index.js';
import { fuelMassFlowFromAirflow } from '../fuel/index.js';
import { coolingAirBehindCore } from '../intercooler/index.js';
import { vapourPressureFromHumidityRatio } from '../psychrometrics/index.js';
import { faceOf, type AirSide } from './air-side.js';
import { breathingOf, exhaustPressureOf } from './breathing.js';
import { humidAirFlow } from './humid-flow.js';
import { passageLoss } from './passage-loss.js';
import { heatTaken, throughCore } from './walk-core.js';
import type { PathOf, Unknowns, Walked } from './walked.js';
import type { Over, Way } from './way.js';

/** Walks the path once, from assumed unknowns to how far they are off. */
export function walk<V>(way: Way<V>, path: PathOf<V>, unknowns: Unknowns<V>): Walked<V> {
  const { airFlow, compressorOutletPressure: p2, coreOutletTemperature: T3 } = unknowns;
  const W = path.humidityRatio;
  const humidFlow = way.run(humidAirFlow, airFlow, W);
  const p1 = behind(way, path.barometer, path.inlet, humidFlow);
  const { coolingAirBehind } = unknowns;
  const T1 = warmed(way, breathed(way, path, coolingAirBehind), path.inlet);
  const face = faceOf(way, airOf(path), coolingAirBehind);
  const pressureRatio = way.ratioOf(p2, p1);
  const efficiency = path.efficiency ?? efficiencyOnMap(way, path, { humidFlow, p1, T1, pressureRatio });
  const T2 = way.run(outletTemperatureVariableHeat, T1, pressureRatio, efficiency, W);
  const core = throughCore(way, path, { airFlow, humidFlow, p2, T2, T3, face });
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
    face,
    core,
    manifold: { pressure: p4, temperature: T4, vapourPressure },
    exhaustPressure,
    fuelFlow,
    volumetricEfficiency: breathing,
    engineFlow: taken,
    engineResidual: way.subtract(taken, airFlow),
    coreResidual: way.subtract(core.outletTemperature, T3),
    recirculationResidual:
      coolingAirBehind === undefined
        ? undefined
        : way.subtract(behindCore(way, path, core, T2, face), coolingAirBehind),
  };
}

/** Air of the core, or of the radiator of a liquid loop. */
export function airOf<V>({ cooling }: Pick<PathOf<V>, 'cooling'>): Over<AirSide, V> {
  return cooling.by === 'air' ? cooling : cooling.air;
}

/** Temperature of the cooling air behind the core, or the radiator of a liquid loop. */
function behindCore<V>(way: Way<V>, path: PathOf<V>, core: Walked<V>['core'], T2: V, face: V): V {
  const { flow, specificHeatCapacity } = airOf(path);
  return way.run(coolingAirBehindCore, face, heatTaken(way, path, core, T2, face), flow, specificHeatCapacity);
}

/** Temperature of the air that the inlet takes in: of the room, or mixed with what comes from behind the core. */
function breathed<V>(way: Way<V>, { ambientTemperature, inlet }: PathOf<V>, behind: V | undefined): V {
  if (inlet.recirculatedShare === undefined) return ambientTemperature;
  return way.run(inletTemperatureWithRecirculation, ambientTemperature, behind!, inlet.recirculatedShare);
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

type Passage<V> = PathOf<V>['duct'];

function behind<V>(way: Way<V>, pressure: V, { loss, lossAtFlow }: Passage<V>, flow: V): V {
  if (loss === undefined) return pressure;
  return way.subtract(pressure, lossAtFlow === undefined ? loss : way.run(passageLoss, loss, lossAtFlow, flow));
}

function warmed<V>(way: Way<V>, temperature: V, { heating }: Passage<V>): V {
  return heating === undefined ? temperature : way.add(temperature, heating);
}
