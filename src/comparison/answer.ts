import { CalculationError, subtract, type Column, type Quantity } from '../units/index.js';
import { differenceCurve } from './difference.js';
import { oddPullsOf, type OddPull } from './odd-pulls.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import {
  driftTreatment,
  FEWEST_DEGREES,
  FEWEST_PULLS_FOR_DRIFT,
  type DriftTreatment,
  type OrderFinding,
} from './order.js';
import { differenceWithoutDrift, estimateOf } from './overall.js';
import { pullScatterOf } from './pull-scatter.js';
import type { ComparedQuantity, DifferenceCurve, Estimate, Outcome, PullScatter, SideResult, Split } from './result.js';
import { splitOf } from './split.js';
import type { TakenPull } from './taken-pull.js';
import { headlineOf, outcomeOf } from './verdict.js';

/** What the accepted pulls say. */
export interface Answer {
  readonly outcome: Outcome;
  readonly headline: string;
  readonly overall: Estimate;
  readonly relative: number;
  readonly curve: DifferenceCurve | undefined;
  /** Why there is no band and so no curve, where the pulls are the reason. */
  readonly noBand: string | undefined;
  readonly split: Split;
  /** What became of a steady drift through the day. */
  readonly drift: DriftTreatment;
  readonly scatter: PullScatter | undefined;
  readonly odd: readonly OddPull[];
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

/** Difference, interval, band, verdict and causes. */
export function answerOf(question: Question, options: ResolvedOptions): Answer {
  const { baseline: a, candidate: b, accepted, compared, from, to, finding } = question;
  const names = [a.name, b.name] as const;
  const drift = driftTreatment(finding, takesOutDrift(finding, options), options.drift);
  const made = drift.takenOut ? finding.made : undefined;
  const label = `${b.name} minus ${a.name}`;
  const means = accepted.map((side) => side.map(({ result }) => result.mean!)) as [Quantity[], Quantity[]];
  const difference = made ? differenceWithoutDrift(label, means, made) : subtract(b.overall!, a.overall!).named(label);
  const overall = estimateOf(difference, ownConfidence(options));
  const curves = accepted.map((side) => side.map((pull) => pull.result.curve)) as [Column[], Column[]];
  const { curve, noBand } = differenceCurve(accepted[0][0]!.grid.engineSpeed, curves, { ...options, names, made });
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
    separable: drift.separable,
    fewestPulls,
    ranges: curve?.ranges ?? [],
  });
  const split = splitOf({ accepted, compared, overall, curve, names, order: made }, options);
  const scatter = pullScatterOf(a, b, finding, drift.takenOut);
  const odd = oddPullsOf({ accepted, names, made, outcome }, options);
  return { outcome, headline, overall, relative, curve, noBand, split, drift, scatter, odd };
}

/** By design, not by a test on the drift: wherever the order of the pulls allows it and enough of them are left. */
function takesOutDrift({ hidden, corrected }: OrderFinding, { drift }: ResolvedOptions): boolean {
  if (drift === 'leave in') return false;
  const possible =
    hidden === undefined && corrected?.scatter !== undefined && corrected.degreesOfFreedom >= FEWEST_DEGREES;
  if (drift === 'take out' && !possible) {
    const got = hidden === undefined ? 'too few pulls' : 'an order that is not known, or hides the change in the drift';
    const need = `an order of the pulls that lets drift be told from the change, and ${FEWEST_PULLS_FOR_DRIFT} pulls`;
    const mend = "Give order: [...], or drift: 'leave in'.";
    throw new CalculationError('compare', [{ code: 'impossible', input: 'drift', need, got, mend }]);
  }
  return possible;
}
