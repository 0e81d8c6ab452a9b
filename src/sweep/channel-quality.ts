import { time, type Quantity } from '../units/index.js';
import { quantityOf, NO_NOTES } from '../units/internal.js';
import { cadenceOf, excursions, type Excursion } from '../statistics/signal/index.js';
import type { Pull } from './pull.js';
import type { ChannelRole } from './roles.js';
import type { TimeBase } from './time-base.js';

/** Readings of a channel that jump away from what their neighbours show, and back. */
export interface Outlier {
  readonly role: ChannelRole;
  /** First and last row of it, from 0. */
  readonly fromRow: number;
  readonly toRow: number;
  /** The reading that is furthest off. */
  readonly value: Quantity;
  /** What its neighbours say: their median. */
  readonly expected: Quantity;
  /** Engine speed there, where it was logged. */
  readonly engineSpeed: Quantity<'rotational speed'> | undefined;
  /** Since the first row. */
  readonly start: Quantity<'time'> | undefined;
}

/** How often a channel really has a new reading. */
export interface ReadingRate {
  /** `held`: each reading is repeated until the next; `blank`: the cells between are empty. */
  readonly how: 'held' | 'blank';
  /** Rows from one reading to the next, on average. */
  readonly everyRows: number;
  readonly interval: Quantity<'time'> | undefined;
  /** Longest that a reading stands. */
  readonly longest: Quantity<'time'> | undefined;
}

/** What is wrong with the readings of one channel, and what is only worth knowing. */
export interface ChannelQuality {
  readonly role: ChannelRole;
  /** Rows without a reading. */
  readonly blanks: number;
  /** Most rows in a row without one. */
  readonly longestGap: number;
  readonly outliers: readonly Outlier[];
  /** Undefined where every row may have a reading of its own. */
  readonly readingRate: ReadingRate | undefined;
}

/** How outliers are looked for. */
export interface OutlierOptions {
  /** Longest outlier to find; 1.2 s when left out. */
  readonly longest?: Quantity<'time'> | undefined;
  /** Standard deviations of ordinary readings that an outlier must exceed; 8 when left out. */
  readonly threshold?: number | undefined;
}

const LONGEST_OUTLIER = 1.2;
/** Where there are no times: rows. */
const LONGEST_OUTLIER_ROWS = 10;

/** The rule for outliers in words, for the report. */
export function outlierRule({ longest, threshold = 8 }: OutlierOptions = {}): string {
  const seconds = longest?.si ?? LONGEST_OUTLIER;
  return (
    `An outlier is a stretch of at most ${seconds} s that lies more than ${threshold} standard deviations of the channel's ordinary readings ` +
    `(and five of its larger steps from row to row) from the median of the readings about it, and jumps there and back within a row.`
  );
}

/** The readings of every channel that carries numbers of its own. */
export function channelQualities(pull: Pull, base: TimeBase, options: OutlierOptions): ChannelQuality[] {
  return Object.entries(pull.channels).flatMap(([role, column]) =>
    role === 'time' || role === 'clock' ? [] : [channelQuality(pull, role as ChannelRole, column.si, base, options)],
  );
}

/** @internal The outliers of some channels of a pull, those that it has. */
export function outliersIn(
  pull: Pull,
  base: TimeBase,
  roles: readonly ChannelRole[],
  options: OutlierOptions,
): Outlier[] {
  return roles.flatMap((role) => {
    const column = pull.channels[role];
    return column === undefined ? [] : outliersOf(pull, role, column.si, base, options);
  });
}

function outliersOf(
  pull: Pull,
  role: ChannelRole,
  si: Float64Array,
  base: TimeBase,
  options: OutlierOptions,
): Outlier[] {
  return outlierRows(si, base, options).map(({ from, to, worst, value, expected }) => ({
    role,
    fromRow: from,
    toRow: to,
    value: asChannel(pull, role, value),
    expected: asChannel(pull, role, expected),
    engineSpeed: speedAt(pull, worst),
    start: base.seconds === undefined ? undefined : time(base.seconds[from]!, 's'),
  }));
}

function channelQuality(
  pull: Pull,
  role: ChannelRole,
  si: Float64Array,
  base: TimeBase,
  options: OutlierOptions,
): ChannelQuality {
  const { step } = base;
  const cadence = cadenceOf(si);
  const rows = (each: number): Quantity<'time'> | undefined =>
    step === undefined ? undefined : time(Number((each * step).toPrecision(12)), 's');
  return {
    role,
    blanks: pull.channels[role]!.missing,
    longestGap: longestGapOf(si),
    outliers: outliersOf(pull, role, si, base, options),
    readingRate: cadence && {
      how: cadence.how,
      everyRows: cadence.every,
      interval: rows(cadence.every),
      longest: rows(cadence.longest),
    },
  };
}

/** @internal Where the outliers of a channel lie. */
export function outlierRows(si: Float64Array, { step }: TimeBase, options: OutlierOptions): Excursion[] {
  const seconds = options.longest?.si ?? LONGEST_OUTLIER;
  const longest = step === undefined ? LONGEST_OUTLIER_ROWS : Math.max(1, Math.ceil(seconds / step - 1e-9));
  const { threshold } = options;
  return excursions(si, threshold === undefined ? { longest } : { longest, threshold });
}

function asChannel(pull: Pull, role: ChannelRole, si: number): Quantity {
  const { kind, unit } = pull.channels[role]!;
  return quantityOf(kind, si, unit, undefined, NO_NOTES);
}

function speedAt({ channels }: Pull, row: number): Quantity<'rotational speed'> | undefined {
  const si = channels.engineSpeed?.si[row];
  return si === undefined || Number.isNaN(si) ? undefined : channels.engineSpeed!.at(row);
}

function longestGapOf(si: Float64Array): number {
  let longest = 0;
  let length = 0;
  for (const value of si) {
    length = Number.isNaN(value) ? length + 1 : 0;
    if (length > longest) longest = length;
  }
  return longest;
}
