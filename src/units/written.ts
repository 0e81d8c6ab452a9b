import type { Kind } from './kinds.js';
import type { Column, Quantity } from './origin.js';
import { findUnit, fromSi } from './unit.js';

/** Which unit each kind shows in; a kind that is not named keeps the unit it has. Passed where it is wanted, never global. */
export type UnitPreferences = { readonly [K in Kind]?: string };

/** How a value is written. */
export interface FormatOptions {
  /** Units by kind. */
  readonly units?: UnitPreferences | undefined;
  /** Significant figures of a computed value; 4 when left out. A value that was given is printed as it was typed. */
  readonly figures?: number | undefined;
  /** The sign between whole and decimal part. */
  readonly decimal?: '.' | ',' | undefined;
  /** Leave the unit out. */
  readonly bare?: boolean | undefined;
}

/** A quantity as text: computed values to 4 significant figures, given values as typed. */
export function writtenValue(quantity: Quantity, options: FormatOptions = {}): string {
  const unit = displayUnit(quantity, options.units);
  const value = fromSi(quantity.kind, quantity.si, unit);
  const { origin } = quantity;
  const computed = isComputed(origin);
  const converted = unit !== quantity.unit;
  const text =
    computed || converted || options.figures !== undefined
      ? rounded(value, options.figures ?? 4, quantity.kind === 'temperature' && options.figures === undefined)
      : typed(value);
  return withUnit(text, unit, options);
}

/** Whether a value came out of a computation, and is not shown to the digits of what was typed. */
export function isComputed(origin: Quantity['origin']): boolean {
  return origin?.type === 'step' || origin?.role === 'solved' || origin?.role === 'computed';
}

/** A column as text: its kind, length and range. */
export function writtenColumn(column: Column, options: FormatOptions = {}): string {
  const unit = displayUnit(column, options.units);
  let low = Infinity;
  let high = -Infinity;
  for (const si of column.si) {
    if (si < low) low = si;
    if (si > high) high = si;
  }
  const rows = `${column.length} rows${column.missing > 0 ? `, ${column.missing} missing` : ''}`;
  if (low > high) return `${column.kind}, ${rows}`;
  const show = (si: number): string => withUnit(rounded(fromSi(column.kind, si, unit), 4, false), unit, options);
  return `${column.kind} ${show(low)} to ${show(high)}, ${rows}`;
}

function displayUnit(
  value: { readonly kind: Kind; readonly unit: string },
  units: UnitPreferences | undefined,
): string {
  const preferred = units?.[value.kind];
  return (preferred !== undefined && findUnit(value.kind, preferred)) || value.unit;
}

/** What was typed, which conversion to SI and back blurs in the last digits. */
function typed(value: number): string {
  return plain(Number(value.toPrecision(12)));
}

/** Temperatures in °C and °F are points on a scale with an arbitrary zero, so figures are counted after the point. */
function rounded(value: number, figures: number, isTemperature: boolean): string {
  if (isTemperature) return value.toFixed(1);
  const text = value.toPrecision(figures);
  return text.includes('e') ? plain(Number(text)) : text;
}

function plain(value: number): string {
  const magnitude = Math.abs(value);
  if (magnitude !== 0 && (magnitude < 1e-4 || magnitude >= 1e15)) return value.toExponential().replace('e+', 'e');
  return String(value);
}

function withUnit(text: string, unit: string, { bare, decimal }: FormatOptions): string {
  const number = (decimal === ',' ? text.replace('.', ',') : text).replace('-', '−');
  if (bare || unit === '1') return number;
  return `${number} ${unit}`;
}
