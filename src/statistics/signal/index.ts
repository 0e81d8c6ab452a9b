export { coherenceCdf, coherenceInterval } from './coherence.js';
export {
  ripple,
  rippleAgreement,
  rippleOverPulls,
  type Ripple,
  type RippleAgreement,
  type RippleOptions,
  type RippleOverPulls,
} from './ripple.js';
export { halfBandwidth, powerDensity, taperedTransforms, type Complex, type PowerDensity } from './sine-tapers.js';
export { oscillationOf, type Oscillation, type OscillationOptions } from './oscillation.js';
export { buildUp, type BuildUp } from './build-up.js';
export { fewestToSettle, settledCut, type SettledCut, type SettledCutOptions } from './settled-cut.js';
export {
  bestLagWindow,
  compensateLag,
  lagCost,
  localQuadraticFactors,
  sampleNoise,
  thirdDerivative,
  type Compensated,
  type LagCost,
  type LagWindow,
  type LagWindowOptions,
} from './local-quadratic.js';
export { lagFromRamps, lagFromShift, lagFromStep, type FoundLag, type RampCurve, type StepLag } from './lag.js';
export { excursions, type Excursion, type ExcursionOptions } from './excursions.js';
export { cadenceOf, type Cadence } from './cadence.js';
export { lineAt, straightLine, type StraightLine } from './straight-line.js';
export { medianOf, presentRows, quantileOf, resolutionOf } from './robust.js';
