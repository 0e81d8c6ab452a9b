// What a checked call, a call over columns and the bare kernel cost against the same arithmetic written out, all in one run.
// Quote the ratios: the machine's speed cancels in them.
import { Bench } from 'tinybench';
import { moistAirDensityFromVapourPressure } from '../src/air/index.js';
import { explain, measured, uncertainty, whatIf } from '../src/calculation/index.js';
import { outletTemperature, outletTemperatureVariableHeat } from '../src/compressor/index.js';
import { effectivenessCrossflowUnmixed } from '../src/intercooler/index.js';
import {
  dewPoint,
  humidAirFromRelativeHumidity,
  vapourPressureFromRelativeHumidity,
  wetBulb,
  type HumidAir,
} from '../src/psychrometrics/index.js';
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
import * as written from './written-out.js';

const ROWS = 10_000;
const barometer = absolutePressure(941.2, 'hPa');
const boost = measured('boost', gaugePressure(1.1, 'bar'), { standardUncertainty: pressureDifference(2, 'kPa') });
const inputs = {
  inletTemperature: temperature(18, '°C'),
  pressureRatio: ratio(2.17),
  isentropicEfficiency: percent(70),
};
const core = { transferUnits: ratio(2), capacityRatio: ratio(0.3) };
const room = { temperature: temperature(18, '°C'), pressure: barometer, relativeHumidity: relativeHumidity(45, '%') };
const spread = (from: number, to: number): Float64Array =>
  Float64Array.from({ length: ROWS }, (_, i) => from + ((to - from) * i) / ROWS);
const ratios = spread(1.2, 3.2);
const units = spread(1, 3);
const humidities = spread(0.4, 0.9);
const ratioColumn = column('ratio', ratios, '1');
const unitColumn = column('ratio', units, '1');
const humidityColumn = column('relative humidity', humidities, '1');
const hot = outletTemperature({ ...inputs, pressureRatio: ratioOf(absolute(boost, barometer), barometer) });

const stateOf = (): HumidAir => humidAirFromRelativeHumidity(room);
const everything = ({ density, dryDensity, dewPoint, wetBulb, enthalpy, degreeOfSaturation }: HumidAir): number =>
  [density, dryDensity, dewPoint, wetBulb, enthalpy, degreeOfSaturation].reduce((sum, { si }) => sum + si, 0);

/** Both sides of a comparison must compute the same. */
function requireSame(what: string, library: number, bare: number): void {
  if (!(Math.abs(library / bare - 1) < 1e-9)) throw new Error(`${what}: ${library} is not ${bare}`);
}
const [density, dew] = written.humidAir(room.temperature.si, barometer.si, 0.45);
requireSame('density', stateOf().density.si, density);
requireSame('dew point', stateOf().dewPoint.si, dew);
requireSame('outlet', outletTemperature(inputs).si, written.outletTemperature(291.15, 2.17, 0.7, 1.4));
requireSame(
  'outlet, variable heat capacity',
  outletTemperatureVariableHeat(inputs).si,
  written.outletTemperatureVariableHeat(291.15, 2.17, 0.7),
);
requireSame('effectiveness', effectivenessCrossflowUnmixed(core).si, written.effectivenessCrossflow(2, 0.3));

let sink = 0;

interface Timed {
  readonly name: string;
  /** Operations in one run of it. */
  readonly per: number;
  /** What it is measured against. */
  readonly against?: string;
  readonly run: () => void;
}

/** Columns and kernels go through all rows, calls with quantities through a tenth. */
const each = (rows: number, compute: (i: number) => number) => (): void => {
  for (let i = 0; i < rows; i++) sink += compute(i);
};

interface Ways {
  readonly written: (i: number) => number;
  readonly kernel: (i: number) => number;
  readonly columns: () => number;
  readonly checked: (i: number) => number;
}

/** One calculation in the four ways it can be asked for. */
function inAllWays(what: string, { written, kernel, columns, checked }: Ways): Timed[] {
  const against = `${what}, written out`;
  return [
    { name: against, per: ROWS, run: each(ROWS, written) },
    { name: `${what}, .kernel`, per: ROWS, against, run: each(ROWS, kernel) },
    { name: `${what}, .columns`, per: ROWS, against, run: each(1, columns) },
    { name: `${what}, checked call`, per: 1000, against, run: each(1000, checked) },
  ];
}

