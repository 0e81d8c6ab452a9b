import { arityOfBuiltIn, FormulaError, piDigits, takesLists } from './syntax.js';
import type { ComparisonOperator, Formula, Operator } from './syntax.js';

/** The arithmetic a formula is evaluated in: doubles, long decimals, intervals. */
export interface Arithmetic<N> {
  /** Reads a number as it is written in the formula. */
  number(text: string): N;
  add(left: N, right: N): N;
  sub(left: N, right: N): N;
  mul(left: N, right: N): N;
  div(left: N, right: N): N;
  pow(base: N, exponent: N): N;
  neg(operand: N): N;
  /** Any function but `sum`, `prod` and `mean`, which are made of the operations. Lists arrive as single numbers. */
  call(name: string, values: readonly N[]): N;
  /** Negative, zero or positive as left is less than, equal to or greater than right; NaN if they have no order. */
  compare(left: N, right: N): number;
}

/** The values of a formula's symbols: a number, or a list for a symbol that stands for several. */
export type FormulaValues<N = number> = Readonly<Record<string, N | readonly N[]>>;

/** The functions a formula names beside the built-in ones. A list given to one arrives as single numbers. */
export type FormulaFunctions = Readonly<Record<string, (...values: number[]) => number>>;

/**
 * Evaluates a formula in doubles. Where a function has no answer the result is NaN, as in the arithmetic itself.
 *
 * @throws FormulaError if a symbol or function is missing, a list stands where a number must, or the formula is an
 * equation or a condition and so has no value.
 * @example
 * evaluateFormula(parseFormula('T1 * PR^((k - 1) / k)'), { T1: 300, PR: 2, k: 1.4 }) //=> 365.7
 */
export function evaluateFormula(formula: Formula, values: FormulaValues, functions: FormulaFunctions = {}): number {
  return evaluateWith(formula, values, doubles(functions));
}

/**
 * Evaluates a formula in any arithmetic, such as 64-digit decimals.
 *
 * @throws FormulaError as {@link evaluateFormula} does.
 */
export function evaluateWith<N>(formula: Formula, values: FormulaValues<N>, arithmetic: Arithmetic<N>): N {
  const result = new Evaluation(values, arithmetic).value(formula);
  if (isList(result)) return fail('a formula must give one number, got a list; sum it or take its mean');
  return result;
}

/** Double arithmetic with the built-in functions and the given ones. */
export function doubles(functions: FormulaFunctions = {}): Arithmetic<number> {
  for (const name of Object.keys(functions)) {
    if (arityOfBuiltIn(name) !== undefined) fail(`${name} is built in; give the other function another name`);
  }
  return {
    number: Number,
    add: (left, right) => left + right,
    sub: (left, right) => left - right,
    mul: (left, right) => left * right,
    div: (left, right) => left / right,
    pow: (base, exponent) => base ** exponent,
    neg: (operand) => -operand,
    compare: (left, right) => (left < right ? -1 : left > right ? 1 : left === right ? 0 : NaN),
    call(name, values) {
      if (arityOfBuiltIn(name) !== undefined) return Math[name as 'min'](...values);
      const given = Object.hasOwn(functions, name) ? functions[name] : undefined;
      if (given === undefined) return fail(`the function ${name} is not given`);
      return given(...values);
    },
  };
}

type Value<N> = N | readonly N[];

class Evaluation<N> {
  readonly #values: FormulaValues<N>;
  readonly #arithmetic: Arithmetic<N>;

  constructor(values: FormulaValues<N>, arithmetic: Arithmetic<N>) {
    this.#values = values;
    this.#arithmetic = arithmetic;
  }

