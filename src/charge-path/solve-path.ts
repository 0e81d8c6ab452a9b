import { solveNear } from '../calculation/newton.js';
import { bracketedRoot } from '../calculation/root.js';
import { controlResidual, fixedOutletPressure } from './control.js';
import { mostFlowAt, startsOf } from './start.js';
import { walk, type PathOf, type Unknowns, type Walked } from './walk.js';
import { onNumbers } from './way.js';

/**
 * Why a path has no steady point that can be told: the core cannot pass what the engine would take; no boost that a compressor makes is
 * what the control lets stand; or the point lies where a formula on the way has no answer, such as charge of 250 °C.
 */
export type Reason = 'flow cannot pass' | 'boost out of reach' | 'beyond the formulas';

/** What was found, in SI numbers. */
export type Found = Unknowns<number> | Reason;

/** Largest pressure ratio that is looked for: no single compressor of an engine makes more. */
const MOST_RATIO = 8;
const LEAST_FLOW = 1e-6;
/** A flow that passes any core with next to no loss, over the most the engine could take. */
const SMALL_SHARE = 1e-3;
const MOST_FLOW = 5;
const COLDEST = 150;
const HOTTEST = 900;
/** Residuals that are rounding: of the flow, of the pressure or what else the control goes by, of the temperature. */
const NOTHING = 1e-11;
/** A step in pressure that tells a slope from rounding. */
const NEARBY = 1e-4;

/**
 * Finds the steady point of a path: first by Newton's method from a guess, which nearly always arrives; else by three brackets one
 * inside another, charge temperature in flow in boost, which arrive whenever each residual changes sign once.
 */
export function solvePath(path: PathOf<number>, near?: Unknowns<number>): Found {
  const system = new System(path);
  const nearby = near && system.solveFrom(near);
  if (nearby) return nearby;
  for (const start of startsOf(path)) {
    const found = system.solveFrom(start);
    if (found) return found;
    if (system.isPressureFixed) break;
  }
  return system.solveByBrackets();
}

class System {
  readonly #path: PathOf<number>;
  readonly #fixed: number | undefined;
  readonly #barometer: number;

  constructor(path: PathOf<number>) {
    this.#path = path;
    this.#fixed = fixedOutletPressure(onNumbers, path);
    this.#barometer = path.barometer;
  }

  /** Whether the control fixes the pressure at the compressor outlet by itself. */
  get isPressureFixed(): boolean {
    return this.#fixed !== undefined;
  }

