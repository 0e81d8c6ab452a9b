import type { FlowsOfPull, HeatStore } from './pull-core.js';
import type { Path } from './read-installation.js';
import type { Walked } from './walked.js';

/** A moment of a pull in numbers. */
export interface SolvedMoment {
  readonly walked: Walked<number>;
  readonly flows: FlowsOfPull;
  readonly power: number;
  readonly torque: number;
}

/** One row of a pull, in SI numbers. */
export interface PullRow {
  readonly at: number;
  readonly path: Path;
  readonly solved: SolvedMoment;
  readonly store: HeatStore;
  readonly sensor: number;
  /** Mean temperature of the metal. */
  readonly core: number;
  readonly fromCharge: number;
  readonly toCoolant: number;
  readonly stored: number;
}
