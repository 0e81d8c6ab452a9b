import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  effectiveness,
  effectivenessCrossflowOneMixed,
  effectivenessOfPasses,
  passEffectiveness,
  smallerTransferUnitsCrossflowBothMixed,
  transferUnits,
} from '../../src/intercooler/index.js';
import { ratio, type Quantity } from '../../src/units/index.js';

interface Grid {
  readonly source: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly number[])[];
}

const grid = JSON.parse(readFileSync(new URL('../reference/effectiveness.json', import.meta.url), 'utf8')) as Grid;

const monotonic = ['crossflowUnmixedApproximate', 'crossflowLargerMixed', 'crossflowSmallerMixed', 'oneShell'] as const;
type Arrangement = 'counterflow' | 'parallelFlow' | 'crossflowUnmixed' | (typeof monotonic)[number];

const two = ratio(2);
const passes = { twoShells: 'oneShell', twoPassesUnmixed: 'crossflowUnmixed' } as const;

/** Effectiveness by the name of a column of the reference values. */
function forward(column: string, N: number, C: number): number {
  const inputs = { transferUnits: ratio(N), capacityRatio: ratio(C) };
  const cell = passes[column as keyof typeof passes];
  if (cell) return effectiveness.multiPass({ cell: effectiveness[cell], passes: two, ...inputs }).si;
  return effectiveness[column as Arrangement](inputs).si;
}

/** Transfer units by the name of a column of the reference values. */
function back(column: string, eps: number, C: number): number {
  const inputs = { effectiveness: ratio(eps), capacityRatio: ratio(C) };
  const cell = passes[column as keyof typeof passes];
  if (cell) return transferUnits.multiPass({ cell: transferUnits[cell], passes: two, ...inputs }).si;
  return transferUnits[column as Arrangement](inputs).si;
}

const units = fc.oneof(
  fc.constantFrom(0, 1, 500),
  fc.double({ min: 1e-6, max: 50, noNaN: true }),
  fc.double({ min: -12, max: 2.69, noNaN: true }).map((power) => 10 ** power),
);
const capacities = fc.oneof(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.double({ min: -16, max: 0, noNaN: true }).map((power) => 10 ** power),
  fc.double({ min: -16, max: 0, noNaN: true }).map((power) => 1 - 10 ** power),
);

describe(`effectiveness against independent values (${grid.source})`, () => {
  it.each(grid.columns.slice(2))(
    '%s agrees to 1e-14 from 1e-6 to 50 transfer units at any capacity ratio',
    (column) => {
      const at = grid.columns.indexOf(column);
      for (const row of grid.rows) {
        const [N, C, value] = [row[0]!, row[1]!, row[at]!];
        expect(Math.abs(forward(column, N, C) / value - 1), `N ${N}, C ${C}`).toBeLessThan(1e-14);
      }
    },
  );

  it.each(grid.columns.slice(2).filter((column) => column !== 'crossflowBothMixed'))(
    '%s is turned round to 1e-9 wherever a rounding of the effectiveness allows it',
    (column) => {
      const at = grid.columns.indexOf(column);
      let turned = 0;
      for (const row of grid.rows) {
        const [N, C, value] = [row[0]!, row[1]!, row[at]!];
        const slope = (forward(column, N * (1 + 1e-5), C) - forward(column, N * (1 - 1e-5), C)) / (2e-5 * N);
        if (!(slope * N > 1e-6 * value)) continue;
        expect(Math.abs(back(column, value, C) / N - 1), `N ${N}, C ${C}`).toBeLessThan(1e-9);
        turned++;
      }
      expect(turned).toBeGreaterThan(60);
    },
  );
});

