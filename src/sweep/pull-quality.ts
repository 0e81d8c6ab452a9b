import { time, type Quantity } from '../units/index.js';
import { channelQualities, outlierRule, type ChannelQuality, type OutlierOptions } from './channel-quality.js';
import { gearedDelay } from './gearing.js';
import { channelOscillation, type ChannelOscillation } from './pressure-oscillation.js';
import type { Pull } from './pull.js';
import type { Polled, PullQuality } from './quality.js';
import { describeQuality, qualityRemarks } from './pull-quality-text.js';
import { rampShapeOf } from './ramp-shape.js';
import type { ChannelRole } from './roles.js';
import { settledOf } from './settled.js';
import { timeBaseOf, type TimeBase } from './time-base.js';

/** What is looked for in a pull. */
export interface PullQualityOptions {
  readonly outliers?: OutlierOptions | undefined;
  /** Channels that may show where the pull has settled, the first that it has; pressure first when left out. */
  readonly settledBy?: readonly ChannelRole[] | undefined;
  /** Channel whose oscillation is measured; boost, else manifold pressure, when left out. */
  readonly oscillationOf?: ChannelRole | undefined;
}

const INSPECT = Symbol.for('nodejs.util.inspect.custom');

type Parts = Omit<PullQuality, 'toString' | 'remarks'>;

class PullQualityValue implements PullQuality {
  readonly pull;
  readonly setup;
  readonly base;
  readonly step;
  readonly duration;
  readonly breaks;
  readonly ramp;
  readonly channels;
  readonly outliers;
  readonly outlierRule;
  readonly polled;
  readonly gearedDelay;
  readonly settled;
  readonly oscillation;
  readonly remarks;

  constructor(parts: Parts, baseRemarks: readonly string[]) {
    this.pull = parts.pull;
    this.setup = parts.setup;
    this.base = parts.base;
    this.step = parts.step;
    this.duration = parts.duration;
    this.breaks = parts.breaks;
    this.ramp = parts.ramp;
    this.channels = parts.channels;
    this.outliers = parts.outliers;
    this.outlierRule = parts.outlierRule;
    this.polled = parts.polled;
    this.gearedDelay = parts.gearedDelay;
    this.settled = parts.settled;
    this.oscillation = parts.oscillation;
    this.remarks = [...qualityRemarks(parts), ...baseRemarks];
  }

  toString(): string {
    return describeQuality(this);
  }

  /** @internal */
  [INSPECT](): string {
    return this.toString();
  }
}

/**
 * What a pull's log is worth: how its rows follow one another, how engine speed runs, gaps, outliers and repeated readings of each
 * channel, where the start of the pull is over and why, and how far boost oscillates. Nothing is changed; see {@link prepare}.
 *
 * @throws CalculationError if an option is impossible.
 * @example
 * const quality = pullQuality(pull);
 * quality.oscillation?.amplitude.in('psi')
 */
export function pullQuality(pull: Pull, options: PullQualityOptions = {}): PullQuality {
  const base = timeBaseOf(pull.channels);
  const { step, seconds } = base;
  const ramp = pull.channels.engineSpeed && rampShapeOf(pull.channels.engineSpeed.si, base);
  const channels = channelQualities(pull, base, options.outliers ?? {});
  const settled = settledOf(pull, base, options.settledBy);
  const oscillating = options.oscillationOf ?? (pull.channels.boost ? 'boost' : 'manifoldPressure');
  const parts: Parts = {
    pull: pull.name,
    setup: pull.setup,
    base: base.base,
    step: step === undefined ? undefined : inSeconds(step),
    duration: seconds === undefined ? undefined : inSeconds(seconds[seconds.length - 1]!),
    breaks: base.breaks,
    ramp,
    channels,
    outliers: channels.flatMap(({ outliers }) => outliers),
    outlierRule: outlierRule(options.outliers),
    polled: polledOf(channels, step),
    gearedDelay: gearedDelay([pull]),
    settled,
    oscillation: channelOscillation(pull, oscillating, base, ramp, settled.fromRow ?? 0),
  };
  return new PullQualityValue(parts, base.remarks);
}

/** @internal Where a pull has settled and how a channel oscillates from there on: {@link pullQuality} without what the other channels cost. */
export function settledOscillation(
  pull: Pull,
  base: TimeBase,
  role: ChannelRole,
): { readonly fromRow: number; readonly oscillation: ChannelOscillation | undefined } {
  const fromRow = settledOf(pull, base).fromRow ?? 0;
  // The ramp tells cycles in a thousand rpm, which a ripple has no use for.
  return { fromRow, oscillation: channelOscillation(pull, role, base, undefined, fromRow) };
}

/** Times are shown without the rounding of sums. */
const inSeconds = (value: number): Quantity<'time'> => time(Number(value.toPrecision(12)), 's');

function polledOf(channels: readonly ChannelQuality[], step: number | undefined): Polled | undefined {
  const polled = channels.filter(({ readingRate }) => readingRate !== undefined);
  if (polled.length === 0) return undefined;
  // A repeated reading is oldest in the row before the next one.
  const oldest = polled.map(({ readingRate }) => readingRate!.longest?.si ?? 0);
  return {
    roles: polled.map(({ role }) => role),
    apart: step === undefined ? undefined : inSeconds(Math.max(...oldest) - step),
  };
}
