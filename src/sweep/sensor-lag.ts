import { differenceKind, rotationalSpeed, time, type Quantity } from '../units/index.js';
import { describe, differenceUnit, NO_NOTES, quantityOf } from '../units/internal.js';
import {
  bestLagWindow,
  compensateLag,
  lagFromRamps,
  lagFromStep,
  medianOf,
  sampleNoise,
  thirdDerivative,
  type RampCurve,
} from '../statistics/signal/index.js';
import { evenSignal } from './even-rows.js';
import { record, replaceChannel, timesOf, unfit, type Prepared } from './preparation.js';
import type { Pull } from './pull.js';
import { rampShapeOf } from './ramp-shape.js';
import { rampOf } from './ramp.js';
import { roleWords, type ChannelRole } from './roles.js';
import { timeBaseOf } from './time-base.js';
import { figure, inOwnUnit, quoted } from './words-for-people.js';

/** A sensor of first order, and how its lag is taken off. */
export interface LagOptions {
  readonly timeConstant: Quantity<'time'>;
  /** Whole width over which quadratics are laid: the same for every pull of both sides. See {@link lagWindow}. */
  readonly window: Quantity<'time'>;
}

/** A time constant as found in a log. */
export interface SensorLag {
  readonly role: ChannelRole;
  readonly timeConstant: Quantity<'time'>;
  readonly standardUncertainty: Quantity<'time'>;
  readonly degreesOfFreedom: number;
}

/**
 * Time constant of a sensor from a recorded step: the probe dipped from warm air into iced water, or a hose pulled off. In the air of
 * an intake a probe is several times slower than in water: step it in moving air.
 *
 * @param role The channel that shows the step.
 * @throws CalculationError if the pull lacks the channel, or times.
 * @throws StatisticsError if the reading has not settled by the end, or the step is lost in noise.
 */
export function lagOfStep(pull: Pull, role: ChannelRole): SensorLag {
  const { seconds } = timesOf(pull, 'lagOfStep');
  return sensorLag(role, lagFromStep(seconds, channelOf(pull, role)));
}

/**
 * Time constant of a sensor from an up and a down ramp: each shows everything late, so the two curves lie apart along engine speed.
 * Whatever else differs between the ramps, such as heat that has soaked in, counts as lag. See {@link splitRamps}.
 *
 * @throws CalculationError if a pull lacks the channel, or times, or goes the wrong way.
 * @throws StatisticsError if the curves hardly overlap, or lie the wrong way round for any lag.
 */
export function lagOfRamps(up: Pull, down: Pull, role: ChannelRole): SensorLag {
  return sensorLag(role, lagFromRamps(rampCurve(up, role, 'up'), rampCurve(down, role, 'down')));
}

function sensorLag(
  role: ChannelRole,
  { lag, standardError, degreesOfFreedom }: { lag: number; standardError: number; degreesOfFreedom: number },
): SensorLag {
  return { role, timeConstant: time(lag, 's'), standardUncertainty: time(standardError, 's'), degreesOfFreedom };
}

function rampCurve(pull: Pull, role: ChannelRole, direction: 'up' | 'down'): RampCurve {
  const values = channelOf(pull, role);
  const speeds = channelOf(pull, 'engineSpeed');
  const shape = rampShapeOf(speeds, timeBaseOf(pull.channels));
  timesOf(pull, 'lagOfRamps');
  if (shape?.direction !== direction || shape.rate === undefined || shape.rate.si === 0) {
    throw unfit(
      direction,
      `a pull that goes ${direction}`,
      `${quoted(pull.name)}, which goes ${shape?.direction ?? 'nowhere'}`,
    );
  }
  // Rows of one speed become one: their mean.
  const [x, y]: [number[], number[]] = [[], []];
  let count = 0;
  for (const row of rampOf(speeds, direction).rows) {
    if (Number.isNaN(values[row]!)) continue;
    if (x.length > 0 && speeds[row] === x[x.length - 1]) {
      count++;
      y[y.length - 1]! += (values[row]! - y[y.length - 1]!) / count;
      continue;
    }
    x.push(speeds[row]!);
    y.push(values[row]!);
    count = 1;
  }
  return { speeds: Float64Array.from(x), values: Float64Array.from(y), rate: Math.abs(shape.rate.si) };
}

function channelOf(pull: Pull, role: ChannelRole): Float64Array {
  const column = pull.channels[role];
  if (column !== undefined) return column.si;
  throw unfit('pull', `a pull with ${roleWords(role)}`, quoted(pull.name));
}

/** The window that takes a lag off best, and what that costs. */
export interface LagWindowChoice {
  readonly window: Quantity<'time'>;
  /** The same along engine speed, where the pulls are ramps. */
  readonly bandwidth: Quantity<'rotational speed'> | undefined;
  /** Standard deviation of a compensated reading over that of one reading. */
  readonly noiseFactor: number;
  /** Standard deviation of a compensated reading. */
  readonly noise: Quantity;
  /** What is left of the signal's bends, root mean square. */
  readonly bias: Quantity;
}

