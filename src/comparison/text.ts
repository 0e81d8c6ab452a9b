import { caveatOf, ROLES_OF_SPLIT } from './open-questions.js';
import { optionsRecord } from './options-record.js';
import type { Comparison, Estimate, SpeedRange } from './result.js';
import { betweenSigned, overSpeeds, sentenceCase, signed, signedPercent, SPEED_BY_SPEED } from './words.js';

type ComparisonData = Omit<Comparison, 'toString' | 'toJSON'>;

/** The answer as a terminal or notebook shows it. */
export function comparisonText(comparison: ComparisonData): string {
  const lines = [comparison.headline];
  for (const line of comparison.objections.slice(1)) lines.push(`  ${line}`);
  for (const line of comparison.rests) lines.push(`  ${line}`);
  for (const side of [comparison.baseline, comparison.candidate]) {
    for (const pull of side.pulls) {
      for (const refusal of pull.refusals) {
        lines.push(
          `  ${refusal.overruled ? 'OVERRULED' : 'REFUSED'} ${side.name}, ${pull.name}: ${refusal.reason}${refusal.because === undefined ? '' : ` Overruled: ${refusal.because}`}`,
        );
      }
    }
  }
  if (comparison.split && comparison.objections.length === 0) {
    lines.push(comparison.driftTakenOut ? '  Why, with a steady drift taken out of every part:' : '  Why:');
    for (const { factor, part, percent } of comparison.split.contributions) {
      lines.push(
        `    ${factor}: ${signed(part.value)} (${signedPercent(percent / 100)}), between ${betweenSigned(part.low, part.high)}`,
      );
    }
    if (comparison.split.notSeparated.length > 0)
      lines.push(`    Not told apart: ${comparison.split.notSeparated.join(' ')}`);
    const caveat = caveatOf(comparison.openQuestions, ROLES_OF_SPLIT);
    if (caveat !== undefined) lines.push(`    ${caveat}`);
  }
  if (comparison.objections.length === 0) {
    const ranges = comparison.curve?.ranges ?? [];
    if (ranges.length > 0)
      lines.push(`  ${isIndicative(comparison) ? indicativeWords(ranges) : bySpeedWords(ranges, comparison.overall)}`);
  } else if (comparison.overall) {
    const { value, low, high } = comparison.overall;
    lines.push(`  Seen, but not a result: ${signed(value)}, between ${betweenSigned(low, high)}.`);
  }
  for (const line of comparison.findings) lines.push(`  ${line}`);
  const { equalMixture, ripple } = comparison;
  if (equalMixture?.matters) {
    lines.push(...equalMixture.sentences.map((line) => `  ${line}`));
    const caveat = caveatOf(comparison.openQuestions, ['lambda']);
    if (caveat !== undefined) lines.push(`  ${caveat}`);
  }
  if (ripple && ripple.pulls.length > 1) lines.push(`  ${sentenceCase(ripple.answer)}`);
  if (comparison.next.length > 0) lines.push(`  Next: ${comparison.next.join(' ')}`);
  return lines.join('\n');
}

/** Whether the band stands on two pulls of a side; with a drift taken out it stands on those of both. */
function isIndicative({ baseline, candidate, driftTakenOut }: ComparisonData): boolean {
  const used = [baseline, candidate].map(({ pulls }) => pulls.filter(({ accepted }) => accepted).length);
  return !driftTakenOut && Math.min(...used) < 3;
}

/** The difference without a verdict, which two pulls a side do not give. */
function indicativeWords(ranges: readonly SpeedRange[]): string {
  const parts = ranges.map(({ from, to, difference }) => `${overSpeeds(from, to)} ${signed(difference)}`);
  return `${SPEED_BY_SPEED}: indicative with two pulls a side, and no verdict: ${parts.join('; ')}.`;
}

/** Every range of speeds with its verdict. */
function bySpeedWords(ranges: readonly SpeedRange[], overall: Estimate | undefined): string {
  const parts = ranges.map(
    ({ from, to, outcome, difference }) => `${overSpeeds(from, to)} ${outcome} (${signed(difference)})`,
  );
  const isResolved = overall !== undefined && (overall.low.si > 0 || overall.high.si < 0);
  const harder =
    isResolved && ranges.every(({ outcome }) => outcome === 'not resolved')
      ? ' That is a harder question than the mean over the range, which is resolved.'
      : '';
  return `${SPEED_BY_SPEED}: ${parts.join('; ')}.${harder}`;
}

/** The answer as plain data, for files and other programs. */
export function comparisonData(comparison: ComparisonData): unknown {
  const data = Object.entries({ ...comparison, options: optionsRecord(comparison.options).given }).filter(
    ([, value]) => typeof value !== 'function',
  );
  return JSON.parse(JSON.stringify(Object.fromEntries(data))) as unknown;
}
