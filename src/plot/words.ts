import { level, shown } from '../comparison/words.js';
import type { ComparedQuantity, Comparison, Outcome, PullResult, SideResult } from '../comparison/index.js';
import type { Column, Quantity } from '../units/index.js';

/** The unit that everything compared shows in. */
export function unitOf(comparison: Comparison): string {
  return comparison.baseline.mean.unit;
}

/** A quantity of the compared kind as a number in the unit of the comparison. */
export function numberOf(value: Quantity, unit: string): number {
  return (value as Quantity<'ratio'>).in(unit as '1');
}

/** The same for a column; missing rows are NaN. */
export function numbersOf(column: Column, unit: string): Float64Array {
  return (column as Column<'ratio'>).in(unit as '1');
}

/** Engine speeds of the comparison's grid in rpm. */
export function gridOf(comparison: Comparison): number[] {
  const { from, step } = comparison.engineSpeed;
  return Array.from({ length: comparison.baseline.mean.length }, (_, row) => from.in('rpm') + row * step.in('rpm'));
}

/** `power at the hub`: what is compared and where it was measured, without what was done to it. */
export function comparedWords({ basis }: Comparison): string {
  return basis.split(', as logged')[0]!;
}

export function acceptedPulls(side: SideResult): readonly PullResult[] {
  return side.pulls.filter((pull) => pull.accepted);
}

const NO_RESULTS: readonly Outcome[] = ['cannot be compared', 'unit suspected', 'reading suspected', 'too few pulls'];

/** Outcomes in which no difference may be read as a result. */
export function isNoResult(outcome: Outcome): boolean {
  return NO_RESULTS.includes(outcome);
}

/** Why there is no result, in words that ask for what comes next. */
export function noResultReason(outcome: Outcome): string {
  if (outcome === 'unit suspected') return 'units or changes to be checked first';
  return outcome === 'reading suspected' ? 'readings to be checked first' : outcome;
}

/** What more of the compared quantity is called. */
export const MORE: Readonly<Record<ComparedQuantity, string>> = {
  power: 'more power',
  torque: 'more torque',
  'air flow': 'more air',
  'air per cycle': 'more air per cycle',
};

/** What less of it is called. */
export const LESS: Readonly<Record<ComparedQuantity, string>> = {
  power: 'less power',
  torque: 'less torque',
  'air flow': 'less air',
  'air per cycle': 'less air per cycle',
};

/** `95 %`. */
export function levelText({ confidence }: Comparison): string {
  return level(confidence);
}

/** `95 % band for the whole curve at once`, and for all comparisons that share the chance. */
export function bandText(comparison: Comparison): string {
  const shared = comparison.options.setUps ?? 1;
  const whole = shared === 1 ? 'the whole curve' : `the whole curve and all ${shared} comparisons`;
  return `${levelText(comparison)} band for ${whole} at once`;
}

/** The worthwhile difference as `±2.5 kW`. */
export function marginText(worthwhile: Quantity): string {
  return `±${shown(worthwhile)}`;
}

/**
 * A name from a folder or file as a label: characters that cannot be seen, or that turn the direction of writing, are shown as such,
 * and long names are cut.
 */
export function labelText(name: string, longest = 40): string {
  const visible = name.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}]/gu, '\uFFFD').trim();
  const characters = Array.from(visible);
  return characters.length <= longest ? visible : `${characters.slice(0, longest - 1).join('')}…`;
}

/** A label broken into lines no longer than asked, two at most. */
export function labelLines(name: string, longest: number): string[] {
  const text = labelText(name, 2 * longest);
  if (text.length <= longest) return [text];
  // A number stays with its unit where it can.
  const spaces = [...text.matchAll(/ /g)].map(({ index }) => index).filter((space) => space <= longest);
  const cut = spaces.findLast((space) => !/\d$/.test(text.slice(0, space))) ?? spaces.at(-1) ?? longest;
  return [text.slice(0, cut).trim(), labelText(text.slice(cut).trim(), longest)];
}
