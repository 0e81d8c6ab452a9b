import { version as libraryVersion } from './version.js';
import { compare, StatisticsError } from '../comparison/index.js';
import { optionsFrom } from '../comparison/options-record.js';
import {
  channel,
  CHANNEL_ROLES,
  LogError,
  type ChannelChoice,
  type DecimalSign,
  type ReadPullsOptions,
  type Separator,
  type SetUpOptions,
} from '../sweep/index.js';
import type { Day } from '../sweep/index.js';
import { CalculationError, isKind, UnitError, type UnitOf } from '../units/index.js';
import { counted, listed } from '../comparison/words.js';
import { labelText } from '../plot/words.js';
import { differencesBetween } from './record-differences.js';
import { digestOf, recordOf } from './record.js';
import { FORM, RECORD, type AnalysisRecord, type ComparisonInRecord } from './record-form.js';

/** What a repetition found to be otherwise. Stable: callers test it. */
export type RepetitionCode =
  | 'record changed'
  | 'other version'
  | 'log missing'
  | 'log changed'
  | 'log added'
  | 'read otherwise'
  | 'prepared otherwise'
  | 'order'
  | 'not compared'
  | 'number'
  | 'outcome';

/** One thing that is otherwise than recorded. */
export interface RepetitionFinding {
  readonly code: RepetitionCode;
  /** One sentence. */
  readonly message: string;
  /** Whether the repetition fails by it. Another version alone is no failure. */
  readonly fails: boolean;
}

/** Whether an analysis came out again. */
export interface Repetition {
  /** Whether inputs, outcome and numbers are those of the record, the numbers to rounding. */
  readonly agrees: boolean;
  readonly findings: readonly RepetitionFinding[];
  /** How many numbers were held against each other. */
  readonly numbers: number;
  /** The result in words, a line each. */
  toString(): string;
}

/**
 * A record from its text or from parsed JSON.
 *
 * @throws CalculationError if it is none, or of a form this version does not know.
 */
export function readRecord(text: string | object): AnalysisRecord {
  let data: unknown = text;
  if (typeof text === 'string') {
    try {
      data = JSON.parse(text);
    } catch {
      throw refusal('text in JSON', labelText(text, 40));
    }
  }
  const { record, form, comparisons, pulls, readings, library } = (data ?? {}) as Partial<AnalysisRecord>;
  if (record !== RECORD || ![comparisons, pulls, readings].every(Array.isArray) || typeof library?.version !== 'string')
    throw refusal('the record of an analysis, as recordText wrote it', 'something else');
  if (form !== FORM) throw refusal(`of form ${FORM}`, `form ${String(form)}`);
  return data as AnalysisRecord;
}

function refusal(need: string, got: string): CalculationError {
  return new CalculationError('readRecord', [{ code: 'kind', input: 'record', need, got, mend: '' }]);
}

/**
 * How the logs of a record were read, as options for reading them again: which columns were told, and which roles stayed empty.
 */
export function readingOptionsOf({ pulls, readings }: AnalysisRecord): ReadPullsOptions {
  const names = [...new Set(pulls.map(({ setUp }) => setUp))];
  const setups = names.map((setUp): readonly [string, SetUpOptions] => {
    const ways = [...new Set(pulls.filter((pull) => pull.setUp === setUp).map(({ reading }) => reading))].flatMap(
      (number) => readings[number - 1] ?? [],
    );
    const columns = ways.flatMap((way) => way.columns);
    const map: Record<string, ChannelChoice | false> = {};
    for (const role of CHANNEL_ROLES) if (!columns.some((column) => column.role === role)) map[role] = false;
    for (const { role, header, kind, unit, how } of columns) {
      if (how !== 'map' || !isKind(kind)) continue;
      map[role] = role === 'pull' ? channel(header) : channel(header, kind, unit as UnitOf<typeof kind>);
    }
    const same = <T>(of: (way: (typeof ways)[number]) => T): T | undefined =>
      new Set(ways.map(of)).size === 1 ? of(ways[0]!) : undefined;
    const own = {
      ...map,
      decimal: same(({ decimal }) => decimal as DecimalSign),
      separator: same(({ separator }) => separator as Separator),
    };
    return [setUp, own];
  });
  return { setups: Object.fromEntries(setups) };
}

/**
 * Makes the comparisons of a record again, from its logs and with its options, and says whether the same comes out.
 *
 * @param record - as {@link recordOf} made it or {@link readRecord} read it.
 * @param day - the same logs, read again; for a record of prepared pulls, prepared again.
 * @param version - of the library that repeats; its own when left out.
 * @throws CalculationError if the record is none.
 * @example
 * const record = readRecord(await readFile('tall-core.record.json', 'utf8'));
 * const again = repeatAnalysis(record, await readPulls('my-day', readingOptionsOf(record)));
 * again.agrees //=> true
 */
