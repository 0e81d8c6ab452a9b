import type { Pull } from '../sweep/index.js';
import type { Outlier } from '../sweep/channel-quality.js';
import type { GriddedPull } from './curves.js';
import type { PullResult } from './result.js';

/** A pull with its channels on the grid and what the comparison made of it. */
export interface TakenPull {
  readonly pull: Pull;
  readonly grid: GriddedPull;
  readonly result: PullResult;
  /** Readings within the range that jump away from their neighbours and back, in the channels that bear on the answer. */
  readonly outliers: readonly Outlier[];
}
