import type { Column, Quantity } from '../units/index.js';
import type { ChannelRole, Channels } from '../sweep/index.js';
import type { ResolvedOptions } from './options.js';
import type { Refusal } from './result.js';
import { meanSi } from './factors.js';
import { decimals, shown, speedRange } from './words.js';
import { pressureDifference, rotationalSpeed, temperatureDifference } from '../units/index.js';

/** A pull with its channels on the grid, as the checks read it. */
export interface CheckedPull {
  /** `set-up/file`. */
  readonly name: string;
  readonly engineSpeed: Column<'rotational speed'>;
  readonly channels: Channels;
  readonly curve: Column;
}

/** Share of the range over which the mixture must be off before a pull is refused for it: a single spike is not the mixture. */
const MIXTURE_SHARE = 0.1;

/**
 * The refusals of every pull of one set-up. Each pull is held against the middle pull of its set-up at each speed: one odd pull then
 * cannot move what it is measured by.
 */
export function refusalsOf(pulls: readonly CheckedPull[], options: ResolvedOptions): Refusal[][] {
  const middle = {
    lambda: middleCurve(pulls, 'lambda'),
    boost: middleMean(pulls, boostOf),
    start: middleMean(pulls, (pull) => firstSi(pull.channels.chargeTemperature)),
    oil: middleMean(pulls, (pull) => firstSi(pull.channels.oilTemperature)),
    coolant: middleMean(pulls, (pull) => firstSi(pull.channels.coolantTemperature)),
  };
  return pulls.map((pull) => {
    const byHand = options.leaveOut[pull.name];
    const because = options.overrule[pull.name];
    const overruled = because !== undefined;
    const found = [
      missingData(pull, options),
      mixture(pull, middle.lambda, options),
      boost(pull, middle.boost, options),
      startTemperature(pull, 'chargeTemperature', 'charge temperature', middle.start, options.limits.startTemperature),
      startTemperature(pull, 'oilTemperature', 'oil temperature', middle.oil, options.limits.engineTemperature),
      startTemperature(
        pull,
        'coolantTemperature',
        'coolant temperature',
        middle.coolant,
        options.limits.engineTemperature,
      ),
    ];
    const refusals = found.flatMap((refusal) => (refusal ? [{ ...refusal, overruled, because }] : []));
    return byHand === undefined
      ? refusals
      : [
          { code: 'left out by hand', reason: `Left out by hand: ${byHand}`, overruled: false, because: undefined },
          ...refusals,
        ];
  });
}

type Found = Omit<Refusal, 'overruled' | 'because'> | undefined;

function missingData(pull: CheckedPull, { limits }: ResolvedOptions): Found {
  const share = pull.curve.missing / pull.curve.length;
  if (share <= limits.missing) return undefined;
  const covered = pull.engineSpeed.si.filter((_, row) => !Number.isNaN(pull.curve.si[row]));
  const where =
    covered.length === 0
      ? 'nowhere in the range'
      : `only from ${speedRange(rotationalSpeed(Math.min(...covered), '1/s'), rotationalSpeed(Math.max(...covered), '1/s'))}`;
  return {
    code: 'missing data',
    reason: `It has values ${where}: ${decimals(share * 100, 0)} % of the range is missing, ${decimals(limits.missing * 100, 0)} % is allowed.`,
  };
}

function mixture(pull: CheckedPull, middle: Float64Array | undefined, { limits }: ResolvedOptions): Found {
  const own = pull.channels.lambda?.si;
  if (!own || !middle) return undefined;
  let rows = 0;
  let off = 0;
  let worst = 0;
  let from = -1;
  let to = -1;
  own.forEach((lambda, row) => {
    const difference = lambda - middle[row]!;
    if (Number.isNaN(difference)) return;
    rows++;
    if (Math.abs(difference) <= limits.mixture) return;
    off++;
    if (from < 0) from = row;
    to = row;
    if (Math.abs(difference) > Math.abs(worst)) worst = difference;
  });
  if (rows === 0 || off / rows < MIXTURE_SHARE) return undefined;
  const at = (row: number): Quantity<'rotational speed'> => rotationalSpeed(pull.engineSpeed.si[row]!, '1/s');
  const lambdaAt = decimals(own[own.length - 1] ?? NaN, 2);
  const reached = Number.isFinite(own[to]!) ? decimals(own[to]!, 2) : lambdaAt;
  return {
    code: 'mixture',
    reason: `It ran ${worst > 0 ? 'lean' : 'rich'}: lambda differs from the set-up's middle pull by up to ${decimals(Math.abs(worst), 2)} between ${speedRange(at(from), at(to)).replace(' to ', ' and ')} (lambda ${reached} at the end of that), ${decimals(limits.mixture, 2)} is allowed.`,
  };
}

function boost(pull: CheckedPull, middle: number | undefined, { limits, units }: ResolvedOptions): Found {
  const own = boostOf(pull);
  if (own === undefined || middle === undefined || Math.abs(own - middle) <= limits.boost.si) return undefined;
  const by = shown(pressureDifference(Math.abs(own - middle) / 1000, 'kPa'), units);
  return {
    code: 'boost',
    reason: `Its mean boost is ${by} ${own > middle ? 'above' : 'below'} the set-up's middle pull, ${shown(limits.boost, units)} is allowed.`,
  };
}

function startTemperature(
  pull: CheckedPull,
  role: ChannelRole,
  words: string,
  middle: number | undefined,
  limit: Quantity<'temperature difference'>,
): Found {
  const own = firstSi(pull.channels[role]);
  if (own === undefined || middle === undefined || Math.abs(own - middle) <= limit.si) return undefined;
  const by = shown(temperatureDifference(Math.abs(own - middle), 'K'));
  return {
    code: `${words} at the start`,
    reason: `Its ${words} at the start of the range is ${by} ${own > middle ? 'above' : 'below'} the set-up's middle pull, ${shown(limit)} is allowed.`,
  };
}

/** Boost, or manifold pressure where that is what was logged: only differences between pulls of one set-up matter here. */
function boostOf(pull: CheckedPull): number | undefined {
  return meanSi(pull.channels.boost) ?? meanSi(pull.channels.manifoldPressure);
}

function firstSi(column: Column | undefined): number | undefined {
  return column?.si.find((si) => !Number.isNaN(si));
}

function middleMean(pulls: readonly CheckedPull[], of: (pull: CheckedPull) => number | undefined): number | undefined {
  const values = pulls.map(of).filter((value) => value !== undefined);
  return values.length < 3 ? undefined : median(values);
}

/** The middle value of a channel over the pulls at each speed; undefined below three pulls, which have no middle. */
function middleCurve(pulls: readonly CheckedPull[], role: ChannelRole): Float64Array | undefined {
  const columns = pulls.flatMap((pull) => (pull.channels[role] ? [pull.channels[role].si] : []));
  if (columns.length < 3) return undefined;
  return Float64Array.from(columns[0]!, (_, row) =>
    median(columns.map((column) => column[row]!).filter((value) => !Number.isNaN(value))),
  );
}

/** Middle value; NaN of nothing. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  if (sorted.length === 0) return NaN;
  return sorted.length % 2 === 1 ? sorted[Math.floor(half)]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
