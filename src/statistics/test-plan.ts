import {
  requireCount,
  requireDegreesOfFreedom,
  requireFinite,
  requireNotNegative,
  requireOneSidedError,
  requirePositive,
  requireProbability,
  usualError,
  type ErrorOption,
} from './checks.js';
import { StatisticsError } from './errors.js';
import { noncentralTTails } from './noncentral-t.js';
import { normalTwoSided } from './normal.js';
import { integrate, scatterDensity } from './quadrature.js';
import { requiredRoot } from './root-between.js';
import { studentTFactor } from './student-t.js';

/** How sharp a plan is: the variance of its difference in units of one pull's variance, and what estimates it. */
export interface PlanDesign {
  /** c: 2/n for n pulls a side without a drift term, otherwise from the order of the pulls. */
  readonly varianceFactor: number;
  readonly degreesOfFreedom: number;
}

/** The design of n pulls a side with no drift term. */
export function equalSides(pullsPerSide: number): PlanDesign {
  requireCount('plan of equal sides', 'pullsPerSide', pullsPerSide, 2);
  return { varianceFactor: 2 / pullsPerSide, degreesOfFreedom: 2 * pullsPerSide - 2 };
}

/**
 * Chance that a test of this design finds a true difference (two-sided, noncentral t).
 *
 * @param difference - true difference, in the units of `scatter`.
 * @param scatter - standard deviation between pulls of one set-up. Known from few pulls only to a factor: look at the
 * plan with 0.7 and 1.5 times as much too.
 */
export function powerOfTest(
  difference: number,
  scatter: number,
  design: PlanDesign,
  { error = usualError }: ErrorOption = {},
): number {
  const statistic = 'power of a test';
  requireFinite(statistic, 'difference', difference);
  requirePositive(statistic, 'scatter', scatter);
  checkDesign(statistic, design);
  requireProbability(statistic, 'error', error);
  return powerAt(Math.abs(difference) / scatter / Math.sqrt(design.varianceFactor), design.degreesOfFreedom, error);
}

/** The smallest true difference that a test of this design finds with the wanted chance. */
export function detectableDifference(
  scatter: number,
  design: PlanDesign,
  { power = 0.8, error = usualError }: ErrorOption & { readonly power?: number } = {},
): number {
  const statistic = 'detectable difference';
  requirePositive(statistic, 'scatter', scatter);
  checkDesign(statistic, design);
  requirePower(statistic, power, error);
  const nu = design.degreesOfFreedom;
  let most = 2 * (studentTFactor(error, nu) + 1);
  while (powerAt(most, nu, error) < power) most *= 2;
  const noncentrality = requiredRoot((nc) => powerAt(nc, nu, error) - power, 0, most, statistic);
  return noncentrality * Math.sqrt(design.varianceFactor) * scatter;
}

/**
 * The same design where instruments that were not the same on both sides add an error that no number of pulls averages out.
 *
 * @param share - variance of that error in units of one pull's variance.
 * @param degreesOfFreedom - of that error; as good as known unless given.
 */
export function withOwnInstruments(design: PlanDesign, share: number, degreesOfFreedom = Infinity): PlanDesign {
  const statistic = 'plan with own instruments';
  checkDesign(statistic, design);
  requireNotNegative(statistic, 'share', share);
  const { varianceFactor } = design;
  const whole = varianceFactor + share;
  return {
    varianceFactor: whole,
    degreesOfFreedom: whole ** 2 / (varianceFactor ** 2 / design.degreesOfFreedom + share ** 2 / degreesOfFreedom),
  };
}

/** How many pulls a plan takes. */
export interface PullsNeeded {
  readonly perSide: number;
  readonly total: number;
  /** The chance of finding the difference with that many pulls. */
  readonly power: number;
}

/** How a number of pulls is asked for. */
export interface PullsNeededOptions extends ErrorOption {
  /** Chance of finding the difference, 0.8 unless given. */
  readonly power?: number;
  /** What so many pulls a side make of the test; {@link equalSides} unless given. */
  readonly design?: (pullsPerSide: number) => PlanDesign;
  /** Fewest pulls a side that the design can be asked for; 2 unless given. */
  readonly fewest?: number;
}

/**
 * The fewest pulls a side that find a true difference with the wanted chance; of equal sides and with no drift term, unless a design says
 * otherwise.
 *
 * @throws StatisticsError `out-of-range` if no number of pulls below a million a side does.
 */
