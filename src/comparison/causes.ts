import type { Column, Kind, Quantity } from '../units/index.js';
import type { Estimate } from './estimate.js';
import type { Outcome } from './outcome.js';

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

/** One factor's part of the change over engine speed; at each speed the parts add up to the difference there. */
export interface ContributionCurve {
  readonly factor: string;
  /** Missing where a pull lacks a channel at that speed. */
  readonly part: Column;
  /** Interval for one speed chosen beforehand. */
  readonly pointwise: { readonly low: Column; readonly high: Column };
  /** Band for this factor's whole curve at once: only it says where the factor raised or lowered the result. Not for several factors at once. */
  readonly simultaneous: { readonly low: Column; readonly high: Column };
  /** Where the band clears zero, from low to high speed. */
  readonly ranges: readonly {
    readonly from: Quantity<'rotational speed'>;
    readonly to: Quantity<'rotational speed'>;
    readonly outcome: 'raised' | 'lowered';
    /** Mean part over these speeds. */
    readonly part: Quantity;
  }[];
  /** How the band was found, in a sentence for the report. */
  readonly method: string;
}

/** Where the change comes from. */
export interface Split {
  readonly contributions: readonly Contribution[];
  readonly total: Estimate;
  /** The parts speed by speed, each over the engine speeds of the comparison. */
  readonly bySpeed: readonly ContributionCurve[];
  /** What these channels cannot tell apart, and which sensor would. */
  readonly notSeparated: readonly string[];
}

/** One thing that must be equal for the comparison to be fair. */
export interface FairnessCheck {
  readonly what:
    | 'mixture'
    | 'spark'
    | 'boost control'
    | 'manifold pressure'
    | 'direction of the pulls'
    | 'speed range'
    | 'ramp rate'
    | 'oil temperature'
    | 'coolant temperature'
    | 'charge temperature before the pull'
    | 'humidity'
    | 'air before the compressor'
    | 'room temperature'
    | 'intake temperature'
    | 'barometer'
    | 'fuel pressure';
  readonly state: 'equal' | 'differs' | 'not known';
  /** What it was on each side, as text with its unit; empty where it is not known. */
  readonly baseline: string;
  readonly candidate: string;
  /** The difference that is allowed, as text; empty where there is none. */
  readonly allowed: string;
  /** Whether the set-ups cannot be compared because of it. */
  readonly stops: boolean;
  readonly sentence: string;
}

/** What a set-up's core did over the range, from what was logged before and behind it. */
export interface CorePerformance {
  /** Air-side effectiveness; undefined where its temperatures were not logged. */
  readonly effectiveness: CoreFigure<'ratio'> | undefined;
  /** What the cooling air was taken as. */
  readonly against: 'air at the core face' | 'room air';
  /** From the compressor's outlet to the manifold, ducts included; undefined where the pressure before the core was not logged. */
  readonly pressureLoss: CoreFigure<'pressure difference'> | undefined;
}

/** One figure of a core. */
export interface CoreFigure<K extends Kind> {
  /** Over the range and the pulls. */
  readonly mean: Quantity<K>;
  /** Standard deviation from pull to pull. */
  readonly scatter: Quantity<K> | undefined;
  /** Mean of the pulls at each engine speed of the comparison. */
  readonly bySpeed: Column<K>;
}

/** What charge density alone would have done, as shares of the baseline, with the interval of the pulls and their instruments. */
export interface Prediction {
  /** By density alone. */
  readonly byDensity: Estimate<'ratio'>;
  /** With the temperature ratio to the power 0.6, since colder charge takes more heat on its way in. */
  readonly withUsualExponent: Estimate<'ratio'>;
  /** What was found. */
  readonly found: Estimate<'ratio'>;
}

/** What was predicted beside what was found, as shares of the baseline. */
export interface PredictedAgainstFound {
  readonly predicted: Estimate<'ratio'>;
  readonly found: Estimate<'ratio'>;
  /** Found less predicted, with the interval of both. */
  readonly gap: Estimate<'ratio'>;
  /** `agree` where the interval of the gap holds zero. */
  readonly verdict: 'agree' | 'found more' | 'found less';
  readonly sentence: string;
}

/** What a difference of mixture is worth by one way of telling, and the difference that is left at equal lambda. */
export interface MixtureWorth {
  /** `pulls`: how the quantity went with lambda from pull to pull within the set-ups. `given`: the figure in the options. */
  readonly by: 'pulls' | 'given';
  /** Change of the compared quantity for 0.01 of lambda leaner. */
  readonly perHundredth: Estimate;
  /** What the difference of lambda between the set-ups did. */
  readonly worth: Estimate;
  /** Candidate minus baseline at equal lambda. Not the headline. */
  readonly difference: Estimate;
  /** The outcome that this difference would have. Not the outcome of the comparison. */
  readonly outcome: Outcome;
}

/** The comparison at equal lambda: labelled, beside the headline, and never in its place. */
export interface EqualMixture {
  readonly label: 'at equal lambda, not the headline';
  /** Mean lambda of each set-up. */
  readonly lambda: { readonly baseline: number; readonly candidate: number };
  /** Candidate minus baseline. */
  readonly lambdaChange: number;
  /** Standard deviation of the pulls' mean lambda within the set-ups. */
  readonly lambdaScatter: number;
  /** Whether the difference is large enough to be told: beyond the limit, or 0.01. */
  readonly matters: boolean;
  /** By each way of telling that there is. */
  readonly ways: readonly MixtureWorth[];
  /** Why the pulls themselves cannot tell, where they cannot. */
  readonly notTold: string | undefined;
  /** All of it in sentences. */
  readonly sentences: readonly string[];
}
