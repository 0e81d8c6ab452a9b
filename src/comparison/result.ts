import type { Column, Kind, Quantity } from '../units/index.js';
import type { ComparedQuantity, CompareOptions } from './options.js';

export type { ComparedQuantity } from './options.js';

/** The outcome in a word; where several apply, the first of this list that does. */
export type Outcome =
  | 'cannot be compared'
  | 'unit suspected'
  | 'too few pulls'
  | 'better'
  | 'worse'
  | 'better, within the margin'
  | 'worse, within the margin'
  | 'equivalent'
  | 'not resolved';

/** One number with the interval that holds it, 95 % unless the options say otherwise. */
export interface Estimate<K extends Kind = Kind> {
  readonly value: Quantity<K>;
  readonly low: Quantity<K>;
  readonly high: Quantity<K>;
  readonly standardUncertainty: Quantity<K>;
  readonly degreesOfFreedom: number;
}

/** Why a pull was left out: which limit, by how much, and where. */
export interface Refusal {
  /** Stable: `mixture`, `boost`, `charge temperature at the start`, `missing data`, `speed range`, `left out by hand`, ... */
  readonly code: string;
  /** One sentence with numbers and units. */
  readonly reason: string;
  /** Whether the user overruled it, so that the pull counts after all. */
  readonly overruled: boolean;
  /** The reason given for overruling it. */
  readonly because: string | undefined;
}

/** One pull as the comparison took it. */
export interface PullResult {
  readonly name: string;
  readonly file: string;
  /** Place in the order of the day, from 1; undefined where the order is not known. */
  readonly order: number | undefined;
  readonly refusals: readonly Refusal[];
  /** Counts in the answer. */
  readonly accepted: boolean;
  /** Something a reader should look at, that is no reason to refuse. */
  readonly remarks: readonly string[];
  /** The compared quantity on the comparison's grid. */
  readonly curve: Column;
  /** Its mean over the range of engine speed. */
  readonly mean: Quantity | undefined;
  /** Means over the range of the channels that explain the result: boost, charge temperature, lambda, ... */
  readonly channels: readonly { readonly name: string; readonly mean: Quantity }[];
}

/** One set-up's pulls together. */
export interface SideResult {
  readonly name: string;
  readonly pulls: readonly PullResult[];
  /** Mean over the accepted pulls at each speed. */
  readonly mean: Column;
  /** Standard deviation from pull to pull at each speed. */
  readonly scatter: Column;
  /** Mean over the range and over the accepted pulls, with its history; undefined with none accepted. */
  readonly overall: Quantity | undefined;
  /** Standard deviation of the pulls' range means; undefined with fewer than two. */
  readonly overallScatter: Quantity | undefined;
}

/** The difference, candidate minus baseline, over engine speed. */
export interface DifferenceCurve {
  readonly engineSpeed: Column<'rotational speed'>;
  readonly difference: Column;
  readonly standardError: Column;
  /** Interval for one speed chosen beforehand. */
  readonly pointwise: { readonly low: Column; readonly high: Column };
  /** Band for the whole curve at once; only it says where a difference is resolved. */
  readonly simultaneous: { readonly low: Column; readonly high: Column };
  readonly degreesOfFreedom: number;
  /** How the band was found, in a sentence for the report. */
  readonly method: string;
  /** Runs of speeds with one verdict, from low to high. */
  readonly ranges: readonly SpeedRange[];
}

/** Neighbouring speeds with one verdict. */
export interface SpeedRange {
  readonly from: Quantity<'rotational speed'>;
  readonly to: Quantity<'rotational speed'>;
  readonly outcome: 'better' | 'worse' | 'equivalent' | 'not resolved';
  /** Mean difference over these speeds. */
  readonly difference: Quantity;
}

/** One factor's part of the change; the parts add up to it exactly. */
export interface Contribution {
  /** `charge pressure`, `charge temperature`, `dry fraction of the charge`, `mixture`, `volumetric efficiency`, `conversion efficiency`, ... */
  readonly factor: string;
  readonly part: Estimate;
  /** Change of the factor itself in per cent: +4.1 % means that alone would raise the result by 4.1 %. */
  readonly percent: number;
  /** What the factor was on each side, where that is a reading. */
  readonly baseline: Quantity | undefined;
  readonly candidate: Quantity | undefined;
}

