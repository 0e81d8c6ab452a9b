import { DEGREES } from './best-torque-spark.js';
import { rampRate } from './acceptance.js';
import { startChecks } from './between-set-ups.js';
import { boostControlOf, type ResolvedOptions } from './options.js';
import { meanSi } from './pull-means.js';
import type { FairnessCheck, Split } from './result.js';
import type { TakenPull } from './taken-pull.js';
import type { ChannelRole } from '../sweep/index.js';
import { absolutePressure, pressureDifference } from '../units/index.js';
import { betweenSigned, decimals, named, pullsOf, shown, signed, speedRange } from './words.js';

type Sides = readonly [readonly TakenPull[], readonly TakenPull[]];
type Names = readonly [string, string];

/** What must be equal for the comparison to be fair, compared before anything else. What stops the comparison is an objection. */
export function fairnessOf(
  sides: Sides,
  names: Names,
  split: Split | undefined,
  options: ResolvedOptions,
): FairnessCheck[] {
  return [
    mixtureCheck(sides, names, options),
    sparkCheck(sides, names, split, options),
    boostControlCheck(names, options),
    pressureCheck(sides, names, options),
    directionCheck(sides, names),
    rangeCheck(sides),
    rampCheck(sides, names, options),
    ...startChecks(sides, names, options),
  ];
}

const CANNOT = 'These two sets cannot be compared: ';

/** Mean of the pulls' range means of a channel on each side; undefined where a side has no pull with it. */
function sideMeans(sides: Sides, of: (pull: TakenPull) => number | undefined): readonly [number, number] | undefined {
  const [a, b] = sides.map((side) => {
    const means = side.map(of).filter((value) => value !== undefined);
    return means.length === 0 ? undefined : means.reduce((sum, value) => sum + value, 0) / means.length;
  });
  return a === undefined || b === undefined ? undefined : [a, b];
}

const channelMean =
  (role: Exclude<ChannelRole, 'engineSpeed'>) =>
  (pull: TakenPull): number | undefined =>
    meanSi(pull.grid.channels[role]);

function notKnown(what: FairnessCheck['what'], sentence: string): FairnessCheck {
  return { what, state: 'not known', baseline: '', candidate: '', allowed: '', stops: false, sentence };
}

function mixtureCheck(sides: Sides, names: Names, { limits }: ResolvedOptions): FairnessCheck {
  const means = sideMeans(sides, channelMean('lambda'));
  if (means === undefined)
    return notKnown('mixture', 'Whether the mixture was equal is not known: lambda was not logged on both sides.');
  const [baseline, candidate] = means.map((value) => decimals(value, 2)) as [string, string];
  const allowed = decimals(limits.mixtureBetweenSetUps, 2);
  const stops = Math.abs(means[1] - means[0]) > limits.mixtureBetweenSetUps;
  return {
    what: 'mixture',
    state: stops ? 'differs' : 'equal',
    baseline: `lambda ${decimals(means[0], 3)}`,
    candidate: `lambda ${decimals(means[1], 3)}`,
    allowed,
    stops,
    sentence: stops
      ? `${CANNOT}${pullsOf(names[1])} ran at lambda ${candidate} against ${baseline}, and ${allowed} is allowed.`
      : 'The mixture was equal.',
  };
}

/** A knock-limited engine takes its gain as spark, so unequal spark does not stop a comparison: it is said, with what it is worth. */
function sparkCheck(
  sides: Sides,
  names: Names,
  split: Split | undefined,
  { limits, units }: ResolvedOptions,
): FairnessCheck {
  const every = sides.every((side) => side.every((pull) => pull.grid.channels.sparkAdvance));
  const means = every ? sideMeans(sides, channelMean('sparkAdvance')) : undefined;
  if (means === undefined)
    return notKnown('spark', 'Whether spark was equal is not known: spark advance was not logged in every pull.');
  const [baseline, candidate] = means.map((value) => `${decimals(value * DEGREES, 1)}°`) as [string, string];
  const differs = Math.abs(means[1] - means[0]) > limits.sparkBetweenSetUps.si;
  const part = split?.contributions.find((one) => one.factor === 'spark timing')?.part;
  const worth = part
    ? `it is worth ${signed(part.value, units)}, between ${betweenSigned(part.low, part.high, units)}`
    : 'what it is worth cannot be told without bestTorqueSpark';
  return {
    what: 'spark',
    state: differs ? 'differs' : 'equal',
    baseline,
    candidate,
    allowed: `${decimals(limits.sparkBetweenSetUps.si * DEGREES, 1)}°`,
    stops: false,
    sentence: differs
      ? `Spark was not equal: ${candidate} with ${named(names[1])} against ${baseline} with ${named(names[0])}; ${worth}. An engine that knock holds back takes its gain as spark, so the set-ups are compared all the same.`
      : 'Spark was equal.',
  };
}

