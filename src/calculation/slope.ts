import { inputAt } from '../units/internal.js';
import type { Operation } from '../units/origin.js';

/** Cube root of the rounding error: the relative step at which a central difference is best. */
const STEP = 6e-6;

/** Below this share of the result, what a step changes is lost in rounding. */
const LOST = 1e-9;

/**
 * Partial derivative of a step by one of its inputs, as a central difference.
 *
 * The step is a share of the value; of the input's range where the value is zero, or so small that nothing is seen of it. It stays
 * inside the bounds and the rules, on one side of them if need be. Steps are powers of two, so that sums and differences come out
 * exact and what two results share cancels exactly.
 *
 * @param at - the inputs in SI, in the kernel's order.
 * @param result - the kernel there.
 * @returns NaN where the step cannot be moved either way.
 */
export function slopeOf(operation: Operation, at: readonly number[], i: number, result: number): number {
  const { min, max } = inputAt(operation, i, at.length);
  const moved = [...at];
  const value = (x: number): number => {
    if (!(x >= min && x <= max)) return NaN;
    moved[i] = x;
    for (const rule of operation.rules) if (rule.otherwise !== 'note' && !rule.holds(...moved)) return NaN;
    const y = operation.kernel(...moved);
    return Number.isFinite(y) ? y : NaN;
  };
  const x = at[i]!;
  const range = max - min;
  const wide = STEP * (range > 0 && range < Infinity ? range : largest(at, result));
  const narrow = x === 0 ? wide : STEP * Math.abs(x);
  const slope = differenceQuotient(value, x, result, narrow);
  const isLost = narrow < wide && Math.abs(slope * narrow) < LOST * Math.abs(result);
  return isLost ? differenceQuotient(value, x, result, wide) : slope;
}

function largest(at: readonly number[], result: number): number {
  let size = Math.abs(result);
  for (const x of at) size = Math.max(size, Math.abs(x));
  return size > 0 ? size : 1;
}

/**
 * Slope of a function at x from points about `step` away; `value` gives NaN where it cannot be evaluated. At an edge the three points
 * lie on one side; where there is no room for them the step shrinks.
 */
export function differenceQuotient(value: (x: number) => number, x: number, at: number, step: number): number {
  for (let h = 2 ** Math.round(Math.log2(step)), tries = 0; tries < 4; h /= 64, tries++) {
    const above = value(x + h);
    const below = value(x - h);
    if (!Number.isNaN(above) && !Number.isNaN(below)) return (above - below) / (x + h - (x - h));
    const side = Number.isNaN(above) ? -h : h;
    const near = side > 0 ? above : below;
    if (Number.isNaN(near)) continue;
    const far = value(x + 2 * side);
    if (!Number.isNaN(far)) return (4 * near - 3 * at - far) / (2 * side);
  }
  return NaN;
}
