import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrangements, rateCore, type Arrangement, type CoreRating } from '../../src/charge-path/arrangements.js';
import { conductanceAtFlow } from '../../src/charge-path/index.js';
import { onNumbers } from '../../src/charge-path/way.js';
import { overallConductance } from '../../src/intercooler/index.js';

const SLACK = 1e-11;
const RUNS = { numRuns: 300, seed: 4 };
/** Both flows mixed are the exception: beyond a size they do worse. */
const usual = arrangements.filter((arrangement) => arrangement !== 'crossflowBothMixed');

interface Core {
  readonly arrangement: Arrangement;
  readonly charge: number;
  readonly coolant: number;
  readonly exponent: number;
  readonly coolantRate: number;
}

const cores = (choices: readonly Arrangement[]): fc.Arbitrary<Core> =>
  fc.record({
    arrangement: fc.constantFrom(...choices),
    charge: fc.double({ min: 50, max: 3000, noNaN: true }),
    coolant: fc.double({ min: 50, max: 3000, noNaN: true }),
    exponent: fc.double({ min: 0.3, max: 0.9, noNaN: true }),
    coolantRate: fc.double({ min: 20, max: 2000, noNaN: true }),
  });

/** A core at some charge flow; its conductance on the charge side is that at 0.2 kg/s. */
function rated(core: Core, chargeFlow: number): CoreRating<number> & { readonly chargeRate: number } {
  const chargeSide = onNumbers.run(conductanceAtFlow, core.charge, 0.2, core.exponent, chargeFlow);
  const conductance = onNumbers.run(overallConductance, chargeSide, core.coolant);
  const chargeRate = 1010 * chargeFlow;
  return {
    ...rateCore(onNumbers, { arrangement: core.arrangement }, conductance, chargeRate, core.coolantRate),
    chargeRate,
  };
}

const airSide = ({ effectiveness, chargeRate }: ReturnType<typeof rated>, coolantRate: number): number =>
  (effectiveness * Math.min(chargeRate, coolantRate)) / chargeRate;

const flows = fc.tuple(fc.double({ min: 0.02, max: 1, noNaN: true }), fc.double({ min: 1.001, max: 3, noNaN: true }));

describe('a core at one flow of cooling air', () => {
  it('cools every kelvin of charge less the more charge flows', () => {
    fc.assert(
      fc.property(cores(usual), flows, (core, [flow, factor]) => {
        const [before, after] = [rated(core, flow), rated(core, flow * factor)];
        return airSide(after, core.coolantRate) <= airSide(before, core.coolantRate) + SLACK;
      }),
      RUNS,
    );
  });

  it('loses true effectiveness with charge flow while the charge is the smaller flow', () => {
    fc.assert(
      fc.property(cores(usual), flows, (core, [flow, factor]) => {
        const [before, after] = [rated(core, flow), rated(core, flow * factor)];
        fc.pre(after.chargeRate <= core.coolantRate);
        return after.effectiveness <= before.effectiveness + SLACK;
      }),
      RUNS,
    );
  });

  it('gains true effectiveness with charge flow while the cooling air is the smaller flow', () => {
    fc.assert(
      fc.property(cores(usual), flows, (core, [flow, factor]) => {
        const [before, after] = [rated(core, flow), rated(core, flow * factor)];
        fc.pre(before.chargeRate >= core.coolantRate);
        return after.effectiveness >= before.effectiveness - SLACK;
      }),
      RUNS,
    );
  });
});

describe('a core of more conductance', () => {
  const bigger = (core: Core): Core => ({ ...core, charge: 1.5 * core.charge, coolant: 1.5 * core.coolant });

  it('is never less effective', () => {
    fc.assert(
      fc.property(cores(usual), fc.double({ min: 0.02, max: 1, noNaN: true }), (core, flow) => {
        return rated(bigger(core), flow).effectiveness >= rated(core, flow).effectiveness - SLACK;
      }),
      RUNS,
    );
  });

  it('is less effective only with both flows mixed, beyond its best size', () => {
    const effectivenessAt = (transferUnits: number): number =>
      rateCore(onNumbers, { arrangement: 'crossflowBothMixed' }, transferUnits * 200, 200, 200).effectiveness;
    // Shah and Sekulic: with equal capacity rates 0.5645 at 3 transfer units, 0.5263 at 10.
    expect(effectivenessAt(3)).toBeCloseTo(0.5645, 4);
    expect(effectivenessAt(10)).toBeCloseTo(0.5263, 4);
    expect(effectivenessAt(1)).toBeLessThan(effectivenessAt(2));
  });

  it('does better in passes, and never better than counterflow', () => {
    const at = (passes: number | undefined): number =>
      rateCore(onNumbers, { arrangement: 'crossflowUnmixed', passes }, 400, 200, 400).effectiveness;
    const counterflow = rateCore(onNumbers, { arrangement: 'counterflow' }, 400, 200, 400).effectiveness;
    expect(at(2)).toBeCloseTo(0.759136, 6);
    expect(at(1)).toBeCloseTo(at(undefined), 12);
    expect(at(2)).toBeGreaterThan(at(1));
    expect(at(4)).toBeLessThan(counterflow);
  });
});
