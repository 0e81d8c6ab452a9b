import type { OperationInput } from '../../src/units/index.js';
import { numbersCompared, parseFormula, symbolsOf, evaluateFormula } from '../../src/calculation/formula/index.js';
import type { AnyCalculation } from './calculations.js';
import { seeded } from './random.js';

/** How many values a list has in generated points. */
const LIST_LENGTH = 3;

/** The inputs of a calculation one by one, lists spread out as the kernel takes them. */
export function flatInputs(calculation: AnyCalculation): readonly OperationInput[] {
  return calculation.spec.inputs.flatMap((input) =>
    input.list === true ? Array<OperationInput>(LIST_LENGTH).fill(input) : [input],
  );
}

/** Everyday values. */
export function typicalInputs(calculation: AnyCalculation): number[] {
  return flatInputs(calculation).map((input) => input.typical ?? input.assume?.si ?? (input.min + input.max) / 2);
}

/** Random points of the possible range that satisfy every rule. */
export function possibleInputs(calculation: AnyCalculation, count: number, seed = 1): number[][] {
  const random = seeded(seed);
  const inputs = flatInputs(calculation);
  const typical = typicalInputs(calculation);
  const points: number[][] = [];
  for (let attempt = 0; attempt < count * 400 && points.length < count; attempt++) {
    // Points far from everyday ones are mostly impossible together, so half of them stray only a little.
    const spread = attempt % 2 === 0 ? 1 : 0.1;
    const point = inputs.map((input, i) => between(input, typical[i]!, spread, random()));
    if (isPossible(calculation, point)) points.push(point);
  }
  return points;
}

/** Where formulas go wrong: everyday values, each bound and just inside it, and just beside each number the formula compares with. */
export function edgeInputs(calculation: AnyCalculation): number[][] {
  const inputs = flatInputs(calculation);
  const typical = typicalInputs(calculation);
  const points = [typical];
  const at = (i: number, value: number): void => {
    const input = inputs[i]!;
    if (value >= input.min && value <= input.max) points.push(typical.with(i, value));
  };
  inputs.forEach((input, i) => {
    const span = Number.isFinite(input.max - input.min) ? input.max - input.min : 1;
    for (const inside of [0, 1e-12, 1e-9]) {
      at(i, input.min + inside * span);
      at(i, input.max - inside * span);
    }
    for (const number of comparedWith(calculation, input.symbol, typical)) {
      for (const beside of [-1e-9, -1e-12, 0, 1e-12, 1e-9]) at(i, number * (1 + beside) + (number === 0 ? beside : 0));
    }
  });
  return points.filter((point) => isPossible(calculation, point));
}

/** Numbers that a formula compares one plain symbol with. */
function comparedWith(calculation: AnyCalculation, symbol: string, typical: readonly number[]): number[] {
  const formula = parseFormula(calculation.spec.formula);
  const values = Object.fromEntries(calculation.spec.inputs.map((input, i) => [input.symbol, typical[i]!]));
  return numbersCompared(formula).flatMap(({ left, right }) => {
    const [one, other] = symbolsOf(left).length === 1 && left.type === 'symbol' ? [left, right] : [right, left];
    if (one.type !== 'symbol' || one.name !== symbol) return [];
    try {
      return [evaluateFormula(other, values)];
    } catch {
      return [];
    }
  });
}

function isPossible(calculation: AnyCalculation, point: readonly number[]): boolean {
  return (
    calculation.spec.rules.every((rule) => rule.otherwise === 'note' || rule.holds(...point)) &&
    Number.isFinite(calculation.kernel(...point))
  );
}

function between(input: OperationInput, typical: number, spread: number, random: number): number {
  const low = Number.isFinite(input.min) ? input.min : typical - 10 * (Math.abs(typical) + 1);
  const high = Number.isFinite(input.max) ? input.max : typical + 10 * (Math.abs(typical) + 1);
  if (spread < 1) return Math.min(high, Math.max(low, typical * (1 + spread * (2 * random - 1))));
  return low > 0 && high / low > 100 ? low * (high / low) ** random : low + (high - low) * random;
}
