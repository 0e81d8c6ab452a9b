import { refusal } from '../calculation/refusal.js';
import {
  CalculationError,
  column,
  temperature,
  type Column,
  type Operation,
  type Quantity,
  type QuantityRecord,
} from '../units/index.js';
import { describe, inputProblems, NO_NOTES, quantityOf, requireNames } from '../units/internal.js';
import { advanceCells, outletsOfCells, settledCells, type CellFlow } from './core-cells.js';
import { soakedChargeTemperature, USUAL_CELLS } from './soaked-charge.js';

/** The two flows through a core and what each exchanges with its wall. */
export interface CoreFlows {
  /** Charge temperature into the core. */
  readonly hotInlet: Quantity<'temperature'>;
  /** Mass flow times specific heat capacity of the charge; zero while no charge flows. */
  readonly chargeCapacityRate: Quantity<'heat capacity rate'>;
  /** Conductance between charge and wall over the capacity rate of the charge. */
  readonly chargeTransferUnits: Quantity<'ratio'>;
  /** Temperature of the cooling air or liquid at the face of the core. */
  readonly coolantInlet: Quantity<'temperature'>;
  /** Mass flow times specific heat capacity of the cooling air or liquid; zero while none flows. */
  readonly coolantCapacityRate: Quantity<'heat capacity rate'>;
  /** Conductance between wall and coolant over the capacity rate of the coolant. */
  readonly coolantTransferUnits: Quantity<'ratio'>;
}

/** A core after a stretch of time, and the heat that passed meanwhile: from the charge = to the coolant + stored. */
export interface SoakedCore {
  readonly core: SoakingCore;
  /** Heat that the charge gave to the core; below zero where a warm core heated it. */
  readonly heatFromCharge: Quantity<'energy'>;
  /** Heat that the core gave to the coolant. */
  readonly heatToCoolant: Quantity<'energy'>;
  /** Heat that stayed in the metal. */
  readonly heatStored: Quantity<'energy'>;
}

/** The metal of a core at one moment. It does not change: time makes another one. */
export interface SoakingCore {
  /** Heat capacity of the metal of the core. */
  readonly heatCapacity: Quantity<'heat capacity'>;
  /** Number of cells along each flow. */
  readonly cells: number;
  /** Temperature of every cell, along the coolant first. */
  readonly temperatures: Column<'temperature'>;
  /** Mean temperature of the metal. */
  readonly meanTemperature: Quantity<'temperature'>;
  /** Charge temperature behind the core at this moment. */
  chargeOutlet(flows: CoreFlows): Quantity<'temperature'>;
  /** Temperature of the coolant behind the core at this moment, mean over the face. */
  coolantOutlet(flows: CoreFlows): Quantity<'temperature'>;
  /** The core after a time of steady flows, exactly, however long the time. */
  after(time: Quantity<'time'>, flows: CoreFlows): SoakedCore;
  /** As text. */
  toString(): string;
  /** As plain data. */
  toJSON(): { readonly heatCapacity: QuantityRecord; readonly cells: number; readonly temperatures: readonly number[] };
}

const NAME = 'soaking core';
const MOST_CELLS = 50;

const INPUTS = soakedChargeTemperature.spec.inputs;
const FLOW_NAMES = [
  'hotInlet',
  'chargeCapacityRate',
  'chargeTransferUnits',
  'coolantInlet',
  'coolantCapacityRate',
  'coolantTransferUnits',
] as const;

/** Everything wrong with what was given, at once, as a calculation with these inputs would say it. */
export function requireSoakInputs(name: string, given: Readonly<Record<string, unknown>>): void {
  const inputs = Object.keys(given).map((key) => INPUTS.find((input) => input.name === key)!);
  const problems = inputProblems(
    { ...(soakedChargeTemperature.spec as Operation), name, inputs },
    Object.values(given),
  );
  if (problems.length > 0) throw new CalculationError(name, problems);
}

export function cellFlowOf(name: string, flows: CoreFlows): CellFlow {
  requireNames(name, flows, FLOW_NAMES, 'flows.');
  const given = (flows ?? {}) as Partial<CoreFlows>;
  requireSoakInputs(name, Object.fromEntries(FLOW_NAMES.map((key) => [key, given[key]])));
  return {
    hotInlet: flows.hotInlet.si,
    chargeCapacityRate: flows.chargeCapacityRate.si,
    chargeUnits: flows.chargeTransferUnits.si,
    coolantInlet: flows.coolantInlet.si,
    coolantCapacityRate: flows.coolantCapacityRate.si,
    coolantUnits: flows.coolantTransferUnits.si,
  };
}

/**
 * A core of one temperature, to follow through pulls and rests whose flows change.
 *
 * Each stretch of steady flows is exact, so steps may be as long as the flows are steady: heat soak in a pull, the rest between pulls, a
 * core chilled beforehand. For one such stretch from a core of one temperature, {@link soakedChargeTemperature} also has uncertainty
 * and explanation; for a recorded pull, {@link heatSoak} takes every step.
 *
 * @param options.cells - cells along each flow, 1 to 50; 10 if not given. One cell is a wall of one temperature.
 * @throws CalculationError if an input is impossible.
 * @example
 * const rest = { hotInlet: temperature(40, '°C'), chargeCapacityRate: heatCapacityRate(0, 'W/K'), chargeTransferUnits: ratio(2), coolantInlet: temperature(18, '°C'), coolantCapacityRate: heatCapacityRate(120, 'W/K'), coolantTransferUnits: ratio(2) };
 * const pull = { ...rest, hotInlet: temperature(121, '°C'), chargeCapacityRate: heatCapacityRate(202, 'W/K'), coolantCapacityRate: heatCapacityRate(500, 'W/K'), coolantTransferUnits: ratio(1) };
 * const cold = soakingCore({ heatCapacity: heatCapacity(5382, 'J/K'), temperature: temperature(18, '°C') });
 * const { core: soaked } = cold.after(time(10, 's'), pull);
 * soaked.chargeOutlet(pull).in('°C') //=> 47.39
 * soaked.after(time(60, 's'), rest).core.chargeOutlet(pull).in('°C') //=> 36.01
 */
