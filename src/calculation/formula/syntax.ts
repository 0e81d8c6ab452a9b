/**
 * The formula language as data.
 *
 * A formula is a tree of plain objects: it can be compared, cloned, sent to a worker and written as JSON.
 * Brackets are not kept; whatever writes a formula puts back the ones it needs.
 */
export type Formula =
  | NumberFormula
  | SymbolFormula
  | NegationFormula
  | OperationFormula
  | CallFormula
  | ComparisonFormula
  | LogicFormula
  | ConditionalFormula;

/** A number as it was written, so that nothing is lost before an arithmetic reads it. Never negative. */
export interface NumberFormula {
  readonly type: 'number';
  readonly text: string;
}

/** A symbol that stands for a value. */
export interface SymbolFormula {
  readonly type: 'symbol';
  readonly name: string;
}

/** Minus a formula. */
export interface NegationFormula {
  readonly type: 'negation';
  readonly operand: Formula;
}

/** The dotted operators work element by element on lists. */
export type Operator = '+' | '-' | '*' | '/' | '^' | '.*' | './' | '.^';

/** Two formulas joined by an operator. */
export interface OperationFormula {
  readonly type: 'operation';
  readonly operator: Operator;
  readonly left: Formula;
  readonly right: Formula;
}

/** A function of other formulas. */
export interface CallFormula {
  readonly type: 'call';
  readonly name: string;
  readonly arguments: readonly Formula[];
}

/** How two formulas are compared. */
export type ComparisonOperator = '<' | '<=' | '>' | '>=' | '==';

/** At the top of a formula `==` makes an equation; inside a condition it asks whether two numbers are equal. */
export interface ComparisonFormula {
  readonly type: 'comparison';
  readonly operator: ComparisonOperator;
  readonly left: Formula;
  readonly right: Formula;
}

/** Two conditions joined. */
export interface LogicFormula {
  readonly type: 'logic';
  readonly operator: 'and' | 'or';
  readonly left: Formula;
  readonly right: Formula;
}

/** One formula or another, by a condition. */
export interface ConditionalFormula {
  readonly type: 'conditional';
  readonly condition: Formula;
  readonly then: Formula;
  readonly otherwise: Formula;
}

/** How tightly each form binds, loosest first. Minus binds looser than a power: `-x^2` is `-(x^2)`. */
export const binding = {
  conditional: 1,
  or: 2,
  and: 3,
  comparison: 4,
  sum: 5,
  /** A sum sign reaches over the whole product after it; a quotient on one line reaches over the next factor. */
  total: 5.5,
  product: 6,
  negation: 7,
  power: 8,
  atom: 9,
} as const;

export function bindingOf(formula: Formula): number {
  switch (formula.type) {
    case 'number':
      return formula.text.startsWith('-') ? binding.negation : binding.atom;
    case 'symbol':
    case 'call':
      return binding.atom;
    case 'operation':
      return bindingOfOperator(formula.operator);
    case 'logic':
      return binding[formula.operator];
    default:
      return binding[formula.type];
  }
}

export function bindingOfOperator(operator: Operator): number {
  if (operator === '+' || operator === '-') return binding.sum;
  return operator === '^' || operator === '.^' ? binding.power : binding.product;
}

/** Built-in functions and the least and greatest number of arguments each takes. */
const builtInArity: Readonly<Record<string, readonly [number, number]>> = {
  exp: [1, 1],
  expm1: [1, 1],
  log: [1, 1],
  log1p: [1, 1],
  log10: [1, 1],
  sqrt: [1, 1],
  cbrt: [1, 1],
  abs: [1, 1],
  sin: [1, 1],
  cos: [1, 1],
  tan: [1, 1],
  asin: [1, 1],
  acos: [1, 1],
  atan: [1, 1],
  sinh: [1, 1],
  cosh: [1, 1],
  tanh: [1, 1],
  asinh: [1, 1],
  acosh: [1, 1],
  atanh: [1, 1],
  min: [1, Infinity],
  max: [1, Infinity],
  sum: [1, Infinity],
  prod: [1, Infinity],
  mean: [1, Infinity],
};

/** The least and greatest number of arguments of a built-in function; undefined for any other name. */
export function arityOfBuiltIn(name: string): readonly [number, number] | undefined {
  return Object.hasOwn(builtInArity, name) ? builtInArity[name] : undefined;
}

/** The built-in functions that take lists as well as numbers. */
export function takesLists(name: string): boolean {
  return arityOfBuiltIn(name)?.[1] === Infinity;
}

/** More digits than any arithmetic here keeps, so that each rounds it once, itself. */
export const piDigits =
  '3.14159265358979323846264338327950288419716939937510582097494459230781640628620899862803482534211706798';

export function isTruth(formula: Formula): boolean {
  return formula.type === 'comparison' || formula.type === 'logic';
}

/** What can be wrong with a formula. Stable: callers test it. */
export type FormulaErrorCode =
  'formula-syntax' | 'formula-too-long' | 'formula-too-deep' | 'formula-value' | 'formula-notation';

/**
 * A formula that cannot be read, evaluated or shown.
 *
 * `code` is stable. `text` and `position` (counted from 0, in UTF-16 units) say where reading stopped.
 */
export class FormulaError extends Error {
  override readonly name = 'FormulaError';
  readonly code: FormulaErrorCode;
  readonly text: string | undefined;
  readonly position: number | undefined;

  constructor(code: FormulaErrorCode, message: string, where?: { readonly text: string; readonly position: number }) {
    super(where === undefined ? message : `${message} (${pointAt(where.text, where.position)})`);
    this.code = code;
    this.text = where?.text;
    this.position = where?.position;
  }
}

function pointAt(text: string, position: number): string {
  const from = Math.max(0, position - 30);
  const to = Math.min(text.length, position + 30);
  const before = (from > 0 ? '…' : '') + text.slice(from, position);
  const after = text.slice(position, to) + (to < text.length ? '…' : '');
  return `at character ${position + 1}: ${before}⟨here⟩${after}`;
}
