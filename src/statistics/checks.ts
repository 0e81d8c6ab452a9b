import { StatisticsError } from './errors.js';

/** A run of plain numbers: one value per grid speed, or one per pull. */
export type Numbers = readonly number[] | Float64Array;

/** The two-sided chance of error the library uses unless told otherwise. */
export const usualError = 0.05;

/** The confidence of an interval unless told otherwise. */
export const usualConfidence = 0.95;

/** How sure an interval shall be. */
export interface ConfidenceOption {
  /** Chance that the interval holds the truth, 0.95 unless given. */
  readonly confidence?: number;
}

/** How much error a test may make. */
export interface ErrorOption {
  /** Chance of a false alarm, 0.05 unless given. */
  readonly error?: number;
}

export const onePullAdvice =
  'One pull a side cannot tell a change from luck. Give a repeatability from earlier tests, or run two more.';

export function requireFinite(statistic: string, input: string, value: number): void {
  if (!Number.isFinite(value)) {
    throw new StatisticsError({ code: 'not-finite', statistic, input, need: 'be a finite number', got: String(value) });
  }
}

/** Refuses NaN; an infinite argument is a limit that a distribution can answer. */
export function requireNumber(statistic: string, input: string, value: number): void {
  if (Number.isNaN(value)) {
    throw new StatisticsError({ code: 'not-finite', statistic, input, need: 'be a number', got: 'NaN' });
  }
}

export function requireAllFinite(statistic: string, input: string, values: Numbers): void {
  for (let i = 0; i < values.length; i++) requireFinite(statistic, `${input}[${i}]`, values[i]!);
}

export function requirePositive(statistic: string, input: string, value: number): void {
  requireFinite(statistic, input, value);
  if (value <= 0) {
    throw new StatisticsError({ code: 'out-of-range', statistic, input, need: 'be above 0', got: String(value) });
  }
}

export function requireNotNegative(statistic: string, input: string, value: number): void {
  requireFinite(statistic, input, value);
  if (value < 0) {
    throw new StatisticsError({ code: 'out-of-range', statistic, input, need: 'not be below 0', got: String(value) });
  }
}

/** Refuses what is not a whole number of at least `least`. */
export function requireCount(statistic: string, input: string, value: number, least: number): void {
  if (!Number.isInteger(value) || value < least) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input,
      need: `be a whole number of at least ${least}`,
      got: String(value),
    });
  }
}

/** Degrees of freedom: any positive number, or Infinity for a scatter known exactly. */
export function requireDegreesOfFreedom(statistic: string, input: string, value: number): void {
  if (!(value > 0)) {
    throw new StatisticsError({ code: 'out-of-range', statistic, input, need: 'be above 0', got: String(value) });
  }
}

export function requireProbability(statistic: string, input: string, value: number): void {
  if (!(value > 0 && value < 1)) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input,
      need: 'lie between 0 and 1, both excluded',
      got: String(value),
    });
  }
}

/** The error of one of two one-sided tests: the interval to look at has twice that. */
export function requireOneSidedError(statistic: string, value: number): void {
  if (!(value > 0 && value < 0.5)) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input: 'error',
      need: 'lie between 0 and 0.5, both excluded',
      got: String(value),
    });
  }
}

export function requireSameLength(statistic: string, input: string, length: number, wanted: number): void {
  if (length !== wanted) {
    throw new StatisticsError({
      code: 'unequal-lengths',
      statistic,
      input,
      need: `hold ${wanted} values, one for each point`,
      got: String(length),
      mend: 'Put every pull on the same grid first.',
    });
  }
}

export function requirePulls(statistic: string, input: string, count: number): void {
  if (count < 2) {
    throw new StatisticsError({
      code: 'too-few-pulls',
      statistic,
      input,
      need: 'hold at least 2 pulls',
      got: String(count),
      mend: onePullAdvice,
    });
  }
}

/** The two sides of a comparison of one number per pull. */
export function requireSides(statistic: string, baseline: Numbers, candidate: Numbers): void {
  requirePulls(statistic, 'baseline', baseline.length);
  requirePulls(statistic, 'candidate', candidate.length);
  requireAllFinite(statistic, 'baseline', baseline);
  requireAllFinite(statistic, 'candidate', candidate);
}

/** What to throw where pulls agree so exactly that they cannot be independent measurements. */
export function noScatter(
  statistic: string,
  input: string,
  need: string,
  got: string,
  mend = 'Look for a copied or clipped channel.',
): StatisticsError {
  return new StatisticsError({
    code: 'no-scatter',
    statistic,
    input,
    need,
    got,
    mend,
  });
}
