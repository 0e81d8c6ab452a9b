import type { Decimal } from 'decimal.js';
import fc from 'fast-check';
import * as mathjs from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  doubles,
  evaluateFormula,
  evaluateWith,
  formatText,
  parseFormula,
} from '../../../src/calculation/formula/index.js';
import { Decimal64, decimals, formulas, ulpsBetween } from './support.js';

// mathjs compares numbers within a tolerance; here that would hide a wrong branch.
const math = mathjs.create(mathjs.all ?? {}, { relTol: 1e-17, absTol: 0 });

const evaluate = (text: string, values = {}, functions = {}): number =>
  evaluateFormula(parseFormula(text), values, functions);

describe('evaluating a formula', () => {
  // Computed with mpmath at 30 digits from the doubles given, rounded to the nearest double.
  it.each([
    ['T1 * (1 + (PR^((k - 1) / k) - 1) / eta)', { T1: 298.15, PR: 1.6, k: 1.4, eta: 0.72 }, 357.6643575266831],
    [
      'C < 1e-6 ? 1 - exp(-N) : (1 - exp(-N * (1 - C))) / (1 - C * exp(-N * (1 - C)))',
      { C: 0.5, N: 2 },
      0.7746003264394359,
    ],
    [
      'C < 1e-6 ? 1 - exp(-N) : (1 - exp(-N * (1 - C))) / (1 - C * exp(-N * (1 - C)))',
      { C: 0, N: 2 },
      0.8646647167633873,
    ],
    ['sum(x .* M) / sum(x)', { x: [0.78, 0.21, 0.01], M: [28.0134, 31.9988, 39.948] }, 28.96968],
    ['pi / 4 * B^2 * S', { B: 0.081, S: 0.0864 }, 4.4521897104437695e-4],
    ['expm1(1e-10) + log1p(1e-10)', {}, 2e-10],
  ])('%s of %j is %d', (text, values, expected) => {
    expect(Math.abs(evaluate(text, values) / expected - 1)).toBeLessThan(1e-11);
  });

  it('agrees with mathjs for any formula', () => {
    const value = fc.double({ min: -4, max: 4, noNaN: true });
    let compared = 0;
    fc.assert(
      fc.property(formulas(['a', 'b', 'T1']), value, value, value, (formula, a, b, T1) => {
        let unordered = false;
        const compare = (left: number, right: number): number => {
          unordered ||= Number.isNaN(left) || Number.isNaN(right);
          return doubles().compare(left, right);
        };
        const ours = evaluateWith(formula, { a, b, T1 }, { ...doubles(), compare });
        expect(ours).toBe(evaluateFormula(formula, { a, b, T1 }));
        if (unordered) return; // where a root is not real mathjs goes on with a complex number
        let theirs: unknown;
        try {
          theirs = math.evaluate(formatText(formula), { a, b, T1 });
        } catch {
          return; // complex numbers have no order
        }
        if (!Number.isFinite(ours) || typeof theirs !== 'number' || !Number.isFinite(theirs)) return;
        compared += 1;
        expect(ulpsBetween(ours, theirs)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 2000 },
    );
    expect(compared).toBeGreaterThan(500);
  });

  it('agrees with mathjs on lists', () => {
    const list = fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 3, maxLength: 3 });
    const texts = [
      'sum(x .* y)',
      'sum(x) / 3',
      'mean(x - y)',
      'prod(x)',
      'max(x)',
      'sum(2 * x + y / 4 - 1)',
      'sum(x .^ 2)',
      'sum(-x)',
      'sum(1 ./ (x .^ 2 + 1))',
    ];
    fc.assert(
      fc.property(fc.constantFrom(...texts), list, list, (text, x, y) => {
        expect(ulpsBetween(evaluate(text, { x, y }), math.evaluate(text, { x, y }) as number)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('calls the given functions, a list as single numbers', () => {
    const functions = { psat: (T: number) => 10 * T, heat: (T: number, ...x: number[]) => T + x.length };
    expect(evaluate('psat(Td) / (p - psat(Td))', { Td: 2, p: 100 }, functions)).toBe(0.25);
    expect(evaluate('heat(T, x)', { T: 300, x: [0.7, 0.3] }, functions)).toBe(302);
  });

  it('follows only the branch that holds', () => {
    const broken = {
      broken: () => {
        throw new Error('the other branch was followed');
      },
    };
    expect(evaluate('a < 1 ? 5 : broken(a)', { a: 0 }, broken)).toBe(5);
    expect(evaluate('a >= 1 and broken(a) > 0 or a == 0 ? 5 : 6', { a: 0 }, broken)).toBe(5);
    expect(evaluate('a < 1 or broken(a) > 0 ? 5 : 6', { a: 0 }, broken)).toBe(5);
  });

  it.each([
    ['<', [1, 0, 0]],
    ['<=', [1, 1, 0]],
    ['>', [0, 0, 1]],
    ['>=', [0, 1, 1]],
    ['==', [0, 1, 0]],
  ])('decides %s exactly', (operator, expected) => {
    const below = 1 - Number.EPSILON / 2;
    const above = 1 + Number.EPSILON;
    expect([below, 1, above].map((a) => evaluate(`a ${operator} 1 ? 1 : 0`, { a }))).toEqual(expected);
    expect(evaluate(`a ${operator} 1 ? 1 : 0`, { a: NaN })).toBe(0);
  });
});

describe('evaluating in 64 digits', () => {
  const evaluate64 = (text: string, values: Record<string, Decimal> = {}): Decimal =>
    evaluateWith(parseFormula(text), values, decimals());

  it('reads numbers as they are written', () => {
    expect(evaluate64('0.1 + 0.2').toString()).toBe('0.3');
    expect(evaluate64('1e-3 * .5').toString()).toBe('0.0005');
  });

  it('knows pi to every digit', () => {
    // Published digits of pi (OEIS A000796), 64 significant figures.
    expect(evaluate64('pi').toSignificantDigits(64).toFixed()).toBe(
      '3.141592653589793238462643383279502884197169399375105820974944592',
    );
  });

  it('shows how far double arithmetic is off', () => {
    const text = 'T1 * (1 + (PR^((k - 1) / k) - 1) / eta)';
    const range = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(range(250, 350), range(1.2, 3), range(0.5, 0.9), (T1, PR, eta) => {
        const values = { T1, PR, eta, k: 1.4 };
        const exact = Object.fromEntries(Object.entries(values).map(([name, x]) => [name, new Decimal64(x)]));
        expect(ulpsBetween(evaluate(text, values), evaluate64(text, exact).toNumber())).toBeLessThan(8);
      }),
    );
  });

  it('agrees with doubles on every function and branch', () => {
    const texts = [
      'exp(a)',
      'expm1(a)',
      'log(a)',
      'log1p(a)',
      'log10(a)',
      'sqrt(a)',
      'cbrt(a)',
      'abs(-a)',
      'tanh(a)',
      'min(a, 1, 2)',
      'max(a, 1)',
      'a < 1 ? -a : a^2',
      'a^-0.5',
    ];
    for (const text of texts) {
      for (const a of [1e-9, 0.3, 1, 7.5]) {
        const exact = evaluate64(text, { a: new Decimal64(a) }).toNumber();
        expect([text, a, ulpsBetween(evaluate(text, { a }), exact) <= 2]).toEqual([text, a, true]);
      }
    }
  });
});

describe('what cannot be evaluated', () => {
  it.each([
    ['a + b', { a: 1 }, /the symbol b has no value/],
    ['constructor', {}, /the symbol constructor has no value/],
    ['f(1)', {}, /the function f is not given/],
    ['toString(1)', {}, /the function toString is not given/],
    ['a == 1', { a: 1 }, /an equation has no value; evaluate its two sides/],
    ['a < 1', { a: 1 }, /a condition has no value/],
    ['x + 1', { x: [1, 2] }, /must give one number, got a list/],
    ['sum(x * x)', { x: [1, 2] }, /write \.\* to work element by element/],
    ['sum(1 / x)', { x: [1, 2] }, /write \.\/ to work element by element/],
    ['sum(x^2)', { x: [1, 2] }, /write \.\^ to work element by element/],
    ['sum(x .* y)', { x: [1, 2], y: [1, 2, 3] }, /lists of equal length, got 2 and 3/],
    ['exp(x)', { x: [1] }, /exp takes a number, got a list/],
    ['mean(x)', { x: [] }, /at least one number, got an empty list/],
    ['x < 1 ? 2 : 3', { x: [1] }, /compares numbers, got a list/],
  ])('%s with %j', (text, values, message) => {
    expect(() => evaluate(text, values)).toThrow(message);
  });

  it('refuses a given function that hides a built-in one', () => {
    expect(() => evaluate('log(1)', {}, { log: () => 7 })).toThrow(/log is built in/);
  });
});
