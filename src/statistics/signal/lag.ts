import { requireCount, requireNotNegative, requirePositive } from '../checks.js';
import { StatisticsError } from '../errors.js';
import { requireSeries } from './series.js';

/** A time constant as found, with how well it is known. */
export interface FoundLag {
  /** Time constant of a first-order sensor, seconds. */
  readonly lag: number;
  readonly standardError: number;
  readonly degreesOfFreedom: number;
}

/** A time constant from a recorded step. */
export interface StepLag extends FoundLag {
  /** First row taken to follow the step. */
  readonly row: number;
  /** Where the reading ends up, and how far it still was from there at that row. */
  readonly final: number;
  readonly height: number;
  /** Standard deviation of the readings about the curve. */
  readonly scatter: number;
}

const fewestAfterStep = 6;

/**
 * Time constant from a recorded step, such as a probe dipped from warm air into iced water: least-squares exponential through what
 * follows the steepest change. Any part of an exponential is one of the same time constant, so the moment of the step is not needed.
 *
 * The standard error takes the readings as independent about the curve; with a logger much faster than the sensor it is too small.
 *
 * @param times - Seconds, rising.
 * @param from - First row that follows the step; the steepest change when left out.
 * @throws StatisticsError `not-converged` if the record ends before the reading settles, `out-of-range` if the step is lost in noise.
 */
export function lagFromStep(times: Float64Array, values: Float64Array, from?: number): StepLag {
  const statistic = 'lag from a step';
  requireSeries(statistic, times, values, fewestAfterStep);
  const start = from ?? steepestRow(times, values);
  requireCount(statistic, 'from', start, 0);
  const rows = Array.from(times.keys()).filter((row) => row >= start && !Number.isNaN(values[row]!));
  if (rows.length < fewestAfterStep) {
    throw new StatisticsError({
      code: 'too-few-points',
      statistic,
      input: 'values',
      need: `hold at least ${fewestAfterStep} readings after the step`,
      got: String(rows.length),
    });
  }
  const t = Float64Array.from(rows, (row) => times[row]! - times[rows[0]!]!);
  const y = Float64Array.from(rows, (row) => values[row]!);
  const length = t[t.length - 1]!;
  const shortest = length / t.length / 10;
  const lag = leastOf(
    (log) => exponentialFit(t, y, Math.exp(log)).sumOfSquares,
    Math.log(shortest),
    Math.log(2 * length),
  );
  const found = Math.exp(lag);
  if (!(found < length)) {
    throw new StatisticsError({
      code: 'not-converged',
      statistic,
      input: 'values',
      need: 'settle before the record ends',
      got: `a record of ${length} s that still bends at its end`,
      mend: 'Record until the reading stands still.',
    });
  }
  const fit = exponentialFit(t, y, found);
  const degreesOfFreedom = t.length - 3;
  const scatter = Math.sqrt(fit.sumOfSquares / degreesOfFreedom);
  if (!(Math.abs(fit.height) > 5 * scatter)) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input: 'values',
      need: 'change by more than five times their scatter',
      got: `a step of ${Math.abs(fit.height)} in a scatter of ${scatter}`,
      mend: 'Use a larger step.',
    });
  }
  // The slope against the time constant, with level and height fitted out, is all that tells of it.
  const slope = t.map((time) => (fit.height * time * Math.exp(-time / found)) / (found * found));
  const told = exponentialFit(t, slope, found).sumOfSquares;
  return {
    lag: found,
    standardError: scatter / Math.sqrt(told),
    degreesOfFreedom,
    row: rows[0]!,
    final: fit.level,
    height: fit.height,
    scatter,
  };
}

function steepestRow(times: Float64Array, values: Float64Array): number {
  let best = 0;
  let steepest = -1;
  let before = -1;
  for (let row = 0; row < values.length; row++) {
    if (Number.isNaN(values[row]!)) continue;
    if (before >= 0) {
      const slope = Math.abs((values[row]! - values[before]!) / (times[row]! - times[before]!));
      if (slope > steepest) [steepest, best] = [slope, row];
    }
    before = row;
  }
  return best;
}

interface ExponentialFit {
  readonly level: number;
  readonly height: number;
  readonly sumOfSquares: number;
}

/** Least-squares level and height of level + height exp(-t/lag). */
function exponentialFit(t: Float64Array, y: Float64Array, lag: number): ExponentialFit {
  const count = t.length;
  const e = t.map((time) => Math.exp(-time / lag));
  const meanE = e.reduce((sum, value) => sum + value, 0) / count;
  const meanY = y.reduce((sum, value) => sum + value, 0) / count;
  let see = 0;
  let sey = 0;
  for (let i = 0; i < count; i++) {
    see += (e[i]! - meanE) ** 2;
    sey += (e[i]! - meanE) * (y[i]! - meanY);
  }
  const height = see > 0 ? sey / see : 0;
  let sumOfSquares = 0;
  for (let i = 0; i < count; i++) sumOfSquares += (y[i]! - meanY - height * (e[i]! - meanE)) ** 2;
  return { level: meanY - height * meanE, height, sumOfSquares };
}

