import {
  requireAllFinite,
  requireNotNegative,
  requirePulls,
  requireSameLength,
  usualConfidence,
  type ConfidenceOption,
  type Numbers,
} from './checks.js';
import { combineUncertainty, type CombinedUncertainty, type UncertaintyPart } from './combination.js';
import { StatisticsError } from './errors.js';
import { mean, variance } from './summary.js';
import { welchScatter } from './welch.js';

/** One factor of a product that is the whole (power, airflow): its natural logarithm in every pull. */
export interface LogFactor {
  readonly name: string;
  readonly baseline: Numbers;
  readonly candidate: Numbers;
}

/** A sensor whose error moves the factors. */
export interface SplitSensor {
  readonly name: string;
  readonly standardUncertainty: number;
  /** Infinity (taken as known) unless given. */
  readonly degreesOfFreedom?: number;
  /** True if one error stood in both set-ups (same sensor), so that it cancels where it can. */
  readonly shared: boolean;
  /** Change of the mean logarithm of each factor per unit of error, baseline; in the order of the factors. */
  readonly baseline: Numbers;
  /** The same for the candidate. */
  readonly candidate: Numbers;
}

/** What one factor did to the whole. */
export interface Contribution {
  readonly name: string;
  /** Change of the mean logarithm: candidate minus baseline. */
  readonly logChange: number;
  /** Its part of the change, in the units of the whole. */
  readonly contribution: number;
  /** Scatter of the pulls. */
  readonly pulls: { readonly standardUncertainty: number; readonly degreesOfFreedom: number };
  /** Sensor errors that do not cancel. */
  readonly sensors: { readonly standardUncertainty: number };
  readonly combined: CombinedUncertainty;
  readonly lower: number;
  readonly upper: number;
}

/** The change of the whole, split so that the parts add up exactly. */
export interface AdditiveSplit {
  /** Geometric mean of the whole over the baseline pulls. */
  readonly baseline: number;
  /** Geometric mean of the whole over the candidate pulls. */
  readonly candidate: number;
  /** Logarithmic mean of the two: the weight that turns a change of logarithm into a change of the whole. */
  readonly logarithmicMean: number;
  readonly contributions: readonly Contribution[];
  /** Candidate less baseline. Its interval is its own: those of the factors hang together and must not be added. */
  readonly total: Contribution;
}

/**
 * Splits the change of a product into its factors, by logarithmic-mean weights: exact, and the same whichever side is
 * called the baseline (Wood and Lenzen 2006).
 *
 * @throws StatisticsError `too-few-pulls`, `unequal-lengths`, `not-finite`.
 */
