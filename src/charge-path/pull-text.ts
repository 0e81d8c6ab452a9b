import { tableText } from '../calculation/table.js';
import type { PullInTime } from './pull-result.js';

const ROWS = 6;

/** A pull as a table of a few of its moments. */
export function pullText(pull: PullInTime): string {
  const { time, engineSpeed, chargeTemperature, sensorReading, coreTemperature, power } = pull;
  const last = time.length - 1;
  const rows = Array.from({ length: ROWS }, (_, i) => Math.round((i * last) / (ROWS - 1)));
  const at = (values: Float64Array, row: number, decimals: number): string => values[row]!.toFixed(decimals);
  return tableText({
    caption: `Pull of ${time.in('s')[last]!.toFixed(1)} s, ${engineSpeed.in('rpm')[0]!.toFixed(0)} to ${engineSpeed.in('rpm')[last]!.toFixed(0)} rpm`,
    columns: ['s', 'rpm', 'charge °C', 'sensor °C', 'core °C', 'kW'].map((head) => ({ head, align: 'right' })),
    rows: [...new Set(rows)].map((row) => [
      at(time.in('s'), row, 1),
      at(engineSpeed.in('rpm'), row, 0),
      at(chargeTemperature.in('°C'), row, 1),
      at(sensorReading.in('°C'), row, 1),
      at(coreTemperature.in('°C'), row, 1),
      at(power.in('kW'), row, 1),
    ]),
    remarks: [],
  });
}
