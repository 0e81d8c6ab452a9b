import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  calculation,
  derived,
  input,
  measured,
  output,
  sensor,
  solve,
  uncertainty,
  whatIf,
  type Solved,
} from '../../src/calculation/index.js';
import { systemOf } from '../../src/calculation/system.js';
import {
  absolutePressure,
  column,
  known,
  massFlow,
  percent,
  ratio,
  ratioOf,
  subtract,
  temperature,
  temperatureDifference,
  type Quantity,
} from '../../src/units/index.js';
import { colebrook, errorOf, kepler, messageOf, relativeError } from './small-calculations.js';

type Ratio = Quantity<'ratio'>;

function anomalyOf(eccentricity: Ratio, mean: Ratio): Solved<'ratio', { residual: Ratio }> {
  return solve({ label: 'eccentric anomaly', kind: 'ratio', unit: '1', between: [ratio(0), ratio(7)] }, (anomaly) => ({
    residual: kepler({ anomaly, eccentricity, mean }),
  }));
}

const frictionOf = (reynolds: Ratio, roughness: Ratio): Ratio =>
  solve(
    { label: 'friction factor', kind: 'ratio', unit: '1', between: [ratio(1e-3), ratio(0.2)] },
    (frictionFactor) => ({
      residual: colebrook({ frictionFactor, reynolds, roughness }),
    }),
  ).solution;

/** Central difference of a function of one number, by solving again. */
const slopeOf = (f: (x: number) => number, x: number, h = 1e-5): number =>
  (f(x * (1 + h)) - f(x * (1 - h))) / (2 * h * x);

const sources = [derived('made for tests')];
const task = 'describe the air' as const;

/** What the engine takes: more when the charge is colder. */
const engineFlow = calculation({
  name: 'engine flow',
  task,
  inputs: {
    pressure: input('p', 'absolute pressure', { min: 1e4, max: 1e6 }),
    temperature: input('T', 'temperature', { min: 200, max: 600 }),
  },
  output: output('m', 'mass flow', 'g/s'),
  formula: '0.07 * p / (287.05 * T)',
  si: (p, T) => (0.07 * p) / (287.05 * T),
  sources,
});

/** Leaving temperature of a core whose effectiveness falls with flow. */
const coreOutlet = calculation({
  name: 'core outlet',
  task,
  inputs: {
    hot: input('Th', 'temperature', { min: 200, max: 600 }),
    cold: input('Tc', 'temperature', { min: 200, max: 600 }),
    flow: input('m', 'mass flow', { min: 1e-4, max: 5 }),
    size: input('s', 'mass flow', { min: 1e-3, max: 10 }),
  },
  output: output('To', 'temperature', '°C'),
  formula: 'Th - (Th - Tc) * (1 - exp(-s / m))',
  si: (Th, Tc, m, s) => Th - (Th - Tc) * (1 - Math.exp(-s / m)),
  rules: [{ need: 'the hot side must not be colder than the cold side', holds: (Th, Tc) => Th >= Tc }],
  sources,
});

/** Cold side of the core: warmed by what the core takes out of the charge. */
const coldSide = calculation({
  name: 'cold side',
  task,
  inputs: {
    ambient: input('Ta', 'temperature', { min: 200, max: 400 }),
    charge: input('To', 'temperature', { min: 200, max: 600 }),
    hot: input('Th', 'temperature', { min: 200, max: 600 }),
    flow: input('m', 'mass flow', { min: 1e-4, max: 5 }),
  },
  output: output('Tc', 'temperature', '°C'),
  formula: 'Ta + m * (Th - To) / 1.5',
  si: (Ta, To, Th, m) => Ta + (m * (Th - To)) / 1.5,
  sources,
});

interface Given {
  readonly pressure: Quantity<'absolute pressure'>;
  readonly hot: Quantity<'temperature'>;
  readonly ambient: Quantity<'temperature'>;
  readonly size: Quantity<'mass flow'>;
}

/** Charge flow with the cold-side temperature solved inside, at each trial flow. */
function nested({ pressure, hot, ambient, size }: Given) {
  return solve(
    { label: 'charge flow', kind: 'mass flow', unit: 'g/s', between: [massFlow(20, 'g/s'), massFlow(1, 'kg/s')] },
    (flow) => {
      const inner = solve({ label: 'cold side', kind: 'temperature', unit: '°C', between: [ambient, hot] }, (cold) => {
        const charge = coreOutlet({ hot, cold, flow, size });
        return { residual: subtract(coldSide({ ambient, charge, hot, flow }), cold), charge };
      });
      return {
        residual: subtract(engineFlow({ pressure, temperature: inner.charge }), flow),
        charge: inner.charge,
        cold: inner.solution,
      };
    },
  );
}

