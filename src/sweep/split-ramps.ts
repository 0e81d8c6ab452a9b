import { presentRows } from '../statistics/signal/index.js';
import { takeRowsOf } from './keep-rows.js';
import type { Pull } from './pull.js';
import { figure } from './words-for-people.js';

/** A turn of less than this share of the range of speed begins no new ramp. */
const SMALLEST_TURN = 0.1;

/**
 * The ramps of a recording that goes up and down, each as a pull of its own: an up and a down ramp tell the lag of a sensor.
 *
 * @returns The ramps in order of time, with a name that says which; the pull itself where it has one.
 * @example
 * const [up, down] = splitRamps(pull);
 * lagOfRamps(up, down, 'chargeTemperature')
 */
export function splitRamps(pull: Pull): readonly Pull[] {
  const speeds = pull.channels.engineSpeed?.si ?? new Float64Array(0);
  const turns = turningRows(speeds);
  if (turns.length <= 2) return [pull];
  return turns.slice(1).map((last, at) => {
    const first = turns[at]!;
    const [from, to] = [speeds[first]!, speeds[last]!].map((speed) => figure(Math.round(speed * 60))) as [
      string,
      string,
    ];
    const way = speeds[last]! > speeds[first]! ? 'up' : 'down';
    const rows = Array.from({ length: last - first + 1 }, (_, row) => first + row);
    const message = `The ramp ${way} from ${from} to ${to} rpm, ${rows.length} of ${pull.rows} rows.`;
    const readings = pull.rows - rows.length;
    const done = { code: 'rows kept', role: undefined, readings, noiseFactor: undefined, message } as const;
    return takeRowsOf(pull, rows, done, `${pull.name}, ramp ${at + 1} ${way}`);
  });
}

/** First row, the rows where speed turns by more than a tenth of its range, and the last row. */
function turningRows(speeds: Float64Array): number[] {
  const rows = presentRows(speeds);
  if (rows.length < 3) return [...rows];
  let [low, high] = [Infinity, -Infinity];
  for (const row of rows) {
    low = Math.min(low, speeds[row]!);
    high = Math.max(high, speeds[row]!);
  }
  const turn = SMALLEST_TURN * (high - low);
  const turns: number[] = [rows[0]!];
  let extreme = rows[0]!;
  let way = 0;
  for (const row of rows) {
    const ahead = speeds[row]! - speeds[extreme]!;
    if (way === 0 ? Math.abs(ahead) > turn : way * ahead < -turn) {
      if (way !== 0) turns.push(extreme);
      way = Math.sign(ahead);
      extreme = row;
    } else if (way !== 0 && way * ahead >= 0) extreme = row;
  }
  if (way !== 0) turns.push(extreme);
  return turns;
}
