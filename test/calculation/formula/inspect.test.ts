import { describe, expect, it } from 'vitest';
import {
  formatText,
  functionsOf,
  listsIn,
  numbersCompared,
  parseFormula,
  sidesOfEquation,
  symbolsOf,
} from '../../../src/calculation/formula/index.js';

describe('looking into a formula', () => {
  it('lists its symbols once each, as written, without pi', () => {
    expect(symbolsOf(parseFormula('T1 * (1 + (PR^((k - 1) / k) - 1) / eta)'))).toEqual(['T1', 'PR', 'k', 'eta']);
    expect(symbolsOf(parseFormula('pi / 4 * B^2 * S'))).toEqual(['B', 'S']);
    expect(symbolsOf(parseFormula('a < b ? -c : exp(d)'))).toEqual(['a', 'b', 'c', 'd']);
    expect(symbolsOf(parseFormula('constructor + toString'))).toEqual(['constructor', 'toString']);
  });

  it('lists the functions it needs from outside', () => {
    expect(functionsOf(parseFormula('exp(psat(Td)) + psat(T) + cp(T) + max(a, b)'))).toEqual(['psat', 'cp']);
    expect(functionsOf(parseFormula('constructor(a)'))).toEqual(['constructor']);
  });

  it('lists the symbols that stand for lists', () => {
    expect(listsIn(parseFormula('sum(x .* M) / sum(x) * k'))).toEqual(['x', 'M']);
    expect(listsIn(parseFormula('mean(y) - sum(a, b)'))).toEqual(['y']);
  });

  it('finds every pair of numbers whose order it asks for', () => {
    const pairs = (text: string): string[] =>
      numbersCompared(parseFormula(text)).map(({ left, right }) => `${formatText(left)} | ${formatText(right)}`);
    expect(pairs('C < 1e-6 ? 1 : C == 1 ? 2 : 3')).toEqual(['C | 1e-6', 'C | 1']);
    expect(pairs('a < b + 1 and c > 2 ? 1 : 2')).toEqual(['a | b + 1', 'c | 2']);
    expect(pairs('max(a, b, 3) + abs(a - b)')).toEqual(['a | b', 'a | 3', 'a - b | 0']);
    expect(pairs('a == (b < 2 ? 1 : 3)')).toEqual(['b | 2']);
    expect(pairs('a + b')).toEqual([]);
  });

  it('splits an equation and nothing else', () => {
    const sides = sidesOfEquation(parseFormula('cp * log(T2 / T1) == R * log(PR)'));
    expect(sides && [formatText(sides.left), formatText(sides.right)]).toEqual(['cp * log(T2 / T1)', 'R * log(PR)']);
    expect(sidesOfEquation(parseFormula('a < b'))).toBeUndefined();
    expect(sidesOfEquation(parseFormula('a == b ? 1 : 2'))).toBeUndefined();
  });
});
