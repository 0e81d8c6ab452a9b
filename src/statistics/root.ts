import { notConverged } from './errors.js';

/**
 * Where a continuous function crosses zero between two ends of opposite sign: false position that halves the weight
 * of an end that stays (Illinois), with a bisection whenever that does not halve the bracket in three steps.
 */
export function rootBetween(f: (x: number) => number, from: number, to: number, statistic: string): number {
  let a = from;
  let b = to;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 !== fb < 0) || Number.isNaN(fa + fb)) {
    throw notConverged(statistic, 'bracket', `values ${fa} and ${fb} at its ends`);
  }
  let width = Math.abs(b - a);
  for (let step = 1; step < 400; step++) {
    let x = (a * fb - b * fa) / (fb - fa);
    if (step % 3 === 0) {
      if (Math.abs(b - a) > width / 2) x = (a + b) / 2;
      width = Math.abs(b - a);
    }
    if (!(x > Math.min(a, b) && x < Math.max(a, b))) x = (a + b) / 2;
    const fx = f(x);
    if (fx === 0 || Math.abs(b - a) <= 4e-16 * Math.abs(x)) return x;
    if (fx < 0 === fb < 0) {
      fa /= 2;
    } else {
      a = b;
      fa = fb;
    }
    b = x;
    fb = fx;
    if (Math.abs(b - a) <= 4e-16 * Math.abs(b)) return b;
  }
  throw notConverged(statistic, 'equation', `a bracket from ${a} to ${b}`);
}
