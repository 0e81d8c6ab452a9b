import { heightAt, heightBetween, intervalAt, monotone, slopeAt, type Curve } from './monotone.js';
import { rootOf, SLACK } from './root-of.js';

/** One speed line in SI numbers, from its surge end to its choke end. */
export interface SurfaceLine {
  readonly speed: number;
  readonly flow: readonly number[];
  readonly ratio: readonly number[];
  readonly efficiency: readonly number[];
}

/** A place on the map: how far along the speed lines, 0 at their surge ends and 1 at their choke ends, and the speed. */
export interface Place {
  readonly along: number;
  readonly speed: number;
}

/** On which side of the map a point lies that is not on it. */
export type Side = 'left' | 'right' | 'below' | 'above';

/** What part of the map, or of its surroundings, is looked at. */
interface Region {
  readonly along: readonly [number, number];
  readonly speed: readonly [number, number];
}

type Property = 'flow' | 'ratio' | 'efficiency';

/** How far beyond its ends a line is continued, as a share of its length. */
export const REACH_ALONG = 0.1;
/** How far below the lowest and above the highest speed line the map is continued, as a share of their speed. */
export const REACH_SPEED = [0.5, 1.1] as const;
const SCAN = 64;

/** A line as three curves over the distance along it, flow and pressure ratio each measured by its own range. */
type CurvedLine = Readonly<Record<Property, Curve>>;

/**
 * A compressor map as a smooth surface. Every line is a curve of the distance along it; equal distances of neighbouring lines are
 * joined by curves over speed. Beyond the ends the last chord goes on straight; beyond the lowest and highest line flow goes with
 * speed and the rise of pressure with its square.
 */
export class Surface {
  readonly speeds: readonly number[];
  readonly #lines: readonly CurvedLine[];
  /** Heights of the lines around a speed, kept to spare an array for each look. */
  readonly #heights: Float64Array;
  readonly #inside: Region;
  readonly #around: Region;

