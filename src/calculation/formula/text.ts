import { bindingOfText } from './numerals.js';
import { binding, bindingOf, bindingOfOperator } from './syntax.js';
import type { Formula, OperationFormula } from './syntax.js';

/** Gives the text to write for a symbol; undefined leaves the symbol as it is. */
export type Substitute = (symbol: string) => string | undefined;

/**
 * Writes a formula as text, with the brackets it needs and no others. Without `substitute` the text reads back as the
 * same formula.
 *
 * `substitute` gives text that is already formatted, such as `291.15 K` or `-3`; it gets brackets where it would
 * otherwise be misread. The text is plain: escape it before it becomes markup.
 *
 * @example
 * formatText(parseFormula('a - b^2'), (name) => ({ a: '2', b: '-3 K' })[name]) //=> '2 - (-3 K)^2'
 */
export function formatText(formula: Formula, substitute: Substitute = () => undefined): string {
  return write(formula, substitute).text;
}

interface Written {
  readonly text: string;
  readonly binds: number;
}

function write(formula: Formula, substitute: Substitute): Written {
  const written = (text: string): Written => ({ text, binds: bindingOf(formula) });
  const part = (of: Formula, atLeast: number): string => bracketed(write(of, substitute), atLeast);
  switch (formula.type) {
    case 'number':
      return written(formula.text);
    case 'symbol': {
      const text = substitute(formula.name);
      return text === undefined ? written(formula.name) : { text, binds: bindingOfText(text) };
    }
    case 'negation':
      return written(`-${afterSign(write(formula.operand, substitute), binding.power)}`);
    case 'operation':
      return written(writeOperation(formula, substitute));
    case 'call':
      return written(`${formula.name}(${formula.arguments.map((of) => part(of, 0)).join(', ')})`);
    case 'comparison':
      return written(`${part(formula.left, binding.sum)} ${formula.operator} ${part(formula.right, binding.sum)}`);
    case 'logic': {
      const binds = binding[formula.operator];
      return written(`${part(formula.left, binds)} ${formula.operator} ${part(formula.right, binds + 1)}`);
    }
    case 'conditional': {
      const condition = part(formula.condition, binding.or);
      return written(`${condition} ? ${part(formula.then, binding.or)} : ${part(formula.otherwise, 0)}`);
    }
  }
}

function writeOperation({ operator, left, right }: OperationFormula, substitute: Substitute): string {
  const binds = bindingOfOperator(operator);
  const first = write(left, substitute);
  const second = write(right, substitute);
  if (binds === binding.power) {
    const exponent = afterSign(second, second.binds === binding.power ? binding.power : binding.atom);
    return `${bracketed(first, binding.atom)}${operator === '^' ? '^' : ' .^ '}${exponent}`;
  }
  const asFactor = (side: Written, formula: Formula): Written =>
    formula.type === 'symbol' && binds === binding.product ? bindFactor(side) : side;
  const quantityBelow = operator.endsWith('/') && right.type === 'symbol' && second.binds < binding.negation;
  const below = quantityBelow ? { ...second, binds: 0 } : asFactor(second, right);
  return `${bracketed(asFactor(first, left), binds)} ${operator} ${afterSign(below, binds + 1)}`;
}

/** `2 * 25 K` cannot be misread, but a unit with a division in it can: `2 / 3 kg/s`. */
function bindFactor(side: Written): Written {
  if (side.binds !== binding.product) return side;
  return { ...side, binds: side.text.includes('/') ? 0 : binding.negation };
}

function afterSign(side: Written, atLeast: number): string {
  return /^[-−+]/.test(side.text) ? `(${side.text})` : bracketed(side, atLeast);
}

function bracketed(side: Written, atLeast: number): string {
  return side.binds < atLeast ? `(${side.text})` : side.text;
}
