import { kindsOfUnit } from '../units/index.js';
import { chosenColumn, type ChannelChoice, type ChannelMap } from './channel.js';
import { LogError } from './errors.js';
import {
  isUnitElsewhere,
  needsNoUnit,
  readHeaders,
  sizeOf,
  unitFor,
  unitsDisagree,
  unreadable,
} from './column-units.js';
import { isUnitOf, type Header } from './header.js';
import type { ColumnOrigin, Question, Unused } from './pull.js';
import { CHANNEL_KINDS, CHANNEL_ROLES, roleWords, type ChannelRole, type Role } from './roles.js';
import type { Table } from './table.js';
import { readingsOf, saidCorrection, withZero, type Reading } from './trade-words.js';
import { withoutUnits } from './missing-units.js';
import { counted, quoted } from './words-for-people.js';

/** A column with the part it plays. */
export interface Assignment extends ColumnOrigin {
  /** Place of the column, from 0. */
  readonly at: number;
  /** Whether the words of its header often mean something else too. */
  readonly isDoubtful: boolean;
  /** Whether its header says from where its pressure counts. */
  readonly saysZero: boolean;
}

/** Which column plays which part, and what was not used. */
export interface Assignments {
  readonly channels: ReadonlyMap<ChannelRole, Assignment>;
  readonly pull: ColumnOrigin | undefined;
  readonly unused: readonly Unused[];
  readonly questions: readonly Question[];
}

/** Settles what each column of a log is: by the map where it speaks, otherwise by the trade's words. */
export function assignColumns(table: Table, map: ChannelMap): Assignments {
  const { file } = table;
  const headers = readHeaders(table);
  const mapped = Object.entries(map).filter(([, choice]) => choice !== undefined) as [Role, ChannelChoice | false][];
  const taken = new Map<number, Assignment>();
  for (const [role, choice] of mapped) {
    if (choice === false) continue;
    const at = chosenColumn(choice, headers, file);
    const other = taken.get(at);
    if (other) {
      throw new LogError({
        code: 'one column for two',
        file,
        column: headers[at]!.text,
        expected: 'a column of its own for each channel',
        found: `${roleWords(other.role)} and ${roleWords(role)}`,
        fact: `The channel map gives column ${quoted(headers[at]!.text)} to ${roleWords(other.role)} and to ${roleWords(role)}.`,
      });
    }
    taken.set(at, chosen(role, choice, headers[at]!, at, table));
  }
  const spoken = new Set(mapped.map(([role]) => role));
  const { guesses, unused, unreadableColumns } = guessColumns(headers, spoken, (at) => taken.has(at), table);
  const { winners, losers, questions } = bestOf(guesses);
  const all = [...taken.values(), ...winners];
  const bare = all.filter(({ unit, role }) => unit === '' && role !== 'pull');
  if (bare.length > 0) throw withoutUnits(bare, table);
  const channels = new Map(all.flatMap((each) => (each.role === 'pull' ? [] : [[each.role, each] as const])));
  if (!channels.has('engineSpeed')) throw noEngineSpeed(headers, file);
  const order = new Map(
    CHANNEL_ROLES.flatMap((role) => (channels.has(role) ? [[role, channels.get(role)!] as const] : [])),
  );
  const rest = [...unused, ...losers].sort((a, b) => a.column - b.column);
  return {
    channels: order,
    pull: all.find(({ role }) => role === 'pull'),
    unused: rest,
    questions: [...questions, ...unreadableColumns.map(leftOut), ...namedAlike(headers)],
  };
}

