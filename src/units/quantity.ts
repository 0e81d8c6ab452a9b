import { CalculationError } from './errors.js';
import { constructorName, isKind, kindOf, withArticle, type Kind, type UnitOf } from './kinds.js';
import type { Column, ColumnRecord, Note, Origin, Quantity, QuantityRecord } from './origin.js';
import { fromSi, toSi, unitOf } from './unit.js';
import { writtenColumn, writtenValue } from './written.js';

/** Shared by every value without notes, so that having none costs nothing. */
export const NO_NOTES: readonly Note[] = [];

const INSPECT = Symbol.for('nodejs.util.inspect.custom');

function refuseArithmetic(kind: Kind): never {
  throw new CalculationError('arithmetic', [
    {
      code: 'kind',
      input: '',
      need: 'arithmetic needs numbers, and a bare number would drop the unit',
      got: withArticle(kind),
      mend: 'Use add, subtract, scale, ratioOf or compareValues, or take a number out with .in(unit).',
    },
  ]);
}

function notesText(notes: readonly Note[]): string {
  return notes.map((note) => `\n  note: ${note.message}`).join('');
}

/**
 * The origin is a private field behind a getter so that a clone (`structuredClone`, `postMessage`) is plain data: an origin holds
 * functions, which cannot be cloned.
 */
class QuantityValue<K extends Kind> implements Quantity<K> {
  #origin: Origin | undefined;
  readonly kind: K;
  readonly si: number;
  readonly unit: string;
  readonly notes: readonly Note[];
  readonly label: string | undefined;

  constructor(kind: K, si: number, unit: string, origin: Origin | undefined, notes: readonly Note[], label?: string) {
    this.kind = kind;
    this.si = si;
    this.unit = unit;
    this.notes = notes;
    this.label = label;
    this.#origin = origin;
  }

  get origin(): Origin | undefined {
    return this.#origin;
  }

  in(unit: UnitOf<K>): number {
    return fromSi(this.kind, this.si, unitOf(this.kind, unit));
  }

