import { refusal } from '../calculation/refusal.js';
import { NO_NOTES } from '../units/internal.js';
import { massFlow, type Note, type Quantity } from '../units/index.js';
import type { Path } from './read-installation.js';
import { airOf, walk } from './walk.js';
import type { PathOf, Unknowns, Walked } from './walked.js';
import { onNumbers } from './way.js';

/** Rounds of the secant rule; the temperature sought stands in a nearly straight line with itself. */
const MOST_ROUNDS = 30;
/** A change of temperature that is rounding. */
const NO_CHANGE = 2e-15;

/** Whether air from behind the core is breathed again, by the compressor or by the face of the core. */
export function recirculates<V>(path: PathOf<V>): boolean {
  return path.inlet.recirculatedShare !== undefined || airOf(path).recirculatedShare !== undefined;
}

/** The same path if no air came back. */
export function withoutRecirculation(path: PathOf<number>): PathOf<number> {
  const { cooling, inlet } = path;
  const none = { recirculatedShare: undefined };
  const { recirculatedShare: _, ...fresh } = inlet;
  return {
    ...path,
    inlet: fresh,
    cooling: cooling.by === 'air' ? { ...cooling, ...none } : { ...cooling, air: { ...cooling.air, ...none } },
  };
}

/** Walks a path in numbers, with the air that comes back as warm as the core makes it. */
export function walkRound(path: PathOf<number>, unknowns: Unknowns<number>): Walked<number> {
  if (!recirculates(path)) return walk(onNumbers, path, unknowns);
  const at = (behind: number): Walked<number> => walk(onNumbers, path, { ...unknowns, coolingAirBehind: behind });
  let before = airOf(path).freshFace;
  let walked = at(before);
  let residual = walked.recirculationResidual!;
  let behind = before + residual;
  for (let round = 0; round < MOST_ROUNDS && residual !== 0; round++) {
    const next = at(behind);
    const there = next.recirculationResidual!;
    const step = behind - before;
    [walked, before] = [next, behind];
    behind -= (there * step) / (there - residual);
    residual = there;
    if (!(Math.abs(behind - before) > NO_CHANGE * Math.abs(behind))) break;
  }
  return walked;
}

/**
 * No more air can come back than leaves the core.
 *
 * @throws CalculationError if it would.
 */
export function requireAirToComeBack(path: Path, humidFlow: Quantity<'mass flow'>): void {
  const { flow, recirculatedShare } = airOf<Quantity>(path);
  const toFace = (recirculatedShare?.si ?? 0) * flow.si;
  const breathed = (path.inlet.recirculatedShare?.si ?? 0) * humidFlow.si;
  if (toFace + breathed <= flow.si) return;
  const need = `so small that no more air comes back than leaves the core, ${String(flow)}`;
  throw refusal('operating point', 'rule', 'recirculatedShare', need, String(massFlow(toFace + breathed, 'kg/s')));
}

const WITH_SPRAY: Note = {
  code: 'not counted',
  calculation: 'operating point',
  message:
    'Air that comes back is taken as humid as the room: what a spray adds to it, vapour or gas without oxygen, is not counted.',
};

/** What must be said of air that comes back. */
export function recirculationNotes(path: Path): readonly Note[] {
  return recirculates<Quantity>(path) && airOf<Quantity>(path).spray ? [WITH_SPRAY] : NO_NOTES;
}
