import type { Column } from '../units/index.js';
import { showSi } from '../units/internal.js';
import type { Assignment } from './assign.js';
import type { Question } from './pull.js';
import type { Channels, ChannelRole } from './roles.js';
import { figure, quoted } from './words-for-people.js';

type Assigned = ReadonlyMap<ChannelRole, Assignment>;

/** Full-load air leaves a compressor at least this far above the barometer before temperatures can tell anything. */
const LOADED = 4e4;
/** Charge that warms by less than this in a loaded pull was likely measured before the compressor. */
const WARMING = 3;
const SEA_LEVEL = 101325;

/** What the numbers of a pull leave open about what they are. Only guesses are questioned: the map is the owner's word. */
export function questionsAbout(channels: Channels, assigned: Assigned): Question[] {
  return [
    ...askBoost(channels, assigned),
    ...askManifold(channels, assigned),
    ...askCharge(channels, assigned),
    ...askMixture(channels, assigned),
    ...askSpark(channels, assigned),
    ...askCorrected(assigned),
  ];
}

/** Boost that begins near one atmosphere and rises, or equals the manifold pressure, counts from vacuum. */
function askBoost({ boost, manifoldPressure, barometer }: Channels, assigned: Assigned): Question[] {
  const source = assigned.get('boost');
  if (!boost || !source || source.how === 'map' || source.saysZero) return [];
  const air = medianOf(barometer?.si) ?? SEA_LEVEL;
  const start = boost.si.find((si) => !Number.isNaN(si));
  const [, high] = rangeOf(boost.si);
  if (start === undefined) return [];
  const startsAtAir = start > 0.85 * air && start < 1.08 * air && high > 1.3 * start;
  const both = manifoldPressure && sameMean(boost.si, manifoldPressure.si);
  if (!startsAtAir && !both) return [];
  const why = both
    ? 'it equals the manifold pressure'
    : `it begins at ${shown(boost, start)}, which is the air around, and rises`;
  return [
    {
      code: 'gauge or absolute',
      role: 'boost',
      message: `${quoted(source.header)} was read as gauge pressure, but ${why}: it may be absolute.`,
      mend: `Say which: boost: channel('${source.header}', 'gauge pressure') or manifoldPressure: channel('${source.header}', 'absolute pressure').`,
    },
  ];
}

/** Manifold pressure that never reaches the barometer in a pull counts from the barometer. */
function askManifold({ manifoldPressure, barometer }: Channels, assigned: Assigned): Question[] {
  const source = assigned.get('manifoldPressure');
  if (!manifoldPressure || !source || source.how === 'map' || source.saysZero) return [];
  const air = medianOf(barometer?.si) ?? SEA_LEVEL;
  const [low, high] = rangeOf(manifoldPressure.si);
  if (!(low < 0.7 * air && high < 1.35 * air)) return [];
  return [
    {
      code: 'gauge or absolute',
      role: 'manifoldPressure',
      message: `${quoted(source.header)} was read as absolute pressure, but runs only from ${shown(manifoldPressure, low)} to ${shown(manifoldPressure, high)}: it may be gauge.`,
      mend: `Say which: manifoldPressure: channel('${source.header}', 'absolute pressure') or boost: channel('${source.header}', 'gauge pressure').`,
    },
  ];
}

/** Charge that does not warm under load was not charge: an intake sensor often sits before the compressor. */
function askCharge(channels: Channels, assigned: Assigned): Question[] {
  const source = assigned.get('chargeTemperature');
  const { chargeTemperature: charge } = channels;
  if (!charge || !source || source.how === 'map' || !source.isDoubtful) return [];
  const pressure = channels.boost?.si ?? channels.manifoldPressure?.si.map((si) => si - SEA_LEVEL);
  if (!pressure || charge.length < 5 || rangeOf(pressure)[1] < LOADED) return [];
  const part = Math.max(3, Math.ceil(charge.length / 10));
  const start = medianOf(charge.si.subarray(0, part));
  const end = medianOf(charge.si.subarray(-part));
  if (start === undefined || end === undefined || end - start >= WARMING) return [];
  const change = end - start;
  const moved =
    Math.abs(change) < 0.5
      ? 'hardly moves'
      : change > 0
        ? `rises by only ${figure(change)} K`
        : `falls by ${figure(-change)} K`;
  return [
    {
      code: 'before or after the compressor',
      role: 'chargeTemperature',
      message: `${quoted(source.header)} was read as charge temperature, but ${moved} while the engine is on boost: it may sit before the compressor.`,
      mend: `Say where it sits: chargeTemperature: channel('${source.header}') or intakeTemperature: channel('${source.header}').`,
    },
  ];
}

