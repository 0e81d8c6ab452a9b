/**
 * What the calculation layer needs of the quantities and users do not.
 *
 * @internal
 * @module
 */
export { argumentName, inputAt, inWords } from './argument-name.js';
export {
  diagnose,
  inputProblems,
  merged,
  perform,
  performColumns,
  type CallOptions,
  type ColumnsOptions,
} from './operation.js';
export {
  choiceProblems,
  isPlain,
  requireNames,
  requireOptions,
  unknownNames,
  type KnownOptions,
} from './known-names.js';
export { NO_NOTES, columnOf, describe, quantityOf } from './quantity.js';
export { rangeText, showSi } from './problems.js';
export { KINDS, kindOf, withArticle } from './kinds.js';
export { fromSi, toSi } from './unit.js';
export { differenceUnit } from './arithmetic.js';
