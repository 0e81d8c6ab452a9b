import { findUnit, type Kind } from '../units/index.js';
import { CHANNEL_KINDS } from './roles.js';

/** A column's header taken apart. */
export interface Header {
  /** As in the log. */
  readonly text: string;
  /** Without the unit. */
  readonly name: string;
  /** The unit as written, without its brackets and without `abs` or `gauge`. */
  readonly unit: string | undefined;
  /** Whether the unit stands in brackets, so that a text which is no unit is still meant as one. */
  readonly isBracketed: boolean;
  /** What header or unit say about the zero of a pressure. */
  readonly zero: PressureZero | undefined;
}

/** Whether a pressure counts from vacuum or from the surrounding air. */
export type PressureZero = 'absolute' | 'gauge';

const KINDS_OF_CHANNELS: readonly Kind[] = [
  ...new Set<Kind>([...Object.values(CHANNEL_KINDS), 'humidity ratio', 'ratio']),
];
const LONGEST_UNIT = 16;
const MOST_WORDS = 8;

/** Takes a header apart: `Torque (lb-ft)`, `MAP [kPa]`, `Boost, psi`, `manifold_pressure_kPa_abs`, `Air mass flow g/s`. */
export function readHeader(text: string): Header {
  const groups = bracketGroups(text);
  const spoken = groups.filter(({ inside }) => isUnit(inside));
  const group = spoken[spoken.length - 1] ?? groups[groups.length - 1];
  if (group) {
    const rest = `${text.slice(0, group.from)} ${text.slice(group.to)}`.replaceAll(/\s+/g, ' ').trim();
    if (spoken.length > 0) return headerOf(text, rest, group.inside, true);
    const bare = trailingUnit(text);
    return bare ? headerOf(text, bare.name, bare.unit, false) : headerOf(text, rest, group.inside.trim(), true);
  }
  const comma = text.lastIndexOf(',');
  if (comma > 0 && isUnit(text.slice(comma + 1)))
    return headerOf(text, text.slice(0, comma).trim(), text.slice(comma + 1), false);
  const bare = trailingUnit(text);
  return bare ? headerOf(text, bare.name, bare.unit, false) : headerOf(text, text, undefined, false);
}

/** A header that has its unit elsewhere, such as in a row of units. */
export function withUnit(header: Header, unit: string): Header {
  const { name, text } = header;
  return headerOf(text, name, unit.replace(/^\s*[[(](.*)[\])]\s*$/, '$1'), true);
}

function headerOf(text: string, name: string, written: string | undefined, isBracketed: boolean): Header {
  const said = written === undefined ? undefined : splitZero(written.trim());
  const unit = said === undefined || isNoUnit(said.unit) ? undefined : said.unit;
  return { text, name, unit, isBracketed, zero: said?.zero ?? zeroInWords(name) };
}

/** Marks loggers put where there is no unit. */
function isNoUnit(text: string): boolean {
  return ['', '-', '--', '–', '—', 'none', 'n/a'].includes(text.toLowerCase());
}

interface Group {
  readonly inside: string;
  readonly from: number;
  readonly to: number;
}

/** Outermost pairs of brackets. */
function bracketGroups(text: string): Group[] {
  const groups: Group[] = [];
  let depth = 0;
  let from = 0;
  for (let at = 0; at < text.length; at++) {
    if ('([{'.includes(text[at]!) && depth++ === 0) from = at;
    else if (')]}'.includes(text[at]!) && depth > 0 && --depth === 0)
      groups.push({ inside: text.slice(from + 1, at), from, to: at + 1 });
  }
  return groups;
}

/** A unit at the end of a name, after spaces or underscores; `g_s` is g/s there, because names of variables have no slash. */
function trailingUnit(text: string): { readonly name: string; readonly unit: string } | undefined {
  const words = text.split(/[\s_]+/).filter((word) => word !== '');
  if (words.length < 2 || words.length > MOST_WORDS + 4) return undefined;
  const last = words[words.length - 1]!;
  const zero = zeroOfWord(last);
  const end = zero === undefined ? words.length : words.length - 1;
  for (let count = Math.min(3, end - 1); count >= 1; count--) {
    const tail = words.slice(end - count, end);
    const unit = [tail.join(' '), tail.join('/'), tail.join('/').replace('/per/', '/')].map(plainWords).find(isUnit);
    // A bare figure numbers a sensor; only brackets make it a unit.
    if (unit === undefined || /^\d+$/.test(unit)) continue;
    return { name: words.slice(0, end - count).join(' '), unit: zero === undefined ? unit : `${unit} ${last}` };
  }
  return undefined;
}

function plainWords(unit: string): string {
  return unit === 'pct' || unit === 'percent' ? '%' : unit;
}

function isUnit(text: string): boolean {
  const unit = splitZero(text.trim()).unit;
  return unit !== '' && unit.length <= LONGEST_UNIT && KINDS_OF_CHANNELS.some((kind) => isUnitOf(kind, unit));
}

/** Whether a text is a unit of a kind; one that is ambiguous there is not. */
export function isUnitOf(kind: Kind, unit: string): boolean {
  try {
    return findUnit(kind, unit) !== undefined;
  } catch {
    return false;
  }
}

/** `kPa abs`, `bar(g)`, `psia`: the unit and the zero it counts from. */
function splitZero(text: string): { readonly unit: string; readonly zero: PressureZero | undefined } {
  if (text.length > 40) return { unit: text, zero: undefined };
  const spelled = /^(.*\S)[\s_]*[\s_(,](abs|absolute|a|gauge|gage|g|rel|relative)\.?\)?$/i.exec(text);
  const found = spelled ?? /^(psi|bar|kPa|hPa|mbar)(a|g|abs)$/i.exec(text);
  const isPressure = found?.[1] !== undefined && isUnitOf('pressure difference', found[1].trim());
  return isPressure
    ? { unit: found[1]!.trim(), zero: zeroOfWord(found[2]!) ?? 'gauge' }
    : { unit: text, zero: undefined };
}

function zeroOfWord(word: string): PressureZero | undefined {
  if (/^(abs|absolute|a)$/i.test(word)) return 'absolute';
  return /^(gauge|gage|g|rel|relative)$/i.test(word) ? 'gauge' : undefined;
}

function zeroInWords(name: string): PressureZero | undefined {
  if (/(^|[^a-z])(abs|absolute)([^a-z]|$)/i.test(name)) return 'absolute';
  return /(^|[^a-z])(gauge|gage)([^a-z]|$)/i.test(name) ? 'gauge' : undefined;
}