const CALL = 'outlet temperature, checked call';
const AIR = 'humid air, density and dew point';

const timed: readonly Timed[] = [
  ...inAllWays('outlet temperature', {
    written: (i) => written.outletTemperature(291.15, ratios[i]!, 0.7, 1.4),
    kernel: (i) => outletTemperature.kernel(291.15, ratios[i]!, 0.7, 1.4),
    columns: () => outletTemperature.columns({ ...inputs, pressureRatio: ratioColumn }).si[5]!,
    checked: () => outletTemperature(inputs).si,
  }),
  ...inAllWays('outlet temperature, variable heat capacity', {
    written: (i) => written.outletTemperatureVariableHeat(291.15, ratios[i]!, 0.7),
    kernel: (i) => outletTemperatureVariableHeat.kernel(291.15, ratios[i]!, 0.7, 0),
    columns: () => outletTemperatureVariableHeat.columns({ ...inputs, pressureRatio: ratioColumn }).si[5]!,
    checked: () => outletTemperatureVariableHeat(inputs).si,
  }),
  ...inAllWays('crossflow effectiveness, exact', {
    written: (i) => written.effectivenessCrossflow(units[i]!, 0.3),
    kernel: (i) => effectivenessCrossflowUnmixed.kernel(units[i]!, 0.3),
    columns: () => effectivenessCrossflowUnmixed.columns({ ...core, transferUnits: unitColumn }).si[5]!,
    checked: () => effectivenessCrossflowUnmixed(core).si,
  }),
  ...inAllWays(AIR, {
    written: (i) => {
      const [density, dew] = written.humidAir(291.15, 94120, humidities[i]!);
      return density + dew;
    },
    kernel: (i) => {
      const pv = vapourPressureFromRelativeHumidity.kernel(291.15, humidities[i]!);
      return moistAirDensityFromVapourPressure.kernel(291.15, 94120, pv, 287.042) + dewPoint.kernel(pv);
    },
    columns: () => {
      const { temperature, pressure } = room;
      const relativeHumidity = humidityColumn;
      const vapourPressure = vapourPressureFromRelativeHumidity.columns({ temperature, relativeHumidity });
      const density = moistAirDensityFromVapourPressure.columns({ temperature, pressure, vapourPressure });
      return density.si[5]! + dewPoint.columns({ vapourPressure }).si[5]!;
    },
    checked: () => {
      const { density, dewPoint } = stateOf();
      return density.si + dewPoint.si;
    },
  }),
  {
    name: 'humid air, every property',
    per: 100,
    against: `${AIR}, checked call`,
    run: each(100, () => everything(stateOf())),
  },
  { name: 'a quantity', per: 1000, against: CALL, run: each(1000, (i) => temperature(i, '°C').si) },
  { name: 'budget of a three-step chain', per: 1, against: CALL, run: each(1, () => uncertainty(hot).standard.si) },
  {
    name: 'what-if of a three-step chain',
    per: 1,
    against: CALL,
    run: each(1, () => whatIf(hot, [[boost, gaugePressure(1.2, 'bar')]]).si),
  },
  {
    name: 'worked example of a three-step chain, as text',
    per: 1,
    against: CALL,
    run: each(1, () => explain(hot).toText().length),
  },
  {
    name: 'wet bulb, .kernel',
    per: 1000,
    against: `${AIR}, written out`,
    run: each(1000, (i) => wetBulb.kernel(298.15, 94120, 0.004 + i * 5e-6)),
  },
];

const bench = new Bench({ time: 300, warmupTime: 100 });
for (const { name, run } of timed) bench.add(name, run);
await bench.run();

const nanoseconds = new Map(
  timed.map(({ name, per }) => {
    const task = bench.getTask(name);
    if (!task?.result || !('latency' in task.result)) throw new Error(`${name} did not run`, { cause: task?.result });
    return [name, (task.result.latency.p50 * 1e6) / per];
  }),
);
const rows = timed.map(({ name, against }) => {
  const each = nanoseconds.get(name)!;
  return {
    what: name,
    'ns each (median)': Number(each.toPrecision(3)),
    'per second': Number((1e9 / each).toPrecision(3)).toLocaleString('en'),
    times: against === undefined ? '' : `${(each / nanoseconds.get(against)!).toPrecision(3)} × ${against}`,
  };
});
console.table(rows);
if (!Number.isFinite(sink)) throw new Error('a benchmark computed nothing');
