import { zeroBetween } from '../statistics/root-between.js';
import { CalculationError } from '../units/errors.js';
import type { Kind, UnitOf } from '../units/kinds.js';
import { isKind } from '../units/kinds.js';
import { NO_NOTES, describe, quantityOf, requireNames, showSi } from '../units/internal.js';
import type { Leaf, Note, Quantity, Solution } from '../units/origin.js';
import { isQuantity } from '../units/quantity.js';
import { unitOf } from '../units/unit.js';
import { refusal, requireLabel, requireQuantity } from './refusal.js';
import { systemOf } from './system.js';

/** What is sought, and where. */
export interface Unknowable<K extends Kind> {
  /** Names what is sought. */
  readonly label: string;
  readonly kind: K;
  /** The unit the answer shows in. */
  readonly unit: UnitOf<K>;
  /** Two values between which the residual changes sign. */
  readonly between: readonly [Quantity<K>, Quantity<K>];
}

/** Everything the equation returned at the answer, and the answer. */
export type Solved<K extends Kind, R> = R & { readonly solution: Quantity<K> };

/**
 * Finds the value at which an equation holds. The equation takes the unknown and returns, beside whatever else is wanted at the answer,
 * the `residual`, which is zero there; everything in between stays in quantities.
 *
 * The answer is an input of the graph that carries its equation: `uncertainty`, `whatIf` and `explain` go through it, and iterations
 * leave no trace. Solves may nest or follow one another.
 *
 * @param problem - what is sought: label, kind, unit, and two values between which the residual changes sign.
 * @param equation - from a trial value to `{ residual, ...others }`.
 * @returns What the equation returned at the answer, with the answer as `solution`.
 * @throws CalculationError with code `not converged` if the residual has one sign at both ends, jumps across zero or cannot be computed.
 * @example
 * const { solution: flow, charge } = solve(
 *   { label: 'charge flow', kind: 'mass flow', unit: 'g/s', between: [massFlow(1, 'g/s'), massFlow(1, 'kg/s')] },
 *   (flow) => {
 *     const charge = coreOutlet({ hotInlet, coldInlet, flow });
 *     return { residual: subtract(engineFlow({ pressure, temperature: charge }), flow), charge };
 *   },
 * );
 */
export function solve<K extends Kind, R extends { readonly residual: Quantity }>(
  problem: Unknowable<K>,
  equation: (unknown: Quantity<K>) => R,
): Solved<K, R> {
  const { label, kind, unit, low, high } = readProblem(problem);
  const at = (si: number, leaf?: Leaf, notes: readonly Note[] = NO_NOTES): Quantity<K> =>
    quantityOf(kind, si, unit, leaf, notes, label);
  const show = (si: number): string => showSi(kind, si, unit);
  const evaluate = (si: number): Quantity => {
    const { residual } = attempt(label, show(si), () => equation(at(si))) ?? {};
    requireQuantity(`solve ${label}`, 'residual', residual);
    return residual;
  };
  const atLow = evaluate(low);
  const atHigh = evaluate(high);
  if (atLow.si !== 0 && atHigh.si !== 0 && atLow.si > 0 === atHigh.si > 0) {
    const got = `${residualText(atLow)} at ${show(low)} and ${residualText(atHigh)} at ${show(high)}`;
    const mend =
      atLow.si === atHigh.si
        ? `The residual does not change with ${label}.`
        : 'Widen `between`, or check the equation.';
    throw notConverged(label, 'the residual must change sign between the two ends', got, mend);
  }
  const root = zeroBetween((si) => evaluate(si).si, low, high, atLow.si, atHigh.si);
  if (root === undefined) {
    const got = `one that jumps across it, from ${residualText(atLow)} to ${residualText(atHigh)}`;
    throw notConverged(
      label,
      'the residual must pass through zero',
      got,
      'Does the equation decide on a value inside?',
    );
  }
  // The residual is made from the answer, so it can only be filled in afterwards.
  const solution = { between: [low, high], ends: problem.between } as unknown as Solution;
  const leaf: Leaf = { type: 'leaf', role: 'solved', label, solution };
  const answer = at(root, leaf, evaluate(root).notes);
  const returned = equation(answer);
  solution.residual = returned.residual;
  if (!systemOf([returned.residual]).nodes.has(leaf)) {
    const got = 'one whose history does not lead back to it';
    throw refusal(
      `solve ${label}`,
      'rule',
      '',
      'the residual must be made of the unknown by calculations',
      got,
      'Stay in quantities: do not take the number out with .in() or .si.',
    );
  }
  return { ...returned, solution: answer };
}

function readProblem<K extends Kind>(
  problem: Unknowable<K>,
): { label: string; kind: K; unit: string; low: number; high: number } {
  requireNames('solve', problem, ['label', 'kind', 'unit', 'between']);
  const { label, kind, unit, between } = problem ?? {};
  requireLabel('solve', label);
  const name = `solve ${label}`;
  if (!isKind(kind)) throw refusal(name, 'unknown', 'kind', 'a kind of quantity, such as mass flow', describe(kind));
  const ends: unknown = between;
  if (!Array.isArray(ends) || ends.length !== 2)
    throw refusal(name, 'kind', 'between', `two quantities of ${kind}`, describe(ends));
  requireQuantity(name, 'between[0]', ends[0], kind);
  requireQuantity(name, 'between[1]', ends[1], kind);
  const [first, second] = [ends[0].si, ends[1].si];
  if (first === second)
    throw refusal(name, 'impossible', 'between', 'two different values', `twice ${describe(ends[0])}`);
  return { label, kind, unit: unitOf(kind, unit), low: Math.min(first, second), high: Math.max(first, second) };
}

/** Runs the equation; where it refuses, says at which trial value. */
function attempt<R>(label: string, where: string, run: () => R): R {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof CalculationError)) throw error;
    const mend = 'Narrow `between` to where the equation can be computed.';
    throw notConverged(
      label,
      'the equation must be possible everywhere in `between`',
      `at ${where} an error (${error.message})`,
      mend,
    );
  }
}

const residualText = (residual: Quantity): string =>
  isQuantity(residual) ? showSi(residual.kind, residual.si, residual.unit) : '';

function notConverged(label: string, need: string, got: string, mend: string): CalculationError {
  return refusal(`solve ${label}`, 'not converged', '', need, got, mend);
}
