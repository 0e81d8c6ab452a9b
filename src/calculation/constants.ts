import type { Kind } from '../units/kinds.js';
import { quantityOf } from '../units/internal.js';
import type { LeafUncertainty, Quantity, Source } from '../units/origin.js';

/** What a constant carries beside its value. */
export interface ConstantOptions {
  /** The name in explanations. */
  readonly label: string;
  readonly source: Source;
  /** Half width of the range in which the value surely lies, in the SI unit of its kind; uncertain evenly over it. */
  readonly halfWidth?: number;
}

/**
 * A value that calculations assume. Two results that assumed the same constant share its error, whichever copy of the library made
 * them, because the `id` is what tells inputs apart.
 */
/* @__NO_SIDE_EFFECTS__ */
export function constant<K extends Kind>(id: string, value: Quantity<K>, options: ConstantOptions): Quantity<K> {
  const { label, source, halfWidth } = options;
  const uncertainty: LeafUncertainty | undefined =
    halfWidth === undefined
      ? undefined
      : { standard: halfWidth / Math.sqrt(3), degreesOfFreedom: Infinity, distribution: 'rectangular', type: 'B' };
  const origin = { type: 'leaf', role: 'assumed', id, label, source, ...(uncertainty ? { uncertainty } : {}) } as const;
  return quantityOf(value.kind, value.si, value.unit, origin, value.notes, label);
}
