/**
 * Pulls against pulls: the difference between two set-ups, whether it is larger than the scatter, and where it comes from.
 *
 * @module comparison
 */
export { compare, compareAll } from './compare.js';
export { rippleFollows, type RippleFinding, type RippleFollowOptions } from './ripple.js';
export { worthPerCost, type Worth, type WorthTable } from './worth.js';
export { planTest, type PlanCase, type PlanOptions, type TestPlan } from './plan.js';
export type { BestTorqueSpark } from './best-torque-spark.js';
export type {
  AcceptanceLimits,
  BoostLoop,
  CompareOptions,
  OwnPreparation,
  PredictedChange,
  SensorLags,
  SensorSet,
} from './options.js';
export type { AreaUnderCurve } from './area.js';
export { usualLimits } from './resolve-options.js';
export type {
  ComparedQuantity,
  Comparison,
  Contribution,
  ContributionCurve,
  CoreFigure,
  CorePerformance,
  DifferenceCurve,
  EqualMixture,
  FairnessCheck,
  MixtureWorth,
  PredictedAgainstFound,
  Estimate,
  Figure,
  OpenQuestion,
  Outcome,
  OwnScatter,
  Prediction,
  PullResult,
  PullScatter,
  Refusal,
  ScatterComparison,
  SettledStart,
  SideResult,
  SpeedRange,
  Split,
} from './result.js';
export { StatisticsError } from '../statistics/index.js';