  value(formula: Formula): Value<N> {
    switch (formula.type) {
      case 'number':
        return this.#arithmetic.number(formula.text);
      case 'symbol':
        return this.#symbol(formula.name);
      case 'negation': {
        const operand = this.value(formula.operand);
        return isList(operand) ? operand.map((item) => this.#arithmetic.neg(item)) : this.#arithmetic.neg(operand);
      }
      case 'operation':
        return this.#operation(formula.operator, this.value(formula.left), this.value(formula.right));
      case 'call':
        return this.#call(formula.name, formula.arguments);
      case 'conditional':
        return this.value(this.#holds(formula.condition) ? formula.then : formula.otherwise);
      case 'comparison':
        return fail(
          formula.operator === '=='
            ? 'an equation has no value; evaluate its two sides'
            : 'a condition has no value; use it before ?',
        );
      case 'logic':
        return fail('a condition has no value; use it before ?');
    }
  }

  #symbol(name: string): Value<N> {
    const value = Object.hasOwn(this.#values, name) ? this.#values[name] : undefined;
    if (value !== undefined) return value;
    return name === 'pi' ? this.#arithmetic.number(piDigits) : fail(`the symbol ${name} has no value`);
  }

  #operation(operator: Operator, left: Value<N>, right: Value<N>): Value<N> {
    if (!isList(left) && !isList(right)) return this.#scalar(operator, left, right);
    const refused = operator === '^' || (isList(right) && (operator === '/' || (operator === '*' && isList(left))));
    if (refused) fail(`${operator} does not work on lists here; write .${operator} to work element by element`);
    const apply = (a: N, b: N): N => this.#scalar(operator, a, b);
    if (!isList(right)) return (left as readonly N[]).map((item) => apply(item, right));
    if (!isList(left)) return right.map((item) => apply(left, item));
    if (left.length !== right.length) {
      fail(`${operator} needs lists of equal length, got ${left.length} and ${right.length}`);
    }
    return left.map((item, index) => apply(item, right[index] as N));
  }

  #scalar(operator: Operator, left: N, right: N): N {
    switch (operator) {
      case '+':
        return this.#arithmetic.add(left, right);
      case '-':
        return this.#arithmetic.sub(left, right);
      case '*':
      case '.*':
        return this.#arithmetic.mul(left, right);
      case '/':
      case './':
        return this.#arithmetic.div(left, right);
      case '^':
      case '.^':
        return this.#arithmetic.pow(left, right);
    }
  }

  #call(name: string, formulas: readonly Formula[]): N {
    const builtIn = arityOfBuiltIn(name) !== undefined;
    const flat: N[] = [];
    for (const formula of formulas) {
      const value = this.value(formula);
      if (!isList(value)) flat.push(value);
      else if (builtIn && !takesLists(name)) fail(`${name} takes a number, got a list`);
      else flat.push(...value);
    }
    if (builtIn && flat.length === 0) fail(`${name} needs at least one number, got an empty list`);
    if (name === 'prod') return flat.reduce((left, right) => this.#arithmetic.mul(left, right));
    if (name !== 'sum' && name !== 'mean') return this.#arithmetic.call(name, flat);
    const total = flat.reduce((left, right) => this.#arithmetic.add(left, right));
    return name === 'sum' ? total : this.#arithmetic.div(total, this.#arithmetic.number(String(flat.length)));
  }

  #holds(formula: Formula): boolean {
    if (formula.type === 'logic') {
      const left = this.#holds(formula.left);
      return formula.operator === 'and' ? left && this.#holds(formula.right) : left || this.#holds(formula.right);
    }
    if (formula.type !== 'comparison') return fail('a condition must be a comparison');
    const left = this.value(formula.left);
    const right = this.value(formula.right);
    if (isList(left) || isList(right)) return fail(`${formula.operator} compares numbers, got a list`);
    return isOrdered(formula.operator, this.#arithmetic.compare(left, right));
  }
}

function isOrdered(operator: ComparisonOperator, order: number): boolean {
  switch (operator) {
    case '<':
      return order < 0;
    case '<=':
      return order <= 0;
    case '>':
      return order > 0;
    case '>=':
      return order >= 0;
    case '==':
      return order === 0;
  }
}

function isList<N>(value: Value<N>): value is readonly N[] {
  return Array.isArray(value);
}

function fail(message: string): never {
  throw new FormulaError('formula-value', message);
}
