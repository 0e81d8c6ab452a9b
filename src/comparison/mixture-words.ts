import type { UnitPreferences } from '../units/index.js';
import type { EqualMixture, MixtureWorth } from './result.js';
import { betweenSigned, decimals, named, sentenceCase, signed } from './words.js';

/** The comparison at equal lambda in sentences, each saying that it is not the headline. */
export function equalMixtureSentences(
  { lambda, lambdaChange, ways, notTold }: Omit<EqualMixture, 'sentences'>,
  names: readonly [string, string],
  units: UnitPreferences,
): string[] {
  const leaner = lambdaChange > 0 ? 'leaner' : 'richer';
  const difference =
    Math.abs(lambdaChange) < 0.0005
      ? `Lambda was the same with both, ${decimals(lambda.baseline, 3)}.`
      : `Lambda was ${decimals(lambda.candidate, 3)} with ${named(names[1])} and ${decimals(lambda.baseline, 3)} with ${named(names[0])}: ${decimals(Math.abs(lambdaChange), 3)} ${leaner}.`;
  return [
    difference,
    ...ways.map((way) => waySentence(way, units)),
    ...(notTold === undefined ? [] : [`${sentenceCase(notTold)}.`]),
    ...(ways.length === 0 && notTold !== undefined ? [WHAT_WOULD] : []),
  ];
}

const WHAT_WOULD = 'Repeat with the mixture held equal, or give powerPerLambda from a mixture loop on this engine.';

const FROM: Readonly<Record<MixtureWorth['by'], string>> = {
  pulls: 'By how the pulls went with lambda within the set-ups',
  given: 'By the figure that was given',
};

const VERDICTS: Readonly<Record<string, string>> = {
  better: 'more, and resolved',
  worse: 'less, and resolved',
  'better, within the margin': 'a little more, within the margin',
  'worse, within the margin': 'a little less, within the margin',
  equivalent: 'nothing worth having',
  'not resolved': 'not resolved',
};

function waySentence({ by, perHundredth, worth, difference, outcome }: MixtureWorth, units: UnitPreferences): string {
  const spread = ({ value, low, high }: MixtureWorth['worth']): string =>
    `${signed(value, units)}, between ${betweenSigned(low, high, units)}`;
  return `${FROM[by]}, 0.01 leaner is ${spread(perHundredth)}, and the difference of lambda is worth ${spread(worth)}. At equal lambda, not the headline: ${spread(difference)} (${VERDICTS[outcome]!}).`;
}