export function repeatAnalysis(record: AnalysisRecord, day: Day, version: string = libraryVersion): Repetition {
  const recorded = readRecord(record);
  const sameVersion = recorded.library.version === version;
  const findings: RepetitionFinding[] = [];
  const find = (code: RepetitionCode, message: string, fails = true): void => {
    findings.push({ code, message, fails });
  };
  if (digestOf(recorded) !== recorded.sha256)
    find('record changed', 'The record itself was changed since it was written: its SHA-256 is another.');
  if (!sameVersion)
    find('other version', `Recorded by coldside ${recorded.library.version}, repeated by ${version}.`, false);
  findings.push(...inputFindings(recorded, day));
  let numbers = 0;
  for (const comparison of recorded.comparisons) {
    const name = `${comparison.candidate} against ${comparison.baseline}`;
    const again = madeAgain(comparison, day, version);
    if (typeof again === 'string') {
      find('not compared', `${name} cannot be compared again: ${again}`);
      continue;
    }
    const found = differencesBetween(comparison, again, { texts: sameVersion });
    numbers += found.numbers;
    for (const { path, was, is, isNumber } of found.differences)
      find(isNumber ? 'number' : 'outcome', `${name}, ${path}: recorded ${was}, now ${is}.`);
  }
  const agrees = findings.every(({ fails }) => !fails);
  return { agrees, findings, numbers, toString: () => textOf(recorded, agrees, findings, numbers) };
}

function madeAgain(
  { baseline, candidate, options }: ComparisonInRecord,
  day: Day,
  version: string,
): ComparisonInRecord | string {
  try {
    const again = compare(day.setup(baseline), day.setup(candidate), optionsFrom(options));
    return recordOf([again], { day, version }).comparisons[0]!;
  } catch (error) {
    if ([CalculationError, LogError, StatisticsError, UnitError].some((kind) => error instanceof kind))
      return (error as Error).message;
    throw error;
  }
}

/** Whether the logs are those of the record, and were read and prepared as then. */
function inputFindings(record: AnalysisRecord, day: Day): RepetitionFinding[] {
  const findings: RepetitionFinding[] = [];
  const now = recordOf([], { day, setUps: record.pulls.map(({ setUp }) => setUp) });
  const find = (code: RepetitionCode, message: string): void => {
    findings.push({ code, message, fails: true });
  };
  if (record.pulls.length === 0)
    find('log missing', 'The record names no logs, so nothing says that these are the same.');
  const same = (a: { setUp: string; pull: string }, b: { setUp: string; pull: string }): boolean =>
    a.setUp === b.setUp && a.pull === b.pull;
  for (const was of record.pulls) {
    const name = `${labelText(was.setUp)}/${labelText(was.pull)}`;
    const is = now.pulls.find((pull) => same(pull, was));
    if (is === undefined) {
      find('log missing', `${name} is in the record, and was not found or not read.`);
      continue;
    }
    if (is.sha256 !== was.sha256) find('log changed', `${name} was changed: its SHA-256 is another than recorded.`);
    if (JSON.stringify(now.readings[is.reading - 1]) !== JSON.stringify(record.readings[was.reading - 1]))
      find('read otherwise', `${name} was read otherwise: ${readingsApart(record, was.reading, now, is.reading)}.`);
    if (JSON.stringify(is.preparations) !== JSON.stringify(was.preparations)) {
      const steps = was.preparations.map(({ message }) => message);
      find(
        'prepared otherwise',
        `${name} was prepared otherwise. Recorded: ${steps.length === 0 ? 'nothing done' : steps.join(' ')}`,
      );
    }
  }
  const added = now.pulls.filter((pull) => !record.pulls.some((was) => same(was, pull)));
  if (added.length > 0 && record.pulls.length > 0)
    find(
      'log added',
      `Not in the record: ${listed(added.map(({ setUp, pull }) => `${labelText(setUp)}/${labelText(pull)}`))}.`,
    );
  if (findings.length === 0 && JSON.stringify(now.order?.pulls) !== JSON.stringify(record.order?.pulls))
    find('order', 'The pulls stand in another order through the day than recorded.');
  return findings;
}

function readingsApart(before: AnalysisRecord, was: number, after: AnalysisRecord, is: number): string {
  const columns = (record: AnalysisRecord, number: number): string[] =>
    (record.readings[number - 1]?.columns ?? []).map(
      ({ role, header, kind, unit }) => `${role} from “${labelText(header)}” as ${kind} in ${unit}`,
    );
  const [then, now] = [columns(before, was), columns(after, is)];
  const gone = then.filter((one) => !now.includes(one));
  const come = now.filter((one) => !then.includes(one));
  const parts = [
    ...(gone.length === 0 ? [] : [`recorded ${listed(gone)}`]),
    ...(come.length === 0 ? [] : [`now ${listed(come)}`]),
  ];
  return parts.length === 0 ? 'the same columns, found or written another way' : parts.join('; ');
}

function textOf(
  { comparisons, pulls }: AnalysisRecord,
  agrees: boolean,
  findings: readonly RepetitionFinding[],
  numbers: number,
): string {
  const what = `${counted(comparisons.length, 'comparison')} of ${counted(pulls.length, 'pull')}, ${counted(numbers, 'number')}`;
  return [
    agrees ? `The analysis repeats: ${what}, all as recorded.` : `The analysis does not repeat: ${what} looked at.`,
    ...findings.map(({ message }) => `  ${message}`),
  ].join('\n');
}
