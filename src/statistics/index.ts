/**
 * Statistics of repeats on plain numbers: distributions, means and scatter, differences with their bands, drift, equivalence, splits,
 * test plans. The other topics use it; whoever has numbers already may too.
 *
 * @module statistics
 */
export { StatisticsError, type StatisticsErrorCode, type StatisticsProblem } from './errors.js';
export { usualConfidence, usualError, type ConfidenceOption, type ErrorOption, type Numbers } from './checks.js';

export { mean, standardDeviation, sum, summarise, sumOfSquaredDeviations, variance, type Summary } from './summary.js';

export { studentInterval, welchDifference, type Interval, type WelchDifference } from './welch.js';
export {
  differenceWithKnownScatter,
  joinScatter,
  repeatabilityLimit,
  type JoinedScatter,
  type Scatter,
} from './known-scatter.js';
export {
  combineUncertainty,
  effectiveDegreesOfFreedom,
  type CombinedUncertainty,
  type UncertaintyPart,
} from './combination.js';

export { differenceBand, pointwiseHalfWidth, type Band, type BandDiagnostics, type BandOptions } from './band.js';
export { fewestPointsForCrossings, type BandLevel, type BandMethod } from './band-parts.js';
export {
  driftBand,
  driftContrast,
  driftDifference,
  driftWeights,
  type DriftDifference,
  type DriftDifferenceOptions,
  type PullContrast,
} from './drift.js';
export { orderDesign, type DriftOptions, type OrderDesign } from './drift-model.js';
export { bestOrder } from './best-order.js';
export { equivalenceOfMeans, equivalenceOverRange, type Equivalence, type EquivalenceOfMeans } from './equivalence.js';
export { logarithmicMean } from './logarithmic-mean.js';
export {
  additiveSplit,
  type AdditiveSplit,
  type Contribution,
  type LogFactor,
  type SplitOptions,
  type SplitOrder,
  type SplitSensor,
} from './split.js';
export { contrastBy as pullContrast, type Contrast } from './split-scores.js';
export {
  splitCurves,
  type ContributionCurve,
  type SplitCurveOptions,
  type SplitCurves,
  type SplitPoint,
} from './split-curves.js';
export {
  grubbsCritical,
  oddPulls,
  oddPullsInOrder,
  type OddPulls,
  type PullCheck,
  type PullInOrderCheck,
} from './odd-pulls.js';
export {
  detectableDifference,
  equalSides,
  powerOfEquivalence,
  powerOfTest,
  pullsNeeded,
  withOwnInstruments,
  type PlanDesign,
  type PullsNeeded,
  type PullsNeededOptions,
} from './test-plan.js';

export { logGamma, trigamma } from './gamma.js';
export { incompleteBeta } from './incomplete-beta.js';
export { normalCdf, normalDensity, normalFactor, normalQuantile, normalTwoSided } from './normal.js';
export { studentTCdf, studentTFactor, studentTTwoSided } from './student-t.js';
export { fQuantile, fTails, fUpperQuantile } from './f-distribution.js';
export { noncentralTTails } from './noncentral-t.js';
export { linearModel, type Fit, type LinearModel } from './least-squares.js';

export * from './signal/index.js';
