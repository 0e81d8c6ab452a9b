import { effectivenessCounterflow, transferUnitsCounterflow } from './counterflow.js';
import { effectivenessCrossflowUnmixed, transferUnitsCrossflowUnmixed } from './crossflow.js';
import { effectivenessParallelFlow, transferUnitsParallelFlow } from './parallel-flow.js';

/** True effectiveness of a core from its number of transfer units and capacity ratio, by flow arrangement. */
export const effectiveness = {
  counterflow: effectivenessCounterflow,
  parallelFlow: effectivenessParallelFlow,
  crossflowUnmixed: effectivenessCrossflowUnmixed,
} as const;

/** Number of transfer units that a core needs for a true effectiveness, by flow arrangement. */
export const transferUnits = {
  counterflow: transferUnitsCounterflow,
  parallelFlow: transferUnitsParallelFlow,
  crossflowUnmixed: transferUnitsCrossflowUnmixed,
} as const;
