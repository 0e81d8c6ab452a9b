import type { CompareOptions, Comparison } from '../comparison/index.js';
import { roleWords, type Day, type Pull } from '../sweep/index.js';
import { sha256 } from '../sweep/sha256.js';
import { isQuantity } from '../units/index.js';
import { CalculationError } from '../units/index.js';
import { labelText } from '../plot/words.js';
import { recordText } from './record.js';
import type { AnalysisRecord } from './record-form.js';
import { subjectOf } from './words.js';
import { list, paragraph, type Block, type DataTable } from './document.js';

/** A file that a comparison rests on. */
export interface ReportFile {
  /** The file as it was given. */
  readonly file: string;
  readonly setup: string | undefined;
  readonly rows: number;
  /** SHA-256 in hexadecimal. */
  readonly hash: string;
}

/** The files of a day that belong to the set-ups compared, each once. */
export function filesOf(day: Pick<Day, 'pulls'>, comparisons: readonly Comparison[]): ReportFile[] {
  const pulls = pullsCompared(day, comparisons);
  const files = new Map<string, ReportFile>();
  for (const { file, setup, rows, hash } of pulls) {
    const known = files.get(file);
    files.set(file, { file, setup, rows: rows + (known?.rows ?? 0), hash });
  }
  return [...files.values()];
}

function pullsCompared(day: Pick<Day, 'pulls'>, comparisons: readonly Comparison[]): readonly Pull[] {
  const names = new Set(comparisons.flatMap(({ baseline, candidate }) => [baseline.name, candidate.name]));
  return day.pulls.filter(({ setup }) => setup !== undefined && names.has(setup));
}

/** One hash for all inputs: SHA-256 over the hashes of the files, sorted, one to a line. */
export function inputHash(files: readonly ReportFile[]): string | undefined {
  if (files.length === 0) return undefined;
  const lines = [...new Set(files.map(({ hash }) => hash))].sort().join('\n');
  return sha256(new TextEncoder().encode(`${lines}\n`));
}

/** What a page is traced by: files with their hashes, how they were read, the options and the version. */
export function evidenceBlocks(
  comparisons: readonly Comparison[],
  given: {
    readonly files: readonly ReportFile[];
    readonly day: Pick<Day, 'pulls' | 'order'> | undefined;
    readonly record: AnalysisRecord;
  },
): Block[] {
  const { files, day, record } = given;
  const hash = inputHash(files);
  const dates = [...new Set((day ? pullsCompared(day, comparisons) : []).flatMap(({ date }) => date ?? []))];
  const facts = [
    `coldside ${record.library.version}.`,
    ...(record.made === null ? [] : [`Made ${labelText(record.made)}.`]),
    ...(dates.length === 0 ? [] : [`Pulls of ${dates.join(', ')}.`]),
    ...(day === undefined ? [] : [day.order.words]),
    ...(hash === undefined
      ? ['The files were not named to this report.']
      : [`Input ${hash}: SHA-256 over the hashes of the files, sorted, one to a line.`]),
    `Record in the file beside this page that ends in .record.json, to do it again with coldside --repeat: SHA-256 ${sha256(new TextEncoder().encode(recordText(record)))}.`,
  ];
  const read = day === undefined ? [] : readAs(pullsCompared(day, comparisons));
  return [
    ...list(facts),
    ...beforehandBlocks(comparisons),
    ...(read.length === 0 ? [] : [paragraph('What the columns were taken for:'), ...list(read, 'small')]),
    ...(files.length === 0 ? [] : [{ type: 'table', table: filesTable(files) } as const]),
  ];
}

function filesTable(files: readonly ReportFile[]): DataTable {
  return {
    caption: 'Files',
    look: 'wide',
    columns: [
      { head: 'file', align: 'left' },
      { head: 'set-up', align: 'left' },
      { head: 'rows', align: 'right' },
      { head: 'SHA-256', align: 'left' },
    ],
    rows: files.map(({ file, setup, rows, hash }) => [
      labelText(file, 120),
      labelText(setup ?? ''),
      String(rows),
      hash,
    ]),
  };
}

