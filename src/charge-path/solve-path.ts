import { solveNear } from '../calculation/newton.js';
import { zeroBetween } from '../statistics/root-between.js';
import { controlResidual, fixedOutletPressure } from './control.js';
import { mostFlowAt, startAt, startsOf } from './start.js';
import { recirculates, walkRound, withoutRecirculation } from './recirculation.js';
import { airOf } from './walk.js';
import type { PathOf, Unknowns, Walked } from './walked.js';
import { onNumbers } from './way.js';

/**
 * Why a path has no steady point that can be told: the core cannot pass what the engine would take; no boost that a compressor makes is
 * what the control lets stand; the air that comes back heats itself without end; or the point lies where a formula on the way has no answer, such as charge of 250 °C.
 */
export type Reason = 'flow cannot pass' | 'boost out of reach' | 'recirculation without end' | 'beyond the formulas';

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
/** Residuals that are rounding, over the flow and over the temperature: heat must balance where charge and air are but a kelvin apart. */
const NO_FLOW = 1e-12;
const NO_WARMTH = 1e-13;
/** A step in pressure that tells a slope from rounding. */
const NEARBY = 1e-4;
/** Stretches of the range of boost that are looked at one by one. */
const SCAN = 8;

/**
 * Finds the steady point of a path: first by Newton's method from a few guesses, which nearly always arrives; else by a bracket on the
 * boost, and where need be brackets of flow and charge temperature inside it, which arrive whenever each residual changes sign once.
 */
export function solvePath(path: PathOf<number>, near?: Unknowns<number>): Found {
  const found = steadyPoint(path, near);
  if (!recirculates(path)) return found;
  if (typeof found !== 'string') return walkRound(path, found).unknowns;
  return typeof steadyPoint(withoutRecirculation(path)) === 'string' ? found : 'recirculation without end';
}

function steadyPoint(path: PathOf<number>, near?: Unknowns<number>): Found {
  const system = new System(path);
  const fixed = fixedOutletPressure(onNumbers, path);
  if (fixed !== undefined) return system.flowAt(fixed, near) ?? 'flow cannot pass';
  const nearby = near && system.solveFrom(near);
  if (nearby) return nearby;
  for (const start of startsOf(path)) {
    const found = system.solveFrom(start);
    if (found) return found;
  }
  return system.boostByBracket() ?? 'boost out of reach';
}

class System {
  readonly #path: PathOf<number>;
  readonly #barometer: number;

  constructor(path: PathOf<number>) {
    this.#path = path;
    this.#barometer = path.barometer;
  }

