import { densityRatio } from '../air/index.js';
import { absolutePressure, temperature } from '../units/index.js';
import type { PullMeans } from './factors.js';
import type { Prediction } from './result.js';

/** Power and air with charge density: 1 for density alone; 0.6 is what sources give for the brake power of a spark-ignition engine. */
const EXPONENTS = [1, 0.6] as const;

/**
 * What the change of charge density alone would have done, beside what was found: pressure counts in full, temperature to the power n.
 */
export function predictionOf(
  [a, b]: readonly [readonly PullMeans[], readonly PullMeans[]],
  found: number,
): Prediction | undefined {
  const all = [...a, ...b];
  if (all.some((pull) => pull.manifoldPressure === undefined || pull.chargeTemperature === undefined)) return undefined;
  const average = (side: readonly PullMeans[], of: (pull: PullMeans) => number): number =>
    side.reduce((sum, pull) => sum + of(pull), 0) / side.length;
  const state = (side: readonly PullMeans[]) => ({
    pressure: absolutePressure(
      average(side, (pull) => pull.manifoldPressure!),
      'Pa',
    ),
    temperature: temperature(
      average(side, (pull) => pull.chargeTemperature!),
      'K',
    ),
  });
  const [before, after] = [state(a), state(b)];
  const ratio = densityRatio({
    inletPressure: before.pressure,
    inletTemperature: before.temperature,
    outletPressure: after.pressure,
    outletTemperature: after.temperature,
  }).si;
  const pressureRatio = after.pressure.si / before.pressure.si;
  const shares = EXPONENTS.map((n) => pressureRatio * (ratio / pressureRatio) ** n - 1);
  return { byDensity: shares[0]!, withUsualExponent: shares[1]!, found };
}
