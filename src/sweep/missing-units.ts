import { LogError } from './errors.js';
import { readCell } from './numbers.js';
import type { ColumnOrigin } from './pull.js';
import type { Table } from './table.js';
import type { Kind } from '../units/index.js';
import { figure, quoted } from './words-for-people.js';

/** Columns that need a unit and have none: all of them at once, with the line that mends the first. */
export function withoutUnits(columns: readonly ColumnOrigin[], table: Table): LogError {
  const [first, ...others] = columns as [ColumnOrigin, ...ColumnOrigin[]];
  const { header, role, kind } = first;
  const range = rangeOf(table, first.column - 1);
  const values = range ? ` Its values run from ${endOf(range[0])} to ${endOf(range[1])}.` : '';
  const more =
    others.length === 0 ? '' : ` The same goes for ${others.map((other) => quoted(other.header)).join(', ')}.`;
  return new LogError({
    code: 'no unit',
    file: table.file,
    column: header,
    expected: `a unit of ${kind}`,
    found: 'none',
    fact: `column ${quoted(header)} has no unit.${values}${more}`,
    mend: `Say what they are, for example ${role}: channel('${header.replaceAll("'", "\\'").slice(0, 60)}', '${kind}', '${exampleUnit(kind, range?.[1] ?? 0)}').`,
    range,
  });
}

/** Four figures, or all that stand before the point: a clock since 1970 moves in its last ones. */
const endOf = (value: number): string =>
  Math.abs(value) < 1e4 ? figure(value) : String(Math.round(value)).replace('-', '−');

function rangeOf({ rows, dialect, isDecimalTold }: Table, at: number): readonly [number, number] | undefined {
  let low = Infinity;
  let high = -Infinity;
  for (const row of rows) {
    const value = readCell(row[at]!, dialect.decimal, isDecimalTold);
    if (value === undefined || Number.isNaN(value)) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return low > high ? undefined : [low, high];
}

/** The unit a person would most likely have meant; only an example, never used by itself. */
function exampleUnit(kind: Kind, high: number): string {
  switch (kind) {
    case 'gauge pressure':
    case 'absolute pressure':
      return high > 700 ? 'hPa' : high > 45 ? 'kPa' : high > 5 ? 'psi' : 'bar';
    case 'temperature':
      return '°C';
    case 'angle':
      return '°';
    case 'rotational speed':
      return 'rpm';
    case 'torque':
      return 'N·m';
    case 'power':
      return 'kW';
    case 'mass flow':
      return 'g/s';
    case 'volume flow':
      return 'cm³/min';
    case 'speed':
      return 'km/h';
    case 'relative humidity':
      return high > 1 ? '%' : '1';
    default:
      return 's';
  }
}