/** Where a function is least: the best of a coarse row of points, then golden sections about it. */
function leastOf(f: (x: number) => number, from: number, to: number): number {
  const parts = 60;
  const at = (place: number): number => from + ((to - from) * place) / parts;
  let best = 0;
  let least = Infinity;
  for (let place = 0; place <= parts; place++) {
    const value = f(at(place));
    if (value < least) [least, best] = [value, place];
  }
  const golden = (Math.sqrt(5) - 1) / 2;
  let a = at(Math.max(0, best - 1));
  let b = at(Math.min(parts, best + 1));
  let c = b - golden * (b - a);
  let d = a + golden * (b - a);
  let [fc, fd] = [f(c), f(d)];
  while (b - a > 1e-9 * Math.max(1, Math.abs(a), Math.abs(b))) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
}

/**
 * Time constant from how far apart an up and a down ramp show the same thing: each shows it late by lag times rate.
 *
 * @param shift - Distance of the two curves along engine speed, the up ramp's further up.
 * @param upRate - Speed gained a second on the way up, in the same unit.
 * @param downRate - Speed lost a second on the way down; as on the way up when left out.
 */
export function lagFromShift(shift: number, upRate: number, downRate: number = upRate): number {
  requireNotNegative('lag from ramps', 'shift', shift);
  requirePositive('lag from ramps', 'upRate', upRate);
  requirePositive('lag from ramps', 'downRate', downRate);
  return shift / (upRate + downRate);
}

/** One ramp's readings against engine speed. */
export interface RampCurve {
  /** Rising. */
  readonly speeds: Float64Array;
  readonly values: Float64Array;
  /** Speed gained or lost a second, above zero. */
  readonly rate: number;
}

/**
 * Time constant from a whole up and a whole down ramp: the one that, taken off both, lays them on one another best.
 *
 * Anything else that differs between the two, such as heat that has soaked in, counts as lag: use fast ramps and a rest between.
 *
 * @param longest - Longest time constant to look for, seconds; 5 when left out.
 * @throws StatisticsError `too-few-points` if the ramps hardly overlap, `out-of-range` if they lie the wrong way round for any lag.
 */
export function lagFromRamps(up: RampCurve, down: RampCurve, longest = 5): FoundLag {
  const statistic = 'lag from ramps';
  requirePositive(statistic, 'up.rate', up.rate);
  requirePositive(statistic, 'down.rate', down.rate);
  requirePositive(statistic, 'longest', longest);
  requireSeries(statistic, up.speeds, up.values, fewestAfterStep);
  requireSeries(statistic, down.speeds, down.values, fewestAfterStep);
  const from = Math.max(up.speeds[0]!, down.speeds[0]!);
  const to = Math.min(up.speeds[up.speeds.length - 1]!, down.speeds[down.speeds.length - 1]!);
  const fastest = Math.max(up.rate, down.rate);
  const most = Math.min(longest, (0.25 * (to - from)) / fastest);
  if (!(most > 0)) {
    throw new StatisticsError({
      code: 'too-few-points',
      statistic,
      input: 'up and down',
      need: 'share a range of engine speed',
      got: `none from ${from} to ${to}`,
    });
  }
  // Compared over one range whatever the lag, or the lag that leaves least to compare would fit best.
  const [low, high] = [from + most * fastest, to - most * fastest];
  const inside = ({ speeds }: RampCurve): number => speeds.filter((speed) => speed >= low && speed <= high).length;
  const points = Math.max(fewestAfterStep, Math.min(inside(up), inside(down), 400));
  const grid = Float64Array.from({ length: points }, (_, i) => low + ((high - low) * i) / (points - 1));
  const [upAt, downAt] = [interpolator(up), interpolator(down)];
  const apart = (lag: number): Float64Array =>
    grid.map((speed) => upAt(speed + lag * up.rate) - downAt(speed - lag * down.rate));
  const squares = (values: Float64Array): number => values.reduce((sum, value) => sum + value * value, 0);
  const lag = leastOf((each) => squares(apart(each)), -most, most);
  if (!(lag > 0) || lag > 0.98 * most) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input: 'up and down',
      need: `differ as a lag of up to ${most} s would make them`,
      got: lag > 0 ? 'a longer one' : 'the up ramp showing things earlier than the down ramp',
      mend: 'Look for heat that soaked in between the ramps, or for sides that were swapped.',
    });
  }
  const margin = 1e-3 * most;
  const later = apart(lag + margin);
  const told = squares(apart(lag - margin).map((value, i) => (later[i]! - value) / (2 * margin)));
  const degreesOfFreedom = points - 1;
  // Straight lines between rows scatter by two thirds of the rows' variance, while their sums lose nothing.
  const variance = (1.5 * squares(apart(lag))) / degreesOfFreedom;
  return { lag, standardError: Math.sqrt(variance / told), degreesOfFreedom };
}

/** Straight lines between the readings of a curve. */
function interpolator({ speeds, values }: RampCurve): (speed: number) => number {
  const rows = Array.from(speeds.keys()).filter((row) => !Number.isNaN(values[row]!));
  const x = rows.map((row) => speeds[row]!);
  const y = rows.map((row) => values[row]!);
  return (speed) => {
    let [low, high] = [0, x.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (x[middle]! <= speed) low = middle;
      else high = middle;
    }
    return y[low]! + ((y[high]! - y[low]!) * (speed - x[low]!)) / (x[high]! - x[low]!);
  };
}
