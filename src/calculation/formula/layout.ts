import { atom, bracketBelow, bracketSigned, row, separated, sign } from './boxes.js';
import type { Box, Piece, Sign } from './boxes.js';
import { functionLayout } from './function-layout.js';
import { listsIn, symbolsOf } from './inspect.js';
import { takeSymbolApart } from './notation.js';
import type { NotationOf, ShownValue, SymbolNotation } from './notation.js';
import { bindingOfText, readNumeral } from './numerals.js';
import { binding } from './syntax.js';
import type { CallFormula, ConditionalFormula, Formula, OperationFormula } from './syntax.js';

const comparisonSigns = { '<': '<', '<=': '≤', '>': '>', '>=': '≥', '==': '=' } as const;

/** Lays a formula out, with symbols replaced as `notation` says. */
export function layOut(formula: Formula, notation: NotationOf = () => undefined): Box {
  return new Layout(notation, listsIn(formula)).piece(formula).box;
}

interface Place {
  readonly inTotal: boolean;
  readonly raised: boolean;
}

class Layout {
  readonly #notation: NotationOf;
  readonly #lists: readonly string[];
  readonly #place: Place;

  constructor(notation: NotationOf, lists: readonly string[], place: Place = { inTotal: false, raised: false }) {
    this.#notation = notation;
    this.#lists = lists;
    this.#place = place;
  }

  piece(formula: Formula): Piece {
    switch (formula.type) {
      case 'number':
        return valuePiece({ number: formula.text });
      case 'symbol':
        return this.#symbol(formula.name);
      case 'negation': {
        const operand = bracketSigned(this.piece(formula.operand), binding.total);
        return { box: row(sign('minus'), operand.box), binds: binding.negation, starts: 'minus', ends: operand.ends };
      }
      case 'operation':
        return this.#operation(formula);
      case 'call':
        return this.#call(formula);
      case 'comparison':
        return this.#joined(formula.left, comparisonSigns[formula.operator], formula.right, binding.comparison);
      case 'logic':
        return this.#joined(formula.left, formula.operator, formula.right, binding[formula.operator]);
      case 'conditional':
        return this.#cases(formula);
    }
  }