  solveFrom({
    airFlow,
    compressorOutletPressure,
    coreOutletTemperature,
  }: Unknowns<number>): Unknowns<number> | undefined {
    const fixed = this.#fixed;
    const widths = [MOST_FLOW, MOST_RATIO * this.#barometer, HOTTEST - COLDEST];
    const start = [airFlow, compressorOutletPressure, coreOutletTemperature];
    const without = (values: readonly number[]): number[] => [values[0]!, values[2]!];
    const answer =
      fixed === undefined
        ? solveNear((at) => this.#residuals(at[0]!, at[1]!, at[2]!), start, widths)
        : solveNear(
            (at) => {
              const all = this.#residuals(at[0]!, fixed, at[1]!);
              return all && without(all);
            },
            without(start),
            without(widths),
          );
    if (!answer) return undefined;
    const found = {
      airFlow: answer[0]!,
      compressorOutletPressure: fixed ?? answer[1]!,
      coreOutletTemperature: answer[answer.length - 1]!,
    };
    return this.#isAnswer(found) && this.#isStable(found) ? found : undefined;
  }

  /** Whether more boost than at this point would fall back to it; only a control that feeds on itself can be otherwise. */
  #isStable({ compressorOutletPressure: p2 }: Unknowns<number>): boolean {
    const { boost } = this.#path;
    if (boost.by !== 'fixed wastegate' && (boost.by !== 'spring' || boost.droop === undefined)) return true;
    const above = this.#flowAt(p2 * (1 + NEARBY));
    if (!above) return true;
    const residuals = this.#residuals(above.airFlow, above.compressorOutletPressure, above.coreOutletTemperature);
    return residuals !== undefined && residuals[1] > 0;
  }

  /** Residuals relative to the flow, the pressure and the temperature; undefined where nothing can be computed. */
  #residuals(airFlow: number, p2: number, T3: number): [number, number, number] | undefined {
    if (!(airFlow > LEAST_FLOW && airFlow < MOST_FLOW && T3 > COLDEST && T3 < HOTTEST)) return undefined;
    if (!(p2 >= this.#barometer && p2 <= MOST_RATIO * this.#barometer)) return undefined;
    const walked = walk(onNumbers, this.#path, {
      airFlow,
      compressorOutletPressure: p2,
      coreOutletTemperature: T3,
    });
    const control = controlResidual(onNumbers, this.#path, walked);
    const isPossible =
      Number.isFinite(walked.engineResidual) && Number.isFinite(control) && Number.isFinite(walked.coreResidual);
    return isPossible ? [walked.engineResidual, control, walked.coreResidual] : undefined;
  }

  #isAnswer({ airFlow, compressorOutletPressure, coreOutletTemperature }: Unknowns<number>): boolean {
    const residuals = this.#residuals(airFlow, compressorOutletPressure, coreOutletTemperature);
    if (!residuals) return false;
    const [flow, , temperature] = residuals;
    return Math.abs(flow) <= NOTHING * airFlow && Math.abs(temperature) <= NOTHING * coreOutletTemperature;
  }

  solveByBrackets(): Found {
    if (this.#fixed !== undefined) return this.#flowAt(this.#fixed) ?? 'flow cannot pass';
    const low = this.#barometer;
    const high = MOST_RATIO * this.#barometer;
    // Where no flow passes at all boost would have to be higher, and where the compressor cannot follow lower.
    const residual = (p2: number): number => {
      const at = this.#flowAt(p2);
      if (!at) return p2 < 2 * low ? -1 : 1;
      return this.#residuals(at.airFlow, p2, at.coreOutletTemperature)![1];
    };
    const points = Array.from({ length: SCAN + 1 }, (_, i) => low * MOST_RATIO ** (i / SCAN));
    points[SCAN] = high;
    let before = residual(points[0]!);
    for (let i = 1; i <= SCAN; i++) {
      const here = residual(points[i]!);
      if (before <= 0 && here >= 0) {
        const root = bracketedRoot(residual, points[i - 1]!, points[i]!, before, here);
        const answer = root && this.#flowAt(root.x);
        const polished = answer && this.solveFrom(answer);
        if (polished) return polished;
      }
      before = here;
    }
    return 'boost out of reach';
  }

  #flowAt(p2: number): Unknowns<number> | undefined {
    const residual = (airFlow: number): number => {
      const T3 = this.#temperatureAt(airFlow, p2);
      const engine = T3 === undefined ? NaN : this.#engineResidual(airFlow, p2, T3);
      // Where the core cannot pass a flow, the engine gets less than that.
      return Number.isFinite(engine) ? engine : -airFlow;
    };
    const most = Math.min(MOST_FLOW, mostFlowAt(this.#path, p2));
    const least = SMALL_SHARE * most;
    const [low, high] = [residual(least), residual(most)];
    if (!(low > 0 && high < 0)) return undefined;
    const root = bracketedRoot(residual, least, most, low, high);
    const coreOutletTemperature = root && this.#temperatureAt(root.x, p2);
    if (!root || coreOutletTemperature === undefined) return undefined;
    return { airFlow: root.x, compressorOutletPressure: p2, coreOutletTemperature };
  }

  #engineResidual(airFlow: number, p2: number, T3: number): number {
    return walk(onNumbers, this.#path, { airFlow, compressorOutletPressure: p2, coreOutletTemperature: T3 })
      .engineResidual;
  }

  #temperatureAt(airFlow: number, p2: number): number | undefined {
    const at = (T3: number): Walked<number> =>
      walk(onNumbers, this.#path, { airFlow, compressorOutletPressure: p2, coreOutletTemperature: T3 });
    const residual = (T3: number): number => at(T3).coreResidual;
    const { cooling } = this.#path;
    const cold = cooling.by === 'air' ? cooling.face : cooling.air.face;
    const hot = at(cold).compressor.outletTemperature;
    if (!Number.isFinite(hot)) return undefined;
    // A little beyond both, where rounding cannot take the sign of the residual.
    const ends = [Math.min(cold, hot) - 1, Math.max(cold, hot) + 1] as const;
    const [low, high] = [residual(ends[0]), residual(ends[1])];
    if (!(low > 0 && high < 0)) return undefined;
    return bracketedRoot(residual, ...ends, low, high)?.x;
  }
}

const SCAN = 8;
