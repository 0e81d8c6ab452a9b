import { readNumber } from '../units/index.js';
import type { DecimalSign } from './dialect.js';

// A mantissa below 2^53 over a power of ten up to 10^22 is one division of exact numbers, so the result is the nearest double.
const POWERS = Array.from({ length: 19 }, (_, exponent) => 10 ** exponent);
const MOST_DIGITS = 15;
const MINUS = 45;
const ZERO = 48;

/** Texts that say a reading is missing. */
const MISSING = new Set(['', 'NaN', 'nan', 'NAN']);

/**
 * A cell as a number: NaN where it says that the reading is missing, undefined where it is no number. With `hasGroups` a comma may
 * part thousands, which is right only where the point was told to be the decimal sign; points never do, because `1.070` between
 * decimal commas is more likely a number of another logger than a thousand.
 */
export function readCell(cell: string, decimal: DecimalSign, hasGroups: boolean): number | undefined {
  const quick = plainNumber(cell, decimal.charCodeAt(0));
  if (!Number.isNaN(quick)) return quick;
  const text = cell.trim();
  if (MISSING.has(text)) return NaN;
  const value = readNumber(text, { decimal });
  if (value !== undefined || !hasGroups || decimal === ',') return value;
  return /^[+-]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?$/.test(text) ? readNumber(text.replaceAll(',', '')) : undefined;
}

/** Digits with at most one decimal sign, without the cost of a general parser; NaN for anything else. */
function plainNumber(cell: string, decimalCode: number): number {
  const isNegative = cell.charCodeAt(0) === MINUS;
  let mantissa = 0;
  let digits = 0;
  let point = -1;
  for (let at = isNegative ? 1 : 0; at < cell.length; at++) {
    const code = cell.charCodeAt(at);
    const digit = code - ZERO;
    if (digit >= 0 && digit <= 9) {
      mantissa = mantissa * 10 + digit;
      digits++;
    } else if (code === decimalCode && point < 0) point = digits;
    else return NaN;
  }
  if (digits === 0 || digits > MOST_DIGITS) return NaN;
  const value = point < 0 ? mantissa : mantissa / POWERS[digits - point]!;
  return isNegative ? -value : value;
}

/** Whether a text would be a number with either decimal sign. */
export function looksLikeNumber(text: string): boolean {
  return /^\s*[+-]?(?:\d[\d.,]{0,30}|[.,]\d{1,20})(?:[eE][+-]?\d{1,3})?\s*$/.test(text);
}

/** A number cell that only fails because the decimal sign is unsettled, such as `1,234` between commas. */
export function isUnsettled(cell: string): boolean {
  return /^\s*[+-]?\d[\d.,]{0,30}\s*$/.test(cell);
}
