import { roundingOf } from './curves.js';
import { driftContrast, type PullContrast } from './drift.js';
import { logarithmicMean } from './logarithmic-mean.js';
import { mean, variance } from './summary.js';
import { welchScatter } from './welch.js';
import type { Numbers } from './checks.js';

/** One factor of a product that is the whole (power, airflow): its natural logarithm in every pull. */
export interface LogFactor {
  readonly name: string;
  readonly baseline: Numbers;
  readonly candidate: Numbers;
}

/** The order of the day, where a steady drift through it is to be taken out. */
export interface SplitOrder {
  /** `A` for each baseline pull and `B` for each candidate pull, as they were made. */
  readonly letters: string;
  /** For each of them its place in the list of baseline pulls followed by candidate pulls. */
  readonly pulls: readonly number[];
  /** When each was made; 1, 2, 3, ... unless given. */
  readonly times?: Numbers;
}

/** What turns a change of logarithm into a change of the whole. */
export interface SplitWeights {
  /** Middle logarithm of the two sides, and the change of it. */
  readonly middle: number;
  readonly change: number;
  readonly logarithmicMean: number;
  /** Derivative of the logarithmic mean with respect to the logarithm of the baseline. */
  readonly slopeA: number;
  readonly slopeB: number;
}

/** Difference of a number between the sides, with the drift of the day taken out where there is an order. */
export type Contrast = (baseline: Numbers, candidate: Numbers) => PullContrast;

/** How the sides are set against each other: by their means, or by least squares over the order of the day. */
export function contrastBy(order: SplitOrder | undefined): Contrast {
  const contrast = order === undefined ? plainContrast : driftedContrast(order);
  return (baseline, candidate) => {
    const { difference, standardError, degreesOfFreedom } = contrast(baseline, candidate);
    // What is the same in every pull has changed by nothing, and not by the rounding of its mean.
    const rounding = Math.max(roundingOf(baseline), roundingOf(candidate));
    return {
      difference: Math.abs(difference) <= rounding ? 0 : difference,
      ...(standardError <= rounding
        ? { standardError: 0, degreesOfFreedom: Infinity }
        : { standardError, degreesOfFreedom }),
    };
  };
}

function driftedContrast(order: SplitOrder): Contrast {
  const contrast = driftContrast(order.letters, order.times === undefined ? {} : { times: order.times });
  return (baseline, candidate) => contrast(inOrder(order, baseline, candidate));
}

/** The numbers of both sides in the order in which the pulls were made. */
export function inOrder({ pulls }: SplitOrder, baseline: Numbers, candidate: Numbers): number[] {
  return pulls.map((i) => (i < baseline.length ? baseline[i]! : candidate[i - baseline.length]!));
}

function plainContrast(baseline: Numbers, candidate: Numbers): PullContrast {
  const scatter = welchScatter(
    variance(baseline) / baseline.length,
    baseline.length - 1,
    variance(candidate) / candidate.length,
    candidate.length - 1,
  );
  return { difference: mean(candidate) - mean(baseline), ...scatter };
}

/** Weights of a split, from the logarithm of the whole in every pull. */
export function splitWeights(whole: Omit<LogFactor, 'name'>, contrast: Contrast): SplitWeights {
  const middle = (mean(whole.baseline) + mean(whole.candidate)) / 2;
  const change = contrast(whole.baseline, whole.candidate).difference;
  const half = change / 2;
  const level = Math.exp(middle);
  return {
    middle,
    change,
    logarithmicMean: logarithmicMean(Math.exp(middle - half), Math.exp(middle + half)),
    slopeA: level * logMeanSlope(-half),
    slopeB: level * logMeanSlope(half),
  };
}

/** (exp(h) - sinh(h)/h)/(2 h): half at h = 0, where the quotient would be 0/0. */
function logMeanSlope(h: number): number {
  if (Math.abs(h) > 0.5) return (Math.exp(h) - Math.sinh(h) / h) / (2 * h);
  let sum = 0;
  let term = 1;
  for (let n = 1; n < 20; n++) {
    sum += term / n - (n % 2 === 0 ? term / n / (n + 1) : 0);
    term *= h / n;
  }
  return sum / 2;
}

/**
 * One score for each pull: what that pull alone would have moved the contribution by, with the sign turned on the baseline, so that the
 * scatter of the contribution is that of the difference of the scores.
 */
export function splitScores(
  factor: Omit<LogFactor, 'name'>,
  whole: Omit<LogFactor, 'name'>,
  logChange: number,
  { logarithmicMean, slopeA, slopeB }: SplitWeights,
): { readonly baseline: number[]; readonly candidate: number[] } {
  const scores = (own: Numbers, all: Numbers, slope: number): number[] =>
    Array.from(own, (phi, i) => logarithmicMean * phi + logChange * slope * all[i]!);
  return {
    baseline: scores(factor.baseline, whole.baseline, -slopeA),
    candidate: scores(factor.candidate, whole.candidate, slopeB),
  };
}
