import type { Column, Quantity } from '../units/index.js';
import type { ChannelRole, Channels } from '../sweep/index.js';
import { saturationPressure } from '../psychrometrics/index.js';
import type { ResolvedOptions } from './options.js';
import type { Refusal } from './result.js';
import { sameReadings } from './check-set-ups.js';
import type { OffLoad } from '../sweep/off-load.js';
import { meanSi } from './pull-means.js';
import { counted, decimals, like, shown, speedRange } from './words.js';
import { pressureDifference, rotationalSpeed } from '../units/index.js';

/** A pull with its channels on the grid, as the checks read it. */
export interface CheckedPull {
  /** `set-up/file`. */
  readonly name: string;
  readonly engineSpeed: Column<'rotational speed'>;
  readonly channels: Channels;
  readonly curve: Column;
  /** Seconds since midnight, where the log tells. */
  readonly startClock: number | undefined;
  /** Stretches in which the pull, as it was read, made no load. */
  readonly offLoad: readonly OffLoad[];
}

/** Share of the range over which the mixture must be off before a pull is refused for it: a single spike is not the mixture. */
const MIXTURE_SHARE = 0.1;

/**
 * The refusals of every pull of one set-up. Each pull is held against the middle pull of its set-up at each speed: one odd pull then
 * cannot move what it is measured by.
 */
export function refusalsOf(pulls: readonly CheckedPull[], options: ResolvedOptions): Refusal[][] {
  const lambda = middleCurve(pulls, 'lambda');
  const middles = CHECKS.map((check) => middleOf(pulls, check.of));
  return pulls.map((pull) => {
    const byHand = options.leaveOut[pull.name];
    const because = options.overrule[pull.name];
    const overruled = because !== undefined;
    const found = [
      copied(pull, pulls),
      impossible(pull),
      missingData(pull, options),
      offLoad(pull, options),
      mixture(pull, lambda, options),
      ...CHECKS.map((check, i) => against(check, check.of(pull), middles[i], options)),
    ];
    const refusals = found.flatMap((refusal) => (refusal ? [{ ...refusal, overruled, because }] : []));
    return byHand === undefined
      ? refusals
      : [
          {
            code: 'left out by hand',
            reason: `Left out by hand: ${byHand}`,
            overruled: false,
            because: undefined,
          },
          ...refusals,
        ];
  });
}

/** One number of a pull that must not stray from the set-up's middle pull. */
interface Check {
  readonly code: string;
  /** Begins the sentence of a refusal: `Its mean boost`. */
  readonly words: string;
  readonly of: (pull: CheckedPull) => number | undefined;
  readonly limit: (limits: ResolvedOptions['limits']) => Quantity;
  /** How the middle must be passed to be refused; both ways when left out. */
  readonly only?: 'below';
}

const CHECKS: readonly Check[] = [
  { code: 'boost', words: 'mean boost', of: boostOf, limit: ({ boost }) => boost },
  {
    code: 'fuel pressure',
    words: 'lowest fuel pressure',
    of: (pull) => lowest(pull.channels.fuelPressure),
    limit: ({ fuelPressure }) => fuelPressure,
    only: 'below',
  },
  startCheck('chargeTemperature', 'charge temperature', ({ startTemperature }) => startTemperature),
  startCheck('oilTemperature', 'oil temperature', ({ engineTemperature }) => engineTemperature),
  startCheck('coolantTemperature', 'coolant temperature', ({ engineTemperature }) => engineTemperature),
  {
    code: 'air before the compressor',
    words: 'air before the compressor, above the room,',
    of: (pull) => difference(meanSi(pull.channels.intakeTemperature), meanSi(pull.channels.roomTemperature)),
    limit: ({ inletRise }) => inletRise,
  },
  {
    code: 'barometer',
    words: 'barometer',
    of: (pull) => meanSi(pull.channels.barometer),
    limit: ({ barometer }) => barometer,
  },
  {
    code: 'humidity',
    words: "room air's vapour pressure",
    of: (pull) => vapourPressureOf(pull.channels),
    limit: ({ humidity }) => humidity,
  },
  { code: 'ramp rate', words: 'ramp rate', of: rampRate, limit: ({ rampRate }) => rampRate },
];

function startCheck(role: ChannelRole, name: string, limit: Check['limit']): Check {
  return {
    code: `${name} at the start`,
    words: `${name} at the start of the range`,
    of: (pull) => firstSi(pull.channels[role]),
    limit,
  };
}

/** A number of a pull held against the middle one; a limit that is a ratio is a share of the middle. */
function against(
  check: Check,
  own: number | undefined,
  middle: number | undefined,
  { limits, units }: ResolvedOptions,
): Found {
  if (own === undefined || middle === undefined) return undefined;
  const limit = check.limit(limits);
  const isShare = limit.kind === 'ratio';
  const by = isShare ? own / middle - 1 : own - middle;
  if (Math.abs(by) <= limit.si || (check.only === 'below' && by > 0)) return undefined;
  const size = like(limit, Math.abs(by));
  const side = by > 0 ? 'above' : 'below';
  return {
    code: check.code,
    reason: `Its ${check.words} is ${shown(size, units)} ${side} the set-up's middle pull, ${shown(limit, units)} is allowed.`,
  };
}

