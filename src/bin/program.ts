import { compare, StatisticsError, type Comparison, type CompareOptions } from '../comparison/index.js';
import { report } from '../report/index.js';
import { LogError, readPulls, type Day, type SetUp } from '../sweep/index.js';
import { CalculationError, metricShop, parse, siUnits, UnitError, usShop } from '../units/index.js';
import { single, UsageError, wordsOf, type Words } from './arguments.js';

const OPTIONS = ['baseline', 'candidate', 'range', 'worthwhile', 'logged', 'at', 'units', 'report', 'help'] as const;

const HELP = `Compares set-ups from the logs of their pulls: how large the difference is, how sure, and why.

  coldside FOLDER                      one sub-folder for each set-up, one log for each pull
  coldside --baseline A... --candidate B...   the logs of two set-ups

  --baseline NAME       with a folder: the set-up the others are compared with (else the first of the day)
  --candidate NAME...   with a folder: only these
  --range 3500-6500     engine speeds to average over, in rpm (else all that the pulls share)
  --worthwhile "2 kW"   the smallest difference worth having, set before looking; nothing is called equivalent without it
  --logged observed     whether logged power is observed or corrected
  --at "at the hub"     where torque was measured, for the words of the answer
  --units us            si, metric or us
  --report FILE         where the report goes (else coldside-report.html)

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
    output.print('Reading the logs ...');
    const day = await readPulls(sourceOf(words));
    output.print(String(day));
    const answers = pairsOf(day, words).map(([baseline, candidate]) => compare(baseline, candidate, options));
    for (const answer of answers) output.print(`\n${String(answer)}`);
    return await writeReport(answers, day, options, single(words, 'report') ?? 'coldside-report.html', output);
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
  return [LogError, CalculationError, UnitError, StatisticsError].some((kind) => error instanceof kind);
}

async function writeReport(
  answers: readonly Comparison[],
  day: Day,
  options: CompareOptions,
  file: string,
  output: Output,
): Promise<number> {
  output.print('\nDrawing the report ...');
  await report(answers, { day, options }).write(file);
  output.print(`Report: ${file}`);
  return 0;
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

/** The comparisons to make: every other set-up against the baseline. */
function pairsOf(day: Day, words: Words): (readonly [SetUp, SetUp])[] {
  if (words.alone.length === 0) return [[day.setup('baseline'), day.setup('candidate')]];
  const first = day.pulls[0]?.setup;
  const baseline = day.setup(single(words, 'baseline') ?? first ?? '');
  const wanted =
    words.options.get('candidate') ?? day.setups.map((setUp) => setUp.name).filter((name) => name !== baseline.name);
  if (wanted.length === 0)
    throw new UsageError(`There is only one set-up, "${baseline.name}": nothing to compare it with.`);
  return wanted.map((name) => [baseline, day.setup(name)] as const);
}

function compareOptionsOf(words: Words): CompareOptions {
  const range = single(words, 'range');
  const worthwhile = single(words, 'worthwhile');
  const logged = single(words, 'logged');
  const at = single(words, 'at');
  const units = single(words, 'units');
  return {
    ...(range === undefined ? {} : { engineSpeed: rangeOf(range) }),
    ...(worthwhile === undefined ? {} : { worthwhile: parse('power', worthwhile) }),
    ...(logged === undefined
      ? {}
      : { loggedPower: oneOf('logged', logged, ['observed', 'corrected', 'unknown'] as const) }),
    ...(at === undefined ? {} : { measuredAt: at }),
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
  const match = /^(\d{2,5})-(\d{2,5})$/.exec(text);
  if (!match) throw new UsageError(`--range takes two engine speeds in rpm, such as 3500-6500, got ${text}.`);
  return [Number(match[1]), Number(match[2])];
}

function oneOf<T extends string>(option: string, value: string, choices: readonly T[]): T {
  const found = choices.find((choice) => choice === value);
  if (found === undefined) throw new UsageError(`--${option} takes ${choices.join(' or ')}, got ${value}.`);
  return found;
}
