import {
  noScatter,
  requireProbability,
  requireSides,
  usualConfidence,
  type ConfidenceOption,
  type Numbers,
} from './checks.js';
import { studentTFactor, studentTTwoSided } from './student-t.js';
import { summarise, type Summary } from './summary.js';

/** A difference with its scatter, and the interval that holds it with the stated confidence. */
export interface Interval {
  readonly difference: number;
  readonly standardError: number;
  /** Degrees of freedom behind the standard error; need not be whole. */
  readonly degreesOfFreedom: number;
  /** Student t for the confidence: halfWidth over standardError. */
  readonly factor: number;
  readonly halfWidth: number;
  readonly lower: number;
  readonly upper: number;
  readonly confidence: number;
}

/** Student t interval about a difference. Infinite degrees of freedom give the normal interval. */
export function studentInterval(
  difference: number,
  standardError: number,
  degreesOfFreedom: number,
  confidence: number = usualConfidence,
): Interval {
  requireProbability('interval', 'confidence', confidence);
  const factor = studentTFactor(1 - confidence, degreesOfFreedom);
  const halfWidth = factor * standardError;
  return {
    difference,
    standardError,
    degreesOfFreedom,
    factor,
    halfWidth,
    lower: difference - halfWidth,
    upper: difference + halfWidth,
    confidence,
  };
}

/** Difference of two means with unequal scatter: candidate minus baseline. */
export interface WelchDifference extends Interval {
  readonly baseline: Summary;
  readonly candidate: Summary;
  /** Two-sided chance of a difference this large if there were none. */
  readonly pValue: number;
}

/**
 * Candidate minus baseline from one number per pull, each side with its own scatter (Welch).
 *
 * @throws StatisticsError `too-few-pulls` below two pulls a side, `no-scatter` if no pull differs from its side.
 */
export function welchDifference(
  baseline: Numbers,
  candidate: Numbers,
  { confidence = usualConfidence }: ConfidenceOption = {},
): WelchDifference {
  const statistic = 'Welch difference';
  requireSides(statistic, baseline, candidate);
  const a = summarise(baseline);
  const b = summarise(candidate);
  const { standardError, degreesOfFreedom } = welchScatter(
    a.standardDeviation ** 2 / a.count,
    a.count - 1,
    b.standardDeviation ** 2 / b.count,
    b.count - 1,
  );
  if (standardError === 0) {
    throw noScatter(
      statistic,
      'baseline and candidate',
      'differ from pull to pull',
      'the same number in every pull of each side',
    );
  }
  const interval = studentInterval(b.mean - a.mean, standardError, degreesOfFreedom, confidence);
  const pValue = studentTTwoSided(interval.difference / standardError, degreesOfFreedom).beyond;
  return { ...interval, baseline: a, candidate: b, pValue };
}

/**
 * Standard error of a difference and its degrees of freedom (Welch-Satterthwaite), from the variance of each mean.
 *
 * Two zero variances give a standard error of 0 with Infinity degrees of freedom.
 */
export function welchScatter(
  baselineVariance: number,
  baselineDegrees: number,
  candidateVariance: number,
  candidateDegrees: number,
): { standardError: number; degreesOfFreedom: number } {
  const total = baselineVariance + candidateVariance;
  if (total === 0) return { standardError: 0, degreesOfFreedom: Infinity };
  const a = baselineVariance / total;
  const b = candidateVariance / total;
  return {
    standardError: Math.sqrt(total),
    degreesOfFreedom: 1 / ((a * a) / baselineDegrees + (b * b) / candidateDegrees),
  };
}