export function pullsNeeded(
  difference: number,
  scatter: number,
  { power = 0.8, error = usualError, design = equalSides, fewest = 2 }: PullsNeededOptions = {},
): PullsNeeded {
  const statistic = 'pulls needed';
  requirePositive(statistic, 'difference', difference);
  requirePositive(statistic, 'scatter', scatter);
  requirePower(statistic, power, error);
  const reached = (perSide: number): number => powerOfTest(difference, scatter, design(perSide), { error });
  const limit = 1e6;
  requireCount(statistic, 'fewest', fewest, 2);
  let enough = fewest;
  while (reached(enough) < power) {
    enough *= 2;
    if (enough > limit) {
      throw new StatisticsError({
        code: 'out-of-range',
        statistic,
        input: 'difference',
        need: `be findable with ${limit} pulls a side`,
        got: `${difference} against a scatter of ${scatter}`,
      });
    }
  }
  let tooFew = enough === fewest ? fewest - 1 : enough / 2;
  while (enough - tooFew > 1) {
    const middle = Math.floor((enough + tooFew) / 2);
    if (reached(middle) < power) tooFew = middle;
    else enough = middle;
  }
  return { perSide: enough, total: 2 * enough, power: reached(enough) };
}

/**
 * Chance that a test of this design shows a true difference to lie inside plus and minus the margin
 * (two one-sided tests, each at `error`).
 */
export function powerOfEquivalence(
  margin: number,
  difference: number,
  scatter: number,
  design: PlanDesign,
  { error = usualError }: ErrorOption = {},
): number {
  const statistic = 'power of an equivalence test';
  requirePositive(statistic, 'margin', margin);
  requireFinite(statistic, 'difference', difference);
  requirePositive(statistic, 'scatter', scatter);
  checkDesign(statistic, design);
  requireOneSidedError(statistic, error);
  const standardError = scatter * Math.sqrt(design.varianceFactor);
  const factor = studentTFactor(2 * error, design.degreesOfFreedom);
  const density = scatterDensity(design.degreesOfFreedom);
  const offset = Math.abs(difference) / standardError;
  const reach = margin / standardError;
  // Beyond this scatter the interval is wider than the margin allows, wherever it lies.
  const widest = reach / factor;
  const spread = 12 / Math.sqrt(design.degreesOfFreedom);
  const from = Math.max(0, Math.min(1 - spread, widest));
  const to = Math.min(widest, 1 + spread);
  if (from >= to) return 0;
  return integrate(
    (w) => normalBetween(factor * w - reach - offset, reach - offset - factor * w) * density(w),
    from,
    to,
  );
}

/** Chance that a normal variable lies between two numbers, without the cancellation of two nearly equal chances. */
function normalBetween(low: number, high: number): number {
  if (high <= low) return 0;
  const near = normalTwoSided(Math.abs(low));
  const far = normalTwoSided(Math.abs(high));
  if (low < 0 && high > 0) return (near.within + far.within) / 2;
  return Math.abs(near.beyond - far.beyond) / 2;
}

/** From here on the scatter is as good as known: t and the normal law agree to a millionth. */
const AS_GOOD_AS_KNOWN = 1e6;

function powerAt(noncentrality: number, degreesOfFreedom: number, error: number): number {
  if (noncentrality === 0) return error;
  const nu = degreesOfFreedom > AS_GOOD_AS_KNOWN ? Infinity : degreesOfFreedom;
  const critical = studentTFactor(error, nu);
  return noncentralTTails(critical, nu, noncentrality).upper + noncentralTTails(-critical, nu, noncentrality).lower;
}

function checkDesign(statistic: string, { varianceFactor, degreesOfFreedom }: PlanDesign): void {
  requirePositive(statistic, 'design.varianceFactor', varianceFactor);
  requireFinite(statistic, 'design.degreesOfFreedom', degreesOfFreedom);
  requireDegreesOfFreedom(statistic, 'design.degreesOfFreedom', degreesOfFreedom);
}

function requirePower(statistic: string, power: number, error: number): void {
  requireProbability(statistic, 'error', error);
  requireProbability(statistic, 'power', power);
  if (power <= error) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input: 'power',
      need: `be above the chance of error, ${error}`,
      got: String(power),
    });
  }
}
