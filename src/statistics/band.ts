import {
  gaussianSmoothing,
  pathLength,
  simultaneousFactor,
  smoothingGain,
  type BandLevel,
  type BandMethod,
} from './band-parts.js';
import {
  requireAllFinite,
  requireCount,
  requireNotNegative,
  requireProbability,
  requirePulls,
  requireSameLength,
  usualConfidence,
  type Numbers,
} from './checks.js';
import { requireGrid, scaled, side, smoothedVariance, type Side } from './curves.js';
import { trigamma } from './gamma.js';
import { studentTFactor } from './student-t.js';

/** How a band is asked for. */
export interface BandOptions {
  /** Chance that the whole band holds the truth, 0.95 unless given. */
  readonly confidence?: number;
  /** Set-ups compared with the one baseline: their bands share the chance of error. 1 unless given. */
  readonly setUps?: number;
  /**
   * Share of the grid's range over which the scatter is smoothed. Chosen from the number of pulls unless given; 0 where
   * the scatter jumps from point to point, at the price of a wider band.
   */
  readonly window?: number;
  /** For each sensor error that does not cancel: its effect on the difference at each grid point, with its sign. */
  readonly unsharedSensors?: readonly Numbers[];
}

/** A difference along the grid with its pointwise and simultaneous half-widths. */
export interface Band {
  readonly grid: Float64Array;
  /** Candidate minus baseline. */
  readonly difference: Float64Array;
  /** Standard error of the difference, sensors included. */
  readonly standardError: Float64Array;
  /** Holds the truth at one point chosen beforehand. */
  readonly pointwiseHalfWidth: Float64Array;
  /** Holds the truth everywhere at once: the only one that may claim a region. */
  readonly simultaneousHalfWidth: Float64Array;
  readonly confidence: number;
  readonly setUps: number;
  /** How the simultaneous factor was found; below 8 grid points always Bonferroni. */
  readonly method: BandMethod;
  /** True when the scatter rests on so few pulls that the band is only a hint. */
  readonly indicative: boolean;
  readonly diagnostics: BandDiagnostics;
  /** The scatter of the pulls alone: neither half-width is ever narrower than this gives. */
  readonly pulls: BandLevel;
  /** Pulls and unshared sensors together, where there are such sensors. */
  readonly combined?: BandLevel;
}

/** What the band rests on. */
export interface BandDiagnostics {
  /** h: window of the scatter smoothing, as a share of the grid's range; 0 for none. */
  readonly window: number;
  /** rho: candidate over baseline variance, drawn towards 1; 1 where the scatter is pooled. */
  readonly varianceRatio: number;
  /** g: degrees of freedom after smoothing over those of one point. */
  readonly gain: number;
  /** nu. */
  readonly degreesOfFreedom: number;
  /** L, in radians. */
  readonly roughness: number;
  /** p: two-sided tail at the simultaneous factor. */
  readonly tailProbability: number;
  /** k: simultaneous half-width over standard error. */
  readonly factor: number;
  /** Pointwise half-width over standard error. */
  readonly pointwiseFactor: number;
}

/**
 * Difference of two sets of pulls on one grid, with bands that count pulls and not points.
 *
 * The scatter of each side is smoothed over the grid, which gains degrees of freedom; the simultaneous factor comes
 * from the expected crossings of a t field. Smooth the pulls alike on both sides before, and alternate the set-ups
 * when testing: what differs between sessions does not show as scatter between pulls.
 *
 * @param grid - increasing positions, usually engine speed.
 * @param baseline - one curve per pull, on the grid.
 * @param candidate - one curve per pull, on the grid.
 * @throws StatisticsError `too-few-pulls` below two a side, `no-scatter` where the pulls of a side agree exactly
 * along the grid (a copied or clipped channel), `unequal-lengths`, `not-finite`, `not-increasing`.
 */
export function differenceBand(
  grid: Numbers,
  baseline: readonly Numbers[],
  candidate: readonly Numbers[],
  options: BandOptions = {},
): Band {
  const statistic = 'difference band';
  requirePulls(statistic, 'baseline', baseline.length);
  requirePulls(statistic, 'candidate', candidate.length);
  requireGrid(statistic, grid);
  const points = grid.length;
  const a = side(statistic, 'baseline', grid, baseline);
  const b = side(statistic, 'candidate', grid, candidate);

  const window = windowOr(statistic, options, windowForPulls(Math.min(a.count, b.count)));
  const smoothing = gaussianSmoothing(grid, window);
  const smoothA = smoothedVariance(statistic, 'baseline', grid, smoothing, a.variance);
  const smoothB = smoothedVariance(statistic, 'candidate', grid, smoothing, b.variance);
  const standardError = Float64Array.from({ length: points }, (_, j) =>
    Math.sqrt(smoothA[j]! / a.count + smoothB[j]! / b.count),
  );

  const varianceRatio = shrunkVarianceRatio(a, b);
  const gain = smoothingGain(
    smoothing,
    [a, b].flatMap((one) => one.residuals.map((r) => scaled(r, 1 / Math.sqrt(one.meanVariance)))),
    a.degrees + b.degrees,
  );
  const shareA = 1 / a.count;
  const shareB = varianceRatio / b.count;
  const degreesOfFreedom =
    (shareA + shareB) ** 2 / ((shareA * shareA) / (gain * a.degrees) + (shareB * shareB) / (gain * b.degrees));

  return assembleBand(statistic, {
    grid,
    difference: Float64Array.from({ length: points }, (_, j) => b.mean[j]! - a.mean[j]!),
    standardError,
    degreesOfFreedom,
    coordinates: [a, b].flatMap((one) => one.residuals.map((r) => scaled(r, 1 / Math.sqrt(one.count * one.degrees)))),
    window,
    varianceRatio,
    gain,
    indicative: Math.min(a.count, b.count) < 3,
    options,
  });
}

