import { calculation, input, output, source } from '../calculation/index.js';
import { KNOCK_CAUTIONS } from './cautions.js';

const RATING = { min: 20, max: 150 } as const;

/**
 * Octane number that an engine finds a fuel to have, between and beyond its two ratings.
 *
 * The weighting is 0 in the research test and 1 in the motor test. Boosted engines with cooled charge run colder at a
 * given pressure than the research test does: about 0 to -1, so that a fuel with a large spread of its ratings is worth
 * more to them than its research number.
 *
 * @function
 * @returns The octane index, with the cautions of this topic.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * octaneIndex({
 *   researchOctaneNumber: octaneNumber(98),
 *   motorOctaneNumber: octaneNumber(87),
 *   weighting: ratio(-0.5),
 * }).in('1') //=> 103.5
 */
export const octaneIndex = calculation({
  name: 'octane index',
  task: 'compare knock margins',
  inputs: {
    /** Research octane number, RON. */
    researchOctaneNumber: input('RON', 'octane number', { ...RATING, typical: 98 }),
    /** Motor octane number, MON. */
    motorOctaneNumber: input('MON', 'octane number', { ...RATING, typical: 87 }),
    /** Weighting of the difference between the two, K: not a constant of the engine, it moves with its working point. */
    weighting: input('K', 'ratio', { min: -3, max: 3, trusted: [-1, 1], typical: -0.5 }),
  },
  output: output('OI', 'octane number', '1'),
  formula: 'RON - K * (RON - MON)',
  si: (RON, MON, K) => RON - K * (RON - MON),
  rules: [
    {
      need: 'a motor octane number not above the research octane number',
      holds: (RON, MON) => MON <= RON,
      otherwise: 'note',
    },
  ],
  notes: KNOCK_CAUTIONS,
  sources: [
    source('sae2017octane', 'weighting 0 in the research and 1 in the motor test by definition', 'read'),
    source('kalghatgi2001', 'weighting below 0 in boosted engines, about 0 to -1', 'memory'),
  ],
});
