import type { Column } from '../units/index.js';
import { showSi } from '../units/internal.js';
import type { Assignment } from './assign.js';
import { readHeader } from './header.js';
import type { Pull, Question } from './pull.js';
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

/** Boost that reads as an absolute pressure would is asked about, whatever gives it away. */
function askBoost(channels: Channels, assigned: Assigned): Question[] {
  const { boost } = channels;
  const source = assigned.get('boost');
  if (!boost || !source || source.how === 'map' || source.saysZero) return [];
  const why = whyAbsolute(boost, channels);
  return why === undefined ? [] : [gaugeOrAbsolute(source.header, why)];
}

/** The question whether a column called boost is gauge or absolute. */
export function gaugeOrAbsolute(header: string, why: string): Question {
  return {
    code: 'gauge or absolute',
    role: 'boost',
    message: `${quoted(header)} was read as gauge pressure, but ${why}: it may be absolute.`,
    mend: `Say which: boost: channel('${header}', 'gauge pressure') or manifoldPressure: channel('${header}', 'absolute pressure').`,
  };
}

/** Charge at this many barometers of gauge pressure is more than one compressor on petrol is commonly asked for; common practice, no source. */
const MOST_GAUGE = 1.9;

function whyAbsolute(boost: Column, { manifoldPressure, barometer, ...channels }: Channels): string | undefined {
  if (manifoldPressure && sameMean(boost.si, manifoldPressure.si)) return 'it equals the manifold pressure';
  const air = medianOf(barometer?.si) ?? SEA_LEVEL;
  const start = boost.si.find((si) => !Number.isNaN(si));
  const [low, high] = rangeOf(boost.si);
  if (start === undefined) return undefined;
  if (start > 0.85 * air && start < 1.08 * air && high > 1.3 * start) {
    return `it begins at ${shown(boost, start)}, which is the air around, and rises`;
  }
  if (low > 0.95 * air && high > MOST_GAUGE * air) {
    return `it never falls below the air around and rises to ${shown(boost, high)}, which is much for a gauge pressure`;
  }
  return tooCold(boost, air, channels);
}

/** Exponent of the temperature of air that is compressed without loss: (1.4 - 1)/1.4. */
const LOSSLESS = 0.4 / 1.4;
/** So far above what compression without loss gives, gauge pressure is impossible; sensors in a ramp lag by less. */
const COLDER_BY = 5;

/** Air that leaves the compressor colder than without any loss was not compressed so far. */
function tooCold(
  boost: Column,
  air: number,
  { compressorOutletTemperature: outlet, intakeTemperature, roomTemperature }: Omit<Channels, 'boost'>,
): string | undefined {
  const inlet = medianOf((intakeTemperature ?? roomTemperature)?.si);
  const last = Math.ceil(boost.length / 4);
  const [pressure, temperature] = [medianOf(boost.si.subarray(-last)), medianOf(outlet?.si.subarray(-last))];
  if (inlet === undefined || pressure === undefined || temperature === undefined || pressure < LOADED) return undefined;
  const lossless = (absolute: number): number => inlet * (absolute / air) ** LOSSLESS;
  if (temperature > lossless(air + pressure) - COLDER_BY || temperature < lossless(pressure)) return undefined;
  return `air compressed so far would leave the compressor at ${figure(Math.round(lossless(air + pressure) - 273.15))} °C at least, and it read ${figure(Math.round(temperature - 273.15))} °C`;
}

/**
 * Which pulls of a day to ask about boost because it lies above that of other set-ups by about one barometer: then one of them counts
 * from vacuum. Pulls that were told, or are asked about already, are left alone.
 */
export function askBoostOfDay(pulls: readonly Pull[]): Map<Pull, Question> {
  const asked = new Map<Pull, Question>();
  const open = pulls.flatMap((pull) => {
    const { boost, barometer } = pull.channels;
    const source = pull.sources.boost;
    const middle = medianOf(boost?.si);
    if (!boost || !source || middle === undefined) return [];
    const isOpen = source.how === 'guess' && readHeader(source.header).zero === undefined;
    return [{ pull, boost, source, middle, isOpen, air: medianOf(barometer?.si) ?? SEA_LEVEL }];
  });
  for (const { pull, source, boost, middle, isOpen, air } of open) {
    if (!isOpen || pull.questions.some(({ code, role }) => code === 'gauge or absolute' && role === 'boost')) continue;
    const lower = open.find(
      (other) => other.pull.setup !== pull.setup && Math.abs(middle - other.middle - air) < 0.12 * air,
    );
    if (lower === undefined) continue;
    const why = `its middle reading is ${shown(boost, middle)} and that of ${quoted(lower.pull.setup ?? lower.pull.file)} ${shown(lower.boost, lower.middle)}, about one atmosphere less`;
    asked.set(pull, gaugeOrAbsolute(source.header, why));
  }
  return asked;
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
