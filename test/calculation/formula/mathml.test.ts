import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateWith, parseFormula, toMathML } from '../../../src/calculation/formula/index.js';
import type { Formula, MathMLOptions, NotationOf, SymbolNotation } from '../../../src/calculation/formula/index.js';
import { checkMathML, readBack, readXml, textOf } from './markup.js';
import { Decimal64, decimals, formulas } from './support.js';

/** The MathML inside the math element, without thin spaces, with the invisible signs written out. */
function inside(text: string, options?: MathMLOptions): string {
  const whole = toMathML(parseFormula(text), options);
  checkMathML(readXml(whole));
  return whole
    .replace(/^<math [^>]*>|<\/math>$/g, '')
    .replaceAll('<mspace width="0.1667em"></mspace>', '')
    .replaceAll('<mo>&#x2061;</mo>', '[apply]')
    .replaceAll('<mo>&#x2062;</mo>', '[beside]')
    .replaceAll(' mathvariant="normal"', ' upright')
    .replace(/<mo form="(?:prefix|postfix)"(?: stretchy="(?:false|(true))")?>([^<]*)<\/mo>/g, (_, tall, mo: string) =>
      tall ? `[tall${mo}]` : `[${mo}]`,
    );
}

const showing = (symbols: Record<string, SymbolNotation>): { symbol: NotationOf } => ({
  symbol: (name) => symbols[name],
});

describe('a symbol in MathML', () => {
  it.each([
    ['T', '<mi>T</mi>'],
    ['T1', '<msub><mi>T</mi><mn>1</mn></msub>'],
    ['T2s', '<msub><mi>T</mi><mtext>2s</mtext></msub>'],
    ['T_2_s', '<msub><mi>T</mi><mtext>2,s</mtext></msub>'],
    ['eta', '<mi>η</mi>'],
    ['rho_m', '<msub><mi>ρ</mi><mtext>m</mtext></msub>'],
    ['eps', '<mi>ε</mi>'],
    ['epsilon', '<mi>ε</mi>'],
    ['gamma1', '<msub><mi>γ</mi><mn>1</mn></msub>'],
    ['pi', '<mi>π</mi>'],
    ['PR', '<mi upright>PR</mi>'],
    ['dp1', '<msub><mi upright>dp</mi><mn>1</mn></msub>'],
    ['mdot_a', '<msub><mover accent="true"><mi>m</mi><mo>˙</mo></mover><mtext>a</mtext></msub>'],
    ['dot', '<mi upright>dot</mi>'],
    ['toString', '<mi upright>toString</mi>'],
  ])('%s is %s', (symbol, expected) => {
    expect(inside(symbol)).toBe(expected);
  });

  it('is shown as the caller wants it', () => {
    const options = showing({
      dp1: { symbol: 'Δp1' },
      T: { label: 'inlet probe' },
      PR: { number: '1.6' },
      Q: { number: '-2', unit: 'kW' },
    });
    expect(inside('dp1', options)).toBe('<mrow><mi upright>Δ</mi><msub><mi>p</mi><mn>1</mn></msub></mrow>');
    expect(inside('T', options)).toBe('<mtext>inlet probe</mtext>');
    expect(inside('PR', options)).toBe('<mn>1.6</mn>');
    expect(inside('Q', options)).toBe('<mrow><mrow>[−]<mn>2</mn></mrow><mtext>kW</mtext></mrow>');
  });
});

