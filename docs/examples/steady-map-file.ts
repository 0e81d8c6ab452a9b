// What the examples on the measured map share: its engine, how it is read, and the air flow that it does not hold as a column.
//
// Measured: Oak Ridge National Laboratory (S. Sluder, R. Wagner), distributed by the US National Renewable Energy Laboratory under the
// licence that lies beside the data. It is read from ../shared/data beside this repository, or from the file named on the command line.
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { calculation, derived, input, output } from 'coldside/calculation';
import { brakeMeanEffectivePressure, powerFromTorque, sweptVolume } from 'coldside/engine';
import { column, length, ratio, type Column, type Kind, type UnitOf } from 'coldside/units';

export const stroke = length(95.5, 'mm');
export const displacement = sweptVolume({ bore: length(79.5, 'mm'), stroke, cylinders: ratio(4) });

// What the library does not have, one defines: from here on it is checked, runs over columns and can be explained like any other.
export const airFromExhaust = calculation({
  name: 'air flow from exhaust flow',
  task: 'describe the engine',
  inputs: {
    /** Mass flow of the exhaust. */
    exhaustFlow: input('m_e', 'mass flow', { min: 0, max: 10, typical: 0.07 }),
    /** Mass flow of the fuel. */
    fuelFlow: input('m_f', 'mass flow', { min: 0, max: 1, typical: 0.003 }),
  },
  output: output('m_a', 'mass flow', 'g/s'),
  formula: 'm_e - m_f',
  si: (exhaust, fuel) => exhaust - fuel,
  sources: [derived('conservation of mass')],
});

/** Takes out one column of the points that the engine attains, above 20 N·m. */
export type MapReader = <K extends Kind>(kind: K, name: string, unit: UnitOf<K>) => Column<K>;

/** Hands the map to whoever answers by it, or says that it is not there. */
export function withMap(answer: (map: MapReader) => void): void {
  const file =
    process.argv[2] ?? fileURLToPath(new URL('../../../shared/data/steady-map-1.9l-diesel.csv', import.meta.url));
  if (existsSync(file)) answer(attainable(readFileSync(file, 'utf8')));
  else console.log(`Nothing to show: there is no ${file}. Put the map there or name your own copy of it.`);
}

function attainable(text: string): MapReader {
  const [header, ...rows] = text
    .trim()
    .split('\n')
    .map((line) => line.trim().split(','));
  const numbers = (name: string): number[] => rows.map((cells) => Number(cells[header!.indexOf(name)]));
  const isAttained = numbers('attainable');
  const torque = numbers('torque_Nm');
  return (kind, name, unit) =>
    column(
      kind,
      numbers(name).filter((_, row) => isAttained[row] === 1 && torque[row]! > 20),
      unit,
    );
}

/** The middle of many values, and in brackets where nine of ten of them lie. */
export function spread(values: Float64Array, decimals: number): string {
  const sorted = values.toSorted();
  const at = (share: number): string => sorted[Math.round(share * (sorted.length - 1))]!.toFixed(decimals);
  return `${at(0.5)} (${at(0.05)} to ${at(0.95)})`;
}

/** What the map holds and what follows at once, row by row. */
export interface Engine {
  readonly speed: Column<'rotational speed'>;
  readonly bmep: Column<'mean effective pressure'>;
  readonly power: Column<'power'>;
  readonly fuel: Column<'mass flow'>;
  readonly air: Column<'mass flow'>;
  readonly exhaust: Column<'mass flow'>;
  readonly exhaustTemperature: Column<'temperature'>;
  readonly exhaustOxygen: Column<'mass flow'>;
}

export function readEngine(map: MapReader): Engine {
  const speed = map('rotational speed', 'speed_rpm', 'rpm');
  const torque = map('torque', 'torque_Nm', 'N·m');
  const fuel = map('mass flow', 'fuel_g_s', 'g/s');
  const exhaust = map('mass flow', 'exhaust_flow_g_s', 'g/s');
  return {
    speed,
    bmep: brakeMeanEffectivePressure.columns({ torque, sweptVolume: displacement }),
    power: powerFromTorque.columns({ torque, engineSpeed: speed }),
    fuel,
    exhaust,
    air: airFromExhaust.columns({ exhaustFlow: exhaust, fuelFlow: fuel }),
    exhaustTemperature: map('temperature', 'exhaust_temp_C', '°C'),
    exhaustOxygen: map('mass flow', 'exhaust_o2_g_s', 'g/s'),
  };
}

export function isBetween(value: number, low: number, high: number): boolean {
  return low <= value && value <= high;
}
