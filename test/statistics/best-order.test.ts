import { describe, expect, it } from 'vitest';
import { bestOrder, orderDesign } from '../../src/statistics/index.js';

describe('the best order of pulls', () => {
  // Variance factors of the best orders, computed for the method sheet of this library by least squares over all orders.
  it.each([
    [4, 1],
    [5, 0.8333333333],
    [6, 0.6730769231],
    [7, 0.5833333333],
    [8, 0.5],
    [9, 0.45],
    [10, 0.4004854369],
    [12, 0.3333333333],
  ])('of %i costs %f of the variance of one pull', (pulls, cost) => {
    expect(orderDesign(bestOrder(pulls)).varianceFactor).toBeCloseTo(cost, 9);
  });

  it('of four is A B B A, and of eight withstands a bent drift too', () => {
    expect(bestOrder(4)).toBe('ABBA');
    expect(orderDesign(bestOrder(8), { drift: 'quadratic' }).varianceFactor).toBeCloseTo(0.5, 9);
  });

  it('is as many of one as of the other, begins with the baseline, and never hides the change in the drift', () => {
    for (let pulls = 4; pulls <= 20; pulls++) {
      const order = bestOrder(pulls);
      expect(order).toMatch(/^A[AB]+$/);
      expect(order).toHaveLength(pulls);
      expect(Math.abs(order.replaceAll('A', '').length * 2 - pulls)).toBeLessThanOrEqual(1);
      expect(orderDesign(order).confounded).toBe(false);
    }
  });

  it('needs four pulls', () => expect(() => bestOrder(3)).toThrow(/pulls/));
});
