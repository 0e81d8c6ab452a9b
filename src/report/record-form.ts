import type { OptionsRecord, QuantityInRecord } from '../comparison/options-record.js';

/** One pull that an analysis rests on. */
export type PullInRecord = {
  readonly setUp: string;
  readonly pull: string;
  /** The file's name without the folders above it, which are another's on another machine. */
  readonly file: string;
  readonly rows: number;
  /** SHA-256 of the file in hexadecimal. */
  readonly sha256: string;
  /** Which of {@link AnalysisRecord.readings} it was read by, from 1. */
  readonly reading: number;
  readonly questions: readonly { readonly code: string; readonly message: string; readonly mend: string }[];
  readonly preparations: readonly {
    readonly code: string;
    readonly role: string | null;
    readonly readings: number;
    readonly message: string;
  }[];
};

/** One way in which logs were read. */
export type ReadingInRecord = {
  readonly decimal: string;
  readonly separator: string;
  readonly columns: readonly {
    readonly role: string;
    readonly header: string;
    readonly kind: string;
    readonly unit: string;
    /** Whether it was said which column this is, or its header was understood. */
    readonly how: 'map' | 'guess';
    readonly unitFrom: string;
  }[];
};

/** An interval as plain data. */
export type EstimateInRecord = {
  readonly value: QuantityInRecord;
  readonly low: QuantityInRecord;
  readonly high: QuantityInRecord;
  readonly standardUncertainty: QuantityInRecord;
  readonly degreesOfFreedom: number | null;
};

/** One comparison as plain data: what it was told, and what came out. */
export type ComparisonInRecord = {
  readonly baseline: string;
  readonly candidate: string;
  /** Every option, those left out with what stood for them. */
  readonly options: OptionsRecord;
  /** Which options were given, by name. */
  readonly optionsGiven: readonly string[];
  readonly pulls: readonly {
    readonly setUp: string;
    readonly pull: string;
    /** Place in the order of the day, from 1. */
    readonly order: number | null;
    readonly accepted: boolean;
    readonly refusals: readonly {
      readonly code: string;
      readonly reason: string;
      readonly overruled: boolean;
      readonly because: string | null;
    }[];
    readonly mean: QuantityInRecord | null;
    /** What was done to it before it was compared, in words. */
    readonly prepared: readonly string[];
  }[];
  /** The engine speeds that were averaged over. */
  readonly engineSpeed: {
    readonly from: QuantityInRecord;
    readonly to: QuantityInRecord;
    readonly step: QuantityInRecord;
  };
  readonly compared: string;
  readonly basis: string;
  readonly outcome: string;
  readonly headline: string;
  readonly objections: readonly string[];
  readonly driftTakenOut: boolean;
  readonly overall: EstimateInRecord | null;
  readonly relative: number | null;
  readonly parts: readonly { readonly factor: string; readonly part: EstimateInRecord }[];
  readonly figures: readonly { readonly name: string; readonly difference: EstimateInRecord }[];
  /** The headline's interval by draws, with the seed that all of them follow from. */
  readonly draws: {
    readonly seed: number;
    readonly draws: number;
    readonly level: number;
    readonly low: QuantityInRecord;
    readonly high: QuantityInRecord;
    readonly budget: string;
  } | null;
};

/** Everything another person needs to do an analysis again, as plain data. */
export interface AnalysisRecord {
  readonly record: 'comparison of set-ups';
  /** Of this form of record. */
  readonly form: 1;
  readonly library: { readonly name: 'coldside'; readonly version: string };
  /** When it was made, where that was given. */
  readonly made: string | null;
  readonly pulls: readonly PullInRecord[];
  readonly readings: readonly ReadingInRecord[];
  readonly notRead: readonly { readonly setUp: string; readonly file: string; readonly why: string }[];
  /** The order of the pulls through the day, and where it came from. */
  readonly order: { readonly from: string; readonly words: string; readonly pulls: readonly string[] } | null;
  readonly comparisons: readonly ComparisonInRecord[];
  /** SHA-256 over the text of the record without this field, as {@link recordText} writes it: a record that was changed shows it. */
  readonly sha256: string;
}

/** What a record calls itself. */
export const RECORD = 'comparison of set-ups';

/** The form of record that this version writes and reads. */
export const FORM = 1;
