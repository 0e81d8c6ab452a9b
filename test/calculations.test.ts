import { describe, expect, it } from 'vitest';
import { CalculationError, column, isQuantity, type Quantity } from '../src/units/index.js';
import { columnOf, KINDS, NO_NOTES, quantityOf } from '../src/units/internal.js';
import { TASKS } from '../src/calculation/index.js';
import { exportedCalculations, type AnyCalculation } from './support/calculations.js';
import { compareWithFormula } from './support/formula.js';
import { possibleInputs, typicalInputs } from './support/inputs.js';
import { inputsOf, outputOf, referenceRows, referenceTopics } from './support/reference.js';

const all = await exportedCalculations();
const rows = referenceTopics().flatMap((topic) => referenceRows(topic).map((row) => ({ topic, ...row })));

const asQuantities = (calculation: AnyCalculation, si: readonly number[]): Record<string, Quantity | Quantity[]> => {
  const { inputs } = calculation.spec;
  const lists = inputs.filter((input) => input.list === true).length;
  const first = inputs.length - lists;
  const perList = lists === 0 ? 0 : (si.length - first) / lists;
  return Object.fromEntries(
    inputs.map((input, i) => {
      const quantity = (value: number): Quantity =>
        quantityOf(input.kind, value, input.assume?.unit ?? unitFor(input.kind), undefined, NO_NOTES);
      if (input.list !== true) return [input.name, quantity(si[i]!)];
      const start = first + (i - first) * perList;
      return [input.name, si.slice(start, start + perList).map(quantity)];
    }),
  );
};

function unitFor(kind: Quantity['kind']): string {
  return Object.keys(KINDS[kind].units)[0]!;
}

