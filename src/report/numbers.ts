import { fromSi, toSi } from '../units/internal.js';
import { findUnit, type Column, type Quantity, type UnitPreferences } from '../units/index.js';
import { like } from '../comparison/words.js';

/** A number in a unit as a quantity that shows like another one. */
export function quantityLike(shape: Quantity, value: number, unit: string): Quantity {
  return like({ kind: shape.kind, unit }, toSi(shape.kind, value, unit));
}

/** One row of a column as a quantity in a unit; undefined where it is missing. */
export function rowOf(column: Column, row: number, unit: string): Quantity | undefined {
  const si = column.si[row];
  if (si === undefined || Number.isNaN(si)) return undefined;
  return quantityLike(like(column, si), fromSi(column.kind, si, unit), unit);
}

/** The same quantity in the unit preferred for its kind, where there is one. */
export function preferred(quantity: Quantity, units: UnitPreferences): Quantity {
  const wanted = units[quantity.kind];
  const unit = wanted === undefined ? undefined : findUnit(quantity.kind, wanted);
  return unit === undefined ? quantity : like({ kind: quantity.kind, unit }, quantity.si);
}
