import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capacityRatio, effectiveness, numberOfTransferUnits, transferUnits } from '../../src/intercooler/index.js';
import { heatCapacityRate, ratio, thermalConductance } from '../../src/units/index.js';

const arrangements = ['counterflow', 'parallelFlow', 'crossflowUnmixed'] as const;

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

describe.each(arrangements)('effectiveness in %s', (arrangement) => {
  const forward = (N: number, C: number): number => effectiveness[arrangement].kernel(N, C);
  const back = (eps: number, C: number): number => transferUnits[arrangement].kernel(eps, C);

  it('lies between 0 and 1 for any core', () => {
    fc.assert(
      fc.property(units, capacities, (N, C) => {
        const eps = forward(N, C);
        expect(eps).toBeGreaterThanOrEqual(0);
        expect(eps).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('never falls with transfer units and never rises with the capacity ratio', () => {
    fc.assert(
      fc.property(units, units, capacities, capacities, (N1, N2, C1, C2) => {
        const [few, many] = [Math.min(N1, N2), Math.max(N1, N2)];
        const [low, high] = [Math.min(C1, C2), Math.max(C1, C2)];
        expect(forward(many, low)).toBeGreaterThanOrEqual(forward(few, low) * (1 - 2e-15));
        expect(forward(few, high)).toBeLessThanOrEqual(forward(few, low) * (1 + 2e-15));
      }),
    );
  });

  it('is 1 - e^-N where one capacity rate is without bound, as in any arrangement', () => {
    fc.assert(
      fc.property(units, (N) => {
        const limit = -Math.expm1(-N);
        expect(Math.abs(forward(N, 0) - limit)).toBeLessThanOrEqual(4e-16 * limit);
        expect(Math.abs(forward(N, 1e-18) - limit)).toBeLessThanOrEqual(4e-16 * limit);
      }),
    );
  });

  it('is the number of transfer units itself for a core that hardly cools', () => {
    for (const C of [0, 1e-9, 0.5, 1]) expect(forward(1e-12, C) / 1e-12).toBeCloseTo(1, 11);
    expect(forward(0, 0.5)).toBe(0);
  });

  it('has no jump where the capacity rates become equal', () => {
    for (const N of [1e-3, 0.9, 1.1, 5, 50, 500]) {
      const equal = forward(N, 1);
      for (const gap of [2 ** -53, 1e-15, 1e-13, 1e-12, 1e-10]) {
        expect(Math.abs(forward(N, 1 - gap) / equal - 1)).toBeLessThan(gap * (1 + N) + 1e-15);
      }
    }
  });

  it('gives back the transfer units it was made from', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 20, noNaN: true }), capacities, (N, C) => {
        const eps = forward(N, C);
        const slope = (forward(N * (1 + 1e-5), C) - forward(N * (1 - 1e-5), C)) / (2e-5 * N);
        // Where a larger core hardly cools more, a rounding of the effectiveness is many transfer units.
        fc.pre(slope * N > 1e-6 * eps);
        expect(Math.abs(back(eps, C) / N - 1)).toBeLessThan(1e-14 * (1 + eps / (slope * N)));
      }),
    );
  });

  it('is reached again by the core that was sized for it, to the last digits', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.97, noNaN: true }), capacities, (eps, C) => {
        const N = back(eps, C);
        fc.pre(N <= 500);
        expect(Math.abs(forward(N, C) / eps - 1)).toBeLessThan(1e-15);
      }),
    );
  });

  it('needs no core for no cooling', () => {
    for (const C of [0, 0.5, 1]) expect(back(0, C)).toBe(0);
  });
});