describe.each(monotonic)('effectiveness in %s', (arrangement) => {
  const of = (N: number, C: number): number => effectiveness[arrangement].kernel(N, C);
  const unitsOf = (eps: number, C: number): number => transferUnits[arrangement].kernel(eps, C);

  it('lies between 0 and 1, never falls with transfer units and never rises with the capacity ratio', () => {
    fc.assert(
      fc.property(units, units, capacities, capacities, (N1, N2, C1, C2) => {
        const [few, many] = [Math.min(N1, N2), Math.max(N1, N2)];
        const [low, high] = [Math.min(C1, C2), Math.max(C1, C2)];
        expect(of(few, high)).toBeGreaterThanOrEqual(0);
        expect(of(many, low)).toBeLessThanOrEqual(1);
        expect(of(many, low)).toBeGreaterThanOrEqual(of(few, low) * (1 - 2e-15));
        expect(of(few, high)).toBeLessThanOrEqual(of(few, low) * (1 + 2e-15));
      }),
    );
  });

  it('is 1 - e^-N where one capacity rate is without bound, with no jump on the way there', () => {
    fc.assert(
      fc.property(units, (N) => {
        const limit = -Math.expm1(-N);
        for (const C of [0, 5e-324, 1e-300, 1e-18])
          expect(Math.abs(of(N, C) - limit)).toBeLessThanOrEqual(4e-16 * limit);
      }),
    );
  });

  it('has no jump where the capacity rates become equal', () => {
    for (const N of [1e-3, 0.9, 1.1, 5, 50, 500]) {
      for (const gap of [2 ** -53, 1e-15, 1e-13, 1e-12, 1e-10]) {
        expect(Math.abs(of(N, 1 - gap) / of(N, 1) - 1)).toBeLessThan(gap * (1 + N) + 1e-15);
      }
    }
  });

  it('is reached again by the core that was sized for it', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.99, noNaN: true }), capacities, (eps, C) => {
        const N = unitsOf(eps, C);
        fc.pre(N <= 500);
        expect(Math.abs(of(N, C) / eps - 1)).toBeLessThan(2e-15);
      }),
    );
  });

  it('needs no core for no cooling', () => {
    for (const C of [0, 0.5, 1]) expect(unitsOf(0, C)).toBe(0);
  });
});

describe('an effectiveness that an arrangement never reaches', () => {
  // Limits for cores without end at a capacity ratio of 0.5: (1 - e^-0.5) / 0.5, 1 - e^-2 and 2 / (1.5 + sqrt 1.25).
  it.each([
    ['crossflowLargerMixed', 0.7869386805747332, /limit of such a core/],
    ['crossflowSmallerMixed', 0.8646647167633873, /limit of such a core/],
    ['oneShell', 0.7639320225002103, /limit of one shell/],
  ] as const)('%s is refused above its limit, in words', (arrangement, limit, words) => {
    const at = (eps: number): Quantity<'ratio'> =>
      transferUnits[arrangement]({ effectiveness: ratio(eps), capacityRatio: ratio(0.5) });
    expect(() => at(limit + 1e-12)).toThrow(words);
    expect(at(limit - 1e-9).si).toBeGreaterThan(10);
  });
});

describe('the textbook approximation for crossflow', () => {
  it('says that it is one, and the exact relation says nothing', () => {
    const inputs = { transferUnits: ratio(2), capacityRatio: ratio(0.5) };
    expect(effectiveness.crossflowUnmixedApproximate(inputs).notes).toMatchObject([{ code: 'approximation' }]);
    expect(effectiveness.crossflowUnmixed(inputs).notes).toEqual([]);
  });

  it('is 3.8 % low to 1.1 % high against the exact relation', () => {
    let [low, high] = [0, 0];
    for (let power = -2; power <= 2; power += 0.02) {
      for (let C = 0.02; C <= 1.001; C += 0.02) {
        const inputs = [10 ** power, Math.min(1, C)] as const;
        const off =
          effectiveness.crossflowUnmixedApproximate.kernel(...inputs) /
            effectiveness.crossflowUnmixed.kernel(...inputs) -
          1;
        [low, high] = [Math.min(low, off), Math.max(high, off)];
      }
    }
    expect(low).toBeCloseTo(-0.038, 3);
    expect(high).toBeCloseTo(0.011, 3);
  });
});

describe('one flow mixed', () => {
  it('is the same core from its flows, whichever has the smaller capacity rate', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (N, C) => {
          const [small, large] = [200, 200 / C];
          const larger = effectivenessCrossflowOneMixed.kernel(N * small, large, small);
          const smaller = effectivenessCrossflowOneMixed.kernel(N * small, small, large);
          expect(Math.abs(larger / effectiveness.crossflowLargerMixed.kernel(N, C) - 1)).toBeLessThan(1e-14);
          expect(Math.abs(smaller / effectiveness.crossflowSmallerMixed.kernel(N, C) - 1)).toBeLessThan(1e-14);
        },
      ),
    );
  });
});

