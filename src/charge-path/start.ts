import { outletTemperatureVariableHeat } from '../compressor/index.js';
import { walkRound } from './recirculation.js';
import { airOf } from './walk.js';
import type { PathOf, Unknowns } from './walked.js';

/** Share of the boost that core and ducts commonly take, of the pressure at the compressor outlet. */
const USUAL_LOSS = 0.05;
/** Where a map will tell. */
const USUAL_EFFICIENCY = 0.7;
/** How much of the way to the cooling air a charge commonly goes. */
const USUAL_COOLING = 0.7;

/** Pressure ratios from which a control that may feed on itself is tried. */
const OTHER_RATIOS = [1.4, 2.8, 4.5];

/** Guesses at the steady point, from which Newton's method sets out, the likeliest first. */
export function* startsOf(path: PathOf<number>): Generator<Unknowns<number>> {
  yield startAt(path, likelyOutletPressure(path));
  for (const ratio of OTHER_RATIOS) yield startAt(path, ratio * path.barometer);
}

/** A guess at the flow and the charge temperature at a pressure at the compressor outlet. */
export function startAt(path: PathOf<number>, p2: number): Unknowns<number> {
  const cold = airOf(path).freshFace;
  const ratio = Math.max(1, p2 / (path.barometer - (path.inlet.loss ?? 0)));
  const T1 = path.ambientTemperature + (path.inlet.heating ?? 0);
  const T2 = outletTemperatureVariableHeat.kernel(T1, ratio, path.efficiency ?? USUAL_EFFICIENCY, path.humidityRatio);
  const T3 = T2 + USUAL_COOLING * (cold - T2);
  const airFlow = flowAt(path, (1 - USUAL_LOSS) * p2, T3 + (path.duct.heating ?? 0));
  return nearer(path, { airFlow, compressorOutletPressure: p2, coreOutletTemperature: T3 });
}

/** A few rounds of letting core and engine answer what they are given: neither asks for the pressure to change much. */
function nearer(path: PathOf<number>, start: Unknowns<number>): Unknowns<number> {
  let at = start;
  for (let round = 0; round < ROUNDS; round++) {
    const { engineFlow, coreResidual } = walkRound(path, at);
    if (!Number.isFinite(engineFlow + coreResidual)) return at;
    at = {
      airFlow: (at.airFlow + engineFlow) / 2,
      compressorOutletPressure: at.compressorOutletPressure,
      coreOutletTemperature: at.coreOutletTemperature + coreResidual,
    };
  }
  return at;
}

const ROUNDS = 3;

/** More dry air than the engine could take from a compressor outlet at that pressure. */
export function mostFlowAt(path: PathOf<number>, p2: number): number {
  return 2 * flowAt(path, p2, COLDEST_CHARGE);
}

const COLDEST_CHARGE = 150;

function flowAt(path: PathOf<number>, p4: number, T4: number): number {
  const efficiency = path.volumetricEfficiency * (T4 / path.atChargeTemperature) ** (1 - path.densityExponent);
  const density = p4 / (path.gasConstant * T4);
  return (efficiency * density * path.sweptVolume * path.speed) / path.revolutionsPerCycle;
}

function likelyOutletPressure(path: PathOf<number>): number {
  const { boost, barometer } = path;
  switch (boost.by) {
    case 'spring':
      return (barometer + boost.gaugePressure) / (boost.senses === 'manifold' ? 1 - USUAL_LOSS : 1);
    case 'closed loop, absolute':
      return Math.max(1.05 * barometer, boost.manifoldPressure / (1 - USUAL_LOSS));
    case 'closed loop, gauge':
      return (barometer + boost.manifoldPressure) / (1 - USUAL_LOSS);
    case 'fixed compressor speed':
      return Math.max(1.05, boost.ratioAtPoint) * barometer;
    case 'held torque': {
      // Torque goes about with the flow, and the flow with the pressure in the manifold.
      const { specificFuelConsumption, indicated, lambda, stoichiometricAirFuelRatio } = path.fuelling;
      const power = 2 * Math.PI * path.speed * boost.torque;
      const consumption = specificFuelConsumption ?? 1.25 / (indicated!.efficiency * indicated!.lowerHeatingValue);
      const airFlow = power * consumption * (lambda ?? 1) * stoichiometricAirFuelRatio;
      const perPressure = flowAt(path, barometer, path.atChargeTemperature) / barometer;
      return Math.min(5, Math.max(1.1, airFlow / perPressure / barometer)) * barometer;
    }
    case 'displacement blower': {
      const passed = boost.volumePerRevolution * boost.driveRatio * path.speed * boost.volumetricEfficiencyUnloaded;
      const taken = (path.sweptVolume * path.speed * path.volumetricEfficiency) / path.revolutionsPerCycle;
      return Math.min(4, Math.max(1.2, passed / taken)) * barometer;
    }
    case 'fixed compressor speed on its map':
    case 'fixed wastegate':
      return 2 * barometer;
  }
}
