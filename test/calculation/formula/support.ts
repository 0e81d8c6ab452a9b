import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import type { Arithmetic, ComparisonOperator, Formula, Operator } from '../../../src/calculation/formula/index.js';

export const Decimal64 = Decimal.clone({ precision: 64 });

type Functions = Readonly<Record<string, (...values: Decimal[]) => Decimal>>;

/** Arithmetic with 64 significant digits; numbers are read as they are written. */
export function decimals(functions: Functions = {}): Arithmetic<Decimal> {
  const one = new Decimal64(1);
  const wide = Decimal.clone({ precision: 90 });
  const builtIn: Functions = {
    exp: (x) => x.exp(),
    expm1: (x) => new Decimal64(new wide(x).exp().sub(1)),
    log: (x) => x.ln(),
    log1p: (x) => new Decimal64(new wide(x).add(1).ln()),
    log10: (x) => x.log(10),
    sqrt: (x) => x.sqrt(),
    cbrt: (x) => x.cbrt(),
    abs: (x) => x.abs(),
    tanh: (x) => x.tanh(),
    min: (...values) => Decimal64.min(...values),
    max: (...values) => Decimal64.max(...values),
  };
  return {
    number: (text) => new Decimal64(text),
    add: (left, right) => left.add(right),
    sub: (left, right) => left.sub(right),
    mul: (left, right) => left.mul(right),
    div: (left, right) => left.div(right),
    pow: (base, exponent) => base.pow(exponent),
    neg: (operand) => operand.neg(),
    compare: (left, right) => left.cmp(right),
    call: (name, values) => (functions[name] ?? builtIn[name] ?? (() => one.div(0)))(...values),
  };
}

/** The distance between two doubles in units of the last place of the larger. */
export function ulpsBetween(left: number, right: number): number {
  if (left === right) return 0;
  const larger = Math.max(Math.abs(left), Math.abs(right));
  const unit = 2 ** (Math.floor(Math.log2(larger)) - 52);
  return Math.abs(left - right) / unit;
}

const numbers = ['0', '1', '2', '3', '10', '0.5', '2.5', '1.4', '1e-6', '1.2e-3', '3.7E2', '0.621945'];
const unaryFunctions = ['exp', 'expm1', 'log', 'log1p', 'log10', 'sqrt', 'cbrt', 'abs', 'tanh'];

/** Random formulas over the given symbols, every form of the language except lists and equations. */
export function formulas(symbols: readonly string[], depth = 5): fc.Arbitrary<Formula> {
  const operation = (operators: readonly Operator[], operand: fc.Arbitrary<Formula>): fc.Arbitrary<Formula> =>
    fc.record({
      type: fc.constant('operation' as const),
      operator: fc.constantFrom(...operators),
      left: operand,
      right: operand,
    });
  const { number } = fc.letrec<{ number: Formula; truth: Formula }>((tie) => {
    const number = tie('number');
    const truth = tie('truth');
    const comparisons: readonly ComparisonOperator[] = ['<', '<=', '>', '>=', '=='];
    return {
      number: fc.oneof(
        { maxDepth: depth, depthIdentifier: 'formula' },
        fc.record({ type: fc.constant('symbol' as const), name: fc.constantFrom(...symbols) }),
        fc.record({ type: fc.constant('number' as const), text: fc.constantFrom(...numbers) }),
        fc.record({ type: fc.constant('negation' as const), operand: number }),
        { weight: 4, arbitrary: operation(['+', '-', '*', '/', '^'], number) },
        fc.record({
          type: fc.constant('call' as const),
          name: fc.constantFrom(...unaryFunctions),
          arguments: fc.tuple(number),
        }),
        fc.record({
          type: fc.constant('call' as const),
          name: fc.constantFrom('min', 'max'),
          arguments: fc.array(number, { minLength: 1, maxLength: 3 }),
        }),
        fc.record({ type: fc.constant('conditional' as const), condition: truth, then: number, otherwise: number }),
      ),
      truth: fc.oneof(
        { maxDepth: depth, depthIdentifier: 'formula' },
        fc.record({
          type: fc.constant('comparison' as const),
          operator: fc.constantFrom(...comparisons),
          left: number,
          right: number,
        }),
        fc.record({
          type: fc.constant('logic' as const),
          operator: fc.constantFrom('and' as const, 'or' as const),
          left: truth,
          right: truth,
        }),
      ),
    };
  });
  return number;
}
