import { ROUNDING } from './ranges.js';

/** What every relation of a wick asks of its dry bulb, pressure and wet bulb. */
export const notAboveDryBulb = {
  need: 'the wet bulb must not lie above the dry bulb',
  holds: (T: number, _p: number, Tw: number): boolean => Tw <= T * ROUNDING,
};

/** What is needed where a wet bulb would give air drier than dry. */
export const DRIEST = 'the wet bulb must not lie below that of perfectly dry air';
