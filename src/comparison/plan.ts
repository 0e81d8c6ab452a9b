import { uncertainty } from '../calculation/index.js';
import { CalculationError, type Quantity } from '../units/index.js';
import { bestOrder, detectableDifference, orderDesign, powerOfTest, withOwnInstruments } from '../statistics/index.js';
import { ownInstruments, type OwnInstruments } from './instruments.js';
import { instrumentsHalfWidth, instrumentsHide } from './next-design.js';
import { afterDriftWords } from './pull-scatter.js';
import type { Comparison } from './result.js';
import { ownConfidence } from './options.js';
import { decimals, like, listed, shown } from './words.js';

/** What the next test is to settle. */
export interface PlanOptions {
  /** The smallest difference worth having; that of the comparison when left out. */
  readonly worthwhile?: Quantity;
  /** Chance of resolving it if it is there; 0.8 when left out. */
  readonly power?: number;
}

/** How many pulls settle a difference, if the scatter is so many times what was found. */
export interface PlanCase {
  /** 0.7, 1 and 1.5: a few pulls tell their scatter no better than that. */
  readonly scatterTimes: number;
  /** Pulls in all, both set-ups together; undefined where more than 60 would be needed. */
  readonly pulls: number | undefined;
  /** The order to make them in: `A` baseline, `B` candidate. */
  readonly order: string | undefined;
  /** Chance of resolving the difference with them. */
  readonly power: number | undefined;
}

/** A plan for the next test. */
export interface TestPlan {
  readonly worthwhile: Quantity;
  /** Standard deviation from pull to pull. */
  readonly scatter: Quantity;
  /** Whether that is what a steady drift leaves. */
  readonly afterDrift: boolean;
  /** What instruments that did not read both set-ups leave, however many pulls are made; undefined where there are none. */
  readonly instruments:
    | {
        readonly labels: readonly string[];
        readonly halfWidth: Quantity;
        /** Whether they alone hide the worthwhile difference, so that no number of pulls settles it. */
        readonly hide: boolean;
      }
    | undefined;
  readonly cases: readonly PlanCase[];
  /** What the pulls at hand would have resolved, with the same chance and the instruments they had. */
  readonly detectable: Quantity;
  /** What adds most to the uncertainty of the answer at hand. */
  readonly dominant: { readonly label: string; readonly share: number };
  /** As text. */
  toString(): string;
}

const MOST_PULLS = 60;
const SCATTER_TIMES = [0.7, 1, 1.5] as const;

/**
 * How many pulls the next test needs to settle a difference, in which order, and what to improve first, from the scatter of a comparison.
 * A steady drift through the day is reckoned with.
 *
 * @throws CalculationError if the comparison has no scatter to plan from, or no worthwhile difference is known.
 * @example
 * console.log(String(planTest(answer, { worthwhile: power(1, 'kW') })));
 */
export function planTest(comparison: Comparison, options: PlanOptions = {}): TestPlan {
  for (const name in options) {
    if (name !== 'worthwhile' && name !== 'power')
      throw refusal(name, 'an option, worthwhile or power', 'a name that is neither');
  }
  const { overall, baseline, candidate, confidence, pullScatter } = comparison;
  const worthwhile = options.worthwhile ?? comparison.worthwhile;
  const power = options.power ?? 0.8;
  if (!overall || !pullScatter) {
    throw refusal('comparison', 'one with at least two usable pulls of each set-up', comparison.outcome);
  }
  if (!(pullScatter.pooled.si > 0)) {
    throw refusal('comparison', 'one whose pulls scatter', 'the same mean in every pull of a set-up');
  }
  if (!worthwhile || worthwhile.kind !== overall.value.kind || !(worthwhile.si > 0)) {
    throw refusal('worthwhile', `a ${overall.value.kind} above zero`, worthwhile ? String(worthwhile) : 'nothing');
  }
  if (!(power > 0.5 && power < 1)) throw refusal('power', 'between 0.5 and 1', String(power));
  const error = 1 - ownConfidence({ confidence, setUps: comparison.options.setUps });
  const [largest] = uncertainty(overall.value).contributions;
  const own = ownInstruments(overall, [baseline, candidate]);
  const instruments = own && {
    labels: own.labels,
    halfWidth: like(worthwhile, instrumentsHalfWidth(own, error)),
    hide: instrumentsHide(worthwhile.si, { instruments: own, error }, power),
  };
  const { standardUncertainty, degreesOfFreedom } = overall;
  const plan = {
    worthwhile,
    scatter: like(worthwhile, pullScatter.pooled.si),
    afterDrift: pullScatter.afterDrift,
    instruments,
    cases: SCATTER_TIMES.map((times) => caseOf(worthwhile.si, pullScatter.pooled.si, times, own, { power, error })),
    detectable: like(
      worthwhile,
      detectableDifference(standardUncertainty.si, { varianceFactor: 1, degreesOfFreedom }, { power, error }),
    ),
    dominant: { label: largest!.label, share: largest!.share },
  };
  return Object.assign(plan, {
    toString: () => planText(plan, power),
    [Symbol.for('nodejs.util.inspect.custom')]: () => planText(plan, power),
  });
}

function caseOf(
  difference: number,
  found: number,
  scatterTimes: number,
  instruments: OwnInstruments | undefined,
  { power, error }: { readonly power: number; readonly error: number },
): PlanCase {
  const scatter = found * scatterTimes;
  for (let pulls = 5; pulls <= MOST_PULLS; pulls++) {
    const order = bestOrder(pulls);
    const plain = orderDesign(order);
    const design = instruments
      ? withOwnInstruments(plain, (instruments.standard / scatter) ** 2, instruments.degreesOfFreedom)
      : plain;
    const reached = powerOfTest(difference, scatter, design, { error });
    if (reached >= power) return { scatterTimes, pulls, order, power: reached };
  }
  return { scatterTimes, pulls: undefined, order: undefined, power: undefined };
}

function planText(plan: Omit<TestPlan, 'toString'>, power: number): string {
  const chance = `${decimals(power * 100, 0)} times in 100`;
  const lines = [
    `To resolve ${shown(plan.worthwhile)}, ${chance}, with a scatter of ${shown(plan.scatter)} from pull to pull${afterDriftWords(plan)}:`,
  ];
  for (const { scatterTimes, pulls, order } of plan.cases) {
    const what = scatterTimes === 1 ? 'if the scatter is as found' : `if it is ${scatterTimes} times that`;
    lines.push(
      pulls === undefined ? `  ${what}: more than ${MOST_PULLS} pulls` : `  ${what}: ${pulls} pulls, ${order}`,
    );
  }
  if (plan.instruments) {
    const { labels, halfWidth, hide } = plan.instruments;
    lines.push(
      `By themselves the instruments that read only one set-up (${listed(labels)}) leave ±${shown(halfWidth)}${hide ? ', so no number of pulls resolves it' : ''}: read both set-ups with one and the same instrument.`,
    );
  }
  lines.push(`The pulls at hand would have resolved ${shown(plan.detectable)}, ${chance}.`);
  lines.push(
    `The largest part of the uncertainty (${decimals(plan.dominant.share * 100, 0)} %) is ${plan.dominant.label}.`,
  );
  return lines.join('\n');
}

function refusal(input: string, need: string, got: string): CalculationError {
  return new CalculationError('planTest', [{ code: 'impossible', input, need, got, mend: '' }]);
}
