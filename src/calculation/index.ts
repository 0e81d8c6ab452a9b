/**
 * How a number is made: define a calculation once and get the checked call, the column form, the worked example, the uncertainty
 * budget and the docs page from it.
 *
 * @module calculation
 */
export { assumed, calculation, each, input, output, type Calculation } from './calculation.js';
export { constant, type ConstantOptions } from './constants.js';
export type {
  Arguments,
  AssumedInput,
  Bounds,
  ColumnArguments,
  Definition,
  Inputs,
  ListInput,
  Output,
  RequiredInput,
  Specification,
  StandingNote,
} from './definition.js';
export { TASKS, type Task } from './tasks.js';
export { commonPractice, derived, source } from './sources.js';
export { workOf, works, type WorkId } from './works.js';
export { CalculationError, type Problem } from '../units/errors.js';
export type { CallOptions, ColumnsOptions } from '../units/operation.js';
export {
  explain,
  type ExplainOptions,
  type ExplainedCase,
  type ExplainedSolution,
  type ExplainedStep,
  type ExplainedValue,
  type Explanation,
  type ExplanationModel,
  type LatexLayout,
} from './explain/index.js';
export { measured, sensor, type Sensor, type SensorOptions } from './measured.js';
export type { Deviation, Distribution, StatedUncertainty } from './stated-uncertainty.js';
export {
  type ContrastScatter,
  mean,
  contrastOfRepeats,
  meanOfRepeats,
  measuredTogether,
  type TogetherMeans,
  type TogetherReadings,
} from './repeats.js';
export { uncertainty } from './uncertainty.js';
export type { UncertaintyContribution, UncertaintyBudget, UncertaintyRecord } from './budget.js';
export { monteCarlo } from './monte-carlo.js';
export type {
  LinearComparison,
  LinearVerdict,
  MonteCarloOptions,
  MonteCarloRecord,
  MonteCarloUncertainty,
} from './monte-carlo-result.js';
export { statedTogether, type StatedRelation, type StatedValue } from './stated-together.js';
export { coverageFactorOf } from './coverage-factor.js';
export { whatIf, type ColumnChanges, type ScalarChanges } from './what-if.js';
export type { ReplayOptions } from './resolve.js';
export { sensitivity, type Effect, type Sensitivity, type SensitivityRecord } from './sensitivity.js';
export { solve, type Solved, type Unknowable } from './solve.js';
export type {
  CallFormula,
  ComparisonFormula,
  ComparisonOperator,
  ConditionalFormula,
  Formula,
  LogicFormula,
  NegationFormula,
  NumberFormula,
  OperationFormula,
  Operator,
  ShownValue,
  SymbolFormula,
} from './formula/index.js';
