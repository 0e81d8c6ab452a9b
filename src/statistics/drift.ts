import { assembleBand, windowOr, type Band, type BandOptions } from './band.js';
import { gaussianSmoothing, smoothingGain } from './band-parts.js';
import {
  noScatter,
  requireAllFinite,
  requireSameLength,
  usualConfidence,
  type ConfidenceOption,
  type Numbers,
} from './checks.js';
import { average, pooledVariance, requireGrid, roundingOf, scaled, smoothedVariance } from './curves.js';
import { designOf, leftByFit, modelOf, tooFewDegrees, type DriftOptions, type OrderDesign } from './drift-model.js';
import { requireScatter, type Scatter } from './known-scatter.js';
import type { LinearModel } from './least-squares.js';
import { mean } from './summary.js';
import { studentInterval, type Interval } from './welch.js';

/** A difference corrected for drift over the order of the pulls. */
export interface DriftDifference extends OrderDesign {
  readonly difference: number;
  /** Difference of the plain means, drift left in. */
  readonly uncorrected: number;
  /** Change per unit of time or per pull at the middle of the test; absent without a drift term. */
  readonly slope?: { readonly value: number; readonly standardError?: number };
  readonly residuals: Float64Array;
  /**
   * Scatter of each side's pulls about the fit, with the degrees of freedom that the fit leaves to it; they add up to those of the fit.
   * Absent where it leaves none.
   */
  readonly scatterOf?: { readonly baseline: Required<Scatter>; readonly candidate: Required<Scatter> };
  /** Residual scatter, or the earlier one; absent when the model leaves no degree of freedom and none was given. */
  readonly scatter?: Scatter;
  /** Absent where `scatter` is. */
  readonly interval?: Interval;
}

/** How a drift-corrected difference is asked for. */
export interface DriftDifferenceOptions extends DriftOptions, ConfidenceOption {
  /** Scatter from earlier tests, to stand in place of the residuals: the only way for a single A-B-A. */
  readonly earlierScatter?: Scatter;
}

/**
 * Difference between set-ups from one number per pull, in the order of the pulls, with the drift of the baseline
 * fitted along (least squares).
 *
 * Drift that depends on the set-up is not removed.
 *
 * @param order - `A` for each baseline pull and `B` for each candidate pull, as they were made.
 */
export function driftDifference(
  order: string,
  values: Numbers,
  { confidence = usualConfidence, earlierScatter, ...options }: DriftDifferenceOptions = {},
): DriftDifference {
  const statistic = 'drift regression';
  if (earlierScatter !== undefined) requireScatter(statistic, 'earlierScatter', earlierScatter);
  const model = modelOf(statistic, order, options);
  const design = designOf(order, model);
  const { coefficients, residuals, residualSumOfSquares } = model.fit(values);
  const scatter = earlierScatter ?? residualScatter(values, residualSumOfSquares, model.degreesOfFreedom);
  const errorOf = (j: number, s: Scatter): number => s.standardDeviation * Math.sqrt(model.varianceFactors[j]!);
  const value = coefficients[2];
  return {
    ...design,
    difference: coefficients[1]!,
    uncorrected: plainDifference(order, values),
    residuals,
    ...(model.degreesOfFreedom === 0
      ? {}
      : {
          scatterOf: {
            baseline: scatterOf('A', order, model, residuals),
            candidate: scatterOf('B', order, model, residuals),
          },
        }),
    ...(value === undefined
      ? {}
      : { slope: scatter === undefined ? { value } : { value, standardError: errorOf(2, scatter) } }),
    ...(scatter === undefined
      ? {}
      : {
          scatter,
          interval: studentInterval(
            coefficients[1]!,
            errorOf(1, scatter),
            scatter.degreesOfFreedom ?? Infinity,
            confidence,
          ),
        }),
  };
}

/**
 * How the values of the pulls add up to the difference with the drift taken out: it is the sum of weight times value, in the order of
 * the pulls. The weights add up to zero.
 *
 * @throws StatisticsError `confounded` if the drift and the change cannot be told apart at all.
 */
export function driftWeights(order: string, options: DriftOptions = {}): Float64Array {
  const model = modelOf('weights of the pulls', order, options);
  return Float64Array.from(order, (_, pull) => {
    const one = Float64Array.from(order, (__, other) => (other === pull ? 1 : 0));
    return model.fit(one).coefficients[1]!;
  });
}

/** A difference with its scatter from one number a pull. */
export interface PullContrast {
  readonly difference: number;
  readonly standardError: number;
  readonly degreesOfFreedom: number;
}