  to(unit: UnitOf<K>): Quantity<K> {
    return new QuantityValue(this.kind, this.si, unitOf(this.kind, unit), this.#identity(), this.notes, this.label);
  }

  named(label: string): Quantity<K> {
    return new QuantityValue(this.kind, this.si, this.unit, this.#identity(), this.notes, label);
  }

  /** Copies must stay one value of the graph, so a value that had no origin gets one when it is first copied. */
  #identity(): Origin {
    return (this.#origin ??= { type: 'leaf', role: 'given' });
  }

  toString(): string {
    return writtenValue(this);
  }

  toJSON(): QuantityRecord {
    const record = { kind: this.kind, value: fromSi(this.kind, this.si, this.unit), unit: this.unit };
    return this.label === undefined ? record : { ...record, label: this.label };
  }

  valueOf(): never {
    return refuseArithmetic(this.kind);
  }

  /** @internal Text in a template is fine; arithmetic is not. */
  [Symbol.toPrimitive](hint: string): string {
    return hint === 'string' ? this.toString() : refuseArithmetic(this.kind);
  }

  /** @internal */
  [INSPECT](): string {
    return `${this.label === undefined ? '' : `${this.label}: `}${this.toString()} (${this.kind})${notesText(this.notes)}`;
  }
}

class ColumnValue<K extends Kind> implements Column<K> {
  #origin: Origin | undefined;
  readonly kind: K;
  readonly si: Float64Array;
  readonly unit: string;
  readonly notes: readonly Note[];
  readonly label: string | undefined;
  readonly missing: number;
  readonly refused: number;

  constructor(
    kind: K,
    si: Float64Array,
    unit: string,
    origin: Origin | undefined,
    notes: readonly Note[],
    refused: number,
    label?: string,
  ) {
    let missing = 0;
    for (let row = 0; row < si.length; row++) if (Number.isNaN(si[row])) missing++;
    this.kind = kind;
    this.si = si;
    this.unit = unit;
    this.notes = notes;
    this.label = label;
    this.missing = missing;
    this.refused = refused;
    this.#origin = origin;
  }

  get origin(): Origin | undefined {
    return this.#origin;
  }

  get length(): number {
    return this.si.length;
  }

  in(unit: UnitOf<K>): Float64Array {
    const name = unitOf(this.kind, unit);
    return this.si.map((si) => fromSi(this.kind, si, name));
  }

  to(unit: UnitOf<K>): Column<K> {
    return this.#copy(unitOf(this.kind, unit), this.label);
  }

  named(label: string): Column<K> {
    return this.#copy(this.unit, label);
  }

  #copy(unit: string, label: string | undefined): Column<K> {
    this.#origin ??= { type: 'leaf', role: 'given' };
    return new ColumnValue(this.kind, this.si, unit, this.#origin, this.notes, this.refused, label);
  }

  at(row: number): Quantity<K> {
    return rowOf(this, row, new Map());
  }

  toString(): string {
    return writtenColumn(this);
  }

  toJSON(): ColumnRecord {
    const values = Array.from(this.in(this.unit as UnitOf<K>), (value) => (Number.isNaN(value) ? null : value));
    const record = { kind: this.kind, values, unit: this.unit };
    return this.label === undefined ? record : { ...record, label: this.label };
  }

  valueOf(): never {
    return refuseArithmetic(this.kind);
  }

  /** @internal */
  [Symbol.toPrimitive](hint: string): string {
    return hint === 'string' ? this.toString() : refuseArithmetic(this.kind);
  }

  /** @internal */
  [INSPECT](): string {
    return `${this.label === undefined ? '' : `${this.label}: `}${this.toString()}${notesText(this.notes)}`;
  }
}

/** One row of a column, with the history that row has; columns shared between steps give one value per row. */
function rowOf<K extends Kind>(column: Column<K>, row: number, seen: Map<Column, Quantity>): Quantity<K> {
  const known = seen.get(column);
  if (known) return known as Quantity<K>;
  const si = column.si[row];
  if (si === undefined || Number.isNaN(si)) {
    const got = si === undefined ? `row ${row} of ${column.length}` : `row ${row}, which is missing`;
    throw new CalculationError('row of a column', [
      { code: 'missing', input: 'row', need: 'a row that has a value', got, mend: '' },
    ]);
  }
  const { origin } = column;
  const rowOrigin: Origin | undefined =
    origin?.type === 'step'
      ? { ...origin, inputs: origin.inputs.map((input) => (isColumn(input) ? rowOf(input, row, seen) : input)) }
      : origin && { ...origin };
  const quantity = new QuantityValue(column.kind, si, column.unit, rowOrigin, column.notes, column.label);
  seen.set(column, quantity);
  return quantity;
}

/** Whether a value is a column, from this copy of the library, another copy, or a clone. */
export function isColumn(value: unknown): value is Column {
  return isRecord(value) && isKind(value['kind']) && value['si'] instanceof Float64Array;
}

/** Whether a value is a quantity, from this copy of the library, another copy, or a clone. */
export function isQuantity(value: unknown): value is Quantity {
  return isRecord(value) && isKind(value['kind']) && typeof value['si'] === 'number';
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/** @internal A quantity from its parts, unchecked: for the steps of the graph. */
export function quantityOf<K extends Kind>(
  kind: K,
  si: number,
  unit: string,
  origin: Origin | undefined,
  notes: readonly Note[],
  label?: string,
): Quantity<K> {
  return new QuantityValue(kind, si, unit, origin, notes, label);
}

/** @internal A column from its parts, unchecked: for the steps of the graph. */
export function columnOf<K extends Kind>(
  kind: K,
  si: Float64Array,
  unit: string,
  origin: Origin | undefined,
  notes: readonly Note[],
  refused: number,
  label?: string,
): Column<K> {
  return new ColumnValue(kind, si, unit, origin, notes, refused, label);
}

/** A quantity of a kind from a number and a unit, checked. */
export function quantity<K extends Kind>(kind: K, value: number, unit: UnitOf<K>): Quantity<K> {
  if (typeof value !== 'number' || !Number.isFinite(value)) throw notANumber(kind, value);
  const name = unitOf(kind, unit);
  const si = toSi(kind, value, name);
  if (!(si >= (kindOf(kind).minimum ?? -Infinity)) || !Number.isFinite(si)) throw impossible(kind, value, name);
  return new QuantityValue(kind, si, name, undefined, NO_NOTES);
}

/**
 * A column of a kind from numbers in a unit. NaN, null and undefined are missing rows.
 *
 * @throws CalculationError if a number is infinite or impossible for the kind, naming the first such row.
 */
export function column<K extends Kind>(
  kind: K,
  values: ArrayLike<number | null | undefined>,
  unit: UnitOf<K>,
  label?: string,
): Column<K> {
  if (!isKind(kind)) throw refused('column', 'kind', 'a kind of quantity, such as power', describe(kind));
  if (typeof values !== 'object' || values === null)
    throw refused(constructorName(kind), 'values', 'a list of numbers', describe(values));
  const name = unitOf(kind, unit);
  const si = new Float64Array(values.length);
  const minimum = kindOf(kind).minimum ?? -Infinity;
  for (let row = 0; row < values.length; row++) {
    const value = values[row] ?? NaN;
    if (typeof value !== 'number')
      throw refused(constructorName(kind), 'values', 'numbers', `${describe(value)} in row ${row}`);
    si[row] = toSi(kind, value, name);
    if (si[row]! < minimum || Math.abs(si[row]!) === Infinity) throw impossible(kind, value, `${name} in row ${row}`);
  }
  return new ColumnValue(kind, si, name, undefined, NO_NOTES, 0, label);
}

function notANumber(kind: Kind, value: unknown): CalculationError {
  const mend = typeof value === 'string' ? 'For text with its unit use parse(kind, text).' : '';
  return refused(constructorName(kind), 'value', 'a finite number', describe(value), mend);
}

function refused(name: string, input: string, need: string, got: string, mend = ''): CalculationError {
  return new CalculationError(name, [{ code: 'kind', input, need, got, mend }]);
}

function impossible(kind: Kind, value: number, unit: string): CalculationError {
  const mend = kind === 'absolute pressure' ? 'Is it a gauge pressure? Write absolute(gauge, barometer).' : '';
  const tooLarge = value > 0 || kindOf(kind).minimum === undefined;
  const need = tooLarge ? 'finite' : `above ${kind === 'temperature' ? 'absolute zero' : 'zero'}`;
  return new CalculationError(constructorName(kind), [
    { code: 'impossible', input: 'value', need, got: `${value} ${unit}`, mend },
  ]);
}

/** Any value in words, for errors: `a gauge pressure (8.2 psi)`, `the bare number 18`. */
export function describe(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return `the bare number ${value}`;
  if (typeof value === 'string') return `the text "${value.slice(0, 60)}"`;
  if (isQuantity(value)) return `${withArticle(value.kind)} (${writtenValue(value)})`;
  if (isColumn(value)) return `a column of ${value.kind}`;
  if (Array.isArray(value)) return 'a list';
  return value === null ? 'null' : `a value of type ${typeof value}`;
}
