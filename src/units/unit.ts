import { UnitError } from './errors.js';
import { kindOf, withArticle, type Kind } from './kinds.js';

/** SI value of a number in a unit; the unit is one of the kind's own names. */
export function toSi(kind: Kind, value: number, unit: string): number {
  const size = kindOf(kind).units[unit];
  if (size === undefined) throw unknownUnit(kind, unit);
  if (typeof size === 'number') return dividesEvenly(size) ? value / (1 / size) : value * size;
  // Dividing by 1.8 instead of multiplying by the rounded 5/9 keeps whole Fahrenheit degrees exact where they can be.
  return size[0] === 1 ? value + size[1] : (value + size[1]) / 1.8;
}

/** The number of an SI value in a unit; the unit is one of the kind's own names. */
export function fromSi(kind: Kind, si: number, unit: string): number {
  const size = kindOf(kind).units[unit];
  if (size === undefined) throw unknownUnit(kind, unit);
  if (typeof size === 'number') return dividesEvenly(size) ? si * (1 / size) : si / size;
  return size[0] === 1 ? si - size[1] : si * 1.8 - size[1];
}

/** Units that are a whole part of the SI unit, such as rpm: dividing by 60 rounds once where multiplying by 1/60 rounds twice. */
function dividesEvenly(size: number): boolean {
  return size < 1 && Number.isInteger(1 / size);
}

/** The kind's own name for a spelling of a unit, such as `lb·ft` for `lb-ft`. */
export function unitOf(kind: Kind, spelling: string): string {
  const found = findUnit(kind, spelling);
  if (found === undefined) throw unknownUnit(kind, spelling);
  return found;
}

/** Like {@link unitOf}, but undefined where the text is no unit of the kind. An ambiguous text is still an error. */
export function findUnit(kind: Kind, spelling: string): string | undefined {
  const { units, spellings, ambiguous } = kindOf(kind);
  if (typeof spelling !== 'string') return undefined;
  if (Object.hasOwn(units, spelling)) return spelling;
  if (Object.hasOwn(spellings, spelling)) return spellings[spelling];
  if (ambiguous && Object.hasOwn(ambiguous, spelling)) {
    throw new UnitError('ambiguous unit', `${kind}: "${spelling}" cannot be taken as it is: ${ambiguous[spelling]}.`);
  }
  if (spelling.length > LONGEST_UNIT) return undefined;
  const plain = plainSpelling(spelling);
  for (const unit in units) if (sameSpelling(unit, spelling, plain)) return unit;
  for (const other in spellings) if (sameSpelling(other, spelling, plain)) return spellings[other];
  for (const other in ambiguous) {
    if (sameSpelling(other, spelling, plain)) return findUnit(kind, other);
  }
  return undefined;
}

const LONGEST_UNIT = 40;

/** Spellings differ in dots, spaces, signs of power and degree; never in what a letter means. */
function plainSpelling(text: string): string {
  return text
    .replaceAll(/[\s·*.^-]/g, '')
    .replaceAll('²', '2')
    .replaceAll('³', '3')
    .replaceAll(/°|º|deg\.?(?=[CFRK])/gi, '');
}

function sameSpelling(unit: string, spelling: string, plain: string): boolean {
  const other = plainSpelling(unit);
  // A degree sign by itself is nothing but sign: without this any dot or dash would be a degree.
  if (other === '') return false;
  if (other === plain) return true;
  // `PSI`, `Psi`, `kpa` and `RPM` are common; but only the capital tells mega from milli, so it must be right there.
  const isTold = !unit.startsWith('M') && (isOneCase(spelling) || !spelling.startsWith('M'));
  return isTold && other.toLowerCase() === plain.toLowerCase();
}

function isOneCase(text: string): boolean {
  return text === text.toLowerCase() || text === text.toUpperCase();
}

function unknownUnit(kind: Kind, unit: unknown): UnitError {
  if (unit === undefined || unit === null) {
    return new UnitError('unknown unit', `${withArticle(kind)} needs a unit, got none. Write ${unitChoices(kind)}.`);
  }
  const text = typeof unit === 'string' ? `"${unit.slice(0, LONGEST_UNIT)}"` : `a value of type ${typeof unit}`;
  return new UnitError('unknown unit', `${text} is not a unit of ${withArticle(kind)}. Write ${unitChoices(kind)}.`);
}

/** The units of a kind as a choice: `'K' | '°C' | '°F'`. */
export function unitChoices(kind: Kind): string {
  return Object.keys(kindOf(kind).units)
    .map((unit) => `'${unit}'`)
    .join(' | ');
}