  #symbol(name: string): Piece {
    const shown: SymbolNotation = this.#notation(name) ?? { symbol: name };
    if ('number' in shown) return valuePiece(shown);
    if ('label' in shown) {
      return { box: { box: 'words', text: shown.label }, binds: binding.product, starts: 'number', ends: 'unit' };
    }
    if ('list' in shown) {
      const items = shown.list.map((value) => valuePiece(value).box);
      return atom({ box: 'brackets', shape: 'square', inside: separated(items) });
    }
    const index = this.#place.inTotal && this.#lists.includes(name);
    const parts = takeSymbolApart(shown.symbol);
    const edge = parts.upright ? 'abbreviation' : 'other';
    return { box: { box: 'symbol', name, parts, index }, binds: binding.atom, starts: edge, ends: edge };
  }

  #operation({ operator, left, right }: OperationFormula): Piece {
    const first = this.piece(left);
    if (operator === '^' || operator === '.^') return power(first, this.#raised().piece(right));
    const second = this.piece(right);
    switch (operator) {
      case '/':
      case './':
        return this.#place.raised ? inlineQuotient(first, second) : fraction(first, second);
      case '+':
      case '-': {
        const minus = operator === '-';
        const before = bracketBelow(first, binding.sum);
        const after = bracketSigned(second, minus ? binding.total : binding.sum);
        const items = [before.box, sign(minus ? '−' : '+'), after.box];
        return { box: row(...items), binds: binding.sum, starts: before.starts, ends: after.ends };
      }
      default:
        return beside(first, second);
    }
  }

  #call(formula: CallFormula): Piece {
    const total = formula.name === 'sum' || formula.name === 'prod';
    const [only] = formula.arguments;
    if (total && only !== undefined && formula.arguments.length === 1) return this.#total(formula.name, only);
    const inside = formula.name === 'exp' || formula.name === 'expm1' ? this.#raised() : this;
    return functionLayout(
      formula.name,
      formula.arguments.map((of) => inside.piece(of)),
    );
  }

  #total(name: string, of: Formula): Piece {
    const lists = symbolsOf(of).filter((symbol) => this.#lists.includes(symbol));
    const lengths = lists.map((list) => this.#valuesOf(list)?.length ?? 0);
    const [length = 0] = lengths;
    if (length > 0 && lengths.every((other) => other === length)) return this.#writtenOut(name, of, length);
    const inside = bracketSigned(
      new Layout(this.#notation, this.#lists, { ...this.#place, inTotal: true }).piece(of),
      binding.product,
    );
    const indexed = lists.some((list) => this.#valuesOf(list) === undefined);
    const box: Box = { box: 'total', sign: name === 'sum' ? '∑' : '∏', of: inside.box, indexed };
    return { box, binds: binding.total, starts: 'other', ends: inside.ends };
  }

  /** Long lists keep their first two terms and their last. */
  #writtenOut(name: string, of: Formula, length: number): Piece {
    const terms = Array.from({ length }, (_, index) => {
      const element: NotationOf = (symbol) => this.#valuesOf(symbol)?.[index] ?? this.#notation(symbol);
      return new Layout(element, this.#lists, this.#place).piece(of);
    });
    const shown = length > 4 ? [...terms.slice(0, 2), atom(sign('⋯')), ...terms.slice(-1)] : terms;
    const binds = length === 1 ? (terms[0]?.binds ?? 0) : name === 'sum' ? binding.sum : binding.product;
    const items = shown.flatMap((term, at) => {
      if (at === 0) return [bracketBelow(term, binds).box];
      return [sign(name === 'sum' ? '+' : '×'), bracketSigned(term, binds).box];
    });
    return { box: row(...items), binds, starts: terms[0]?.starts ?? 'other', ends: terms.at(-1)?.ends ?? 'other' };
  }

  /** Within an exponent a fraction would be too small to read. */
  #raised(): Layout {
    return new Layout(this.#notation, this.#lists, { ...this.#place, raised: true });
  }

  #valuesOf(list: string): readonly ShownValue[] | undefined {
    const shown = this.#notation(list);
    return shown !== undefined && 'list' in shown ? shown.list : undefined;
  }

  #joined(left: Formula, between: Sign, right: Formula, binds: number): Piece {
    const words = between === 'and' || between === 'or';
    const before = bracketBelow(this.piece(left), words ? binds : binding.sum);
    const after = bracketBelow(this.piece(right), words ? binds : binding.sum);
    return { box: row(before.box, sign(between), after.box), binds, starts: before.starts, ends: after.ends };
  }

  #cases(formula: ConditionalFormula): Piece {
    const rows: { value: Box; condition?: Box }[] = [];
    let rest: Formula = formula;
    while (rest.type === 'conditional') {
      rows.push({ value: this.piece(rest.then).box, condition: this.piece(rest.condition).box });
      rest = rest.otherwise;
    }
    rows.push({ value: this.piece(rest).box });
    return { box: { box: 'cases', rows }, binds: binding.conditional, starts: 'other', ends: 'other' };
  }
}

/** A number or quantity; its own minus sign and power of ten make it bind looser than an atom. */
function valuePiece({ number, unit = '' }: ShownValue): Piece {
  const starts = /^[-−]/.test(number) ? 'minus' : 'number';
  if (unit !== '') {
    const binds = Math.min(bindingOfText(number), binding.product);
    return { box: { box: 'quantity', number, unit }, binds, starts, ends: 'unit' };
  }
  const exponent = readNumeral(number)?.exponent !== undefined;
  const binds = exponent ? binding.product : bindingOfText(number);
  return { box: { box: 'number', text: number }, binds, starts, ends: exponent ? 'unit' : 'other' };
}

function fraction(above: Piece, below: Piece): Piece {
  const box: Box = { box: 'fraction', above: above.box, below: below.box };
  return { box, binds: binding.product, starts: above.starts === 'number' ? 'number' : 'other', ends: 'other' };
}

function inlineQuotient(above: Piece, below: Piece): Piece {
  const first = bracketBelow(above, binding.product);
  const second = bracketSigned(below, binding.negation);
  const box = row(first.box, sign('/'), second.box);
  return { box, binds: binding.total, starts: first.starts, ends: second.ends };
}

function power(base: Piece, exponent: Piece): Piece {
  const below = bracketBelow(base, binding.atom);
  const box: Box = { box: 'power', base: below.box, exponent: exponent.box };
  return { box, binds: binding.power, starts: below.starts, ends: 'other' };
}

/**
 * A product: side by side where that reads well, with a cross before a number and after a unit, and a dot beside an
 * abbreviation, which would run into its neighbour.
 */
function beside(left: Piece, right: Piece): Piece {
  const first = bracketBelow(left, binding.product);
  const second = bracketSigned(right, binding.product);
  const cross = second.starts === 'number' || first.ends === 'unit';
  const dot = first.ends === 'abbreviation' || second.starts === 'abbreviation';
  const box = row(first.box, sign(cross ? '×' : dot ? '·' : 'beside'), second.box);
  return { box, binds: binding.product, starts: first.starts, ends: second.ends };
}
