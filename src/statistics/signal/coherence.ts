import { requireCount, requireProbability, usualConfidence, type ConfidenceOption } from '../checks.js';
import { StatisticsError } from '../errors.js';
import { requiredRoot } from '../root-between.js';

/**
 * Chance that an estimated coherence lies below a value, for a true one: Goodman's law, in the finite sum of Carter, Knapp and Nuttall
 * (1973), all of whose terms are above zero.
 *
 * @param value - estimated squared coherence, 0 to 1.
 * @param tapers - independent transforms, at least 2.
 * @param truth - true squared coherence, 0 to 1.
 */
export function coherenceCdf(value: number, tapers: number, truth: number): number {
  const statistic = 'coherence law';
  requireCount(statistic, 'tapers', tapers, 2);
  requireShare(statistic, 'value', value);
  requireShare(statistic, 'truth', truth);
  if (value === 1) return 1;
  if (truth === 1) return 0;
  const joint = value * truth;
  // 1 - value truth, without the cancellation where both are near 1.
  const rest = 1 - truth + truth * (1 - value);
  let power = 1;
  let total = 0;
  for (let k = 0; k <= tapers - 2; k++) {
    // The terminating hypergeometric function 2F1(-k, 1 - K; 1; value truth).
    let term = 1;
    let polynomial = 1;
    for (let j = 1; j <= k; j++) {
      term *= (((k - j + 1) * (tapers - j)) / (j * j)) * joint;
      polynomial += term;
    }
    total += power * polynomial;
    power *= (1 - value) / rest;
  }
  return Math.min(1, value * ((1 - truth) / rest) ** tapers * total);
}

/**
 * Interval of the true squared coherence from an estimate, by the exact law; the lower end is 0 where zero cannot be excluded.
 *
 * @param coherence - estimated squared coherence.
 * @param tapers - independent transforms, at least 2.
 */
export function coherenceInterval(
  coherence: number,
  tapers: number,
  { confidence = usualConfidence }: ConfidenceOption = {},
): readonly [low: number, high: number] {
  const statistic = 'coherence interval';
  requireProbability(statistic, 'confidence', confidence);
  requireCount(statistic, 'tapers', tapers, 2);
  requireShare(statistic, 'coherence', coherence);
  if (coherence === 1) return [1, 1];
  const side = (1 - confidence) / 2;
  const at = (truth: number, target: number): number => coherenceCdf(coherence, tapers, truth) - target;
  // A truth so much nearer to 1 than the estimate has no chance left of an estimate as low.
  const most = 1 - (1 - coherence) * 1e-4;
  const solve = (target: number): number =>
    at(0, target) <= 0 ? 0 : requiredRoot((truth) => at(truth, target), 0, most, statistic);
  return [solve(1 - side), solve(side)];
}

function requireShare(statistic: string, input: string, value: number): void {
  if (value >= 0 && value <= 1) return;
  throw new StatisticsError({
    code: 'out-of-range',
    statistic,
    input,
    need: 'lie between 0 and 1',
    got: String(value),
  });
}
