import type { Leaf, Source } from '../../units/origin.js';
import type { Formula, ShownValue } from '../formula/index.js';

/** A value that went in from outside. */
export interface ExplainedValue {
  readonly name: string;
  readonly text: string;
  readonly role: Leaf['role'];
  /** How uncertain it is, in words; empty where nothing is known. */
  readonly uncertainty: string;
  readonly source: Source | undefined;
}

/** One use of a formula: numbers for its symbols, and what came out. */
export interface ExplainedCase {
  readonly name: string;
  /** What stands in place of each symbol. */
  readonly numbers: Readonly<Record<string, ShownValue | { readonly list: readonly ShownValue[] }>>;
  /** The result in SI, where that is not what it shows in. */
  readonly resultSi: ShownValue | undefined;
  readonly result: ShownValue;
  readonly resultText: string;
}

/** One step: a formula once, with one or more uses. */
export interface ExplainedStep {
  readonly name: string;
  readonly symbol: string;
  readonly formulaText: string;
  readonly formula: Formula;
  /** Whether the formula is an equation that the result solves. */
  readonly isEquation: boolean;
  readonly cases: readonly ExplainedCase[];
  /** Functions the formula names, with their own formulas. */
  readonly uses: readonly { readonly symbol: string; readonly name: string; readonly formulaText: string }[];
  readonly sources: readonly Source[];
  readonly notes: readonly string[];
}

/** A value found by solving: the named residual is zero at it. */
export interface ExplainedSolution {
  readonly name: string;
  readonly text: string;
  readonly residual: string;
}

/** The whole of how a result was made, as data. */
export interface ExplanationModel {
  readonly name: string;
  readonly text: string;
  readonly given: readonly ExplainedValue[];
  readonly assumed: readonly ExplainedValue[];
  readonly steps: readonly ExplainedStep[];
  readonly solutions: readonly ExplainedSolution[];
  readonly notes: readonly string[];
}
