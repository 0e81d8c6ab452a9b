import { calculation, commonPractice, derived, input, output } from '../../calculation/index.js';
import { CORRECTED_FLOW } from '../bounds.js';

const FLOW = { ...CORRECTED_FLOW, min: 1e-6 } as const;
const RATIO = { min: 1, max: 12, typical: 2.17 } as const;
const LEFT_OF_SURGE = 'a flow above the surge flow (below it the compressor surges)';
const DEFINITIONS = derived('definition; several margins go by one name, so name the one in use');

/**
 * Surge margin at constant pressure ratio: the share by which flow may fall before the compressor surges.
 *
 * What happens when an engine takes less at the same boost. {@link surgeMarginAtSpeed} is another figure of the same name.
 *
 * @function
 * @returns One ratio. Negative, with a note, left of the surge line.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * surgeMargin({ correctedFlow: massFlow(200, 'g/s'), surgeFlow: massFlow(150, 'g/s') }).in('%') //=> 25
 */
export const surgeMargin = calculation({
  name: 'surge margin at constant pressure ratio',
  task: 'compress the charge',
  inputs: {
    /** Corrected flow of the operating point. */
    correctedFlow: input('mc', 'mass flow', { ...FLOW, typical: 0.21 }),
    /** Corrected flow of the surge line at the same pressure ratio. */
    surgeFlow: input('ms', 'mass flow', { ...FLOW, typical: 0.12 }),
  },
  output: output('SM', 'ratio', '%'),
  formula: '1 - ms / mc',
  si: (mc, ms) => (mc - ms) / mc,
  rules: [{ need: LEFT_OF_SURGE, holds: (mc, ms) => mc >= ms, otherwise: 'note' }],
  rises: ['mc'],
  falls: ['ms'],
  sources: [DEFINITIONS, commonPractice('surge margin by flow at constant pressure ratio')],
});

/**
 * Surge margin at constant speed: by how much the throttle line of the operating point, pressure ratio over flow, lies below that of
 * surge.
 *
 * The usual figure of compressor makers' rigs, where speed is held and the outlet is throttled.
 *
 * @function
 * @returns One ratio. Negative, with a note, left of the surge line.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * const surge = { surgeFlow: massFlow(150, 'g/s'), surgePressureRatio: ratio(2.4) };
 * surgeMarginAtSpeed({ correctedFlow: massFlow(200, 'g/s'), pressureRatio: ratio(2.2), ...surge }).in('%') //=> 45.4545
 */
export const surgeMarginAtSpeed = calculation({
  name: 'surge margin at constant speed',
  task: 'compress the charge',
  inputs: {
    /** Corrected flow of the operating point. */
    correctedFlow: input('mc', 'mass flow', { ...FLOW, typical: 0.21 }),
    /** Pressure ratio of the operating point. */
    pressureRatio: input('PR', 'ratio', RATIO),
    /** Corrected flow at surge on the same speed line. */
    surgeFlow: input('ms', 'mass flow', { ...FLOW, typical: 0.15 }),
    /** Pressure ratio at surge on the same speed line. */
    surgePressureRatio: input('PRs', 'ratio', { ...RATIO, typical: 2.4 }),
  },
  output: output('SM', 'ratio', '%'),
  formula: 'PRs / PR * mc / ms - 1',
  si: (mc, PR, ms, PRs) => (PRs * mc - PR * ms) / (PR * ms),
  rules: [{ need: LEFT_OF_SURGE, holds: (mc, _PR, ms) => mc >= ms, otherwise: 'note' }],
  rises: ['mc', 'PRs'],
  falls: ['PR', 'ms'],
  sources: [DEFINITIONS, commonPractice('surge margin by throttle line at constant speed')],
});

/**
 * Choke margin at constant speed: the share by which flow may still rise before the compressor passes no more.
 *
 * @function
 * @returns One ratio. Negative, with a note, beyond choke.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * chokeMargin({ correctedFlow: massFlow(200, 'g/s'), chokeFlow: massFlow(250, 'g/s') }).in('%') //=> 25
 */
export const chokeMargin = calculation({
  name: 'choke margin',
  task: 'compress the charge',
  inputs: {
    /** Corrected flow of the operating point. */
    correctedFlow: input('mc', 'mass flow', { ...FLOW, typical: 0.21 }),
    /** Corrected flow at the choke end of the same speed line. */
    chokeFlow: input('mch', 'mass flow', { ...FLOW, typical: 0.26 }),
  },
  output: output('CM', 'ratio', '%'),
  formula: 'mch / mc - 1',
  si: (mc, mch) => (mch - mc) / mc,
  rules: [
    {
      need: 'a flow of at most the choke flow (the compressor passes no more)',
      holds: (mc, mch) => mc <= mch,
      otherwise: 'note',
    },
  ],
  rises: ['mch'],
  falls: ['mc'],
  sources: [DEFINITIONS],
});
