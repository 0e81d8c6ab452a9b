import { binding } from './syntax.js';

/** A number's written form taken apart: `-1.2e-3` is minus, 1.2, -3. */
export interface Numeral {
  readonly negative: boolean;
  readonly mantissa: string;
  readonly exponent: string | undefined;
}

/** Takes a plain number apart; undefined for any other text, such as `18 ± 0.5`. */
export function readNumeral(text: string): Numeral | undefined {
  const match = /^([-−])?(\d{1,400}(?:\.\d{1,400})?|\.\d{1,400})(?:[eE]([-+]?)(\d{1,5}))?$/.exec(text);
  if (match === null) return undefined;
  const [, sign, mantissa = '', exponentSign = '', exponentDigits] = match;
  const digits = exponentDigits?.replace(/^0+(?=\d)/, '');
  return {
    negative: sign !== undefined,
    mantissa,
    exponent: digits === undefined ? undefined : (exponentSign === '-' ? '-' : '') + digits,
  };
}

/**
 * How tightly already written text binds, on the scale of the formula itself: a bare number or name is an atom, a
 * number with a unit a product, `18 ± 0.5` a sum.
 */
export function bindingOfText(text: string): number {
  const unsigned = /^[-−+]/.test(text) ? text.slice(1) : text;
  if (text.startsWith('[') && text.endsWith(']')) return binding.atom;
  if (unsigned.includes('±') || / [-−+] /.test(unsigned)) return binding.sum;
  if (readNumeral(unsigned.replace(',', '.')) === undefined && !/^[A-Za-z]\w{0,200}$/.test(unsigned)) {
    return binding.product;
  }
  return unsigned === text ? binding.atom : binding.negation;
}

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Sets the powers in a unit typed as `kg/m3`, `s^-1` or `m^2` as superscripts. `inH2O` stays as it is. */
export function raiseUnitPowers(unit: string): string {
  return unit.replace(/\^?(?<=[A-Za-z]\^?)-?\d{1,3}(?![A-Za-z\d])/g, (power) =>
    [...power.replace('^', '')].map((sign) => (sign === '-' ? '⁻' : superscripts.charAt(Number(sign)))).join(''),
  );
}

/** Reads superscript digits, as in `m⁻³`, back as plain ones. */
export function readSuperscript(text: string): string {
  return [...text].map((sign) => (sign === '⁻' ? '-' : String(superscripts.indexOf(sign)))).join('');
}
