import { notConverged } from './errors.js';
import { rootBetween as rootOf } from './root-between.js';

/**
 * Where a continuous function crosses zero between two ends of opposite sign.
 *
 * @throws StatisticsError `not-converged` where the ends do not enclose a root.
 */
export function rootBetween(f: (x: number) => number, from: number, to: number, statistic: string): number {
  const root = rootOf(f, from, to);
  if (Number.isNaN(root)) throw notConverged(statistic, 'bracket', `values ${f(from)} and ${f(to)} at its ends`);
  return root;
}
