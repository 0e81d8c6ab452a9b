import type { DifferenceOf, Kind, Same } from '../units/kinds.js';
import type { Column, Note, Quantity, QuantityRecord, Source } from '../units/origin.js';
import type { UncertaintyBudget } from './budget.js';

/** How many draws, and what they shall settle. */
export interface MonteCarloOptions {
  /** A whole number from which all draws follow: the same seed gives the same result, on every machine. */
  readonly seed: number;
  /** The confidence of the intervals; 0.95 when left out. */
  readonly level?: number | undefined;
  /** This many draws; with `adaptive: true` at most so many. When left out, one million at most. */
  readonly draws?: number | undefined;
  /** Whether to stop as soon as the figures are settled (JCGM 101, 7.9). True unless `draws` is given. */
  readonly adaptive?: boolean | undefined;
  /** How many figures of the standard uncertainty matter, 1 or 2: what the linear budget is judged by. 1 when left out. */
  readonly figures?: 1 | 2 | undefined;
}

/** Whether the linear budget would have done. */
export type LinearVerdict = 'good enough' | 'not good enough' | 'too few draws to tell' | 'no budget';

/** The linear budget held against the draws (JCGM 101, clause 8). */
export interface LinearComparison<K extends Kind = Kind> {
  readonly verdict: LinearVerdict;
  /** The verdict as a sentence, with its reason. */
  readonly statement: string;
  /** What was compared; undefined where an input could not be moved to see what it does. */
  readonly budget: UncertaintyBudget<K> | undefined;
  /** How far the ends of its interval are from those of the probabilistically symmetric one. */
  readonly off: readonly [low: Quantity<DifferenceOf<K>>, high: Quantity<DifferenceOf<K>>] | undefined;
  /** How far they may be: half a unit in the last figure of the standard uncertainty that matters. */
  readonly tolerance: Quantity<DifferenceOf<K>>;
}

/** What a result may be, by putting draws of all its uncertain inputs through its graph (JCGM 101). */
export interface MonteCarloUncertainty<K extends Kind = Kind> {
  /** The result as it was computed, from the best estimates of its inputs. */
  readonly value: Quantity<K>;
  /**
   * The mean of what it may be. Where the result bends with its inputs that is not the value.
   *
   * @throws CalculationError where there is none, because an input has one degree of freedom (two repeats).
   */
  readonly mean: Quantity<K>;
  /** As likely too high as too low. */
  readonly median: Quantity<K>;
  /**
   * The standard uncertainty: the standard deviation of what it may be.
   *
   * @throws CalculationError where there is none, because an input has two degrees of freedom (three repeats). The intervals hold all the same.
   */
  readonly standard: Quantity<DifferenceOf<K>>;
  /** The confidence the draws were made for. */
  readonly level: number;
  /** The interval that leaves as much below as above, for the confidence asked unless said. */
  interval(level?: number): readonly [low: Quantity<K>, high: Quantity<K>];
  /** The shortest interval, for the confidence asked unless said. It differs where the distribution leans, and follows it to an edge. */
  shortestInterval(level?: number): readonly [low: Quantity<K>, high: Quantity<K>];
  /** How likely the result is above a limit: the share of the draws, from 0 to 1. */
  chanceAbove(limit: Quantity<Same<K>>): number;
  /** What was drawn, in ascending order, without impossible draws. */
  readonly drawn: Column<K>;
  /** How many draws were made. */
  readonly draws: number;
  /** How many of them a step refused, or an input cannot have. They are left out. */
  readonly impossible: number;
  readonly seed: number;
  /** With 95 % confidence no figure is off by more than this for want of draws; the standard uncertainty aside where degrees of freedom are few. */
  readonly settledTo: Quantity<DifferenceOf<K>>;
  /** Whether that is within a fifth of the tolerance of {@link linear}. */
  readonly settled: boolean;
  readonly linear: LinearComparison<K>;
  /** What a reader must know: notes of the value, and those of the draws with the share of them. */
  readonly notes: readonly Note[];
  /** What the method rests on. */
  readonly sources: readonly Source[];
  /** Value and standard uncertainty in the short form of budgets. */
  toString(): string;
  /** As aligned text. */
  toText(): string;
  /** As a Markdown table. */
  toMarkdown(): string;
  /** As an HTML table, every label escaped. */
  toHtml(): string;
  /** As plain data, without the draws. */
  toJSON(): MonteCarloRecord;
}

/** What a Monte Carlo result writes as JSON. Mean and standard uncertainty are null where there is none. */
export interface MonteCarloRecord {
  readonly value: QuantityRecord;
  readonly mean: QuantityRecord | null;
  readonly median: QuantityRecord;
  readonly standard: QuantityRecord | null;
  readonly level: number;
  readonly interval: readonly [QuantityRecord, QuantityRecord];
  readonly shortestInterval: readonly [QuantityRecord, QuantityRecord];
  readonly draws: number;
  readonly impossible: number;
  readonly seed: number;
  readonly settledTo: QuantityRecord;
  readonly settled: boolean;
  readonly linear: {
    readonly verdict: LinearVerdict;
    readonly statement: string;
    readonly interval: readonly [QuantityRecord, QuantityRecord] | null;
    readonly tolerance: QuantityRecord;
  };
  readonly notes: readonly string[];
  readonly sources: readonly Source[];
}
