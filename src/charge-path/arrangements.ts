import {
  capacityRatio,
  effectivenessOfPasses,
  effectiveness,
  effectivenessCrossflowOneMixed,
  numberOfTransferUnits,
} from '../intercooler/index.js';
import type { Runnable, Way } from './way.js';

/** Flow arrangements whose effectiveness follows from transfer units and capacity ratio, whichever side is the smaller. */
const symmetric = {
  counterflow: effectiveness.counterflow,
  parallelFlow: effectiveness.parallelFlow,
  crossflowUnmixed: effectiveness.crossflowUnmixed,
  crossflowUnmixedApproximate: effectiveness.crossflowUnmixedApproximate,
  crossflowBothMixed: effectiveness.crossflowBothMixed,
  oneShell: effectiveness.oneShell,
} as const satisfies Readonly<Record<string, Runnable>>;

/** Flow arrangement of a core: how charge and coolant pass each other, and which of them mixes across its passage. */
export type Arrangement = keyof typeof symmetric | 'crossflowChargeMixed' | 'crossflowCoolantMixed';

/** Every arrangement that an installation can name. */
export const arrangements: readonly Arrangement[] = [
  ...(Object.keys(symmetric) as (keyof typeof symmetric)[]),
  'crossflowChargeMixed',
  'crossflowCoolantMixed',
];

/** What a core of some conductance does between two flows. */
export interface CoreRating<V> {
  readonly transferUnits: V;
  readonly capacityRatio: V;
  /** True effectiveness. */
  readonly effectiveness: V;
}

/** Rates a core between two heat capacity rates; passes are in overall counterflow. */
export function rateCore<V>(
  way: Way<V>,
  { arrangement, passes }: { readonly arrangement: Arrangement; readonly passes?: V | undefined },
  conductance: V,
  charge: V,
  coolant: V,
): CoreRating<V> {
  const transferUnits = way.run(numberOfTransferUnits, conductance, charge, coolant);
  const ratio = way.run(capacityRatio, charge, coolant);
  const whole = { transferUnits, capacityRatio: ratio };
  if (arrangement === 'crossflowChargeMixed')
    return { ...whole, effectiveness: way.run(effectivenessCrossflowOneMixed, conductance, charge, coolant) };
  if (arrangement === 'crossflowCoolantMixed')
    return { ...whole, effectiveness: way.run(effectivenessCrossflowOneMixed, conductance, coolant, charge) };
  const relation = symmetric[arrangement];
  if (passes === undefined) return { ...whole, effectiveness: way.run(relation, transferUnits, ratio) };
  const one = way.run(relation, way.ratioOf(transferUnits, passes), ratio);
  return { ...whole, effectiveness: way.run(effectivenessOfPasses, one, ratio, passes) };
}
