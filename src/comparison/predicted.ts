import { uncertainty } from '../calculation/index.js';
import { combineUncertainty, normalFactor } from '../statistics/index.js';
import { isQuantity, type Quantity } from '../units/index.js';
import { ownConfidence, type PredictedChange, type ResolvedOptions } from './options.js';
import type { Estimate, PredictedAgainstFound } from './result.js';
import { like, signedPercent } from './words.js';

/** What was predicted beside what was found, with the interval of the gap between them. */
export function predictedAgainstFound(
  found: Estimate<'ratio'>,
  options: ResolvedOptions,
): PredictedAgainstFound | undefined {
  if (options.predicted === undefined) return undefined;
  const confidence = ownConfidence(options);
  const predicted = predictedEstimate(options.predicted, confidence);
  const { halfWidth, standardUncertainty, degreesOfFreedom } = combineUncertainty(
    { standardUncertainty: found.standardUncertainty.si, degreesOfFreedom: found.degreesOfFreedom },
    [{ standardUncertainty: predicted.standardUncertainty.si, degreesOfFreedom: predicted.degreesOfFreedom }],
    { confidence },
  );
  const value = found.value.si - predicted.value.si;
  const share = (si: number): Quantity<'ratio'> => like({ kind: 'ratio', unit: '%' }, si);
  const gap: Estimate<'ratio'> = {
    value: share(value),
    low: share(value - halfWidth),
    high: share(value + halfWidth),
    standardUncertainty: share(standardUncertainty),
    degreesOfFreedom,
  };
  const verdict = gap.low.si > 0 ? 'found more' : gap.high.si < 0 ? 'found less' : 'agree';
  return { predicted, found, gap, verdict, sentence: sentenceOf({ predicted, found, gap, verdict }) };
}

/** A prediction with its interval: from its own budget, or from the ends that were given, taken as 95 % of a normal law. */
function predictedEstimate(given: Quantity<'ratio'> | PredictedChange, confidence: number): Estimate<'ratio'> {
  const share = (si: number): Quantity<'ratio'> => like({ kind: 'ratio', unit: '%' }, si);
  if (!isQuantity(given)) {
    const half = Math.max(given.high.si - given.value.si, given.value.si - given.low.si);
    const { value, low, high } = given;
    return { value, low, high, standardUncertainty: share(half / normalFactor(0.05)), degreesOfFreedom: Infinity };
  }
  const budget = given.origin === undefined ? undefined : uncertainty(given);
  const half = budget?.expanded(confidence).si ?? 0;
  return {
    value: share(given.si),
    low: share(given.si - half),
    high: share(given.si + half),
    standardUncertainty: share(budget?.standard.si ?? 0),
    degreesOfFreedom: budget?.degreesOfFreedom ?? Infinity,
  };
}

function sentenceOf({ predicted, found, gap, verdict }: Omit<PredictedAgainstFound, 'sentence'>): string {
  const percent = (quantity: Quantity<'ratio'>): string => signedPercent(quantity.si);
  const spread = `${signedPercent(gap.low.si).replace(' %', '')} and ${signedPercent(gap.high.si)}`;
  const words = {
    agree: 'they agree within what both are known to',
    'found more': 'more was found than predicted',
    'found less': 'less was found than predicted',
  }[verdict];
  const exact =
    predicted.standardUncertainty.si === 0 ? ' The prediction came without an interval and counts as exact.' : '';
  return `Predicted ${percent(predicted.value)}, found ${percent(found.value)} of the baseline: ${words}. Found less predicted is ${percent(gap.value)}, between ${spread}.${exact}`;
}
