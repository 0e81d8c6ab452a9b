import { contrastOfRepeats, uncertainty } from '../calculation/index.js';
import { CalculationError, subtract, type Column, type Quantity } from '../units/index.js';
import { driftWeights, studentTFactor } from '../statistics/index.js';
import { differenceCurve } from './difference.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import type { OrderFinding } from './order.js';
import type { ComparedQuantity, DifferenceCurve, Estimate, Outcome, SideResult, Split } from './result.js';
import { splitOf } from './split.js';
import type { TakenPull } from './taken-pull.js';
import { headlineOf, outcomeOf } from './verdict.js';
import { like } from './words.js';

/** What the accepted pulls say. */
export interface Answer {
  readonly outcome: Outcome;
  readonly headline: string;
  readonly overall: Estimate;
  readonly relative: number;
  readonly curve: DifferenceCurve | undefined;
  readonly split: Split;
  /** Whether a steady drift through the day is taken out of the difference. */
  readonly driftTakenOut: boolean;
}

/** What an answer is asked of. */
export interface Question {
  readonly baseline: SideResult;
  readonly candidate: SideResult;
  readonly accepted: readonly [TakenPull[], TakenPull[]];
  readonly compared: ComparedQuantity;
  readonly from: Quantity<'rotational speed'>;
  readonly to: Quantity<'rotational speed'>;
  readonly finding: OrderFinding;
}

/** Fewest degrees of freedom that a drift term must leave: below, what it costs is more than what it saves. */
const FEWEST_DEGREES = 3;

/** Difference, interval, band, verdict and causes. */
export function answerOf(question: Question, options: ResolvedOptions): Answer {
  const { baseline: a, candidate: b, accepted, compared, from, to, finding } = question;
  const driftTakenOut = takesOutDrift(finding, options);
  const label = `${b.name} minus ${a.name}`;
  const difference = driftTakenOut
    ? withoutDrift(label, accepted, finding)
    : subtract(b.overall!, a.overall!).named(label);
  const overall = estimateOf(difference, ownConfidence(options));
  const curves = accepted.map((side) => side.map((pull) => pull.result.curve)) as [Column[], Column[]];
  const curve = differenceCurve(accepted[0][0]!.grid.engineSpeed, curves, {
    ...options,
    made: driftTakenOut ? finding.made : undefined,
  });
  const relative = difference.si / a.overall!.si;
  const fewestPulls = Math.min(accepted[0].length, accepted[1].length);
  const outcome = outcomeOf(overall, options.worthwhile, fewestPulls);
  const headline = headlineOf(outcome, overall, {
    ...options,
    compared,
    baseline: a.name,
    candidate: b.name,
    from,
    to,
    relative,
    separable: finding.separable,
    fewestPulls,
    ranges: curve?.ranges ?? [],
  });
  const order = driftTakenOut ? finding.made : undefined;
  const split = splitOf({ accepted, compared, overall, curve, names: [a.name, b.name], order }, options);
  return { outcome, headline, overall, relative, curve, split, driftTakenOut };
}

/** By design, not by a test on the drift: wherever the order of the pulls allows it and enough of them are left. */
function takesOutDrift({ separable, corrected }: OrderFinding, { drift }: ResolvedOptions): boolean {
  if (drift === 'leave in') return false;
  const possible = separable && corrected?.scatter !== undefined && corrected.degreesOfFreedom >= FEWEST_DEGREES;
  if (drift === 'take out' && !possible) {
    const got = separable ? 'too few pulls' : 'an order that is not known, or hides the change in the drift';
    const need = `an order of the pulls that lets drift be told from the change, and ${FEWEST_DEGREES + 3} pulls`;
    const mend = "Give order: [...], or drift: 'leave in'.";
    throw new CalculationError('compare', [{ code: 'impossible', input: 'drift', need, got, mend }]);
  }
  return possible;
}

/** The difference as a weighted sum of the pulls, in which a steady drift cancels. */
function withoutDrift(
  label: string,
  accepted: readonly [TakenPull[], TakenPull[]],
  { made, corrected }: OrderFinding,
): Quantity {
  const means = accepted.flat().map((pull) => pull.result.mean!);
  const { letters, times, pulls } = made!;
  const { standardError, degreesOfFreedom } = corrected!.interval!;
  return contrastOfRepeats(
    label,
    pulls.map((i) => means[i]!),
    driftWeights(letters, { times }),
    {
      standard: standardError,
      degreesOfFreedom,
    },
  );
}

/**
 * The difference with its interval from the budget. Where sensors add to the scatter of the pulls, the interval is never narrower than the
 * scatter alone gives: a sensor that is known well would otherwise lend its degrees of freedom to scatter that is known badly.
 */
export function estimateOf(difference: Quantity, confidence: number): Estimate {
  const budget = uncertainty(difference);
  const scatter = budget.contributions.filter(
    ({ input }) => input.origin?.type === 'leaf' && input.origin.role === 'scatter',
  );
  const variance = scatter.reduce((sum, { contribution }) => sum + contribution.si ** 2, 0);
  const degrees =
    variance ** 2 / scatter.reduce((sum, one) => sum + one.contribution.si ** 4 / one.degreesOfFreedom, 0);
  const floor = variance > 0 ? studentTFactor(1 - confidence, degrees) * Math.sqrt(variance) : 0;
  const half = Math.max(floor, budget.expanded(confidence).si);
  return {
    value: difference,
    low: like(difference, difference.si - half),
    high: like(difference, difference.si + half),
    standardUncertainty: budget.standard,
    degreesOfFreedom: budget.degreesOfFreedom,
  };
}
