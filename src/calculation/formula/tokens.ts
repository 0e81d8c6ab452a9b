import { FormulaError } from './syntax.js';

export interface Token {
  readonly type: 'number' | 'name' | 'sign' | 'end';
  readonly text: string;
  readonly position: number;
}

const longSigns = ['.*', './', '.^', '<=', '>=', '=='];
const shortSigns = '+-*/^(),<>?:';

/** Words the reference reader of this language takes as operators or constants, so no symbol may have them. */
const reservedWords = ['not', 'xor', 'mod', 'to', 'in', 'true', 'false', 'null', 'undefined', 'NaN', 'Infinity', 'end'];

const advice: Readonly<Record<string, string>> = {
  '**': 'write ^ for a power',
  '=': 'write == for an equation',
  '!=': 'turn the condition round instead',
  '&&': 'write and',
  '||': 'write or',
  '−': 'write - for a minus sign',
  '–': 'write - for a minus sign',
  '×': 'write * for a product',
  '·': 'write * for a product',
  '÷': 'write / for a quotient',
  '²': 'write ^2',
  '³': 'write ^3',
  '≤': 'write <=',
  '≥': 'write >=',
  '[': 'lists are passed in as values of a symbol',
};

const isDigit = (character: string): boolean => character >= '0' && character <= '9' && character.length === 1;
const isLetter = (character: string): boolean =>
  character.length === 1 && ((character >= 'a' && character <= 'z') || (character >= 'A' && character <= 'Z'));
const isSpace = (character: string): boolean =>
  character === ' ' || character === '\t' || character === '\n' || character === '\r';

/** Reads a formula's words and signs, once, left to right. */
export function tokenize(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let position = 0;
  while (position < text.length) {
    const character = text.charAt(position);
    if (isSpace(character)) {
      position += 1;
      continue;
    }
    const startsNumber = isDigit(character) || (character === '.' && isDigit(text.charAt(position + 1)));
    const end = startsNumber ? endOfNumber(text, position) : isLetter(character) ? endOfName(text, position) : 0;
    const token: Token =
      end > 0
        ? { type: startsNumber ? 'number' : 'name', text: text.slice(position, end), position }
        : { type: 'sign', text: signAt(text, position), position };
    if (token.type === 'name' && reservedWords.includes(token.text)) {
      throw new FormulaError('formula-syntax', `"${token.text}" cannot be used as a name`, { text, position });
    }
    tokens.push(token);
    position += token.text.length;
  }
  tokens.push({ type: 'end', text: '', position: text.length });
  return tokens;
}

function endOfName(text: string, start: number): number {
  let end = start + 1;
  while (isLetter(text.charAt(end)) || isDigit(text.charAt(end)) || text.charAt(end) === '_') end += 1;
  return end;
}

function endOfNumber(text: string, start: number): number {
  let end = endOfDigits(text, start);
  const afterPoint = text.charAt(end + 1);
  if (text.charAt(end) === '.' && !(afterPoint !== '' && '*/^'.includes(afterPoint))) {
    if (!isDigit(afterPoint)) {
      throw new FormulaError('formula-syntax', 'a decimal point needs a digit after it', { text, position: end });
    }
    end = endOfDigits(text, end + 1);
  }
  if (text.charAt(end) === 'e' || text.charAt(end) === 'E') {
    const signed = text.charAt(end + 1) === '+' || text.charAt(end + 1) === '-';
    const digits = end + (signed ? 2 : 1);
    if (isDigit(text.charAt(digits))) end = endOfDigits(text, digits);
  }
  const next = text.charAt(end);
  if (isLetter(next) || next === '_' || (next === '.' && isDigit(text.charAt(end + 1)))) {
    throw new FormulaError('formula-syntax', 'a number runs into what follows; write * between factors', {
      text,
      position: end,
    });
  }
  return end;
}

function endOfDigits(text: string, start: number): number {
  let end = start;
  while (isDigit(text.charAt(end))) end += 1;
  return end;
}

function signAt(text: string, position: number): string {
  const two = text.slice(position, position + 2);
  if (longSigns.includes(two)) return two;
  const one = text.charAt(position);
  const mend = adviceFor(two) ?? adviceFor(one);
  if (mend === undefined && shortSigns.includes(one)) return one;
  const shown = adviceFor(two) === undefined ? String.fromCodePoint(text.codePointAt(position) ?? 0) : two;
  throw new FormulaError(
    'formula-syntax',
    `"${shown}" is not part of a formula${mend === undefined ? '' : `; ${mend}`}`,
    { text, position },
  );
}

function adviceFor(sign: string): string | undefined {
  return Object.hasOwn(advice, sign) ? advice[sign] : undefined;
}
