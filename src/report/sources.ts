import { explain, source } from '../calculation/index.js';
import { sourceText } from '../calculation/explain/words.js';
import type { Comparison } from '../comparison/index.js';
import type { Source } from '../units/index.js';

const BAND: Source = {
  id: 'worsley1994',
  work: 'K. J. Worsley, Local maxima and the expected Euler characteristic of excursion sets of chi-squared, F and t fields, Advances in Applied Probability 26 (1994) 13',
  where: 'expected crossings of a t field: the band for the whole curve',
  status: 'memory',
};

const SPLIT: Source = {
  id: 'woodLenzen2006',
  work: 'R. Wood, M. Lenzen, Zero-value problems of the logarithmic mean divisia index decomposition method, Energy Policy 34 (2006) 1326',
  where: 'logarithmic-mean weights, exact and the same whichever side is the baseline: the split',
  status: 'memory',
};

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
    ...(has(({ curve }) => curve) ? [BAND] : []),
    ...(has(({ split }) => split) ? [SPLIT] : []),
  ];
  const bands = comparisons.flatMap(({ curve }) => (curve ? [curve.method] : []));
  return [...new Set([...[...steps, ...methods].map(sourceText), ...bands])];
}
