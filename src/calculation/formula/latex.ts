import { isTall } from './boxes.js';
import type { Box, Sign } from './boxes.js';
import { escapeLatex } from './escape.js';
import { checkedLatexSymbol } from './latex-symbol.js';
import { layOut } from './layout.js';
import { nameOfGreekLetter } from './notation.js';
import type { NotationOf, SymbolParts } from './notation.js';
import { readNumeral } from './numerals.js';
import type { Formula } from './syntax.js';
import { writeUnit } from './latex-unit.js';

export interface LatexOptions {
  /** LaTeX for a symbol, such as `{ PR: '\\pi_c' }`. Letters, digits, scripts and letter-shaping commands only. */
  readonly symbols?: Readonly<Record<string, string>>;
  /** What to show in place of a symbol. Everything it gives is plain text and is escaped. */
  readonly symbol?: NotationOf;
  /** Writes numbers and quantities with the siunitx package; plain amsmath otherwise. */
  readonly siunitx?: boolean;
  /** The decimal sign; a point by default. */
  readonly decimal?: '.' | ',';
}

/**
 * Writes a formula as LaTeX for math mode, with the amsmath package.
 *
 * @throws FormulaError if an entry of `symbols` is more than a symbol.
 * @example
 * toLatex(parseFormula('1 - exp(-N)')) //=> '1 - \\mathrm{e}^{-N}'
 */
export function toLatex(formula: Formula, options: LatexOptions = {}): string {
  const { symbols = {} } = options;
  for (const [name, latex] of Object.entries(symbols)) checkedLatexSymbol(name, latex);
  return new Writer(options).write(layOut(formula, options.symbol));
}

const signs: Readonly<Record<Sign, string>> = {
  '+': ' + ',
  '−': ' - ',
  minus: '-',
  '×': ' \\times ',
  '·': ' \\cdot ',
  '/': ' / ',
  '<': ' < ',
  '≤': ' \\le ',
  '>': ' > ',
  '≥': ' \\ge ',
  '=': ' = ',
  ',': ', ',
  '⋯': '\\cdots',
  apply: '',
  beside: ' \\, ',
  and: ' \\ \\text{and}\\ ',
  or: ' \\ \\text{or}\\ ',
};

const brackets = { round: ['(', ')'], square: ['[', ']'], bars: ['|', '|'] } as const;
const knownFunctions = ['ln', 'log', 'min', 'max', 'sin', 'cos', 'tan', 'sinh', 'cosh', 'tanh'];

class Writer {
  readonly #options: LatexOptions;

  constructor(options: LatexOptions) {
    this.#options = options;
  }

  write(box: Box): string {
    switch (box.box) {
      case 'row':
        return box.items.map((item) => this.write(item)).join('');
      case 'number':
        return this.#number(box.text);
      case 'quantity':
        return this.#quantity(box.number, box.unit);
      case 'symbol':
        return this.#symbol(box.name, box.parts, box.index);
      case 'words':
        return `\\text{${escapeLatex(box.text)}}`;
      case 'function': {
        const name = knownFunctions.includes(box.name) ? `\\${box.name}` : `\\operatorname{${escapeLatex(box.name)}}`;
        return box.base === undefined ? name : `${name}_{${box.base}}`;
      }
      case 'sign':
        return box.sign === ',' && this.#options.decimal === ',' ? '; ' : signs[box.sign];
      case 'brackets': {
        const [open, close] = brackets[box.shape];
        if (!isTall(box.inside)) return open + this.write(box.inside) + close;
        return `\\left${open}${this.write(box.inside)}\\right${close}`;
      }
      case 'fraction':
        return `\\frac{${this.write(box.above)}}{${this.write(box.below)}}`;
      case 'root':
        return `\\sqrt${box.degree === '2' ? '' : '[3]'}{${this.write(box.inside)}}`;
      case 'power':
        return `${this.write(box.base)}^{${this.write(box.exponent)}}`;
      case 'euler':
        return '\\mathrm{e}';
      case 'total':
        return `\\${box.sign === '∑' ? 'sum' : 'prod'}${box.indexed ? '_{i}' : ''} ${this.write(box.of)}`;
      case 'cases': {
        const rows = box.rows.map(({ value, condition }) => {
          const when = condition === undefined ? '\\text{otherwise}' : `\\text{if } ${this.write(condition)}`;
          return `${isTall(value) ? '\\displaystyle ' : ''}${this.write(value)} & ${when}`;
        });
        return `\\begin{cases} ${rows.join(' \\\\ ')} \\end{cases}`;
      }
    }
  }

  #symbol(name: string, parts: SymbolParts, index: boolean): string {
    const { symbols = {} } = this.#options;
    const given = Object.hasOwn(symbols, name) ? symbols[name] : undefined;
    if (given !== undefined) return index ? `{${given}}_{i}` : /^[A-Za-z]$/.test(given) ? given : `{${given}}`;
    const { base, upright, subscript, difference, rate } = parts;
    const letter = upright ? `\\mathrm{${mathText(base)}}` : writeLetter(base);
    const below = subscript === '' || /^\d+$/.test(subscript) ? subscript : `\\mathrm{${mathText(subscript)}}`;
    const scripts = [below, index ? 'i' : ''].filter(Boolean).join(',');
    const script = scripts === '' ? '' : `_{${scripts}}`;
    const whole = (rate ? `\\dot{${letter}}` : letter) + script;
    return difference ? `{\\Delta ${whole}}` : whole;
  }

  #number(text: string): string {
    const numeral = readNumeral(text);
    if (numeral === undefined) return `\\text{${escapeLatex(text)}}`;
    if (this.#options.siunitx === true) return `\\num${this.#marker()}{${text.replace('−', '-')}}`;
    const { negative, mantissa, exponent } = numeral;
    const digits = mantissa.replace('.', this.#options.decimal === ',' ? '{,}' : '.');
    const tens = exponent === undefined ? '' : `10^{${exponent}}`;
    return (negative ? '-' : '') + (mantissa === '1' && tens ? tens : digits + (tens && ` \\times ${tens}`));
  }

  #quantity(number: string, unit: string): string {
    if (this.#options.siunitx === true && readNumeral(number) !== undefined) {
      return `\\qty${this.#marker()}{${number.replace('−', '-')}}{${writeUnit(unit)}}`;
    }
    return `${this.#number(number)}\\,\\mathrm{${writeUnit(unit)}}`;
  }

  #marker(): string {
    return this.#options.decimal === ',' ? '[output-decimal-marker={,}]' : '';
  }
}

function writeLetter(letter: string): string {
  if (/^[A-Za-z]$/.test(letter)) return letter;
  const greek = nameOfGreekLetter(letter);
  return greek === undefined ? `\\text{${escapeLatex(letter)}}` : `\\${greek === 'epsilon' ? 'varepsilon' : greek} `;
}

/** Names in math mode are letters, digits and commas; anything else is set as text. */
function mathText(name: string): string {
  return /^[\w,]*$/.test(name) && !name.includes('_') ? name : `\\text{${escapeLatex(name)}}`;
}
