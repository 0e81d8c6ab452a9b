import { driftDifference, orderDesign, StatisticsError, type DriftDifference } from '../statistics/index.js';

/** A pull of one side with its place in the day. */
export interface PlacedPull {
  readonly side: 'A' | 'B';
  /** Range mean in SI. */
  readonly mean: number;
  /** Place in the order of the day; undefined where nobody knows it. */
  readonly order: number | undefined;
  /** Seconds, where the files tell. */
  readonly clock: number | undefined;
}

/** What the order of the pulls says about drift. */
export interface OrderFinding {
  /** Whether drift over the day can be told from the change. */
  readonly separable: boolean;
  /** One sentence for the reader. */
  readonly sentence: string;
  /** The difference with a steady drift taken out, where that can be done. */
  readonly corrected: DriftDifference | undefined;
  /** The pulls as they were made, where that is known: side by side with when, in any unit of time. */
  readonly made:
    { readonly letters: string; readonly times: readonly number[]; readonly pulls: readonly number[] } | undefined;
}

/** Looks at the order of the accepted pulls. */
export function orderFinding(pulls: readonly PlacedPull[], confidence: number): OrderFinding {
  const baseline = 'the baseline';
  if (pulls.some((pull) => pull.order === undefined)) {
    return {
      separable: false,
      sentence: `Change or drift? The order of the pulls is not known. Give order: [...], or return to ${baseline} for two pulls next time.`,
      corrected: undefined,
      made: undefined,
    };
  }
  const indices = pulls.map((_, i) => i).sort((i, j) => pulls[i]!.order! - pulls[j]!.order!);
  const inOrder = indices.map((i) => pulls[i]!);
  const order = inOrder.map((pull) => pull.side).join('');
  const clocks = inOrder.map((pull) => pull.clock);
  const times = clocks.every((clock) => clock !== undefined) ? clocks : inOrder.map((pull) => pull.order!);
  const made = { letters: order, times, pulls: indices };
  try {
    const design = orderDesign(order, { times });
    const corrected =
      design.degreesOfFreedom > 0
        ? driftDifference(
            order,
            inOrder.map((pull) => pull.mean),
            { times, confidence },
          )
        : undefined;
    if (design.confounded) {
      return {
        separable: false,
        sentence: `The order of the pulls (${order}) hides the change in any drift over the day: the pulls of a set-up stand together. Alternate next time.`,
        corrected,
        made,
      };
    }
    return {
      separable: true,
      sentence: `The set-ups took turns (${order}), so drift over the day cannot pass for the change.`,
      corrected,
      made,
    };
  } catch (error) {
    if (!(error instanceof StatisticsError)) throw error;
    return {
      separable: false,
      sentence: `The order of the pulls (${order}) cannot tell drift from the change.`,
      corrected: undefined,
      made,
    };
  }
}
