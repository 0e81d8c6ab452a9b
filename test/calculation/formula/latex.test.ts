import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FormulaError, parseFormula, toLatex } from '../../../src/calculation/formula/index.js';
import type { LatexOptions, NotationOf, SymbolNotation } from '../../../src/calculation/formula/index.js';
import { formulas } from './support.js';

const latex = (text: string, options?: LatexOptions): string => toLatex(parseFormula(text), options);
const showing = (symbols: Record<string, SymbolNotation>): { symbol: NotationOf } => ({
  symbol: (name) => symbols[name],
});

/** Throws unless braces, `\left`/`\right` and environments are balanced. */
function checkBalance(text: string): void {
  const open: string[] = [];
  const closes: Readonly<Record<string, string>> = { '}': '{', '\\right': '\\left', '\\end{cases}': '\\begin{cases}' };
  for (const [token] of text.matchAll(/\\(?:begin|end)\{cases\}|\\[A-Za-z]+|\\.|[{}]/gs)) {
    if (token === '{' || token === '\\left' || token === '\\begin{cases}') open.push(token);
    const opener = closes[token];
    if (opener !== undefined && open.pop() !== opener) throw new Error(`${token} closes nothing in ${text}`);
  }
  if (open.length > 0) throw new Error(`${open.join(' ')} left open in ${text}`);
}

describe('a formula in LaTeX', () => {
  it.each([
    [
      'T1 * (1 + (PR^((k - 1) / k) - 1) / eta)',
      'T_{1} \\, \\left(1 + \\frac{\\mathrm{PR}^{(k - 1) / k} - 1}{\\eta }\\right)',
    ],
    ['1 - exp(-N)', '1 - \\mathrm{e}^{-N}'],
    ['cp * log(T2 / T1) == R * log(a)', '\\mathrm{cp} \\cdot \\ln\\left(\\frac{T_{2}}{T_{1}}\\right) = R \\, \\ln(a)'],
    ['sum(x .* M) / sum(x)', '\\frac{\\sum_{i} x_{i} \\, M_{i}}{\\sum_{i} x_{i}}'],
    ['a < 1e-6 ? b : c', '\\begin{cases} b & \\text{if } a < 10^{-6} \\\\ c & \\text{otherwise} \\end{cases}'],
    ['sqrt(a) + cbrt(b) + abs(c)', '\\sqrt{a} + \\sqrt[3]{b} + |c|'],
    ['mdot_air * epsilon', '\\dot{m}_{\\mathrm{air}} \\, \\varepsilon '],
    ['1.2e-3 * 4', '1.2 \\times 10^{-3} \\times 4'],
    ['psat(T) + my_f(T)', '\\operatorname{psat}(T) + \\operatorname{my\\_f}(T)'],
    [
      'a >= 1 and b <= 2 or c > 3 ? 1 : 2',
      '\\begin{cases} 1 & \\text{if } a \\ge 1 \\ \\text{and}\\ b \\le 2 \\ \\text{or}\\ c > 3 \\\\ 2 & \\text{otherwise} \\end{cases}',
    ],
  ])('%s is %s', (text, expected) => {
    expect(latex(text)).toBe(expected);
  });

  it('shows values and units plainly or with siunitx', () => {
    const values = showing({
      T: { number: '298.15', unit: 'K' },
      n: { number: '-3' },
      rho: { number: '1.2', unit: 'kg/m3' },
      t: { number: '-5.0', unit: '°C' },
    });
    expect(latex('T * n', values)).toBe('298.15\\,\\mathrm{K} \\times (-3)');
    expect(latex('rho^2 - t', values)).toBe('(1.2\\,\\mathrm{kg/m^{3}})^{2} - (-5.0\\,\\mathrm{{}^{\\circ}C})');
    expect(latex('T * n', { ...values, siunitx: true })).toBe('\\qty{298.15}{K} \\times (\\num{-3})');
    expect(latex('0.5 * T', { ...values, siunitx: true, decimal: ',' })).toBe(
      '\\num[output-decimal-marker={,}]{0.5} \\times \\qty[output-decimal-marker={,}]{298.15}{K}',
    );
    expect(latex('max(T, 0.5)', { ...values, decimal: ',' })).toBe('\\max(298{,}15\\,\\mathrm{K}; 0{,}5)');
  });

  it('takes LaTeX for a symbol', () => {
    expect(latex('PR^2 * a', { symbols: { PR: '\\pi_c', a: 'A' } })).toBe('{\\pi_c}^{2} \\, A');
    expect(latex('x1', { symbols: { x1: '\\dot{m}_{\\mathrm{air, in}}^{\\prime}' } })).toContain('\\dot{m}');
  });

  it.each([
    ['\\input{/etc/passwd}', /may not use \\input/],
    ['\\def\\pi{3}', /may not use \\def/],
    ['\\\\', /may not use \\\\/],
    ['a%', /may not contain %/],
    ['$a$', /may not contain \$/],
    ['a & b', /may not contain &/],
    ['a}{b', /balanced braces/],
    ['{a', /balanced braces/],
    ['a_', /something in every sub- and superscript/],
    ['', /1 to 100 characters/],
    ['\\', /may not use \\/],
    ['ü', /may not contain ü/],
  ])('refuses %j as a symbol', (symbol, message) => {
    expect(() => latex('a', { symbols: { PR: symbol } })).toThrow(FormulaError);
    expect(() => latex('a', { symbols: { PR: symbol } })).toThrow(message);
  });

  it('is balanced for any formula and any text from outside', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('}', '{', '\\', '\\end{cases}', '$', '%', '\\input{x}', '\n\n', '2^{', '#1'),
    );
    fc.assert(
      fc.property(formulas(['a', 'b', 'c', 'd'], 4), text, text, fc.boolean(), (formula, outside, unit, siunitx) => {
        const shown = showing({
          a: { label: outside },
          b: { number: outside, unit },
          c: { symbol: outside },
          d: { number: '-1', unit },
        });
        const written = toLatex(formula, { ...shown, siunitx });
        checkBalance(written);
        expect(written).not.toMatch(/\\input|(?<!\\)(?:\\\\)*[$%#]|\n/);
      }),
      { numRuns: 500 },
    );
  });
});
