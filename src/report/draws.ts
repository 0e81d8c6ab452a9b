import { monteCarlo, uncertainty, type LinearVerdict } from '../calculation/index.js';
import { CalculationError, type Quantity } from '../units/index.js';
import { betweenSigned, groupedDigits, level as levelWords, like } from '../comparison/words.js';
import { ownConfidence } from '../comparison/options.js';
import type { Comparison } from '../comparison/index.js';

/** The interval of a headline by draws, beside the one of its budget. */
export interface DrawnInterval {
  readonly seed: number;
  readonly draws: number;
  /** Of each interval: more than that of the answer where several comparisons share the chance. */
  readonly level: number;
  readonly byDraws: readonly [low: Quantity, high: Quantity];
  readonly byBudget: readonly [low: Quantity, high: Quantity];
  readonly verdict: LinearVerdict;
  /** The verdict with its reason, as the draws give it. */
  readonly statement: string;
}

/** Any seed does; one that stays makes a report repeat to the last digit. */
const SEED = 1;

/** Enough to judge a budget by one figure of the standard uncertainty, and a tenth of a second or so. */
const USUAL = { draws: 2e5, most: 1e6 };

/** With instruments every draw works out whole channels again, some hundred times slower. */
const WITH_INSTRUMENTS = { draws: 2e4, most: 5e4 };

const made = new WeakMap<Quantity, DrawnInterval | undefined>();

/**
 * The headline's interval by propagating distributions (JCGM 101) through the graph that its budget is made from.
 *
 * @returns undefined where there is no headline, or one so sure that it would take too many draws.
 */
export function drawnInterval({ overall, confidence, options }: Comparison): DrawnInterval | undefined {
  if (overall === undefined) return undefined;
  const { value } = overall;
  if (!made.has(value)) made.set(value, draw(value, ownConfidence({ confidence, setUps: options.setUps })));
  return made.get(value);
}

function draw(value: Quantity, level: number): DrawnInterval | undefined {
  try {
    const budget = uncertainty(value);
    const isScatterOnly = budget.contributions.every(
      ({ input }) => input.origin?.type === 'leaf' && input.origin.role === 'scatter',
    );
    const { draws: enough, most } = isScatterOnly ? USUAL : WITH_INSTRUMENTS;
    // Adaptive draws need two parts, each of a hundred draws outside the interval (JCGM 101, 7.9.4).
    const draws = Math.max(enough, 2 * Math.ceil(100 / (1 - level)));
    if (draws > most) return undefined;
    const drawn = monteCarlo(value, { seed: SEED, level, draws, adaptive: true });
    const at = (ends: readonly [Quantity, Quantity]) => ends.map(({ si }) => like(value, si)) as [Quantity, Quantity];
    return {
      seed: SEED,
      draws: drawn.draws,
      level,
      byDraws: at(drawn.interval()),
      byBudget: at(budget.interval(level)),
      verdict: drawn.linear.verdict,
      statement: drawn.linear.statement,
    };
  } catch (error) {
    // Nothing in it is uncertain, or hardly a draw is possible: then there is nothing to hold the budget against.
    if (error instanceof CalculationError) return undefined;
    throw error;
  }
}

/** The check in words; undefined where there was none. */
export function drawsSentence(comparison: Comparison): string | undefined {
  const drawn = drawnInterval(comparison);
  if (drawn === undefined) return undefined;
  const { draws, seed, level, byDraws, byBudget, statement } = drawn;
  const { overall, options } = comparison;
  const shared = options.setUps ?? 1;
  const each =
    shared === 1
      ? ''
      : ` (each of ${shared} comparisons at ${levelWords(level)}, so that ${levelWords(comparison.confidence)} holds for all)`;
  const ends = (pair: readonly [Quantity, Quantity]): string => betweenSigned(...pair);
  const isWider = Math.abs(overall!.high.si - byBudget[1].si) > 1e-6 * Math.abs(overall!.high.si - overall!.low.si);
  const floor = isWider
    ? ` The answer keeps the wider one that the scatter of the pulls alone gives, between ${ends([overall!.low, overall!.high])}.`
    : '';
  return `Checked by ${groupedDigits(draws)} draws of everything uncertain (JCGM 101, seed ${seed})${each}: between ${ends(byDraws)} by draws, between ${ends(byBudget)} by this budget. ${statement}${floor}${whyBudget(comparison, drawn)}`;
}

/** Why the answer stays with the budget where the draws disagree with it. */
function whyBudget({ overall }: Comparison, { verdict }: DrawnInterval): string {
  if (verdict !== 'not good enough') return '';
  const few = uncertainty(overall!.value).contributions.filter(({ degreesOfFreedom }) => degreesOfFreedom < FEW);
  return few.length > 1
    ? ' The answer stays with the budget: draws take Student’s t for the scatter of each set-up by itself, and of few pulls that holds the truth more often than asked (99 in 100 for three pulls against three), where the budget’s Welch and Satterthwaite keep near what is asked.'
    : ' Read the answer with the interval of the draws.';
}

/** Below, Student's t is visibly wider than the normal distribution. */
const FEW = 30;
