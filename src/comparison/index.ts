/**
 * Pulls against pulls: the difference between two set-ups, whether it is larger than the scatter, and where it comes from.
 *
 * @module comparison
 */
export { compare } from './compare.js';
export { usualLimits, type AcceptanceLimits, type CompareOptions } from './options.js';
export type {
  ComparedQuantity,
  Comparison,
  Contribution,
  DifferenceCurve,
  Estimate,
  Outcome,
  PullResult,
  Refusal,
  SideResult,
  SpeedRange,
  Split,
} from './result.js';
export {
  detectableDifference,
  differenceBand,
  driftDifference,
  equivalenceOverRange,
  orderDesign,
  powerOfTest,
  pullsNeeded,
  repeatabilityLimit,
  StatisticsError,
  welchDifference,
  type Band,
  type BandDiagnostics,
  type BandLevel,
  type BandMethod,
  type BandOptions,
  type ConfidenceOption,
  type DriftDifference,
  type DriftDifferenceOptions,
  type DriftOptions,
  type Equivalence,
  type ErrorOption,
  type Interval,
  type Numbers,
  type OrderDesign,
  type PlanDesign,
  type PullsNeeded,
  type Scatter,
  type StatisticsErrorCode,
  type StatisticsProblem,
  type Summary,
  type WelchDifference,
} from './statistics/index.js';
