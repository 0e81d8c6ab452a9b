import type { Rule } from '../units/origin.js';

/** Temperatures at the inlet and the outlet, the pressure ratio, and what the air is told by. */
type Efficiency = (T1: number, T2: number, PR: number, air: number) => number;

/** What every efficiency from measured temperatures asks of its readings, whichever efficiency it is. */
export const efficiencyRules = (efficiency: Efficiency): readonly Rule[] => [
  { need: 'outletTemperature must be above inletTemperature', holds: (T1, T2) => T2 > T1 },
  {
    need: 'a rise of at least 20 K (below it sensor errors govern the result)',
    holds: (T1, T2) => T2 - T1 >= 20,
    otherwise: 'note',
  },
  {
    need: 'an efficiency of at most 100 % (above it the readings are not consistent)',
    holds: (T1, T2, PR, air) => efficiency(T1, T2, PR, air) <= 1,
    otherwise: 'note',
  },
];