/** How the logs of each set-up were read, pulls read alike together. */
function readAs(pulls: readonly Pull[]): string[] {
  const bySetUp = new Map<string, Set<string>>();
  for (const pull of pulls) {
    const columns = Object.values(pull.sources).map(({ role, header, kind, unit }) => {
      const as = kind === 'gauge pressure' || kind === 'absolute pressure' ? `, ${kind}` : '';
      return `${roleWords(role)} from “${labelText(header)}”${as}${unit === '1' ? '' : ` in ${unit}`}`;
    });
    const setup = pull.setup ?? '';
    bySetUp.set(setup, (bySetUp.get(setup) ?? new Set()).add(columns.join('; ')));
  }
  return [...bySetUp].flatMap(([setup, ways]) => [...ways].map((way) => `${labelText(setup)}: ${way}.`));
}

const OPTION_WORDS: Readonly<Record<keyof CompareOptions, string>> = {
  engineSpeed: 'range of engine speed',
  step: 'step of engine speed',
  bandwidth: 'bandwidth of the mean at each speed',
  compare: 'compared by',
  worthwhile: 'worthwhile difference',
  loggedPower: 'logged power',
  measuredAt: 'where power was measured',
  confidence: 'confidence',
  order: 'order of the pulls',
  drift: 'drift through the day',
  settled: 'start of the pulls',
  prepare: 'done to every pull beforehand',
  prepareBySetUp: 'done to the pulls of single set-ups beforehand',
  sensorLags: 'time constants of sensors',
  sweptVolume: 'swept volume',
  strokes: 'strokes in a cycle',
  overallRatio: 'overall ratio to where torque was measured',
  sensors: 'instruments of both set-ups',
  sensorsBySetUp: 'instruments of single set-ups',
  setUps: 'set-ups compared at once',
  atSpeeds: 'speeds chosen beforehand',
  bestTorqueSpark: 'spark of best torque',
  bestTorqueSparkBySetUp: 'spark of best torque of single set-ups',
  boostControl: 'boost control',
  powerPerLambda: 'change with lambda, given',
  predicted: 'predicted change',
  leaveOut: 'left out by hand',
  overrule: 'overruled by hand',
  limits: 'limits of acceptance',
  units: 'units',
};

/** The options of the comparisons: once where all were made with the same. */
function beforehandBlocks(comparisons: readonly Comparison[]): Block[] {
  const texts = comparisons.map(({ options }) => optionTexts(options));
  const blocks = (heading: string, items: readonly string[]): Block[] =>
    items.length === 0 ? [] : [paragraph(heading), ...list(items)];
  if (new Set(texts.map((items) => items.join('\n'))).size === 1) return blocks('Set beforehand:', texts[0]!);
  return comparisons.flatMap((comparison, i) => blocks(`Set beforehand for ${subjectOf(comparison)}:`, texts[i]!));
}

function optionTexts(options: CompareOptions): string[] {
  return (Object.keys(OPTION_WORDS) as (keyof CompareOptions)[]).flatMap((name) => {
    const value = options[name];
    if (value === undefined) return [];
    return [`${OPTION_WORDS[name]}: ${name === 'engineSpeed' ? rangeText(options.engineSpeed!) : valueText(value)}`];
  });
}

function rangeText([from, to]: NonNullable<CompareOptions['engineSpeed']>): string {
  return typeof from === 'number' ? `${from} to ${String(to)} rpm` : `${String(from)} to ${String(to)}`;
}

function valueText(value: unknown): string {
  if (isQuantity(value)) return String(value);
  if (typeof value === 'object' && value !== null && 'reads' in value)
    return labelText((value as { toString(): string }).toString(), 200);
  if (Array.isArray(value)) return value.map(valueText).join(', ');
  if (typeof value === 'object' && value !== null)
    return Object.entries(value)
      .map(([key, one]) => `${labelText(key, 120)}: ${valueText(one)}`)
      .join('; ');
  return typeof value === 'string' ? labelText(value, 400) : String(value);
}

/** Refuses what is no list of files. */
export function checkFiles(files: readonly ReportFile[]): readonly ReportFile[] {
  for (const { file, hash } of files) {
    if (typeof file === 'string' && typeof hash === 'string' && /^[0-9a-f]{64}$/.test(hash)) continue;
    throw new CalculationError('report', [
      {
        code: 'kind',
        input: 'files',
        need: 'files with their SHA-256 in hexadecimal',
        got: `${String(file)} with ${String(hash)}`,
        mend: 'Give the day instead: report(comparison, { day }).',
      },
    ]);
  }
  return files;
}
