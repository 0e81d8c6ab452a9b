import { celsius, ROUNDING } from './ranges.js';
import { TRIPLE_POINT } from './saturation-pressure.js';

/** What every relation of a wick asks of its dry bulb, pressure and wet bulb. */
export const notAboveDryBulb = {
  need: 'the wet bulb must not lie above the dry bulb',
  holds: (T: number, _p: number, Tw: number): boolean => Tw <= T * ROUNDING,
};

/** What is needed where a wet bulb would give air drier than dry. */
export const DRIEST = 'the wet bulb must not lie below that of perfectly dry air';

/** Down to here a wick may hold water that has not frozen: common practice, no source. */
export const COLDEST_UNFROZEN = celsius(-10);

/** Whether a wick that reads this may carry ice or supercooled water, for all that the reading tells. */
export const mayBeEither = (Tw: number): boolean => Tw >= COLDEST_UNFROZEN && Tw < TRIPLE_POINT;

export const celsiusText = (T: number): string => `${(T - 273.15).toFixed(2).replace('-', '−')} °C`;
export const overIceText = (other: string): string => `this is over ice; over supercooled water it is ${other}`;

/** A note where the wick can be in two states, with the answer of the one that was not taken; `other` is undefined where there is none. */
export const oneState = (other: (...si: number[]) => string | undefined) => ({
  need: 'a wick that can be in one state only, wet or iced',
  otherwise: 'note' as const,
  holds: (...si: number[]): boolean => other(...si) === undefined,
  found: (...si: number[]): string => other(...si) ?? '',
});
