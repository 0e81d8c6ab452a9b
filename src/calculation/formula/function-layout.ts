import { atom, bracketBelow, bracketSigned, row, separated, sign } from './boxes.js';
import type { Box, Piece } from './boxes.js';
import { binding } from './syntax.js';

/** Lays out a call: exponentials as powers of e, roots and absolute values with their own signs, the rest by name. */
export function functionLayout(name: string, values: readonly Piece[]): Piece {
  const [only] = values;
  if (only !== undefined) {
    switch (name) {
      case 'exp':
        return exponential(only);
      case 'expm1': {
        const box = row(exponential(only).box, sign('−'), { box: 'number', text: '1' });
        return { box, binds: binding.sum, starts: 'other', ends: 'other' };
      }
      case 'log1p': {
        const inside = row({ box: 'number', text: '1' }, sign('+'), bracketSigned(only, binding.sum).box);
        return call({ box: 'function', name: 'ln' }, inside);
      }
      case 'log':
        return call({ box: 'function', name: 'ln' }, only.box);
      case 'log10':
        return call({ box: 'function', name: 'log', base: '10' }, only.box);
      case 'sqrt':
      case 'cbrt':
        return {
          ...atom({ box: 'root', degree: name === 'sqrt' ? '2' : '3', inside: only.box }),
          binds: binding.power,
        };
      case 'abs':
        return atom({ box: 'brackets', shape: 'bars', inside: only.box });
    }
  }
  return call({ box: 'function', name }, separated(values.map((value) => value.box)));
}

function exponential(exponent: Piece): Piece {
  const box: Box = { box: 'power', base: { box: 'euler' }, exponent: exponent.box };
  return { ...atom(box), binds: binding.power };
}

function call(name: Box, inside: Box): Piece {
  const brackets = bracketBelow({ ...atom(inside), binds: 0 }, binding.atom).box;
  return { ...atom(row(name, sign('apply'), brackets)), binds: binding.power };
}
