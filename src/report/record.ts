import { version as libraryVersion } from './version.js';
import type { CompareOptions, Comparison, Estimate, PullResult } from '../comparison/index.js';
import { optionsRecord, quantityRecord, type QuantityInRecord } from '../comparison/options-record.js';
import { resolveOptions } from '../comparison/resolve-options.js';
import type { Day, Pull } from '../sweep/index.js';
import { sha256 } from '../sweep/sha256.js';
import type { Quantity } from '../units/index.js';
import { drawnInterval } from './draws.js';
import {
  FORM,
  RECORD,
  type AnalysisRecord,
  type ComparisonInRecord,
  type EstimateInRecord,
  type PullInRecord,
  type ReadingInRecord,
} from './record-form.js';

/** What a record is told beside the comparisons. */
export interface RecordOptions {
  /** The day that the pulls were read from. Without it the record has no inputs, and cannot be done again. */
  readonly day?: Day | undefined;
  /** Set-ups whose pulls go into it, beside those of the comparisons. */
  readonly setUps?: readonly string[] | undefined;
  /** The version it names; that of the library when left out. */
  readonly version?: string | undefined;
  /** When it was made, in words. Left out, nothing in a record depends on the hour: two runs give the same bytes. */
  readonly made?: string | undefined;
}

/**
 * The record of an analysis: inputs with their hashes and how each column was read, every option, the order of the pulls, refusals with
 * reasons, what was done to pulls, and what came out. {@link repeatAnalysis} does it again from there.
 *
 * @param comparisons - made of pulls of one day.
 * @example
 * const record = recordOf([compare(day.setup('stock core'), day.setup('tall core'))], { day });
 * await writeFile('tall-core.record.json', recordText(record));
 */
export function recordOf(
  comparisons: readonly Comparison[],
  { day, setUps: more = [], version = libraryVersion, made }: RecordOptions = {},
): AnalysisRecord {
  const setUps = new Set([
    ...more,
    ...comparisons.flatMap(({ baseline, candidate }) => [baseline.name, candidate.name]),
  ]);
  const concerns = (setUp: string | undefined): boolean => setUp !== undefined && setUps.has(setUp);
  const pulls = (day?.pulls ?? []).filter(({ setup }) => concerns(setup));
  const readings = new Map<string, { number: number; reading: ReadingInRecord }>();
  const numberOf = (pull: Pull): number => {
    const reading = readingOf(pull);
    const text = JSON.stringify(reading);
    if (!readings.has(text)) readings.set(text, { number: readings.size + 1, reading });
    return readings.get(text)!.number;
  };
  const body: Omit<AnalysisRecord, 'sha256'> = {
    record: RECORD,
    form: FORM,
    library: { name: 'coldside', version },
    made: made ?? null,
    pulls: pulls.map((pull) => pullRecord(pull, numberOf(pull))),
    readings: [...readings.values()].map(({ reading }) => reading),
    notRead: (day?.notRead ?? [])
      .filter(({ setup }) => concerns(setup))
      .map(({ setup, file, error }) => ({
        setUp: setup,
        file: lastPart(file),
        why: withoutFolders(error.message, file),
      })),
    order: day ? { from: day.order.from, words: day.order.words, pulls: pulls.map(nameOf) } : null,
    comparisons: comparisons.map(comparisonRecord),
  };
  return { ...body, sha256: digestOf(body) };
}

/** The record as a file holds it. */
export function recordText(record: AnalysisRecord): string {
  return `${JSON.stringify(record, null, 1)}\n`;
}

/** Hash of a record without the field that holds it. */
export function digestOf({
  sha256: _,
  ...body
}: Omit<AnalysisRecord, 'sha256'> & { readonly sha256?: string }): string {
  return sha256(new TextEncoder().encode(JSON.stringify(body)));
}

const nameOf = ({ setup, name }: Pull): string => `${setup ?? ''}/${name}`;

const lastPart = (path: string): string => path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);