const given = (p: number, hot: number, ambient: number, size: number): Given => ({
  pressure: absolutePressure(p, 'kPa'),
  hot: temperature(hot, '°C'),
  ambient: temperature(ambient, '°C'),
  size: massFlow(size, 'g/s'),
});

describe('solve', () => {
  it("finds the root of Kepler's equation to the last digits (mpmath)", () => {
    const { solution, residual } = anomalyOf(ratio(0.3), ratio(1));
    expect(relativeError(solution, 1.28809131321183769744700031055)).toBeLessThan(3e-16);
    expect(Math.abs(residual.si)).toBeLessThan(4e-16);
    expect([solution.kind, solution.label]).toEqual(['ratio', 'eccentric anomaly']);
  });

  it('finds the friction factor of Colebrook and White: 0.02217454 at Re 1e5 and roughness 1e-3 (mpmath)', () => {
    expect(relativeError(frictionOf(ratio(1e5), ratio(1e-3)), 0.0221745359445150753892523090337)).toBeLessThan(1e-15);
  });

  it('satisfies its equation all over the range, as a property', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.95, noNaN: true }), fc.double({ min: 0, max: 6, noNaN: true }), (e, M) => {
        const { solution } = anomalyOf(ratio(e), ratio(M));
        expect(Math.abs(solution.si - e * Math.sin(solution.si) - M)).toBeLessThan(4e-15);
      }),
    );
  });

  it('gives back everything the equation returned, at the answer, in the unit asked for', () => {
    const { solution, charge, cold, residual } = nested(given(180, 120, 20, 60));
    const typed: [Quantity<'mass flow'>, Quantity<'temperature'>, Quantity<'temperature'>, Quantity<'mass flow'>] = [
      solution,
      charge,
      cold,
      residual,
    ];
    expect(typed.map(({ unit }) => unit)).toEqual(['g/s', '°C', '°C', 'g/s']);
    expect(
      relativeError(engineFlow({ pressure: absolutePressure(180, 'kPa'), temperature: charge }), solution),
    ).toBeLessThan(1e-14);
  });

  it('takes the ends in either order, and an answer that lies on one', () => {
    const at = (a: number, b: number): number =>
      solve({ label: 'x', kind: 'ratio', unit: '1', between: [ratio(a), ratio(b)] }, (x) => ({
        residual: subtract(x, ratio(2)),
      })).solution.si;
    expect([at(0, 5), at(5, 0), at(2, 5), at(0, 2)]).toEqual([2, 2, 2, 2]);
  });

  it('leaves no trace of iterations: the answer is one input that carries its equation', () => {
    const { solution, charge } = nested(given(180, 120, 20, 60));
    const { nodes, unknowns } = systemOf([solution, charge]);
    expect(unknowns.map(({ leaf }) => leaf.label).sort()).toEqual(['charge flow', 'cold side']);
    expect(nodes.size).toBeLessThan(14);
    expect(solution.origin).toMatchObject({ type: 'leaf', role: 'solved', label: 'charge flow' });
  });

  it('carries the notes of its equation', () => {
    const trusted = calculation({
      name: 'line',
      task,
      inputs: { x: input('x', 'ratio', { min: 0, max: 10, trusted: [0, 1] }) },
      output: output('y', 'ratio', '1'),
      formula: 'x - 2',
      si: (x) => x - 2,
      sources,
    });
    const { solution } = solve({ label: 'x', kind: 'ratio', unit: '1', between: [ratio(0), ratio(5)] }, (x) => ({
      residual: trusted({ x }),
    }));
    expect(solution.notes.map(({ code }) => code)).toEqual(['outside trusted range']);
  });
});

