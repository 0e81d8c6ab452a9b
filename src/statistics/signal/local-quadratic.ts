import { requireCount, requireNotNegative, requirePositive } from '../checks.js';
import { notConverged, StatisticsError } from '../errors.js';
import { requireSeries } from './series.js';

/**
 * Variance of a local quadratic's value, and of its slope, over the variance of one evenly spaced sample, for 2M + 1 samples
 * (Savitzky and Golay 1964).
 *
 * @param step - Seconds from sample to sample.
 * @param halfWindow - M, samples on either side.
 */
export function localQuadraticFactors(step: number, halfWindow: number): { value: number; slope: number } {
  const statistic = 'local quadratic';
  requirePositive(statistic, 'step', step);
  requireCount(statistic, 'halfWindow', halfWindow, 1);
  const m = halfWindow;
  return {
    value: (3 * (3 * m * m + 3 * m - 1)) / ((2 * m - 1) * (2 * m + 1) * (2 * m + 3)),
    slope: 3 / (step * step * m * (m + 1) * (2 * m + 1)),
  };
}

/** What undoing a first-order lag does to a signal: noise and bias, for a lag, a step and a window. */
export interface LagCost {
  /** Standard deviation of the compensated value over that of one sample. */
  readonly noiseFactor: number;
  /** Error of the compensated value for a third derivative of 1. */
  readonly biasFactor: number;
}

/**
 * What compensating a lag costs: value plus lag times slope of a local quadratic over 2M + 1 samples.
 *
 * @param lag - Time constant in seconds; 0 for smoothing alone.
 */
export function lagCost(lag: number, step: number, halfWindow: number): LagCost {
  requireNotNegative('lag cost', 'lag', lag);
  const { value, slope } = localQuadraticFactors(step, halfWindow);
  return {
    noiseFactor: Math.sqrt(value + lag * lag * slope),
    biasFactor: (lag * step * step * (3 * halfWindow * halfWindow + 3 * halfWindow - 1)) / 30,
  };
}

/** The window that compensates a lag best, and what it costs. */
export interface LagWindow extends LagCost {
  /** Samples on either side. */
  readonly halfWindow: number;
  readonly standardDeviation: number;
  readonly bias: number;
  /** Root of the sum of their squares: what the window makes least. */
  readonly rootSum: number;
}

/** What the choice of a window rests on. */
export interface LagWindowOptions {
  /** Time constant in seconds. */
  readonly lag: number;
  /** Seconds from sample to sample. */
  readonly step: number;
  /** Standard deviation of one sample. */
  readonly noise: number;
  /** Size of the third derivative of the signal, a second cubed; see {@link thirdDerivative}. */
  readonly thirdDerivative: number;
  /** Largest half window to consider. */
  readonly most: number;
}

/** The half window with the least variance plus squared bias. Use the same for both sides of a comparison. */
export function bestLagWindow({ lag, step, noise, thirdDerivative, most }: LagWindowOptions): LagWindow {
  const statistic = 'best lag window';
  requireNotNegative(statistic, 'noise', noise);
  requireNotNegative(statistic, 'thirdDerivative', thirdDerivative);
  requireCount(statistic, 'most', most, 1);
  let best: LagWindow | undefined;
  for (let halfWindow = 1; halfWindow <= most; halfWindow++) {
    const cost = lagCost(lag, step, halfWindow);
    const standardDeviation = noise * cost.noiseFactor;
    const bias = thirdDerivative * cost.biasFactor;
    const rootSum = Math.hypot(standardDeviation, bias);
    if (best === undefined || rootSum < best.rootSum) {
      best = { ...cost, halfWindow, standardDeviation, bias, rootSum };
    }
  }
  return best!;
}

/** A signal from which a first-order lag was taken. */
export interface Compensated {
  /** NaN where no whole window of readings lies about a row. */
  readonly values: Float64Array;
  /** Slope of the signal a second, by the same quadratics. */
  readonly slopes: Float64Array;
  /** Standard deviation of each value over that of one sample; NaN with the value. */
  readonly noiseFactors: Float64Array;
}

/**
 * Undoes the lag of a first-order sensor: value plus lag times slope of the least-squares quadratic through the readings of a
 * window about each row. Times need not be even. A row without a reading of its own, or whose window is cut off by an end of the
 * record, has no value: a quadratic read at its end is mostly noise.
 *
 * @param options - `lag`, the time constant in seconds, of which 0 smooths only; `halfWindow`, rows on either side.
 * @throws StatisticsError if times do not rise or there are fewer readings than one window.
 */