/** Mixtures of spark-ignition engines lie near 1 as lambda and near 13 as an air-fuel ratio. */
function askMixture({ lambda, airFuelRatio }: Channels, assigned: Assigned): Question[] {
  const asked: Question[] = [];
  const ask = (role: 'lambda' | 'airFuelRatio', isOdd: boolean, values: Column | undefined): void => {
    const source = assigned.get(role);
    if (!isOdd || !values || !source || source.how === 'map') return;
    const [low, high] = rangeOf(values.si);
    asked.push({
      code: 'lambda or air-fuel ratio',
      role,
      message: `${quoted(source.header)} was read as ${values.kind}, but runs from ${figure(low)} to ${figure(high)}.`,
      mend: `Say which: lambda: channel('${source.header}', 'lambda', '1') or airFuelRatio: channel('${source.header}', 'air-fuel ratio', '1').`,
    });
  };
  ask('lambda', lambda !== undefined && (medianOf(lambda.si) ?? 1) > 6, lambda);
  ask('airFuelRatio', airFuelRatio !== undefined && (medianOf(airFuelRatio.si) ?? 14) < 3, airFuelRatio);
  return asked;
}

/** Under load a spark-ignition engine is lit before top dead centre, by less than this; common practice, no source. */
const MOST_ADVANCE = Math.PI / 3;
/** Heavily retarded spark may stand a little after top dead centre. */
const MOST_RETARD = Math.PI / 36;

function askSpark({ sparkAdvance }: Channels, assigned: Assigned): Question[] {
  const source = assigned.get('sparkAdvance');
  const middle = medianOf(sparkAdvance?.si);
  if (!sparkAdvance || !source || source.how === 'map' || middle === undefined) return [];
  if (middle >= -MOST_RETARD && middle <= MOST_ADVANCE) return [];
  const [low, high] = rangeOf(sparkAdvance.in('°'));
  const why = middle < 0 ? 'it may count from top dead centre the other way' : 'it may be another angle';
  return [
    {
      code: 'spark before or after top dead centre',
      role: 'sparkAdvance',
      message: `${quoted(source.header)} was read as spark advance, but runs from ${figure(low)}° to ${figure(high)}°: ${why}.`,
      mend: `Say what it is: sparkAdvance: channel('${source.header}', 'angle', '${sparkAdvance.unit}') where it counts before top dead centre, or sparkAdvance: false to leave it out.`,
    },
  ];
}

function askCorrected(assigned: Assigned): Question[] {
  return (['power', 'torque'] as const).flatMap((role): Question[] => {
    const source = assigned.get(role);
    if (source?.correction === undefined || source.correction === 'observed') return [];
    const to = source.correction === 'corrected' ? 'a standard atmosphere' : source.correction;
    const message = `${quoted(source.header)} says that its numbers are already corrected to ${to}.`;
    return [
      {
        code: 'already corrected',
        role,
        message,
        mend: "Compare them with loggedPower: 'corrected', which never corrects again.",
      },
    ];
  });
}

function rangeOf(si: Float64Array): readonly [low: number, high: number] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of si) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}

function medianOf(si: Float64Array | undefined): number | undefined {
  const values = si?.filter((value) => !Number.isNaN(value)).sort();
  return values === undefined || values.length === 0 ? undefined : values[Math.floor(values.length / 2)];
}

/** Whether two pressures are one, within 3 % on average. */
function sameMean(a: Float64Array, b: Float64Array): boolean {
  const [meanA, meanB] = [medianOf(a), medianOf(b)];
  return meanA !== undefined && meanB !== undefined && meanB > 0 && Math.abs(meanA / meanB - 1) < 0.03;
}

function shown({ kind, unit }: Column, si: number): string {
  return showSi(kind, Number(si.toPrecision(4)), unit);
}
