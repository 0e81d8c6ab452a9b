import { pointwiseHalfWidth, type Band } from './band.js';
import { requireOneSidedError, requirePositive, usualError, type ErrorOption } from './checks.js';
import { studentTFactor, studentTTwoSided } from './student-t.js';
import type { Interval } from './welch.js';

/** Whether a difference stays inside plus and minus a margin chosen beforehand. */
export interface Equivalence {
  readonly margin: number;
  /** True if the answer may be called equivalent: inside the margin, and resting on more than two pulls a side. */
  readonly equivalent: boolean;
  /** True if every interval lies inside the margin. */
  readonly inside: boolean;
  /** The margin above which the same pulls would pass. */
  readonly smallestMargin: number;
  /** Interval at each point, or the one interval of a single figure: 90 % for an error of 0.05. */
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

/**
 * Equivalence over a whole range: every pointwise 90 % interval inside the margin (two one-sided tests at each point,
 * Schuirmann 1987; all must pass, so no simultaneous factor is needed, Berger 1982).
 *
 * @param margin - chosen before the data, in the units of the difference.
 */
export function equivalenceOverRange(
  band: Band,
  margin: number,
  { error = usualError }: ErrorOption = {},
): Equivalence {
  const statistic = 'equivalence over a range';
  requirePositive(statistic, 'margin', margin);
  requireOneSidedError(statistic, error);
  return judge(band.difference, pointwiseHalfWidth(band, 2 * error), margin, !band.indicative);
}

/** Equivalence of one figure, with the chances of the two one-sided tests. */
export interface EquivalenceOfMeans extends Equivalence {
  /** Chance of a difference this low if the truth lay at the upper margin. */
  readonly upperPValue: number;
  /** Chance of a difference this high if the truth lay at the lower margin. */
  readonly lowerPValue: number;
}

/** Equivalence of one figure (a peak, a range mean) from its difference, by two one-sided tests. */
export function equivalenceOfMeans(
  interval: Pick<Interval, 'difference' | 'standardError' | 'degreesOfFreedom'>,
  margin: number,
  { error = usualError }: ErrorOption = {},
): EquivalenceOfMeans {
  const statistic = 'equivalence of means';
  requirePositive(statistic, 'margin', margin);
  requireOneSidedError(statistic, error);
  const { difference, standardError, degreesOfFreedom } = interval;
  requirePositive(statistic, 'standardError', standardError);
  const halfWidth = studentTFactor(2 * error, degreesOfFreedom) * standardError;
  const upperTail = (t: number): number => {
    const { within, beyond } = studentTTwoSided(t, degreesOfFreedom);
    return t >= 0 ? beyond / 2 : 0.5 + within / 2;
  };
  return {
    ...judge(Float64Array.of(difference), Float64Array.of(halfWidth), margin, true),
    upperPValue: upperTail((margin - difference) / standardError),
    lowerPValue: upperTail((margin + difference) / standardError),
  };
}

function judge(difference: Float64Array, halfWidth: Float64Array, margin: number, enough: boolean): Equivalence {
  const lower = difference.map((d, j) => d - halfWidth[j]!);
  const upper = difference.map((d, j) => d + halfWidth[j]!);
  const smallestMargin = lower.reduce((largest, low, j) => Math.max(largest, -low, upper[j]!), 0);
  const inside = smallestMargin < margin;
  return { margin, equivalent: inside && enough, inside, smallestMargin, lower, upper };
}
