import { calculation, derived, input, output, source } from '../calculation/index.js';

const POWER = { min: 1, max: 1e8 } as const;

/**
 * What one factor of a product did to its change: the part of a change of power that goes with a change of charge pressure, of
 * charge temperature, of breathing.
 *
 * Weighted with the logarithmic mean of both powers, so that the parts of all factors add up to the change exactly, whichever side is
 * called the first.
 *
 * @function
 * @returns One power; below zero where the factor took some.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * contributionToChange({ powerBefore: power(160, 'kW'), powerAfter: power(164, 'kW'), factorRatio: ratio(1.0225) }).in('kW') //=> 3.60442
 */
export const contributionToChange = calculation({
  name: 'contribution to a change of power',
  task: 'follow the charge',
  inputs: {
    /** Power before. */
    powerBefore: input('P_1', 'power', { ...POWER, typical: 160e3 }),
    /** Power after. */
    powerAfter: input('P_2', 'power', { ...POWER, typical: 164e3 }),
    /** The factor after over before. */
    factorRatio: input('r', 'ratio', { min: 1e-6, max: 1e6, typical: 1.0225 }),
  },
  output: output('P_r', 'power', 'kW'),
  formula: 'P_2 == P_1 ? P_1 * log(r) : (P_2 - P_1) / log(P_2 / P_1) * log(r)',
  si: (before, after, ratio) => logarithmicMean(before, after) * Math.log(ratio),
  rises: ['r'],
  sources: [source('woodLenzen2006', 'logarithmic-mean weights', 'memory'), derived('one factor of a product')],
});

/** (b - a)/ln(b/a), and a where both are equal, without losing digits near by. */
function logarithmicMean(a: number, b: number): number {
  if (a === b) return a;
  const change = (b - a) / a;
  // Far apart the share has lost the digits of the smaller power; near by the ratio has lost those of the change.
  return (b - a) / (Math.abs(change) < 0.5 ? Math.log1p(change) : Math.log(b / a));
}
