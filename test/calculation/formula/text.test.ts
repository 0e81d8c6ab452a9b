import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateWith, formatText, parseFormula } from '../../../src/calculation/formula/index.js';
import type { Substitute } from '../../../src/calculation/formula/index.js';
import { Decimal64, decimals, formulas } from './support.js';

const shown: Substitute = (name) =>
  ({
    a: '2',
    n: '-3',
    m: '−3',
    q: '25 K',
    nq: '-25 K',
    r: '1.2 kg/s',
    u: '18 ± 0.5',
    l: '[0.78, 0.21]',
    w: 'T2b',
    e: '1.2e-3',
    c: '1,5',
    p: '5%',
  })[name];

describe('writing a formula as text', () => {
  it.each([
    ['((a)) + ((b * c))', 'a + b * c'],
    ['a-(b-c)', 'a - (b - c)'],
    ['(a-b)-c', 'a - b - c'],
    ['a/(b*c)', 'a / (b * c)'],
    ['(a^b)^c', '(a^b)^c'],
    ['a^(b^c)', 'a^b^c'],
    ['-(x^2)', '-x^2'],
    ['(-x)^2', '(-x)^2'],
    ['-(a*b)', '-(a * b)'],
    ['2^-x', '2^(-x)'],
    ['a - -b', 'a - (-b)'],
    ['--x', '-(-x)'],
    ['x .* y .^ 2', 'x .* y .^ 2'],
    [
      '(a < b or c < d) and e < f ? (g < 1 ? 2 : 3) : (h < 4 ? 5 : 6)',
      '(a < b or c < d) and e < f ? (g < 1 ? 2 : 3) : h < 4 ? 5 : 6',
    ],
    ['1 + (a < b ? 1 : 2)', '1 + (a < b ? 1 : 2)'],
    ['T1*(1+(PR^((k-1)/k)-1)/eta)', 'T1 * (1 + (PR^((k - 1) / k) - 1) / eta)'],
    ['cp*log(T2/T1)==R*log(PR)', 'cp * log(T2 / T1) == R * log(PR)'],
    ['max(a,(b),-c)', 'max(a, b, -c)'],
  ])('writes %s as %s', (text, expected) => {
    expect(formatText(parseFormula(text))).toBe(expected);
  });

  it('writes text that reads back as the same formula', () => {
    fc.assert(
      fc.property(formulas(['a', 'b', 'T1']), (formula) => {
        expect(parseFormula(formatText(formula))).toEqual(formula);
      }),
      { numRuns: 1000 },
    );
  });

  it('writes no bracket it could leave out', () => {
    fc.assert(
      fc.property(formulas(['a', 'b']), (formula) => {
        const text = formatText(formula);
        for (let open = text.indexOf('('); open >= 0; open = text.indexOf('(', open + 1)) {
          const close = closing(text, open);
          // Brackets of a call belong to it; those round a minus sign after another sign are there for the reader.
          if (/[A-Za-z0-9_]/.test(text.charAt(open - 1)) || text.charAt(open + 1) === '-') continue;
          const without = `${text.slice(0, open)} ${text.slice(open + 1, close)} ${text.slice(close + 1)}`;
          expect(readsTheSame(without, text), `${without} reads as ${text} does`).toBe(false);
        }
      }),
    );
  });
});

describe('writing a formula with values in it', () => {
  it.each([
    // Plain positive numbers and other names get no brackets,
    ['a^2 - a * a / a', '2^2 - 2 * 2 / 2'],
    ['w^2 - e^2 + c^2', 'T2b^2 - 1.2e-3^2 + 1,5^2'],
    // negative ones do where a sign or power would be misread,
    ['n^2', '(-3)^2'],
    ['2^n', '2^(-3)'],
    ['2 - n', '2 - (-3)'],
    ['2 - m', '2 - (−3)'],
    ['2 + n * a', '2 + (-3 * 2)'],
    ['a * n', '2 * (-3)'],
    ['n * a - 2', '-3 * 2 - 2'],
    ['-n', '-(-3)'],
    ['f(n, a)', 'f(-3, 2)'],
    // and so do quantities where the unit would be misread.
    ['q^2', '(25 K)^2'],
    ['a^q', '2^(25 K)'],
    ['-q', '-(25 K)'],
    ['nq^2', '(-25 K)^2'],
    ['a - nq', '2 - (-25 K)'],
    ['q - q', '25 K - 25 K'],
    ['a * q', '2 * 25 K'],
    ['q / q', '25 K / (25 K)'],
    ['a * r', '2 * (1.2 kg/s)'],
    ['r / a', '(1.2 kg/s) / 2'],
    ['p^2', '(5%)^2'],
    ['a + u', '2 + (18 ± 0.5)'],
    ['u + a', '18 ± 0.5 + 2'],
    ['u * a', '(18 ± 0.5) * 2'],
    ['sum(l) / sum(l .* l)', 'sum([0.78, 0.21]) / sum([0.78, 0.21] .* [0.78, 0.21])'],
    ['q < q ? q : unknown', '25 K < 25 K ? 25 K : unknown'],
  ])('writes %s as %s', (text, expected) => {
    expect(formatText(parseFormula(text), shown)).toBe(expected);
  });

  it('keeps the meaning whatever the values', () => {
    const values: Record<string, string> = { a: '-2', b: '25 K', T1: '-0.5 kg', eta: '3' };
    const exact = Object.fromEntries(
      Object.entries(values).map(([name, text]) => [name, new Decimal64(parseFloat(text))]),
    );
    let compared = 0;
    fc.assert(
      fc.property(formulas(Object.keys(values), 4), (formula) => {
        const before = evaluateWith(formula, exact, decimals());
        const text = formatText(formula, (name) => values[name]).replace(/ (K|kg)/g, '');
        const after = evaluateWith(parseFormula(text), {}, decimals());
        if (!before.isFinite()) return;
        compared += 1;
        expect(after.toString()).toBe(before.toString());
      }),
      { numRuns: 500 },
    );
    expect(compared).toBeGreaterThan(200);
  });
});

function closing(text: string, open: number): number {
  let depth = 0;
  for (let at = open; at < text.length; at += 1) {
    if (text.charAt(at) === '(') depth += 1;
    if (text.charAt(at) === ')') depth -= 1;
    if (depth === 0) return at;
  }
  return text.length;
}

function readsTheSame(left: string, right: string): boolean {
  try {
    return JSON.stringify(parseFormula(left)) === JSON.stringify(parseFormula(right));
  } catch {
    return false;
  }
}
