/**
 * Writes the demo logs beside this file: an invented day on a hub dynamometer, with known causes planted in it.
 *
 *     npx tsx docs/examples/demo-data/make-demo-data.ts
 *
 * Seeded: writing the files again reproduces them byte for byte. Stands alone, without the library, so that the library
 * cannot agree with the demo by sharing its code. README.md says what is planted.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  type Circumstances,
  meanHubPower,
  nominalCircumstances,
  pullTruth,
  type Reading,
  type Room,
  timeStep,
} from './demo-pull.js';
import { type Channel, type LogHabit, type SetUp, setUps } from './demo-set-ups.js';

/** Chosen, out of seeds that mostly do the same, so that the demo shows every verdict: README.md gives the odds. */
export const demoSeed = 4;

const stock = 'stock core';
const tall = 'tall core';
const duct = 'tall core + duct';
const hose = 'short inlet hose';

/** The order of the day. Every set-up comes early and late, so a drift of the room cannot pass for a set-up. */
export const dayOrder: readonly string[] = [
  ...[stock, tall, hose, duct, tall, stock, hose, tall, stock, hose],
  ...[duct, tall, tall, hose, stock, hose, duct, hose, tall, stock],
];

/** The pull in which the fuel pump fades, so that the mixture goes lean above 4500/min. */
export const leanPull = { setUp: tall, number: 4 };

export interface DemoPull {
  setUp: SetUp;
  number: number;
  room: Room;
  circumstances: Circumstances;
}

/** Standard normal and uniform numbers from a 32-bit state (mulberry32, Box-Muller). */
class Random {
  #state: number;

  constructor(seed: number, stream: string) {
    this.#state = seed >>> 0;
    for (const character of stream) {
      this.#state = Math.imul(this.#state ^ character.codePointAt(0)!, 0x01000193) >>> 0;
    }
    for (let step = 0; step < 8; step++) this.uniform();
  }

