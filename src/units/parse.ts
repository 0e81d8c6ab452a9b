import { CalculationError, UnitError } from './errors.js';
import { KINDS, isKind, kindOf, withArticle, type Kind, type UnitOf } from './kinds.js';
import { requireOptions } from './known-names.js';
import type { Column, ColumnRecord, Quantity, QuantityRecord } from './origin.js';
import { column, describe, isColumn, quantity, quantityOf, NO_NOTES, columnOf } from './quantity.js';
import { findUnit, unitChoices, unitOf } from './unit.js';

/** How a text is read. */
export interface ParseOptions {
  /** The sign between whole and decimal part. A point when left out; it is never guessed. */
  readonly decimal?: '.' | ',';
}

const LONGEST_TEXT = 100;
const OPTIONS = { decimal: ['.', ','] } as const;

/**
 * A quantity of a kind from text such as `22.9 psi`.
 *
 * @throws UnitError if the number, or the unit for this kind, cannot be read or is ambiguous.
 */
export function parse<K extends Kind>(kind: K, text: string, options: ParseOptions = {}): Quantity<K> {
  if (!isKind(kind)) throw refused('kind', 'a kind of quantity, such as power', kind);
  if (typeof text !== 'string') throw refused('text', 'text with a unit', text);
  requireOptions('parse', options, OPTIONS);
  const trimmed = text.trim().slice(0, LONGEST_TEXT);
  const end = numberLength(trimmed, options.decimal ?? '.');
  const value = readNumber(trimmed.slice(0, end), options);
  if (value === undefined) {
    throw new UnitError(
      'not a number',
      `"${trimmed}" does not begin with a number. Write for example "${exampleOf(kind)}".`,
    );
  }
  const unit = trimmed.slice(end).trim();
  if (/^[.,]\d/.test(unit)) {
    const [sign, word] = unit.startsWith(',') ? [',', 'comma'] : ['.', 'point'];
    const need = options.decimal === sign ? 'has a second decimal sign' : `has a ${word} that was not to be expected`;
    throw new UnitError(
      'not a number',
      `"${trimmed}" ${need}. If the ${word} is the decimal sign, give { decimal: '${sign}' }; leave out signs between thousands.`,
    );
  }
  const plain = Object.hasOwn(kindOf(kind).units, '1') && kind !== 'relative humidity';
  if (unit === '' && !plain) {
    throw new UnitError(
      'unknown unit',
      `"${trimmed}" has no unit, and ${withArticle(kind)} needs one: ${unitChoices(kind)}.`,
    );
  }
  return quantity(kind, value, unitOf(kind, unit === '' ? '1' : unit) as UnitOf<K>);
}

function refused(input: string, need: string, got: unknown): CalculationError {
  return new CalculationError('parse', [{ code: 'kind', input, need, got: describe(got), mend: '' }]);
}

function exampleOf(kind: Kind): string {
  return `1.5 ${Object.keys(kindOf(kind).units)[0] ?? ''}`;
}

/** How much of a text is a number: sign, digits, one decimal sign, an exponent. */
function numberLength(text: string, decimal: string): number {
  let end = 0;
  while (end < text.length) {
    const sign = text[end]!;
    const isExponent = (sign === 'e' || sign === 'E') && end > 0 && /^[eE][+-]?\d/.test(text.slice(end, end + 3));
    if (isExponent) end += 2;
    else if (
      (sign >= '0' && sign <= '9') ||
      sign === decimal ||
      ((sign === '-' || sign === '+' || sign === '−') && end === 0)
    )
      end++;
    else break;
  }
  return end;
}

/** A number from text, or undefined; nothing but a whole number counts, and `1,234` is not guessed at. */
export function readNumber(text: string, { decimal = '.' }: ParseOptions = {}): number | undefined {
  const trimmed = text.trim().replace('−', '-');
  if (trimmed === '' || (decimal === ',' && trimmed.includes('.'))) return undefined;
  const plain = decimal === ',' ? trimmed.replace(',', '.') : trimmed;
  if (!/^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(plain)) return undefined;
  const value = Number(plain);
  return Number.isFinite(value) ? value : undefined;
}

/** The kinds that a unit could belong to; a unit of more than one says nothing by itself. */
export function kindsOfUnit(unit: string): Kind[] {
  return (Object.keys(KINDS) as Kind[]).filter((kind) => {
    try {
      return findUnit(kind, unit) !== undefined;
    } catch {
      return false;
    }
  });
}

/**
 * A quantity or column from plain data: what `toJSON` wrote, or what came through `structuredClone` or `postMessage`.
 * It has its methods again, but no history.
 *
 * @throws CalculationError if the data is neither.
 */
export function revive(data: unknown): Quantity | Column {
  if (isColumn(data)) {
    return columnOf(
      data.kind,
      data.si,
      unitOf(data.kind, data.unit),
      undefined,
      data.notes ?? NO_NOTES,
      data.refused ?? 0,
      data.label,
    );
  }
  const record = data as Partial<QuantityRecord & ColumnRecord & { si: number; notes: Quantity['notes'] }> | null;
  if (typeof record === 'object' && record !== null && isKind(record.kind) && typeof record.unit === 'string') {
    const unit = unitOf(record.kind, record.unit);
    const { si, notes = NO_NOTES, label } = record;
    if (label !== undefined && typeof label !== 'string') throw unrevivable('whose label is text', label);
    if (!isNotes(notes)) throw unrevivable('whose notes are a list of notes', notes);
    if (si !== undefined && possibleSi(record.kind, si)) {
      return quantityOf(record.kind, si, unit, undefined, notes, label);
    }
    if (Array.isArray(record.values)) return column(record.kind, record.values, unit as UnitOf<Kind>, record.label);
    if (typeof record.value === 'number') {
      const plain = quantity(record.kind, record.value, unit as UnitOf<Kind>);
      return record.label === undefined ? plain : plain.named(record.label);
    }
  }
  throw unrevivable('as plain data', data);
}

function possibleSi(kind: Kind, si: unknown): si is number {
  return typeof si === 'number' && Number.isFinite(si) && si >= (kindOf(kind).minimum ?? -Infinity);
}

function isNotes(notes: unknown): notes is Quantity['notes'] {
  return (
    Array.isArray(notes) && notes.every((note) => typeof (note as { message?: unknown } | null)?.message === 'string')
  );
}

function unrevivable(need: string, got: unknown): CalculationError {
  return new CalculationError('revive', [
    { code: 'kind', input: 'data', need: `a quantity or column ${need}`, got: describe(got), mend: '' },
  ]);
}
