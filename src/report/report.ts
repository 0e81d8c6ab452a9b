import type { Comparison } from '../comparison/index.js';
import { isNoResult, labelText } from '../plot/words.js';
import type { Day } from '../sweep/index.js';
import { CalculationError, siUnits, type UnitPreferences } from '../units/index.js';
import { answerBlocks, answersTable, setUpNames, whyBlocks } from './answer.js';
import { CAUTIONS } from './cautions.js';
import { list, paragraph, type Block, type Document, type Section } from './document.js';
import { checkFiles, evidenceBlocks, filesOf, inputHash, type ReportFile } from './evidence.js';
import { figureBlocks, sideBySideBlocks } from './figures.js';
import { toHtml } from './html.js';
import { toMarkdown } from './markdown.js';
import { pullBlocks, type Unread } from './pulls.js';
import { budgetBlocks, coreBlocks, seenBlocks, speedTable, workedBlocks } from './results.js';
import { recordOf, recordText } from './record.js';
import type { AnalysisRecord } from './record-form.js';
import { sourceTexts } from './sources.js';
import { fairnessBlocks, mixtureBlocks, rippleBlocks, splitBySpeedBlocks } from './why.js';
import { sentenceCase } from '../comparison/words.js';
import { subjectOf, titleOf } from './words.js';

/** What a report is told beside the comparisons, so that it can be traced. */
export interface ReportOptions {
  /** The day the pulls were read from: gives files, hashes, how columns were read, and what could not be read. */
  readonly day?: Day;
  /** The files, where there is no day. */
  readonly files?: readonly ReportFile[];
  /** When the report was made, for the page and its record. Left out, nothing in them depends on the hour. */
  readonly made?: string;
  /** The version that the page names; that of the library when left out. */
  readonly version?: string;
  /** The page's heading; the set-ups compared when left out. */
  readonly heading?: string;
  /** How sentences are put, where a reader calls things otherwise than a program does; as they are when left out. */
  readonly wording?: (text: string) => string;
  /** Units of readings beside the compared quantity; SI when left out. */
  readonly units?: UnitPreferences;
}

/** A report, ready to be written or shown. */
export interface Report {
  /** The page's title: never states as a result what is none. */
  readonly title: string;
  /** One page that needs nothing but itself: no network, no script. Needs vega and vega-lite for its pictures. */
  readonly html: Promise<string>;
  /** The same content as Markdown, pictures as tables. */
  readonly markdown: string;
  /** Everything another person needs to do the analysis again, as plain data: see {@link repeatAnalysis}. */
  readonly record: AnalysisRecord;
  /**
   * Writes the page, or the Markdown where the path ends in `.md`, and its record beside it: `tall-core.html` and
   * `tall-core.record.json`. A file of its own, because a person reads the page and a program the record, and because a record that is
   * kept with the logs outlives the page; the page names its hash, so that the two are known to belong together. Makes the folders
   * above. For Node.
   *
   * @returns The path.
   * @throws CalculationError if the place cannot be written to.
   */
  write(path: string): Promise<string>;
  /** Title and answers, as a terminal shows them. */
  toString(): string;
}

/**
 * The one-page report of a comparison, or of several with a table of their answers and their differences side
 * by side on top: the answer, what it rests on, why, pictures,
 * refused pulls, what to test next, values by engine speed, worked steps, uncertainty budget, files, sources and cautions.
 *
 * @param comparisons - One comparison, or several of one day.
 * @throws CalculationError if there is no comparison, or a file has no hash.
 * @example
 * await report(compare(day.setup('stock core'), day.setup('tall core')), { day }).write('out/tall-core.html');
 */
