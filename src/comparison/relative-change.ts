import {
  combineUncertainty,
  pullContrast,
  type LogFactor,
  type SplitOrder,
  type SplitSensor,
} from '../statistics/index.js';
import type { Estimate } from './result.js';
import { like } from './words.js';

/**
 * A change as a share of the baseline with its interval, from the logarithm of one number a pull and the sensors that move it.
 *
 * @param value - the share itself, where that is known otherwise; from the means of the logarithms when left out.
 */
export function relativeChange(
  logs: Omit<LogFactor, 'name'>,
  sensors: readonly SplitSensor[],
  { confidence, order }: { readonly confidence: number; readonly order: SplitOrder | undefined },
  value?: number,
): Estimate<'ratio'> {
  const { difference, standardError, degreesOfFreedom } = pullContrast(order)(logs.baseline, logs.candidate);
  const add = (values: Iterable<number>): number => Array.from(values).reduce((sum, one) => sum + one, 0);
  const parts = sensors.map((sensor) => {
    const [a, b] = [add(sensor.baseline), add(sensor.candidate)];
    const effect = sensor.shared ? Math.abs(b - a) : Math.hypot(a, b);
    return {
      standardUncertainty: effect * sensor.standardUncertainty,
      degreesOfFreedom: sensor.degreesOfFreedom ?? Infinity,
    };
  });
  const pulls = { standardUncertainty: standardError, degreesOfFreedom };
  const combined = combineUncertainty(pulls, parts, { confidence });
  const middle = value === undefined ? difference : Math.log1p(value);
  const share = (log: number) => like({ kind: 'ratio', unit: '%' } as const, Math.expm1(log));
  return {
    value: share(middle),
    low: share(middle - combined.halfWidth),
    high: share(middle + combined.halfWidth),
    standardUncertainty: like({ kind: 'ratio', unit: '%' }, Math.exp(middle) * combined.standardUncertainty),
    degreesOfFreedom: combined.degreesOfFreedom,
  };
}
