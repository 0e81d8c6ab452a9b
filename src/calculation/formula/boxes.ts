import type { SymbolParts } from './notation.js';
import { binding } from './syntax.js';

/** A formula as it stands on paper, before it is written in one markup or another. */
export type Box =
  | { readonly box: 'row'; readonly items: readonly Box[] }
  | { readonly box: 'number'; readonly text: string }
  | { readonly box: 'quantity'; readonly number: string; readonly unit: string }
  | { readonly box: 'symbol'; readonly name: string; readonly parts: SymbolParts; readonly index: boolean }
  | { readonly box: 'words'; readonly text: string }
  | { readonly box: 'function'; readonly name: string; readonly base?: string }
  | { readonly box: 'sign'; readonly sign: Sign }
  | { readonly box: 'brackets'; readonly shape: 'round' | 'square' | 'bars'; readonly inside: Box }
  | { readonly box: 'fraction'; readonly above: Box; readonly below: Box }
  | { readonly box: 'root'; readonly degree: '2' | '3'; readonly inside: Box }
  | { readonly box: 'power'; readonly base: Box; readonly exponent: Box }
  | { readonly box: 'euler' }
  | { readonly box: 'total'; readonly sign: '∑' | '∏'; readonly of: Box; readonly indexed: boolean }
  | { readonly box: 'cases'; readonly rows: readonly { readonly value: Box; readonly condition?: Box }[] };

/** `apply` and `beside` are the invisible function application and product; the other signs show. */
export type Sign =
  '+' | '−' | 'minus' | '×' | '·' | '/' | '<' | '≤' | '>' | '≥' | '=' | ',' | '⋯' | 'apply' | 'beside' | 'and' | 'or';

/** A laid out part, with what its neighbours must know: how tightly it binds and what stands at its edges. */
export interface Piece {
  readonly box: Box;
  readonly binds: number;
  readonly starts: 'number' | 'minus' | 'abbreviation' | 'other';
  readonly ends: 'unit' | 'abbreviation' | 'other';
}

export function row(...boxes: readonly Box[]): Box {
  const items = boxes.flatMap((box) => (box.box === 'row' ? box.items : [box]));
  const [only] = items;
  return only !== undefined && items.length === 1 ? only : { box: 'row', items };
}

export function sign(name: Sign): Box {
  return { box: 'sign', sign: name };
}

export function atom(box: Box): Piece {
  return { box, binds: binding.atom, starts: 'other', ends: 'other' };
}

export function separated(boxes: readonly Box[]): Box {
  return row(...boxes.flatMap((box, index) => (index === 0 ? [box] : [sign(','), box])));
}

export function bracketBelow(piece: Piece, atLeast: number): Piece {
  if (piece.binds >= atLeast) return piece;
  const value = piece.box.box === 'number' || piece.box.box === 'quantity';
  return { ...atom({ box: 'brackets', shape: 'round', inside: piece.box }), starts: value ? 'number' : 'other' };
}

/** After an operator a leading minus sign needs brackets as well. */
export function bracketSigned(piece: Piece, atLeast: number): Piece {
  return piece.starts === 'minus' ? bracketBelow(piece, Infinity) : bracketBelow(piece, atLeast);
}

/** Whether a box is taller than a line, so that brackets round it must grow. */
export function isTall(box: Box): boolean {
  switch (box.box) {
    case 'row':
      return box.items.some(isTall);
    case 'brackets':
    case 'root':
      return isTall(box.inside);
    case 'power':
      return isTall(box.base);
    default:
      return box.box === 'fraction' || box.box === 'total' || box.box === 'cases';
  }
}
