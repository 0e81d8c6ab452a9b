import { findUnit, kindsOfUnit, quantity, UnitError, unitChoices, type Kind, type UnitOf } from '../units/index.js';
import { readClock } from './clock-text.js';
import { LogError } from './errors.js';
import { isUnitOf, readHeader, withUnit, type Header } from './header.js';
import { isUnsettled, readCell } from './numbers.js';
import type { ColumnOrigin } from './pull.js';
import { CHANNEL_KINDS, type ChannelRole } from './roles.js';
import type { Table } from './table.js';
import { quoted } from './words-for-people.js';

/** The headers of a log with the units of the row below them, where there is one. */
export function readHeaders({ header, units, file }: Table): Header[] {
  return header.map((text, at) => {
    const own = readHeader(text);
    const below = units?.[at] ?? '';
    if (below === '') return own;
    const joint = withUnit(own, below);
    if (own.unit !== undefined && joint.unit !== undefined && !areSameUnit(own.unit, joint.unit)) {
      const fact = `Column ${quoted(text)} says ${own.unit} in its header and ${joint.unit} in the row of units.`;
      throw new LogError({ code: 'units disagree', file, column: text, expected: own.unit, found: joint.unit, fact });
    }
    return joint.unit === undefined ? own : { ...joint, zero: joint.zero ?? own.zero };
  });
}

/** Whether two spellings are one unit for every kind they could belong to; texts that are no unit contradict nothing. */
function areSameUnit(a: string, b: string): boolean {
  const kindsA = kindsOfUnit(a);
  const kindsB = kindsOfUnit(b);
  if (kindsA.length === 0 || kindsB.length === 0) return true;
  return kindsA.some((kind) => kindsB.includes(kind) && sizeOf(kind, a) === sizeOf(kind, b));
}

export const sizeOf = (kind: Kind, unit: string): number => quantity(kind, 1, findUnit(kind, unit) as UnitOf<Kind>).si;

export function unitsDisagree(role: ChannelRole, unit: string, header: Header, { file }: Table): LogError {
  const kind = CHANNEL_KINDS[role];
  const inHeader = `${header.unit ?? 'no unit'}${header.zero === undefined ? '' : ` ${header.zero}`}`;
  const inMap = unit === '' ? kind : `${kind} in ${unit}`;
  return new LogError({
    code: 'units disagree',
    file,
    column: header.text,
    expected: inMap,
    found: inHeader,
    fact: `Column ${quoted(header.text)} says ${inHeader} in the log, and the channel map says ${inMap}.`,
    mend: `Leave the unit out of the map to follow the log, or correct whichever is wrong. A map for one set-up: setups: { name: { ${role}: … } }.`,
  });
}

/** A unit and where it was found; empty where there is none and the kind needs one. */
export type FoundUnit = Pick<ColumnOrigin, 'unit' | 'unitFrom'>;

export function unitFor(
  role: ChannelRole,
  header: Header,
  nameUnit: string | undefined,
  table: Table,
  at: number,
): FoundUnit {
  const kind = CHANNEL_KINDS[role];
  const { unit } = header;
  if (kind === 'time' && isClockText(table, at)) return { unit: 's', unitFrom: 'time of day' };
  if (unit !== undefined && isUnitOf(kind, unit)) {
    return { unit: findUnit(kind, unit)!, unitFrom: table.units?.[at] ? 'units row' : 'header' };
  }
  if (needsNoUnit(kind)) return { unit: '1', unitFrom: 'none' };
  if (unit !== undefined) throw unknownUnit(role, header, unit, table);
  if (nameUnit !== undefined) return { unit: findUnit(kind, nameUnit)!, unitFrom: 'name' };
  return { unit: '', unitFrom: 'none' };
}

function isClockText({ rows }: Table, at: number): boolean {
  const first = rows.find((row) => row[at]!.trim() !== '')?.[at];
  return first !== undefined && readClock(first) !== undefined;
}

/** Cells that are looked at before a column counts as one that cannot be read. */
const LOOKED_AT = 50;

/** The first cell of a column of which no cell is a number, nor a time where it should be one; undefined of any other column. */
export function unreadable({ rows, dialect, isDecimalTold }: Table, at: number, kind: Kind): string | undefined {
  let seen = 0;
  let example: string | undefined;
  for (const row of rows) {
    const cell = row[at]!.trim();
    if (cell === '') continue;
    if (readCell(cell, dialect.decimal, isDecimalTold) !== undefined || isUnsettled(cell)) return undefined;
    if (kind === 'time' && readClock(cell) !== undefined) return undefined;
    example ??= cell;
    if (++seen === LOOKED_AT) break;
  }
  return example;
}

/** Mixture ratios have one way to be written; a humidity has two. */
export function needsNoUnit(kind: Kind): boolean {
  return kind === 'lambda' || kind === 'air-fuel ratio';
}

function unknownUnit(role: ChannelRole, header: Header, unit: string, { file }: Table): LogError {
  const kind = CHANNEL_KINDS[role];
  return new LogError({
    code: 'unknown unit',
    file,
    column: header.text,
    expected: `a unit of ${kind}: ${unitChoices(kind)}`,
    found: quoted(unit),
    fact: `Column ${quoted(header.text)}: ${reasonAgainst(kind, unit)}`,
    mend: `Mend the header, or say what the numbers are: ${role}: channel('${header.text.slice(0, 60)}', '${kind}', '…').`,
  });
}

function reasonAgainst(kind: Kind, unit: string): string {
  try {
    findUnit(kind, unit);
  } catch (error) {
    if (error instanceof UnitError) return error.message;
    throw error;
  }
  return `${quoted(unit)} is not a unit of ${kind}; those are ${unitChoices(kind)}.`;
}

/** Whether a text is a unit of other kinds, or ambiguous among their units: then the column holds something else. */
export function isUnitElsewhere(kind: Kind, unit: string): boolean {
  if (kindsOfUnit(unit).length > 0) return true;
  return !isAmbiguous(kind, unit) && Object.values(CHANNEL_KINDS).some((other) => isAmbiguous(other, unit));
}

function isAmbiguous(kind: Kind, unit: string): boolean {
  try {
    findUnit(kind, unit);
    return false;
  } catch {
    return true;
  }
}
