import { betweenSigned, counted, shown, signed } from '../comparison/words.js';
import type { Comparison } from '../comparison/index.js';
import { acceptedPulls, isNoResult, labelText, noResultReason } from '../plot/words.js';

/** `tall core against stock core`. */
export function subjectOf({ candidate, baseline }: Comparison): string {
  return `${labelText(candidate.name)} against ${labelText(baseline.name)}`;
}

/** The page's title. It speaks of pulls, which holds whether or not drift can be told from the change, and of no result where there is none. */
export function titleOf(comparison: Comparison): string {
  const pulls = `Pulls of ${subjectOf(comparison)}`;
  const { overall, outcome, worthwhile } = comparison;
  switch (outcome) {
    case 'cannot be compared':
      return `${pulls}: cannot be compared`;
    case 'unit suspected':
    case 'reading suspected':
      return `${pulls}: ${noResultReason(outcome)}`;
    case 'too few pulls':
      return `${pulls}: too few to tell`;
    case 'not resolved':
      return `${pulls}: not resolved`;
    case 'equivalent':
      return `${pulls}: nothing worth having, less than ${shown(worthwhile!)} either way`;
    default:
      return `${pulls}: ${signed(overall!.value)}, between ${betweenSigned(overall!.low, overall!.high)}`;
  }
}

/** The outcome in a few words, for a table of several. */
export function outcomeWords({ outcome, worthwhile }: Comparison): string {
  switch (outcome) {
    case 'equivalent':
      return `nothing worth having (less than ${shown(worthwhile!)})`;
    case 'better, within the margin':
      return `resolved, more, but less than ${shown(worthwhile!)}`;
    case 'worse, within the margin':
      return `resolved, less, but less than ${shown(worthwhile!)}`;
    case 'better':
      return 'resolved, more';
    case 'worse':
      return 'resolved, less';
    default:
      return noResultReason(outcome);
  }
}

/** `5 pulls of tall core and 5 of stock core`. */
export function pullCounts({ candidate, baseline }: Comparison): string {
  return `${counted(acceptedPulls(candidate).length, 'pull')} of ${labelText(candidate.name)} and ${acceptedPulls(baseline).length} of ${labelText(baseline.name)}`;
}

/** Put before what is shown of a difference that is no result. */
export function noResultWords({ outcome }: Comparison): string {
  return isNoResult(outcome) ? 'Not a result. ' : '';
}