export function additiveSplit(
  factors: readonly LogFactor[],
  sensors: readonly SplitSensor[] = [],
  { confidence = usualConfidence }: ConfidenceOption = {},
): AdditiveSplit {
  checkInputs(factors, sensors);
  const whole: LogFactor = {
    name: 'total',
    baseline: totals(factors.map((factor) => factor.baseline)),
    candidate: totals(factors.map((factor) => factor.candidate)),
  };
  const meanA = mean(whole.baseline);
  const meanB = mean(whole.candidate);
  const half = (meanB - meanA) / 2;
  const level = Math.exp((meanA + meanB) / 2);
  const weights: Weights = {
    logarithmicMean: level * (half === 0 ? 1 : Math.sinh(half) / half),
    slopeA: level * logMeanSlope(-half),
    slopeB: level * logMeanSlope(half),
  };
  const sensorTotals = sensors.map((sensor) => ({ ...sensor, a: add(sensor.baseline), b: add(sensor.candidate) }));
  const contributionOf = (factor: LogFactor, sensitivities: readonly [number, number][]): Contribution => {
    const logChange = mean(factor.candidate) - mean(factor.baseline);
    const contribution = weights.logarithmicMean * logChange;
    const pulls = pullScatter(factor, whole, logChange, weights);
    const parts = sensorTotals.map((sensor, i): UncertaintyPart => {
      const [a, b] = sensitivities[i]!;
      const throughA = -weights.logarithmicMean * a + logChange * weights.slopeA * sensor.a;
      const throughB = weights.logarithmicMean * b + logChange * weights.slopeB * sensor.b;
      const effect = sensor.shared ? Math.abs(throughA + throughB) : Math.hypot(throughA, throughB);
      return {
        standardUncertainty: effect * sensor.standardUncertainty,
        degreesOfFreedom: sensor.degreesOfFreedom ?? Infinity,
      };
    });
    const combined = combineUncertainty(pulls, parts, { confidence });
    return {
      name: factor.name,
      logChange,
      contribution,
      pulls,
      sensors: { standardUncertainty: Math.hypot(...parts.map((part) => part.standardUncertainty)) },
      combined,
      lower: contribution - combined.halfWidth,
      upper: contribution + combined.halfWidth,
    };
  };
  return {
    baseline: Math.exp(meanA),
    candidate: Math.exp(meanB),
    logarithmicMean: weights.logarithmicMean,
    contributions: factors.map((factor, k) =>
      contributionOf(
        factor,
        sensors.map((sensor) => [sensor.baseline[k]!, sensor.candidate[k]!]),
      ),
    ),
    total: contributionOf(
      whole,
      sensorTotals.map((sensor) => [sensor.a, sensor.b]),
    ),
  };
}

interface Weights {
  readonly logarithmicMean: number;
  /** Derivative of the logarithmic mean with respect to the logarithm of the baseline. */
  readonly slopeA: number;
  readonly slopeB: number;
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

/** Scatter of a contribution from one score per pull: what that pull alone would have moved it by. */
function pullScatter(
  factor: LogFactor,
  whole: LogFactor,
  logChange: number,
  { logarithmicMean, slopeA, slopeB }: Weights,
): { standardUncertainty: number; degreesOfFreedom: number } {
  const scores = (own: Numbers, all: Numbers, sign: number, slope: number): number[] =>
    Array.from(own, (phi, i) => sign * logarithmicMean * phi + logChange * slope * all[i]!);
  const a = scores(factor.baseline, whole.baseline, -1, slopeA);
  const b = scores(factor.candidate, whole.candidate, 1, slopeB);
  const { standardError, degreesOfFreedom } = welchScatter(
    variance(a) / a.length,
    a.length - 1,
    variance(b) / b.length,
    b.length - 1,
  );
  return { standardUncertainty: standardError, degreesOfFreedom };
}

function totals(rows: readonly Numbers[]): Float64Array {
  return Float64Array.from(rows[0]!, (_, i) => rows.reduce((sum, row) => sum + row[i]!, 0));
}

function add(values: Numbers): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

function checkInputs(factors: readonly LogFactor[], sensors: readonly SplitSensor[]): void {
  const statistic = 'additive split';
  const first = factors[0];
  if (first === undefined) {
    throw new StatisticsError({
      code: 'too-few-points',
      statistic,
      input: 'factors',
      need: 'hold at least 1 factor',
      got: '0',
    });
  }
  requirePulls(statistic, 'baseline', first.baseline.length);
  requirePulls(statistic, 'candidate', first.candidate.length);
  for (const factor of factors) {
    for (const side of ['baseline', 'candidate'] as const) {
      requireSameLength(statistic, `${factor.name}.${side}`, factor[side].length, first[side].length);
      requireAllFinite(statistic, `${factor.name}.${side}`, factor[side]);
    }
  }
  for (const sensor of sensors) {
    requireNotNegative(statistic, `${sensor.name}.standardUncertainty`, sensor.standardUncertainty);
    for (const side of ['baseline', 'candidate'] as const) {
      requireSameLength(statistic, `${sensor.name}.${side}`, sensor[side].length, factors.length);
      requireAllFinite(statistic, `${sensor.name}.${side}`, sensor[side]);
    }
  }
}
