import { kindOf } from '../../units/internal.js';
import type { UnitPreferences } from '../../units/format.js';
import type { Kind } from '../../units/kinds.js';
import type { Column, Quantity } from '../../units/origin.js';
import { fromSi } from '../../units/unit.js';
import { isComputed } from '../../units/written.js';
import type { ShownValue } from '../formula/index.js';

export function displayUnit(value: Quantity | Column, units: UnitPreferences | undefined): string {
  return units?.[value.kind] ?? value.unit;
}

export const firstUnit = (kind: Kind): string => Object.keys(kindOf(kind).units)[0]!;

export function shownValue(value: Quantity, unit: string | undefined): ShownValue {
  const inUnit = unit ?? firstUnit(value.kind);
  const number = figures(
    value,
    fromSi(value.kind, value.si, inUnit),
    inUnit,
    unit !== undefined && unit !== value.unit,
  );
  return inUnit === '1' ? { number } : { number, unit: inUnit };
}

/** Given values as typed, computed ones to four figures; kelvins to five, since a degree is a third of a per cent of them. */
function figures(value: Quantity, number: number, unit: string, converted: boolean): string {
  if (!isComputed(value.origin) && !converted) return plainNumber(Number(number.toPrecision(12)));
  if (value.kind === 'temperature' && unit !== 'K' && unit !== '°R') return number.toFixed(1);
  const text = number.toPrecision(unit === 'K' && value.kind === 'temperature' ? 5 : 4);
  return text.includes('e') ? plainNumber(Number(text)) : text;
}

function plainNumber(number: number): string {
  return String(number).replace('e+', 'e');
}

/** A column in place of a symbol: the range of its values. */
export function shownColumn(column: Column, unit: string): ShownValue {
  const range = rangeOf(column);
  const number = range
    ? range.map((si) => plainNumber(Number(fromSi(column.kind, si, unit).toPrecision(4)))).join('…')
    : 'no value';
  return unit === '1' ? { number } : { number, unit };
}

export function columnText(column: Column, units: UnitPreferences | undefined): string {
  const { number, unit } = shownColumn(column, displayUnit(column, units));
  const missing = column.missing > 0 ? `, ${column.missing} missing` : '';
  return `${number.replace('…', ' to ')}${unit === undefined ? '' : ` ${unit}`} (${column.length} rows${missing})`;
}

function rangeOf(column: Column): readonly [number, number] | undefined {
  let low = Infinity;
  let high = -Infinity;
  for (const si of column.si) {
    if (si < low) low = si;
    if (si > high) high = si;
  }
  return low > high ? undefined : [low, high];
}
