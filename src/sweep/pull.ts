import type { Kind, Quantity } from '../units/index.js';
import type { Channels, ChannelRole, Role } from './roles.js';
import { roleWords } from './roles.js';
import type { Dialect } from './table.js';
import type { SaidCorrection } from './trade-words.js';
import { counted, figure, quoted } from './words-for-people.js';

/** From which column a channel was taken, and who said so. */
export interface ColumnOrigin {
  readonly role: Role;
  /** The header as in the log. */
  readonly header: string;
  /** Number of the column, from 1. */
  readonly column: number;
  readonly kind: Kind;
  /** The unit its numbers were read in. */
  readonly unit: string;
  /** Whether the channel map named the column, or its header was understood. */
  readonly how: 'map' | 'guess';
  /** Where the unit stands: a name that is a unit (`RPM`) is the one place where a unit is taken without being written as one. */
  readonly unitFrom: 'header' | 'units row' | 'map' | 'name' | 'time of day' | 'none';
  /** What the header says of a correction to a standard atmosphere; undefined where it says nothing. */
  readonly correction: SaidCorrection | undefined;
}

/** A column that plays no part. */
export interface Unused {
  readonly header: string;
  readonly column: number;
  readonly why: string;
}

/** What a question is about. Stable: callers test it. */
export type QuestionCode =
  | 'several columns'
  | 'named alike'
  | 'gauge or absolute'
  | 'before or after the compressor'
  | 'lambda or air-fuel ratio'
  | 'spark before or after top dead centre'
  | 'already corrected'
  | 'day or month'
  | 'cannot be read'
  | 'rows outside pulls';

/** Something about a pull that only its owner can say. Reading went on with the guess that the message names. */
export interface Question {
  readonly code: QuestionCode;
  readonly role: Role | undefined;
  readonly message: string;
  /** What to write to settle it. */
  readonly mend: string;
}

/** What a preparation did. Stable: callers test it. */
export type PreparationCode =
  'rows kept' | 'outliers' | 'held readings' | 'delay' | 'sensor lag' | 'inertia' | 'settled part';

/** One thing that was done to a pull after it was read, for the record. */
export interface Preparation {
  readonly code: PreparationCode;
  /** The channel it was done to; undefined for the whole pull. */
  readonly role: ChannelRole | undefined;
  /** Readings changed, or taken away. */
  readonly readings: number;
  /** Standard deviation of a reading over what it was before, where that is known. */
  readonly noiseFactor: number | undefined;
  /** All of it in words. */
  readonly message: string;
}

/** One recorded pull: its channels as columns of equal length, and how they were read. Plain data; it survives `structuredClone`. */
export interface Pull {
  /** The file's name without its folder, and the pull's number where a file holds several: one name for each pull of a set-up. */
  readonly name: string;
  /** The file as it was given. */
  readonly file: string;
  readonly setup: string | undefined;
  /** What the pull column says, where there is one. */
  readonly label: string | undefined;
  readonly channels: Channels;
  /** What each channel was taken from, and which column numbers the pulls of the file. */
  readonly sources: { readonly [R in Role]?: ColumnOrigin };
  readonly unused: readonly Unused[];
  readonly questions: readonly Question[];
  /** What was done to it since it was read, in order. */
  readonly preparations: readonly Preparation[];
  readonly rows: number;
  /** Rows that say nothing about the engine's speed; they are kept, and no grid can use them. */
  readonly rowsWithoutEngineSpeed: number;
  /** Cells of the channels without a reading. */
  readonly blankCells: number;
  /** First and last line of the pull in its file. */
  readonly lines: readonly [first: number, last: number];
  /** Time of day at the first row, where a clock was logged. */
  readonly startClock: Quantity<'time'> | undefined;
  /** The day as `2024-05-04`, where the clock has one. */
  readonly date: string | undefined;
  readonly dialect: Dialect;
  /** SHA-256 of the file; of the pull's own rows where the log was read as a stream. */
  readonly hash: string;
  /** What was read and as what, in words. */
  toString(): string;
}

type PullParts = Omit<Pull, 'toString' | 'preparations'> & { readonly preparations?: readonly Preparation[] };

const NONE: readonly Preparation[] = [];
const INSPECT = Symbol.for('nodejs.util.inspect.custom');

class PullValue implements Pull {
  readonly name;
  readonly file;
  readonly setup;
  readonly label;
  readonly channels;
  readonly sources;
  readonly unused;
  readonly questions;
  readonly preparations;
  readonly rows;
  readonly rowsWithoutEngineSpeed;
  readonly blankCells;
  readonly lines;
  readonly startClock;
  readonly date;
  readonly dialect;
  readonly hash;

