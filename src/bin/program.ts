import { compare, StatisticsError, type Comparison, type CompareOptions } from '../comparison/index.js';
import { report } from '../report/index.js';
import { LogError, readPulls, type Day, type SetUp } from '../sweep/index.js';
import { CalculationError, metricShop, parse, siUnits, UnitError, usShop, type Quantity } from '../units/index.js';
import { joined, single, UsageError, wordsOf, type Words } from './arguments.js';

const OPTIONS = [
  'baseline',
  'candidate',
  'range',
  'worthwhile',
  'logged',
  'at',
  'order',
  'units',
  'report',
  'help',
] as const;

const HELP = `Compares set-ups from the logs of their pulls: how large the difference is, how sure, and why.

  coldside FOLDER                      one sub-folder for each set-up, one log for each pull
  coldside --baseline A... --candidate B...   the logs of two set-ups

  --baseline NAME       with a folder: the set-up the others are compared with (else the first of the day)
  --candidate NAME...   with a folder: only these
  --range 3500-6500     engine speeds to average over, in rpm (else all that the pulls share)
  --worthwhile "2 kW"   the smallest difference worth having, set before looking; nothing is called equivalent without it
  --logged observed     whether logged power is observed or corrected
  --at "at the hub"     where torque was measured, for the words of the answer
  --order NAME...       the set-up of each pull in the order they were made, where the logs have no clock
  --units us            si, metric or us
  --report FILE         where the report goes, .html or .md (else coldside-report.html)

Dynamometers, fuel and hot or pressurised parts can injure: follow local codes and leave the work to licensed people.`;

/** Where the program writes, so that tests can listen. */
export interface Output {
  print(text: string): void;
  warn(text: string): void;
}

/** Runs the command. @returns The exit code: 0 for an answer, 1 for logs that give none, 2 for a wrong command line. */
export async function run(given: readonly string[], output: Output): Promise<number> {
  try {
    const words = wordsOf(given, OPTIONS);
    if (words.options.has('help') || given.length === 0) {
      output.print(HELP);
      return given.length === 0 ? 2 : 0;
    }
    const options = compareOptionsOf(words);
    const file = reportFileOf(words);
    output.print('Reading the logs ...');
    const day = await readPulls(sourceOf(words));
    output.print(String(day));
    const pairs = pairsOf(day, words, output);
    // Several candidates against one baseline share the chance that the intervals hold the truth.
    const shared = pairs.length > 1 ? { ...options, setUps: pairs.length } : options;
    const answers = pairs.flatMap((pair) => answered(pair, shared, output));
    if (answers.length === 0) return 1;
    await writeReport(answers, day, shared, file, output);
    return 0;
  } catch (error) {
    if (error instanceof UsageError) {
      output.warn(`${error.message}\n\n${HELP}`);
      return 2;
    }
    if (!isExpected(error)) throw error;
    output.warn(error.message);
    return 1;
  }
}

/** What logs and options can be wrong in; anything else is a fault of the program and keeps its stack. */
function isExpected(error: unknown): error is Error {
  return (
    [LogError, CalculationError, UnitError, StatisticsError].some((kind) => error instanceof kind) ||
    // A disk that is full, or a folder that may not be written to.
    (error instanceof Error && 'syscall' in error)
  );
}

/** One comparison that breaks off, say for want of a channel, does not stop the others. */
function answered([baseline, candidate]: Pair, options: CompareOptions, output: Output): Comparison[] {
  try {
    const answer = compare(baseline, candidate, options);
    output.print(`\n${String(answer)}`);
    return [answer];
  } catch (error) {
    if (!isExpected(error)) throw error;
    output.warn(`\n${candidate.name} against ${baseline.name}: ${error.message}`);
    return [];
  }
}

async function writeReport(
  answers: readonly Comparison[],
  day: Day,
  options: CompareOptions,
  file: string,
  output: Output,
): Promise<void> {
  output.print('\nDrawing the report ...');
  const page = report(answers, { day, options });
  try {
    await page.write(file);
    output.print(`Report: ${file}`);
  } catch (error) {
    // Without the packages that draw, the report has everything but its pictures.
    if (!(error instanceof CalculationError && error.calculation === 'renderSvg')) throw error;
    const words = file.replace(/\.html?$/i, '.md');
    await page.write(words);
    output.warn(error.message);
    output.print(`Report without pictures: ${words}`);
  }
}