describe('an expression in MathML', () => {
  it.each([
    ['a / b', '<mfrac><mi>a</mi><mi>b</mi></mfrac>'],
    ['sqrt(a + b)', '<msqrt><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow></msqrt>'],
    ['cbrt(a)', '<mroot><mi>a</mi><mn>3</mn></mroot>'],
    ['T1^2', '<msubsup><mi>T</mi><mn>1</mn><mn>2</mn></msubsup>'],
    ['exp(-N)', '<msup><mi upright>e</mi><mrow>[−]<mi>N</mi></mrow></msup>'],
    ['log(x)', '<mrow><mi upright>ln</mi>[apply]<mrow>[(]<mi>x</mi>[)]</mrow></mrow>'],
    ['abs(x)', '<mrow>[|]<mi>x</mi>[|]</mrow>'],
    [
      'log(a / b)',
      '<mrow><mi upright>ln</mi>[apply]<mrow>[tall(]<mfrac><mi>a</mi><mi>b</mi></mfrac>[tall)]</mrow></mrow>',
    ],
    ['psat(T)', '<mrow><mi upright>psat</mi>[apply]<mrow>[(]<mi>T</mi>[)]</mrow></mrow>'],
    [
      'a^((k - 1) / k)',
      '<msup><mi>a</mi><mrow><mrow>[(]<mrow><mi>k</mi><mo>−</mo><mn>1</mn></mrow>[)]</mrow><mo lspace="0" rspace="0">/</mo><mi>k</mi></mrow></msup>',
    ],
    ['a == b', '<mrow><mi>a</mi><mo>=</mo><mi>b</mi></mrow>'],
    ['1e-6', '<msup><mn>10</mn><mrow>[−]<mn>6</mn></mrow></msup>'],
    ['1.20e+3', '<mrow><mn>1.20</mn><mo>×</mo><msup><mn>10</mn><mn>3</mn></msup></mrow>'],
    [
      'sum(x .* M)',
      '<mrow><munder><mo>∑</mo><mi>i</mi></munder><mrow><msub><mi>x</mi><mi>i</mi></msub>[beside]<msub><mi>M</mi><mi>i</mi></msub></mrow></mrow>',
    ],
  ])('%s is %s', (text, expected) => {
    expect(inside(text)).toBe(expected);
  });

  it('joins factors as they read best', () => {
    const signOf = (text: string, symbols = {}): string =>
      textOf(readXml(toMathML(parseFormula(text), showing(symbols)))).replace('\u2062', '[beside]');
    expect(signOf('a * b')).toBe('a[beside]b');
    expect(signOf('2 * a')).toBe('2[beside]a');
    expect(signOf('a * 2')).toBe('a×2');
    expect(signOf('2 * 3')).toBe('2×3');
    expect(signOf('2 * PR')).toBe('2·PR');
    expect(signOf('VE * a')).toBe('VE·a');
    expect(signOf('a * (b + c)')).toBe('a[beside](b+c)');
    expect(signOf('T * a', { T: { number: '298', unit: 'K' } })).toBe('298K×a');
  });

  it('writes a choice as lines behind a brace', () => {
    const shown = readXml(toMathML(parseFormula('C < 1 ? a : C >= 2 and b > 1 ? b : c')));
    expect(textOf(shown)).toBe('{aifC<1bifC≥2andb>1cotherwise');
    expect(readBack(shown)).toBe('(C<1 ? (a) : C>=2 and b>1 ? (b) : (c))');
  });

  it('writes out a sum over values, shortened when long', () => {
    const list = (...numbers: string[]): SymbolNotation => ({ list: numbers.map((number) => ({ number })) });
    const shown = (x: SymbolNotation, M: SymbolNotation): string =>
      textOf(readXml(toMathML(parseFormula('sum(x .* M) * 2'), showing({ x, M }))));
    expect(shown(list('0.8', '0.2'), list('28', '32'))).toBe('(0.8×28+0.2×32)×2');
    expect(shown(list('1', '2', '3', '4', '5'), list('6', '7', '8', '9', '-1'))).toBe('(1×6+2×7+⋯+5×(−1))×2');
    expect(shown(list('1', '2'), list('3'))).toBe('(∑[1,2]\u2062[3])×2');
  });

  it('takes a decimal comma', () => {
    const options = { ...showing({ T: { number: '298.15', unit: 'K' } }), decimal: ',' as const };
    expect(textOf(readXml(toMathML(parseFormula('max(T, 1.5)'), options)))).toBe('max\u2061(298,15K;1,5)');
  });

  it('sets powers of units', () => {
    const unit = (unit: string): string =>
      textOf(readXml(toMathML(parseFormula('u'), showing({ u: { number: '1', unit } }))));
    expect(['kg/m3', 's^-1', 'W/(m2 K)', 'inH2O', 'm³', '°C'].map(unit)).toEqual([
      '1kg/m³',
      '1s⁻¹',
      '1W/(m² K)',
      '1inH2O',
      '1m³',
      '1°C',
    ]);
  });

  it('says in words what it shows, for a screen reader', () => {
    const { attributes } = readXml(toMathML(parseFormula('a < b ? 1 : 2'), { display: 'inline' }));
    expect(attributes).toMatchObject({ alttext: 'a < b ? 1 : 2', display: 'inline' });
  });
});