type Found = Omit<Refusal, 'overruled' | 'because'> | undefined;

/** The same log twice is one pull: counted twice it would make the scatter look smaller than it is. */
function copied(pull: CheckedPull, pulls: readonly CheckedPull[]): Found {
  const first = pulls.find((other) => sameReadings(other, pull));
  if (first === undefined || first === pull) return undefined;
  return { code: 'copy', reason: `It is a copy of ${first.name}: every reading is the same.` };
}

/** What no fired pull can show: a channel with its sign turned, or one that is no pressure above the surrounding air. */
function impossible({ curve, channels }: CheckedPull): Found {
  const mean = meanSi(curve);
  if (mean !== undefined && mean <= 0) {
    return {
      code: 'impossible',
      reason: `Its mean ${curve.kind} over the range is ${shown(like(curve, mean))}, which no pull makes: is the sign of the channel turned?`,
    };
  }
  const [boost, barometer] = [meanSi(channels.boost), meanSi(channels.barometer)];
  if (boost !== undefined && barometer !== undefined && boost + barometer <= 0) {
    const words = `Its mean boost, ${shown(pressureDifference(boost, 'Pa').to('kPa'))}, lies below vacuum: is the unit right?`;
    return { code: 'impossible', reason: words };
  }
  return undefined;
}

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

/** Rows that make a lift where there are no times. */
const LIFT_ROWS = 4;

/** A pull that lifted is no pull at full load, however its grid bridges the gap. */
function offLoad({ offLoad: stretches }: CheckedPull, { limits, units }: ResolvedOptions): Found {
  const lifts = stretches.filter(({ duration, fromRow, toRow }) =>
    duration === undefined ? toRow - fromRow + 1 >= LIFT_ROWS : duration.si > limits.offLoad.si * (1 + 1e-9),
  );
  const [first] = lifts;
  if (first === undefined) return undefined;
  const { role, duration, fromRow, toRow, lowest: low, engineSpeed, fallsBackBy } = first;
  const rows = counted(toRow - fromRow + 1, 'row');
  const how = duration === undefined ? `for ${rows}` : `for ${decimals(duration.si, 2)} s (${rows})`;
  const back = fallsBackBy.si > 0 ? `, and engine speed fell back by ${decimals(fallsBackBy.in('rpm'), 0)} rpm` : '';
  const allowed =
    duration === undefined ? `fewer than ${LIFT_ROWS} rows are` : `${decimals(limits.offLoad.si, 2)} s is`;
  const more = lifts.length > 1 ? ` ${lifts.length - 1} more such stretches follow.` : '';
  return {
    code: 'off load',
    reason: `It was off load at ${decimals(engineSpeed.in('rpm'), 0)} rpm ${how}: ${role} fell to ${shown(low, units)}${back}; ${allowed} allowed.${more}`,
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

/** Boost, or manifold pressure where that is what was logged: only differences between pulls of one set-up matter here. */
function boostOf(pull: CheckedPull): number | undefined {
  return meanSi(pull.channels.boost) ?? meanSi(pull.channels.manifoldPressure);
}

/** The first value of a channel that there is. */
export function firstSi(column: Column | undefined): number | undefined {
  return column?.si.find((si) => !Number.isNaN(si));
}

/** The lowest value of a channel. */
export function lowest(column: Column | undefined): number | undefined {
  const values = column?.si.filter((si) => !Number.isNaN(si)) ?? new Float64Array();
  return values.length === 0 ? undefined : values.reduce((least, si) => Math.min(least, si));
}

function difference(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? undefined : a - b;
}

/** Partial pressure of the vapour in the room's air. */
export function vapourPressureOf(channels: Channels): number | undefined {
  const humidity = meanSi(channels.relativeHumidity);
  const room = meanSi(channels.roomTemperature) ?? meanSi(channels.intakeTemperature);
  return humidity === undefined || room === undefined ? undefined : humidity * saturationPressure.kernel(room);
}

/** Mean change of engine speed per second over the range: a faster ramp shows less torque and a colder core. */
export function rampRate({
  engineSpeed,
  channels: { time },
}: Pick<CheckedPull, 'engineSpeed' | 'channels'>): number | undefined {
  if (!time) return undefined;
  const rows = Array.from(time.si.keys()).filter((row) => !Number.isNaN(time.si[row]));
  const [first, last] = [rows[0], rows[rows.length - 1]];
  if (first === undefined || last === undefined || first === last) return undefined;
  const seconds = Math.abs(time.si[last]! - time.si[first]!);
  return seconds > 0 ? Math.abs(engineSpeed.si[last]! - engineSpeed.si[first]!) / seconds : undefined;
}

/** The middle of a number over the pulls; undefined below three pulls, which have no middle. */
function middleOf(pulls: readonly CheckedPull[], of: Check['of']): number | undefined {
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