export function soakingCore(options: {
  readonly heatCapacity: Quantity<'heat capacity'>;
  readonly temperature: Quantity<'temperature'>;
  readonly cells?: number | undefined;
}): SoakingCore {
  requireNames(NAME, options, ['heatCapacity', 'temperature', 'cells']);
  const { heatCapacity, temperature: start, cells } = checked(options);
  return new CoreOfCells(heatCapacity, cells, new Float64Array(cells * cells).fill(start.si));
}

/**
 * A core that has settled between two flows, to follow from there: what is left of a long pull, or of idling.
 *
 * @throws CalculationError if nothing flows, or an input is impossible.
 */
export function settledCore(options: {
  readonly heatCapacity: Quantity<'heat capacity'>;
  readonly flows: CoreFlows;
  readonly cells?: number | undefined;
}): SoakingCore {
  requireNames('settled core', options, ['heatCapacity', 'flows', 'cells']);
  const flow = cellFlowOf('settled core', options?.flows);
  const { heatCapacity, cells } = checked({ ...options, temperature: options.flows.hotInlet });
  if (flow.chargeCapacityRate * flow.chargeUnits + flow.coolantCapacityRate * flow.coolantUnits === 0) {
    throw refusal(
      'settled core',
      'rule',
      'flows',
      'a capacity rate and its transfer units above zero on one side',
      'no flow',
    );
  }
  return new CoreOfCells(heatCapacity, cells, settledCells(cells, flow));
}

function checked(options: {
  readonly heatCapacity: Quantity<'heat capacity'>;
  readonly temperature: Quantity<'temperature'>;
  readonly cells?: number | undefined;
}): { heatCapacity: Quantity<'heat capacity'>; temperature: Quantity<'temperature'>; cells: number } {
  const { heatCapacity, temperature: start, cells = USUAL_CELLS } = options ?? {};
  requireSoakInputs(NAME, { heatCapacity, startTemperature: start });
  if (!Number.isInteger(cells) || cells < 1 || cells > MOST_CELLS) {
    throw refusal(NAME, 'impossible', 'cells', `a whole number from 1 to ${MOST_CELLS}`, describe(cells));
  }
  return { heatCapacity, temperature: start, cells };
}

const kelvin = (si: number): Quantity<'temperature'> => temperature(si, 'K').to('°C');

const joule = (si: number): Quantity<'energy'> => quantityOf('energy', si, 'kJ', undefined, NO_NOTES);

class CoreOfCells implements SoakingCore {
  readonly heatCapacity: Quantity<'heat capacity'>;
  readonly cells: number;
  readonly #walls: Float64Array;

  constructor(heatCapacity: Quantity<'heat capacity'>, cells: number, walls: Float64Array) {
    this.heatCapacity = heatCapacity;
    this.cells = cells;
    this.#walls = walls;
  }

  get temperatures(): Column<'temperature'> {
    return column('temperature', Array.from(this.#walls), 'K').to('°C');
  }

  get meanTemperature(): Quantity<'temperature'> {
    const [first] = this.#walls as unknown as [number];
    return kelvin(first + this.#walls.reduce((sum, wall) => sum + (wall - first), 0) / this.#walls.length);
  }

  chargeOutlet(flows: CoreFlows): Quantity<'temperature'> {
    return kelvin(outletsOfCells(this.cells, this.#walls, cellFlowOf(NAME, flows)).charge);
  }

  coolantOutlet(flows: CoreFlows): Quantity<'temperature'> {
    return kelvin(outletsOfCells(this.cells, this.#walls, cellFlowOf(NAME, flows)).coolant);
  }

  after(time: Quantity<'time'>, flows: CoreFlows): SoakedCore {
    const flow = cellFlowOf(NAME, flows);
    requireSoakInputs(NAME, { time });
    const step = advanceCells(this.cells, this.heatCapacity.si, this.#walls, flow, time.si);
    return {
      core: new CoreOfCells(this.heatCapacity, this.cells, step.walls),
      heatFromCharge: joule(step.heatFromCharge),
      heatToCoolant: joule(step.heatToCoolant),
      heatStored: joule(step.heatStored),
    };
  }

  toString(): string {
    const [low, high] = [Math.min(...this.#walls), Math.max(...this.#walls)];
    const range = low === high ? String(kelvin(low)) : `${String(kelvin(low))} to ${String(kelvin(high))}`;
    return `core of ${String(this.heatCapacity)} in ${this.cells} by ${this.cells} cells, ${range}`;
  }

  toJSON(): {
    readonly heatCapacity: QuantityRecord;
    readonly cells: number;
    readonly temperatures: readonly number[];
  } {
    return { heatCapacity: this.heatCapacity.toJSON(), cells: this.cells, temperatures: Array.from(this.#walls) };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}