// Titles from a table would be quoted, and the pattern of `-t '<topic>: <name>'` would find none of them.
describe.each(all.map((each) => [`${each.topic}: ${each.name}`, each] as const))('%s', (_, each) => {
  const { topic, name, calculation } = each;
  const { spec } = calculation;

  it('agrees with values from outside the project', () => {
    const own = rows.filter((row) => row.topic === topic && row.calculation === name);
    expect(own.length, `no reference row names '${name}' in test/reference/${topic}.json`).toBeGreaterThan(0);
    for (const row of own) {
      const { value, unit } = outputOf(row, spec.output.kind);
      const result = calculation(inputsOf(row, spec)).in(unit as never);
      expect(Math.abs(result - value), `${row.source}: ${row.output}, got ${result}`).toBeLessThanOrEqual(
        row.tolerance,
      );
    }
  });

  it('computes the formula it shows', () => {
    const { worst, bound, where } = compareWithFormula(calculation);
    expect(
      worst,
      `formula and kernel differ at ${where}: are the kernel's arguments in the order of the inputs?`,
    ).toBeLessThanOrEqual(bound);
    // Long decimals of a formula with many powers take seconds.
  }, 30_000);

  it('gives over columns what it gives one by one', () => {
    const points = possibleInputs(calculation, 5);
    const { inputs } = spec;
    if (inputs.some((input) => input.list === true)) return expectListColumns(calculation, points);
    const columns = Object.fromEntries(
      inputs.map((input, i) => [
        input.name,
        columnOf(
          input.kind,
          Float64Array.from(points, (point) => point[i]!),
          unitFor(input.kind),
          undefined,
          NO_NOTES,
          0,
        ),
      ]),
    );
    const result = calculation.columns(columns);
    expect(Array.from(result.si)).toEqual(points.map((point) => calculation(asQuantities(calculation, point)).si));
  });

  it('refuses a missing, a bare and a misspelt argument', () => {
    const good = asQuantities(calculation, typicalInputs(calculation));
    for (const input of spec.inputs) {
      if (input.list === true) continue;
      const bare = codesOf(() => calculation({ ...good, [input.name]: 1 }));
      expect(bare).toContainEqual({ code: 'kind', input: input.name });
      if (input.assume) continue;
      expect(codesOf(() => calculation({ ...good, [input.name]: undefined }))).toContainEqual({
        code: 'missing',
        input: input.name,
      });
    }
    const [first] = Object.values(good);
    expect(codesOf(() => calculation({ ...good, [`${spec.inputs[0]!.name}s`]: first }))[0]!.code).toBe('unknown');
  });

  it('refuses what lies outside the possible range of each input, and says the range', () => {
    const good = typicalInputs(calculation);
    spec.inputs.forEach((input, i) => {
      if (input.list === true) return;
      for (const si of [input.min - Math.abs(input.min) * 0.01 - 1e-9, input.max + Math.abs(input.max) * 0.01 + 1e-9]) {
        if (!Number.isFinite(si)) continue;
        const bad = asQuantities(calculation, good.with(i, si));
        expect(codesOf(() => calculation(bad))).toContainEqual({ code: 'impossible', input: input.name });
      }
    });
  });

  it('rises and falls with the inputs it says', () => {
    for (const point of possibleInputs(calculation, 20)) {
      for (const [symbols, sign] of [
        [spec.rises, 1],
        [spec.falls, -1],
      ] as const) {
        for (const symbol of symbols) {
          const i = spec.inputs.findIndex((input) => input.symbol === symbol);
          expect(i, `${symbol} is no symbol of ${name}`).toBeGreaterThanOrEqual(0);
          const input = spec.inputs[i]!;
          const moved = point.with(i, Math.min(input.max, point[i]! + 0.01 * (Math.abs(point[i]!) + 1e-9)));
          if (!spec.rules.every((rule) => rule.holds(...moved))) continue;
          const change = calculation.kernel(...moved) - calculation.kernel(...point);
          const slack = 1e-12 * Math.abs(calculation.kernel(...point));
          if (Number.isFinite(change))
            expect(change * sign, `with ${symbol} at ${point.join(', ')}`).toBeGreaterThanOrEqual(-slack);
        }
      }
    }
  });

  it('is described: a task of the index, a typical value inside every range, a source', () => {
    expect(TASKS).toContain(spec.task);
    expect(spec.sources.length, 'a calculation names what it rests on').toBeGreaterThan(0);
    for (const input of spec.inputs) {
      const typical = input.typical ?? input.assume?.si;
      expect(typical, `${input.name} has no typical value`).toBeDefined();
      expect(typical).toBeGreaterThanOrEqual(input.trusted?.[0] ?? input.min);
      expect(typical).toBeLessThanOrEqual(input.trusted?.[1] ?? input.max);
    }
    const result = calculation(asQuantities(calculation, typicalInputs(calculation)));
    expect(isQuantity(result)).toBe(true);
    expect(result.notes, 'everyday values carry no note of their own').toEqual(spec.notes ?? []);
  });
});

describe('reference rows', () => {
  it.each(rows)('$topic: $calculation names its source and its tolerance ($source)', (row) => {
    expect(all.some(({ topic, name }) => topic === row.topic && name === row.calculation)).toBe(true);
    expect(row.source.length).toBeGreaterThan(3);
    expect(['document', 'memory', 'computed', 'common practice']).toContain(row.read);
    expect(row.why.length).toBeGreaterThan(3);
    expect(row.tolerance).toBeGreaterThanOrEqual(0);
  });
});

function expectListColumns(calculation: AnyCalculation, points: readonly (readonly number[])[]): void {
  for (const point of points) {
    const given = asQuantities(calculation, point);
    const [firstName] = Object.keys(given);
    const lists = Object.fromEntries(
      Object.entries(given).map(([key, value]) => [
        key,
        Array.isArray(value) ? value.map((item) => toColumn(item)) : toColumn(value),
      ]),
    );
    expect(firstName).toBeDefined();
    expect(calculation.columns(lists).si[1]).toBe(calculation(given).si);
  }
}

const toColumn = (quantity: Quantity): unknown =>
  column(quantity.kind, [quantity.si, quantity.si], unitFor(quantity.kind) as never);

function codesOf(run: () => unknown): { code: string; input: string }[] {
  try {
    run();
  } catch (error) {
    if (!(error instanceof CalculationError)) throw error;
    return error.problems.map(({ code, input }) => ({ code, input }));
  }
  return [];
}
