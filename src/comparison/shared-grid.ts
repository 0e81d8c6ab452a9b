import type { Column, Quantity } from '../units/index.js';

/** The grid that all pulls of a comparison share. */
export interface SharedGrid {
  readonly from: Quantity<'rotational speed'>;
  readonly to: Quantity<'rotational speed'>;
  readonly step: Quantity<'rotational speed'>;
  readonly bandwidth: Quantity<'rotational speed'>;
  /** The engine speeds as one column, so that in a worked example they are one given value and not one for each pull. */
  readonly engineSpeed: Column<'rotational speed'>;
}
