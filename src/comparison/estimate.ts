import type { Kind, Quantity } from '../units/index.js';

/** One number with the interval that holds it, 95 % unless the options say otherwise. */
export interface Estimate<K extends Kind = Kind> {
  readonly value: Quantity<K>;
  readonly low: Quantity<K>;
  readonly high: Quantity<K>;
  readonly standardUncertainty: Quantity<K>;
  readonly degreesOfFreedom: number;
}
