import { CalculationError, type Quantity, type QuantityRecord } from '../units/index.js';
import {
  bestTransferUnitsCrossflowBothMixed,
  effectivenessCrossflowBothMixed,
  largerTransferUnitsCrossflowBothMixed,
  LEAST_CAPACITY_RATIO,
  smallerTransferUnitsCrossflowBothMixed,
} from './crossflow-both-mixed.js';

type Ratio = Quantity<'ratio'>;

/** An effectiveness and the size that gives it. */
export interface SizeAndEffectiveness {
  readonly transferUnits: Ratio;
  readonly effectiveness: Ratio;
}

/** What sizes of core give an effectiveness where both flows mix: none, one or two. */
export interface BothMixedSizes {
  /** The numbers of transfer units that do it, smaller first. Empty where the effectiveness is above the most that is possible. */
  readonly roots: readonly Ratio[];
  /** The smaller core that does it, if any does. */
  readonly smaller: Ratio | undefined;
  /** The core so large that it does no better, if there is one. */
  readonly larger: Ratio | undefined;
  /** The size that cools most at this capacity ratio; undefined where a larger core is always better. */
  readonly best: SizeAndEffectiveness | undefined;
  /** The sizes in words. */
  toString(): string;
  /** The roots and the best size as records. */
  toJSON(): { readonly roots: readonly QuantityRecord[]; readonly best?: Readonly<Record<string, QuantityRecord>> };
}

/**
 * The numbers of transfer units at which a crossflow core, both flows mixed, has an effectiveness. Such a core has a best size beyond
 * which it cools less, so that there are two answers, or one for an effectiveness below the limit of cores without end, or none.
 *
 * @returns An object with `roots`, `smaller`, `larger` and `best`. An effectiveness out of reach is no error: `roots` is then empty.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * transferUnits.crossflowBothMixed({ effectiveness: percent(55), capacityRatio: ratio(1) }).toString()
 * //=> 1.956 or 5.177 transfer units; at best 56.45 % with 2.983
 */
export function transferUnitsCrossflowBothMixed(inputs: {
  readonly effectiveness: Ratio;
  readonly capacityRatio: Ratio;
}): BothMixedSizes {
  const smaller = ifReached(() => smallerTransferUnitsCrossflowBothMixed(inputs));
  const { capacityRatio } = inputs;
  if (capacityRatio.si < LEAST_CAPACITY_RATIO) return new Sizes(smaller, undefined, undefined);
  const larger = ifReached(() => largerTransferUnitsCrossflowBothMixed(inputs));
  const transferUnits = bestTransferUnitsCrossflowBothMixed({ capacityRatio });
  const effectiveness = effectivenessCrossflowBothMixed({ transferUnits, capacityRatio });
  return new Sizes(smaller, larger, { transferUnits, effectiveness });
}

/** The answer, or undefined where it is refused for being out of reach and for nothing else. */
function ifReached(calculate: () => Ratio): Ratio | undefined {
  try {
    return calculate();
  } catch (error) {
    if (error instanceof CalculationError && error.problems.every(({ code }) => code === 'rule')) return undefined;
    throw error;
  }
}

class Sizes implements BothMixedSizes {
  readonly smaller: Ratio | undefined;
  readonly larger: Ratio | undefined;
  readonly best: SizeAndEffectiveness | undefined;

  constructor(smaller: Ratio | undefined, larger: Ratio | undefined, best: SizeAndEffectiveness | undefined) {
    this.smaller = smaller;
    this.larger = larger;
    this.best = best;
  }

  get roots(): readonly Ratio[] {
    return [this.smaller, this.larger].filter((root) => root !== undefined);
  }

  toString(): string {
    const { roots, best } = this;
    const sizes = roots.length === 0 ? 'no number of' : roots.map(String).join(' or ');
    const most = best ? `; at best ${String(best.effectiveness)} with ${String(best.transferUnits)}` : '';
    return `${sizes} transfer units${most}`;
  }

  toJSON(): { readonly roots: readonly QuantityRecord[]; readonly best?: Readonly<Record<string, QuantityRecord>> } {
    const { roots, best } = this;
    const records = roots.map((root) => root.toJSON());
    if (best === undefined) return { roots: records };
    const { transferUnits, effectiveness } = best;
    return {
      roots: records,
      best: { transferUnits: transferUnits.toJSON(), effectiveness: effectiveness.toJSON() },
    };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}
