/**
 * What a number measures: kinds, units, quantities and columns, reading and writing text, arithmetic that keeps kinds right.
 *
 * @module units
 */
export * from './constructors.js';
export { quantity, column, isQuantity, isColumn } from './quantity.js';
export { absolute, add, compareValues, gauge, ratioOf, sameQuantity, scale, subtract } from './arithmetic.js';
export { forget, known } from './known.js';
export { kindsOfUnit, parse, readNumber, revive, type ParseOptions } from './parse.js';
export {
  formatColumn,
  formatValue,
  metricShop,
  siUnits,
  usShop,
  type FormatOptions,
  type UnitPreferences,
} from './format.js';
export { findUnit, unitOf, unitChoices } from './unit.js';
export { CalculationError, UnitError, type Problem } from './errors.js';
export { constructorName, differenceKind, isKind, type DifferenceOf, type Kind, type UnitOf } from './kinds.js';
export type * from './origin.js';
