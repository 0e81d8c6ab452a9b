import type { Quantity, UnitPreferences } from '../units/index.js';
import type { ChannelRole } from '../sweep/index.js';
import type { AreaUnderCurve } from './area.js';
import type {
  ComparedQuantity,
  CorePerformance,
  Estimate,
  Figure,
  OpenQuestion,
  PredictedAgainstFound,
  Prediction,
  PullScatter,
  ScatterComparison,
} from './result.js';
import type { OddPull } from './odd-pulls.js';
import { afterDriftWords } from './pull-scatter.js';
import { coreLines } from './core-words.js';
import { caveatOf, ROLES_OF_DENSITY } from './open-questions.js';
import { betweenSigned, like, listed, named, shown, signed, signedPercent } from './words.js';

/** What was found beside the headline. */
export interface FindingInputs {
  readonly names: readonly [string, string];
  readonly compared: ComparedQuantity;
  readonly figures: readonly Figure[];
  readonly area: AreaUnderCurve | undefined;
  readonly scatter: ScatterComparison | undefined;
  readonly pullScatter: PullScatter | undefined;
  readonly odd: readonly OddPull[];
  readonly cores: { readonly baseline: CorePerformance | undefined; readonly candidate: CorePerformance | undefined };
  readonly prediction: Prediction | undefined;
  readonly predicted: PredictedAgainstFound | undefined;
  readonly openQuestions: readonly OpenQuestion[];
  readonly units: UnitPreferences;
}

/** Below this chance the scatter of two set-ups is called different. */
const UNALIKE = 0.05;

/** What was found beside the headline, a sentence each. */
export function findingsOf({
  names,
  compared,
  figures,
  area,
  scatter,
  pullScatter,
  odd,
  cores,
  prediction,
  predicted,
  openQuestions,
  units,
}: FindingInputs): string[] {
  const lines = figures.map((figure) => figureLine(figure, compared, names, units));
  if (area) lines.push(area.sentence);
  const caveat = (roles: readonly ChannelRole[]): string => {
    const words = caveatOf(openQuestions, roles);
    return words === undefined ? '' : ` ${words}`;
  };
  if (prediction) {
    const { byDensity, withUsualExponent, found } = prediction;
    lines.push(
      `Charge density alone would give ${share(byDensity)}, and with the usual exponent of 0.6 on temperature ${share(withUsualExponent)}; found ${share(found)}.${caveat(ROLES_OF_DENSITY)}`,
    );
  }
  if (predicted) lines.push(predicted.sentence);
  lines.push(...coreLines(cores, names, caveat));
  lines.push(...odd.map(({ sentence }) => sentence));
  if (scatter) {
    const { baseline, candidate } = scatter.repeatabilityLimit;
    lines.push(
      `Two single pulls of one set-up may differ by ${shown(baseline, units)} with ${names[0]} and ${shown(candidate, units)} with ${names[1]} in 95 of 100 cases${pullScatter ? afterDriftWords(pullScatter) : ''}.`,
    );
    if (scatter.pValue < UNALIKE) {
      const more = scatter.varianceRatio > 1 ? names[1] : names[0];
      lines.push(`The pulls of ${more} scatter more than the others; look for why before trusting a small difference.`);
    }
  }
  return lines.map((line) => line.charAt(0).toUpperCase() + line.slice(1));
}

function figureLine(
  { name, baseline, candidate, difference, peak }: Figure,
  compared: ComparedQuantity,
  names: readonly [string, string],
  units: UnitPreferences,
): string {
  const at = (speed: Quantity | undefined): string =>
    speed ? ` at ${shown(speed, { 'rotational speed': 'rpm' })}` : '';
  const isPeak = peak?.baseline !== undefined && peak.candidate !== undefined;
  const sides = isPeak
    ? `${shown(baseline, units)}${at(peak.baseline)} to ${shown(candidate, units)}${at(peak.candidate)}`
    : `${shown(baseline, units)} to ${shown(candidate, units)}`;
  // What a reader would get by subtracting the two is another number where a drift is taken out.
  const plain = like(difference.value, candidate.si - baseline.si);
  const isPlain = shown(plain, units) === shown(difference.value, units);
  const change = `${signed(difference.value, units)}, between ${betweenSigned(difference.low, difference.high, units)}${isPlain ? '' : ', after a steady drift is taken out'}`;
  const line = `${compared} ${name}: ${sides}, ${change}.`;
  if (peak === undefined || isPeak) return line;
  const without = [peak.baseline, peak.candidate].flatMap((speed, i) => (speed ? [] : [named(names[i]!)]));
  return `${line} There is no peak inside the range with ${listed(without)}: it may lie beyond.`;
}

/** `+2.4 % (+1.9 to +2.9 %)`. */
function share({ value, low, high }: Estimate<'ratio'>): string {
  return `${signedPercent(value.si)} (${signedPercent(low.si).replace(' %', '')} to ${signedPercent(high.si)})`;
}

/** With as many digits as the scatter leaves, and without a scatter that the digits do not show. */
