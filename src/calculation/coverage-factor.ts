import { studentTFactor } from '../statistics/index.js';
import { CalculationError } from '../units/errors.js';

/**
 * The number of standard uncertainties on either side that holds a share `level` of Student's t distribution.
 *
 * @param level - between 0 and 1, both excluded: 0.95 for 95 %.
 * @param degreesOfFreedom - any positive number, not only whole ones; Infinity gives the normal factor.
 * @throws CalculationError if an argument is outside its range.
 * @example
 * coverageFactorOf(0.95, 4) //=> 2.776445105197793
 */
export function coverageFactorOf(level: number, degreesOfFreedom: number): number {
  if (!(level > 0 && level < 1)) {
    const mend = level >= 1 && level < 100 ? `For ${level} % write ${level / 100}.` : '';
    throw refusal('level', 'a number between 0 and 1, both excluded', level, mend);
  }
  if (!(degreesOfFreedom > 0)) throw refusal('degreesOfFreedom', 'above zero', degreesOfFreedom, '');
  return studentTFactor(1 - level, degreesOfFreedom);
}

function refusal(input: string, need: string, got: unknown, mend: string): CalculationError {
  return new CalculationError('coverage factor', [{ code: 'impossible', input, need, got: String(got), mend }]);
}
