import {
  noScatter,
  requireCount,
  requireProbability,
  requireSides,
  usualError,
  type ErrorOption,
  type Numbers,
} from './checks.js';
import { roundingOf } from './curves.js';
import { leftByFit, modelOf, tooFewDegrees, type DriftOptions } from './drift-model.js';
import { studentTFactor } from './student-t.js';
import { mean, sumOfSquaredDeviations } from './summary.js';

/** One pull against all the others. */
export interface PullCheck {
  readonly side: 'baseline' | 'candidate';
  /** Place among the pulls of its side, from 0. */
  readonly index: number;
  /** How far the pull lies above the mean of its side's other pulls. */
  readonly off: number;
  /** Deleted residual: how far the pull lies from its side's other pulls, in the scatter of the others. */
  readonly t: number;
  readonly odd: boolean;
}

/** Every pull checked, and what the check rests on. */
export interface OddPulls {
  readonly critical: number;
  readonly degreesOfFreedom: number;
  readonly pulls: readonly PullCheck[];
}

/**
 * Flags a pull that lies beyond luck from the others of its side, by deleted residuals with the scatter pooled over
 * both sides. A flag is a reason to look and to pull once more, never to delete: keep it, and show both answers.
 *
 * @param baseline - one number per pull, such as its range mean.
 * @throws StatisticsError `no-scatter` if the other pulls agree exactly.
 */
export function oddPulls(baseline: Numbers, candidate: Numbers, { error = usualError }: ErrorOption = {}): OddPulls {
  const statistic = 'odd pulls';
  requireSides(statistic, baseline, candidate);
  requireProbability(statistic, 'error', error);
  const total = baseline.length + candidate.length;
  const degreesOfFreedom = total - 3;
  const critical = studentTFactor(error / total, degreesOfFreedom);
  const check = (side: PullCheck['side'], own: Numbers, other: Numbers): PullCheck[] =>
    Array.from(own, (value, index) => {
      const rest = Array.from(own).filter((_, i) => i !== index);
      const pooled = (sumOfSquaredDeviations(rest) + sumOfSquaredDeviations(other)) / degreesOfFreedom;
      if (pooled === 0) {
        throw noScatter(
          statistic,
          'baseline and candidate',
          `differ from pull to pull without ${side}[${index}] too`,
          'the same number in every other pull of each side',
        );
      }
      // The residual from the side's mean over its own standard error, written with the pull left out.
      const off = value - mean(rest);
      const t = off / Math.sqrt(pooled * (1 + 1 / rest.length));
      return { side, index, off, t, odd: Math.abs(t) > critical };
    });
  return {
    critical,
    degreesOfFreedom,
    pulls: [...check('baseline', baseline, candidate), ...check('candidate', candidate, baseline)],
  };
}

/** One pull of a day against the others, with a steady drift taken out. */
export interface PullInOrderCheck {
  /** Place in the order of the day, from 0. */
  readonly index: number;
  /** How far the pull lies above what the others foretell for it. */
  readonly off: number;
  /** Deleted residual: how far the pull lies from what the other pulls foretell for it, in their scatter. */
  readonly t: number;
  readonly odd: boolean;
}

/**
 * The check of {@link oddPulls} with the drift of the baseline fitted along, as in `driftDifference`.
 *
 * @param order - `A` for each baseline pull and `B` for each candidate pull, as they were made.
 * @throws StatisticsError `too-few-degrees-of-freedom` if the other pulls leave no scatter, `no-scatter` if they fit exactly.
 */
export function oddPullsInOrder(
  order: string,
  values: Numbers,
  { error = usualError, ...options }: DriftOptions & ErrorOption = {},
): Omit<OddPulls, 'pulls'> & { readonly pulls: readonly PullInOrderCheck[] } {
  const statistic = 'odd pulls in order';
  requireProbability(statistic, 'error', error);
  const model = modelOf(statistic, order, options);
  const degreesOfFreedom = model.degreesOfFreedom - 1;
  if (degreesOfFreedom < 1) throw tooFewDegrees(statistic, order, 2, model.degreesOfFreedom);
  const critical = studentTFactor(error / order.length, degreesOfFreedom);
  const { residuals, residualSumOfSquares } = model.fit(values);
  const left = leftByFit(order, model);
  const pulls = Array.from(residuals, (residual, index): PullInOrderCheck => {
    // A pull that the fit follows wherever it goes cannot be held against the others.
    if (left[index]! < 1e-9) return { index, off: 0, t: 0, odd: false };
    const others = residualSumOfSquares - residual ** 2 / left[index]!;
    if (Math.sqrt(Math.max(0, others)) <= roundingOf(values)) {
      throw noScatter(
        statistic,
        'values',
        `scatter about the fitted drift without values[${index}] too`,
        'a perfect fit of the others',
      );
    }
    const t = residual / Math.sqrt((others / degreesOfFreedom) * left[index]!);
    return { index, off: residual / left[index]!, t, odd: Math.abs(t) > critical };
  });
  return { critical, degreesOfFreedom, pulls };
}

/**
 * Critical value of Grubbs' two-sided test for one outlier: the largest deviation from the mean over the standard
 * deviation. Of little use below six values, where even a gross outlier can hardly reach it.
 */
export function grubbsCritical(count: number, { error = usualError }: ErrorOption = {}): number {
  requireCount('Grubbs critical value', 'count', count, 3);
  requireProbability('Grubbs critical value', 'error', error);
  const t = studentTFactor(error / count, count - 2);
  return ((count - 1) / Math.sqrt(count)) * Math.sqrt((t * t) / (count - 2 + t * t));
}
