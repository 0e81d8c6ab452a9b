import { explain, source } from '../calculation/index.js';
import { sourceText } from '../calculation/explain/words.js';
import { drawnInterval } from './draws.js';
import type { Comparison } from '../comparison/index.js';

const BAND = source('worsley1994', 'expected crossings of a t field: the band for the whole curve', 'memory');

const SPLIT = source(
  'woodLenzen2006',
  'logarithmic-mean weights, exact and the same whichever side is the baseline: the split',
  'memory',
);

/** What the numbers of a page rest on, each source once: those of the worked steps, then those of the statistics. */
export function sourceTexts(comparisons: readonly Comparison[]): string[] {
  const steps = comparisons.flatMap(({ overall }) =>
    overall === undefined ? [] : explain(overall.value).model.steps.flatMap((step) => step.sources),
  );
  const has = (test: (comparison: Comparison) => unknown): boolean =>
    comparisons.some((one) => test(one) !== undefined);
  const methods = [
    ...(has(({ overall }) => overall)
      ? [source('gum', 'clauses 4.2, 5.1.2 and annex G: the interval and its budget', 'memory')]
      : []),
    ...(has(drawnInterval)
      ? [source('jcgm101', 'clauses 6.4.9, 7.9 and 8: the check of the interval by draws', 'memory')]
      : []),
    ...(has(({ curve }) => curve) ? [BAND] : []),
    ...(has(({ split }) => split) ? [SPLIT] : []),
  ];
  const bands = comparisons.flatMap(({ curve }) => (curve ? [curve.method] : []));
  return [...new Set([...[...steps, ...methods].map(sourceText), ...bands])];
}
