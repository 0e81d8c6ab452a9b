import {
  absolutePressure,
  pressureDifference,
  temperature,
  temperatureDifference,
  type Quantity,
} from '../units/index.js';
import { timeBaseOf } from '../sweep/time-base.js';
import { firstSi, lowest, vapourPressureOf } from './acceptance.js';
import type { ResolvedOptions } from './options.js';
import { meanSi } from './pull-means.js';
import type { FairnessCheck } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { listed, named, shown } from './words.js';

type Sides = readonly [readonly TakenPull[], readonly TakenPull[]];

/** What must be alike at the start of the pulls of both set-ups, or in the air and the fuel they had. */
interface Check {
  readonly what: FairnessCheck['what'];
  readonly of: (pull: TakenPull) => number | undefined;
  readonly shown: (si: number) => Quantity;
  readonly apart: (si: number) => Quantity;
  readonly limit: (limits: ResolvedOptions['limits']) => Quantity;
  /** `hotter`, `colder`. */
  readonly words: readonly [more: string, less: string];
  /** What a difference can pass for. */
  readonly why: string;
}

const kelvin = (si: number): Quantity => temperature(si, 'K').to('°C');
const apartKelvin = (si: number): Quantity => temperatureDifference(si, 'K');
const kilopascal = (si: number): Quantity => absolutePressure(si, 'Pa').to('kPa');
const apartKilopascal = (si: number): Quantity => pressureDifference(si, 'Pa').to('kPa');
const HOTTER = ['hotter', 'colder'] as const;
/** Seconds: what a channel read less often shows later is under load. */
const FIRST_SECONDS = 0.3;
/** Common practice, no source. */
const HOT_ROOM = 'hot air is thin and cools the charge less, and either can pass for a loss';

const CHECKS: readonly Check[] = [
  {
    what: 'oil temperature',
    of: ({ grid }) => firstSi(grid.channels.oilTemperature),
    shown: kelvin,
    apart: apartKelvin,
    limit: ({ engineTemperatureBetweenSetUps }) => engineTemperatureBetweenSetUps,
    words: HOTTER,
    why: 'hot oil drags less, which can pass for a gain',
  },
  {
    what: 'coolant temperature',
    of: ({ grid }) => firstSi(grid.channels.coolantTemperature),
    shown: kelvin,
    apart: apartKelvin,
    limit: ({ engineTemperatureBetweenSetUps }) => engineTemperatureBetweenSetUps,
    words: HOTTER,
    why: 'a hot engine drags less and heats the charge more, and either can pass for a change',
  },
  {
    what: 'charge temperature before the pull',
    // Before load, so that what the core does in the pull is not in it.
    of: ({ pull }) => meanOfFirst(pull),
    shown: kelvin,
    apart: apartKelvin,
    limit: ({ startTemperatureBetweenSetUps }) => startTemperatureBetweenSetUps,
    words: HOTTER,
    why: 'what a rest has left in the core, hot or cold, can pass for a change',
  },
  {
    what: 'humidity',
    of: ({ grid }) => vapourPressureOf(grid.channels),
    shown: kilopascal,
    apart: apartKilopascal,
    limit: ({ humidityBetweenSetUps }) => humidityBetweenSetUps,
    words: ['higher', 'lower'],
    why: 'vapour takes the place of air, which can pass for a loss',
  },
  {
    what: 'air before the compressor',
    of: ({ grid: { channels } }) => {
      const [intake, room] = [meanSi(channels.intakeTemperature), meanSi(channels.roomTemperature)];
      return intake === undefined || room === undefined ? undefined : intake - room;
    },
    shown: apartKelvin,
    apart: apartKelvin,
    limit: ({ inletRiseBetweenSetUps }) => inletRiseBetweenSetUps,
    words: HOTTER,
    why: 'hot air breathed again is thin, which can pass for a loss and is no doing of the core',
  },
  {
    what: 'room temperature',
    of: ({ grid }) => meanSi(grid.channels.roomTemperature),
    shown: kelvin,
    apart: apartKelvin,
    limit: ({ roomTemperatureBetweenSetUps }) => roomTemperatureBetweenSetUps,
    words: HOTTER,
    why: HOT_ROOM,
  },
  {
    what: 'intake temperature',
    of: ({ grid: { channels } }) => (channels.roomTemperature ? undefined : meanSi(channels.intakeTemperature)),
    shown: kelvin,
    apart: apartKelvin,
    limit: ({ roomTemperatureBetweenSetUps }) => roomTemperatureBetweenSetUps,
    words: HOTTER,
    why: HOT_ROOM,
  },
  {
    what: 'barometer',
    of: ({ grid }) => meanSi(grid.channels.barometer),
    shown: kilopascal,
    apart: apartKilopascal,
    limit: ({ barometerBetweenSetUps }) => barometerBetweenSetUps,
    words: ['higher', 'lower'],
    why: 'denser air can pass for a gain',
  },
  {
    what: 'fuel pressure',
    of: ({ grid }) => lowest(grid.channels.fuelPressure),
    shown: kilopascal,
    apart: apartKilopascal,
    limit: ({ fuelPressureBetweenSetUps }) => fuelPressureBetweenSetUps,
    words: ['higher', 'lower'],
    why: 'look at the mixture under load and at the pump',
  },
];