  uniform(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  normal(): number {
    return Math.sqrt(-2 * Math.log(1 - this.uniform())) * Math.cos(2 * Math.PI * this.uniform());
  }
}

/** The weather of the day: the room warms until mid-afternoon while the barometer falls. */
export function roomAt(clock: number): Room {
  const hours = clock / 3600 - 9;
  const swing = Math.sin((Math.PI * (hours - 3)) / 8);
  return {
    clock,
    temperature: 273.15 + 18 + 1.4 * swing + 0.2 * Math.sin(2.3 * hours + 0.7),
    barometer: 94110 - 170 * Math.tanh((hours - 3) / 2.5) + 20 * Math.sin(1.7 * hours),
    humidity: 0.47 - 0.05 * swing + 0.01 * Math.sin(1.1 * hours),
  };
}

/** Every pull of the day in the order it was made. */
export function dayOfPulls(seed: number): DemoPull[] {
  const counts = new Map<string, number>();
  let clock = 9 * 3600 + 12 * 60;
  return dayOrder.map((folder) => {
    const setUp = setUps.find((each) => each.folder === folder)!;
    const number = (counts.get(folder) ?? 0) + 1;
    counts.set(folder, number);
    const random = new Random(seed, `${folder} ${number} circumstances`);
    const fuelPumpFails = folder === leanPull.setUp && number === leanPull.number;
    const room = roomAt(Math.round(clock));
    clock += (fuelPumpFails ? 38 : 17) * 60 + 150 * random.uniform();
    return {
      setUp,
      number,
      room,
      circumstances: {
        springOffset: 800 * random.normal(),
        lambdaOffset: 0.004 * random.normal(),
        oilStart: nominalCircumstances.oilStart + 2 * random.normal(),
        coolantStart: nominalCircumstances.coolantStart + 1.2 * random.normal(),
        coreAboveFace: Math.max(0.5, nominalCircumstances.coreAboveFace + 1.2 * random.normal()),
        hunting: {
          amplitude: 1100 + 500 * random.uniform(),
          frequency: 1.2 + 0.7 * random.uniform(),
          phase: 2 * Math.PI * random.uniform(),
        },
        repeatability: 1 + 0.004 * random.normal(),
        rampFactor: 1 + 0.004 * random.normal(),
        fuelPumpFails,
      },
    };
  });
}

/** Standard deviation of the noise in SI and first-order lag in s of the sensor behind each channel. */
const sensors: Record<Channel, { noise: number; lag: number }> = {
  time: { noise: 0, lag: 0 },
  clock: { noise: 0, lag: 0 },
  engineSpeed: { noise: 1.5, lag: 0 },
  torque: { noise: 1.2, lag: 0 },
  boost: { noise: 250, lag: 0.03 },
  manifoldPressure: { noise: 250, lag: 0.03 },
  chargeTemperature: { noise: 0.15, lag: 0.5 },
  compressorOutlet: { noise: 0.3, lag: 0.9 },
  faceTemperature: { noise: 0.15, lag: 0.7 },
  room: { noise: 0.06, lag: 0 },
  barometer: { noise: 6, lag: 0 },
  humidity: { noise: 0.003, lag: 0 },
  lambda: { noise: 0.003, lag: 0.15 },
  airFlow: { noise: 0.0006, lag: 0.05 },
  oil: { noise: 0.1, lag: 1 },
  coolant: { noise: 0.1, lag: 1 },
  fuelPressure: { noise: 1500, lag: 0.05 },
};

/** Zero and size of each written unit in SI. */
const writtenUnits: Record<string, { zero: number; size: number }> = {
  '': { zero: 0, size: 1 },
  '-': { zero: 0, size: 1 },
  s: { zero: 0, size: 1 },
  rpm: { zero: 0, size: 1 },
  '1/min': { zero: 0, size: 1 },
  '%': { zero: 0, size: 0.01 },
  'lb-ft': { zero: 0, size: 1.3558179483314 },
  Nm: { zero: 0, size: 1 },
  'N m': { zero: 0, size: 1 },
  psi: { zero: 0, size: 6894.757293168361 },
  bar: { zero: 0, size: 1e5 },
  kPa: { zero: 0, size: 1e3 },
  hPa: { zero: 0, size: 100 },
  inHg: { zero: 0, size: 3386.38864 },
  F: { zero: 459.67 / 1.8, size: 1 / 1.8 },
  '°C': { zero: 273.15, size: 1 },
  degC: { zero: 273.15, size: 1 },
  'g/s': { zero: 0, size: 1e-3 },
  'lb/min': { zero: 0, size: 0.45359237 / 60 },
};

/** What the sensors made of a pull, at the rate of the logger. */
function sensed(truth: readonly Reading[], rate: number, random: Random): Reading[] {
  const every = Math.round(1 / (rate * timeStep));
  const followed: Reading = { ...truth[0]! };
  const channels = Object.keys(sensors) as Channel[];
  const samples: Reading[] = [];
  truth.forEach((now, step) => {
    for (const channel of channels) {
      const { lag } = sensors[channel];
      followed[channel] += (now[channel] - followed[channel]) * (lag === 0 ? 1 : 1 - Math.exp(-timeStep / lag));
    }
    if (step % every !== 0) return;
    const sample = { ...followed };
    for (const channel of channels) sample[channel] += sensors[channel].noise * random.normal();
    samples.push(sample);
  });
  return samples;
}

/** A number as the logger prints it: rounded to its step, with no more decimals than the step has. */
function printed(value: number, step: number, decimal: string): string {
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  return (Math.round(value / step) * step).toFixed(decimals).replace('.', decimal);
}

function headerRows({ columns, units, separator }: LogHabit): string[] {
  const words = columns.map(([, word]) => word);
  const written = columns.map(([, , unit]) => unit);
  if (units === 'own row') return [words.join(separator), written.join(separator)];
  const [open, close] = units === 'brackets' ? ['[', ']'] : ['(', ')'];
  return [
    words.map((word, at) => (written[at] === '' ? word : `${word} ${open}${written[at]}${close}`)).join(separator),
  ];
}

/** Sensors that drop a sample now and then; the ones a pull cannot do without never do. */
const droppable: readonly Channel[] = ['lambda', 'chargeTemperature', 'faceTemperature', 'fuelPressure', 'airFlow'];

function logText(pull: DemoPull, seed: number): string {
  const { log } = pull.setUp;
  const stream = `${pull.setUp.folder} ${pull.number}`;
  const samples = sensed(
    pullTruth(pull.setUp, pull.room, pull.circumstances),
    log.rate,
    new Random(seed, `${stream} sensors`),
  );
  const dropped = new Set<string>();
  const random = new Random(seed, `${stream} dropped`);
  while (dropped.size < log.blankCells) {
    const channel = droppable[Math.floor(random.uniform() * droppable.length)]!;
    dropped.add(`${Math.floor(random.uniform() * samples.length)} ${channel}`);
  }
  const rows = samples.map((sample, row) =>
    log.columns
      .map(([channel, , unit, step]) => {
        const { zero, size } = writtenUnits[unit]!;
        return dropped.has(`${row} ${channel}`) ? '' : printed((sample[channel] - zero) / size, step, log.decimal);
      })
      .join(log.separator),
  );
  return (log.byteOrderMark ? '\uFEFF' : '') + [...headerRows(log), ...rows, ''].join(log.lineEnd);
}

/** Text of every log by its path below this folder. */
export function demoLogs(seed = demoSeed): Map<string, string> {
  return new Map(
    dayOfPulls(seed).map((pull) => [`${pull.setUp.folder}/pull ${pull.number}.csv`, logText(pull, seed)] as const),
  );
}

/** Mean power at the hubs from 3500 to 6500/min, in W, of one set-up at mid-day without scatter, hunting or noise. */
export function trueMeanHubPower(setUp: SetUp): number {
  return meanHubPower(pullTruth(setUp, roomAt(12 * 3600), nominalCircumstances), 3500, 6500);
}

export function writeDemoLogs(folder: string): void {
  for (const { folder: name } of setUps) {
    mkdirSync(join(folder, name), { recursive: true });
    for (const file of readdirSync(join(folder, name))) if (file.endsWith('.csv')) rmSync(join(folder, name, file));
  }
  for (const [path, text] of demoLogs()) writeFileSync(join(folder, path), text);
}

const started = process.argv[1];
if (started !== undefined && import.meta.url === pathToFileURL(started).href) {
  writeDemoLogs(dirname(fileURLToPath(import.meta.url)));
}
