import type { CheckedMap } from './check.js';
import { heightAt, monotone } from './monotone.js';
import { rootOf } from './root-of.js';
import type { Surface } from './surface.js';

/** The surge line of a map in SI numbers. */
export interface SurgeLine {
  /** Flow at a pressure ratio, where the line is given. */
  readonly known: (ratio: number) => number;
  /** The same, continued beyond. */
  readonly flow: (ratio: number) => number;
  /** Where it meets a speed line; the surge end of the line where it lies left of that. */
  readonly along: (speed: number) => number;
}

/** The surge line that is given, or the surge ends of the speed lines in its place. */
export function surgeLineOf({ surface, surgeLine }: CheckedMap): SurgeLine {
  if (!surgeLine) {
    const flowAtEnd = (ratio: number, around: boolean): number => surface.flow(0, surface.speedAtEnd(0, ratio, around));
    return { known: (ratio) => flowAtEnd(ratio, false), flow: (ratio) => flowAtEnd(ratio, true), along: () => 0 };
  }
  const ratios = surgeLine.map(({ pressureRatio }) => pressureRatio.si);
  const flows = surgeLine.map(({ correctedFlow }) => correctedFlow.si);
  const line = monotone(ratios, flows);
  const [first, last] = [ratios[0]!, ratios.at(-1)!];
  const flow = (ratio: number): number => {
    if (ratio < first) return flows[0]! * Math.sqrt((ratio - 1) / (first - 1));
    const chord = (flows.at(-1)! - flows.at(-2)!) / (last - ratios.at(-2)!);
    return ratio > last ? flows.at(-1)! + chord * (ratio - last) : heightAt(line, ratio);
  };
  return {
    known: (ratio) => (ratio >= first && ratio <= last ? flow(ratio) : NaN),
    flow,
    along: (speed) => surgeCrossing(surface, flow, speed),
  };
}

/** Where a speed line crosses a surge line: right of it, flow exceeds the surge flow at the pressure ratio there. */
function surgeCrossing(surface: Surface, surgeFlow: (ratio: number) => number, speed: number): number {
  const excess = (along: number): number => surface.flow(along, speed) - surgeFlow(surface.ratio(along, speed));
  if (excess(0) >= 0) return 0;
  return rootOf(excess, 0, 1);
}