/** Cubics that tell how a channel bends are laid over this many seconds on either side. */
const BEND_WINDOW = 1;
const WIDEST = 5;

/**
 * The window that takes the lag of a channel off with the least noise and bias together, for all pulls of both sides alike: noise from
 * the readings of each, bends from the mean of all.
 *
 * @throws CalculationError if no pull has the channel with times and without long gaps.
 */
export function lagWindow(pulls: readonly Pull[], role: ChannelRole, timeConstant: Quantity<'time'>): LagWindowChoice {
  const lag = secondsAbove(timeConstant, 'timeConstant');
  const signals = pulls.flatMap((pull) => {
    const base = timeBaseOf(pull.channels);
    const column = pull.channels[role];
    const signal = column && evenSignal(column.si, base, 0, BEND_WINDOW / 2);
    return signal === undefined ? [] : [{ pull, ...signal, own: column!.si }];
  });
  const step = Math.max(...signals.map((signal) => signal.step));
  const half = Math.max(3, Math.round(BEND_WINDOW / step));
  const count = Math.min(...signals.map((signal) => Math.floor((signal.values.length - 1) * (signal.step / step)) + 1));
  if (signals.length === 0 || count < 2 * half + 1) {
    throw unfit(
      'pulls',
      `pulls of more than 2 s with times and ${roleWords(role)}`,
      `${signals.length} of ${pulls.length}`,
    );
  }
  const mean = Float64Array.from({ length: count }, (_, at) => {
    const sum = signals.reduce((total, signal) => total + signal.values[Math.round((at * step) / signal.step)]!, 0);
    return sum / signals.length;
  });
  const noise = medianOf(signals.map(({ own }) => sampleNoise(own)))!;
  const most = Math.max(1, Math.round(WIDEST / step / 2));
  const found = bestLagWindow({ lag, step, noise, thirdDerivative: thirdDerivative(mean, step, half), most });
  const [{ pull }] = signals as [(typeof signals)[number]];
  const { kind, unit } = pull.channels[role]!;
  const inUnit = (si: number): Quantity =>
    quantityOf(differenceKind(kind), si, differenceUnit({ kind, unit }), undefined, NO_NOTES);
  const width = (2 * found.halfWindow + 1) * step;
  const rate = rampShapeOf(channelOf(pull, 'engineSpeed'), timeBaseOf(pull.channels))?.rate;
  return {
    window: time(width, 's'),
    bandwidth: rate && rotationalSpeed(Math.abs(rate.si) * 60 * width, 'rpm'),
    noiseFactor: found.noiseFactor,
    noise: inUnit(found.standardDeviation),
    bias: inUnit(found.bias),
  };
}

function secondsAbove(value: Quantity<'time'>, input: string): number {
  if (value?.kind === 'time' && value.si > 0) return value.si;
  throw unfit(input, 'a time above zero', describe(value));
}

/** @internal A channel with the lag of its sensor taken off. */
export function lagTaken(pull: Pull, role: ChannelRole, options: LagOptions): Prepared {
  const lag = secondsAbove(options.timeConstant, `lag.${role}.timeConstant`);
  const width = secondsAbove(options.window, `lag.${role}.window`);
  const { seconds, step } = timesOf(pull, 'lag');
  const { si, kind, unit } = pull.channels[role]!;
  const halfWindow = Math.round((width / step - 1) / 2);
  if (halfWindow < 1) {
    throw unfit(`lag.${role}.window`, `at least three rows, ${figure(3 * step)} s`, describe(options.window));
  }
  const { values, noiseFactors } = compensateLag(seconds, si, { lag, halfWindow });
  const noiseFactor = medianOf(noiseFactors);
  const readings = values.reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : 1), 0);
  if (noiseFactor === undefined) {
    throw unfit(`lag.${role}.window`, 'no wider than the stretches without a gap', describe(options.window));
  }
  const noise = quantityOf(
    differenceKind(kind),
    noiseFactor * sampleNoise(si),
    differenceUnit({ kind, unit }),
    undefined,
    NO_NOTES,
  );
  const message =
    `A lag of ${figure(lag)} s taken off the ${roleWords(role)}, by quadratics over ${figure((2 * halfWindow + 1) * step)} s: ` +
    `the noise of a reading becomes ${figure(Number(noiseFactor.toPrecision(3)))} times what it was, ${inOwnUnit(noise, 3)}; the first and last ${halfWindow} rows have no value.`;
  return {
    channels: replaceChannel(pull.channels, role, values),
    done: [record('sensor lag', role, readings, message, noiseFactor)],
  };
}
