import type { CompressorMap } from '../compressor/index.js';
import type { Runnable } from './way.js';

/** What the path reads on a map, in numbers beyond its edges too, so that a search may pass outside on its way back. */
export interface MapReadings {
  /** Isentropic efficiency over corrected flow and pressure ratio. */
  readonly efficiency: Runnable;
  /** Pressure ratio over corrected flow and corrected speed. */
  readonly pressureRatio: Runnable;
}

/** Taken where a map has no efficiency at all: a search only needs some. */
const SOME_EFFICIENCY = 0.5;
/** How steeply a speed line is let fall beyond choke and rise beyond surge, in pressure ratio per share of flow. */
const FALL_BEYOND_CHOKE = 10;
const RISE_BEYOND_SURGE = 1;
const INSIDE = 1e-6;

const known = new WeakMap<CompressorMap, MapReadings>();

/** The readings of a map for a search. The point that is found is read on the map itself, which refuses what it does not hold. */
export function searchReadings(map: CompressorMap): MapReadings {
  let readings = known.get(map);
  if (!readings) known.set(map, (readings = make(map)));
  return readings;
}

function make(map: CompressorMap): MapReadings {
  const {
    isentropicEfficiency,
    pressureRatio,
    lowestFlow,
    highestFlow,
    surgeFlowAtSpeed,
    surgePressureRatio,
    chokeFlow,
  } = map;
  const ratios = map.speedLines.flatMap(({ points }) => points.map((point) => point.pressureRatio.si));
  const [leastRatio, mostRatio] = [Math.min(...ratios), Math.max(...ratios)];
  const efficiency = (flow: number, ratio: number): number => {
    const own = isentropicEfficiency.kernel(flow, ratio);
    if (Number.isFinite(own)) return own;
    const nearRatio = Math.min(mostRatio * (1 - INSIDE), Math.max(leastRatio * (1 + INSIDE), ratio));
    const [low, high] = [lowestFlow.kernel(nearRatio), highestFlow.kernel(nearRatio)];
    const near = Math.min(high * (1 - INSIDE), Math.max(low * (1 + INSIDE), flow));
    const beside = isentropicEfficiency.kernel(near, nearRatio);
    return Number.isFinite(beside) ? beside : SOME_EFFICIENCY;
  };
  const ratioAt = (flow: number, speed: number): number => {
    const own = pressureRatio.kernel(flow, speed);
    if (Number.isFinite(own)) return own;
    const [surge, choke] = [surgeFlowAtSpeed.kernel(speed), chokeFlow.kernel(speed)];
    if (flow > choke) return pressureRatio.kernel(choke * (1 - INSIDE), speed) - FALL_BEYOND_CHOKE * (flow / choke - 1);
    return surgePressureRatio.kernel(speed) + RISE_BEYOND_SURGE * (1 - flow / surge);
  };
  return {
    efficiency: { kernel: efficiency, spec: isentropicEfficiency.spec },
    pressureRatio: { kernel: ratioAt, spec: pressureRatio.spec },
  };
}
