import {
  requireDegreesOfFreedom,
  requireNotNegative,
  requireProbability,
  usualConfidence,
  type ConfidenceOption,
} from './checks.js';
import { studentTFactor } from './student-t.js';

/** One independent standard uncertainty; Infinity degrees of freedom (the usual) for one taken as known. */
export interface UncertaintyPart {
  readonly standardUncertainty: number;
  readonly degreesOfFreedom?: number;
}

/** Scatter of the pulls and sensor errors together. */
export interface CombinedUncertainty {
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  /** Student t for the combined degrees of freedom. */
  readonly factor: number;
  /** Half-width of the interval: the larger of `plainHalfWidth` and `floor`. */
  readonly halfWidth: number;
  /** factor times standardUncertainty. */
  readonly plainHalfWidth: number;
  /** What the pulls give alone: a sensor error can widen an interval, never narrow it. */
  readonly floor: number;
}

/**
 * Joins the scatter of pulls with sensor errors that do not cancel (JCGM 100 G.4, degrees of freedom not truncated).
 *
 * The half-width never falls below that of the pulls alone: adding a sensor raises the degrees of freedom, and with
 * few pulls the smaller factor could otherwise narrow the answer.
 */
export function combineUncertainty(
  pulls: UncertaintyPart,
  sensors: readonly UncertaintyPart[],
  { confidence = usualConfidence }: ConfidenceOption = {},
): CombinedUncertainty {
  const statistic = 'combined uncertainty';
  requireProbability(statistic, 'confidence', confidence);
  const parts = [pulls, ...sensors];
  parts.forEach((part, i) => {
    const input = i === 0 ? 'pulls' : `sensors[${i - 1}]`;
    requireNotNegative(statistic, `${input}.standardUncertainty`, part.standardUncertainty);
    requireDegreesOfFreedom(statistic, `${input}.degreesOfFreedom`, degreesOf(part));
  });
  const standardUncertainty = Math.hypot(...parts.map((part) => part.standardUncertainty));
  const degreesOfFreedom = effectiveDegreesOfFreedom(parts);
  const tail = 1 - confidence;
  const factor = studentTFactor(tail, degreesOfFreedom);
  const plainHalfWidth = factor * standardUncertainty;
  const floor =
    pulls.standardUncertainty === 0 ? 0 : studentTFactor(tail, degreesOf(pulls)) * pulls.standardUncertainty;
  return {
    standardUncertainty,
    degreesOfFreedom,
    factor,
    halfWidth: Math.max(plainHalfWidth, floor),
    plainHalfWidth,
    floor,
  };
}

/** Welch-Satterthwaite degrees of freedom of a root sum of squares; Infinity if nothing in it was estimated. */
export function effectiveDegreesOfFreedom(parts: readonly UncertaintyPart[]): number {
  const total = parts.reduce((sum, { standardUncertainty: u }) => sum + u * u, 0);
  if (total === 0) return Infinity;
  const below = parts.reduce((sum, part) => sum + (part.standardUncertainty ** 2 / total) ** 2 / degreesOf(part), 0);
  return 1 / below;
}

function degreesOf(part: UncertaintyPart): number {
  return part.degreesOfFreedom ?? Infinity;
}
