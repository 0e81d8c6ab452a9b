import type { Column, Quantity } from '../units/index.js';
import type { AreaUnderCurve } from './area.js';
import type { ComparedQuantity, CompareOptions } from './options.js';
import type { ChannelRole, Preparation } from '../sweep/index.js';
import type { RippleFinding } from './ripple.js';
import type {
  CorePerformance,
  EqualMixture,
  FairnessCheck,
  PredictedAgainstFound,
  Prediction,
  Split,
} from './causes.js';
import type { Estimate } from './estimate.js';
import type { Outcome } from './outcome.js';

export type * from './causes.js';
export type { Outcome } from './outcome.js';
export type { Estimate } from './estimate.js';
export type { ComparedQuantity } from './options.js';

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
  /** What was done to it since it was read. */
  readonly preparations: readonly Preparation[];
  /** Highest brake mean effective pressure over the range, where the options tell what it takes. */
  readonly highestMeanEffectivePressure: Quantity<'mean effective pressure'> | undefined;
  /** Something a reader should look at, that is no reason to refuse. */
  readonly remarks: readonly string[];
  /** The compared quantity on the comparison's grid. */
  readonly curve: Column;
  /** Its mean over the range of engine speed. */
  readonly mean: Quantity | undefined;
  /** Means over the range of the channels that explain the result: boost, charge temperature, lambda, ... */
  readonly channels: readonly { readonly name: string; readonly mean: Quantity }[];
}

/** Where the start of the pulls, in which boost still builds up, is over, and what was done about it. */
export interface SettledStart {
  /** Whether the range was shortened by it. */
  readonly isCut: boolean;
  /** Engine speed until which the last pull still builds up pressure; undefined where none does, or none tells. */
  readonly until: Quantity<'rotational speed'> | undefined;
  /** That pull. */
  readonly pull: string | undefined;
  /** Pulls that still build up pressure within the range. */
  readonly building: readonly string[];
  /** Pulls whose pressure is lower than that of the others of their set-up even after that. */
  readonly stillBuilding: readonly string[];
  /** The same in sentences. */
  readonly remarks: readonly string[];
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
  /** Standard deviation of the pulls' range means, with whatever drift they hold; undefined with fewer than two. */
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

/** A figure that people quote, one number a pull: the peak, or the value at a speed chosen beforehand. */
export interface Figure {
  /** `peak`, `at the end of the range, 6500 rpm`, `at 5000 rpm`. */
  readonly name: string;
  /**
   * Where the peak of each set-up's mean curve lies, in the figure that is of the peak or stands for it; undefined on a side that has no
   * peak inside the range, and in other figures.
   */
  readonly peak:
    | {
        readonly baseline: Quantity<'rotational speed'> | undefined;
        readonly candidate: Quantity<'rotational speed'> | undefined;
      }
    | undefined;
  readonly baseline: Quantity;
  readonly candidate: Quantity;
  readonly difference: Estimate;
}

/** The scatter of single pulls about the model that the answer is made with. */
export interface PullScatter {
  /** Standard deviation of the mean over the range from pull to pull, of both set-ups together. */
  readonly pooled: Quantity;
  /** Of each set-up alone. */
  readonly baseline: OwnScatter;
  readonly candidate: OwnScatter;
  /** Whether it is what is left after a steady drift through the day. */
  readonly afterDrift: boolean;
}

/** The scatter of one set-up's pulls. */
export interface OwnScatter {
  readonly standardDeviation: Quantity;
  /** Not whole where a drift was fitted to the pulls of both set-ups at once. */
  readonly degreesOfFreedom: number;
}

/** What the logs leave open about a channel. */
export interface OpenQuestion {
  readonly role: ChannelRole;
  /** Pulls that count and have it. */
  readonly pulls: number;
  readonly sentence: string;
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
  /** Where the start of the pulls is over, and whether the range begins there. */
  readonly settled: SettledStart;
  readonly confidence: number;
  /** The options it was made with, as they were given. */
  readonly options: CompareOptions;
  readonly worthwhile: Quantity | undefined;
  readonly outcome: Outcome;
  /** The answer in one or two sentences. */
  readonly headline: string;
  /** What the answer rests on and what was not removed: pulls, order and drift, correction. */
  readonly rests: readonly string[];
  /** Whether a steady drift over the day cannot pass for the change: it is taken out, or it cancels by the order of the pulls. */
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
  /** The area under the torque curve, where torque is compared. */
  readonly area: AreaUnderCurve | undefined;
  readonly scatter: ScatterComparison | undefined;
  /** How single pulls scatter, as the answer and the plan of the next test reckon with it. */
  readonly pullScatter: PullScatter | undefined;
  /** What each set-up's core did, where temperatures or pressures before and behind it were logged. */
  readonly cores: { readonly baseline: CorePerformance | undefined; readonly candidate: CorePerformance | undefined };
  /** What must be equal for the comparison to be fair, and whether it was. */
  readonly fairness: readonly FairnessCheck[];
  /** The comparison at equal lambda, where lambda was logged: labelled, and not the headline. */
  readonly equalMixture: EqualMixture | undefined;
  /** What charge density alone says, where pressure and temperature were logged. */
  readonly prediction: Prediction | undefined;
  /** What was predicted beside what was found, where the options give a prediction. */
  readonly predicted: PredictedAgainstFound | undefined;
  /** What the logs leave open about channels that figures are made of: each such figure says so. */
  readonly openQuestions: readonly OpenQuestion[];
  /** Whether torque follows the ripple of boost, over the accepted pulls of both set-ups; undefined where no pull shows a ripple. */
  readonly ripple: RippleFinding | undefined;
  /** Why the sides cannot be compared, or what must be asked first. */
  readonly objections: readonly string[];
  /** Cautions that bear on the answer. */
  readonly cautions: readonly string[];
  /** The answer as a terminal or notebook shows it. */
  toString(): string;
  /** The answer as plain data. */
  toJSON(): unknown;
}
