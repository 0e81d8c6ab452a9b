import type { Quantity, UnitPreferences } from '../units/index.js';
import type { ComparedQuantity, Estimate, Outcome, SpeedRange } from './result.js';
import {
  betweenSigned,
  level,
  listed,
  named,
  overSpeeds,
  pullsOf,
  sentenceCase,
  shown,
  signed,
  signedPercent,
  SPEED_BY_SPEED,
  speedRange,
} from './words.js';

/** What a verdict rests on, beside the interval. */
export interface VerdictBasis {
  readonly compared: ComparedQuantity;
  readonly baseline: string;
  readonly candidate: string;
  readonly from: Quantity<'rotational speed'>;
  readonly to: Quantity<'rotational speed'>;
  readonly confidence: number;
  /** How many comparisons share the chance of error. */
  readonly setUps: number;
  /** Follows the number: `at the hub`, or nothing. */
  readonly measuredAt: string;
  readonly worthwhile: Quantity | undefined;
  readonly relative: number;
  /** Whether a steady drift cannot pass for the change. */
  readonly separable: boolean;
  /** Fewest accepted pulls of a side: two are too few to call two set-ups equal. */
  readonly fewestPulls: number;
  readonly ranges: readonly SpeedRange[];
  readonly units: UnitPreferences;
}

/** The outcome that an interval gives. Equivalence needs a margin that was set beforehand. */
export function outcomeOf({ low, high }: Estimate, worthwhile: Quantity | undefined, fewestPulls: number): Outcome {
  const resolved = low.si > 0 ? 'better' : high.si < 0 ? 'worse' : undefined;
  const inside = worthwhile !== undefined && low.si > -worthwhile.si && high.si < worthwhile.si;
  if (resolved) return inside ? `${resolved}, within the margin` : resolved;
  return inside && fewestPulls > 2 ? 'equivalent' : 'not resolved';
}

/** The answer in words: the verdict is the verb, then the number, where it was measured, its interval, and the range of engine speed. */
export function headlineOf(outcome: Outcome, overall: Estimate, basis: VerdictBasis): string {
  const { worthwhile, units } = basis;
  const between = betweenSigned(overall.low, overall.high, units);
  const value = `${signed(overall.value, units)}${basis.measuredAt ? ` ${basis.measuredAt}` : ''} (${signedPercent(basis.relative)})`;
  const over = `averaged from ${speedRange(basis.from, basis.to)} (${chance(basis)})`;
  const margin = worthwhile ? shown(worthwhile, units) : '';
  switch (outcome) {
    case 'better':
    case 'worse':
      return `${subject(basis)} ${verb(basis, outcome)}: ${value}, between ${between}, ${over}.${splitBySpeed(basis)}`;
    case 'better, within the margin':
    case 'worse, within the margin':
      return `${subject(basis)} ${verb(basis, outcome)}, less than the ${margin} set beforehand: ${value}, between ${between}, ${over}.${splitBySpeed(basis)}`;
    case 'equivalent':
      return `${nothingWorthHaving(basis)} smaller than the ${margin} set beforehand (best estimate ${value}, between ${between}, ${over}).`;
    default:
      return `These pulls cannot tell whether the engine ${NOUNS[basis.compared].plain} with ${named(basis.candidate)} than with ${named(basis.baseline)}: the best estimate is ${value}, but anything between ${between} fits, ${over}.${splitBySpeed(basis)}`;
  }
}

/** The chance that the interval holds the truth; of all intervals together, where several comparisons share it. */
function chance({ confidence, setUps }: VerdictBasis): string {
  return setUps === 1 ? level(confidence) : `${level(confidence)} for all ${setUps} comparisons together`;
}

const NOUNS: Readonly<Record<ComparedQuantity, { plain: string; more: string; less: string; past: string }>> = {
  power: { plain: 'makes more power', more: 'more power', less: 'less power', past: 'made' },
  torque: { plain: 'makes more torque', more: 'more torque', less: 'less torque', past: 'made' },
  'air flow': { plain: 'takes in more air', more: 'more air', less: 'less air', past: 'took in' },
  'air per cycle': {
    plain: 'takes in more air per cycle',
    more: 'more air per cycle',
    less: 'less air per cycle',
    past: 'took in',
  },
};

/** The engine with the set-up only where drift can be told from it; otherwise the pulls, which is all that was seen. */
function subject({ separable, candidate }: VerdictBasis): string {
  return separable ? `With ${named(candidate)} the engine` : sentenceCase(pullsOf(candidate));
}

/** Where drift cannot be told from the change it may hide one as well as feign one: then only the pulls were found alike. */
function nothingWorthHaving(basis: VerdictBasis): string {
  return basis.separable
    ? `${named(basis.candidate)} changes nothing worth having against ${named(basis.baseline)}: whatever it does is`
    : `${subject(basis)} show nothing worth having against ${pullsOf(basis.baseline)}: whatever the difference is, it is`;
}

function verb({ separable, compared }: VerdictBasis, outcome: Outcome): string {
  const noun = NOUNS[compared];
  const amount = outcome.startsWith('better') ? noun.more : noun.less;
  const little = outcome.endsWith('margin') ? `a little ${amount}` : amount;
  const present = noun.past === 'made' ? 'makes' : 'takes in';
  return `${separable ? present : noun.past} ${little}`;
}

/** Where the verdict differs along the range, which the mean over it hides. */
function splitBySpeed({ ranges, compared, units }: VerdictBasis): string {
  const resolved = ranges.filter((range) => range.outcome === 'better' || range.outcome === 'worse');
  if (ranges.length < 2 || resolved.length === 0) return '';
  const noun = NOUNS[compared];
  const parts = resolved.map(
    ({ from, to, outcome, difference }) =>
      `${outcome === 'better' ? noun.more : noun.less} ${overSpeeds(from, to)} (${signed(difference, units)})`,
  );
  const others = new Set(ranges.filter((range) => !resolved.includes(range)).map((range) => range.outcome));
  const elsewhere = others.size === 0 ? '' : `; elsewhere ${listed([...others])}`;
  return ` ${SPEED_BY_SPEED}: ${parts.join('; ')}${elsewhere}.`;
}
