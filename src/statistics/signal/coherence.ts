import { requireCount, requireProbability, usualConfidence, type ConfidenceOption } from '../checks.js';
import { notConverged, StatisticsError } from '../errors.js';
import { incompleteBeta } from '../incomplete-beta.js';
import { rootBetween } from '../root.js';

/**
 * Chance that an estimated coherence lies below a value, for a true one: Goodman's law, as a mixture of beta laws with negative
 * binomial weights (Carter, Knapp and Nuttall 1973).
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
  let weight = (1 - truth) ** tapers;
  let left = 1 - weight;
  let total = 0;
  for (let j = 0; j < 1_000_000; j++) {
    const { lower } = incompleteBeta(1 + j, tapers - 1, value);
    total += weight * lower;
    // The weights are chances and the beta laws fall with j, so what is left bounds the rest of the sum.
    if (left * lower <= 1e-16 * total || weight === 0) return Math.min(1, total);
    weight *= ((tapers + j) / (j + 1)) * truth;
    left -= weight;
  }
  throw notConverged(statistic, 'value, tapers, truth', `${value}, ${tapers}, ${truth}`);
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
  // A truth nearer to 1 than this would need millions of terms, and is beyond any interval of interest.
  const most = 1 - (1 - coherence) * 1e-4;
  const solve = (target: number): number =>
    at(0, target) <= 0 ? 0 : rootBetween((truth) => at(truth, target), 0, most, statistic);
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
