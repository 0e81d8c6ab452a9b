import { differenceBand, type Band } from './band.js';
import { usualConfidence, type Numbers } from './checks.js';
import { StatisticsError } from './errors.js';
import { driftBand } from './drift.js';
import { requireGrid } from './curves.js';
import {
  additiveSplit,
  sensorEffect,
  wholeOf,
  type AdditiveSplit,
  type LogFactor,
  type SplitOptions,
  type SplitSensor,
} from './split.js';
import { contrastBy, inOrder, splitScores, splitWeights } from './split-scores.js';

/** The factors of a product at one place of the grid, with the sensors that bear on them there. */
export interface SplitPoint {
  readonly factors: readonly LogFactor[];
  readonly sensors?: readonly SplitSensor[];
}

/** What one factor did along the grid. */
export interface ContributionCurve {
  readonly name: string;
  readonly contribution: Float64Array;
  readonly standardError: Float64Array;
  /** Holds the truth at one place chosen beforehand. */
  readonly pointwiseHalfWidth: Float64Array;
  /** Holds this factor's truth everywhere at once; it says nothing about several factors at once. */
  readonly simultaneousHalfWidth: Float64Array;
  /** How the band was found: like that of the difference, or each place by itself where the pulls agree exactly in the factor somewhere. */
  readonly method: 'band of the pull scores' | 'each place by itself';
}

/** A split along a grid. */
export interface SplitCurves {
  readonly contributions: readonly ContributionCurve[];
  readonly total: ContributionCurve;
}

/** How a split along a grid is asked for. */
export interface SplitCurveOptions extends SplitOptions {
  /** Set-ups compared with the one baseline; 1 unless given. */
  readonly setUps?: number;
}

/**
 * The split of {@link additiveSplit} at each place of a grid, with intervals that count pulls and not points: the band of the
 * difference, drawn over the pull scores of each factor. At a single place it is {@link additiveSplit} itself.
 *
 * @param points - the same factors and sensors in the same order at every place. Sensors count as known.
 * @throws StatisticsError `too-few-pulls`, `unequal-lengths`, `not-finite`, `not-increasing`.
 */
export function splitCurves(
  grid: Numbers,
  points: readonly SplitPoint[],
  { confidence = usualConfidence, setUps = 1, order }: SplitCurveOptions = {},
): SplitCurves {
  requireGrid('split along a grid', grid);
  requireAlike(grid, points);
  const error = (1 - confidence) / setUps;
  const splitsAt = (chance: number): AdditiveSplit[] =>
    points.map(({ factors, sensors }) => additiveSplit(factors, sensors, { confidence: 1 - chance, order }));
  const splits = splitsAt(error);
  let apart: AdditiveSplit[] | undefined;
  const contrast = contrastBy(order);
  const wholes = points.map(({ factors }) => wholeOf(factors));
  const weights = wholes.map((whole) => splitWeights(whole, contrast));
  const curveOf = (k: number | 'all'): ContributionCurve => {
    const own = (at: readonly AdditiveSplit[]) =>
      at.map((split) => (k === 'all' ? split.total : split.contributions[k]!));
    const parts = own(splits);
    const band = bandOf(k);
    const shape = {
      name: parts[0]!.name,
      contribution: Float64Array.from(parts, (part) => part.contribution),
    };
    if (band !== undefined) {
      const { standardError, pointwiseHalfWidth, simultaneousHalfWidth } = band;
      return { ...shape, standardError, pointwiseHalfWidth, simultaneousHalfWidth, method: 'band of the pull scores' };
    }
    // Each place pays its share of the chance of error (Bonferroni).
    apart ??= splitsAt(error / points.length);
    return {
      ...shape,
      standardError: Float64Array.from(parts, (part) => part.combined.standardUncertainty),
      pointwiseHalfWidth: Float64Array.from(parts, (part) => part.combined.halfWidth),
      simultaneousHalfWidth: Float64Array.from(own(apart), (part) => part.combined.halfWidth),
      method: 'each place by itself',
    };
  };
  const bandOf = (k: number | 'all'): Band | undefined => {
    if (points.length < 2) return undefined;
    const effects: number[][] = [];
    const scores = points.map(({ factors, sensors = [] }, j) => {
      const factor = k === 'all' ? wholes[j]! : factors[k]!;
      const { logChange } = k === 'all' ? splits[j]!.total : splits[j]!.contributions[k]!;
      effects.push(sensors.flatMap((sensor) => sensorEffect(sensor, k, weights[j]!)(logChange)));
      return splitScores(factor, wholes[j]!, logChange, weights[j]!);
    });
    const unsharedSensors = effects[0]!
      .map((_, i) => effects.map((row) => row[i]!))
      .filter((effect) => effect.some((value) => value !== 0));
    const along = (side: 'baseline' | 'candidate'): number[][] =>
      scores[0]![side].map((_, pull) => scores.map((point) => point[side][pull]!));
    const [a, b] = [along('baseline'), along('candidate')];
    const options = { confidence, setUps, unsharedSensors };
    try {
      if (order === undefined) return differenceBand(grid, a, b, options);
      const pulls = inOrder(
        order,
        [...a.keys()],
        [...b.keys()].map((i) => a.length + i),
      ).map((i) => [...a, ...b][i]!);
      return driftBand(grid, order.letters, pulls, {
        ...options,
        ...(order.times === undefined ? {} : { times: order.times }),
      });
    } catch (failure) {
      if (failure instanceof StatisticsError && failure.code === 'no-scatter') return undefined;
      throw failure;
    }
  };
  return {
    contributions: points[0]!.factors.map((_, k) => curveOf(k)),
    total: curveOf('all'),
  };
}

function requireAlike(grid: Numbers, points: readonly SplitPoint[]): void {
  const shape = ({ factors, sensors = [] }: SplitPoint): string =>
    JSON.stringify([factors.map(({ name }) => name), sensors.map(({ name, shared }) => [name, shared])]);
  const statistic = 'split along a grid';
  if (points.length !== grid.length) {
    throw new StatisticsError({
      code: 'unequal-lengths',
      statistic,
      input: 'points',
      need: `be as many as places of the grid (${grid.length})`,
      got: String(points.length),
    });
  }
  const odd = points.findIndex((point) => shape(point) !== shape(points[0]!));
  if (odd < 0) return;
  throw new StatisticsError({
    code: 'unequal-lengths',
    statistic,
    input: `points[${odd}]`,
    need: 'have the factors and sensors of the first point, in its order',
    got: shape(points[odd]!),
  });
}
