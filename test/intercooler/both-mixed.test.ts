import { inspect } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bestTransferUnitsCrossflowBothMixed,
  effectiveness,
  largerTransferUnitsCrossflowBothMixed,
  transferUnits,
  type BothMixedSizes,
} from '../../src/intercooler/index.js';
import { percent, ratio } from '../../src/units/index.js';

const sizes = (eps: number, C: number): BothMixedSizes =>
  transferUnits.crossflowBothMixed({ effectiveness: ratio(eps), capacityRatio: ratio(C) });
const reached = (N: number, C: number): number => effectiveness.crossflowBothMixed.kernel(N, C);
const capacities = fc.double({ min: 0.01, max: 1, noNaN: true });

describe('crossflow with both flows mixed', () => {
  it('passes a maximum: at equal rates 3 transfer units do better than 10', () => {
    // Kays and London chapter 2 (from memory), computed apart: 0.5645 and 0.5263.
    expect(reached(3, 1)).toBeCloseTo(0.5645, 4);
    expect(reached(10, 1)).toBeCloseTo(0.5263, 4);
  });

  it('is best where its effectiveness neither rises nor falls', () => {
    fc.assert(
      fc.property(capacities, (C) => {
        const best = bestTransferUnitsCrossflowBothMixed.kernel(C);
        for (const share of [0.5, 0.9, 0.99, 1.01, 1.1, 2])
          expect(reached(best * share, C)).toBeLessThan(reached(best, C));
      }),
    );
  });

  it('never rises with the capacity ratio and lies between 0 and 1', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 500, noNaN: true }), capacities, capacities, (N, C1, C2) => {
        const [low, high] = [Math.min(C1, C2), Math.max(C1, C2)];
        expect(reached(N, high)).toBeLessThanOrEqual(reached(N, low) * (1 + 2e-15));
        expect(reached(N, high)).toBeGreaterThanOrEqual(0);
        expect(reached(N, low)).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe('the sizes of a core with both flows mixed', () => {
  it('are two between the limit of cores without end and the maximum, and both do it', () => {
    fc.assert(
      fc.property(capacities, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (C, share) => {
        const limit = 1 / (1 + C);
        const most = reached(bestTransferUnitsCrossflowBothMixed.kernel(C), C);
        fc.pre(most - limit > 1e-9);
        const eps = limit + share * (most - limit);
        const { roots, smaller, larger, best } = sizes(eps, C);
        expect(roots).toEqual([smaller, larger]);
        expect(smaller!.si).toBeLessThan(best!.transferUnits.si);
        expect(larger!.si).toBeGreaterThan(best!.transferUnits.si);
        for (const root of roots) expect(Math.abs(reached(root.si, C) / eps - 1)).toBeLessThan(1e-14);
      }),
    );
  });

  it('is one at or below the limit of cores without end', () => {
    for (const eps of [0, 0.3, 0.5]) {
      const { roots, larger } = sizes(eps, 1);
      expect(roots).toHaveLength(1);
      expect(larger).toBeUndefined();
      expect(reached(roots[0]!.si, 1)).toBeCloseTo(eps, 14);
    }
  });

  it('are none above the maximum, which is no error, and the best size is still named', () => {
    const result = sizes(0.6, 1);
    expect(result.roots).toEqual([]);
    expect(result.best!.effectiveness.si).toBeCloseTo(0.564509005081166, 14);
    expect(result.best!.transferUnits.si).toBeCloseTo(2.982867135745359, 12);
    expect(sizes(1, 1).roots).toEqual([]);
  });

  it('is one without a maximum where one capacity rate is without bound', () => {
    const { roots, best } = sizes(0.75, 0);
    expect(best).toBeUndefined();
    expect(roots.map((root) => root.si)).toEqual([expect.closeTo(-Math.log(0.25), 14)]);
    expect(sizes(0.75, 1e-300).roots[0]!.si).toBeCloseTo(-Math.log(0.25), 14);
  });

  it('meet at the maximum', () => {
    const best = bestTransferUnitsCrossflowBothMixed.kernel(0.7);
    const { smaller, larger } = sizes(reached(best, 0.7), 0.7);
    // A maximum is flat: a rounding of the effectiveness moves the size by its root.
    expect(smaller!.si / best).toBeCloseTo(1, 7);
    expect(larger!.si / best).toBeCloseTo(1, 7);
  });

  it('has words and records', () => {
    const result = transferUnits.crossflowBothMixed({ effectiveness: percent(55), capacityRatio: ratio(1) });
    expect(String(result)).toBe('1.956 or 5.177 transfer units; at best 56.45 % with 2.983');
    expect(String(sizes(0.6, 1))).toMatch(/^no number of transfer units; at best 56\.45 %/);
    expect(inspect(result)).toBe(String(result));
    const records = result.toJSON();
    expect(records.roots.map(({ value }) => value)).toEqual([result.smaller!.si, result.larger!.si]);
    expect(Object.keys(records.best!)).toEqual(['transferUnits', 'effectiveness']);
    expect(sizes(0.5, 0).toJSON()).toEqual({ roots: [sizes(0.5, 0).smaller!.toJSON()] });
  });

  it('refuses what is impossible as every calculation does', () => {
    expect(() => sizes(75, 0.5)).toThrow(/write percent\(75\)/);
    expect(() => sizes(0.5, -0.1)).toThrow(/capacityRatio must be between 0 and 1/);
    const beyond = { effectiveness: ratio(0.6), capacityRatio: ratio(1) };
    expect(() => largerTransferUnitsCrossflowBothMixed(beyond)).toThrow(
      /no more than a crossflow core with both flows mixed/,
    );
    expect(() => largerTransferUnitsCrossflowBothMixed({ ...beyond, effectiveness: ratio(0.5) })).toThrow(
      /above 1 \/ \(1 \+ capacityRatio\)/,
    );
  });
});
