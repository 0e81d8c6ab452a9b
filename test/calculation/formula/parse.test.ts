import fc from 'fast-check';
import * as mathjs from 'mathjs';
import type { MathNode } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { FormulaError, formatText, parseFormula } from '../../../src/calculation/formula/index.js';
import type { Formula } from '../../../src/calculation/formula/index.js';
import { formulas } from './support.js';

const math = mathjs.create(mathjs.all ?? {});

const operators: Readonly<Record<string, string>> = {
  add: '+',
  subtract: '-',
  multiply: '*',
  divide: '/',
  pow: '^',
  dotMultiply: '.*',
  dotDivide: './',
  dotPow: '.^',
};
const comparisons: Readonly<Record<string, string>> = {
  smaller: '<',
  smallerEq: '<=',
  larger: '>',
  largerEq: '>=',
  equal: '==',
};

/** The tree mathjs reads, as nested arrays. */
function readByMathjs(node: MathNode): unknown {
  if (math.isParenthesisNode(node)) return readByMathjs(node.content);
  if (math.isConstantNode(node)) return node.value;
  if (math.isSymbolNode(node)) return node.name;
  if (math.isConditionalNode(node)) {
    return ['?', readByMathjs(node.condition), readByMathjs(node.trueExpr), readByMathjs(node.falseExpr)];
  }
  if (math.isFunctionNode(node)) return [node.fn.name, ...node.args.map(readByMathjs)];
  if (math.isOperatorNode(node)) {
    if (node.implicit) throw new Error('implicit product');
    const name: string = node.fn;
    const sign = name === 'unaryMinus' ? 'minus' : (operators[name] ?? comparisons[name] ?? name);
    return [sign, ...node.args.map(readByMathjs)];
  }
  throw new Error(`mathjs read a ${node.type}`);
}

/** The tree read here, as the same nested arrays. */
function asArrays(formula: Formula): unknown {
  switch (formula.type) {
    case 'number':
      return Number(formula.text);
    case 'symbol':
      return formula.name;
    case 'negation':
      return ['minus', asArrays(formula.operand)];
    case 'call':
      return [formula.name, ...formula.arguments.map(asArrays)];
    case 'conditional':
      return ['?', asArrays(formula.condition), asArrays(formula.then), asArrays(formula.otherwise)];
    default:
      return [formula.operator, asArrays(formula.left), asArrays(formula.right)];
  }
}

describe('reading a formula', () => {
  it('gives plain data', () => {
    expect(parseFormula('2 * f(x_1, 1.2e-3)')).toEqual({
      type: 'operation',
      operator: '*',
      left: { type: 'number', text: '2' },
      right: {
        type: 'call',
        name: 'f',
        arguments: [
          { type: 'symbol', name: 'x_1' },
          { type: 'number', text: '1.2e-3' },
        ],
      },
    });
    const formula = parseFormula('x < 1 ? -x : x^2');
    expect(structuredClone(formula)).toEqual(formula);
  });

  it.each([
    'T1 * (1 + (PR^((k - 1) / k) - 1) / eta)',
    '0.621945 * psat(Td) / (p - psat(Td))',
    'C < 1e-6 ? 1 - exp(-N) : (1 - exp(-N * (1 - C))) / (1 - C * exp(-N * (1 - C)))',
    'cp * log(T2 / T1) == R * log(PR)',
    'sum(x .* M) / sum(x)',
    '2^-x',
    '-2^2',
    '-x^2',
    '--x',
    '2^-x^2',
    '2^-3^-y',
    'a^b^c',
    'a/b/c',
    'a/b*c',
    'a-b-c',
    'a-(b-c)',
    'a - -b',
    'a*-b',
    '-a*b',
    '-a/-b',
    '(-a)^2',
    'x .* y ./ z .^ 2',
    '2.*x',
    '.5 + 5.25E+2',
    'a < b ? c : d >= e ? f : g',
    'a < b ? (c < d ? 1 : 2) : 3',
    'a < 1 or b < 2 and c < 3',
    'a < 1 and b < 2 or c < 3 and d == 4',
    '(a < 1 or b < 2) and c + 1 < 3 ? x : y',
    'a + b < c * d ? 1 : 2',
    'max(a, b < 1 ? 2 : 3, -c)',
  ])('reads %s as mathjs does', (text) => {
    expect(asArrays(parseFormula(text))).toEqual(readByMathjs(math.parse(text)));
  });

  it('binds operators as mathjs does in any formula', () => {
    fc.assert(
      fc.property(formulas(['a', 'b', 'T1', 'eta', 'p_d']), (formula) => {
        expect(readByMathjs(math.parse(formatText(formula)))).toEqual(asArrays(formula));
      }),
      { numRuns: 500 },
    );
  });

  it('binds operators as mathjs does where no brackets help', () => {
    const operand = fc.constantFrom('a', 'b', '2', '-a', '-2', '--b', 'f(a)');
    const operator = fc.constantFrom(' + ', ' - ', ' * ', ' / ', '^', '^-', ' .* ', ' ./ ', ' .^ ');
    fc.assert(
      fc.property(operand, fc.array(fc.tuple(operator, operand), { maxLength: 8 }), (first, others) => {
        const text = first + others.flat().join('');
        expect(asArrays(parseFormula(text))).toEqual(readByMathjs(math.parse(text)));
      }),
      { numRuns: 1000 },
    );
  });

  it('does not mind spaces and line breaks', () => {
    expect(parseFormula(' a\n+\tb ')).toEqual(parseFormula('a+b'));
  });
});

