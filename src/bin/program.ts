import { comparisonOf, sharedRange } from '../comparison/compare.js';
import { StatisticsError, type Comparison, type CompareOptions } from '../comparison/index.js';
import { readingOptionsOf, readRecord, recordPath, repeatAnalysis, report } from '../report/index.js';
import { LogError, readPulls, type Day, type SetUp } from '../sweep/index.js';
import { CalculationError, UnitError } from '../units/index.js';
import { single, UsageError, wordsOf, type Words } from './arguments.js';
import { compareOptionsOf, optionsOfPair } from './compare-options.js';
import { inCommandWords } from './command-words.js';
import { readOptionsFile } from './options-file.js';
import { HELP, OPTIONS, USAGE } from './help.js';

/** Where the program writes, so that tests can listen. */
export interface Output {
  print(text: string): void;
  warn(text: string): void;
}

/** Runs the command. @returns The exit code: 0 where at least one comparison has a verdict, 1 where none has, 2 for a wrong command line. */
export async function run(given: readonly string[], output: Output): Promise<number> {
  try {
    const words = wordsOf(given, OPTIONS);
    if (words.options.has('help') || given.length === 0) {
      output.print(HELP);
      return given.length === 0 ? 2 : 0;
    }
    const repeat = words.options.get('repeat');
    if (repeat !== undefined) return await repeated(repeat, words, output);
    const optionsFile = single(words, 'options');
    const told = optionsFile === undefined ? { reading: {}, comparison: {} } : await readOptionsFile(optionsFile);
    const options = compareOptionsOf(words, told.comparison);
    const file = reportFileOf(words);
    output.print('Reading the logs ...');
    const day = await readPulls(sourceOf(words), told.reading);
    output.print(inCommandWords(String(day)));
    const pairs = pairsOf(day, words, output);
    // Several candidates against one baseline share the chance that the intervals hold the truth.
    const shared = pairs.length > 1 ? { ...options, setUps: pairs.length } : options;
    const names = [...new Set(pairs.flat().map(({ name }) => name))];
    const asked = pairs.map((pair) => {
      const [baseline, candidate] = pair;
      return { pair, own: optionsOfPair(shared, [baseline.name, candidate.name], names) };
    });
    const range = rangeOfAll(pairs, shared);
    const answers = asked.flatMap(({ pair, own }) =>
      answered(pair, { ...own, ...range.options }, range.remarks, output),
    );
    if (answers.length === 0) return 1;
    await writeReport(answers, day, file, output);
    return answers.some(({ objections }) => objections.length === 0) ? 0 : 1;
  } catch (error) {
    if (error instanceof UsageError) {
      output.warn(`${error.message}\n\n${USAGE}`);
      return 2;
    }
    if (!isExpected(error)) throw error;
    output.warn(inCommandWords(error.message));
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

/** One range for all comparisons of the day; where they share none, each finds its own. */
function rangeOfAll(
  pairs: readonly Pair[],
  options: CompareOptions,
): { readonly options: CompareOptions; readonly remarks: readonly string[] } {
  if (pairs.length < 2) return { options: {}, remarks: [] };
  try {
    const { engineSpeed, remarks } = sharedRange([...new Set(pairs.flat())], options);
    return { options: { engineSpeed }, remarks };
  } catch (error) {
    if (!isExpected(error)) throw error;
    return { options: {}, remarks: [] };
  }
}

/** One comparison that breaks off, say for want of a channel, does not stop the others. */
function answered(
  [baseline, candidate]: Pair,
  options: CompareOptions,
  remarks: readonly string[],
  output: Output,
): Comparison[] {
  try {
    const answer = comparisonOf(baseline, candidate, options, remarks);
    output.print(`\n${inCommandWords(String(answer))}`);
    return [answer];
  } catch (error) {
    if (!isExpected(error)) throw error;
    output.warn(`\n${candidate.name} against ${baseline.name}: ${inCommandWords(error.message)}`);
    return [];
  }
}

async function writeReport(answers: readonly Comparison[], day: Day, file: string, output: Output): Promise<void> {
  output.print('\nDrawing the report ...');
  const page = report(answers, { day, wording: inCommandWords });
  try {
    await page.write(file);
    output.print(`Report: ${file}\nRecord: ${recordPath(file)}`);
  } catch (error) {
    // Without the packages that draw, the report has everything but its pictures.
    if (!(error instanceof CalculationError && error.calculation === 'renderSvg')) throw error;
    const words = file.replace(/\.html?$/i, '.md');
    await page.write(words);
    output.warn(error.message);
    output.print(`Report without pictures: ${words}\nRecord: ${recordPath(words)}`);
  }
}

/** Does a recorded analysis again. @returns 0 where it comes out as recorded, else 1. */
async function repeated([file, ...more]: readonly string[], words: Words, output: Output): Promise<number> {
  if (file === undefined)
    throw new UsageError('--repeat takes a record, such as day.record.json, and the folder of its logs.');
  const own = [...words.options.keys()].find((name) => !['repeat', 'baseline', 'candidate'].includes(name));
  if (own !== undefined)
    throw new UsageError(`--repeat takes the options of the record, and --${own} is none of them.`);
  // An option takes every value up to the next one, so that the folder behind the record is among them.
  const logs = { ...words, alone: [...words.alone, ...more] };
  const { readFile } = await import('node:fs/promises');
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'there is no such file' : (error as Error).message;
    output.warn(`The record ${file} could not be read: ${why}.`);
    return 1;
  }
  const record = readRecord(text);
  output.print('Reading the logs ...');
  const again = repeatAnalysis(record, await readPulls(sourceOf(logs), readingOptionsOf(record)));
  output.print(String(again));
  return again.agrees ? 0 : 1;
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
  // Where others were there and could not be read, that is no slip of the command line.
  if (wanted.length === 0 && others.length > 0) return [];
  if (wanted.length === 0)
    throw new UsageError(`There is only one set-up, "${baseline.name}": nothing to compare it with.`);
  return [...new Set(wanted)].map((name) => [baseline, day.setup(name)] as const);
}
