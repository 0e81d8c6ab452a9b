import { fromSi } from '../units/internal.js';
import type { Quantity } from '../units/index.js';
import type { ComparedQuantity } from './options.js';
import { groupedDigits, signedPercent } from './words.js';

/** The area under the torque curve over the range, in the unit of torque times rpm. */
export interface AreaUnderCurve {
  readonly unit: string;
  readonly baseline: number;
  readonly candidate: number;
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  /** In words. */
  readonly sentence: string;
}

/** What an area is worked out from: the mean over the range of each side, and their difference with its interval. */
export interface AreaInputs {
  readonly compared: ComparedQuantity;
  readonly means: readonly [baseline: Quantity | undefined, candidate: Quantity | undefined];
  readonly overall: { readonly value: Quantity; readonly low: Quantity; readonly high: Quantity } | undefined;
  readonly relative: number | undefined;
  readonly from: Quantity<'rotational speed'>;
  readonly to: Quantity<'rotational speed'>;
}

/**
 * What the trade calls the area under the curve: the mean over the range times the width of the range. It holds nothing that the mean
 * does not, and its interval is that of the mean. For torque only: power or air times engine speed is nothing that anybody uses.
 */
export function areaUnderCurve({
  compared,
  means,
  overall,
  relative,
  from,
  to,
}: AreaInputs): AreaUnderCurve | undefined {
  const [a, b] = means;
  if (compared !== 'torque' || !overall || !a || !b || relative === undefined) return undefined;
  const width = to.in('rpm') - from.in('rpm');
  const { unit, kind } = overall.value;
  const area = ({ si }: Quantity): number => fromSi(kind, si, unit) * width;
  const numbers = {
    unit: `${unit}·rpm`,
    baseline: area(a),
    candidate: area(b),
    difference: area(overall.value),
    low: area(overall.low),
    high: area(overall.high),
  };
  // To the second figure of the half-width: more would only look exact.
  const place = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, (numbers.high - numbers.low) / 2))) - 1);
  const whole = (value: number): string => groupedDigits(Math.round(value / place) * place);
  const signedWhole = (value: number): string =>
    (whole(value).startsWith('−') || whole(value) === '0' ? '' : '+') + whole(value);
  const change = `${signedWhole(numbers.difference)}, between ${signedWhole(numbers.low)} and ${signedWhole(numbers.high)} ${numbers.unit}`;
  const sentence = `Area under the torque curve, which is its mean over the range times the width of ${groupedDigits(Math.round(width))} rpm: ${whole(numbers.baseline)} to ${whole(numbers.candidate)} ${numbers.unit}, ${change}. It says what the mean says: ${signedPercent(relative)}.`;
  return { ...numbers, sentence };
}