const NAMES: Partial<Readonly<Record<FairnessCheck['what'], string>>> = {
  'oil temperature': 'Oil temperature at the start of the range',
  'coolant temperature': 'Coolant temperature at the start of the range',
  'charge temperature before the pull': 'Charge temperature at the first readings of the pulls',
  humidity: "The vapour pressure of the room's air",
  'air before the compressor': 'The air before the compressor, above the room,',
  'room temperature': 'The room',
  'intake temperature': 'The air before the compressor',
  barometer: 'The barometer',
  'fuel pressure': 'The lowest fuel pressure',
};

/** Whether both set-ups began their pulls alike and had the same air and fuel. None stops a comparison: a difference is a reservation. */
export function startChecks(
  sides: Sides,
  names: readonly [string, string],
  { limits, units }: ResolvedOptions,
): FairnessCheck[] {
  return CHECKS.flatMap((check) => {
    const [a, b] = sides.map((side) => meanOf(side, check.of));
    // What is not logged is left unsaid: few log all of it.
    if (a === undefined || b === undefined) return [];
    const limit = check.limit(limits);
    const differs = Math.abs(b - a) > limit.si;
    const [baseline, candidate] = [a, b].map((si) => shown(check.shown(si), units)) as [string, string];
    const allowed = shown(limit, units);
    const name = NAMES[check.what]!;
    const [more, less] = check.words;
    const sentence = differs
      ? `${name} was ${shown(check.apart(Math.abs(b - a)), units)} ${b > a ? more : less} with ${named(names[1])} (${candidate} against ${baseline}; ${allowed} is allowed): ${check.why}.`
      : `${name} was alike.`;
    return [
      { what: check.what, state: differs ? 'differs' : 'equal', baseline, candidate, allowed, stops: false, sentence },
    ];
  });
}

/** In one sentence what the set-ups did not have alike; what each can pass for stands in what the answer rests on. */
export function reservationLines(fairness: readonly FairnessCheck[]): string[] {
  const unlike = fairness.filter(
    ({ what, state, stops }) => NAMES[what] !== undefined && state === 'differs' && !stops,
  );
  if (unlike.length === 0) return [];
  const each = listed(unlike.map(({ what }) => what));
  return [`With reservations: the set-ups did not have ${each} alike, and whatever that did is in the change.`];
}

function meanOf(side: readonly TakenPull[], of: Check['of']): number | undefined {
  const values = side.map(of).filter((value) => value !== undefined);
  return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function meanOfFirst({ channels }: TakenPull['pull']): number | undefined {
  const si = channels.chargeTemperature?.si;
  const begin = si?.findIndex((value) => !Number.isNaN(value)) ?? -1;
  if (si === undefined || begin < 0) return undefined;
  const { seconds } = timeBaseOf(channels);
  const first = [si[begin]!];
  for (let row = begin + 1; seconds !== undefined && seconds[row]! - seconds[begin]! < FIRST_SECONDS; row++) {
    if (!Number.isNaN(si[row]!)) first.push(si[row]!);
  }
  return first.reduce((sum, value) => sum + value, 0) / first.length;
}