export function report(comparisons: Comparison | readonly Comparison[], options: ReportOptions = {}): Report {
  const all = Array.isArray(comparisons) ? (comparisons as readonly Comparison[]) : [comparisons as Comparison];
  if (all.length === 0) {
    throw new CalculationError('report', [
      {
        code: 'missing',
        input: 'comparisons',
        need: 'at least one comparison',
        got: 'none',
        mend: 'Make one with compare(baseline, candidate).',
      },
    ]);
  }
  const record = recordOf(all, options);
  const document = worded(documentOf(all, options, record), options.wording);
  const markdown = toMarkdown(document);
  let html: Promise<string> | undefined;
  const page = (): Promise<string> => (html ??= toHtml(document));
  return {
    title: document.title,
    get html() {
      return page();
    },
    markdown,
    record,
    write: async (path) => {
      await writeText(path, /\.(md|markdown)$/i.test(path) ? markdown : await page());
      await writeText(recordPath(path), recordText(record));
      return path;
    },
    toString: () => markdown,
  };
}

/** Where the record of a page goes: beside it. */
export function recordPath(page: string): string {
  return `${page.replace(/\.(html?|md|markdown)$/i, '')}.record.json`;
}

async function writeText(path: string, text: string): Promise<void> {
  const { mkdir, writeFile } = await import('node:fs/promises');
  const paths = await import('node:path');
  try {
    await mkdir(paths.dirname(path), { recursive: true });
    await writeFile(path, text);
  } catch (error) {
    const { code = '', message } = error as NodeJS.ErrnoException;
    const got = `${path}, ${WHY_NOT[code] ?? message}`;
    const mend = 'Give another file or folder.';
    throw new CalculationError('report', [
      { code: 'impossible', input: 'path', need: 'a file that can be written', got, mend },
    ]);
  }
}

const WHY_NOT: Readonly<Record<string, string>> = {
  EACCES: 'which this user may not write to',
  EPERM: 'which this user may not write to',
  EROFS: 'which is on a disk that cannot be written to',
  ENOSPC: 'where the disk is full',
  EISDIR: 'which is a folder',
  ENOTDIR: 'where a file stands in the place of a folder',
  EEXIST: 'where a file stands in the place of a folder',
};

function documentOf(all: readonly Comparison[], options: ReportOptions, record: AnalysisRecord): Document {
  const files = options.files ? checkFiles(options.files) : options.day ? filesOf(options.day, all) : [];
  const [only] = all.length === 1 ? all : [];
  const names = setUpNames(all);
  const heading =
    options.heading ??
    (only
      ? sentenceCase(subjectOf(only))
      : `${all.length} comparisons${names.length > MOST_NAMES ? ofMany(all) : `: ${names.join(', ')}`}`);
  const hash = inputHash(files);
  const shared: Section[] = [
    section('files', 'Files, options, version', 2, evidenceBlocks(all, { files, day: options.day, record })),
    section('sources', 'Sources', 2, list(sourceTexts(all))),
    section('cautions', 'Cautions', 2, list(CAUTIONS)),
  ];
  const front: Block[] = only
    ? []
    : [{ type: 'table', table: answersTable(all, idOf) }, ...sideBySideBlocks(all, 'answers-picture', 1)];
  const countFigures = (blocks: readonly Block[]): number => blocks.filter(({ type }) => type === 'figure').length;
  let figures = countFigures(front);
  const parts = all.map((comparison, i) => {
    const own = comparisonSections(comparison, only ? '' : `c${i + 1}-`, figures + 1, only ? 2 : 3, options);
    figures += countFigures(own.flatMap(({ blocks }) => blocks));
    return only
      ? own
      : [{ ...section(idOf(i), sentenceCase(subjectOf(comparison)), 2, []), look: 'comparison' as const }, ...own];
  });
  const top = only ? [] : [section('answers', 'Answers', 2, front)];
  return {
    title: only ? titleOf(only) : heading,
    heading,
    footer: `${names.length > MOST_NAMES ? `${names.length} set-ups` : names.join(', ')}${hash === undefined ? '' : `, input ${hash.slice(0, 8)}`}`,
    sections: [...top, ...parts.flat(), ...shared],
  };
}