  constructor(lines: readonly SurfaceLine[]) {
    this.#lines = lines.map(curved);
    this.#heights = new Float64Array(lines.length);
    this.speeds = lines.map(({ speed }) => speed);
    const [low, high] = this.speedRange;
    this.#inside = { along: [-SLACK, 1 + SLACK], speed: [low * (1 - SLACK), high * (1 + SLACK)] };
    this.#around = {
      along: [-REACH_ALONG, 1 + REACH_ALONG],
      speed: [low * REACH_SPEED[0], high * REACH_SPEED[1]],
    };
  }

  get speedRange(): readonly [number, number] {
    return [this.speeds[0]!, this.speeds.at(-1)!];
  }

  flow(along: number, speed: number): number {
    return this.#at('flow', along, speed);
  }

  ratio(along: number, speed: number): number {
    return this.#at('ratio', along, speed);
  }

  efficiency(along: number, speed: number): number {
    return this.#at('efficiency', along, speed);
  }

  #at(property: Property, along: number, speed: number): number {
    const [low, high] = this.speedRange;
    const nearest = Math.min(high, Math.max(low, speed));
    const { speeds } = this;
    const heights = this.#heights;
    const i = intervalAt(speeds, nearest);
    for (let j = Math.max(0, i - 1); j <= i + 2 && j < speeds.length; j++)
      heights[j] = onLine(this.#lines[j]![property], along);
    const value = heightBetween(
      speeds,
      heights,
      i,
      slopeAt(speeds, heights, i),
      slopeAt(speeds, heights, i + 1),
      nearest,
    );
    const scale = speed / nearest;
    if (scale === 1 || property === 'efficiency') return value;
    return property === 'flow' ? value * scale : 1 + (value - 1) * scale * scale;
  }

  /** Where on the map a flow and a pressure ratio meet, or on which side of it they lie. */
  locate(flow: number, ratio: number): Place | Side {
    return this.#locate(flow, ratio, this.#inside);
  }

  /** The same with the surroundings of the map. */
  locateAround(flow: number, ratio: number): Place | Side {
    return this.#locate(flow, ratio, this.#around);
  }

  /** On which side of the map a speed lies, if it is not on it. */
  sideOfSpeed(speed: number, around = false): Side | undefined {
    const [low, high] = (around ? this.#around : this.#inside).speed;
    return speed < low ? 'below' : speed > high ? 'above' : undefined;
  }

  /** Where a speed line passes a flow. */
  alongAtFlow(flow: number, speed: number, around = false): number | Side {
    const { along } = around ? this.#around : this.#inside;
    const side = this.sideOfSpeed(speed, around);
    if (side) return side;
    if (flow < this.flow(along[0], speed)) return 'left';
    if (flow > this.flow(along[1], speed)) return 'right';
    return rootOf((b) => this.flow(b, speed) - flow, along[0], along[1]);
  }

  /** Where a speed line passes a pressure ratio as it falls towards choke. */
  alongAtRatio(ratio: number, speed: number, around = false): number | Side {
    const { along } = around ? this.#around : this.#inside;
    const side = this.sideOfSpeed(speed, around);
    if (side) return side;
    if (ratio < this.ratio(along[1], speed)) return 'right';
    const peak = this.#peak(speed);
    if (ratio > this.ratio(peak, speed) * (1 + SLACK)) return 'left';
    if (ratio >= this.ratio(peak, speed)) return peak;
    return rootOf((b) => ratio - this.ratio(b, speed), peak, along[1]);
  }

  /** Speed at which the surge ends (0) or choke ends (1) of the lines have a pressure ratio; NaN where none has. */
  speedAtEnd(end: 0 | 1, ratio: number, around = false): number {
    const [low, high] = (around ? this.#around : this.#inside).speed;
    return rootOf((n) => this.ratio(end, n) - ratio, low, high);
  }

  /** Lowest flow on the map at a pressure ratio; NaN where the map does not have it. */
  lowestFlow(ratio: number): number {
    const [low, high] = this.speedRange;
    if (ratio < this.ratio(0, low)) return this.#flowOnLine(ratio, low);
    const speed = this.speedAtEnd(0, ratio);
    if (!Number.isNaN(speed)) return this.flow(0, speed);
    // Above the surge end of the highest line only that line is left, where it rises first.
    const peak = this.#peak(high);
    return this.flow(
      rootOf((b) => this.ratio(b, high) - ratio, 0, peak),
      high,
    );
  }

  /** Highest flow on the map at a pressure ratio; NaN where the map does not have it. */
  highestFlow(ratio: number): number {
    const [, high] = this.speedRange;
    return ratio > this.ratio(1, high) ? this.#flowOnLine(ratio, high) : this.flow(1, this.speedAtEnd(1, ratio));
  }

  #flowOnLine(ratio: number, speed: number): number {
    const along = this.alongAtRatio(ratio, speed);
    return typeof along === 'number' ? this.flow(along, speed) : NaN;
  }

  #locate(flow: number, ratio: number, { along, speed }: Region): Place | Side {
    const [left, right] = along;
    const [low, high] = speed;
    if (!(flow >= this.flow(left, low))) return 'left';
    if (!(flow <= this.flow(right, high))) return 'right';
    // Along a line of equal flow the pressure ratio rises with speed, from the choke end or the lowest line to the surge end or the highest.
    const first = this.flow(right, low) >= flow ? low : rootOf((n) => this.flow(right, n) - flow, low, high);
    const last = this.flow(left, high) <= flow ? high : rootOf((n) => this.flow(left, n) - flow, low, high);
    const alongAt = (n: number): number => rootOf((b) => this.flow(b, n) - flow, left, right);
    const missing = (n: number): number => this.ratio(alongAt(n), n) - ratio;
    if (missing(first) > 0) return first === low ? 'below' : 'right';
    if (missing(last) < 0) return last === high ? 'above' : 'left';
    const found = rootOf(missing, first, last);
    return { along: alongAt(found), speed: found };
  }

  /** Where along a line the pressure ratio is highest: at its surge end, or at the top where it rises first. */
  #peak(speed: number): number {
    let best = 0;
    for (let i = 1; i <= SCAN; i++) if (this.ratio(i / SCAN, speed) > this.ratio(best, speed)) best = i / SCAN;
    if (best === 0) return 0;
    let [a, b] = [best - 1 / SCAN, Math.min(1, best + 1 / SCAN)];
    while (b - a > 1e-9) {
      const third = (b - a) / 3;
      if (this.ratio(a + third, speed) < this.ratio(b - third, speed)) a += third;
      else b -= third;
    }
    return (a + b) / 2;
  }
}

/** Distance of each point along a line over the length of the whole. */
function distances({ flow, ratio }: SurfaceLine): number[] {
  const range = (values: readonly number[]): number => Math.max(...values) - Math.min(...values) || 1;
  const [flows, ratios] = [range(flow), range(ratio)];
  const total = [0];
  for (let i = 1; i < flow.length; i++) {
    const step = Math.hypot((flow[i]! - flow[i - 1]!) / flows, (ratio[i]! - ratio[i - 1]!) / ratios);
    total.push(total[i - 1]! + step);
  }
  return total.map((distance) => distance / total.at(-1)!);
}

function curved(line: SurfaceLine): CurvedLine {
  const along = distances(line);
  return {
    flow: monotone(along, line.flow),
    ratio: monotone(along, line.ratio),
    efficiency: monotone(along, line.efficiency),
  };
}

function onLine(curve: Curve, along: number): number {
  const { x, y } = curve;
  const last = x.length - 1;
  if (along < 0) return y[0]! + (along * (y[1]! - y[0]!)) / (x[1]! - x[0]!);
  if (along > 1) return y[last]! + ((along - 1) * (y[last]! - y[last - 1]!)) / (x[last]! - x[last - 1]!);
  return heightAt(curve, along);
}