/** A column the map names. Its header may leave the unit out, but not contradict the map. */
function chosen(role: Role, choice: ChannelChoice, header: Header, at: number, table: Table): Assignment {
  const base = { role, at, header, how: 'map', isDoubtful: false, saysZero: choice.kind !== undefined } as const;
  if (role === 'pull') return assignment({ ...base, kind: 'ratio', unit: '1', unitFrom: 'none' });
  const kind = CHANNEL_KINDS[role];
  const said = header.unit;
  const zeroSaid = header.zero !== undefined && withZero(role, header.zero) !== role;
  const isUnit = said !== undefined && kindsOfUnit(said).length > 0;
  if (choice.unit !== undefined) {
    const agrees =
      said === undefined || !isUnit || (isUnitOf(kind, said) && sizeOf(kind, said) === sizeOf(kind, choice.unit));
    if (!agrees || zeroSaid) throw unitsDisagree(role, choice.unit, header, table);
    return assignment({ ...base, kind, unit: choice.unit, unitFrom: 'map' });
  }
  if (zeroSaid || (isUnit && !isUnitOf(kind, said))) throw unitsDisagree(role, '', header, table);
  const unit = unitFor(role, header, undefined, table, at);
  return assignment({ ...base, kind, ...unit });
}

interface Guesses {
  readonly guesses: readonly Guess[];
  readonly unused: readonly Unused[];
  readonly unreadableColumns: readonly Unreadable[];
}

/** A column that would be a channel if its cells said anything. */
interface Unreadable extends Unused {
  readonly role: ChannelRole;
  readonly example: string;
}

/** Without these a pull says nothing, so a cell that cannot be read is an error there. */
const NEEDED: readonly Role[] = ['engineSpeed', 'torque', 'power', 'airFlow', 'pull'];

function leftOut({ role, header, example }: Unreadable): Question {
  return {
    code: 'cannot be read',
    role,
    message: `${quoted(header)} would be ${roleWords(role)}, but ${quoted(example)} is ${CHANNEL_KINDS[role] === 'time' ? 'no time' : 'no number'} that can be read; the column is left out.`,
    mend:
      CHANNEL_KINDS[role] === 'time'
        ? 'Write times as 2026-05-04 10:00:00, or as seconds.'
        : 'Leave cells blank without a reading.',
  };
}

interface Guess extends Assignment {
  readonly reading: Reading;
}

function guessColumns(
  headers: readonly Header[],
  spoken: ReadonlySet<Role>,
  isTaken: (at: number) => boolean,
  table: Table,
): Guesses {
  const guesses: Guess[] = [];
  const unused: Unused[] = [];
  const unreadableColumns: Unreadable[] = [];
  headers.forEach((header, at) => {
    if (isTaken(at) || header.text === '') return;
    const result = guessColumn(header, spoken, table, at);
    if (typeof result === 'string') unused.push({ header: header.text, column: at + 1, why: result });
    else if ('example' in result) {
      unreadableColumns.push(result);
      unused.push(result);
    } else guesses.push(result);
  });
  return { guesses, unused, unreadableColumns };
}

/** The likeliest role of a column whose unit allows it, or why there is none. */
function guessColumn(header: Header, spoken: ReadonlySet<Role>, table: Table, at: number): Guess | Unreadable | string {
  let why = 'its name says nothing that is used here';
  // Without brackets, what looks like a unit may be a part of the name.
  const ways =
    header.isBracketed || header.unit === undefined
      ? [header]
      : [header, { ...header, name: header.text, unit: undefined }];
  for (const way of ways) {
    for (const reading of readingsOf(way.name)) {
      const role = withZero(reading.role, way.zero);
      if (spoken.has(role)) {
        why = `${roleWords(role)} is settled by the channel map`;
        continue;
      }
      const against = whyNot(role, reading, way);
      if (against !== undefined) {
        why = against;
        continue;
      }
      const isDoubtful = reading.doubt > 0;
      const base = { role, at, header: way, how: 'guess', isDoubtful, saysZero: way.zero !== undefined } as const;
      if (role === 'pull') return { ...assignment({ ...base, kind: 'ratio', unit: '1', unitFrom: 'none' }), reading };
      const kind = CHANNEL_KINDS[role];
      const example = NEEDED.includes(role) ? undefined : unreadable(table, at, kind);
      if (example !== undefined) {
        return { role, header: header.text, column: at + 1, why: `${quoted(example)} cannot be read`, example };
      }
      return { ...assignment({ ...base, kind, ...unitFor(role, way, reading.unit, table, at) }), reading };
    }
  }
  return why;
}

