// What a large comparison costs: 50 pulls of 10,000 rows and 20 channels a set-up, read from text and compared, in one run.
import { compare } from '../src/comparison/index.js';
import { readPullsFrom, type LogFile } from '../src/sweep/index.js';
import { seeded } from '../test/support/random.js';

const PULLS = 50;
const ROWS = 10_000;
const random = seeded(1);

const HEADER = [
  ...['Time (s)', 'Clock (s)', 'Engine speed (rpm)', 'Torque (N m)', 'Boost (kPa)', 'Charge temp (°C)', 'Lambda'],
  ...['Air mass flow (g/s)', 'Barometer (hPa)', 'Room temp (°C)', 'Humidity (%)', 'Oil temp (°C)', 'Coolant temp (°C)'],
  ...[
    'Compressor outlet temp (°C)',
    'Core face temp (°C)',
    'Fuel pressure (bar)',
    'Spare 1',
    'Spare 2',
    'Spare 3',
    'Spare 4',
  ],
];

function log(pull: number, torque: number): string {
  const offset = 2 * (random() - 0.5);
  const rows = Array.from({ length: ROWS }, (_, i) => {
    const speed = 2500 + (4200 * i) / ROWS;
    const noise = random() - 0.5;
    const clock = 36000 + 600 * pull + i / 1000;
    const values = [
      i / 1000,
      clock,
      speed,
      torque + offset + noise,
      110 + noise / 5,
      38 + i / 2000,
      0.82 + noise / 100,
      speed / 33,
    ];
    return [...values, 941.2, 18, 45, 95, 88, 118, 20, 3, 1, 2, 3, 4].map((value) => value.toFixed(3)).join(',');
  });
  return [HEADER.join(','), ...rows].join('\n');
}

const files: LogFile[] = Array.from({ length: 2 * PULLS }, (_, i) => {
  const setup = i % 4 === 0 || i % 4 === 3 ? 'stock' : 'tall';
  return { path: `${setup}/pull ${i}.csv`, setup, data: log(i, setup === 'stock' ? 240 : 244) };
});

const seconds = (from: number): string => `${((performance.now() - from) / 1000).toFixed(2)} s`;
const beforeReading = performance.now();
const day = readPullsFrom(files);
console.log(`read ${day.pulls.length} pulls of ${ROWS} rows and ${HEADER.length} channels: ${seconds(beforeReading)}`);
for (const engineSpeed of [[3000, 6500] as const, undefined]) {
  const times: number[] = [];
  for (let run = 0; run < 5; run++) {
    const before = performance.now();
    const answer = compare(day.setup('stock'), day.setup('tall'), engineSpeed ? { engineSpeed } : {});
    times.push(performance.now() - before);
    if (run === 0) console.log(answer.headline);
  }
  times.sort((a, b) => a - b);
  const range = engineSpeed === undefined ? 'without a range' : 'with a range given';
  console.log(
    `compare ${range}: median ${(times[2]! / 1000).toFixed(2)} s of 5 runs, ${(times[2]! / 2000).toFixed(2)} s a set-up`,
  );
}
