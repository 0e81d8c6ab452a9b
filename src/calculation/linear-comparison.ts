import { CalculationError } from '../units/errors.js';
import { formatValue } from '../units/format.js';
import type { DifferenceOf, Kind } from '../units/kinds.js';
import type { Quantity } from '../units/origin.js';
import type { UncertaintyBudget } from './budget.js';
import { SHARE_OF_TOLERANCE, type Parts } from './draws/parts.js';
import type { LinearComparison, LinearVerdict, MonteCarloUncertainty } from './monte-carlo-result.js';
import { counted } from './monte-carlo-text.js';
import { difference, uncertainty } from './uncertainty.js';

/** Holds the linear budget of a value against its draws. */
export function compareWithBudget<K extends Kind>(
  value: Quantity<K>,
  drawn: MonteCarloUncertainty<K>,
  parts: Parts,
  tolerance: Quantity<DifferenceOf<K>>,
  figures: number,
): LinearComparison<K> {
  const budget = budgetOf(value);
  if (budget instanceof CalculationError) {
    const statement = `There is no linear budget to compare with (${budget.message.replace(/\.$/, '')}).`;
    return { verdict: 'no budget', statement, budget: undefined, off: undefined, tolerance };
  }
  const [low, high] = drawn.interval();
  const [linearLow, linearHigh] = budget.interval(drawn.level);
  const off = [Math.abs(linearLow.si - low.si), Math.abs(linearHigh.si - high.si)] as const;
  const endsSettledTo = Math.max(parts.settledTo('low'), parts.settledTo('high'));
  const verdict = verdictOn(Math.max(...off), endsSettledTo, tolerance.si);
  const [offLow, offHigh] = [difference(value, off[0]), difference(value, off[1])];
  const show = (quantity: Quantity): string => formatValue(quantity, { figures: 2 });
  const by = `the ends of its interval are off by ${show(offLow)} and ${show(offHigh)}`;
  const unit = `${formatValue(tolerance, { figures: 1 })}, half a unit in the ${figures === 1 ? 'first' : 'second'} figure of the standard uncertainty`;
  return {
    verdict,
    statement: sentenceOf(verdict, by, unit, drawn.draws, parts.settlesStandard),
    budget,
    off: [offLow, offHigh],
    tolerance,
  };
}

function budgetOf<K extends Kind>(value: Quantity<K>): UncertaintyBudget<K> | CalculationError {
  try {
    return uncertainty(value);
  } catch (error) {
    if (error instanceof CalculationError) return error;
    throw error;
  }
}

/** By the rule of JCGM 101, 8.1 where the draws are settled as it asks; else only where their own error leaves no doubt. */
function verdictOn(off: number, settledTo: number, tolerance: number): LinearVerdict {
  const doubt = settledTo <= SHARE_OF_TOLERANCE * tolerance ? 0 : settledTo;
  if (off + doubt <= tolerance) return 'good enough';
  return off - doubt > tolerance ? 'not good enough' : 'too few draws to tell';
}

function sentenceOf(
  verdict: LinearVerdict,
  by: string,
  tolerance: string,
  draws: number,
  hasDegreesOfFreedom: boolean,
): string {
  switch (verdict) {
    case 'good enough':
      return `The linear budget is good enough: ${by}, within ${tolerance} (JCGM 101, 8.1).`;
    case 'not good enough': {
      const advice = hasDegreesOfFreedom
        ? 'Use the intervals of the draws.'
        : 'Or the draws are too cautious, which they are where several inputs have few degrees of freedom.';
      return `The linear budget is not good enough: ${by}, beyond ${tolerance} (JCGM 101, 8.1). ${advice}`;
    }
    case 'too few draws to tell':
    case 'no budget':
      return `Whether the linear budget is good enough cannot be told from ${counted(draws)} draws: ${by}, about ${tolerance} (JCGM 101, 8.1).`;
  }
}
