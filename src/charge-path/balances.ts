import { moistAirSensibleEnthalpy } from '../air/index.js';
import { compressorPower } from '../compressor/index.js';
import { fuelMassFlowFromAirflow, lambdaFromFlows } from '../fuel/index.js';
import { liquidLoopHeat } from '../intercooler/index.js';
import type { Quantity } from '../units/index.js';
import { controlled } from './control.js';
import { heatFromEffectiveness } from './heat.js';
import { humidAirFlow } from './humid-flow.js';
import { compressorShaftPower } from './output.js';
import type { Path } from './read-installation.js';
import type { Walked } from './walked.js';
import { onQuantities as way } from './way.js';

/** Two figures that must be one, each worked out on its own. */
export interface Balance {
  readonly name: string;
  /** What the one side is, in words, and its value. */
  readonly one: BalanceSide;
  readonly other: BalanceSide;
  /** Difference over the larger of the two. */
  readonly relativeDifference: number;
  /** As text. */
  toString(): string;
}

/** One side of a balance. */
export interface BalanceSide {
  readonly what: string;
  readonly value: Quantity;
}

/** Every balance of a walked path. */
export function balancesOf(path: Path, walked: Walked<Quantity>): readonly Balance[] {
  return [
    compressorWork(path, walked),
    coreHeat(path, walked),
    balance('dry air', 'through compressor and core', walked.unknowns.airFlow, 'into the engine', walked.engineFlow),
    water(walked),
    fuel(path, walked),
    boost(path, walked),
  ];
}

function balance(name: string, what: string, one: Quantity, otherWhat: string, other: Quantity): Balance {
  const size = Math.max(Math.abs(one.si), Math.abs(other.si));
  const relativeDifference = size === 0 ? 0 : Math.abs(one.si - other.si) / size;
  return {
    name,
    one: { what, value: one },
    other: { what: otherWhat, value: other },
    relativeDifference,
    toString: () => `${name}: ${String(one)} ${what} = ${String(other)} ${otherWhat}`,
  };
}

function compressorWork(path: Path, walked: Walked<Quantity>): Balance {
  const { inlet, compressor, humidFlow } = walked;
  const enthalpyAt = (temperature: Quantity): Quantity =>
    way.run(moistAirSensibleEnthalpy, temperature, path.humidityRatio);
  const rise = way.subtract(enthalpyAt(compressor.outletTemperature), enthalpyAt(inlet.temperature));
  const { shaft } = compressorShaftPower(way, path, walked);
  const given = path.mechanicalEfficiency ? way.scale(shaft, path.mechanicalEfficiency) : shaft;
  return balance(
    'compressor work',
    'enthalpy flow taken up by the air',
    way.run(compressorPower, humidFlow, rise),
    'given by the shaft',
    given,
  );
}

function coreHeat({ cooling }: Path, { core, compressor }: Walked<Quantity>): Balance {
  const { chargeCapacityRate: charge, rating, radiator, heat } = core;
  const T2 = compressor.outletTemperature;
  const taken =
    cooling.by === 'air'
      ? way.run(heatFromEffectiveness, rating.effectiveness, charge, cooling.capacityRate, T2, cooling.face)
      : way.run(
          liquidLoopHeat,
          T2,
          cooling.air.face,
          charge,
          rating.effectiveness,
          cooling.capacityRate,
          radiator!.effectiveness,
          cooling.air.capacityRate,
        );
  return balance('core heat', 'given by the charge, condensing water included', heat, 'taken by the coolant', taken);
}

function water({ unknowns: { airFlow }, humidFlow, core }: Walked<Quantity>): Balance {
  const before = way.subtract(humidFlow, airFlow);
  const after = way.subtract(way.run(humidAirFlow, airFlow, core.humidityRatio), airFlow);
  return balance(
    'water',
    'vapour into the core',
    before,
    'vapour out of it and condensate',
    way.add(after, core.condensate),
  );
}

function fuel({ fuelling }: Path, { unknowns: { airFlow }, fuelFlow }: Walked<Quantity>): Balance {
  const { lambda, stoichiometricAirFuelRatio: stoichiometric } = fuelling;
  const mixture = lambda ?? way.run(lambdaFromFlows, airFlow, fuelFlow, stoichiometric);
  const burned = way.run(fuelMassFlowFromAirflow, airFlow, mixture, stoichiometric);
  return balance('fuel', 'injected', fuelFlow, 'dry air over lambda and stoichiometric ratio', burned);
}

function boost(path: Path, walked: Walked<Quantity>): Balance {
  const { what, is, held, shall } = controlled(way, path, walked);
  return balance('boost control', what, is, held, shall);
}