/** Pressures that stand above the barometer; one from vacuum under their name is left alone. */
const ONLY_GAUGE: readonly Role[] = ['fuelPressure', 'compressorOutletPressure'];

function whyNot(role: Role, reading: Reading, { unit, zero }: Header): string | undefined {
  if (role === 'pull') return undefined;
  const kind = CHANNEL_KINDS[role];
  if (unit === undefined) return reading.isOnlyWithUnit ? `without a unit it could be anything` : undefined;
  if (isUnitOf(kind, unit)) {
    const isOtherZero =
      (role === 'barometer' && zero === 'gauge') || (ONLY_GAUGE.includes(role) && zero === 'absolute');
    return isOtherZero ? `it is ${zero}, and ${roleWords(role)} is not` : undefined;
  }
  if (reading.isOnlyWithUnit || (isUnitElsewhere(kind, unit) && !(needsNoUnit(kind) && /^\d$/.test(unit)))) {
    return `it is in ${unit}, which is no unit of ${kind}`;
  }
  return undefined;
}

interface Best {
  readonly winners: readonly Assignment[];
  readonly losers: readonly Unused[];
  readonly questions: readonly Question[];
}

/** One column for each role: the one whose words leave least doubt, and the first of equals, which is asked about. */
function bestOf(guesses: readonly Guess[]): Best {
  const winners: Guess[] = [];
  const losers: Unused[] = [];
  const questions: Question[] = [];
  for (const role of new Set(guesses.map((guess) => guess.role))) {
    const rivals = guesses.filter((guess) => guess.role === role);
    rivals.sort((a, b) => a.reading.doubt - b.reading.doubt || a.reading.extras - b.reading.extras || a.at - b.at);
    const [best, ...others] = rivals as [Guess, ...Guess[]];
    winners.push(best);
    for (const other of others) {
      losers.push({
        header: other.header,
        column: other.column,
        why: `${roleWords(role)} is taken from ${quoted(best.header)}`,
      });
    }
    const equals = others.filter(({ reading }) => reading.doubt === best.reading.doubt);
    if (equals.length === 0) continue;
    const names = equals.map(({ header, column }) => `${quoted(header)} (column ${column})`).join(', ');
    questions.push({
      code: 'several columns',
      role,
      message: `${roleWords(role)} is taken from ${quoted(best.header)} (column ${best.column}), but could be ${names}.`,
      mend: `Say which: ${role}: channel(${best.column}).`,
    });
  }
  return { winners, losers, questions };
}

/** Columns of one name are told, whether or not they are used: a logger that writes a name twice often means two things. */
function namedAlike(headers: readonly Header[]): Question[] {
  const places = new Map<string, number[]>();
  headers.forEach(({ text }, at) => {
    if (text !== '') places.set(text, [...(places.get(text) ?? []), at + 1]);
  });
  return [...places].flatMap(([text, columns]): Question[] => {
    if (columns.length === 1) return [];
    const message = `${counted(columns.length, 'column')} are called ${quoted(text)}: numbers ${columns.slice(0, 12).join(', ')}.`;
    return [
      {
        code: 'named alike',
        role: undefined,
        message,
        mend: 'Name a column by its number where it matters: channel(3).',
      },
    ];
  });
}

function noEngineSpeed(headers: readonly Header[], file: string): LogError {
  const names = headers.slice(0, 12).map(({ text }) => quoted(text));
  const more = headers.length > 12 ? ` and ${headers.length - 12} more` : '';
  return new LogError({
    code: 'no engine speed',
    file,
    expected: 'a column of engine speed',
    found: names.join(', '),
    fact: `No column is known to be engine speed. There are: ${names.join(', ')}${more}.`,
    mend: "Say which it is: engineSpeed: channel('…', 'rotational speed', 'rpm').",
  });
}

interface Parts extends Pick<
  Assignment,
  'role' | 'at' | 'how' | 'kind' | 'unit' | 'unitFrom' | 'isDoubtful' | 'saysZero'
> {
  readonly header: Header;
}

function assignment({ header, at, ...parts }: Parts): Assignment {
  return { ...parts, at, header: header.text, column: at + 1, correction: saidCorrection(header.text) };
}