describe('brackets in MathML', () => {
  const values: Record<string, { number: string; unit?: string }> = {
    a: { number: '-2' },
    b: { number: '25', unit: 'K' },
    T1: { number: '-0.5', unit: 'kg/s' },
    PR: { number: '3' },
    eta: { number: '1.2e-1' },
  };

  /** Rounding alone must not turn a comparison round, since fewer brackets may mean another order of rounding. */
  const compute = (formula: Formula, Long: typeof Decimal): Decimal => {
    const exact = Object.fromEntries(Object.entries(values).map(([name, { number }]) => [name, new Long(number)]));
    const compare = (left: Decimal, right: Decimal): number =>
      left.sub(right).abs().lte(left.abs().mul('1e-40')) ? 0 : left.cmp(right);
    return evaluateWith(formula, exact, { ...decimals({}, Long), compare });
  };
  const Decimal100 = Decimal.clone({ precision: 100 });
  const near = (left: Decimal, right: Decimal): boolean =>
    left.sub(right).abs().lte(right.abs().mul('1e-30').add('1e-30'));

  it.each([
    ['as symbols', undefined],
    ['with negative values and units', showing(values)],
  ])('let a reader compute the same %s', (_, options) => {
    let compared = 0;
    fc.assert(
      fc.property(formulas(Object.keys(values), 4), (formula) => {
        const expected = compute(formula, Decimal100);
        const xml = readXml(toMathML(formula, options));
        checkMathML(xml);
        const text = readBack(xml);
        const enoughDigits = expected.isFinite() && near(compute(formula, Decimal64), expected);
        const got = compute(parseFormula(text), Decimal64);
        if (!enoughDigits) return;
        compared += 1;
        expect(near(got, expected), `${text} gives ${got.toString()}, not ${expected.toString()}`).toBe(true);
      }),
      { numRuns: 600 },
    );
    expect(compared).toBeGreaterThan(250);
  });

  it('are left out where nothing could be misread', () => {
    const shown = (text: string): string => textOf(readXml(toMathML(parseFormula(text)))).replaceAll('\u2062', '');
    expect(shown('a + (b + c) - (d * e) + (f / g)')).toBe('a+b+c−de+fg');
    expect(shown('(a + b) / (c + d) * sqrt(a + b)^2')).toBe('a+bc+d(a+b)2');
    expect(shown('exp(a + b) * -c')).toBe('ea+b(−c)');
  });

  it('keep a quotient on one line apart from the next factor', () => {
    const shown = (text: string): string => textOf(readXml(toMathML(parseFormula(text)))).replaceAll('\u2062', '');
    expect(shown('exp(a / b * c)')).toBe('e(a/b)c');
    expect(shown('x^(a / (b * c) - a / b)')).toBe('xa/(bc)−a/b');
  });
});

describe('text from outside in MathML', () => {
  it('cannot become markup', () => {
    const hostile = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('<script>alert(1)</script>', '"><img src=x onerror=alert(1)>', ']]>', '&lt;', '\u0000', '\uD800'),
    );
    fc.assert(
      fc.property(hostile, hostile, (text, unit) => {
        const options = showing({
          a: { label: text },
          b: { number: text, unit },
          c: { symbol: text },
          d: { list: [{ number: text, unit }] },
        });
        const xml = toMathML(parseFormula('a^2 - b * c^2 / d + sum(d)'), options);
        checkMathML(readXml(xml));
        expect(xml).not.toMatch(/<script|<img/);
      }),
    );
  });

  it('is shown letter for letter', () => {
    const label = '<script>alert("1 & 2")</script>';
    expect(textOf(readXml(toMathML(parseFormula('a'), showing({ a: { label } }))))).toBe(label);
  });
});