describe('the arrangements compared', () => {
  it('counterflow is never worse than crossflow, and crossflow never worse than parallel flow', () => {
    fc.assert(
      fc.property(units, capacities, (N, C) => {
        const best = effectiveness.counterflow.kernel(N, C);
        const middle = effectiveness.crossflowUnmixed.kernel(N, C);
        const worst = effectiveness.parallelFlow.kernel(N, C);
        expect(middle).toBeLessThanOrEqual(best * (1 + 2e-15));
        expect(worst).toBeLessThanOrEqual(middle * (1 + 2e-15));
      }),
    );
  });

  it('crossflow lies within 1 % or so of the well-known approximation, which reads up to 1 % high', () => {
    // Incropera table 11.3, from memory: 1 - exp((N^0.22 / C) (exp(-C N^0.78) - 1)).
    const approximate = (N: number, C: number): number => 1 - Math.exp((N ** 0.22 / C) * Math.expm1(-C * N ** 0.78));
    for (const [N, C] of [
      [1, 0.5],
      [2, 0.5],
      [2, 1],
      [3, 0.25],
    ] as const) {
      expect(Math.abs(approximate(N, C) / effectiveness.crossflowUnmixed.kernel(N, C) - 1)).toBeLessThan(0.01);
    }
  });

  it('true effectiveness falls with charge flow while the charge is the smaller capacity rate', () => {
    // Transfer units 2 at capacity ratio 0.3; charge flow half as much again, N as m^-0.5 (common practice, no source).
    const before = effectiveness.crossflowUnmixed.kernel(2, 0.3);
    const after = effectiveness.crossflowUnmixed.kernel(2 * 1.5 ** -0.5, 0.45);
    expect(before).toBeCloseTo(0.784184, 6);
    expect(after).toBeCloseTo(0.693505, 6);
  });

  it('true effectiveness rises with charge flow where the cooling air is the smaller capacity rate', () => {
    const conductance = thermalConductance(402, 'W/K');
    const at = (charge: number): number => {
      const rates = {
        chargeCapacityRate: heatCapacityRate(charge, 'W/K'),
        coolantCapacityRate: heatCapacityRate(150, 'W/K'),
      };
      return effectiveness.crossflowUnmixed({
        transferUnits: numberOfTransferUnits({ conductance, ...rates }),
        capacityRatio: capacityRatio(rates),
      }).si;
    };
    expect(at(300)).toBeGreaterThan(at(201));
  });

  it('the capacity ratio is the smaller over the larger, whichever side it is on', () => {
    const [low, high] = [heatCapacityRate(150, 'W/K'), heatCapacityRate(202, 'W/K')];
    const one = capacityRatio({ chargeCapacityRate: low, coolantCapacityRate: high });
    const other = capacityRatio({ chargeCapacityRate: high, coolantCapacityRate: low });
    expect(one.si).toBe(150 / 202);
    expect(other.si).toBe(one.si);
  });
});

describe('an effectiveness that no core reaches', () => {
  it('is refused with the limit of parallel flow', () => {
    const given = { effectiveness: ratio(0.75), capacityRatio: ratio(0.5) };
    expect(() => transferUnits.parallelFlow(given)).toThrow(
      /effectiveness must be below 1 \/ \(1 \+ capacityRatio\), the limit of a parallel-flow core without end, got effectiveness 0\.75, capacityRatio 0\.5/,
    );
    expect(() => transferUnits.parallelFlow({ ...given, effectiveness: ratio(0.667) })).toThrow(/below 1 \/ \(1 \+/);
    expect(transferUnits.parallelFlow({ ...given, effectiveness: ratio(0.66) }).si).toBeGreaterThan(3);
  });

  it('is refused with the limit of counterflow', () => {
    const given = { effectiveness: ratio(1), capacityRatio: ratio(0.5) };
    expect(() => transferUnits.counterflow(given)).toThrow(/effectiveness must be below 1, the limit/);
  });

  it('is refused with the limit of crossflow', () => {
    for (const eps of [0.98, 1]) {
      const given = { effectiveness: ratio(eps), capacityRatio: ratio(1) };
      expect(() => transferUnits.crossflowUnmixed(given)).toThrow(/below what a crossflow core of 500 transfer units/);
    }
    const reached = effectiveness.crossflowUnmixed({ transferUnits: ratio(500), capacityRatio: ratio(1) });
    expect(transferUnits.crossflowUnmixed({ effectiveness: reached, capacityRatio: ratio(1) }).si).toBeCloseTo(500, 9);
  });

  it('is refused where it lies above 1 or below 0 at once, with how to write percent', () => {
    const given = { effectiveness: ratio(75), capacityRatio: ratio(0.5) };
    expect(() => transferUnits.crossflowUnmixed(given)).toThrow(/write percent\(75\)/);
    expect(() => transferUnits.crossflowUnmixed({ ...given, effectiveness: ratio(-0.1) })).toThrow(/between 0 and 1/);
  });
});