/** What any model of the pulls must give for a band. */
export interface BandIngredients {
  readonly grid: Numbers;
  readonly difference: Float64Array;
  readonly standardError: Float64Array;
  readonly degreesOfFreedom: number;
  /** Residual curves whose root sum of squares is proportional to the unsmoothed standard error. */
  readonly coordinates: readonly Float64Array[];
  readonly window: number;
  readonly varianceRatio: number;
  readonly gain: number;
  readonly indicative: boolean;
  readonly options: BandOptions;
}

/** Roughness, factors and half-widths, with the sensors that do not cancel. */
export function assembleBand(statistic: string, parts: BandIngredients): Band {
  const { confidence = usualConfidence, setUps = 1, unsharedSensors = [] } = parts.options;
  requireProbability(statistic, 'confidence', confidence);
  requireCount(statistic, 'setUps', setUps, 1);
  const points = parts.grid.length;
  const error = (1 - confidence) / setUps;
  const level = (standardError: Float64Array, degreesOfFreedom: number, coordinates: readonly Float64Array[]) => {
    const roughness = pathLength(coordinates, points);
    const factor = simultaneousFactor(error, points, degreesOfFreedom, roughness);
    return { standardError, degreesOfFreedom, roughness, ...factor };
  };
  const pulls = level(parts.standardError, parts.degreesOfFreedom, parts.coordinates);
  const sensors = unsharedSensors.map((sensor, i) => {
    requireSameLength(statistic, `unsharedSensors[${i}]`, sensor.length, points);
    requireAllFinite(statistic, `unsharedSensors[${i}]`, sensor);
    return Float64Array.from(sensor);
  });
  const combined =
    sensors.length === 0
      ? undefined
      : level(
          parts.standardError.map((se, j) => Math.hypot(se, ...sensors.map((sensor) => sensor[j]!))),
          combinedDegreesOfFreedom(parts, sensors),
          [...parts.coordinates, ...sensors],
        );
  const shown = combined ?? pulls;
  const levels = combined === undefined ? [pulls] : [pulls, combined];
  return {
    grid: Float64Array.from(parts.grid),
    difference: parts.difference,
    standardError: shown.standardError,
    pointwiseHalfWidth: widest(levels, (one) => studentTFactor(error, one.degreesOfFreedom)),
    simultaneousHalfWidth: widest(levels, (one) => one.factor),
    confidence,
    setUps,
    method: shown.method,
    indicative: parts.indicative,
    diagnostics: {
      window: parts.window,
      varianceRatio: parts.varianceRatio,
      gain: parts.gain,
      degreesOfFreedom: shown.degreesOfFreedom,
      roughness: shown.roughness,
      tailProbability: shown.tailProbability,
      factor: shown.factor,
      pointwiseFactor: studentTFactor(error, shown.degreesOfFreedom),
    },
    pulls,
    ...(combined === undefined ? {} : { combined }),
  };
}

/** Pointwise half-widths of a band at another two-sided chance of error. */
export function pointwiseHalfWidth(band: Band, error: number): Float64Array {
  const levels = band.combined === undefined ? [band.pulls] : [band.pulls, band.combined];
  return widest(levels, (level) => studentTFactor(error, level.degreesOfFreedom));
}

/** A sensor error may widen the answer but never narrow it, so each point takes the wider of the two levels. */
function widest(levels: readonly BandLevel[], factorOf: (level: BandLevel) => number): Float64Array {
  const widths = levels.map((level) => scaled(level.standardError, factorOf(level)));
  return widths[0]!.map((_, j) => Math.max(...widths.map((width) => width[j]!)));
}

function combinedDegreesOfFreedom(parts: BandIngredients, sensors: readonly Float64Array[]): number {
  let together = 0;
  let alone = 0;
  parts.standardError.forEach((se, j) => {
    const square = se * se;
    const total = sensors.reduce((sum, sensor) => sum + sensor[j]! ** 2, square);
    together += total * total;
    alone += square * square;
  });
  return (parts.degreesOfFreedom * together) / alone;
}

/** The window asked for, or the usual one. */
export function windowOr(statistic: string, { window }: BandOptions, usual: number): number {
  if (window === undefined) return usual;
  requireNotNegative(statistic, 'window', window);
  return window;
}

/** Window of the scatter smoothing as a share of the grid's range: the fewer the pulls, the more their neighbours must help. */
export function windowForPulls(smallerSide: number): number {
  if (smallerSide <= 4) return 0.1;
  return smallerSide <= 7 ? 0.05 : 0;
}

/** Few pulls cannot tell a variance ratio, so its logarithm is drawn to 0 as by a prior of standard deviation 1. */
function shrunkVarianceRatio(a: Side, b: Side): number {
  const sampling = trigamma(a.degrees / 2) + trigamma(b.degrees / 2);
  return Math.exp(Math.log(b.meanVariance / a.meanVariance) / (1 + sampling));
}
