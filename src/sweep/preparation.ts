import { CalculationError, type Column } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import type { Preparation, PreparationCode, Pull } from './pull.js';
import type { ChannelRole, Channels } from './roles.js';
import { timeBaseOf } from './time-base.js';
import { quoted } from './words-for-people.js';

/** What one step of a preparation gives. */
export interface Prepared {
  readonly channels: Channels;
  readonly done: readonly Preparation[];
}

/** One entry of the record. */
export function record(
  code: PreparationCode,
  role: ChannelRole | undefined,
  readings: number,
  message: string,
  noiseFactor?: number,
): Preparation {
  return { code, role, readings, noiseFactor, message };
}

/** The refusal of an option that does not fit the pull. */
export function unfit(input: string, need: string, got: string, mend = ''): CalculationError {
  return new CalculationError('prepare', [{ code: 'impossible', input, need, got, mend }]);
}

/** Channels with other numbers; times stay. */
export function mapChannels(
  channels: Channels,
  change: (role: ChannelRole, si: Float64Array) => Float64Array,
): Channels {
  return Object.fromEntries(
    Object.entries(channels).map(([role, column]) => {
      if (role === 'time' || role === 'clock') return [role, column];
      const si = change(role as ChannelRole, column.si);
      return [role, si === column.si ? column : withNumbers(column, si)];
    }),
  );
}

/** Channels with other numbers in one of them. */
export function replaceChannel(channels: Channels, role: ChannelRole, numbers: Float64Array): Channels {
  return mapChannels(channels, (each, si) => (each === role ? numbers : si));
}

function withNumbers({ kind, unit, label }: Column, si: Float64Array): Column {
  return columnOf(kind, si, unit, undefined, NO_NOTES, 0, label);
}

/** The times of a pull, for a step that cannot do without. */
export function timesOf(pull: Pull, option: string): { readonly seconds: Float64Array; readonly step: number } {
  const { seconds, step, remarks } = timeBaseOf(pull.channels);
  if (seconds !== undefined && step !== undefined) return { seconds, step };
  throw unfit(option, 'a pull with times', `${quoted(pull.name)}, which has none. ${remarks.join(' ')}`.trim());
}
