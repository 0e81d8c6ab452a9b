import { requireProbability } from '../checks.js';
import { presentRows } from './robust.js';
import { requireSeries } from './series.js';

/** Where the start-of-pull transient of a signal ends. */
export interface SettledCut {
  /** First row of the settled part. */
  readonly row: number;
  readonly time: number;
  /** Sum of squared residuals of the straight line through the settled part. */
  readonly sumOfSquares: number;
  /** That sum over the square of the number of readings kept: what the cut makes least. */
  readonly criterion: number;
  /** Slope of that line, a second. */
  readonly slope: number;
  /** Height of that line at time 0. */
  readonly intercept: number;
  readonly readings: number;
  /** Whether the best cut is the last that was tried: then the signal bends all along, and nothing is settled. */
  readonly atLimit: boolean;
}

/** How far into a signal a cut is looked for. */
export interface SettledCutOptions {
  /** Largest share of the readings that may be cut off; 0.6 when left out. */
  readonly longest?: number;
}

/** Below this many readings a line through the rest says nothing. */
export const fewestToSettle = 8;

/**
 * The cut after which a straight line describes a signal best: the one with the least sum of squared residuals over the square of the
 * readings kept (the marginal standard error rule, White 1997, on a line instead of a mean).
 *
 * Without a transient it still cuts about an eighth for nothing, and a slow one it cuts too early: hold it against another signal.
 *
 * @param times - Seconds, rising.
 * @param values - One for each time; NaN where there is no reading.
 * @throws StatisticsError `too-few-points` below 8 readings.
 */
export function settledCut(
  times: Float64Array,
  values: Float64Array,
  { longest = 0.6 }: SettledCutOptions = {},
): SettledCut {
  requireSeries('settled cut', times, values, fewestToSettle);
  requireProbability('settled cut', 'longest', longest);
  const rows = presentRows(values);
  const last = Math.min(Math.floor(longest * rows.length), rows.length - 3);
  const origin = values[rows[rows.length - 1]!]!;
  let best: Omit<SettledCut, 'row' | 'time' | 'atLimit'> | undefined;
  let bestPlace = 0;
  // Readings join from the end, so that every cut costs one step; the running sums are about the mean of those that have joined.
  let count = 0;
  let meanX = 0;
  let meanY = 0;
  let sxx = 0;
  let sxy = 0;
  let syy = 0;
  for (let place = rows.length - 1; place >= 0; place--) {
    const x = times[rows[place]!]!;
    const y = values[rows[place]!]! - origin;
    count++;
    const dx = x - meanX;
    const dy = y - meanY;
    meanX += dx / count;
    meanY += dy / count;
    sxx += dx * (x - meanX);
    sxy += dx * (y - meanY);
    syy += dy * (y - meanY);
    if (place > last) continue;
    const sumOfSquares = Math.max(0, syy - (sxy * sxy) / sxx);
    const criterion = sumOfSquares / (count * count);
    // Of equal cuts the earlier keeps more.
    if (best !== undefined && criterion > best.criterion) continue;
    const slope = sxy / sxx;
    best = { sumOfSquares, criterion, slope, intercept: origin + meanY - slope * meanX, readings: count };
    bestPlace = place;
  }
  const row = rows[bestPlace]!;
  return { ...best!, row, time: times[row]!, atLimit: bestPlace === last };
}
