// What a Monte Carlo propagation costs against a bare loop that draws the same inputs from the same generator, computes the same arithmetic
// written out and sorts the results. Quote the ratios: the machine's speed cancels in them.
//
//   npx tsx benchmarks/monte-carlo.ts [draws]
import { meanOfRepeats, measured, monteCarlo, sensor, solve } from '../src/calculation/index.js';
import { Generator } from '../src/calculation/draws/generator.js';
import { normalDraw } from '../src/calculation/draws/normal.js';
import { outletTemperature } from '../src/compressor/index.js';
import {
  absolute,
  absolutePressure,
  gaugePressure,
  massFlow,
  percent,
  pressureDifference,
  ratio,
  ratioOf,
  subtract,
  temperature,
  temperatureDifference,
  type Quantity,
} from '../src/units/index.js';

const draws = Number(process.argv[2] ?? 1e6);

const boost = measured('boost', gaugePressure(1.1, 'bar'), { standardUncertainty: pressureDifference(2, 'kPa') });
const barometer = measured('barometer', absolutePressure(941.2, 'hPa'), {
  standardUncertainty: pressureDifference(1, 'hPa'),
});
const inlet = measured('inlet probe', temperature(18, '°C'), { standardUncertainty: temperatureDifference(0.5, 'K') });
const efficiency = measured('efficiency', percent(70), { standardUncertainty: percent(2) });

/** Three steps: absolute pressure, pressure ratio, outlet temperature. */
const outlet = outletTemperature({
  inletTemperature: inlet,
  pressureRatio: ratioOf(absolute(boost, barometer), barometer),
  isentropicEfficiency: efficiency,
});

function bareLoop(): number {
  const random = Generator.seeded(1);
  const results = new Float64Array(draws);
  for (let i = 0; i < draws; i++) {
    const p = 110_000 + 2000 * normalDraw(random.uniform());
    const b = 94_120 + 100 * normalDraw(random.uniform());
    const T = 291.15 + 0.5 * normalDraw(random.uniform());
    const eta = 0.7 + 0.02 * normalDraw(random.uniform());
    const k = 1.4;
    results[i] = T * (1 + (((p + b) / b) ** ((k - 1) / k) - 1) / eta);
  }
  results.sort();
  return results[draws >> 1]!;
}

const probe = sensor('temperature', { label: 'charge probe', halfWidth: temperatureDifference(1, 'K') });
const side = (label: string, values: readonly number[]): Quantity<'temperature'> =>
  meanOfRepeats(
    label,
    values.map((value) => probe.reads(temperature(value, '°C'))),
  );
const change = subtract(side('after', [41.2, 40.6, 41.9, 41]), side('before', [52.3, 53.1, 51.8, 52.9]));

const half = measured('half flow', massFlow(50, 'g/s'), { standardUncertainty: massFlow(1, 'g/s') });
const { solution: solved } = solve(
  { label: 'flow', kind: 'mass flow', unit: 'g/s', between: [massFlow(1, 'g/s'), massFlow(1, 'kg/s')] },
  (flow) => ({ residual: subtract(ratioOf(flow, half), ratio(2)) }),
);

/** Processor time, which other work on the machine does not stretch. */
function seconds(run: () => unknown): number {
  run();
  return Math.min(
    ...Array.from({ length: 3 }, () => {
      const start = process.cpuUsage();
      run();
      const { user, system } = process.cpuUsage(start);
      return (user + system) / 1e6;
    }),
  );
}

const bare = seconds(bareLoop);
const solvedDraws = Math.max(20_000, draws / 10);
const rows: readonly [string, number, number][] = [
  ['bare loop: four normal inputs, three steps', draws, bare],
  ['monteCarlo: the same, checked', draws, seconds(() => monteCarlo(outlet, { seed: 1, draws }))],
  [
    'monteCarlo: change between two means of four repeats, one sensor',
    draws,
    seconds(() => monteCarlo(change, { seed: 1, draws })),
  ],
  [
    'monteCarlo: through a solved equation',
    solvedDraws,
    seconds(() => monteCarlo(solved, { seed: 1, draws: solvedDraws })),
  ],
];
console.table(
  rows.map(([what, count, time]) => ({
    what,
    draws: count,
    'processor seconds': Number(time.toPrecision(3)),
    'us a draw': Number(((1e6 * time) / count).toPrecision(3)),
    'times the bare loop': Number((time / count / (bare / draws)).toPrecision(3)),
  })),
);
const adaptive = monteCarlo(outlet, { seed: 1 });
console.log(
  `until settled: ${seconds(() => monteCarlo(outlet, { seed: 1 })).toPrecision(2)} s for ${adaptive.draws} draws\n`,
);
console.log(adaptive.toText());
