import { solveLinear } from '../calculation/linear.js';
import { refusal } from '../calculation/refusal.js';
import { along, type NetworkFlow, type WallNetwork } from './wall-network.js';

/** Both flows of a core whose metal is followed, and the loop behind it where its coolant is a liquid. */
export interface FlowsOfPull {
  readonly charge: NetworkFlow;
  /** Its inlet is that of cooling air; a liquid enters as warm as it is then. */
  readonly coolant: NetworkFlow;
  readonly loop: LoopOfPull | undefined;
}

/** A liquid loop: one well-mixed store of heat, and a radiator that is settled at every moment. */
export interface LoopOfPull {
  readonly heatCapacity: number;
  /** Share of the way to the air that the liquid goes in the radiator. */
  readonly radiatorShare: number;
  readonly airFace: number;
}

/** The metal of a core and the liquid of its loop, at a moment. */
export interface HeatStore {
  readonly walls: Float64Array;
  readonly liquid: number | undefined;
}

/** What a stretch of time did. */
export interface StepOfPull extends HeatStore {
  readonly heatFromCharge: number;
  readonly heatToCoolant: number;
}

/** The shortest time constant of anything that is followed, over a stretch in which a polynomial of fourth order is exact enough. */
const STRETCHES_PER_TIME_CONSTANT = 10;
const MOST_STRETCHES = 20_000;

/** A core through a pull, in SI numbers. */
export class PullCore {
  readonly #network: WallNetwork;
  readonly #heatCapacity: number;

  constructor(network: WallNetwork, heatCapacity: number) {
    this.#network = network;
    this.#heatCapacity = heatCapacity;
  }

  /** All metal of one temperature, and the liquid as warm as is said. */
  uniform(temperature: number, liquid: number | undefined): HeatStore {
    return { walls: new Float64Array(this.#network.cells).fill(temperature), liquid };
  }

  /** Temperature with which the charge leaves. */
  chargeOutlet({ walls }: HeatStore, charge: NetworkFlow): number {
    return along(this.#network.charge, charge, walls, this.#network.cells);
  }

  /** Temperature with which the coolant leaves. */
  coolantOutlet(store: HeatStore, { coolant }: FlowsOfPull): number {
    return along(this.#network.coolant, entering(coolant, store.liquid), store.walls, this.#network.cells);
  }

  /** After a time of steady flows: Runge and Kutta's fourth order in stretches far below every time constant. */
  after(store: HeatStore, flows: FlowsOfPull, time: number): StepOfPull {
    const stretches = Math.max(1, Math.ceil(time * this.#fastest(flows) * STRETCHES_PER_TIME_CONSTANT));
    if (stretches > MOST_STRETCHES) {
      const need = `so short that the core and its loop, with time constants down to ${(1 / this.#fastest(flows)).toPrecision(2)} s, can be followed through it`;
      throw refusal('pull in time', 'impossible', 'step', need, `${time} s`);
    }
    const h = time / stretches;
    let state = this.#stateOf(store);
    for (let i = 0; i < stretches; i++) {
      const k1 = this.#rates(state, flows);
      const k2 = this.#rates(moved(state, k1, h / 2), flows);
      const k3 = this.#rates(moved(state, k2, h / 2), flows);
      const k4 = this.#rates(moved(state, k3, h), flows);
      state = state.map((value, j) => value + (h / 6) * (k1[j]! + 2 * k2[j]! + 2 * k3[j]! + k4[j]!));
    }
    const n = this.#network.cells;
    return { ...this.#storeOf(state, store.liquid), heatFromCharge: state[n + 1]!, heatToCoolant: state[n + 2]! };
  }

  /** As it is once the flows have passed for long: rates are a straight line in the temperatures, and all zero then. */
  settled(flows: FlowsOfPull): HeatStore {
    const n = this.#network.cells + (flows.loop ? 1 : 0);
    const atZero = this.#rates(new Float64Array(this.#network.cells + 3), flows);
    const columns = Array.from({ length: n }, (_, k) => {
      const unit = new Float64Array(this.#network.cells + 3);
      unit[k] = 1;
      return this.#rates(unit, flows);
    });
    const matrix = Array.from({ length: n }, (_, j) => columns.map((column) => column[j]! - atZero[j]!));
    const state = solveLinear(
      matrix,
      Array.from(atZero.subarray(0, n), (rate) => -rate),
    )!;
    return this.#storeOf(Float64Array.from(state), flows.loop ? state[n - 1] : undefined);
  }

  /** Temperatures of the cells, of the liquid, and the heats of both flows. */
  #stateOf({ walls, liquid = 0 }: HeatStore): Float64Array {
    return Float64Array.of(...walls, liquid, 0, 0);
  }

  #storeOf(state: Float64Array, liquid: number | undefined): HeatStore {
    const n = this.#network.cells;
    return { walls: state.slice(0, n), liquid: liquid === undefined ? undefined : state[n]! };
  }

  #rates(state: Float64Array, { charge, coolant, loop }: FlowsOfPull): Float64Array {
    const { cells, charge: chargeRoute, coolant: coolantRoute } = this.#network;
    const walls = state.subarray(0, cells);
    const liquid = entering(coolant, loop && state[cells]!);
    const rates = new Float64Array(cells + 3);
    const chargeOutlet = along(chargeRoute, charge, walls, cells, rates);
    const coolantOutlet = along(coolantRoute, liquid, walls, cells, rates);
    const ofCell = this.#heatCapacity / cells;
    for (let i = 0; i < cells; i++) rates[i]! /= ofCell;
    if (loop) {
      const back = coolantOutlet - loop.radiatorShare * (coolantOutlet - loop.airFace);
      rates[cells] = (coolant.capacityRate * (back - liquid.inlet)) / loop.heatCapacity;
    }
    rates[cells + 1] = charge.capacityRate * (charge.inlet - chargeOutlet);
    rates[cells + 2] = coolant.capacityRate * (coolantOutlet - liquid.inlet);
    return rates;
  }

  /** One over the shortest time constant. */
  #fastest({ charge, coolant, loop }: FlowsOfPull): number {
    const wall = (charge.conductance + coolant.conductance) / this.#heatCapacity;
    return Math.max(wall, loop ? coolant.capacityRate / loop.heatCapacity : 0);
  }
}

function entering(coolant: NetworkFlow, liquid: number | undefined): NetworkFlow {
  return liquid === undefined ? coolant : { ...coolant, inlet: liquid };
}

const moved = (state: Float64Array, rates: Float64Array, by: number): Float64Array =>
  state.map((value, i) => value + by * rates[i]!);
