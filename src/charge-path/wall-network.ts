import type { Arrangement } from './arrangements.js';

/** Where a flow touches the wall at one step of its way: each of its streams one cell. */
interface Stage {
  readonly cells: readonly number[];
  /** Where the streams mix: all the way, only behind it, as in the tank between two passes, or not. */
  readonly mixes: 'within' | 'behind' | 'never';
}

/** The way of a flow over the cells of a wall, in streams of equal flow side by side. */
export interface Route {
  readonly streams: number;
  readonly stages: readonly Stage[];
}

/** The metal of a core cut into cells, and how both flows pass them. */
export interface WallNetwork {
  readonly cells: number;
  readonly charge: Route;
  readonly coolant: Route;
}

/** A line of cells stands for a core along both flows, a square one for a core across: more of them cost little. */
const CELLS_OF_A_LINE = 4;

const upTo = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

/** Cells of one pass, `n` along each flow that crosses the other. */
function onePass(arrangement: Arrangement, n: number): WallNetwork {
  const line = (cells: readonly number[]): Route => ({
    streams: 1,
    stages: cells.map((cell) => ({ cells: [cell], mixes: 'never' })),
  });
  const along = upTo(CELLS_OF_A_LINE * n);
  switch (arrangement) {
    case 'parallelFlow':
      return { cells: along.length, charge: line(along), coolant: line(along) };
    case 'counterflow':
      return { cells: along.length, charge: line(along), coolant: line(along.toReversed()) };
    case 'oneShell': {
      // Charge in the tubes, there and back; the coolant in the shell mixes across both.
      const back = along.map((place) => place + along.length);
      const shell = along.map((place): Stage => ({ cells: [place, place + along.length], mixes: 'within' }));
      const tubes = line([...along, ...back.toReversed()]);
      return { cells: 2 * along.length, charge: tubes, coolant: { streams: 2, stages: shell } };
    }
    default: {
      const mixing = (one: Arrangement): Stage['mixes'] =>
        arrangement === 'crossflowBothMixed' || arrangement === one ? 'within' : 'never';
      const [charge, coolant] = [mixing('crossflowChargeMixed'), mixing('crossflowCoolantMixed')];
      const rows = upTo(n).map((i) => ({ cells: upTo(n).map((j) => i * n + j), mixes: charge }));
      const columns = upTo(n).map((j) => ({ cells: upTo(n).map((i) => i * n + j), mixes: coolant }));
      return { cells: n * n, charge: { streams: n, stages: rows }, coolant: { streams: n, stages: columns } };
    }
  }
}

/** Cells of a core whose passes stand in overall counterflow, each flow mixed between two of them. */
export function wallNetwork(arrangement: Arrangement, passes: number, n: number): WallNetwork {
  const one = onePass(arrangement, n);
  if (passes === 1) return one;
  const through = ({ streams, stages }: Route, order: readonly number[]): Route => ({
    streams,
    stages: order.flatMap((pass) =>
      stages.map(({ cells, mixes }, i) => ({
        cells: cells.map((cell) => cell + pass * one.cells),
        mixes: mixes === 'never' && i === stages.length - 1 ? 'behind' : mixes,
      })),
    ),
  });
  const order = upTo(passes);
  return {
    cells: passes * one.cells,
    charge: through(one.charge, order),
    coolant: through(one.coolant, order.toReversed()),
  };
}

/** A flow as it meets the wall. */
export interface NetworkFlow {
  readonly inlet: number;
  readonly capacityRate: number;
  /** Conductance between flow and wall, all of it. */
  readonly conductance: number;
}

/**
 * A flow along its way over walls of given temperatures.
 *
 * @param gains - heat that each cell takes up, to which that of this flow is added; left out where only the outlet is asked for.
 * @returns The temperature it leaves with, mixed.
 */
export function along(
  route: Route,
  flow: NetworkFlow,
  walls: Float64Array,
  cells: number,
  gains?: Float64Array,
): number {
  // Conductance over capacity rate of one stream in one cell, and the share of the way to the wall that makes.
  const units = (flow.conductance * route.streams) / (cells * flow.capacityRate);
  const share = -Math.expm1(-units);
  const ofStream = flow.capacityRate / route.streams;
  const streams = new Float64Array(route.streams).fill(flow.inlet);
  for (const { cells: touched, mixes } of route.stages) {
    if (mixes === 'within') {
      // The mixed stream goes its share towards the mean of the walls it passes at once; what they differ by passes in full.
      const mean = touched.reduce((sum, cell) => sum + walls[cell]!, 0) / touched.length;
      const above = streams[0]! - mean;
      if (gains) for (const cell of touched) gains[cell]! += ofStream * (share * above + units * (mean - walls[cell]!));
      streams.fill(streams[0]! - share * above);
      continue;
    }
    for (let k = 0; k < streams.length; k++) {
      const above = streams[k]! - walls[touched[k]!]!;
      if (gains) gains[touched[k]!]! += ofStream * share * above;
      streams[k]! -= share * above;
    }
    if (mixes === 'behind') streams.fill(meanOf(streams));
  }
  return meanOf(streams);
}

/** The mean of some temperatures. */
export const meanOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;
