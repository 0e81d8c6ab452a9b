import { checkChannelMap, type ChannelMap } from './channel.js';
import { clockOrder } from './clock-order.js';
import { describeDay, describeSetUp } from './day-text.js';
import type { DialectOptions } from './dialect.js';
import { LogError } from './errors.js';
import { naturalOrder } from './natural-order.js';
import { pullOf, type Pull } from './pull.js';
import { askBoostOfDay } from './questions.js';
import { readLog, type ReadLogOptions } from './read-log.js';
import type { Day, DayOrder, NotRead, SetUp } from './set-up.js';
import { listed, quoted } from './words-for-people.js';

/** One log in memory. */
export interface LogFile {
  /** Where it lies, with `/` between folders. */
  readonly path: string;
  /** The set-up it belongs to; the folder it lies in when left out. */
  readonly setup?: string | undefined;
  /** Its text or bytes. */
  readonly data: string | Uint8Array;
}

/** How the logs of one set-up are read: which columns are which channels, and how numbers are written. */
export type SetUpOptions = ChannelMap & DialectOptions;

/** How a day of logs is read. */
export interface ReadPullsOptions extends DialectOptions {
  /** Which columns are which channels, in every log. */
  readonly channels?: ChannelMap | undefined;
  /** The same for single set-ups, by name; it goes before {@link ReadPullsOptions.channels}. */
  readonly setups?: Readonly<Record<string, SetUpOptions>> | undefined;
}

const INSPECT = Symbol.for('nodejs.util.inspect.custom');

/** @internal */
export class SetUpValue implements SetUp {
  readonly name: string;
  readonly pulls: readonly Pull[];
  readonly notRead: readonly NotRead[];

  constructor(name: string, pulls: readonly Pull[], notRead: readonly NotRead[]) {
    this.name = name;
    this.pulls = pulls;
    this.notRead = notRead;
  }

  toString(): string {
    return describeSetUp(this);
  }

  /** @internal */
  [INSPECT](): string {
    return this.toString();
  }
}

class DayValue implements Day {
  readonly setups: readonly SetUp[];
  readonly pulls: readonly Pull[];
  readonly notRead: readonly NotRead[];
  readonly order: DayOrder;

  constructor(setups: readonly SetUp[], pulls: readonly Pull[], notRead: readonly NotRead[], order: DayOrder) {
    this.setups = setups;
    this.pulls = pulls;
    this.notRead = notRead;
    this.order = order;
  }

  setup(name: string): SetUp {
    const found = this.setups.find((setup) => setup.name === name);
    if (found === undefined)
      throw noSuchSetUp(
        name,
        this.setups.map((setup) => setup.name),
      );
    if (found.pulls.length > 0) return found;
    const [first] = found.notRead;
    throw new LogError({
      code: 'no logs',
      expected: 'at least one pull',
      found: 'none that could be read',
      fact: `None of the logs of ${quoted(name)} could be read. ${first?.error.message ?? ''}`.trim(),
    });
  }

  toString(): string {
    return describeDay(this);
  }

  /** @internal */
  [INSPECT](): string {
    return this.toString();
  }
}

function noSuchSetUp(name: string, names: readonly string[]): LogError {
  const there = names.length === 0 ? 'There are none.' : `There are: ${listed(names)}.`;
  return new LogError({
    code: 'no such set-up',
    expected: listed(names),
    found: quoted(name),
    fact: `No set-up called ${quoted(name)}. ${there}`,
  });
}

/**
 * Reads the logs of a day that are already in memory, as a page does with files dropped on it. A broken log never stops the others.
 *
 * @param files The logs; each belongs to the set-up it names, or to the folder in its path.
 * @throws LogError if a set-up is named in the options that has no log.
 * @throws CalculationError if a channel map is wrong in itself.
 */
export function readPullsFrom(files: readonly LogFile[], options: ReadPullsOptions = {}): Day {
  return dayOf(files, [], options);
}

