import { requirePositive, requireNumber, requireProbability } from './checks.js';
import { betaLogOdds, incompleteBeta } from './incomplete-beta.js';

/** Chances that a variance ratio lies below and above x; both keep their digits. */
export function fTails(x: number, numerator: number, denominator: number): { lower: number; upper: number } {
  requireNumber('F distribution', 'x', x);
  checkDegrees('F distribution', numerator, denominator);
  if (x <= 0) return { lower: 0, upper: 1 };
  const odds = (numerator / denominator) * x;
  if (odds === Infinity) return { lower: 1, upper: 0 };
  return incompleteBeta(numerator / 2, denominator / 2, odds / (1 + odds), 1 / (1 + odds));
}

/** The variance ratio with the chance `probability` below it. */
export function fQuantile(probability: number, numerator: number, denominator: number): number {
  return quantile('lower', probability, numerator, denominator);
}

/** The variance ratio with the chance `tail` above it; keeps its digits however small the tail. */
export function fUpperQuantile(tail: number, numerator: number, denominator: number): number {
  return quantile('upper', tail, numerator, denominator);
}

function quantile(tail: 'lower' | 'upper', probability: number, numerator: number, denominator: number): number {
  requireProbability('F quantile', tail === 'lower' ? 'probability' : 'tail', probability);
  checkDegrees('F quantile', numerator, denominator);
  return (denominator / numerator) * Math.exp(betaLogOdds(numerator / 2, denominator / 2, tail, probability));
}

function checkDegrees(statistic: string, numerator: number, denominator: number): void {
  for (const [input, value] of Object.entries({ numerator, denominator })) {
    requirePositive(statistic, input, value);
  }
}
