import type { StandingNote } from '../calculation/index.js';

/** What every result of this topic says, however good its inputs. */
export const KNOCK_CAUTIONS: readonly StandingNote[] = [
  {
    code: 'caution',
    message:
      'Indicative only: for the trend between two charge states of one engine at one speed, never a licence to run and ' +
      'never to set spark or boost by. Detonation destroys engines; leave their limits to a knock sensor and to someone ' +
      'qualified.',
  },
  {
    code: 'scatter',
    message:
      'The correlation was fitted to fuels and engine speeds of the 1970s and 80 to 100 octane: no two-stage ignition, ' +
      'alcohols outside the fit, the temperature exponent the largest error, nothing on low-speed pre-ignition.',
  },
];

/** The correlation's numbers, each in one place: Douaud and Eyzat 1978 in the form of Heywood's equation 9.45. */
export const LAW = { delay: 0.01768, octane: 3.402, pressure: 1.7, activation: 3800, atmosphere: 101325 } as const;
