import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import type { Arithmetic, ComparisonOperator, Formula, Operator } from '../../../src/calculation/formula/index.js';

export const Decimal64 = Decimal.clone({ precision: 64 });

type Functions = Readonly<Record<string, (...values: Decimal[]) => Decimal>>;

/** Powers of ten beyond this have no value here: long decimals of such numbers take minutes. */
const largestExponent = 500;

/** Arithmetic with 64 significant digits, or those of another decimal type; numbers are read as they are written. */
export function decimals(functions: Functions = {}, Long: typeof Decimal = Decimal64): Arithmetic<Decimal> {
  const none = new Long(NaN);
  const wide = Decimal.clone({ precision: Long.precision + 30 });
  const modest = (x: Decimal): boolean => x.isFinite() && (x.isZero() || Math.abs(x.e) <= largestExponent);
  const kept = (x: Decimal): Decimal => (modest(x) ? x : none);
  const whereModest =
    (of: (x: Decimal) => Decimal): ((x: Decimal) => Decimal) =>
    (x) =>
      x.abs().lt(1000) ? of(x) : none;
  const builtIn: Functions = {
    exp: whereModest((x) => x.exp()),
    expm1: whereModest((x) => new Long(new wide(x).exp().sub(1))),
    tanh: whereModest((x) => x.tanh()),
    log: (x) => x.ln(),
    log1p: (x) => new Long(new wide(x).add(1).ln()),
    log10: (x) => x.log(10),
    sqrt: (x) => x.sqrt(),
    cbrt: (x) => x.cbrt(),
    abs: (x) => x.abs(),
    min: (...values) => Long.min(...values),
    max: (...values) => Long.max(...values),
  };
  return {
    number: (text) => new Long(text),
    add: (left, right) => kept(left.add(right)),
    sub: (left, right) => kept(left.sub(right)),
    mul: (left, right) => kept(left.mul(right)),
    div: (left, right) => kept(left.div(right)),
    pow(base, exponent) {
      const size = exponent.toNumber() * (Math.abs(base.e) + 1);
      return Math.abs(size) <= largestExponent ? kept(base.pow(exponent)) : none;
    },
    neg: (operand) => operand.neg(),
    compare: (left, right) => left.cmp(right),
    call(name, values) {
      const called = functions[name] ?? builtIn[name];
      return called !== undefined && values.every(modest) ? kept(called(...values)) : none;
    },
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