/** A report must not be written over a log. */
function reportFileOf(words: Words): string {
  const file = single(words, 'report') ?? 'coldside-report.html';
  if (/\.(html?|md|markdown)$/i.test(file)) return file;
  throw new UsageError(`--report takes a file that ends in .html or .md, got ${file}.`);
}

function sourceOf(words: Words): Parameters<typeof readPulls>[0] {
  const [folder, ...more] = words.alone;
  if (more.length > 0) throw new UsageError(`One folder at a time, got ${words.alone.join(', ')}.`);
  if (folder !== undefined) return folder;
  const baseline = words.options.get('baseline') ?? [];
  const candidate = words.options.get('candidate') ?? [];
  if (baseline.length === 0 || candidate.length === 0) {
    throw new UsageError('Name a folder, or the logs of both set-ups after --baseline and --candidate.');
  }
  return { baseline, candidate };
}

type Pair = readonly [baseline: SetUp, candidate: SetUp];

/** The comparisons to make: every other set-up against the baseline. */
function pairsOf(day: Day, words: Words, output: Output): Pair[] {
  if (words.alone.length === 0) return [[day.setup('baseline'), day.setup('candidate')]];
  const first = day.pulls[0]?.setup;
  if (first === undefined) {
    output.warn('No pull could be read, so there is nothing to compare.');
    return [];
  }
  const baseline = day.setup(single(words, 'baseline') ?? first);
  const others = day.setups.filter((setUp) => setUp.name !== baseline.name);
  const wanted =
    words.options.get('candidate') ?? others.flatMap(({ name, pulls }) => (pulls.length > 0 ? [name] : []));
  for (const { name, pulls } of words.options.has('candidate') ? [] : others) {
    if (pulls.length === 0) output.warn(`${name} has no pull that could be read, and is not compared.`);
  }
  if (wanted.length === 0)
    throw new UsageError(`There is only one set-up, "${baseline.name}": nothing to compare it with.`);
  return [...new Set(wanted)].map((name) => [baseline, day.setup(name)] as const);
}

function compareOptionsOf(words: Words): CompareOptions {
  const range = joined(words, 'range', '-');
  const worthwhile = joined(words, 'worthwhile');
  const logged = single(words, 'logged');
  const at = joined(words, 'at');
  const order = words.options.get('order');
  const units = single(words, 'units');
  return {
    ...(range === undefined ? {} : { engineSpeed: rangeOf(range) }),
    ...(worthwhile === undefined ? {} : { worthwhile: worthwhileOf(worthwhile) }),
    ...(logged === undefined
      ? {}
      : { loggedPower: oneOf('logged', logged, ['observed', 'corrected', 'unknown'] as const) }),
    ...(at === undefined ? {} : { measuredAt: at }),
    ...(order === undefined ? {} : { order }),
    ...(units === undefined
      ? {}
      : {
          units: { si: siUnits, metric: metricShop, us: usShop }[
            oneOf('units', units, ['si', 'metric', 'us'] as const)
          ],
        }),
  };
}

function rangeOf(text: string): readonly [number, number] {
  const match = /^(\d{2,5})\s*[-–]\s*(\d{2,5})(?:\s*rpm)?$/.exec(text);
  const [from, to] = [Number(match?.[1]), Number(match?.[2])];
  if (from < to) return [from, to];
  throw new UsageError(`--range takes two engine speeds in rpm, the lower first, such as 3500-6500, got ${text}.`);
}

/** A power, a torque or an air flow: the comparison is by what the margin is of. */
function worthwhileOf(text: string): Quantity {
  let refused: unknown;
  for (const kind of ['power', 'torque', 'mass flow', 'mass'] as const) {
    try {
      return parse(kind, text);
    } catch (error) {
      refused ??= error;
    }
  }
  if (!(refused instanceof UnitError)) throw refused;
  throw new UsageError(`--worthwhile takes a difference with its unit, such as "2 kW": ${refused.message}`);
}

function oneOf<T extends string>(option: string, value: string, choices: readonly T[]): T {
  const found = choices.find((choice) => choice === value);
  if (found === undefined)
    throw new UsageError(
      `--${option} takes ${choices.slice(0, -1).join(', ')} or ${choices[choices.length - 1]}, got ${value}.`,
    );
  return found;
}
