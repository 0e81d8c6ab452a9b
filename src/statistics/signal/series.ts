import { StatisticsError } from '../errors.js';

/** Refuses times that do not rise from row to row, values that are not as many, and too few readings. */
export function requireSeries(statistic: string, times: Float64Array, values: Float64Array, least: number): void {
  if (times.length !== values.length) {
    throw new StatisticsError({
      code: 'unequal-lengths',
      statistic,
      input: 'values',
      need: `be as many as the times, ${times.length}`,
      got: String(values.length),
    });
  }
  let readings = 0;
  let before = -Infinity;
  for (let row = 0; row < times.length; row++) {
    if (!(times[row]! > before)) {
      throw new StatisticsError({
        code: 'not-increasing',
        statistic,
        input: `times[${row}]`,
        need: `be above the time before it, ${before}`,
        got: String(times[row]),
      });
    }
    before = times[row]!;
    if (!Number.isNaN(values[row]!)) readings++;
  }
  if (readings < least) {
    throw new StatisticsError({
      code: 'too-few-points',
      statistic,
      input: 'values',
      need: `hold at least ${least} readings`,
      got: String(readings),
    });
  }
}
