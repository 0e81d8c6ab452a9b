import { CalculationError, unitOf, type Kind, type Problem, type UnitOf } from '../units/index.js';
import { LogError } from './errors.js';
import { CHANNEL_KINDS, CHANNEL_ROLES, isRole, type ChannelKind, type ChannelRole } from './roles.js';
import { listed, quoted } from './words-for-people.js';

/** Which column of a log a channel is, and what its numbers are. */
export interface ChannelChoice<K extends Kind = Kind> {
  /** The header as in the log, with or without its unit; or the number of the column, from 1. */
  readonly header: string | number;
  readonly kind?: K;
  readonly unit?: string;
}

/** Which columns play which part. A role that is left out is guessed and reported; `false` leaves it empty. */
export type ChannelMap = { readonly [R in ChannelRole]?: ChannelChoice<ChannelKind<R>> | false } & {
  /** The column that numbers the pulls of one file. */
  readonly pull?: ChannelChoice<never> | false;
};

/**
 * Says which column a channel is and, where the log does not, the kind and unit of its numbers.
 *
 * @param header The header as in the log, with or without its unit; or the number of the column, from 1.
 * @throws UnitError if the unit is none of that kind.
 * @example
 * readLog(text, { channels: { boost: channel('Boost', 'gauge pressure', 'kPa') } })
 */
export function channel(header: string | number): ChannelChoice<never>;
export function channel<K extends Kind>(header: string | number, kind: K, unit?: UnitOf<K>): ChannelChoice<K>;
export function channel<K extends Kind>(header: string | number, kind?: K, unit?: UnitOf<K>): ChannelChoice<K> {
  if (kind === undefined) return { header };
  return unit === undefined ? { header, kind } : { header, kind, unit: unitOf(kind, unit) };
}

/** A map from outside is checked before any log is, so that a slip in it is not reported once for every file. */
export function checkChannelMap(map: ChannelMap, caller: string): void {
  const problems = Object.entries(map).flatMap(([role, choice]): Problem[] => {
    const input = `channels.${role}`;
    if (!isRole(role)) {
      const need = 'a channel that a pull can have';
      return [
        { code: 'unknown', input, need, got: quoted(role), mend: `There are: ${CHANNEL_ROLES.join(', ')}, pull.` },
      ];
    }
    if (choice === undefined || choice === false) return [];
    if (typeof choice !== 'object' || choice === null || !['string', 'number'].includes(typeof choice.header)) {
      return [
        { code: 'kind', input, need: 'made by channel(header, kind, unit), or false', got: typeof choice, mend: '' },
      ];
    }
    const needed = role === 'pull' ? undefined : CHANNEL_KINDS[role];
    if (choice.kind === undefined || choice.kind === needed) return [];
    const other = CHANNEL_ROLES.find((each) => CHANNEL_KINDS[each] === choice.kind && isPressureAtManifold(each));
    const mend = other && role !== 'pull' && isPressureAtManifold(role) ? `Give it as ${other}.` : '';
    return [{ code: 'kind', input, need: needed ?? 'a column without a kind', got: choice.kind, mend }];
  });
  if (problems.length > 0) throw new CalculationError(caller, problems);
}

const isPressureAtManifold = (role: ChannelRole): boolean => role === 'boost' || role === 'manifoldPressure';

/** The column a choice means. */
export function chosenColumn(choice: ChannelChoice, header: readonly HeaderName[], file: string): number {
  const { header: wanted } = choice;
  if (typeof wanted === 'number') {
    if (Number.isInteger(wanted) && wanted >= 1 && wanted <= header.length) return wanted - 1;
    throw noSuchColumn(`column ${wanted}`, header, file);
  }
  const plain = (text: string): string => text.trim().replaceAll(/\s+/g, ' ').toLowerCase();
  const ways: ((each: HeaderName) => boolean)[] = [
    ({ text }) => text === wanted,
    ({ name }) => name === wanted,
    ({ text }) => plain(text) === plain(wanted),
    ({ name }) => plain(name) === plain(wanted),
  ];
  for (const isMeant of ways) {
    const found = header.flatMap((each, at) => (isMeant(each) ? [at] : []));
    if (found.length === 1) return found[0]!;
    if (found.length > 1) {
      throw new LogError({
        code: 'several columns',
        file,
        column: wanted,
        expected: `one column called ${quoted(wanted)}`,
        found: `columns ${found.map((at) => at + 1).join(' and ')}`,
        fact: `${found.length} columns are called ${quoted(wanted)}: numbers ${found.map((at) => at + 1).join(' and ')}.`,
        mend: `Say which by its number: channel(${found[0]! + 1}).`,
      });
    }
  }
  throw noSuchColumn(`column called ${quoted(wanted)}`, header, file);
}

/** What {@link chosenColumn} needs of a header: all of it, and its part without the unit. */
export interface HeaderName {
  readonly text: string;
  readonly name: string;
}

function noSuchColumn(wanted: string, header: readonly HeaderName[], file: string): LogError {
  const names = listed(header.map(({ text }) => text));
  return new LogError({
    code: 'no such column',
    file,
    expected: `a ${wanted}`,
    found: names,
    fact: `There is no ${wanted}. There are: ${names}.`,
  });
}
