import { requireNumber, requireProbability } from './checks.js';
import { notConverged } from './errors.js';

const rootHalf = Math.SQRT1_2;
const rootTwoPi = Math.sqrt(2 * Math.PI);
const rootPi = Math.sqrt(Math.PI);

/** exp(-x^2/2), with the square split so that its rounding does not grow in the far tail. */
function bell(x: number): number {
  const head = Math.trunc(x * 64) / 64;
  return Math.exp((-head * head) / 2) * Math.exp((-(x - head) * (x + head)) / 2);
}

/** Density of the standard normal distribution. */
export function normalDensity(x: number): number {
  return bell(x) / rootTwoPi;
}

/** Chance that |Z| stays below x, for 0 <= x, by the series of positive terms DLMF 7.6.2. */
function centralSeries(x: number): number {
  const square = x * x;
  let term = x;
  let sum = x;
  for (let n = 1; term > sum * 1e-17; n++) {
    term *= square / (2 * n + 1);
    sum += term;
  }
  return 2 * normalDensity(x) * sum;
}

/** Chance that |Z| exceeds x, for x well above 0, by the continued fraction DLMF 7.9.1 (even part, Lentz). */
function outerFraction(x: number): number {
  const z = x * rootHalf;
  let term = 2 * z * z + 1;
  let fraction = term;
  let c = term;
  let d = 0;
  let change = 0;
  for (let n = 1; Math.abs(change - 1) > 4e-16; n++) {
    const numerator = -(2 * n - 1) * (2 * n);
    term += 4;
    d = 1 / (term + numerator * d);
    c = term + numerator / c;
    change = c * d;
    fraction *= change;
  }
  return (bell(x) * 2 * z) / (rootPi * fraction);
}

/** Chances of the standard normal distribution staying within, and lying beyond, plus and minus x >= 0. */
export function normalTwoSided(x: number): { within: number; beyond: number } {
  requireNumber('normal distribution', 'x', x);
  if (x < 1.6) {
    const within = centralSeries(x);
    return { within, beyond: 1 - within };
  }
  const beyond = outerFraction(x);
  return { within: 1 - beyond, beyond };
}

/** Chance that a standard normal variable lies below x; the far lower tail keeps its digits. */
export function normalCdf(x: number): number {
  if (x === Infinity) return 1;
  if (x === -Infinity) return 0;
  const { within, beyond } = normalTwoSided(Math.abs(x));
  if (x < 0) return beyond / 2;
  return x < 1 ? 0.5 + within / 2 : 1 - beyond / 2;
}

/** The number that |Z| exceeds with the two-sided chance `tail`: 1.96 for 0.05. */
export function normalFactor(tail: number): number {
  requireProbability('normal factor', 'tail', tail);
  const outer = tail <= 0.5;
  const target = outer ? tail : 1 - tail;
  // A tail starts from its leading term, the middle from the height of the density.
  let x = outer ? Math.sqrt(-2 * Math.log(tail / 2)) * 0.9 : (target * rootTwoPi) / 2;
  for (let step = 0; step < 60; step++) {
    const { within, beyond } = normalTwoSided(x);
    const value = outer ? beyond : within;
    const move = ((outer ? 1 : -1) * value * Math.log(value / target)) / (2 * normalDensity(x));
    x += move;
    // Newton squares its error, so what is left after a step this small is rounding.
    if (Math.abs(move) < x * 1e-9) return x;
  }
  throw notConverged('normal factor', 'tail', String(tail));
}

/** Standard normal quantile for a lower-tail chance. */
export function normalQuantile(probability: number): number {
  requireProbability('normal quantile', 'probability', probability);
  if (probability === 0.5) return 0;
  return probability < 0.5 ? -normalFactor(2 * probability) : normalFactor(2 * (1 - probability));
}
