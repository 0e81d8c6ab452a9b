import { isTall } from './boxes.js';
import type { Box, Sign } from './boxes.js';
import { escapeHtml } from './escape.js';
import { layOut } from './layout.js';
import type { NotationOf, SymbolParts } from './notation.js';
import { raiseUnitPowers, readNumeral } from './numerals.js';
import type { Formula } from './syntax.js';
import { formatText } from './text.js';

export interface MathMLOptions {
  /** What to show in place of a symbol. Everything it gives is plain text and is escaped. */
  readonly symbol?: NotationOf;
  /** Whether the formula stands on its own line (the default) or in running text. */
  readonly display?: 'block' | 'inline';
  /** The decimal sign; a point by default. */
  readonly decimal?: '.' | ',';
}

/**
 * Writes a formula as MathML that browsers show without fonts or script: Greek letters, subscripts, fractions, powers.
 *
 * @throws FormulaError never for a formula that was parsed.
 * @example
 * toMathML(parseFormula('eta * T1')) //=> '<math xmlns="http://www.w3.org/1998/Math/MathML" display="block" alttext="eta * T1"><mrow>...</mrow></math>'
 */
export function toMathML(formula: Formula, options: MathMLOptions = {}): string {
  const { display = 'block', decimal = '.' } = options;
  const inside = write(layOut(formula, options.symbol), decimal);
  const alternative = escapeHtml(formatText(formula));
  const namespace = 'http://www.w3.org/1998/Math/MathML';
  return `<math xmlns="${namespace}" display="${display}" alttext="${alternative}">${inside}</math>`;
}

const thinSpace = '<mspace width="0.1667em"></mspace>';

const signs: Readonly<Record<Sign, string>> = {
  '+': '<mo>+</mo>',
  '−': '<mo>−</mo>',
  minus: '<mo form="prefix">−</mo>',
  '×': '<mo>×</mo>',
  '·': '<mo>·</mo>',
  '/': '<mo lspace="0" rspace="0">/</mo>',
  '<': '<mo>&lt;</mo>',
  '≤': '<mo>≤</mo>',
  '>': '<mo>&gt;</mo>',
  '≥': '<mo>≥</mo>',
  '=': '<mo>=</mo>',
  ',': '<mo separator="true">,</mo>',
  '⋯': '<mo>⋯</mo>',
  apply: '<mo>&#x2061;</mo>',
  beside: `<mo>&#x2062;</mo>${thinSpace}`,
  and: '<mspace width="0.5em"></mspace><mtext>and</mtext><mspace width="0.5em"></mspace>',
  or: '<mspace width="0.5em"></mspace><mtext>or</mtext><mspace width="0.5em"></mspace>',
};

const brackets = { round: ['(', ')'], square: ['[', ']'], bars: ['|', '|'] } as const;

