/**
 * A long recording read as a stream, and the quality of every pull in it: time, rows a second and the most memory it took.
 *
 *   npx tsx benchmarks/streaming.ts [megabytes]
 */
import { pullQuality, readLogStream } from '../src/sweep/index.js';

const megabytes = Number(process.argv[2] ?? 50);
if (!(megabytes > 0)) throw new RangeError('the number of megabytes must be above 0');

const header =
  'Time (s),Engine speed (rpm),Torque (N m),Boost (kPa),Charge temp (°C),Compressor outlet temp (°C),Room temp (°C),Barometer (hPa),' +
  'Humidity (%),Lambda,Air mass flow (g/s),Oil temp (°C),Coolant temp (°C),Fuel pressure (kPa),Spare 1 (V),Spare 2 (V),Spare 3 (V)\n';

/** Idling for ten seconds, a pull of eleven at 50 rows a second, coasting down for eight, and again. */
function* recording(bytes: number): Generator<Uint8Array> {
  const encoder = new TextEncoder();
  const first = encoder.encode(header);
  yield first;
  let written = first.length;
  for (let row = 0; written < bytes;) {
    let text = '';
    for (const end = row + 2000; row < end; row++) {
      const t = row / 50;
      const at = t % 29;
      const speed = at < 10 ? 900 + 15 * Math.sin(3 * t) : at < 21 ? 2500 + 381 * (at - 10) : 6690 - 720 * (at - 21);
      const boost = at < 10 || at >= 21 ? -40 : 110 + 1.3 * Math.sin(2 * Math.PI * 1.5 * t);
      text += `${t.toFixed(2)},${speed.toFixed(0)},${(boost * 2).toFixed(1)},${boost.toFixed(2)},${(35 + at).toFixed(1)},${(90 + at).toFixed(1)},`;
      text += `18.0,941.2,45.1,0.82${row % 10},${(boost + 45).toFixed(1)},92.${row % 7},84.${row % 9},410,1.0${row % 5},2.0${row % 3},3.0${row % 8}\n`;
    }
    const piece = encoder.encode(text);
    written += piece.length;
    yield piece;
  }
}

const before = process.memoryUsage().rss;
let most = before;
let rows = 0;
let pulls = 0;
let oscillating = 0;
const start = performance.now();
const source = recording(megabytes * 1e6);
for await (const pull of readLogStream(source, {
  file: 'recording.csv',
  totalBytes: megabytes * 1e6,
  onProgress(progress) {
    most = Math.max(most, process.memoryUsage().rss);
    rows = progress.rows ?? 0;
  },
})) {
  pulls++;
  if (pullQuality(pull).oscillation !== undefined) oscillating++;
}
const seconds = (performance.now() - start) / 1000;
console.log(
  `${megabytes} MB, ${rows} rows of 17 columns, ${pulls} pulls, boost found oscillating in ${oscillating}: ${seconds.toFixed(1)} s ` +
    `(${(megabytes / seconds).toFixed(1)} MB a second, making the recording and judging each pull included), ` +
    `${((most - before) / 1e6).toFixed(0)} MB of memory above the ${(before / 1e6).toFixed(0)} MB at the start`,
);
