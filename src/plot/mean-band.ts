import { StatisticsError } from '../comparison/index.js';
import { assembleBand, windowForPulls } from '../statistics/band.js';
import { gaussianSmoothing, smoothingGain } from '../statistics/band-parts.js';
import { scaled, side, smoothedVariance } from '../statistics/curves.js';

/**
 * Band that holds the whole mean curve of one set-up's pulls at once, by the statistics of the difference band: the scatter of the
 * pulls smoothed over neighbouring speeds, and a factor for the whole curve from the expected crossings of a t field.
 *
 * @returns Half-widths along the grid; undefined with fewer than two pulls, or with pulls that are copies of each other.
 */
export function meanBand(
  grid: readonly number[],
  pulls: readonly (readonly number[])[],
  confidence: number,
): Float64Array | undefined {
  if (pulls.length < 2 || grid.length < 2) return undefined;
  try {
    const { count, degrees, mean, residuals, variance, meanVariance } = side('mean band', 'pulls', grid, pulls);
    const window = windowForPulls(count);
    const smoothing = gaussianSmoothing(grid, window);
    const smoothed = smoothedVariance('mean band', 'pulls', grid, smoothing, variance);
    const standardised = residuals.map((residual) => scaled(residual, 1 / Math.sqrt(meanVariance)));
    const gain = smoothingGain(smoothing, standardised, degrees);
    return assembleBand('mean band', {
      grid,
      difference: mean,
      standardError: smoothed.map((v) => Math.sqrt(v / count)),
      degreesOfFreedom: gain * degrees,
      coordinates: residuals,
      window,
      varianceRatio: 1,
      gain,
      indicative: count < 3,
      options: { confidence },
    }).simultaneousHalfWidth;
  } catch (error) {
    if (error instanceof StatisticsError && error.code === 'no-scatter') return undefined;
    throw error;
  }
}