/** Where the change comes from. */
export interface Split {
  readonly contributions: readonly Contribution[];
  readonly total: Estimate;
  /** The parts speed by speed: for each factor a column over the engine speeds of the comparison. */
  readonly bySpeed: readonly { readonly factor: string; readonly part: Column }[];
  /** What these channels cannot tell apart, and which sensor would. */
  readonly notSeparated: readonly string[];
}

/** A figure that people quote, one number a pull: the peak, or the value at a speed chosen beforehand. */
export interface Figure {
  /** `peak`, `at 5000 rpm`. */
  readonly name: string;
  readonly baseline: Quantity;
  readonly candidate: Quantity;
  readonly difference: Estimate;
}

/** What a set-up's core did over the range, by the temperatures that were logged. */
export interface CorePerformance {
  /** Air-side effectiveness, mean over the range and the pulls. */
  readonly effectiveness: Quantity<'ratio'>;
  /** Standard deviation from pull to pull. */
  readonly scatter: Quantity<'ratio'> | undefined;
  /** What the cooling air was taken as. */
  readonly against: 'air at the core face' | 'room air';
}

/** What charge density alone would have done, as shares of the baseline. */
export interface Prediction {
  /** By density alone. */
  readonly byDensity: number;
  /** With the temperature ratio to the power 0.6, since colder charge takes more heat on its way in. */
  readonly withUsualExponent: number;
  /** What was found. */
  readonly found: number;
}

/** The difference that is left at equal lambda: a hint, and no result. */
export interface EqualMixture {
  readonly difference: Estimate;
  /** Candidate minus baseline. */
  readonly lambdaChange: number;
}

/** How the scatter of the two set-ups compares. */
export interface ScatterComparison {
  /** Candidate over baseline variance of the range means. */
  readonly varianceRatio: number;
  /** Two-sided chance of a ratio this far from 1 if the scatter were alike. */
  readonly pValue: number;
  /** Largest difference to expect between two single pulls of one set-up, in 95 of 100 cases (ISO 5725). */
  readonly repeatabilityLimit: { readonly baseline: Quantity; readonly candidate: Quantity };
}

/** The answer of {@link compare}. */
export interface Comparison {
  readonly baseline: SideResult;
  readonly candidate: SideResult;
  readonly compared: ComparedQuantity;
  /** Where the quantity was measured or how it was derived: "at the hub, as logged". */
  readonly basis: string;
  readonly engineSpeed: {
    readonly from: Quantity<'rotational speed'>;
    readonly to: Quantity<'rotational speed'>;
    readonly step: Quantity<'rotational speed'>;
  };
  readonly confidence: number;
  /** The options it was made with, as they were given. */
  readonly options: CompareOptions;
  readonly worthwhile: Quantity | undefined;
  readonly outcome: Outcome;
  /** The answer in one or two sentences. */
  readonly headline: string;
  /** What the answer rests on and what was not removed: pulls, order and drift, correction. */
  readonly rests: readonly string[];
  /** Whether the order of the pulls lets drift over the day be told from the change. */
  readonly driftSeparable: boolean;
  /** Whether a steady drift through the day is taken out of the difference and its band. */
  readonly driftTakenOut: boolean;
  /** What was found beside the headline, a sentence each: peak, core, density, scatter. */
  readonly findings: readonly string[];
  /** What to do next. */
  readonly next: readonly string[];
  /** Mean difference over the range; undefined when there is no answer. Its history explains it and its budget is the interval's. */
  readonly overall: Estimate | undefined;
  /** The same relative to the baseline, as a ratio: 0.024 is +2.4 %. */
  readonly relative: number | undefined;
  readonly curve: DifferenceCurve | undefined;
  readonly split: Split | undefined;
  /** Peak, and the values at speeds asked for. */
  readonly figures: readonly Figure[];
  readonly scatter: ScatterComparison | undefined;
  /** What each set-up's core did, where its temperatures were logged. */
  readonly cores: { readonly baseline: CorePerformance | undefined; readonly candidate: CorePerformance | undefined };
  /** The difference at equal lambda, where lambda was logged and pulls are enough; a hint, and no result. */
  readonly equalMixture: EqualMixture | undefined;
  /** What charge density alone says, where pressure and temperature were logged. */
  readonly prediction: Prediction | undefined;
  /** Why the sides cannot be compared, or what must be asked first. */
  readonly objections: readonly string[];
  /** Cautions that bear on the answer. */
  readonly cautions: readonly string[];
  /** The answer as a terminal or notebook shows it. */
  toString(): string;
  /** The answer as plain data. */
  toJSON(): unknown;
}