export function compensateLag(
  times: Float64Array,
  values: Float64Array,
  options: { readonly lag: number; readonly halfWindow: number },
): Compensated {
  const { lag, halfWindow } = options;
  const statistic = 'lag compensation';
  requireNotNegative(statistic, 'lag', lag);
  requireCount(statistic, 'halfWindow', halfWindow, 1);
  requireSeries(statistic, times, values, 2 * halfWindow + 1);
  const rows = values.length;
  const result: Compensated = {
    values: new Float64Array(rows).fill(NaN),
    slopes: new Float64Array(rows).fill(NaN),
    noiseFactors: new Float64Array(rows).fill(NaN),
  };
  for (let row = halfWindow; row < rows - halfWindow; row++) {
    if (Number.isNaN(values[row]!)) continue;
    const fit = quadraticAbout(times, values, row, halfWindow);
    if (fit === undefined) continue;
    result.values[row] = fit.value + lag * fit.slope;
    result.slopes[row] = fit.slope;
    result.noiseFactors[row] = Math.sqrt(
      Math.max(0, fit.valueFactor + 2 * lag * fit.jointFactor + lag * lag * fit.slopeFactor),
    );
  }
  return result;
}

interface LocalFit {
  readonly value: number;
  readonly slope: number;
  readonly valueFactor: number;
  readonly slopeFactor: number;
  readonly jointFactor: number;
}

/** The quadratic about one row; undefined where the readings left in the window lie on one side or are too few. */
function quadraticAbout(
  times: Float64Array,
  values: Float64Array,
  row: number,
  halfWindow: number,
): LocalFit | undefined {
  // Seconds over the half window keep the sums of powers of one size.
  const scale = (times[row + halfWindow]! - times[row - halfWindow]!) / 2;
  const own = values[row]!;
  let [s0, s1, s2, s3, s4, y0, y1, y2] = [0, 0, 0, 0, 0, 0, 0, 0];
  let [before, after] = [0, 0];
  for (let at = row - halfWindow; at <= row + halfWindow; at++) {
    if (Number.isNaN(values[at]!)) continue;
    const x = (times[at]! - times[row]!) / scale;
    const y = values[at]! - own;
    s0++;
    s1 += x;
    s2 += x * x;
    s3 += x * x * x;
    s4 += x * x * x * x;
    y0 += y;
    y1 += x * y;
    y2 += x * x * y;
    if (x < 0) before++;
    if (x > 0) after++;
  }
  if (before === 0 || after === 0 || 2 * (before + after) < 2 * halfWindow) return undefined;
  const c00 = s2 * s4 - s3 * s3;
  const c01 = s2 * s3 - s1 * s4;
  const c02 = s1 * s3 - s2 * s2;
  const c11 = s0 * s4 - s2 * s2;
  const c12 = s1 * s2 - s0 * s3;
  const below = s0 * c00 + s1 * c01 + s2 * c02;
  if (!(below > 1e-12 * s0 * s2 * s4)) return undefined;
  return {
    value: own + (c00 * y0 + c01 * y1 + c02 * y2) / below,
    slope: (c01 * y0 + c11 * y1 + c12 * y2) / below / scale,
    valueFactor: c00 / below,
    slopeFactor: c11 / below / (scale * scale),
    jointFactor: c01 / below / scale,
  };
}

/**
 * Size of the third derivative of an evenly spaced signal: root mean square over the record, by least-squares cubics.
 *
 * @param values - Best the mean of all pulls, so that noise counts for little; NaN where there is none.
 * @param halfWindow - Samples on either side of each cubic, at least 2; wide, for noise enters with its power -3.5.
 * @throws StatisticsError `too-few-points` if no window is whole.
 */
export function thirdDerivative(values: Float64Array, step: number, halfWindow: number): number {
  const statistic = 'third derivative';
  requirePositive(statistic, 'step', step);
  requireCount(statistic, 'halfWindow', halfWindow, 2);
  const middle = (3 * halfWindow * halfWindow + 3 * halfWindow - 1) / 5;
  const weights = Array.from({ length: 2 * halfWindow + 1 }, (_, at) => {
    const i = at - halfWindow;
    return i * (i * i - middle);
  });
  const norm = weights.reduce((sum, weight) => sum + weight * weight, 0);
  let squares = 0;
  let windows = 0;
  for (let row = halfWindow; row < values.length - halfWindow; row++) {
    const cubic = weights.reduce((sum, weight, at) => sum + weight * values[row - halfWindow + at]!, 0) / norm;
    if (Number.isNaN(cubic)) continue;
    squares += ((6 * cubic) / step ** 3) ** 2;
    windows++;
  }
  if (windows > 0) return Math.sqrt(squares / windows);
  throw new StatisticsError({
    code: 'too-few-points',
    statistic,
    input: 'values',
    need: `hold ${2 * halfWindow + 1} readings in a row`,
    got: String(values.length),
  });
}

/** Standard deviation of one sample about a smooth signal, by second differences: what a lag compensation multiplies. */
export function sampleNoise(values: Float64Array): number {
  let squares = 0;
  let count = 0;
  for (let row = 1; row < values.length - 1; row++) {
    const bend = values[row - 1]! - 2 * values[row]! + values[row + 1]!;
    if (Number.isNaN(bend)) continue;
    squares += bend * bend;
    count++;
  }
  if (count === 0) throw notConverged('sample noise', 'values', 'no three readings in a row');
  return Math.sqrt(squares / count / 6);
}