/** @internal The day of some logs, and of others that did not get as far as being read. */
export function dayOf(
  files: readonly LogFile[],
  unread: readonly NotRead[],
  options: ReadPullsOptions,
  streamed: readonly Pull[] = [],
): Day {
  const named = files.map((file) => ({ ...file, setup: file.setup ?? folderOf(file.path) }));
  const setupsStreamed = streamed.flatMap(({ setup }) => (setup === undefined ? [] : [{ setup }]));
  const names = [...new Set([...named, ...unread, ...setupsStreamed].map(({ setup }) => setup))].sort(naturalOrder);
  checkChannelMap(options.channels ?? {}, 'readPulls');
  for (const [name, setup] of Object.entries(options.setups ?? {})) {
    if (!names.includes(name)) throw noSuchSetUp(name, names);
    checkChannelMap(mapOf(setup), 'readPulls');
  }
  const pulls: Pull[] = [...streamed];
  const notRead = [...unread];
  const inOrder = [...named].sort((a, b) => naturalOrder(a.setup, b.setup) || naturalOrder(a.path, b.path));
  const nameOf = namesOf(inOrder);
  for (const file of inOrder) {
    try {
      pulls.push(...readLog(file.data, { ...logOptions(file.path, file.setup, options), name: nameOf.get(file) }));
    } catch (error) {
      if (!(error instanceof LogError)) throw error;
      notRead.push({ setup: file.setup, file: file.path, error });
    }
  }
  const asked = askBoostOfDay(pulls);
  const { pulls: inTurn, ...order } = orderOf(
    pulls.map((pull) => {
      const question = asked.get(pull);
      return question === undefined ? pull : pullOf({ ...pull, questions: [...pull.questions, question] });
    }),
  );
  const paths = [...named.map(({ path }) => path), ...unread.map(({ file }) => file)];
  const isSetUp = (name: string): boolean =>
    inTurn.some(({ setup }) => setup === name) ||
    notRead.some(({ setup, file }) => setup === name && !isBesideSetUps(file, paths));
  const setups = names.filter(isSetUp).map((name) => {
    const own = inTurn.filter(({ setup }) => setup === name);
    return new SetUpValue(
      name,
      own,
      notRead.filter(({ setup }) => setup === name),
    );
  });
  return new DayValue(setups, inTurn, notRead, order);
}

/** @internal How one log of a day is read. */
export function logOptions(file: string, setup: string, options: ReadPullsOptions): ReadLogOptions {
  const own = options.setups && Object.hasOwn(options.setups, setup) ? options.setups[setup]! : {};
  const { decimal, separator, headerLine } = { ...options, ...own };
  return { file, setup, channels: { ...options.channels, ...mapOf(own) }, decimal, separator, headerLine };
}

function mapOf({
  decimal: _decimal,
  separator: _separator,
  headerLine: _headerLine,
  ...map
}: SetUpOptions): ChannelMap {
  return map;
}

function folderOf(path: string): string {
  const parts = path.split(/[/\\]/);
  return parts[parts.length - 2] ?? 'pulls';
}

/** Whether a file lies beside the folders of set-ups, as notes do: alone it makes no set-up. */
function isBesideSetUps(file: string, paths: readonly string[]): boolean {
  const parts = file.split(/[/\\]/);
  const folder = parts.slice(0, -1);
  return paths.some((path) => {
    const others = path.split(/[/\\]/);
    return others.length > parts.length && folder.every((part, at) => part === others[at]);
  });
}

/** Short names, unless two logs of one set-up share theirs. */
function namesOf<T extends LogFile & { readonly setup: string }>(files: readonly T[]): Map<T, string> {
  const short = (path: string): string => path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
  const counts = new Map<string, number>();
  const key = ({ setup, path }: T): string => `${setup}\n${short(path)}`;
  for (const file of files) counts.set(key(file), (counts.get(key(file)) ?? 0) + 1);
  return new Map(files.map((file) => [file, counts.get(key(file)) === 1 ? short(file.path) : file.path]));
}

/** The order of some pulls, and how it is known. */
interface KnownOrder extends DayOrder {
  readonly pulls: readonly Pull[];
}

/** File dates say when a file was copied, so only a clock inside the logs tells the order of the day. */
function orderOf(pulls: readonly Pull[]): KnownOrder {
  const byNames = (why: string): KnownOrder => ({
    from: 'names',
    words: `The order through the day is not known: ${why}. Pulls stand in the order of their names.`,
    pulls,
  });
  const clocked = pulls.filter(({ startClock }) => startClock !== undefined);
  if (clocked.length === 0) return byNames('no log has a clock');
  if (clocked.length < pulls.length) return byNames(`only ${clocked.length} of ${pulls.length} pulls have a clock`);
  const order = clockOrder(pulls);
  if (typeof order === 'string') return byNames(order);
  const { pulls: inOrder, when, days } = order;
  const twins = inOrder.find((pull, at) => at > 0 && when.get(inOrder[at - 1]!) === when.get(pull));
  if (twins) return byNames(`the clocks of two pulls begin alike, ${quoted(twins.file)} being one`);
  const names = inOrder.map(({ setup }) => setup ?? '').filter((name, at, all) => at === 0 || name !== all[at - 1]);
  const words = `Order through the day by the clocks in the logs: ${names.join(', ')}.`;
  return { from: 'clock', words: days === 'dates' ? words : `${words} ${DAYS_IN_WORDS[days]}`, pulls: inOrder };
}

const DAYS_IN_WORDS = {
  'one day': 'They have no date and are taken as one day.',
  'over midnight': 'They have no date, and go over midnight as the names of the files do.',
} as const;
