import {
  onePullAdvice,
  requireCount,
  requireDegreesOfFreedom,
  requireFinite,
  requirePositive,
  requireProbability,
  usualConfidence,
  usualError,
  type ConfidenceOption,
} from './checks.js';
import { fTails } from './f-distribution.js';
import { studentTFactor } from './student-t.js';
import { studentInterval, type Interval } from './welch.js';
import { StatisticsError } from './errors.js';

/** A standard deviation between pulls, with the degrees of freedom it was found from (Infinity if taken as known). */
export interface Scatter {
  readonly standardDeviation: number;
  readonly degreesOfFreedom?: number;
}

/**
 * Interval of a difference from the scatter of earlier tests: the only one there is with one pull a side.
 *
 * Stands on the promise that today's pulls repeat as well as the earlier ones did.
 */
export function differenceWithKnownScatter(
  difference: number,
  pulls: { readonly baseline: number; readonly candidate: number },
  scatter: Scatter,
  { confidence = usualConfidence }: ConfidenceOption = {},
): Interval {
  const statistic = 'difference with known scatter';
  requireFinite(statistic, 'difference', difference);
  requireCount(statistic, 'pulls.baseline', pulls.baseline, 1);
  requireCount(statistic, 'pulls.candidate', pulls.candidate, 1);
  const { s, nu } = requireScatter(statistic, 'scatter', scatter);
  return studentInterval(difference, s * Math.sqrt(1 / pulls.baseline + 1 / pulls.candidate), nu, confidence);
}

/** Whether today's scatter may be joined with an earlier one, and what the two give together. */
export type JoinedScatter = {
  /** F: today's variance over the earlier one. */
  readonly varianceRatio: number;
  /** One-sided chance of a ratio this large if nothing got worse. */
  readonly pValue: number;
} & (
  | { readonly agrees: true; readonly standardDeviation: number; readonly degreesOfFreedom: number }
  | { readonly agrees: false }
);

/**
 * Joins the scatter of today's pulls with that of earlier tests, unless today's is larger beyond luck
 * (F test, one-sided at 0.05): then the earlier pulls no longer speak for these.
 */
export function joinScatter(today: Scatter, earlier: Scatter): JoinedScatter {
  const statistic = 'joined scatter';
  const now = requireScatter(statistic, 'today', today);
  const then = requireScatter(statistic, 'earlier', earlier);
  for (const [input, nu] of [
    ['today', now.nu],
    ['earlier', then.nu],
  ] as const) {
    if (nu === Infinity) {
      throw new StatisticsError({
        code: 'out-of-range',
        statistic,
        input: `${input}.degreesOfFreedom`,
        need: 'be finite, for there to be something to join',
        got: 'Infinity',
        mend: 'Give the number of pulls behind it less the number of means taken off.',
      });
    }
  }
  const varianceRatio = (now.s / then.s) ** 2;
  const pValue = fTails(varianceRatio, now.nu, then.nu).upper;
  if (pValue < usualError) return { varianceRatio, pValue, agrees: false };
  const degreesOfFreedom = now.nu + then.nu;
  return {
    varianceRatio,
    pValue,
    agrees: true,
    standardDeviation: Math.sqrt((now.nu * now.s ** 2 + then.nu * then.s ** 2) / degreesOfFreedom),
    degreesOfFreedom,
  };
}

/**
 * Repeatability limit: two single pulls of one set-up differ by more than this only once in twenty (ISO 5725-1).
 *
 * With few pulls behind the standard deviation Student t stands in place of 1.96.
 */
export function repeatabilityLimit(scatter: Scatter, { confidence = usualConfidence }: ConfidenceOption = {}): number {
  const statistic = 'repeatability limit';
  requireProbability(statistic, 'confidence', confidence);
  const { s, nu } = requireScatter(statistic, 'scatter', scatter);
  return studentTFactor(1 - confidence, nu) * Math.SQRT2 * s;
}

export function requireScatter(statistic: string, input: string, scatter: Scatter): { s: number; nu: number } {
  const { standardDeviation: s, degreesOfFreedom: nu = Infinity } = scatter;
  requirePositive(statistic, `${input}.standardDeviation`, s);
  if (nu === 0) {
    throw new StatisticsError({
      code: 'too-few-degrees-of-freedom',
      statistic,
      input: `${input}.degreesOfFreedom`,
      need: 'be above 0',
      got: '0',
      mend: onePullAdvice,
    });
  }
  requireDegreesOfFreedom(statistic, `${input}.degreesOfFreedom`, nu);
  return { s, nu };
}