  /** All three unknowns at once, from a guess. */
  solveFrom(start: Unknowns<number>): Unknowns<number> | undefined {
    const answer = solveNear(
      ([airFlow, compressorOutletPressure, coreOutletTemperature]) =>
        this.#residuals({
          airFlow: airFlow!,
          compressorOutletPressure: compressorOutletPressure!,
          coreOutletTemperature: coreOutletTemperature!,
        }),
      [start.airFlow, start.compressorOutletPressure, start.coreOutletTemperature],
      [MOST_FLOW, MOST_RATIO * this.#barometer, HOTTEST - COLDEST],
    );
    if (!answer) return undefined;
    const [airFlow, compressorOutletPressure, coreOutletTemperature] = answer as [number, number, number];
    const found = { airFlow, compressorOutletPressure, coreOutletTemperature };
    return this.#isAnswer(found) && this.#isStable(found) ? found : undefined;
  }

  /** Whether more boost than at this point would fall back to it; only a control that feeds on itself can be otherwise. */
  #isStable(found: Unknowns<number>): boolean {
    const { boost } = this.#path;
    if (boost.by !== 'fixed wastegate' && (boost.by !== 'spring' || boost.droop === undefined)) return true;
    const above = this.flowAt(found.compressorOutletPressure * (1 + NEARBY), found);
    return above === undefined || this.#controlAt(above) > 0;
  }

  /** Flow and charge temperature at a pressure at the compressor outlet: from a guess, or by brackets. */
  flowAt(p2: number, near: Unknowns<number> = startAt(this.#path, p2)): Unknowns<number> | undefined {
    const at = ([airFlow, T3]: readonly number[]): Unknowns<number> => ({
      airFlow: airFlow!,
      compressorOutletPressure: p2,
      coreOutletTemperature: T3!,
    });
    const answer = solveNear(
      (values) => {
        const residuals = this.#flowResiduals(at(values));
        return residuals && [...residuals];
      },
      [near.airFlow, near.coreOutletTemperature],
      [MOST_FLOW, HOTTEST - COLDEST],
    );
    const found = answer && at(answer);
    return found && this.#isAnswer(found) ? found : this.#flowByBracket(p2);
  }

  /** Residuals of the flow and of the temperature; undefined where they cannot be computed. */
  #flowResiduals(at: Unknowns<number>): readonly [number, number] | undefined {
    const { airFlow, coreOutletTemperature: T3 } = at;
    if (!(airFlow > LEAST_FLOW && airFlow < MOST_FLOW && T3 > COLDEST && T3 < HOTTEST)) return undefined;
    const { engineResidual, coreResidual } = walkRound(this.#path, at);
    return Number.isFinite(engineResidual + coreResidual) ? [engineResidual, coreResidual] : undefined;
  }

  #residuals(at: Unknowns<number>): [number, number, number] | undefined {
    const { airFlow, compressorOutletPressure: p2, coreOutletTemperature: T3 } = at;
    if (!(airFlow > LEAST_FLOW && airFlow < MOST_FLOW && T3 > COLDEST && T3 < HOTTEST)) return undefined;
    if (!(p2 >= this.#barometer && p2 <= MOST_RATIO * this.#barometer)) return undefined;
    const walked = walkRound(this.#path, at);
    const control = controlResidual(onNumbers, this.#path, walked);
    const { engineResidual, coreResidual } = walked;
    const isPossible = Number.isFinite(engineResidual + control + coreResidual);
    return isPossible ? [engineResidual, control, coreResidual] : undefined;
  }

  /** How far the boost is too high; infinitely where the engine or the compressor cannot follow. */
  #controlAt(at: Unknowns<number>): number {
    const control = controlResidual(onNumbers, this.#path, walkRound(this.#path, at));
    return Number.isFinite(control) ? control : Infinity;
  }

  #isAnswer(found: Unknowns<number>): boolean {
    const residuals = this.#flowResiduals(found);
    if (!residuals) return false;
    const [flow, temperature] = residuals;
    return (
      Math.abs(flow) <= NO_FLOW * found.airFlow && Math.abs(temperature) <= NO_WARMTH * found.coreOutletTemperature
    );
  }

  /** Looks over the whole range of boost for where the control passes from too little to too much. */
  boostByBracket(): Unknowns<number> | undefined {
    const low = this.#barometer;
    const residual = (p2: number): number => {
      const at = this.flowAt(p2);
      // Where no flow passes at all boost would have to be higher, and where the compressor cannot follow lower.
      return at ? this.#controlAt(at) : p2 < 2 * low ? -1 : 1;
    };
    let [from, before] = [low, residual(low)];
    for (let i = 1; i <= SCAN; i++) {
      const to = low * MOST_RATIO ** (i / SCAN);
      const here = residual(to);
      if (before <= 0 && here >= 0) {
        const root = zeroBetween(residual, from, to, before, Math.min(here, Number.MAX_VALUE));
        const answer = root === undefined ? undefined : this.flowAt(root);
        const polished = answer && this.solveFrom(answer);
        if (polished) return polished;
      }
      [from, before] = [to, here];
    }
    return undefined;
  }

  #flowByBracket(p2: number): Unknowns<number> | undefined {
    const at = (airFlow: number, coreOutletTemperature: number): Unknowns<number> => ({
      airFlow,
      compressorOutletPressure: p2,
      coreOutletTemperature,
    });
    const residual = (airFlow: number): number => {
      const T3 = this.#temperatureByBracket(airFlow, p2);
      const engine = T3 === undefined ? NaN : walkRound(this.#path, at(airFlow, T3)).engineResidual;
      // Where the core cannot pass a flow, the engine gets less than that.
      return Number.isFinite(engine) ? engine : -airFlow;
    };
    const most = Math.min(MOST_FLOW, mostFlowAt(this.#path, p2));
    const least = SMALL_SHARE * most;
    const [low, high] = [residual(least), residual(most)];
    if (!(low > 0 && high < 0)) return undefined;
    const root = zeroBetween(residual, least, most, low, high);
    if (root === undefined) return undefined;
    const T3 = this.#temperatureByBracket(root, p2);
    return T3 === undefined ? undefined : at(root, T3);
  }

  #temperatureByBracket(airFlow: number, p2: number): number | undefined {
    const at = (T3: number): Walked<number> =>
      walkRound(this.#path, { airFlow, compressorOutletPressure: p2, coreOutletTemperature: T3 });
    const residual = (T3: number): number => at(T3).coreResidual;
    const cold = airOf(this.#path).freshFace;
    const hot = at(cold).compressor.outletTemperature;
    if (!Number.isFinite(hot)) return undefined;
    // A little beyond both, where rounding cannot take the sign of the residual.
    const ends = [Math.min(cold, hot) - 1, Math.max(cold, hot) + 1] as const;
    const [low, high] = [residual(ends[0]), residual(ends[1])];
    return low > 0 && high < 0 ? zeroBetween(residual, ...ends, low, high) : undefined;
  }
}
