import type { SplitOrder } from '../statistics/index.js';
import type { Factor } from './factors.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import { meansOverRange, type PullMeans, type SplitPull } from './pull-means.js';
import { relativeChange } from './relative-change.js';
import type { Estimate, Prediction } from './result.js';
import { splitErrors, splitSensors } from './sensors.js';

/** Power and air with charge density: 1 for density alone; 0.6 is what sources give for the brake power of a spark-ignition engine. */
const EXPONENTS = [1, 0.6] as const;

/** Pulls that speak about a relative change. */
export interface RelativeInputs {
  readonly sides: readonly [SplitPull[], SplitPull[]];
  readonly names: readonly [string, string];
  readonly order: SplitOrder | undefined;
}

/**
 * What the change of charge density alone would have done, beside what was found: pressure counts in full, temperature to the power n.
 * The intervals are of the pulls and of the instruments that read pressure and temperature.
 */
export function predictionOf(
  inputs: RelativeInputs,
  found: Estimate<'ratio'>,
  options: ResolvedOptions,
): Prediction | undefined {
  const known = inputs.sides.flat().map((pull) => meansOverRange(pull));
  if (known.some((pull) => pull.manifoldPressure === undefined || pull.chargeTemperature === undefined))
    return undefined;
  const by = (exponent: number): Estimate<'ratio'> =>
    changeOf(
      inputs,
      (pull) => Math.log(pull.manifoldPressure!) - exponent * Math.log(pull.chargeTemperature!),
      options,
    );
  return { byDensity: by(EXPONENTS[0]), withUsualExponent: by(EXPONENTS[1]), found };
}

/** What was found, as a share of the baseline with its interval: a gain of an instrument that read both sides cancels in it. */
export function foundChange(inputs: RelativeInputs, relative: number, options: ResolvedOptions): Estimate<'ratio'> {
  return changeOf(inputs, (pull) => Math.log(pull.whole), options, relative);
}

function changeOf(
  { sides, names, order }: RelativeInputs,
  log: Factor['log'],
  options: ResolvedOptions,
  value?: number,
): Estimate<'ratio'> {
  const [baseline, candidate] = sides.map((side) => side.map((pull): number => log(meansOverRange(pull)))) as [
    number[],
    number[],
  ];
  const only: Factor[] = [{ name: 'change', log: (pull: PullMeans) => log(pull) }];
  const sensors = splitSensors(splitErrors(names, options), only, sides, meansOverRange);
  return relativeChange({ baseline, candidate }, sensors, { confidence: ownConfidence(options), order }, value);
}
