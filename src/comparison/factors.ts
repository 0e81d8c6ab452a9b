import { usualSparkSensitivity } from '../engine/index.js';
import { vapourPressureFromHumidityRatio } from '../psychrometrics/index.js';
import { DEGREES } from './best-torque-spark.js';
import type { PullMeans } from './pull-means.js';
import type { ComparedQuantity } from './options.js';
import { decimals, listed, named } from './words.js';

/** One factor of the product that makes the compared quantity. */
export interface Factor {
  readonly name: string;
  /** Its logarithm in a pull. */
  readonly log: (pull: PullMeans) => number;
}

/** The factors that these channels can tell apart, and what they cannot. */
export interface FactorPlan {
  readonly factors: readonly Factor[];
  /** What cannot be told apart, each with the sensor that would. */
  readonly notSeparated: readonly string[];
}

/** What names the parts of a split. */
export interface FactorNames {
  readonly setUps: readonly [string, string];
  /** Largest difference of mean spark between the set-ups that counts as equal, in radians. */
  readonly sparkLimit: number;
}

/**
 * Splits the compared quantity into factors whose product it is, pull by pull. For power: charge pressure x 1/charge temperature x dry
 * fraction x volumetric efficiency x fuel per air x spark timing x work per fuel. Factors that the channels cannot tell apart stay
 * together in the last one, which is named for what it holds.
 */
export function factorPlan(
  compared: ComparedQuantity,
  sides: readonly [readonly PullMeans[], readonly PullMeans[]],
  names: FactorNames,
): FactorPlan {
  const all = sides.flat();
  const has = (key: keyof PullMeans): boolean =>
    all.every((pull) => pull[key] !== undefined && (key === 'humidityRatio' || pull[key] > 0));
  const factors: Factor[] = [];
  const notSeparated: string[] = [];

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
  const unknownDensity = ['charge pressure', 'charge temperature'].filter(
    (name) => !density.some((factor) => factor.name === name),
  );

  if (compared === 'air flow' || compared === 'air per cycle') {
    factors.push({
      name: listed([...unknownDensity, 'volumetric efficiency']),
      log: (pull) => Math.log(pull.whole) - sum(density, pull),
    });
    return { factors, notSeparated };
  }
  const together: string[] = [];
  if (has('airFlow')) {
    const dryAir = (pull: PullMeans): number => Math.log(pull.airFlow!) - (humid ? Math.log1p(pull.humidityRatio!) : 0);
    factors.push({
      name: listed([...unknownDensity, 'volumetric efficiency']),
      log: (pull) => dryAir(pull) - sum(density, pull),
    });
  } else {
    together.push(...unknownDensity, 'volumetric efficiency');
    notSeparated.push('Volumetric efficiency from conversion efficiency: log air flow.');
  }
  if (has('lambda')) factors.push({ name: 'mixture (fuel per air)', log: (pull) => -Math.log(pull.lambda!) });
  else {
    together.push('mixture');
    notSeparated.push('Mixture from conversion efficiency: log lambda.');
  }
  const spark = sparkUnknown(sides, names);
  if (spark === 'known') factors.push({ name: 'spark timing', log: (pull) => Math.log(pull.sparkRetained!) });
  else if (spark !== 'equal') {
    together.push('spark');
    notSeparated.push(`Spark from conversion efficiency: ${spark}.`);
  }
  const before = [...factors];
  factors.push({
    name: listed([...together, 'conversion efficiency']),
    log: (pull) => Math.log(pull.whole) - sum(before, pull),
  });
  return { factors, notSeparated };
}

/** Beyond 20 degrees from best torque the parabola is not known to hold. */
const FURTHEST = 20;

/** Whether spark can have a part of its own, was equal and needs none, or what is missing to tell. */
function sparkUnknown(sides: readonly [readonly PullMeans[], readonly PullMeans[]], names: FactorNames): string {
  const all = sides.flat();
  if (!all.every((pull) => pull.sparkAdvance !== undefined)) return 'log spark advance';
  if (all.every((pull) => pull.sparkRetained !== undefined)) {
    const furthest = Math.sqrt(Math.max(...all.map((pull) => (1 - pull.sparkRetained!) / usualSparkSensitivity.si)));
    if (furthest <= FURTHEST) return 'known';
    return `spark lay ${decimals(furthest, 0)}° from bestTorqueSpark, and beyond ${FURTHEST}° what a degree costs is not known; run a spark loop nearer to it`;
  }
  const [a, b] = sides.map((side) => side.reduce((total, pull) => total + pull.sparkAdvance!, 0) / side.length) as [
    number,
    number,
  ];
  if (Math.abs(b - a) <= names.sparkLimit) return 'equal';
  const shown = (radians: number, i: 0 | 1): string =>
    `${decimals(radians * DEGREES, 1)}° with ${named(names.setUps[i])}`;
  return `spark was ${shown(a, 0)} and ${shown(b, 1)}; give bestTorqueSpark from a spark loop at constant speed, or hold spark equal`;
}

function sum(factors: readonly Factor[], pull: PullMeans): number {
  return factors.reduce((total, factor) => total + factor.log(pull), 0);
}

/** Mole fraction of dry air in air of a humidity ratio. */
function dryMoleFraction(humidityRatio: number): number {
  return 1 - vapourPressureFromHumidityRatio.kernel(1, humidityRatio);
}
