import type { PathOf, Unknowns } from './walk.js';
import { outletTemperatureVariableHeat } from '../compressor/index.js';

/** Share of the boost that core and ducts commonly take, of the pressure at the compressor outlet. */
const USUAL_LOSS = 0.05;
/** How much of the way to the cooling air a charge commonly goes. */
const USUAL_COOLING = 0.7;

/** A guess at the steady point, from which Newton's method sets out. */
export function startOf(path: PathOf<number>): Unknowns<number> | undefined {
  const p2 = outletPressureOf(path);
  const cold = path.cooling.by === 'air' ? path.cooling.face : path.cooling.air.face;
  const ratio = Math.max(1, p2 / (path.barometer - (path.inlet.loss ?? 0)));
  const T1 = path.ambientTemperature + (path.inlet.heating ?? 0);
  const T2 = outletTemperatureVariableHeat.kernel(T1, ratio, path.efficiency, path.humidityRatio);
  const T3 = T2 + USUAL_COOLING * (cold - T2);
  const airFlow = flowAt(path, (1 - USUAL_LOSS) * p2, T3 + (path.duct.heating ?? 0));
  return { airFlow, compressorOutletPressure: p2, coreOutletTemperature: T3 };
}

function flowAt(path: PathOf<number>, p4: number, T4: number): number {
  const efficiency = path.volumetricEfficiency * (T4 / path.atChargeTemperature) ** (1 - path.densityExponent);
  const density = p4 / (path.gasConstant * T4);
  return (efficiency * density * path.sweptVolume * path.speed) / path.revolutionsPerCycle;
}

function outletPressureOf(path: PathOf<number>): number {
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
    case 'fixed wastegate':
      return 2 * barometer;
  }
}