describe('passes in overall counterflow', () => {
  it('one pass is the cell itself', () => {
    expect(effectivenessOfPasses.kernel(0.6, 0.4, 1)).toBeCloseTo(0.6, 15);
    expect(passEffectiveness.kernel(0.6, 0.4, 1)).toBeCloseTo(0.6, 15);
  });

  it('many passes come to counterflow, whatever the cells', () => {
    for (const cell of ['parallelFlow', 'crossflowUnmixed', 'oneShell'] as const) {
      const inputs = { transferUnits: ratio(2), capacityRatio: ratio(0.5) };
      const at = (n: number): number =>
        effectiveness.multiPass({ cell: effectiveness[cell], passes: ratio(n), ...inputs }).si;
      const best = effectiveness.counterflow(inputs).si;
      expect(at(20)).toBeGreaterThan(at(4));
      expect(at(20)).toBeLessThan(best);
      expect(at(20)).toBeGreaterThan(best - 0.011);
    }
  });

  it('passes of counterflow are counterflow', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        capacities,
        fc.integer({ min: 1, max: 20 }),
        (N, C, n) => {
          const whole = effectiveness.counterflow.kernel(N, C);
          const one = effectiveness.counterflow.kernel(N / n, C);
          expect(Math.abs(effectivenessOfPasses.kernel(one, C, n) / whole - 1)).toBeLessThan(1e-13);
        },
      ),
    );
  });

  it('perfect passes are perfect, idle ones idle', () => {
    for (const C of [0, 0.5, 1]) {
      expect(effectivenessOfPasses.kernel(1, C, 3)).toBe(1);
      expect(effectivenessOfPasses.kernel(0, C, 3)).toBe(0);
    }
  });

  it.each([
    [{ passes: ratio(0) }, 'effectiveness of passes: passes must be between 1 and 20, got 0.'],
    [{ transferUnits: ratio(-1) }, 'effectiveness of passes: transferUnits must be between 0 and 500, got −1.'],
    [
      { cell: undefined },
      'cell must be the relation of one pass, got nothing. Write cell: effectiveness.crossflowUnmixed.',
    ],
    [{ pases: two }, 'pases must be one of cell, transferUnits, capacityRatio, passes'],
  ])('are refused under their own name: %o', (wrong, words) => {
    const inputs = { cell: effectiveness.oneShell, transferUnits: two, capacityRatio: ratio(0.5), passes: two };
    expect(() => effectiveness.multiPass({ ...inputs, ...wrong } as never)).toThrow(words);
  });

  it('refuse cells with two sizes, and say which relation to take', () => {
    const inputs = { effectiveness: ratio(0.6), capacityRatio: ratio(0.8), passes: two };
    expect(() => transferUnits.multiPass({ ...inputs, cell: transferUnits.crossflowBothMixed as never })).toThrow(
      /^transfer units of passes: cell must be a relation that gives one number of transfer units, .* use smallerTransferUnitsCrossflowBothMixed\.$/,
    );
    const smaller = transferUnits.multiPass({ ...inputs, cell: smallerTransferUnitsCrossflowBothMixed });
    const back = effectiveness.multiPass({
      cell: effectiveness.crossflowBothMixed,
      transferUnits: smaller,
      capacityRatio: inputs.capacityRatio,
      passes: two,
    });
    expect(back.si).toBeCloseTo(0.6, 12);
    expect(() => transferUnits.multiPass({ ...inputs, cell: transferUnits.oneShell, passes: ratio(0) })).toThrow(
      'transfer units of passes: passes must be between 1 and 20, got 0.',
    );
  });

  it('carries a note for half a pass', () => {
    const inputs = { passEffectiveness: ratio(0.5), capacityRatio: ratio(0.5), passes: ratio(1.5) };
    expect(effectivenessOfPasses(inputs).notes).toMatchObject([
      { message: expect.stringContaining('whole number of passes') },
    ]);
  });
});
