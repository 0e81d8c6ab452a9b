import { ownConfidence, type ResolvedOptions } from './options.js';
import { orderFinding, type OrderFinding } from './order.js';
import type { Places, Sessions } from './places.js';
import type { TakenPull } from './taken-pull.js';

/** What the order of the accepted pulls lets be told of drift; nothing where each set-up has sessions of its own. */
export function findingOf(
  accepted: readonly [TakenPull[], TakenPull[]],
  { when }: Places,
  { confounded }: Sessions,
  options: ResolvedOptions,
): OrderFinding {
  const placed = accepted.flatMap((side, i) =>
    side.flatMap(({ pull, result }) =>
      result.mean
        ? [
            {
              side: i === 0 ? ('A' as const) : ('B' as const),
              mean: result.mean.si,
              order: result.order,
              clock: when(pull),
            },
          ]
        : [],
    ),
  );
  const finding = orderFinding(placed, ownConfidence(options));
  return confounded === undefined ? finding : { ...finding, hidden: confounded, corrected: undefined };
}
