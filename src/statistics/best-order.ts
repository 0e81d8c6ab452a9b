import { requireCount } from './checks.js';
import { orderDesign } from './drift-model.js';

/** Up to here every order is tried: 12,870 of them at 16 pulls. */
const MOST_TRIED = 16;

const found = new Map<number, string>();

/**
 * The order of pulls, `A` baseline and `B` candidate, in which a steady drift costs a comparison least; among equals the one that a bent
 * drift costs least, and then the one that begins and ends with the baseline. Odd numbers give the baseline or the candidate one more.
 *
 * @param pulls - pulls in all, at least 4. Above 16 the order is the usual A B B A over and over, which is close to the best.
 */
export function bestOrder(pulls: number): string {
  requireCount('best order', 'pulls', pulls, 4);
  if (pulls > MOST_TRIED) return 'ABBA'.repeat(Math.ceil(pulls / 4)).slice(0, pulls);
  let best = found.get(pulls);
  if (best === undefined) {
    best = ordersOf(pulls).reduce((kept, order) => (isBetter(order, kept) ? order : kept));
    found.set(pulls, best);
  }
  return best;
}

/** Every order with as many of one as of the other, or one more; the first pull is the baseline. */
function ordersOf(pulls: number): string[] {
  const orders: string[] = [];
  const grow = (order: string, candidates: number): void => {
    if (order.length === pulls) {
      if (Math.abs(2 * candidates - pulls) <= 1) orders.push(order);
      return;
    }
    if (2 * (order.length - candidates) <= pulls + 1) grow(`${order}A`, candidates);
    if (2 * candidates <= pulls + 1) grow(`${order}B`, candidates + 1);
  };
  grow('A', 0);
  return orders;
}

function isBetter(order: string, than: string): boolean {
  const compared = [
    costOf(order, 'linear') - costOf(than, 'linear'),
    costOf(order, 'quadratic') - costOf(than, 'quadratic'),
  ];
  const first = compared.find((difference) => Math.abs(difference) > 1e-12);
  if (first !== undefined) return first < 0;
  return order.endsWith('A') && !than.endsWith('A');
}

function costOf(order: string, drift: 'linear' | 'quadratic'): number {
  const needed = drift === 'linear' ? 3 : 4;
  if (order.length <= needed) return 0;
  const { varianceFactor, confounded } = orderDesign(order, { drift });
  return confounded && drift === 'linear' ? Infinity : varianceFactor;
}