/**
 * The difference with the drift taken out, of any number that each pull has: one model for many of them.
 *
 * Numbers that scatter about the model by no more than rounding have a standard error of about 0.
 *
 * @throws StatisticsError `confounded`, or `too-few-degrees-of-freedom` where the pulls leave no scatter.
 */
export function driftContrast(order: string, options: DriftOptions = {}): (values: Numbers) => PullContrast {
  const statistic = 'drift contrast';
  const model = modelOf(statistic, order, options);
  const { degreesOfFreedom } = model;
  if (degreesOfFreedom < 1) throw tooFewDegrees(statistic, order, 1, degreesOfFreedom);
  const varianceFactor = model.varianceFactors[1]!;
  return (values) => {
    const { coefficients, residualSumOfSquares } = model.fit(values);
    const standardError = Math.sqrt((residualSumOfSquares / degreesOfFreedom) * varianceFactor);
    return { difference: coefficients[1]!, standardError, degreesOfFreedom };
  };
}

/** The squares of a side's residuals add up to the variance times this share of the degrees of freedom, if all pulls scatter alike. */
function scatterOf(letter: string, order: string, model: LinearModel, residuals: Float64Array): Required<Scatter> {
  let squares = 0;
  let degreesOfFreedom = 0;
  leftByFit(order, model).forEach((left, pull) => {
    if (order[pull] !== letter) return;
    squares += residuals[pull]! ** 2;
    degreesOfFreedom += left;
  });
  return { standardDeviation: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

function residualScatter(values: Numbers, sumOfSquares: number, degreesOfFreedom: number): Scatter | undefined {
  if (degreesOfFreedom === 0) return undefined;
  if (Math.sqrt(sumOfSquares) <= roundingOf(values)) {
    throw noScatter('drift regression', 'values', 'scatter about the fitted drift', 'a perfect fit');
  }
  return { standardDeviation: Math.sqrt(sumOfSquares / degreesOfFreedom), degreesOfFreedom };
}

/**
 * Difference along a grid with the drift of the baseline fitted along, and its bands.
 *
 * Both sides share one scatter here, so there is no variance ratio.
 *
 * @param order - `A` or `B` for each pull, as they were made.
 * @param pulls - one curve per pull, in the same order.
 */
export function driftBand(
  grid: Numbers,
  order: string,
  pulls: readonly Numbers[],
  { drift, times, ...options }: DriftOptions & BandOptions = {},
): Band {
  const statistic = 'drift band';
  requireGrid(statistic, grid);
  const model = modelOf(statistic, order, {
    ...(drift === undefined ? {} : { drift }),
    ...(times === undefined ? {} : { times }),
  });
  requireSameLength(statistic, 'pulls', pulls.length, order.length);
  pulls.forEach((pull, i) => {
    requireSameLength(statistic, `pulls[${i}]`, pull.length, grid.length);
    requireAllFinite(statistic, `pulls[${i}]`, pull);
  });
  const f = model.degreesOfFreedom;
  if (f < 2) throw tooFewDegrees(statistic, order, 2, f);
  const fits = Array.from(grid, (_, j) => model.fit(pulls.map((pull) => pull[j]!)));
  const residuals = pulls.map((_, i) => Float64Array.from(fits, (fit) => fit.residuals[i]!));
  const variance = pooledVariance(residuals, f, pulls);
  const window = windowOr(statistic, options, windowForDegrees(f));
  const smoothing = gaussianSmoothing(grid, window);
  const smoothed = smoothedVariance(statistic, 'pulls', grid, smoothing, variance);
  const varianceFactor = model.varianceFactors[1]!;
  const standardised = 1 / Math.sqrt(average(variance));
  const gain = smoothingGain(
    smoothing,
    residuals.map((r) => scaled(r, standardised)),
    f,
  );
  return assembleBand(statistic, {
    grid,
    difference: Float64Array.from(fits, (fit) => fit.coefficients[1]!),
    standardError: smoothed.map((v) => Math.sqrt(varianceFactor * v)),
    degreesOfFreedom: gain * f,
    coordinates: residuals.map((r) => scaled(r, Math.sqrt(varianceFactor / f))),
    window,
    varianceRatio: 1,
    gain,
    indicative: false,
    options,
  });
}

function windowForDegrees(f: number): number {
  if (f <= 6) return 0.1;
  return f <= 12 ? 0.05 : 0;
}

function plainDifference(order: string, values: Numbers): number {
  const of = (letter: string): number => mean(Array.from(values).filter((_, i) => order[i] === letter));
  return of('B') - of('A');
}
