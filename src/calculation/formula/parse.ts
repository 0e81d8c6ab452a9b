import { arityOfBuiltIn, FormulaError, isTruth } from './syntax.js';
import type { ComparisonOperator, Formula, Operator } from './syntax.js';
import { tokenize } from './tokens.js';
import type { Token } from './tokens.js';

const longestFormula = 4000;
const deepestFormula = 200;

/**
 * Reads a formula, such as `T1 * (1 + (PR^((k - 1) / k) - 1) / eta)`.
 *
 * The language is a subset of mathjs's: numbers, symbols, `+ - * / ^`, brackets, function calls, the element-by-element
 * `.* ./ .^`, comparisons, `and`, `or`, and `condition ? a : b`. Powers bind from the right and tighter than a minus
 * sign. `pi` is a constant. A comparison is a condition, never a number, except that a whole formula may be an
 * equation written with `==`.
 *
 * @throws FormulaError with the position if the text is not a formula, or is longer than 4000 characters or nested
 * deeper than 200 levels.
 * @example
 * parseFormula('m * cp') //=> { type: 'operation', operator: '*', left: { type: 'symbol', name: 'm' }, right: { type: 'symbol', name: 'cp' } }
 */
export function parseFormula(text: string): Formula {
  if (typeof text !== 'string') throw new FormulaError('formula-syntax', `a formula must be text, got ${typeof text}`);
  if (text.length > longestFormula) {
    const message = `a formula may have ${longestFormula} characters, got ${text.length}`;
    throw new FormulaError('formula-too-long', message);
  }
  return new Parser(text).whole();
}

class Parser {
  readonly #text: string;
  readonly #tokens: readonly Token[];
  #next = 0;
  #depth = 0;

  constructor(text: string) {
    this.#text = text;
    this.#tokens = tokenize(text);
  }

  whole(): Formula {
    const formula = this.#conditional();
    if (this.#token.type !== 'end') {
      const factor = this.#token.type !== 'sign' || this.#token.text === '(';
      this.#fail(`expected an operator or the end, got ${this.#shown()}${factor ? '; write * between factors' : ''}`);
    }
    return formula;
  }

  #conditional(): Formula {
    return this.#nested(() => {
      const start = this.#token;
      const condition = this.#either();
      if (!this.#take('?')) return condition;
      if (!isTruth(condition)) this.#fail('what stands before ? must be a comparison', start);
      const then = this.#number(() => this.#either());
      if (this.#token.text === '?') this.#fail('a condition between ? and : needs brackets');
      if (!this.#take(':')) this.#fail(`expected : and the other value of the condition, got ${this.#shown()}`);
      const otherwise = this.#number(() => this.#conditional());
      return { type: 'conditional', condition, then, otherwise };
    });
  }

  #either(): Formula {
    return this.#logic('or', () => this.#logic('and', () => this.#comparison()));
  }

  #logic(operator: 'and' | 'or', read: () => Formula): Formula {
    const start = this.#token;
    let formula = read();
    while (this.#take(operator)) {
      if (!isTruth(formula)) this.#fail(`what stands before ${operator} must be a comparison`, start);
      const rightStart = this.#token;
      const right = read();
      if (!isTruth(right)) this.#fail(`what stands after ${operator} must be a comparison`, rightStart);
      formula = { type: 'logic', operator, left: formula, right };
    }
    return formula;
  }

  #comparison(): Formula {
    const start = this.#token;
    const left = this.#sum();
    const operator = this.#takeOneOf<ComparisonOperator>(['<', '<=', '>', '>=', '==']);
    if (operator === undefined) return left;
    if (isTruth(left)) this.#fail('a comparison is not a number and cannot be compared', start);
    const right = this.#number(() => this.#sum());
    if (this.#takeOneOf(['<', '<=', '>', '>=', '==']) !== undefined) {
      this.#next -= 1;
      this.#fail('comparisons cannot be chained; join two with and');
    }
    return { type: 'comparison', operator, left, right };
  }

  #sum(): Formula {
    return this.#chain(['+', '-'], () => this.#product());
  }

  #product(): Formula {
    return this.#chain(['*', '/', '.*', './'], () => this.#signed());
  }

  #chain(operators: readonly Operator[], read: () => Formula): Formula {
    const start = this.#token;
    let left = read();
    for (;;) {
      const operator = this.#takeOneOf(operators);
      if (operator === undefined) return left;
      if (isTruth(left)) this.#fail(`a comparison is not a number and cannot stand before ${operator}`, start);
      left = { type: 'operation', operator, left, right: this.#number(read) };
    }
  }

  #signed(): Formula {
    if (!this.#take('-')) return this.#power();
    return this.#nested(() => ({ type: 'negation', operand: this.#number(() => this.#signed()) }));
  }

  #power(): Formula {
    const start = this.#token;
    const left = this.#atom();
    const operator = this.#takeOneOf<Operator>(['^', '.^']);
    if (operator === undefined) return left;
    if (isTruth(left)) this.#fail('a comparison is not a number and cannot have a power', start);
    return this.#nested(() => ({ type: 'operation', operator, left, right: this.#number(() => this.#signed()) }));
  }

  #atom(): Formula {
    const token = this.#token;
    if (token.type === 'number') {
      this.#next += 1;
      return { type: 'number', text: token.text };
    }
    if (token.type === 'name' && token.text !== 'and' && token.text !== 'or') {
      this.#next += 1;
      if (this.#take('(')) return { type: 'call', name: token.text, arguments: this.#arguments(token) };
      return { type: 'symbol', name: token.text };
    }
    if (this.#take('(')) {
      const inner = this.#conditional();
      if (!this.#take(')')) this.#fail(`expected ), got ${this.#shown()}`);
      return inner;
    }
    return this.#fail(`expected a number, a symbol, a function or (, got ${this.#shown()}`);
  }

  #arguments(called: Token): readonly Formula[] {
    const values: Formula[] = [];
    if (!this.#take(')')) {
      do values.push(this.#number(() => this.#conditional()));
      while (this.#take(','));
      if (!this.#take(')')) this.#fail(`expected , or ) in ${called.text}(...), got ${this.#shown()}`);
    }
    const [least, most] = arityOfBuiltIn(called.text) ?? [0, Infinity];
    if (values.length < least || values.length > most) {
      const need = most === Infinity ? `at least ${least} argument` : `${most} argument`;
      this.#fail(`${called.text} takes ${need}, got ${values.length}`, called);
    }
    return values;
  }

  #number(read: () => Formula): Formula {
    const start = this.#token;
    const formula = read();
    if (isTruth(formula)) this.#fail('expected a number, got a comparison', start);
    return formula;
  }

  #nested(read: () => Formula): Formula {
    this.#depth += 1;
    if (this.#depth > deepestFormula) {
      const where = { text: this.#text, position: this.#token.position };
      throw new FormulaError('formula-too-deep', `a formula may be nested ${deepestFormula} levels deep`, where);
    }
    const formula = read();
    this.#depth -= 1;
    return formula;
  }

  get #token(): Token {
    return this.#tokens[this.#next] ?? { type: 'end', text: '', position: this.#text.length };
  }

  #take(text: string): boolean {
    if (this.#token.text !== text) return false;
    this.#next += 1;
    return true;
  }

  #takeOneOf<T extends string>(texts: readonly T[]): T | undefined {
    return texts.find((text) => this.#take(text));
  }

  #shown(): string {
    return this.#token.type === 'end' ? 'the end' : `"${this.#token.text}"`;
  }

  #fail(message: string, at: Token = this.#token): never {
    throw new FormulaError('formula-syntax', message, { text: this.#text, position: at.position });
  }
}
