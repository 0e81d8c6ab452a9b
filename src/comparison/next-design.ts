import {
  bestOrder,
  equalSides,
  orderDesign,
  powerOfTest,
  studentTFactor,
  withOwnInstruments,
  type PlanDesign,
} from '../statistics/index.js';
import type { OwnInstruments } from './instruments.js';
import { FEWEST_PULLS_FOR_DRIFT } from './order.js';

/** What the next test is reckoned with. */
export interface NextBasis {
  /** Scatter from pull to pull, in SI. */
  readonly scatter: number;
  /** Whether a steady drift is taken out of the next test as it was of this one. */
  readonly afterDrift: boolean;
  readonly instruments: OwnInstruments | undefined;
  /** Two-sided chance of error. */
  readonly error: number;
}

/** More than these cost more than they save, and nobody makes them. */
const MOST_IN_ORDER = 60;

/** A test of so many pulls in all, in the best order. */
export function nextDesign(pulls: number, { scatter, afterDrift, instruments }: NextBasis): PlanDesign {
  const perSide = pulls / 2;
  const plain =
    afterDrift && pulls >= FEWEST_PULLS_FOR_DRIFT && pulls <= MOST_IN_ORDER
      ? orderDesign(bestOrder(pulls))
      : equalSides(perSide);
  if (instruments === undefined) return plain;
  return withOwnInstruments(plain, (instruments.standard / scatter) ** 2, instruments.degreesOfFreedom);
}

/** As good as known. */
const MANY = 1e6;

/** Half-width of the interval that the instruments leave by themselves, however many pulls are made. */
export function instrumentsHalfWidth({ standard, degreesOfFreedom }: OwnInstruments, error: number): number {
  return studentTFactor(error, degreesOfFreedom) * standard;
}

/** Whether no number of pulls finds the difference with the wanted chance, since the instruments alone hide it. */
export function instrumentsHide(
  difference: number,
  { instruments, error }: Pick<NextBasis, 'instruments' | 'error'>,
  power: number,
): boolean {
  if (instruments === undefined) return false;
  const degreesOfFreedom = Math.min(MANY, instruments.degreesOfFreedom);
  return powerOfTest(difference, instruments.standard, { varianceFactor: 1, degreesOfFreedom }, { error }) < power;
}
