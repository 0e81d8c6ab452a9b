import { CalculationError, type Problem, type Quantity } from '../units/index.js';
import { describe } from '../units/internal.js';
import { CHANNEL_KINDS, lagOfRamps, splitRamps, type ChannelRole, type Pull, type SensorLag } from '../sweep/index.js';
import { StatisticsError } from '../statistics/index.js';
import { median, rampRate } from './acceptance.js';
import type { ResolvedOptions } from './options.js';
import { meanSi } from './pull-means.js';
import type { Estimate } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { counted, decimals, like, listed, named, signed } from './words.js';

/** Time constants of sensors: from a data sheet, or as `lagOfStep` and `lagOfRamps` give them. */
export type SensorLags = { readonly [R in ChannelRole]?: Quantity<'time'> | SensorLag };

/** What is said about the lag of the sensors. */
export interface LagLines {
  readonly rests: readonly string[];
  readonly findings: readonly string[];
}

/** What a comparison knows that bears on lag. */
export interface LagInputs {
  readonly names: readonly [string, string];
  readonly accepted: readonly [readonly TakenPull[], readonly TakenPull[]];
  /** All pulls of each side: those that go the other way tell the lag. */
  readonly pulls: readonly [readonly Pull[], readonly Pull[]];
  readonly overall: Estimate | undefined;
}

/**
 * What the lag of the charge temperature's sensor does to the split: nothing to first order where both sides ramp alike, and where they
 * do not, as much as the time constant times the difference of how fast the temperature moves.
 */
export function lagLines(inputs: LagInputs, options: ResolvedOptions): LagLines {
  const found = inputs.names.flatMap((name, i) => lagsByRamps(name, inputs.pulls[i]!));
  const findings = found.map(({ sentence }) => sentence);
  const sides = inputs.accepted.map(movementOf);
  const [a, b] = sides;
  if (a === undefined || b === undefined) return { rests: [], findings };
  if (a.isCompensated && b.isCompensated) return { rests: [], findings };
  const change = b.slope - a.slope;
  const lag =
    constantOf(options.sensorLags.chargeTemperature) ?? found.find(({ role }) => role === 'chargeTemperature')?.lag;
  const differs = Math.abs(b.rate / a.rate - 1) > options.limits.rampRate.si || a.way !== b.way;
  if (differs || a.isCompensated !== b.isCompensated) {
    const why = differs
      ? `the ramps differ (${rates(b.rate)} ${b.way} against ${rates(a.rate)} ${a.way})`
      : 'it was taken off on one side alone';
    return {
      rests: [],
      findings: [
        ...findings,
        `The lag of the charge temperature's sensor does not cancel, since ${why}: ${worth(change, lag, inputs, options)}`,
      ],
    };
  }
  const alike = `Lag of the charge temperature's sensor is left in: both sides ramp alike (${rates(b.rate)} and ${rates(a.rate)}, ${a.way}), so it cancels to first order.`;
  const rest = lag === undefined ? '' : ` What stays: ${worth(change, lag, inputs, options)}`;
  return { rests: [`${alike}${rest}`], findings };
}

/** How the charge temperature moves on one side. */
interface Movement {
  /** Kelvin a second that the sensor lags behind; none where its lag was taken off. */
  readonly slope: number;
  /** Revolutions per second squared. */
  readonly rate: number;
  readonly way: string;
  readonly isCompensated: boolean;
}

function movementOf(side: readonly TakenPull[]): Movement | undefined {
  const pulls = side.flatMap(({ grid, pull }) => {
    const [slope, rate] = [slopeOf(grid.channels), rampRate(grid)];
    if (slope === undefined || rate === undefined) return [];
    const isCompensated = pull.preparations.some(
      ({ code, role }) => code === 'sensor lag' && role === 'chargeTemperature',
    );
    return [{ slope: isCompensated ? 0 : slope, rate, way: grid.direction, isCompensated }];
  });
  if (pulls.length === 0 || pulls.length < side.length) return undefined;
  const mean = (of: (pull: (typeof pulls)[number]) => number): number =>
    pulls.reduce((sum, pull) => sum + of(pull), 0) / pulls.length;
  const ways = [...new Set(pulls.map(({ way }) => way))];
  return {
    slope: mean(({ slope }) => slope),
    rate: mean(({ rate }) => rate),
    way: ways.length === 1 ? ways[0]! : 'both ways',
    isCompensated: pulls.every((pull) => pull.isCompensated),
  };
}

/** How fast the charge warms over the range, kelvin a second. */
function slopeOf({ time: times, chargeTemperature }: TakenPull['grid']['channels']): number | undefined {
  if (times === undefined || chargeTemperature === undefined) return undefined;
  const rows = Array.from(times.si.keys()).filter(
    (row) => !Number.isNaN(times.si[row]!) && !Number.isNaN(chargeTemperature.si[row]!),
  );
  const [first, last] = [rows[0], rows[rows.length - 1]];
  if (first === undefined || last === undefined || times.si[first] === times.si[last]) return undefined;
  return (chargeTemperature.si[last]! - chargeTemperature.si[first]!) / (times.si[last]! - times.si[first]!);
}