function boostControlCheck(names: Names, options: ResolvedOptions): FairnessCheck {
  const [a, b] = names.map((name) => boostControlOf(name, options));
  if (a === undefined || b === undefined) {
    return notKnown(
      'boost control',
      'Whether boost was held to a target or followed the wastegate is not told (boostControl): held, a core that loses less pressure shows as less work of the compressor and not as power.',
    );
  }
  const stops = a !== b;
  return {
    what: 'boost control',
    state: stops ? 'differs' : 'equal',
    baseline: a,
    candidate: b,
    allowed: '',
    stops,
    sentence: stops
      ? `${CANNOT}boost control was ${b} with ${named(names[1])} and ${a} with ${named(names[0])}, which alone changes boost.`
      : `Boost control was ${a} with both.`,
  };
}

function pressureCheck(sides: Sides, names: Names, options: ResolvedOptions): FairnessCheck {
  const means = sideMeans(sides, ({ grid: { channels } }) => {
    const [boost, barometer] = [meanSi(channels.boost), meanSi(channels.barometer)];
    return (
      meanSi(channels.manifoldPressure) ??
      (boost !== undefined && barometer !== undefined ? boost + barometer : undefined)
    );
  });
  if (means === undefined)
    return notKnown(
      'manifold pressure',
      'Whether manifold pressure was equal is not known: it was not logged on both sides.',
    );
  const { limits, units } = options;
  const unit = units['absolute pressure'] ?? 'kPa';
  const [baseline, candidate] = means.map((si) => shown(absolutePressure(si, 'Pa'), { 'absolute pressure': unit })) as [
    string,
    string,
  ];
  const change = means[1] - means[0];
  const differs = Math.abs(change) > limits.boost.si;
  const difference = shown(pressureDifference(Math.abs(change), 'Pa'), {
    'pressure difference': limits.boost.unit,
  });
  const why = names.every((name) => boostControlOf(name, options) === 'closed')
    ? 'Boost control is told to be closed, and did not hold it.'
    : 'With open control that may be the doing of the change, and then it is a part of it; with closed control it was not held.';
  return {
    what: 'manifold pressure',
    state: differs ? 'differs' : 'equal',
    baseline,
    candidate,
    allowed: shown(limits.boost),
    stops: false,
    sentence: differs
      ? `Manifold pressure was ${difference} ${change > 0 ? 'higher' : 'lower'} with ${named(names[1])}. ${why}`
      : 'Manifold pressure was equal.',
  };
}

function directionCheck(sides: Sides, names: Names): FairnessCheck {
  const [a, b] = sides.map((side) => {
    const ways = new Set(side.map(({ grid }) => grid.direction));
    return ways.size > 1 ? 'both ways' : ([...ways][0] ?? '');
  }) as [string, string];
  const known = a !== '' && b !== '';
  const stops = known && a !== b;
  return {
    what: 'direction of the pulls',
    state: stops ? 'differs' : known ? 'equal' : 'not known',
    baseline: a,
    candidate: b,
    allowed: '',
    stops,
    sentence: stops
      ? `${CANNOT}${pullsOf(names[1])} go ${b} in engine speed and ${pullsOf(names[0])} ${a}, which alone changes torque and the heat in the core.`
      : known
        ? 'The pulls go the same way.'
        : 'Which way the pulls go is not known on both sides.',
  };
}

/** Only speeds that every pull has are compared, so a shorter side does not stop a comparison: it shortens it. */
function rangeCheck(sides: Sides): FairnessCheck {
  const ranges = sides.map((side) => {
    const first = side[0];
    if (first === undefined) return '';
    const { engineSpeed } = first.grid;
    const rows = Array.from(engineSpeed.si.keys()).filter((row) =>
      side.every(({ result }) => !Number.isNaN(result.curve.si[row])),
    );
    return rows.length === 0 ? '' : speedRange(engineSpeed.at(rows[0]!), engineSpeed.at(rows[rows.length - 1]!));
  });
  const [baseline, candidate] = ranges as [string, string];
  const known = baseline !== '' && candidate !== '';
  const differs = known && baseline !== candidate;
  return {
    what: 'speed range',
    state: differs ? 'differs' : known ? 'equal' : 'not known',
    baseline,
    candidate,
    allowed: '',
    stops: false,
    sentence: differs
      ? `Not all pulls cover the same engine speeds (${baseline} and ${candidate}): only those that all have are compared speed by speed.`
      : known
        ? 'All pulls cover the same engine speeds.'
        : 'No engine speed is covered by all pulls of a side.',
  };
}

function rampCheck(sides: Sides, names: Names, { limits, units }: ResolvedOptions): FairnessCheck {
  const every = sides.every((side) => side.every(({ grid }) => rampRate(grid) !== undefined));
  const rates = every ? sideMeans(sides, ({ grid }) => rampRate(grid)) : undefined;
  if (rates === undefined)
    return notKnown('ramp rate', 'Whether the pulls ran equally fast is not known: not every pull has a time.');
  const [baseline, candidate] = rates.map((rate) => `${decimals(rate * 60, 0)} rpm/s`) as [string, string];
  const allowed = shown(limits.rampRate, units);
  const stops = Math.abs(rates[1] / rates[0] - 1) > limits.rampRate.si;
  return {
    what: 'ramp rate',
    state: stops ? 'differs' : 'equal',
    baseline,
    candidate,
    allowed,
    stops,
    sentence: stops
      ? `${CANNOT}${pullsOf(names[1])} ran through the range at ${candidate} against ${baseline}, and ${allowed} of difference is allowed.`
      : 'The pulls ran equally fast.',
  };
}
