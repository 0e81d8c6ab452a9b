import type { Outcome } from './result.js';

/** Something that stands before any verdict. */
export interface Objection {
  readonly outcome: Outcome;
  readonly sentence: string;
  /** What to do about it. */
  readonly mend?: string;
}
