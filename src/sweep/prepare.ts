import { CalculationError, type Problem, type Quantity } from '../units/index.js';
import { describe } from '../units/internal.js';
import type { OutlierOptions } from './channel-quality.js';
import { withoutOutliers, withoutRepeats } from './clean-readings.js';
import { inertiaAdded, type InertiaOptions } from './inertia.js';
import { takeRowsOf, withChannels } from './keep-rows.js';
import { record, replaceChannel, timesOf, unfit, type Prepared } from './preparation.js';
import type { Pull } from './pull.js';
import { isRole, roleWords, type ChannelRole } from './roles.js';
import { lagTaken, type LagOptions } from './sensor-lag.js';
import { rowAtSecond } from './time-base.js';
import { counted, figure, quoted } from './words-for-people.js';

/** What is to be done to a pull before it is compared. Give the same to every pull of both sides. */
export interface PrepareOptions {
  /** `missing`: outliers are taken out, and counted; `report` or left out: they stay. */
  readonly outliers?: 'report' | 'missing' | undefined;
  /** How outliers are told. */
  readonly outlierOptions?: OutlierOptions | undefined;
  /** `own times`: repeats of a reading are taken out, so that only real readings count, each in the row in which it came. */
  readonly heldReadings?: 'as logged' | 'own times' | undefined;
  /** Channels that show things late by a fixed time, as a lambda sensor far down the exhaust does. */
  readonly delay?: { readonly [R in ChannelRole]?: Quantity<'time'> } | undefined;
  /** Channels whose sensor lags as one of first order does. The same sensor and ramp on both sides need none: the lag cancels. */
  readonly lag?: { readonly [R in ChannelRole]?: LagOptions } | undefined;
  /** Adds the torque that speeds up the masses; leave it out where the dynamometer has done so. */
  readonly inertia?: InertiaOptions | undefined;
  /** Start of the settled part: time since the first row, or the engine speed first reached. */
  readonly settledFrom?: Quantity<'time'> | Quantity<'rotational speed'> | undefined;
}

const OPTION_NAMES = ['outliers', 'outlierOptions', 'heldReadings', 'delay', 'lag', 'inertia', 'settledFrom'];

/**
 * A pull made ready to be compared: outliers and repeated readings taken out, delays and lags of sensors undone, torque corrected for
 * the masses that a sweep speeds up, the start of the pull cut off. Only what is asked for is done, in this order, and the new pull keeps
 * a record of it in its `preparations`.
 *
 * @returns A new pull; the one given is not changed.
 * @throws CalculationError if the pull has not what a step needs, a channel or times, or an option is not known.
 * @example
 * prepare(pull, { outliers: 'missing', settledFrom: time(1.8, 's') })
 */
export function prepare(pull: Pull, options: PrepareOptions): Pull {
  checkOptions(pull, options);
  const { outliers, heldReadings, delay = {}, lag = {}, inertia, settledFrom } = options;
  const steps: readonly ((pull: Pull) => Prepared)[] = [
    ...(outliers === 'missing' ? [(each: Pull) => withoutOutliers(each, options.outlierOptions ?? {})] : []),
    ...(heldReadings === 'own times' ? [withoutRepeats] : []),
    ...Object.entries(delay).map(
      ([role, by]) =>
        (each: Pull) =>
          broughtForward(each, role as ChannelRole, by),
    ),
    ...Object.entries(lag).map(
      ([role, own]) =>
        (each: Pull) =>
          lagTaken(each, role as ChannelRole, own),
    ),
    ...(inertia === undefined ? [] : [(each: Pull) => inertiaAdded(each, inertia)]),
  ];
  const prepared = steps.reduce((each, step) => {
    const { channels, done } = step(each);
    return withChannels(each, channels, done);
  }, pull);
  return settledFrom === undefined ? prepared : settledPart(prepared, settledFrom);
}

function checkOptions(pull: Pull, options: PrepareOptions): void {
  const problems: Problem[] = Object.keys(options).flatMap((name): Problem[] => {
    if (OPTION_NAMES.includes(name)) return [];
    const need = `one of ${OPTION_NAMES.join(', ')}`;
    return [{ code: 'unknown', input: name, need, got: quoted(name), mend: 'Is the name misspelt?' }];
  });
  for (const option of ['delay', 'lag'] as const) {
    for (const role of Object.keys(options[option] ?? {})) {
      if (isRole(role) && role !== 'pull' && pull.channels[role] !== undefined) continue;
      const need = `a channel of the pull: ${Object.keys(pull.channels).join(', ')}`;
      problems.push({ code: 'missing', input: `${option}.${role}`, need, got: quoted(role), mend: '' });
    }
  }
  if (problems.length > 0) throw new CalculationError('prepare', problems);
}

/** A channel brought forward by the time it comes late; its last rows have no reading then. */
function broughtForward(pull: Pull, role: ChannelRole, by: Quantity<'time'>): Prepared {
  if (by?.kind !== 'time') throw unfit(`delay.${role}`, 'a time', describe(by));
  const { seconds } = timesOf(pull, 'delay');
  const { si } = pull.channels[role]!;
  const rows = Array.from(si.keys()).filter((row) => !Number.isNaN(si[row]!));
  let place = 0;
  const moved = seconds.map((second) => {
    const wanted = second + by.si;
    while (place < rows.length - 2 && seconds[rows[place + 1]!]! <= wanted) place++;
    const [low, high] = [rows[place], rows[place + 1]];
    if (low === undefined || high === undefined) return NaN;
    if (wanted < seconds[low]! - 1e-9 || wanted > seconds[high]! + 1e-9) return NaN;
    return si[low]! + ((si[high]! - si[low]!) * (wanted - seconds[low]!)) / (seconds[high]! - seconds[low]!);
  });
  const message = `The ${roleWords(role)} brought forward by ${figure(by.si)} s.`;
  return {
    channels: replaceChannel(pull.channels, role, moved),
    done: [record('delay', role, rows.length, message)],
  };
}

function settledPart(pull: Pull, from: Quantity<'time'> | Quantity<'rotational speed'>): Pull {
  const first = firstRow(pull, from);
  const rows = Array.from({ length: pull.rows - first }, (_, row) => first + row);
  if (rows.length === 0) throw unfit('settledFrom', `within ${quoted(pull.name)}`, describe(from));
  const message = `The first ${counted(first, 'row')} cut off: the pull counts as settled from ${String(from)}.`;
  return takeRowsOf(pull, rows, record('settled part', undefined, first, message));
}

function firstRow(pull: Pull, from: Quantity<'time'> | Quantity<'rotational speed'>): number {
  if (from?.kind === 'time') return rowAtSecond(timesOf(pull, 'settledFrom').seconds, from.si);
  if (from?.kind !== 'rotational speed') {
    throw unfit('settledFrom', 'a time since the first row, or an engine speed', describe(from));
  }
  const speeds = (pull.channels.engineSpeed?.si ?? new Float64Array(0)).map((speed) => speed - from.si);
  const start = speeds.find((above) => !Number.isNaN(above)) ?? NaN;
  const end = speeds.findLast((above) => !Number.isNaN(above)) ?? NaN;
  const isDown = start > 0 && end < 0;
  const row = speeds.findIndex((above) => (isDown ? above <= 0 : above >= 0));
  return row < 0 ? pull.rows : row;
}