  constructor(parts: PullParts) {
    this.name = parts.name;
    this.file = parts.file;
    this.setup = parts.setup;
    this.label = parts.label;
    this.channels = Object.freeze(parts.channels);
    this.sources = Object.freeze(parts.sources);
    this.unused = parts.unused;
    this.questions = parts.questions;
    this.preparations = parts.preparations ?? NONE;
    this.rows = parts.rows;
    this.rowsWithoutEngineSpeed = parts.rowsWithoutEngineSpeed;
    this.blankCells = parts.blankCells;
    this.lines = parts.lines;
    this.startClock = parts.startClock;
    this.date = parts.date;
    this.dialect = parts.dialect;
    this.hash = parts.hash;
    Object.freeze(this);
  }

  toString(): string {
    return describePull(this);
  }

  /** @internal */
  [INSPECT](): string {
    return this.toString();
  }
}

/** @internal A pull from its parts. */
export function pullOf(parts: PullParts): Pull {
  return new PullValue(parts);
}

function describePull(pull: Pull): string {
  const { engineSpeed } = pull.channels;
  const speeds = engineSpeed ? rangeOf(engineSpeed.si).map((si) => figure(si * 60)) : [];
  const range = speeds.length === 2 ? `, ${speeds.join(' to ')} rpm` : '';
  const missing = pull.blankCells > 0 ? `, ${counted(pull.blankCells, 'blank cell')}` : '';
  const lost = pull.rowsWithoutEngineSpeed > 0 ? `, ${pull.rowsWithoutEngineSpeed} without engine speed` : '';
  const done = pull.preparations.map(({ message }) => `\n  DONE ${message}`).join('');
  const asked = pull.questions.map(({ message, mend }) => `\n  ASK ${message} ${mend}`).join('');
  const name = pull.label === undefined ? pull.file : `${pull.file}, pull ${pull.label}`;
  return `${name}: ${counted(pull.rows, 'row')}${range}${missing}${lost}\n  ${describeSources(pull)}${done}${asked}`;
}

function rangeOf(si: Float64Array): number[] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of si) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return low > high ? [] : [low, high];
}

const SEPARATOR_WORDS = { ',': '', ';': '', '\t': 'tabs; ', '|': 'bars; ' } as const;

/** Channels whose unit or kind is most often taken wrongly, in the order in which a reader should check them. */
const FIRST_TO_CHECK: readonly ChannelRole[] = [
  'torque',
  'power',
  'boost',
  'manifoldPressure',
  'chargeTemperature',
  'intakeTemperature',
  'airFlow',
  'lambda',
  'airFuelRatio',
];

/** How a pull was read, in words: what each channel was taken from, and what was left. In brief, only what is best checked. */
export function describeSources(
  { sources, dialect, unused }: Pick<Pull, 'sources' | 'dialect' | 'unused'>,
  isBrief = false,
): string {
  const decimal = dialect.decimal === ',' ? 'decimal comma; ' : '';
  const row = dialect.hasUnitsRow ? 'units in a row of their own; ' : '';
  const all = Object.values(sources);
  const brief = FIRST_TO_CHECK.flatMap((role) => sources[role] ?? []);
  const taken = (isBrief ? brief : all).map((origin) => describeOrigin(origin));
  const rest = isBrief && brief.length < all.length ? [`and ${all.length - brief.length} more`] : [];
  const names = unused.slice(0, isBrief ? 4 : 12).map(({ header }) => quoted(header));
  const more = unused.length > names.length ? ` and ${unused.length - names.length} more` : '';
  const left = unused.length === 0 ? '' : `; not used: ${names.join(', ')}${more}`;
  return `${SEPARATOR_WORDS[dialect.separator]}${decimal}${row}${[...taken, ...rest].join(', ')}${left}`;
}

function describeOrigin({ role, header, kind, unit, unitFrom, how }: ColumnOrigin): string {
  const isPressure = kind === 'gauge pressure' || (kind === 'absolute pressure' && role !== 'barometer');
  const as = isPressure ? ` as ${kind}` : '';
  const isUnwritten = unitFrom === 'name' && !header.toLowerCase().includes(unit.toLowerCase());
  const inUnit = unitFrom === 'map' || unitFrom === 'units row' || isUnwritten ? ` in ${unit}` : '';
  const day = unitFrom === 'time of day' ? ' as time of day' : '';
  return `${roleWords(role)} ${quoted(header)}${as}${inUnit}${day}${how === 'map' ? ' as told' : ''}`;
}