describe('uncertainty through solve', () => {
  it("is that of Kepler's equation in closed form (mpmath)", () => {
    const eccentricity = measured('e', ratio(0.3), { standardUncertainty: ratio(0.01) });
    const mean = measured('M', ratio(1), { standardUncertainty: ratio(0.02) });
    const budget = uncertainty(anomalyOf(eccentricity, mean).solution);
    const slopes = Object.fromEntries(budget.contributions.map(({ label, sensitivity }) => [label, sensitivity]));
    expect(relativeError(slopes['M']!, 1.09132930115041953751442658378)).toBeLessThan(1e-8);
    expect(relativeError(slopes['e']!, 1.04800830504993628589696325216)).toBeLessThan(1e-8);
  });

  it('is that of the friction factor (mpmath)', () => {
    const reynolds = measured('Re', ratio(1e5), { standardUncertainty: percent(2) });
    const roughness = measured('k', ratio(1e-3), { standardUncertainty: ratio(1e-4) });
    const slopes = Object.fromEntries(
      uncertainty(frictionOf(reynolds, roughness)).contributions.map((each) => [each.label, each.sensitivity]),
    );
    expect(relativeError(slopes['Re']!, -2.09904404114894e-8)).toBeLessThan(1e-8);
    expect(relativeError(slopes['k']!, 3.36568428745726922277)).toBeLessThan(1e-8);
  });

  it('agrees with solving again to 8 digits, with one solve nested in another', () => {
    const at = { pressure: 180e3, hot: 393.15, ambient: 293.15, size: 0.06 };
    const build = (si: typeof at): Given => ({
      pressure: measured('p', absolutePressure(si.pressure, 'Pa'), { standardUncertainty: percent(1) }),
      hot: measured('Th', temperature(si.hot, 'K'), { standardUncertainty: temperatureDifference(2, 'K') }),
      ambient: measured('Ta', temperature(si.ambient, 'K'), { standardUncertainty: temperatureDifference(1, 'K') }),
      size: measured('s', massFlow(si.size, 'kg/s'), { standardUncertainty: percent(5) }),
    });
    const keys = { p: 'pressure', Th: 'hot', Ta: 'ambient', s: 'size' } as const;
    for (const output of ['solution', 'charge', 'cold'] as const) {
      const budget = uncertainty(nested(build(at))[output]);
      expect(budget.contributions).toHaveLength(4);
      for (const { label, sensitivity } of budget.contributions) {
        const key = keys[label as keyof typeof keys];
        const again = slopeOf((x) => nested(build({ ...at, [key]: x }))[output].si, at[key]);
        expect(relativeError(sensitivity, again), `${output} by ${label}`).toBeLessThan(1e-8);
      }
    }
  });

  it('agrees with solving again where one solve follows another', () => {
    const second = (e: number): Ratio => {
      const eccentricity = measured('e', ratio(e), { standardUncertainty: ratio(0.01) });
      const first = anomalyOf(eccentricity, ratio(1)).solution;
      return ratioOf(anomalyOf(eccentricity, first).solution, first);
    };
    const [only] = uncertainty(second(0.3)).contributions;
    expect(
      relativeError(
        only!.sensitivity,
        slopeOf((e) => second(e).si, 0.3),
      ),
    ).toBeLessThan(1e-8);
  });

  it('cancels what two solved runs share', () => {
    const probe = sensor('temperature', { label: 'probe', halfWidth: temperatureDifference(1, 'K') });
    const run = (): Quantity<'mass flow'> =>
      nested({ ...given(180, 120, 20, 60), hot: probe.reads(temperature(120, '°C')) }).solution;
    expect(uncertainty(run()).standard.in('g/s')).toBeGreaterThan(0.01);
    expect(uncertainty(subtract(run(), run())).standard.in('g/s')).toBeLessThan(1e-9);
  });

  it('refuses an answer that the equation does not fix', () => {
    const cube = calculation({
      name: 'cube',
      task,
      inputs: { x: input('x', 'ratio', { min: -10, max: 10 }), a: input('a', 'ratio', { min: -10, max: 10 }) },
      output: output('y', 'ratio', '1'),
      formula: '(x^9 > 0 ? (x > 1 ? x - 1 : 0) : x^9) + 0 * a',
      si: (x, a) => (x > 1 ? x - 1 : x < -1 ? x + 1 : 0) + 0 * a,
      sources,
    });
    const a = measured('a', ratio(1), { standardUncertainty: ratio(0.1) });
    const { solution } = solve({ label: 'x', kind: 'ratio', unit: '1', between: [ratio(-5), ratio(4)] }, (x) => ({
      residual: cube({ x, a }),
    }));
    expect(messageOf(() => uncertainty(solution))).toBe(
      'uncertainty: the equations must fix what was solved, got a solution that may slide (x).',
    );
  });
});

