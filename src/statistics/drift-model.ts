import { requireAllFinite, requireSameLength, type Numbers } from './checks.js';
import { StatisticsError } from './errors.js';
import { linearModel, type LinearModel } from './least-squares.js';
import { mean } from './summary.js';

/** How a drifting baseline is modelled, and when the pulls were made. */
export interface DriftOptions {
  /** Shape of the drift; `none` leaves it out. Decide by design, not by testing the drift first. `linear` unless given. */
  readonly drift?: 'none' | 'linear' | 'quadratic';
  /** When each pull was made, where the rests differ; pull number 1, 2, 3, ... unless given. */
  readonly times?: Numbers;
}

/** What an order of pulls can tell about a difference. */
export interface OrderDesign {
  /** c: variance of the difference in units of the variance of one pull. */
  readonly varianceFactor: number;
  readonly degreesOfFreedom: number;
  /** True if the drift hides so much of the difference that its variance more than doubles. */
  readonly confounded: boolean;
}

/**
 * Variance factor and degrees of freedom of an order of pulls such as `ABBAAB` (A baseline, B candidate).
 *
 * @throws StatisticsError `confounded` if the drift and the change cannot be told apart at all.
 */
export function orderDesign(order: string, options: DriftOptions = {}): OrderDesign {
  return designOf(order, modelOf('order of pulls', order, options));
}

/** The mean, the change and the drift of an order of pulls, ready to be fitted. */
export function modelOf(statistic: string, order: string, { drift = 'linear', times }: DriftOptions): LinearModel {
  if (!/^[AB]+$/.test(order) || !order.includes('A') || !order.includes('B')) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input: 'order',
      need: 'be a row of A (baseline) and B (candidate) with at least one of each',
      got: JSON.stringify(order),
    });
  }
  if (times !== undefined) {
    requireSameLength(statistic, 'times', times.length, order.length);
    requireAllFinite(statistic, 'times', times);
  }
  const when = times ?? Float64Array.from(order, (_, i) => i + 1);
  const middle = mean(when);
  const centred = Float64Array.from(when, (t) => t - middle);
  const columns: Numbers[] = [
    Float64Array.from(order, () => 1),
    Float64Array.from(order, (letter) => (letter === 'B' ? 1 : 0)),
  ];
  if (drift !== 'none') columns.push(centred);
  if (drift === 'quadratic') columns.push(centred.map((t) => t * t));
  if (order.length < columns.length) {
    throw new StatisticsError({
      code: 'confounded',
      statistic,
      input: 'order',
      need: `hold at least ${columns.length} pulls for ${drift} drift`,
      got: order,
      mend: 'Add pulls.',
    });
  }
  return linearModel(statistic, columns, ['the mean', 'the change', 'the linear drift', 'the quadratic drift']);
}

/** What a model of an order can tell about the difference. */
export function designOf(order: string, model: LinearModel): OrderDesign {
  const candidates = order.split('B').length - 1;
  const varianceFactor = model.varianceFactors[1]!;
  return {
    varianceFactor,
    degreesOfFreedom: model.degreesOfFreedom,
    confounded: varianceFactor > 2 * (1 / (order.length - candidates) + 1 / candidates) * (1 + 1e-12),
  };
}

/** Share of each pull's own scatter that stays in its residual: one less its leverage. */
export function leftByFit(order: string, model: LinearModel): Float64Array {
  return Float64Array.from(order, (_, pull) => {
    const one = Float64Array.from(order, (__, other) => (other === pull ? 1 : 0));
    return model.fit(one).residuals[pull]!;
  });
}

/** The refusal of an order that leaves too little scatter to go by. */
export function tooFewDegrees(statistic: string, order: string, least: number, f: number): StatisticsError {
  return new StatisticsError({
    code: 'too-few-degrees-of-freedom',
    statistic,
    input: 'order',
    need: `leave at least ${least} ${least === 1 ? 'degree' : 'degrees'} of freedom`,
    got: `${f} from ${order}`,
    mend: 'Add pulls, or leave out the drift term by design.',
  });
}