describe('text that is not a formula', () => {
  it.each([
    ['', 0, /expected a number, a symbol, a function or \(, got the end/],
    ['a + * b', 4, /got "\*"/],
    ['a + ', 4, /got the end/],
    ['(a + b', 6, /expected \), got the end/],
    ['a + b)', 5, /expected an operator or the end/],
    ['2 x', 2, /write \* between factors/],
    ['2x', 1, /write \* between factors/],
    ['1.2.3', 3, /write \* between factors/],
    ['a b', 2, /write \* between factors/],
    ['(a)(b)', 3, /write \* between factors/],
    ['2. + a', 1, /decimal point needs a digit/],
    ['a ** b', 2, /write \^ for a power/],
    ['a = b', 2, /write == for an equation/],
    ['a − b', 2, /write - for a minus sign/],
    ['a != b ? 1 : 2', 2, /turn the condition round/],
    ['x[1]', 1, /not part of a formula/],
    ['a; b', 1, /";" is not part of a formula/],
    ['a 😀', 2, /"😀" is not part of a formula/],
    ['+a', 0, /got "\+"/],
    ['f(a,)', 4, /got "\)"/],
    ['f(a', 3, /expected , or \) in f/],
    ['exp(a, b)', 0, /exp takes 1 argument, got 2/],
    ['max()', 0, /max takes at least 1 argument, got 0/],
    ['a < b < c ? 1 : 2', 6, /cannot be chained; join two with and/],
    ['a ? b : c', 0, /before \? must be a comparison/],
    ['a < b ? c', 9, /expected : and the other value/],
    ['(a < b) + 1', 0, /a comparison is not a number/],
    ['1 + (a < b)', 4, /expected a number, got a comparison/],
    ['a < b ? c < d ? 1 : 2 : 3', 8, /expected a number, got a comparison/],
    ['a < b ? c ? 1 : 2 : 3', 10, /between \? and : needs brackets/],
    ['-(a < b)', 1, /expected a number, got a comparison/],
    ['(a < b)^2', 0, /cannot have a power/],
    ['f(a < b)', 2, /expected a number, got a comparison/],
    ['a and b < 1', 0, /before and must be a comparison/],
    ['a < 1 or b', 9, /after or must be a comparison/],
    ['not + 1', 0, /"not" cannot be used as a name/],
  ])('%j is refused at character %i', (text, position, message) => {
    let caught: unknown;
    try {
      parseFormula(text);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(FormulaError);
    const error = caught as FormulaError;
    expect(error.message).toMatch(message);
    expect({ code: error.code, position: error.position, text: error.text }).toEqual({
      code: 'formula-syntax',
      position,
      text,
    });
  });

  it('shows where reading stopped', () => {
    expect(() => parseFormula('m * cp + * dT')).toThrow('at character 10: m * cp + ⟨here⟩* dT');
  });

  it('is refused when it is no text at all', () => {
    expect(() => parseFormula(3 as unknown as string)).toThrow(/must be text, got number/);
  });

  it('is refused, not followed, when too long or nested too deep', () => {
    const refusal = (text: string): string => {
      try {
        parseFormula(text);
        return 'read';
      } catch (error) {
        return (error as FormulaError).code;
      }
    };
    expect(refusal(`${'1+'.repeat(2000)}1`)).toBe('formula-too-long');
    expect(refusal(`${'1+'.repeat(1999)}1`)).toBe('read');
    for (const opening of ['(', 'f(', '-', '2^', 'a<b?1:']) {
      expect([opening, refusal(opening.repeat(600))]).toEqual([opening, 'formula-too-deep']);
    }
    expect(refusal(`${'('.repeat(150)}a${')'.repeat(150)}`)).toBe('read');
  });

  it('never fails in any other way', () => {
    const pieces = fc.constantFrom(
      'a',
      '1',
      '.',
      'e',
      '+',
      '-',
      '*',
      '^',
      '(',
      ')',
      ',',
      '?',
      ':',
      '<',
      '=',
      ' ',
      'and',
      'ü',
      '__proto__',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 12 }), (parts) => {
        try {
          parseFormula(parts.join(''));
        } catch (error) {
          expect(error).toBeInstanceOf(FormulaError);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
