import { transferUnitsCrossflowBothMixed } from './both-mixed-sizes.js';
import { effectivenessCounterflow, transferUnitsCounterflow } from './counterflow.js';
import {
  effectivenessCrossflowUnmixedApproximate,
  transferUnitsCrossflowUnmixedApproximate,
} from './crossflow-approximate.js';
import { effectivenessCrossflowBothMixed } from './crossflow-both-mixed.js';
import {
  effectivenessCrossflowLargerMixed,
  effectivenessCrossflowSmallerMixed,
  transferUnitsCrossflowLargerMixed,
  transferUnitsCrossflowSmallerMixed,
} from './crossflow-one-mixed.js';
import { effectivenessCrossflowUnmixed, transferUnitsCrossflowUnmixed } from './crossflow.js';
import { effectivenessMultiPass, transferUnitsMultiPass } from './multi-pass.js';
import { effectivenessParallelFlow, transferUnitsParallelFlow } from './parallel-flow.js';
import { effectivenessOneShell, transferUnitsOneShell } from './shell-and-tube.js';

/** True effectiveness of a core from its number of transfer units and capacity ratio, by flow arrangement. */
export const effectiveness = {
  counterflow: effectivenessCounterflow,
  parallelFlow: effectivenessParallelFlow,
  crossflowUnmixed: effectivenessCrossflowUnmixed,
  crossflowUnmixedApproximate: effectivenessCrossflowUnmixedApproximate,
  crossflowLargerMixed: effectivenessCrossflowLargerMixed,
  crossflowSmallerMixed: effectivenessCrossflowSmallerMixed,
  crossflowBothMixed: effectivenessCrossflowBothMixed,
  oneShell: effectivenessOneShell,
  /** Several passes through cells of one arrangement, in overall counterflow. */
  multiPass: effectivenessMultiPass,
} as const;

/** Number of transfer units that a core needs for a true effectiveness, by flow arrangement. */
export const transferUnits = {
  counterflow: transferUnitsCounterflow,
  parallelFlow: transferUnitsParallelFlow,
  crossflowUnmixed: transferUnitsCrossflowUnmixed,
  crossflowUnmixedApproximate: transferUnitsCrossflowUnmixedApproximate,
  crossflowLargerMixed: transferUnitsCrossflowLargerMixed,
  crossflowSmallerMixed: transferUnitsCrossflowSmallerMixed,
  /** Two sizes, one, or none, since this arrangement has a best size. */
  crossflowBothMixed: transferUnitsCrossflowBothMixed,
  oneShell: transferUnitsOneShell,
  /** Several passes through cells of one arrangement, in overall counterflow. */
  multiPass: transferUnitsMultiPass,
} as const;
