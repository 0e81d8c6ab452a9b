import { CalculationError } from '../units/index.js';

/** Refuses a picture of nothing. */
export function requireSome(name: string, input: string, given: unknown): void {
  if (Array.isArray(given) && given.length > 0) return;
  const got = Array.isArray(given) ? 'none' : typeof given;
  throw new CalculationError(name, [{ code: 'missing', input, need: 'a list of at least one', got, mend: '' }]);
}
