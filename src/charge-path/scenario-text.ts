import { tableText, type Table } from '../calculation/table.js';
import type { ScenarioComparison } from './scenario-result.js';

/** Below this share of the power a part is not worth a line. */
const WORTH_A_LINE = 5e-6;

const signed = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals);
  return Number(text) > 0 ? `+${text}` : text.replace('-', '−');
};

/** A comparison of two scenarios as text. */
export function comparisonText(comparison: ScenarioComparison): string {
  return tableText(comparisonTable(comparison));
}

/** The same as a table: stations, then what the change of power is made of. */
export function comparisonTable(comparison: ScenarioComparison): Table {
  const { before, after, change, air, boost, parts, temperatureWithBreathing, knock, notes } = comparison;
  const percent = (kilowatts: number): string => `${signed((100 * kilowatts) / before.power.in('kW'), 2)} %`;
  const shown = parts.filter(({ part }) => Math.abs(part.si) > WORTH_A_LINE * before.power.si);
  return {
    caption: `From ${before.power.in('kW').toFixed(1)} to ${after.power.in('kW').toFixed(1)} kW at ${before.engineSpeed.in('rpm').toFixed(0)} rpm: ${percent(change.in('kW'))} power, ${signed(100 * (air.si - 1), 2)} % air, ${signed(boost.in('kPa'), 2)} kPa on the gauge`,
    columns: [
      { head: 'station', align: 'left' },
      ...['kPa', 'K', 'density %', 'g/s'].map((head) => ({ head, align: 'right' as const })),
    ],
    rows: comparison.stations.map(({ name, pressure, temperature, density, flow }) => [
      name,
      signed(pressure.in('kPa'), 2),
      signed(temperature.in('K'), 1),
      signed(100 * (density.si - 1), 2),
      signed(flow.in('g/s'), 2),
    ]),
    remarks: [
      ...shown.map(({ factor, part }) => `${factor}: ${signed(part.in('kW'), 2)} kW, ${percent(part.in('kW'))}`),
      `charge temperature and breathing together: ${percent(temperatureWithBreathing.in('kW'))} (density gained by colder charge, part of it lost in breathing)`,
      ...(knock ? String(knock).split('\n') : []),
      ...notes.map(({ message }) => `Note: ${message}`),
    ],
  };
}
