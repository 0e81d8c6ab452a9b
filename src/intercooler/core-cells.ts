/**
 * The wall of a crossflow core cut into n by n cells, in plain SI numbers; what stands behind {@link soakingCore}.
 *
 * Cell (i, j) is the i-th that the charge passes and the j-th that the cooling air passes, kept at place i * n + j.
 */
export interface CellFlow {
  readonly hotInlet: number;
  readonly chargeCapacityRate: number;
  /** Conductance between charge and wall over the charge capacity rate. */
  readonly chargeUnits: number;
  readonly coolantInlet: number;
  readonly coolantCapacityRate: number;
  /** Conductance between wall and coolant over the coolant capacity rate. */
  readonly coolantUnits: number;
}

/** What a stretch of time did to the cells. Heat from the charge is heat to the coolant plus heat stored, by the sums themselves. */
export interface CellStep {
  readonly walls: Float64Array;
  readonly heatFromCharge: number;
  readonly heatToCoolant: number;
  readonly heatStored: number;
}

export interface CellOutlets {
  readonly charge: number;
  readonly coolant: number;
}

/** After so many times its own time constant nothing is left in a cell of what it began with, in doubles, nor further down. */
const FORGOTTEN = 1500;

/** Charge and coolant passing the walls: in each cell a flow goes the same share of the way to the wall. */
function pass(n: number, walls: ArrayLike<number>, flow: CellFlow): CellOutlets {
  const hotShare = -Math.expm1(-flow.chargeUnits / n);
  const coldShare = -Math.expm1(-flow.coolantUnits / n);
  const hot = new Float64Array(n).fill(flow.hotInlet);
  let coolant = 0;
  for (let i = 0; i < n; i++) {
    let cold = flow.coolantInlet;
    for (let j = 0; j < n; j++) {
      const wall = walls[i * n + j]!;
      hot[j]! += hotShare * (wall - hot[j]!);
      cold += coldShare * (wall - cold);
    }
    coolant += cold / n;
  }
  return { charge: meanOf(hot), coolant };
}

const meanOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Temperatures with which flows leave a core with these walls. */
export function outletsOfCells(n: number, walls: ArrayLike<number>, flow: CellFlow): CellOutlets {
  return pass(n, walls, flow);
}

/** Walls as they are once the flows have passed for long. NaN where nothing flows. */
export function settledCells(n: number, flow: CellFlow): Float64Array {
  const zero = new Float64Array(n * n);
  return downstream(n, flow, zero, flow.hotInlet, flow.coolantInlet).walls;
}

/**
 * Solves (per cell) hot conductance * (hot - wall) + cold conductance * (cold - wall) = gain, cell after cell in the order of the flows.
 * With gain 0 it is the settled core; with the heat stored as gain, the integral over time of a core on its way.
 */
function downstream(
  n: number,
  flow: CellFlow,
  gain: Float64Array,
  hotInlet: number,
  coolantInlet: number,
): { walls: Float64Array; charge: number; coolant: number } {
  const hotShare = -Math.expm1(-flow.chargeUnits / n);
  const coldShare = -Math.expm1(-flow.coolantUnits / n);
  const hotPart = (flow.chargeCapacityRate / n) * hotShare;
  const coldPart = (flow.coolantCapacityRate / n) * coldShare;
  const all = hotPart + coldPart;
  const walls = new Float64Array(n * n);
  const hot = new Float64Array(n).fill(hotInlet);
  let coolant = 0;
  for (let i = 0; i < n; i++) {
    let cold = coolantInlet;
    for (let j = 0; j < n; j++) {
      const place = i * n + j;
      // Taken from the colder side, so that equal temperatures give exactly that temperature.
      const wall = cold + (hotPart * (hot[j]! - cold) - gain[place]!) / all;
      walls[place] = wall;
      hot[j]! += hotShare * (wall - hot[j]!);
      cold += coldShare * (wall - cold);
    }
    coolant += cold / n;
  }
  return { walls, charge: meanOf(hot), coolant };
}

/**
 * How much of a cell's difference is found k cells downstream along one flow after a time, for k from 0; the first is given as its
 * change, which keeps its digits over short times. `rate` is the flow's conductance in the cell over the cell's heat capacity, times
 * time. A sum over how often heat was taken up and given off again on the way: all terms are positive.
 */
function spread(n: number, units: number, rate: number): Float64Array {
  const parts = new Float64Array(n);
  parts[0] = Math.expm1(-rate);
  if (rate > FORGOTTEN) return parts;
  const handed = -Math.expm1(-units / n) * rate;
  const chance = new Float64Array(n);
  chance[0] = Math.exp(-rate);
  for (let m = 1; m < n; m++) chance[m] = (chance[m - 1]! * handed) / m;
  for (let k = 1; k < n; k++) {
    let ways = 1;
    for (let m = 1; m <= k; m++) {
      parts[k]! += ways * chance[m]! * Math.exp((-units * (k - m)) / n);
      ways *= (k - m) / m;
    }
  }
  return parts;
}

/**
 * Walls after a time of steady flows, exactly: each flow acts along its own direction only, so the change of a difference from the
 * settled core is one spread along the charge times one along the coolant, however long the time.
 */
export function advanceCells(
  n: number,
  heatCapacity: number,
  walls: Float64Array,
  flow: CellFlow,
  time: number,
): CellStep {
  const { chargeCapacityRate: Ch, coolantCapacityRate: Cc, hotInlet, coolantInlet } = flow;
  const hotPart = (Ch / n) * -Math.expm1(-flow.chargeUnits / n);
  const coldPart = (Cc / n) * -Math.expm1(-flow.coolantUnits / n);
  if (hotPart + coldPart === 0 || time === 0) {
    return { walls: walls.slice(), heatFromCharge: 0, heatToCoolant: 0, heatStored: 0 };
  }
  const ofCell = heatCapacity / (n * n);
  const zero = new Float64Array(n * n);
  const settled = downstream(n, flow, zero, hotInlet, coolantInlet);
  const alongHot = spread(n, flow.chargeUnits, (hotPart / ofCell) * time);
  const alongCold = spread(n, flow.coolantUnits, (coldPart / ofCell) * time);

  const difference = walls.map((wall, place) => wall - settled.walls[place]!);
  const coldChange = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      let change = 0;
      for (let k = 0; k <= j; k++) change += alongCold[k]! * difference[i * n + j - k]!;
      coldChange[i * n + j] = change;
    }
  }
  const gain = new Float64Array(n * n);
  const next = new Float64Array(n * n);
  let heatStored = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const place = i * n + j;
      let change = coldChange[place]!;
      for (let k = 0; k <= i; k++) {
        const above = (i - k) * n + j;
        change += alongHot[k]! * (difference[above]! + coldChange[above]!);
      }
      next[place] = walls[place]! + change;
      gain[place] = ofCell * change;
      heatStored += gain[place];
    }
  }
  // What the differences from the settled core gave to the flows, summed over the time.
  const passed = downstream(n, flow, gain, 0, 0);
  return {
    walls: next,
    heatFromCharge: Ch * (time * (hotInlet - settled.charge) - passed.charge),
    heatToCoolant: Cc * (time * (settled.coolant - coolantInlet) + passed.coolant),
    heatStored,
  };
}
