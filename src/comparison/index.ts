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
export { StatisticsError } from '../statistics/index.js';
