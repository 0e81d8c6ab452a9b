import type { Problem, Quantity } from '../units/index.js';
import { describe } from '../units/internal.js';
import { CHANNEL_KINDS, type Pull, type SensorLag } from '../sweep/index.js';
import { rampRate } from './acceptance.js';
import type { ResolvedOptions, SensorLags } from './options.js';
import { meanSi } from './pull-means.js';
import { lagsByRamps } from './ramp-lags.js';
import type { Estimate } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { decimals, like, listed, named, signed } from './words.js';

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
  // A core that soaks up heat more slowly warms the charge more slowly, so even on one ramp not all of it cancels.
  const stays = lag !== undefined || Math.abs(shareOf(change, inputs)) >= TOLD_SHARE;
  if (!stays) return { rests: [alike], findings };
  const left = `What lag leaves on equal ramps, since the charge does not warm equally fast: ${worth(change, lag, inputs, options)}`;
  return { rests: [alike], findings: [...findings, left] };
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

/** From this share of charge temperature on, what each second of lag leaves is told though nobody gave a time constant. */
const TOLD_SHARE = 1e-3;

/** Share that a second of lag puts into the part of charge temperature: what looks colder counts as more. */
function shareOf(change: number, { accepted }: LagInputs): number {
  const means = accepted.flatMap((side) => side.flatMap(({ grid }) => meanSi(grid.channels.chargeTemperature) ?? []));
  return (change * means.length) / means.reduce((sum, value) => sum + value, 0);
}

/** What a difference of slopes does to the charge temperature, and to what is compared. */
function worth(change: number, lag: number | undefined, inputs: LagInputs, { units }: ResolvedOptions): string {
  const seconds = lag ?? 1;
  // The sensor shows what was: too cold while the charge warms.
  const shownOff = -seconds * change;
  const kelvin = `${decimals(Math.abs(shownOff), 2)} K ${shownOff < 0 ? 'colder' : 'hotter'}`;
  const share = seconds * shareOf(change, inputs);
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