describe('whatIf through solve', () => {
  it('gives what solving from the other inputs gives, as a property, with one solve nested in another', () => {
    const inputs = fc.tuple(
      fc.double({ min: 100, max: 300, noNaN: true }),
      fc.double({ min: 70, max: 180, noNaN: true }),
      fc.double({ min: -20, max: 40, noNaN: true }),
      fc.double({ min: 10, max: 200, noNaN: true }),
    );
    fc.assert(
      fc.property(inputs, inputs, (from, to) => {
        const [a, b] = [given(...from), given(...to)];
        const [result, direct] = [nested(a), nested(b)];
        const changes = [
          [a.pressure, b.pressure],
          [a.hot, b.hot],
          [a.ambient, b.ambient],
          [a.size, b.size],
        ] as const;
        expect(relativeError(whatIf(result.solution, changes), direct.solution)).toBeLessThan(1e-13);
        expect(relativeError(whatIf(result.charge, changes), direct.charge)).toBeLessThan(1e-13);
      }),
    );
  });

  it('gives what solving anew gives where one solve follows another', () => {
    const second = (e: Ratio): Ratio => anomalyOf(e, anomalyOf(e, ratio(1)).solution).solution;
    const [a, b] = [ratio(0.1), ratio(0.9)];
    expect(relativeError(whatIf(second(a), [[a, b]]), second(b))).toBeLessThan(1e-14);
  });

  it('gives an answer with its equation, so that its uncertainty and another what-if go on from there', () => {
    const a = known('e', ratio(0.1));
    const b = measured('e', ratio(0.6), { standardUncertainty: ratio(0.01) });
    const changed = whatIf(anomalyOf(a, ratio(1)).solution, [[a, b]]);
    const direct = anomalyOf(b, ratio(1)).solution;
    expect(relativeError(uncertainty(changed).standard, uncertainty(direct).standard)).toBeLessThan(1e-9);
    const c = ratio(0.2);
    expect(relativeError(whatIf(changed, [[b, c]]), anomalyOf(c, ratio(1)).solution)).toBeLessThan(1e-15);
  });

  it('solves each row of a sweep again, missing rows aside', () => {
    const start = given(180, 120, 20, 60);
    const { solution, charge } = nested(start);
    const swept = whatIf(charge, [[start.ambient, column('temperature', [0, NaN, 35], '°C')]]);
    const direct = [0, 35].map((ambient) => nested(given(180, 120, ambient, 60)).charge.si);
    expect(relativeError(swept.at(0), direct[0]!)).toBeLessThan(1e-14);
    expect(relativeError(swept.at(2), direct[1]!)).toBeLessThan(1e-14);
    expect(swept.missing).toBe(1);
    expect(messageOf(() => uncertainty(swept.at(0)))).toContain('needs a result with its whole history');
    const flows = whatIf(solution, [[start.ambient, column('temperature', [0, 500], '°C')]], { badRows: 'missing' });
    expect([flows.missing, flows.refused]).toEqual([1, 1]);
    expect(messageOf(() => whatIf(solution, [[start.ambient, column('temperature', [0, 500], '°C')]]))).toContain(
      '(row 1 of 2)',
    );
  });

  it('counts rows that a step before the equation refuses, and says why of one alone', () => {
    const half = calculation({
      name: 'half',
      task,
      inputs: { x: input('x', 'ratio', { min: 0, max: 1 }) },
      output: output('y', 'ratio', '1'),
      formula: 'x / 2',
      si: (x) => x / 2,
      sources,
    });
    const x = known('x', ratio(0.6));
    const { solution } = anomalyOf(half({ x }), ratio(1));
    const swept = whatIf(solution, [[x, column('ratio', [0.5, 1.5, 0.7], '1')]], { badRows: 'missing' });
    expect([swept.missing, swept.refused]).toEqual([1, 1]);
    expect(relativeError(swept.at(2), anomalyOf(ratio(0.35), ratio(1)).solution)).toBeLessThan(1e-14);
    expect(messageOf(() => whatIf(solution, [[x, ratio(1.5)]]))).toBe(
      'half: x must be between 0 and 1, got 1.5. For 1.5 % write percent(1.5).',
    );
    const eccentricity = known('e', ratio(0.5));
    const direct = anomalyOf(eccentricity, ratio(1)).solution;
    expect(messageOf(() => whatIf(direct, [[eccentricity, ratio(2)]]))).toMatch(
      /^Kepler residual: eccentricity must be/,
    );
  });

  it('can fix what was solved: then its equation no longer holds', () => {
    const { solution, charge } = nested(given(180, 120, 20, 60));
    const fixed = whatIf(charge, [[solution, massFlow(200, 'g/s')]]);
    const inner = nested(given(180, 120, 20, 60));
    expect(fixed.si).toBeGreaterThan(inner.charge.si);
  });

  it('finds the answer on the other side of a hump by its bracket', () => {
    const hump = calculation({
      name: 'hump',
      task,
      inputs: { x: input('x', 'ratio', { min: -5, max: 5 }), c: input('c', 'ratio', { min: -100, max: 100 }) },
      output: output('y', 'ratio', '1'),
      formula: 'atan(1e4 * (x - 3)) + 1.2 * exp(-x^2) - c',
      si: (x, c) => Math.atan(1e4 * (x - 3)) + 1.2 * Math.exp(-(x ** 2)) - c,
      sources,
    });
    const at = (c: Ratio): Ratio =>
      solve({ label: 'x', kind: 'ratio', unit: '1', between: [ratio(-5), ratio(5)] }, (x) => ({
        residual: hump({ x, c }),
      })).solution;
    const [low, high] = [ratio(-1), ratio(0.5)];
    // With the low input there are three answers, and the first halving falls on the hump.
    expect(at(low).si).toBeLessThan(0);
    expect(relativeError(whatIf(at(low), [[low, high]]), at(high))).toBeLessThan(1e-15);
  });

  it('goes step by step where the known answers are impossible with the new inputs', () => {
    const above = calculation({
      name: 'logarithm above a floor',
      task,
      inputs: { x: input('x', 'ratio', { min: 0, max: 100 }), floor: input('c', 'ratio', { min: 0, max: 100 }) },
      output: output('y', 'ratio', '1'),
      formula: 'log(x - c)',
      si: (x, c) => Math.log(x - c),
      rules: [{ need: 'x must lie above the floor', holds: (x, c) => x > c }],
      sources,
    });
    const both = (floor: Ratio): Ratio => {
      const first = solve(
        { label: 'x', kind: 'ratio', unit: '1', between: [ratio(floor.si + 1e-3), ratio(90)] },
        (x) => ({
          residual: above({ x, floor }),
        }),
      ).solution;
      return solve({ label: 'y', kind: 'ratio', unit: '1', between: [ratio(0), ratio(90)] }, (y) => ({
        residual: subtract(y, first),
      })).solution;
    };
    const [one, five] = [ratio(1), ratio(5)];
    expect(relativeError(whatIf(both(one), [[one, five]]), 6)).toBeLessThan(1e-14);
  });

  it('moves the bracket with what it was made of, also where that was solved', () => {
    const [e, M] = [ratio(0.9), ratio(3)];
    const floor = anomalyOf(e, ratio(1)).solution;
    const { solution } = solve({ label: 'E', kind: 'ratio', unit: '1', between: [floor, ratio(7)] }, (anomaly) => ({
      residual: kepler({ anomaly, eccentricity: ratio(0), mean: M }),
    }));
    expect(floor.si).toBeGreaterThan(1.5);
    expect(errorOf(() => whatIf(solution, [[M, ratio(1.5)]])).code).toBe('not converged');
    const lower = whatIf(solution, [
      [M, ratio(1.5)],
      [e, ratio(0.1)],
    ]);
    expect(lower.si).toBeCloseTo(1.5, 14);
  });

  it('refuses an answer outside the bracket, and a new input that is impossible in itself', () => {
    const mean = ratio(1);
    const { solution } = anomalyOf(ratio(0.3), mean);
    const error = errorOf(() => whatIf(solution, [[mean, ratio(20)]]));
    expect(error.code).toBe('not converged');
    expect(error.message).toBe(
      'whatIf: the equation must still have an answer (eccentric anomaly between 0 and 7), got none. Solve it anew with these inputs and a wider `between`.',
    );
    const e = ratio(0.3);
    const impossible = errorOf(() => whatIf(anomalyOf(e, mean).solution, [[e, ratio(2)]]));
    expect(impossible.problems[0]).toMatchObject({ code: 'impossible', input: 'eccentricity' });
    const start = given(180, 120, 20, 60);
    const both = errorOf(() => whatIf(nested(start).solution, [[start.pressure, absolutePressure(20, 'kPa')]]));
    expect(both.code).toBe('not converged');
    expect(both.message).toContain('charge flow between 20 g/s and 1000 g/s');
  });
});

