import type { Quantity } from '../units/index.js';
import type { ChannelQuality, Outlier } from './channel-quality.js';
import type { GearedDelay } from './gearing.js';
import type { ChannelOscillation } from './pressure-oscillation.js';
import type { RampShape } from './ramp-shape.js';
import type { ChannelRole } from './roles.js';
import type { Settled } from './settled.js';
import type { TimeBreak } from './time-base.js';

/** Channels that are not read anew in every row. */
export interface Polled {
  readonly roles: readonly ChannelRole[];
  /** Most that readings of one row may lie apart; undefined without times. */
  readonly apart: Quantity<'time'> | undefined;
}

/** What a pull's log is worth, before anything is made of it. */
export interface PullQuality {
  /** Name of the pull. */
  readonly pull: string;
  readonly setup: string | undefined;
  /** What rows follow one another by. */
  readonly base: 'time' | 'clock' | 'engine speed';
  /** From row to row, the middle value. */
  readonly step: Quantity<'time'> | undefined;
  readonly duration: Quantity<'time'> | undefined;
  /** Places where rows are missing. */
  readonly breaks: readonly TimeBreak[];
  readonly ramp: RampShape | undefined;
  readonly channels: readonly ChannelQuality[];
  readonly outliers: readonly Outlier[];
  /** The rule by which outliers were told. */
  readonly outlierRule: string;
  readonly polled: Polled | undefined;
  /** How much later road speed was read than engine speed, where both were logged in one gear. */
  readonly gearedDelay: GearedDelay | undefined;
  readonly settled: Settled;
  readonly oscillation: ChannelOscillation | undefined;
  /** What a reader should know, worst first. */
  readonly remarks: readonly string[];
  /** All of it in words. */
  toString(): string;
}
