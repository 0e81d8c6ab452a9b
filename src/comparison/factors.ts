import type { Column } from '../units/index.js';
import type { ChannelRole, Channels } from '../sweep/index.js';
import {
  humidityRatioFromVapourPressure,
  saturationPressure,
  vapourPressureFromHumidityRatio,
} from '../psychrometrics/index.js';
import type { ComparedQuantity } from './result.js';

/** The range means of one pull that explain its result, in SI; a channel that is not there is undefined. */
export interface PullMeans {
  /** The compared quantity. */
  readonly whole: number;
  readonly manifoldPressure: number | undefined;
  readonly chargeTemperature: number | undefined;
  /** Vapour mass over dry-air mass of the room air, which the charge keeps. */
  readonly humidityRatio: number | undefined;
  readonly airFlow: number | undefined;
  readonly lambda: number | undefined;
}

/** One factor of the product that makes the compared quantity: its logarithm in every pull. */
export interface FactorLogs {
  readonly name: string;
  readonly baseline: readonly number[];
  readonly candidate: readonly number[];
}

/** The factors that these channels can tell apart, and what they cannot. */
export interface FactorSet {
  readonly factors: readonly FactorLogs[];
  readonly notSeparated: readonly string[];
}

/** A reading moved, to see what follows: by a fixed amount in SI, or by a share of it. */
export interface MeanShift {
  readonly role: ChannelRole;
  readonly by: number;
  readonly relative: boolean;
}

/** The range means of a pull. Rows without a value are left out of each mean. */
export function meansOf(compared: number, channels: Channels, shift?: MeanShift): PullMeans {
  const moved = (value: number): number => (shift!.relative ? value * (1 + shift!.by) : value + shift!.by);
  const of = (role: ChannelRole): number | undefined => {
    const value = meanSi(channels[role]);
    return value !== undefined && shift?.role === role ? moved(value) : value;
  };
  const logged = shift?.role === 'torque' || shift?.role === 'power' ? meanSi(channels[shift.role]) : undefined;
  const whole = logged === undefined ? compared : (compared * moved(logged)) / logged;
  const barometer = of('barometer');
  const boost = of('boost');
  const room = of('roomTemperature') ?? of('intakeTemperature');
  const humidity = of('relativeHumidity');
  const manifoldPressure =
    of('manifoldPressure') ?? (boost !== undefined && barometer !== undefined ? boost + barometer : undefined);
  const vapour = humidity !== undefined && room !== undefined ? humidity * saturationPressure.kernel(room) : undefined;
  return {
    whole,
    manifoldPressure,
    chargeTemperature: of('chargeTemperature'),
    humidityRatio:
      vapour !== undefined && barometer !== undefined
        ? humidityRatioFromVapourPressure.kernel(barometer, vapour)
        : undefined,
    airFlow: of('airFlow'),
    lambda: of('lambda'),
  };
}

/** Mean of a column's rows that have a value. */
export function meanSi(column: Column | undefined): number | undefined {
  if (!column) return undefined;
  let sum = 0;
  let count = 0;
  for (const si of column.si) {
    if (Number.isNaN(si)) continue;
    sum += si;
    count++;
  }
  return count === 0 ? undefined : sum / count;
}

/**
 * Splits the compared quantity into factors whose product it is, pull by pull. For power: charge pressure x 1/charge temperature x dry
 * fraction x volumetric efficiency x fuel per air x work per fuel. Factors that the channels cannot tell apart stay together in the
 * last one, which is named for what it holds.
 */
export function factorsOf(
  compared: ComparedQuantity,
  baseline: readonly PullMeans[],
  candidate: readonly PullMeans[],
): FactorSet {
  const all = [...baseline, ...candidate];
  const has = (key: keyof PullMeans): boolean =>
    all.every((pull) => pull[key] !== undefined && (key === 'humidityRatio' || pull[key] > 0));
  const factors: { name: string; log: (pull: PullMeans) => number }[] = [];
  const notSeparated: string[] = [];
  const isAir = compared === 'air flow' || compared === 'air per cycle';

  if (has('manifoldPressure'))
    factors.push({ name: 'charge pressure', log: (pull) => Math.log(pull.manifoldPressure!) });
  else notSeparated.push('Charge pressure: log manifold pressure, or boost and the barometer.');
  if (has('chargeTemperature'))
    factors.push({ name: 'charge temperature', log: (pull) => -Math.log(pull.chargeTemperature!) });
  else notSeparated.push('Charge temperature: log it after the cooler.');
  const humid = has('humidityRatio');
  if (humid)
    factors.push({ name: 'dry share of the charge', log: (pull) => Math.log(dryMoleFraction(pull.humidityRatio!)) });
  else notSeparated.push('Humidity: log relative humidity, room temperature and the barometer.');
  const density = [...factors];

  if (isAir) {
    factors.push({
      name: restName(['volumetric efficiency'], density),
      log: (pull) => Math.log(pull.whole) - sum(density, pull),
    });
    return { factors: withLogs(factors, baseline, candidate), notSeparated };
  }
  if (has('airFlow')) {
    const dryAir = (pull: PullMeans): number => Math.log(pull.airFlow!) - (humid ? Math.log1p(pull.humidityRatio!) : 0);
    factors.push({
      name: restName(['volumetric efficiency'], density),
      log: (pull) => dryAir(pull) - sum(density, pull),
    });
  } else notSeparated.push('Volumetric efficiency from conversion efficiency: log air flow.');
  if (has('lambda')) factors.push({ name: 'mixture (fuel per air)', log: (pull) => -Math.log(pull.lambda!) });
  else notSeparated.push('Mixture from conversion efficiency: log lambda.');
  const before = [...factors];
  const together = [
    ...(has('airFlow') ? [] : ['volumetric efficiency']),
    ...(has('lambda') ? [] : ['mixture']),
    'conversion efficiency',
  ];
  factors.push({
    name: restName(together, has('airFlow') ? [] : density),
    log: (pull) => Math.log(pull.whole) - sum(before, pull),
  });
  return { factors: withLogs(factors, baseline, candidate), notSeparated };
}

interface Factor {
  readonly name: string;
  readonly log: (pull: PullMeans) => number;
}

function sum(factors: readonly Factor[], pull: PullMeans): number {
  return factors.reduce((total, factor) => total + factor.log(pull), 0);
}

/** What is left over, named with everything that could not be told apart from it. */
function restName(own: readonly string[], density: readonly Factor[]): string {
  const known = new Set(density.map((factor) => factor.name));
  const missing =
    density.length === 0 && !own.includes('volumetric efficiency')
      ? []
      : ['charge pressure', 'charge temperature'].filter((name) => !known.has(name));
  return [...missing, ...own].join(' and ');
}

function withLogs(
  factors: readonly Factor[],
  baseline: readonly PullMeans[],
  candidate: readonly PullMeans[],
): FactorLogs[] {
  return factors.map(({ name, log }) => ({ name, baseline: baseline.map(log), candidate: candidate.map(log) }));
}

/** Mole fraction of dry air in air of a humidity ratio. */
function dryMoleFraction(humidityRatio: number): number {
  return 1 - vapourPressureFromHumidityRatio.kernel(1, humidityRatio);
}
