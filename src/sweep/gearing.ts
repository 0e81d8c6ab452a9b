import { time, type Quantity } from '../units/index.js';
import { linearModel, StatisticsError, studentTFactor, type LinearModel } from '../statistics/index.js';
import type { Pull } from './pull.js';
import { timeBaseOf } from './time-base.js';

/** How much later road speed was read than engine speed, by the constant ratio of a gear. */
export interface GearedDelay {
  /** Above zero where the road speed in a row is older than its engine speed. */
  readonly delay: Quantity<'time'>;
  readonly halfWidth: Quantity<'time'>;
  readonly pulls: number;
  /** Whether the interval excludes zero: then what stands in one row was not read, or not filtered, alike. */
  readonly isApart: boolean;
}

const FEWEST_ROWS = 5;
/** Engine speed further than this share from the ratio of a gear is in none: a shift, or a slipping clutch. */
const LARGEST_SLIP = 0.015;

/**
 * Whether engine speed and road speed of one row belong to one moment. A gear ties them, so with a delay d engine speed is
 * ratio (v + d dv/dt): with the ratio of each pull free, the delay common to all is found by least squares, and its uncertainty from how
 * the pulls differ (one pull: from its rows).
 *
 * @returns Undefined where no pull has both speeds, times, five rows and a constant ratio.
 */
export function gearedDelay(pulls: readonly Pull[]): GearedDelay | undefined {
  const told = pulls.flatMap((pull) => ownDelay(pull) ?? []);
  if (told.length === 0) return undefined;
  const weight = told.reduce((sum, each) => sum + each.weight, 0);
  const delay = told.reduce((sum, each) => sum + each.weight * each.delay, 0) / weight;
  const [only] = told;
  // Between pulls, the scatter of their own delays is what counts; weights of unequal pulls lose some degrees of freedom.
  const standardError =
    told.length === 1
      ? only!.standardError
      : Math.sqrt(
          (told.reduce((sum, each) => sum + (each.weight * (each.delay - delay)) ** 2, 0) / weight ** 2) *
            (told.length / (told.length - 1)),
        );
  const freedom = told.length === 1 ? only!.freedom : told.length - 1;
  const halfWidth = studentTFactor(0.05, freedom) * standardError;
  return {
    delay: time(delay, 's'),
    halfWidth: time(halfWidth, 's'),
    pulls: told.length,
    isApart: Math.abs(delay) > halfWidth,
  };
}

interface OwnDelay {
  readonly delay: number;
  readonly standardError: number;
  readonly freedom: number;
  /** Inverse variance, but for a factor that all pulls share. */
  readonly weight: number;
}

function ownDelay({ channels }: Pull): OwnDelay | undefined {
  const { engineSpeed, vehicleSpeed } = channels;
  const { seconds } = timeBaseOf(channels);
  if (engineSpeed === undefined || vehicleSpeed === undefined || seconds === undefined) return undefined;
  const [n, v] = [engineSpeed.si, vehicleSpeed.si];
  const rows = Array.from(n.keys()).filter(
    (row) => row > 0 && row < n.length - 1 && !Number.isNaN(n[row]! + v[row - 1]! + v[row]! + v[row + 1]!),
  );
  if (rows.length < FEWEST_ROWS - 2) return undefined;
  const slopes = rows.map((row) => (v[row + 1]! - v[row - 1]!) / (seconds[row + 1]! - seconds[row - 1]!));
  const road = rows.map((row) => v[row]!);
  const model = modelOf(road, slopes);
  if (model === undefined || model.degreesOfFreedom < 1) return undefined;
  const { coefficients, residuals, residualSumOfSquares } = model.fit(rows.map((row) => n[row]!));
  const [ratio, late] = coefficients as [number, number];
  if (!(ratio > 0) || residuals.some((rest, i) => Math.abs(rest) > LARGEST_SLIP * n[rows[i]!]!)) return undefined;
  const variance = residualSumOfSquares / model.degreesOfFreedom;
  return {
    delay: late / ratio,
    standardError: Math.sqrt(variance * model.varianceFactors[1]!) / ratio,
    freedom: model.degreesOfFreedom,
    weight: (ratio * ratio) / model.varianceFactors[1]!,
  };
}

/** Undefined where acceleration is zero, or in proportion to speed: a delay then looks like another ratio. */
function modelOf(road: readonly number[], slopes: readonly number[]): LinearModel | undefined {
  try {
    return linearModel('delay of road speed', [road, slopes], ['ratio', 'delay']);
  } catch (error) {
    if (error instanceof StatisticsError && error.code === 'confounded') return undefined;
    throw error;
  }
}
