// What a checked call, a call over columns and the bare kernel cost against the same arithmetic written out, all in one run.
// Quote the ratios: the machine's speed cancels in them.
import { Bench } from 'tinybench';
import { explain, measured, uncertainty, whatIf } from '../src/calculation/index.js';
import { outletTemperature } from '../src/compressor/index.js';
import { effectivenessCrossflowUnmixed } from '../src/intercooler/index.js';
import { humidAirFromRelativeHumidity, wetBulb } from '../src/psychrometrics/index.js';
import {
  absolute,
  absolutePressure,
  column,
  gaugePressure,
  percent,
  pressureDifference,
  ratio,
  ratioOf,
  relativeHumidity,
  temperature,
} from '../src/units/index.js';

const ROWS = 10_000;
const barometer = absolutePressure(941.2, 'hPa');
const boost = measured('boost', gaugePressure(1.1, 'bar'), { standardUncertainty: pressureDifference(2, 'kPa') });
const inputs = {
  inletTemperature: temperature(18, '°C'),
  pressureRatio: ratio(2.17),
  isentropicEfficiency: percent(70),
};
const ratios = Float64Array.from({ length: ROWS }, (_, i) => 1.2 + (2 * i) / ROWS);
const ratioColumn = column('ratio', ratios, '1');
const hot = outletTemperature({ ...inputs, pressureRatio: ratioOf(absolute(boost, barometer), barometer) });

const written = (T1: number, PR: number, eta: number, k: number): number => T1 * (1 + (PR ** ((k - 1) / k) - 1) / eta);
let sink = 0;

interface Timed {
  readonly name: string;
  /** Operations in one run of it. */
  readonly per: number;
  /** What it is measured against. */
  readonly against?: string;
  readonly run: () => void;
}

const timed: readonly Timed[] = [
  {
    name: 'outlet temperature, written out',
    per: ROWS,
    run: () => {
      for (let i = 0; i < ROWS; i++) sink += written(291.15, ratios[i]!, 0.7, 1.4);
    },
  },
  {
    name: 'outlet temperature, .kernel',
    per: ROWS,
    against: 'outlet temperature, written out',
    run: () => {
      for (let i = 0; i < ROWS; i++) sink += outletTemperature.kernel(291.15, ratios[i]!, 0.7, 1.4);
    },
  },
  {
    name: 'outlet temperature, .columns',
    per: ROWS,
    against: 'outlet temperature, written out',
    run: () => {
      sink += outletTemperature.columns({ ...inputs, pressureRatio: ratioColumn }).si[5]!;
    },
  },
  {
    name: 'outlet temperature, checked call',
    per: 1000,
    against: 'outlet temperature, written out',
    run: () => {
      for (let i = 0; i < 1000; i++) sink += outletTemperature(inputs).si;
    },
  },
  {
    name: 'a quantity',
    per: 1000,
    against: 'outlet temperature, written out',
    run: () => {
      for (let i = 0; i < 1000; i++) sink += temperature(i, '°C').si;
    },
  },
  {
    name: 'budget of a three-step chain',
    per: 1,
    against: 'outlet temperature, checked call',
    run: () => {
      sink += uncertainty(hot).standard.si;
    },
  },
  {
    name: 'what-if of a three-step chain',
    per: 1,
    against: 'outlet temperature, checked call',
    run: () => {
      sink += whatIf(hot, [[boost, gaugePressure(1.2, 'bar')]]).si;
    },
  },
  {
    name: 'worked example of a three-step chain, as text',
    per: 1,
    against: 'outlet temperature, checked call',
    run: () => {
      sink += explain(hot).toText().length;
    },
  },
  {
    name: 'crossflow effectiveness, kernel',
    per: 1000,
    against: 'outlet temperature, written out',
    run: () => {
      for (let i = 0; i < 1000; i++) sink += effectivenessCrossflowUnmixed.kernel(1 + i * 0.002, 0.3);
    },
  },
  {
    name: 'wet bulb, kernel',
    per: 1000,
    against: 'outlet temperature, written out',
    run: () => {
      for (let i = 0; i < 1000; i++) sink += wetBulb.kernel(298.15, 94120, 0.004 + i * 5e-6);
    },
  },
  {
    name: 'humid-air state from relative humidity, humidity ratio read',
    per: 1,
    against: 'outlet temperature, checked call',
    run: () => {
      sink += humidAirFromRelativeHumidity({
        temperature: temperature(18, '°C'),
        pressure: barometer,
        relativeHumidity: relativeHumidity(45, '%'),
      }).humidityRatio.si;
    },
  },
];

const bench = new Bench({ time: 300, warmupTime: 100 });
for (const { name, run } of timed) bench.add(name, run);
await bench.run();

const nanoseconds = new Map(
  timed.map(({ name, per }) => {
    const task = bench.getTask(name);
    const median = task?.result && 'latency' in task.result ? task.result.latency.p50 : NaN;
    return [name, (median * 1e6) / per];
  }),
);
const rows = timed.map(({ name, against }) => ({
  what: name,
  'ns each (median)': Number(nanoseconds.get(name)!.toPrecision(3)),
  times:
    against === undefined ? '' : `${(nanoseconds.get(name)! / nanoseconds.get(against)!).toPrecision(3)} × ${against}`,
}));
console.table(rows);
if (!Number.isFinite(sink)) throw new Error('a benchmark computed nothing');