describe('solve refuses', () => {
  const between = [ratio(0), ratio(1)] as const;
  const problem = { label: 'x', kind: 'ratio', unit: '1', between } as const;
  const line = calculation({
    name: 'line',
    task,
    inputs: { x: input('x', 'ratio', { min: 0.5, max: 10 }) },
    output: output('y', 'ratio', '1'),
    formula: 'x - 0.7',
    si: (x) => x - 0.7,
    sources,
  });
  const jump = calculation({
    name: 'jump',
    task,
    inputs: { x: input('x', 'ratio', { min: -10, max: 10 }) },
    output: output('y', 'ratio', '1'),
    formula: 'x < 0.4 ? -1 : 1',
    si: (x) => (x < 0.4 ? -1 : 1),
    sources,
  });

  it.each<[string, () => unknown, string]>([
    [
      'a residual of one sign, with its value at both ends',
      () => solve(problem, (x) => ({ residual: subtract(x, ratio(2)) })),
      'solve x: the residual must change sign between the two ends, got −2 at 0 and −1 at 1. Widen `between`, or check the equation.',
    ],
    [
      'a residual that does not change',
      () => solve(problem, () => ({ residual: ratio(3) })),
      'solve x: the residual must change sign between the two ends, got 3 at 0 and 3 at 1. The residual does not change with x.',
    ],
    [
      'a residual that jumps across zero',
      () => solve(problem, (x) => ({ residual: jump({ x }) })),
      'solve x: the residual must pass through zero, got one that jumps across it, from −1 to 1. Does the equation decide on a value inside?',
    ],
    [
      'an equation that cannot be computed at an end',
      () => solve(problem, (x) => ({ residual: line({ x }) })),
      'solve x: the equation must be possible everywhere in `between`, got at 0 an error (line: x must be between 0.5 and 10, got 0.). Narrow `between` to where the equation can be computed.',
    ],
    [
      'a number taken out and put back',
      () => solve(problem, (x) => ({ residual: ratio(x.si - 0.5) })),
      'solve x: the residual must be made of the unknown by calculations, got one whose history does not lead back to it. Stay in quantities: do not take the number out with .in() or .si.',
    ],
    ['no residual', () => solve(problem, (() => ({})) as never), 'solve x: residual must be a quantity, got nothing.'],
    [
      'a bare residual',
      () => solve(problem, (() => ({ residual: 1 })) as never),
      'solve x: residual must be a quantity, got the bare number 1.',
    ],
    [
      'no label',
      () => solve({ ...problem, label: '' }, (x) => ({ residual: x })),
      'solve: label must be a text that names it in explanations, got an empty text.',
    ],
    [
      'an unknown kind',
      () => solve({ ...problem, kind: 'heat' as never }, (x) => ({ residual: x })),
      'solve x: kind must be a kind of quantity, such as mass flow, got the text "heat".',
    ],
    [
      'ends of another kind',
      () =>
        solve({ ...problem, between: [massFlow(1, 'kg/s'), massFlow(2, 'kg/s')] as never }, (x) => ({ residual: x })),
      'solve x: between[0] must be ratio, got a mass flow (1 kg/s).',
    ],
    [
      'one end',
      () => solve({ ...problem, between: [ratio(1)] as never }, (x) => ({ residual: x })),
      'solve x: between must be two quantities of ratio, got a list.',
    ],
    [
      'two equal ends',
      () => solve({ ...problem, between: [ratio(1), ratio(1)] }, (x) => ({ residual: x })),
      'solve x: between must be two different values, got twice a ratio (1).',
    ],
  ])('%s', (_, run, message) => {
    expect(messageOf(run)).toBe(message);
  });

  it('with one code for everything that did not converge', () => {
    expect(errorOf(() => solve(problem, (x) => ({ residual: subtract(x, ratio(2)) }))).code).toBe('not converged');
    expect(errorOf(() => solve(problem, (x) => ({ residual: line({ x }) }))).code).toBe('not converged');
    expect(() =>
      solve(problem, () => {
        throw new RangeError('mine');
      }),
    ).toThrow(RangeError);
  });
});
