import { meanOfRepeats } from '../calculation/index.js';
import type { Column, Quantity } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import type { SideResult } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { like } from './words.js';

/** One set-up's pulls together: mean and scatter at each speed, and over the range. */
export function sideOf(name: string, taken: readonly TakenPull[], unit: string | undefined): SideResult {
  const accepted = taken.filter((pull) => pull.result.accepted).map((pull) => pull.result);
  const curves = accepted.map((pull) => pull.curve);
  const first = curves[0] ?? taken[0]!.result.curve;
  const length = first.length;
  const meanCurve = new Float64Array(length).fill(NaN);
  const scatter = new Float64Array(length).fill(NaN);
  for (let row = 0; row < length; row++) {
    const values = curves.map((curve) => curve.si[row]!).filter((value) => !Number.isNaN(value));
    if (values.length === 0 || values.length < curves.length) continue;
    const average = values.reduce((sum, value) => sum + value, 0) / values.length;
    meanCurve[row] = average;
    if (values.length > 1)
      scatter[row] = Math.sqrt(values.reduce((sum, value) => sum + (value - average) ** 2, 0) / (values.length - 1));
  }
  const asColumn = (values: Float64Array): Column =>
    columnOf(first.kind, values, unit ?? first.unit, undefined, NO_NOTES, 0);
  const means = accepted.flatMap((pull) => (pull.mean ? [pull.mean] : []));
  return {
    name,
    pulls: taken.map((pull) => pull.result),
    mean: asColumn(meanCurve),
    scatter: asColumn(scatter),
    overall: means.length === 0 ? undefined : means.length === 1 ? means[0] : meanOfRepeats(name, means),
    overallScatter: means.length < 2 ? undefined : standardDeviation(means),
  };
}

function standardDeviation(values: readonly Quantity[]): Quantity {
  const average = values.reduce((sum, value) => sum + value.si, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value.si - average) ** 2, 0) / (values.length - 1);
  return like(values[0]!, Math.sqrt(variance));
}