function write(box: Box, decimal: '.' | ','): string {
  const part = (inner: Box): string => write(inner, decimal);
  switch (box.box) {
    case 'row':
      return `<mrow>${box.items.map(part).join('')}</mrow>`;
    case 'number':
      return writeNumber(box.text, decimal);
    case 'quantity': {
      return `<mrow>${writeNumber(box.number, decimal)}${thinSpace}<mtext>${escapeHtml(raiseUnitPowers(box.unit))}</mtext></mrow>`;
    }
    case 'symbol': {
      const subscript = writeSubscript(box.parts, box.index);
      return withDifference(box.parts, subscript === '' ? writeBase(box.parts) : sub(writeBase(box.parts), subscript));
    }
    case 'words':
      return `<mtext>${escapeHtml(box.text)}</mtext>`;
    case 'function': {
      const name = `<mi mathvariant="normal">${escapeHtml(box.name)}</mi>`;
      return box.base === undefined ? name : sub(name, `<mn>${box.base}</mn>`);
    }
    case 'sign':
      return box.sign === ',' && decimal === ',' ? '<mo separator="true">;</mo>' : signs[box.sign];
    case 'brackets': {
      const [open, close] = brackets[box.shape];
      const stretchy = `stretchy="${isTall(box.inside)}"`;
      const inside = part(box.inside);
      return `<mrow><mo form="prefix" ${stretchy}>${open}</mo>${inside}<mo form="postfix" ${stretchy}>${close}</mo></mrow>`;
    }
    case 'fraction':
      return `<mfrac>${part(box.above)}${part(box.below)}</mfrac>`;
    case 'root':
      return box.degree === '2' ? `<msqrt>${part(box.inside)}</msqrt>` : `<mroot>${part(box.inside)}<mn>3</mn></mroot>`;
    case 'power':
      return writePower(box.base, part(box.exponent), part);
    case 'euler':
      return '<mi mathvariant="normal">e</mi>';
    case 'total': {
      const sum = `<mo>${box.sign}</mo>`;
      return `<mrow>${box.indexed ? `<munder>${sum}<mi>i</mi></munder>` : sum}${part(box.of)}</mrow>`;
    }
    case 'cases':
      return `<mrow><mo form="prefix" stretchy="true">{</mo><mtable displaystyle="true">${box.rows
        .map((line) => writeCase(part(line.value), line.condition && part(line.condition)))
        .join('')}</mtable></mrow>`;
  }
}

function sub(base: string, subscript: string): string {
  return `<msub>${base}${subscript}</msub>`;
}

function writeBase({ base, upright, rate }: SymbolParts): string {
  const letter = `<mi${upright ? ' mathvariant="normal"' : ''}>${escapeHtml(base)}</mi>`;
  return rate ? `<mover accent="true">${letter}<mo>˙</mo></mover>` : letter;
}

function withDifference({ difference }: SymbolParts, symbol: string): string {
  return difference ? `<mrow><mi mathvariant="normal">Δ</mi>${symbol}</mrow>` : symbol;
}

function writeSubscript({ subscript }: SymbolParts, index: boolean): string {
  const element = /^\d+$/.test(subscript) ? 'mn' : 'mtext';
  const own = subscript === '' ? '' : `<${element}>${escapeHtml(subscript)}</${element}>`;
  if (!index) return own;
  return own === '' ? '<mi>i</mi>' : `<mrow>${own}<mo separator="true">,</mo><mi>i</mi></mrow>`;
}

/** A subscripted symbol carries its power above its subscript, not after it. */
function writePower(base: Box, exponent: string, part: (box: Box) => string): string {
  if (base.box === 'symbol' && !base.parts.difference) {
    const subscript = writeSubscript(base.parts, base.index);
    if (subscript !== '') return `<msubsup>${writeBase(base.parts)}${subscript}${exponent}</msubsup>`;
  }
  return `<msup>${part(base)}${exponent}</msup>`;
}

function writeCase(value: string, condition: string | undefined): string {
  const when =
    condition === undefined
      ? '<mtext>otherwise</mtext>'
      : `<mrow><mtext>if</mtext><mspace width="0.35em"></mspace>${condition}</mrow>`;
  const cell = (content: string, more = ''): string => `<mtd style="text-align: left${more}">${content}</mtd>`;
  return `<mtr>${cell(value)}${cell(when, '; padding-left: 1em')}</mtr>`;
}

function writeNumber(text: string, decimal: '.' | ','): string {
  const shown = (digits: string): string => `<mn>${escapeHtml(digits.replace('.', decimal))}</mn>`;
  const numeral = readNumeral(text);
  if (numeral === undefined) return shown(text);
  const { negative, mantissa, exponent } = numeral;
  const tens = exponent === undefined ? '' : `<msup><mn>10</mn>${writeNumber(exponent, decimal)}</msup>`;
  const own = tens !== '' && mantissa === '1' ? '' : shown(mantissa);
  const cross = own !== '' && tens !== '' ? signs['×'] : '';
  const minus = negative ? signs.minus : '';
  return minus === '' && cross === '' ? own + tens : `<mrow>${minus}${own}${cross}${tens}</mrow>`;
}
