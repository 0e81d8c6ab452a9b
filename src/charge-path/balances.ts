import { moistAirSensibleEnthalpy } from '../air/index.js';
import { compressorPower } from '../compressor/index.js';
import { fuelMassFlowFromAirflow, lambdaFromFlows } from '../fuel/index.js';
import { ratio, type Quantity } from '../units/index.js';
import { controlled } from './control.js';
import { heatFromEffectiveness } from './heat.js';
import { humidAirFlow } from './humid-flow.js';
import { compressorShaftPower } from './output.js';
import type { Path } from './read-installation.js';
import { airOf } from './walk.js';
import { heatTaken } from './walk-core.js';
import type { Walked } from './walked.js';
import { onQuantities as way } from './way.js';

/** Two figures that must be one, each worked out on its own. */
export interface Balance {
  readonly name: string;
  /** What the one side is, in words, and its value. */
  readonly one: BalanceSide;
  readonly other: BalanceSide;
  /**
   * Difference over the larger of the two. A heat below a millionth of what flows through with the stream (capacity rate times absolute
   * temperature) counts as that millionth: it is a difference of temperatures that doubles do not tell to nine digits.
   */
  readonly relativeDifference: number;
  /** As text. */
  toString(): string;
}

/** One side of a balance. */
export interface BalanceSide {
  readonly what: string;
  readonly value: Quantity;
}

/** Of air, J/(kg·K), for the size of a flow of heat. */
const HEAT_CAPACITY = 1005;

/** Every balance of a walked path. */
export function balancesOf(path: Path, walked: Walked<Quantity>): readonly Balance[] {
  return [
    compressorWork(path, walked),
    coreHeat(path, walked),
    balance('dry air', 'through compressor and core', walked.unknowns.airFlow, 'into the engine', walked.engineFlow),
    ...coolingAir(path, walked),
    water(walked),
    fuel(path, walked),
    boost(path, walked),
  ];
}

/** Heat over the heat that flows through, below which its own digits are those of the temperatures it is a difference of. */
const LEAST_SHARE = 1e-6;

function balance(
  name: string,
  what: string,
  one: Quantity,
  otherWhat: string,
  other: Quantity,
  flowingThrough = 0,
): Balance {
  const size = Math.max(Math.abs(one.si), Math.abs(other.si), LEAST_SHARE * flowingThrough);
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
    humidFlow.si * HEAT_CAPACITY * compressor.outletTemperature.si,
  );
}

function coreHeat(path: Path, { core, compressor, face }: Walked<Quantity>): Balance {
  const { chargeCapacityRate: charge, heat } = core;
  const T2 = compressor.outletTemperature;
  const taken =
    path.core.moment === undefined
      ? heatTaken<Quantity>(way, path, core, T2, face)
      : way.run(heatFromEffectiveness, ratio(1), charge, charge, T2, core.outletTemperature);
  return balance(
    'core heat',
    'given by the charge, condensing water included',
    heat,
    path.core.moment === undefined ? 'taken by the coolant' : 'taken by the metal',
    taken,
    charge.si * T2.si,
  );
}

/** Where some of the cooling air is breathed again its warmth is sought too. */
function coolingAir(path: Path, { unknowns, face, core }: Walked<Quantity>): readonly Balance[] {
  const behind = unknowns.coolingAirBehind;
  if (behind === undefined) return [];
  const { capacityRate } = airOf<Quantity>(path);
  const carried = way.run(heatFromEffectiveness, ratio(1), capacityRate, capacityRate, behind, face);
  const flowingThrough = capacityRate.si * behind.si;
  return [balance('cooling air', 'given by the core', core.heat, 'carried off by the air', carried, flowingThrough)];
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
