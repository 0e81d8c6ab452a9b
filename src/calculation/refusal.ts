import { CalculationError, type Problem } from '../units/errors.js';
import type { Kind } from '../units/kinds.js';
import { describe } from '../units/internal.js';
import type { Column, Quantity } from '../units/origin.js';
import { isColumn, isQuantity } from '../units/quantity.js';

/** One thing wrong with a call, as an error. */
export function refusal(
  name: string,
  code: Problem['code'],
  input: string,
  need: string,
  got: string,
  mend = '',
): CalculationError {
  return new CalculationError(name, [{ code, input, need, got, mend }]);
}

/** Labels come first in this library, so a quantity in their place is the likeliest slip. */
export function requireLabel(name: string, label: unknown): asserts label is string {
  if (typeof label === 'string' && label.trim() !== '') return;
  const mend = isQuantity(label) || isColumn(label) || Array.isArray(label) ? 'The label comes first.' : '';
  throw refusal(
    name,
    'kind',
    'label',
    'a text that names it in explanations',
    label === '' ? 'an empty text' : describe(label),
    mend,
  );
}

/** Refuses what is not a quantity; a column gets told how to give one of its rows. */
export function requireQuantity(name: string, input: string, value: unknown, kind?: Kind): asserts value is Quantity {
  if (isQuantity(value) && (kind === undefined || value.kind === kind)) return;
  const mend = isColumn(value) ? 'Take one row of the column, with .at(row).' : '';
  throw refusal(name, 'kind', input, kind ?? 'a quantity', describe(value), mend);
}

/** Refuses what is neither a quantity nor a column. */
export function requireValue(name: string, input: string, value: unknown): asserts value is Quantity | Column {
  if (isQuantity(value) || isColumn(value)) return;
  throw refusal(name, value === undefined ? 'missing' : 'kind', input, 'a quantity or a column', describe(value));
}

/** Refuses a level of confidence that is no share; whole percents are the likeliest slip. */
export function requireLevel(name: string, level: unknown): asserts level is number {
  if (typeof level === 'number' && level > 0 && level < 1) return;
  const mend = typeof level === 'number' && level >= 1 && level < 100 ? `For ${level} % write ${level / 100}.` : '';
  throw refusal(name, 'impossible', 'level', 'a number between 0 and 1, both excluded', String(level), mend);
}