const withoutFolders = (text: string, file: string): string => text.replaceAll(file, lastPart(file));

function pullRecord(pull: Pull, reading: number): PullInRecord {
  return {
    setUp: pull.setup!,
    pull: pull.name,
    file: lastPart(pull.file),
    rows: pull.rows,
    sha256: pull.hash,
    reading,
    questions: pull.questions.map(({ code, message, mend }) => ({
      code,
      message: withoutFolders(message, pull.file),
      mend,
    })),
    preparations: pull.preparations.map(({ code, role, readings, message }) => ({
      code,
      role: role ?? null,
      readings,
      message,
    })),
  };
}

function readingOf({ dialect, sources }: Pull): ReadingInRecord {
  return {
    decimal: dialect.decimal,
    separator: dialect.separator,
    columns: Object.values(sources).map(({ role, header, kind, unit, how, unitFrom }) => ({
      role,
      header,
      kind,
      unit,
      how,
      unitFrom,
    })),
  };
}

function comparisonRecord(comparison: Comparison): ComparisonInRecord {
  const { baseline, candidate, options, split, figures, overall, relative } = comparison;
  const drawn = drawnInterval(comparison);
  return {
    baseline: baseline.name,
    candidate: candidate.name,
    options: optionsRecord(allOptions(options)),
    optionsGiven: Object.entries(options).flatMap(([name, value]) => (value === undefined ? [] : [name])),
    pulls: [baseline, candidate].flatMap((side) => side.pulls.map((pull) => resultRecord(side.name, pull))),
    engineSpeed: {
      from: quantityRecord(comparison.engineSpeed.from),
      to: quantityRecord(comparison.engineSpeed.to),
      step: quantityRecord(comparison.engineSpeed.step),
    },
    compared: comparison.compared,
    basis: comparison.basis,
    outcome: comparison.outcome,
    headline: comparison.headline,
    objections: comparison.objections,
    driftTakenOut: comparison.driftTakenOut,
    overall: overall ? estimateRecord(overall) : null,
    relative: relative ?? null,
    parts: (split?.contributions ?? []).map(({ factor, part }) => ({ factor, part: estimateRecord(part) })),
    figures: figures.map(({ name, difference }) => ({ name, difference: estimateRecord(difference) })),
    draws: drawn
      ? {
          seed: drawn.seed,
          draws: drawn.draws,
          level: drawn.level,
          low: quantityRecord(drawn.byDraws[0]),
          high: quantityRecord(drawn.byDraws[1]),
          budget: drawn.verdict,
        }
      : null,
  };
}

/** With what stood for each option that was left out, so that other defaults of another version do not change what is done again. */
function allOptions(options: CompareOptions): CompareOptions {
  const { limits, units, ...rest } = resolveOptions(options);
  const filled = Object.entries(rest).filter(([, value]) => value !== undefined);
  return { ...(Object.fromEntries(filled) as CompareOptions), ...options, limits, units };
}

function resultRecord(setUp: string, pull: PullResult): ComparisonInRecord['pulls'][number] {
  return {
    setUp,
    pull: pull.name,
    order: pull.order ?? null,
    accepted: pull.accepted,
    refusals: pull.refusals.map(({ code, reason, overruled, because }) => ({
      code,
      reason,
      overruled,
      because: because ?? null,
    })),
    mean: pull.mean ? quantityRecord(pull.mean) : null,
    prepared: pull.preparations.map(({ message }) => message),
  };
}

function estimateRecord({ value, low, high, standardUncertainty, degreesOfFreedom }: Estimate): EstimateInRecord {
  const plain = (quantity: Quantity): QuantityInRecord => quantityRecord(quantity);
  return {
    value: plain(value),
    low: plain(low),
    high: plain(high),
    standardUncertainty: plain(standardUncertainty),
    degreesOfFreedom: Number.isFinite(degreesOfFreedom) ? degreesOfFreedom : null,
  };
}
