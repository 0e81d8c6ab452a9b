import type { Quantity } from '../units/index.js';
import { fTails, repeatabilityLimit } from '../statistics/index.js';
import type { OrderFinding } from './order.js';
import type { OwnScatter, PullScatter, ScatterComparison, SideResult } from './result.js';
import { like } from './words.js';

/** How single pulls scatter about the model that the answer is made with: with a steady drift taken out where the answer takes it out. */
export function pullScatterOf(
  a: SideResult,
  b: SideResult,
  { corrected }: OrderFinding,
  driftTakenOut: boolean,
): PullScatter | undefined {
  const shape = a.overallScatter;
  if (!shape || !b.overallScatter) return undefined;
  const own = (standardDeviation: number, degreesOfFreedom: number): OwnScatter => ({
    standardDeviation: like(shape, standardDeviation),
    degreesOfFreedom,
  });
  if (driftTakenOut) {
    const { scatter, scatterOf } = corrected!;
    const [baseline, candidate] = [scatterOf!.baseline, scatterOf!.candidate].map((one) =>
      own(one.standardDeviation, one.degreesOfFreedom),
    ) as [OwnScatter, OwnScatter];
    return { pooled: like(shape, scatter!.standardDeviation), baseline, candidate, afterDrift: true };
  }
  const [baseline, candidate] = [a, b].map((side) => own(side.overallScatter!.si, countOf(side) - 1)) as [
    OwnScatter,
    OwnScatter,
  ];
  const pooled = Math.hypot(baseline.standardDeviation.si, candidate.standardDeviation.si) / Math.SQRT2;
  return { pooled: like(shape, pooled), baseline, candidate, afterDrift: false };
}

/** Whether one set-up scatters more than the other, and how far two of its pulls may lie apart. */
export function scatterComparisonOf({ baseline, candidate }: PullScatter): ScatterComparison | undefined {
  const [sA, sB] = [baseline.standardDeviation, candidate.standardDeviation];
  if (!(sA.si > 0 && sB.si > 0)) return undefined;
  const varianceRatio = (sB.si / sA.si) ** 2;
  const { lower, upper } = fTails(varianceRatio, candidate.degreesOfFreedom, baseline.degreesOfFreedom);
  const limit = ({ standardDeviation, degreesOfFreedom }: OwnScatter): Quantity =>
    like(standardDeviation, repeatabilityLimit({ standardDeviation: standardDeviation.si, degreesOfFreedom }));
  return {
    varianceRatio,
    pValue: Math.min(1, 2 * Math.min(lower, upper)),
    repeatabilityLimit: { baseline: limit(baseline), candidate: limit(candidate) },
  };
}

/** `after a steady drift is taken out`, where the scatter is what that leaves; follows a noun. */
export function afterDriftWords({ afterDrift }: Pick<PullScatter, 'afterDrift'>): string {
  return afterDrift ? ' after a steady drift is taken out' : '';
}

function countOf({ pulls }: SideResult): number {
  return pulls.filter(({ accepted }) => accepted).length;
}
