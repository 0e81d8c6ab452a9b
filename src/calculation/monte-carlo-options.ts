import { describe, requireOptions } from '../units/internal.js';
import type { MonteCarloOptions } from './monte-carlo-result.js';
import { NEARLY } from './draws/coverage.js';
import type { Plan } from './draws/parts.js';
import { counted } from './monte-carlo-text.js';
import { refusal, requireLevel } from './refusal.js';

/** Options with what was left out filled in. */
export interface ReadOptions extends Plan {
  readonly seed: number;
  readonly level: number;
  readonly figures: 1 | 2;
}

/** The usual number of draws (JCGM 101, 7.2.3), and the most that are made without asking. */
const USUAL_DRAWS = 1e6;

const OPTIONS = { seed: 'any', level: 'any', figures: 'any', draws: 'any', adaptive: 'any' } as const;

/** Eight bytes each. */
const MOST_DRAWS = 1e8;

export function readMonteCarloOptions(options: MonteCarloOptions): ReadOptions {
  requireOptions('monteCarlo', options, OPTIONS);
  const given = (options ?? {}) as Readonly<Partial<Record<keyof MonteCarloOptions, unknown>>>;
  const { seed, level = 0.95, figures = 1, draws, adaptive = draws === undefined } = given;
  if (!Number.isSafeInteger(seed) || (seed as number) < 0) {
    const mend = 'Any one will do; the same one gives the same draws.';
    throw refuse('seed', 'a whole number from 0 up, such as 1', seed, mend);
  }
  requireLevel('monteCarlo', level);
  if (figures !== 1 && figures !== 2) throw refuse('figures', '1 or 2', figures);
  if (typeof adaptive !== 'boolean') throw refuse('adaptive', 'true or false', adaptive);
  // JCGM 101, 7.9.4.
  const smallest = Math.ceil((100 / (1 - level)) * NEARLY);
  const part = Math.max(smallest, 1e4);
  const least = adaptive ? 2 * part : smallest;
  const wanted = draws ?? Math.max(USUAL_DRAWS, 10 * part);
  if (!Number.isInteger(wanted) || (wanted as number) < least || (wanted as number) > MOST_DRAWS) {
    const why = adaptive
      ? `${Number((100 * level).toPrecision(6))} % and adaptive`
      : `${Number((100 * level).toPrecision(6))} %`;
    if (draws === undefined) throw refuse('level', 'one that a hundred million draws can settle', level);
    throw refuse('draws', `a whole number from ${counted(least)} to ${counted(MOST_DRAWS)} for ${why}`, draws);
  }
  return { seed: seed as number, level, figures, draws: wanted as number, part: adaptive ? part : undefined };
}

function refuse(input: string, need: string, got: unknown, mend = ''): Error {
  const code = got === undefined ? 'missing' : 'impossible';
  return refusal('monteCarlo', code, input, need, typeof got === 'number' ? String(got) : describe(got), mend);
}
