import type { DifferenceOf, Kind } from '../units/kinds.js';
import type { Quantity, QuantityRecord } from '../units/origin.js';

/** What one input adds to the uncertainty of a result. */
export interface UncertaintyContribution<K extends Kind = Kind> {
  /** The name of the input. */
  readonly label: string;
  /** The input itself, to hand to `whatIf`. */
  readonly input: Quantity;
  /** Its standard uncertainty. */
  readonly standard: Quantity;
  /** How well that is known; Infinity where it is taken as exact. */
  readonly degreesOfFreedom: number;
  /** Change of the result per change of the input, both in SI units. */
  readonly sensitivity: number;
  /** Standard uncertainty times sensitivity, with its sign: what the result moves if the input moves by its uncertainty. */
  readonly contribution: Quantity<DifferenceOf<K>>;
  /** Share of the variance of the result; shares add up to 1. Below zero where a correlation makes the input take away from it. */
  readonly share: number;
  /** The name of the group of inputs read together, if it is of one. */
  readonly group: string | undefined;
}

/** How uncertain a result is, and through what: the budget of JCGM 100 (the GUM). */
export interface UncertaintyBudget<K extends Kind = Kind> {
  /** The result the budget is of. */
  readonly value: Quantity<K>;
  /** The standard uncertainty, of the kind of differences: a temperature difference for a temperature. */
  readonly standard: Quantity<DifferenceOf<K>>;
  /** Effective degrees of freedom by Welch and Satterthwaite, not rounded; Infinity where every uncertainty is taken as exact. */
  readonly degreesOfFreedom: number;
  /** What each uncertain input adds, largest share first. */
  readonly contributions: readonly UncertaintyContribution<K>[];
  /** Standard uncertainties on either side that hold the result with that confidence, by Student's t. */
  coverageFactor(level?: number): number;
  /** The uncertainty expanded to a confidence, 0.95 unless said: the half width of the interval. */
  expanded(level?: number): Quantity<DifferenceOf<K>>;
  /** The lower and upper end of the interval that holds the value with a confidence, 0.95 unless said. */
  interval(level?: number): readonly [low: Quantity<K>, high: Quantity<K>];
  /** Value and standard uncertainty in the short form of budgets: `250.3(12) kW` is 250.3 kW with 1.2 kW. */
  toString(): string;
  /** The budget as aligned text, with the interval of a confidence, 0.95 unless said. */
  toText(level?: number): string;
  /** The budget as a Markdown table. */
  toMarkdown(level?: number): string;
  /** The budget as an HTML table, every label escaped. */
  toHtml(level?: number): string;
  /** The budget as plain data. */
  toJSON(): UncertaintyRecord;
}

/** What a budget writes as JSON. Degrees of freedom are null where they are infinite. */
export interface UncertaintyRecord {
  readonly value: QuantityRecord;
  readonly standard: QuantityRecord;
  readonly degreesOfFreedom: number | null;
  readonly contributions: readonly {
    readonly label: string;
    readonly standard: QuantityRecord;
    readonly degreesOfFreedom: number | null;
    readonly sensitivity: number;
    readonly contribution: QuantityRecord;
    readonly share: number;
    readonly group?: string;
  }[];
}
