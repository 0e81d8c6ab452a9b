import type { PressureZero } from './header.js';
import type { Role } from './roles.js';

/** What the words of a header may mean. */
export interface Reading {
  readonly role: Role;
  /** 0 for words that mean nothing else; more for words that often mean something else too. */
  readonly doubt: number;
  /** Words that added nothing. */
  readonly extras: number;
  /** Set where the name itself is the unit, as in a column called `RPM`. */
  readonly unit?: string;
  /** The words mean this only beside a unit of its kind. */
  readonly isOnlyWithUnit: boolean;
}

/** One way to name a channel: all these words, in any order. */
interface Phrase {
  readonly role: Role;
  readonly words: readonly string[];
  readonly doubt?: number;
  readonly unit?: string;
  readonly isOnlyWithUnit?: boolean;
}

const phrases = (role: Role, ...texts: readonly string[]): Phrase[] =>
  texts.map((text) => ({ role, words: text.split(' ') }));
const doubtful = (role: Role, ...texts: readonly string[]): Phrase[] =>
  phrases(role, ...texts).map((phrase) => ({ ...phrase, doubt: 1 }));
const onlyWithUnit = (role: Role, ...texts: readonly string[]): Phrase[] =>
  doubtful(role, ...texts).map((phrase) => ({ ...phrase, isOnlyWithUnit: true }));

const unitNeeded = (role: Role, ...texts: readonly string[]): Phrase[] =>
  phrases(role, ...texts).map((phrase) => ({ ...phrase, isOnlyWithUnit: true }));

