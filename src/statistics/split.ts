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
import {
  contrastBy,
  splitScores,
  splitWeights,
  type LogFactor,
  type SplitOrder,
  type SplitWeights,
} from './split-scores.js';

export type { LogFactor, SplitOrder } from './split-scores.js';

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

/** How a split is asked for. */
export interface SplitOptions extends ConfidenceOption {
  /** Takes a steady drift through the day out of every factor, so that they add up to the difference without it. */
  readonly order?: SplitOrder | undefined;
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
  { confidence = usualConfidence, order }: SplitOptions = {},
): AdditiveSplit {
  checkInputs(factors, sensors);
  const whole = wholeOf(factors);
  const contrast = contrastBy(order);
  const weights = splitWeights(whole, contrast);
  const contributionOf = (factor: LogFactor, effects: readonly SensorEffect[]): Contribution => {
    const logChange = contrast(factor.baseline, factor.candidate).difference;
    const contribution = weights.logarithmicMean * logChange;
    const scores = splitScores(factor, whole, logChange, weights);
    const { standardError, degreesOfFreedom } = contrast(scores.baseline, scores.candidate);
    const pulls = { standardUncertainty: standardError, degreesOfFreedom };
    const parts = effects.map((effect, i): UncertaintyPart => {
      return {
        standardUncertainty: Math.hypot(...effect(logChange)),
        degreesOfFreedom: sensors[i]!.degreesOfFreedom ?? Infinity,
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
  const half = weights.change / 2;
  return {
    baseline: Math.exp(weights.middle - half),
    candidate: Math.exp(weights.middle + half),
    logarithmicMean: weights.logarithmicMean,
    contributions: factors.map((factor, k) =>
      contributionOf(
        factor,
        sensors.map((sensor) => sensorEffect(sensor, k, weights)),
      ),
    ),
    total: contributionOf(
      whole,
      sensors.map((sensor) => sensorEffect(sensor, 'all', weights)),
    ),
  };
}

/** The product itself, from its factors. */
export function wholeOf(factors: readonly LogFactor[]): LogFactor {
  return {
    name: 'total',
    baseline: totals(factors.map((factor) => factor.baseline)),
    candidate: totals(factors.map((factor) => factor.candidate)),
  };
}

/** What one standard uncertainty of a sensor does to a contribution, by its change of logarithm: one number where shared, else one a side. */
export type SensorEffect = (logChange: number) => readonly number[];

/** The effect of a sensor on one factor, or on the whole. */
export function sensorEffect(
  { standardUncertainty, shared, baseline, candidate }: SplitSensor,
  factor: number | 'all',
  { logarithmicMean, slopeA, slopeB }: SplitWeights,
): SensorEffect {
  const [totalA, totalB] = [add(baseline), add(candidate)];
  const [a, b] = factor === 'all' ? [totalA, totalB] : [baseline[factor]!, candidate[factor]!];
  return (logChange) => {
    const throughA = (-logarithmicMean * a + logChange * slopeA * totalA) * standardUncertainty;
    const throughB = (logarithmicMean * b + logChange * slopeB * totalB) * standardUncertainty;
    return shared ? [throughA + throughB] : [throughA, throughB];
  };
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