/** A page with its paragraphs and lists put in other words. */
function worded(document: Document, wording: ReportOptions['wording']): Document {
  if (wording === undefined) return document;
  const block = (one: Block): Block => {
    if (one.type === 'paragraph') return { ...one, text: wording(one.text) };
    return one.type === 'list' ? { ...one, items: one.items.map(wording) } : one;
  };
  const sections = document.sections.map((each) => ({ ...each, blocks: each.blocks.map(block) }));
  return { ...document, sections };
}

/** More set-ups than this are counted in the heading and at the foot, and named in the table of answers. */
const MOST_NAMES = 5;

/** ` with stock core`, where all have one baseline. */
function ofMany(all: readonly Comparison[]): string {
  const baselines = new Set(all.map(({ baseline }) => baseline.name));
  return baselines.size === 1 ? ` with ${labelText(all[0]!.baseline.name)}` : '';
}

const idOf = (i: number): string => `comparison-${i + 1}`;

function comparisonSections(
  comparison: Comparison,
  prefix: string,
  figure: number,
  level: 2 | 3,
  options: ReportOptions,
): Section[] {
  const units = options.units ?? siUnits;
  const noResult = isNoResult(comparison.outcome);
  const own = (id: string, title: string, blocks: readonly Block[], look: Section['look'] = 'plain'): Section => ({
    ...section(`${prefix}${id}`, title, level, blocks),
    look,
  });
  const given = (id: string, title: string, blocks: readonly Block[]): Section[] =>
    blocks.length === 0 ? [] : [own(id, title, blocks)];
  const label = noResult ? ', not a result' : '';
  return [
    own('answer', 'Answer', answerBlocks(comparison, `${prefix}answer`), 'answer'),
    own('rests-on', 'What it rests on', list(comparison.rests), 'beside'),
    own('why', 'Why', whyBlocks(comparison), 'beside'),
    own('pictures', 'Pictures', figureBlocks(comparison, `${prefix}picture`, figure), 'pictures'),
    own('equal', 'What must be equal', fairnessBlocks(comparison)),
    ...given('equal-lambda', 'At equal lambda, not the headline', mixtureBlocks(comparison)),
    ...(comparison.findings.length === 0 ? [] : [own('findings', 'What else was seen', list(comparison.findings))]),
    own(
      'pulls',
      'Pulls used and refused',
      pullBlocks(comparison, unreadOf(comparison, options.day), options.day?.pulls ?? [], units),
    ),
    own(
      'next',
      'What to test next',
      comparison.next.length === 0 ? [paragraph('Nothing further is asked.')] : list(comparison.next),
    ),
    ...(noResult ? [own('seen', 'What was seen, not a result', seenBlocks(comparison))] : []),
    own('by-speed', 'By engine speed', [{ type: 'table', table: speedTable(comparison) }]),
    ...given('causes-by-speed', 'Causes by engine speed', splitBySpeedBlocks(comparison)),
    ...given('cores-by-speed', 'Cores by engine speed', coreBlocks(comparison)),
    ...given('ripple', 'Does torque follow the ripple of boost?', rippleBlocks(comparison)),
    own('worked', `Worked steps of the difference${label}`, workedBlocks(comparison, unitsOf(comparison, units))),
    own('budget', `Uncertainty budget${label}`, budgetBlocks(comparison)),
  ];
}

function section(id: string, title: string, level: 2 | 3, blocks: readonly Block[]): Section {
  return { id, title, level, look: 'plain', blocks };
}

/** The compared quantity keeps the unit it has everywhere else on the page. */
function unitsOf({ baseline }: Comparison, units: UnitPreferences): UnitPreferences {
  return { ...units, [baseline.mean.kind]: baseline.mean.unit };
}

function unreadOf({ baseline, candidate }: Comparison, day: Day | undefined): Unread[] {
  return (day?.notRead ?? [])
    .filter(({ setup }) => setup === baseline.name || setup === candidate.name)
    .map(({ setup, file, error }) => ({ setup, file, why: error.message }));
}