/** How the trade names each channel. Which words are usual is common practice, no source. */
const PHRASES: readonly Phrase[] = [
  ...phrases('time', 'time', 'elapsed time', 'log time', 't'),
  { role: 'time', words: ['seconds'], unit: 's' },
  ...phrases(
    'clock',
    'clock',
    'time day',
    'clock time',
    'local time',
    'timestamp',
    'time stamp',
    'date time',
    'datetime',
  ),
  ...phrases('engineSpeed', 'engine speed', 'crank speed', 'crankshaft speed', 'revs', 'engine revs'),
  { role: 'engineSpeed', words: ['rpm'], unit: 'rpm' },
  ...onlyWithUnit('engineSpeed', 'speed', 'n'),
  ...phrases('torque', 'torque', 'hub torque', 'engine torque', 'brake torque', 'crank torque', 'flywheel torque'),
  ...doubtful('torque', 'wheel torque'),
  ...phrases(
    'power',
    'power',
    'hub power',
    'engine power',
    'brake power',
    'crank power',
    'flywheel power',
    'wheel power',
    'horsepower',
  ),
  ...['hp', 'bhp', 'whp', 'kw', 'ps'].map((word) => ({
    role: 'power' as const,
    words: [word],
    unit: word === 'kw' ? 'kW' : word,
  })),
  ...phrases('boost', 'boost', 'boost pressure', 'turbo pressure'),
  ...doubtful('boost', 'charge pressure'),
  ...phrases('manifoldPressure', 'map', 'manifold pressure', 'plenum pressure', 'intake manifold pressure'),
  ...phrases(
    'chargeTemperature',
    'charge temperature',
    'charge air temperature',
    'manifold temperature',
    'plenum temperature',
    'intake manifold temperature',
  ),
  ...phrases(
    'chargeTemperature',
    'cooler outlet temperature',
    'core outlet temperature',
    'after cooler temperature',
    'after core temperature',
  ),
  ...phrases('chargeTemperature', 'charge cooler outlet temperature', 'after charge cooler temperature'),
  ...doubtful('chargeTemperature', 'iat', 'intake temperature', 'inlet temperature'),
  ...phrases(
    'compressorOutletTemperature',
    'compressor outlet temperature',
    'compressor discharge temperature',
    'turbo outlet temperature',
  ),
  ...phrases(
    'compressorOutletTemperature',
    'after compressor temperature',
    'after turbo temperature',
    'before cooler temperature',
  ),
  ...phrases(
    'compressorOutletTemperature',
    'cooler inlet temperature',
    'core inlet temperature',
    'before core temperature',
  ),
  ...phrases('compressorOutletTemperature', 'charge cooler inlet temperature', 'before charge cooler temperature'),
  ...unitNeeded(
    'compressorOutletPressure',
    'compressor outlet pressure',
    'compressor discharge pressure',
    'turbo outlet pressure',
    'before cooler pressure',
    'cooler inlet pressure',
    'core inlet pressure',
    'before core pressure',
  ),
  ...phrases(
    'faceTemperature',
    'face temperature',
    'core face temperature',
    'cooler face temperature',
    'cooling air temperature',
  ),
  ...phrases(
    'intakeTemperature',
    'compressor inlet temperature',
    'turbo inlet temperature',
    'before compressor temperature',
  ),
  ...phrases(
    'intakeTemperature',
    'before turbo temperature',
    'airbox temperature',
    'air box temperature',
    'filter temperature',
  ),
  ...phrases(
    'roomTemperature',
    'room temperature',
    'ambient temperature',
    'cell temperature',
    'test cell temperature',
    'outside temperature',
  ),
  ...phrases(
    'barometer',
    'barometer',
    'barometer pressure',
    'barometric pressure',
    'atmospheric pressure',
    'ambient pressure',
    'room pressure',
    'cell pressure',
  ),
  ...phrases('relativeHumidity', 'humidity', 'relative humidity', 'rh', 'room humidity', 'ambient humidity'),
  ...phrases('lambda', 'lambda', 'λ'),
  ...phrases('airFuelRatio', 'afr', 'air fuel ratio', 'air fuel', 'a f', 'a f ratio'),
  ...unitNeeded(
    'sparkAdvance',
    'ignition advance',
    'ignition timing',
    'ignition angle',
    'ignition advance angle',
    'ignition timing angle',
  ),
  ...unitNeeded('sparkAdvance', 'spark advance', 'spark timing', 'spark angle', 'timing advance'),
  ...unitNeeded('sparkAdvance', 'zündwinkel', 'zuendwinkel', 'zündzeitpunkt', 'zuendzeitpunkt', 'zzp', 'zw'),
  ...phrases('airFlow', 'air flow', 'air mass flow', 'mass air flow', 'air mass', 'airflow', 'maf', 'intake flow'),
  ...phrases('fuelFlow', 'fuel flow', 'fuel mass flow', 'fuel consumption', 'fuel mass'),
  ...phrases('fuelVolumeFlow', 'fuel volume flow', 'fuel flow', 'fuel consumption'),
  ...onlyWithUnit('fuelFlow', 'fuel'),
  ...onlyWithUnit('fuelVolumeFlow', 'fuel'),
  ...phrases('oilTemperature', 'oil temperature'),
  ...phrases('coolantTemperature', 'coolant temperature', 'water temperature', 'ect', 'clt'),
  ...phrases('fuelPressure', 'fuel pressure', 'fuel rail pressure', 'rail pressure'),
  ...phrases('vehicleSpeed', 'vehicle speed', 'road speed', 'gps speed', 'vss'),
  ...onlyWithUnit('vehicleSpeed', 'speed', 'wheel speed'),
  ...phrases('pull', 'pull', 'pull number', 'pull no'),
];

/** Short for the words after it. */
const SHORT_FORMS: Readonly<Record<string, string>> = {
  temp: 'temperature',
  temps: 'temperature',
  tmp: 'temperature',
  press: 'pressure',
  pres: 'pressure',
  baro: 'barometer',
  tq: 'torque',
  trq: 'torque',
  pwr: 'power',
  comp: 'compressor',
  amb: 'ambient',
  hum: 'humidity',
  eng: 'engine',
  ign: 'ignition',
  adv: 'advance',
  veh: 'vehicle',
  out: 'outlet',
  pre: 'before',
  post: 'after',
  intercooler: 'cooler',
  ic: 'cooler',
  aftercooler: 'cooler',
  chargecooler: 'cooler',
  turbocharger: 'turbo',
  corr: 'corrected',
  uncorr: 'observed',
  uncorrected: 'observed',
  obs: 'observed',
};