/** What a difference of slopes does to the charge temperature, and to what is compared. */
function worth(change: number, lag: number | undefined, inputs: LagInputs, { units }: ResolvedOptions): string {
  const seconds = lag ?? 1;
  // The sensor shows what was: too cold while the charge warms.
  const shownOff = -seconds * change;
  const kelvin = `${decimals(Math.abs(shownOff), 2)} K ${shownOff < 0 ? 'colder' : 'hotter'}`;
  const means = inputs.accepted.flatMap((side) =>
    side.flatMap(({ grid }) => meanSi(grid.channels.chargeTemperature) ?? []),
  );
  const share = -shownOff / (means.reduce((sum, value) => sum + value, 0) / means.length);
  const whole = inputs.accepted.flatMap((side) => side.flatMap(({ result }) => result.mean?.si ?? []));
  const { overall } = inputs;
  const part = overall && like(overall.value, (share * whole.reduce((sum, si) => sum + si, 0)) / whole.length);
  const percent = `${share > 0 ? '+' : ''}${decimals(share * 100, 2)} %`;
  const worthOf = part ? `${percent} (${signed(part, units)})` : percent;
  const by = lag === undefined ? 'each second of time constant' : `a time constant of ${decimals(lag, 2)} s`;
  const asked =
    lag === undefined
      ? " Give sensorLags: { chargeTemperature: time(…, 's') }, from a recorded step (lagOfStep) or ramps both ways (lagOfRamps)."
      : '';
  return `${by} makes the charge of ${named(inputs.names[1])} look ${kelvin} than it was against ${named(inputs.names[0])}, and puts ${worthOf} into the part of charge temperature.${asked}`;
}

const rates = (rate: number): string => `${decimals(rate * 60, 0)} rpm/s`;

function constantOf(given: Quantity<'time'> | SensorLag | undefined): number | undefined {
  if (given === undefined) return undefined;
  return 'timeConstant' in given ? given.timeConstant.si : given.si;
}

const TEMPERATURES = ['chargeTemperature', 'compressorOutletTemperature', 'faceTemperature'] as const;
const WORDS = {
  chargeTemperature: 'charge temperature',
  compressorOutletTemperature: 'compressor outlet temperature',
  faceTemperature: 'temperature at the core face',
} as const;
/** Ramps under another load have other temperatures: coasting down tells no lag. */
const LOAD_ALIKE = 0.1;

interface FoundLag {
  readonly role: ChannelRole;
  readonly lag: number;
  readonly sentence: string;
}

/** The lag of the temperature sensors by the up and down ramps of one set-up, where it has both under the same load. */
function lagsByRamps(name: string, pulls: readonly Pull[]): FoundLag[] {
  const ramps = pulls
    .flatMap((pull) => splitRamps(pull))
    .map((pull) => ({ pull, way: wayOf(pull), load: loadOf(pull) }));
  const ups = ramps.filter(({ way }) => way > 0);
  const downs = ramps.filter(({ way }) => way < 0);
  if (ups.length === 0 || downs.length === 0) return [];
  const pairs = ups.flatMap((up) => {
    const down = downs.find(
      ({ load }) => load !== undefined && up.load !== undefined && Math.abs(load / up.load - 1) < LOAD_ALIKE,
    );
    return down ? [{ up: up.pull, down: down.pull }] : [];
  });
  return TEMPERATURES.flatMap((role): FoundLag[] => {
    const lags = pairs.flatMap(({ up, down }) => rampLag(up, down, role) ?? []);
    if (lags.length === 0) return [];
    const lag = median(lags.map(({ timeConstant }) => timeConstant.si));
    const uncertainty = Math.max(...lags.map(({ standardUncertainty }) => standardUncertainty.si));
    const sentence = `By ${counted(lags.length, 'pair')} of up and down ramps of ${named(name)} the sensor of the ${WORDS[role]} lags by ${decimals(lag, 2)} s (standard uncertainty ${decimals(uncertainty, 2)} s); whatever else differs between the ramps, such as heat soaked in, counts as lag.`;
    return [{ role, lag, sentence }];
  });
}

function rampLag(up: Pull, down: Pull, role: ChannelRole): SensorLag | undefined {
  if (up.channels[role] === undefined || down.channels[role] === undefined) return undefined;
  try {
    return lagOfRamps(up, down, role);
  } catch (error) {
    // Ramps without times, or that hardly overlap, tell nothing.
    if (error instanceof StatisticsError || error instanceof CalculationError) return undefined;
    throw error;
  }
}

/** Change of engine speed from the first row to the last. */
function wayOf({ channels }: Pull): number {
  const si = channels.engineSpeed?.si ?? new Float64Array();
  const first = si.find((speed) => !Number.isNaN(speed)) ?? NaN;
  return (si.findLast((speed) => !Number.isNaN(speed)) ?? NaN) - first;
}

const loadOf = ({ channels }: Pull): number | undefined =>
  meanSi(channels.manifoldPressure) ?? meanSi(channels.boost) ?? meanSi(channels.torque);

/** What is wrong with time constants of sensors. */
export function sensorLagProblems(input: string, value: unknown): Problem[] {
  const mend = `Write ${input}: { chargeTemperature: time(0.8, 's') }, or what lagOfStep or lagOfRamps found.`;
  if (typeof value !== 'object' || value === null) {
    return [{ code: 'kind', input, need: 'an object of time constants by channel', got: describe(value), mend }];
  }
  return Object.entries(value as SensorLags).flatMap(([role, lag]): Problem[] => {
    const name = `${input}.${role}`;
    if (!Object.hasOwn(CHANNEL_KINDS, role)) {
      return [
        { code: 'unknown', input: name, need: `for one of ${listed(Object.keys(CHANNEL_KINDS))}`, got: role, mend },
      ];
    }
    const constant = typeof lag === 'object' && 'timeConstant' in lag ? lag.timeConstant : lag;
    if (constant?.kind === 'time' && constant.si > 0) return [];
    return [
      { code: 'kind', input: name, need: 'a time above zero, or a lag that was found', got: describe(lag), mend },
    ];
  });
}