/**
 * What a header says of a correction to a standard atmosphere: that none was made (`observed`), that one was made, or what the trade calls
 * the standard it was made to.
 */
export type SaidCorrection = 'observed' | 'corrected' | 'SAE' | 'STD' | 'DIN' | 'ECE' | 'ISO' | 'JIS';

/** How the trade says so beside torque and power; common practice, no source. A number goes before a word: SAE J607 is what is called STD. */
const CORRECTION_WORDS: Readonly<Record<string, SaidCorrection>> = {
  j607: 'STD',
  std: 'STD',
  stp: 'STD',
  j1349: 'SAE',
  sae: 'SAE',
  '70020': 'DIN',
  din: 'DIN',
  r85: 'ECE',
  ece: 'ECE',
  eec: 'ECE',
  ewg: 'ECE',
  '1585': 'ISO',
  iso: 'ISO',
  jis: 'JIS',
  corrected: 'corrected',
  observed: 'observed',
};

/** Words that change nothing about what a channel is. */
const FILLERS = new Set(
  'air sensor actual measured reading value channel signal raw average avg mean the of at in number no filtered smoothed logged engine bank absolute abs gauge gage relative rel'.split(
    ' ',
  ),
);

const MOST_WORDS = 8;

/** What a header's words may mean, likeliest first. Words that are not understood leave a header unread: an ECU's torque is no measured one. */
export function readingsOf(name: string): Reading[] {
  const all = wordsOf(name);
  const words = all.filter((word) => !Object.hasOwn(CORRECTION_WORDS, word));
  if (words.length === 0 || all.length > MOST_WORDS) return [];
  const correction = saidCorrection(name);
  return PHRASES.flatMap((phrase): Reading[] => {
    if (!phrase.words.every((word) => words.includes(word))) return [];
    const extras = words.filter((word) => !phrase.words.includes(word));
    if (!extras.every((word) => FILLERS.has(word) || /^\d{1,2}$/.test(word))) return [];
    const { role, doubt = 0, unit, isOnlyWithUnit = false } = phrase;
    if (correction !== undefined && role !== 'torque' && role !== 'power') return [];
    // Where a logger writes both, what was measured goes before what was made of it.
    const more = correction === undefined || correction === 'observed' ? 0 : 1;
    return [
      { role, doubt: doubt + more, extras: extras.length, isOnlyWithUnit, ...(unit === undefined ? {} : { unit }) },
    ];
  }).sort((a, b) => a.extras - b.extras);
}

/** What a header says of a correction to a standard atmosphere; undefined where it says nothing. */
export function saidCorrection(name: string): SaidCorrection | undefined {
  const words = wordsOf(name);
  const said = Object.keys(CORRECTION_WORDS).filter((word) => words.includes(word));
  const numbered = said.find((word) => /\d/.test(word));
  return CORRECTION_WORDS[numbered ?? said[0] ?? ''];
}

function wordsOf(name: string): string[] {
  return name
    .slice(0, 100)
    .replaceAll(/([a-z]{2})([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map((word) => (Object.hasOwn(SHORT_FORMS, word) ? SHORT_FORMS[word]! : word));
}

/** The role of a pressure at the manifold follows the zero it counts from: boost from the air around, manifold pressure from vacuum. */
export function withZero(role: Role, zero: PressureZero | undefined): Role {
  if (role === 'boost' && zero === 'absolute') return 'manifoldPressure';
  return role === 'manifoldPressure' && zero === 'gauge' ? 'boost' : role;
}
