import { quantityOf, NO_NOTES } from '../units/internal.js';
import type { Kind, Quantity, UnitPreferences } from '../units/index.js';

/** How the sentences of a comparison write numbers: one decimal below 1000 for powers, whole torques, milligrams, a true minus sign. */
export function shown(quantity: Quantity, units?: UnitPreferences): string {
  const unit = units?.[quantity.kind] ?? quantity.unit;
  const value = (quantity as Quantity<'ratio'>).in(unit as '1');
  if (Math.abs(value) >= TOO_LONG) return `${powerOfTen(value)}${unit === '1' ? '' : ` ${unit}`}`;
  return `${decimals(value, unit === '%' ? placesOfPercent(value) : placesOf(quantity.kind, value))}${unit === '1' ? '' : ` ${unit}`}`;
}

/** From here on a row of digits says less than a power of ten; only slips of units and broken channels reach it. */
const TOO_LONG = 1e7;

/** `3.12×10¹²`. */
function powerOfTen(value: number): string {
  const [digits, power] = value.toExponential(2).split('e') as [string, string];
  const raised = Array.from(String(Number(power)), (digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]!).join('');
  return `${digits.replace('-', '−')}×10${raised}`;
}

/** The same with its sign, for changes. */
export function signed(quantity: Quantity, units?: UnitPreferences): string {
  const text = shown(quantity, units);
  return text.startsWith('−') || /^[0.]+( |$)/.test(text) ? text : `+${text}`;
}

/** A share in per cent with its sign. */
export function signedPercent(share: number): string {
  const text = decimals(share * 100, 1);
  return `${text.startsWith('−') || Number(text) === 0 ? text : `+${text}`} %`;
}

/** A chance in per cent, with the decimals it has: 95 %, 99.9 %. */
export function level(confidence: number): string {
  return `${String(Number((confidence * 100).toFixed(3)))} %`;
}

/** `“tall core”`: a set-up's name within a sentence. In quotation marks any name reads well: no intercooler, 20 psi, after. */
export function named(setUp: string): string {
  return `“${setUp}”`;
}

/** `the pulls of “tall core”`. */
export function pullsOf(setUp: string): string {
  return `the pulls of ${named(setUp)}`;
}

/** `between +0.8 and +6.6 kW`: the unit once. */
export function betweenSigned(low: Quantity, high: Quantity, units?: UnitPreferences): string {
  const unit = units?.[low.kind] ?? low.unit;
  const suffix = unit === '1' ? '' : ` ${unit}`;
  return `${signed(low, units).slice(0, -suffix.length || undefined)} and ${signed(high, units)}`;
}

/** `+1.2 ± 1.9 kW`: the unit once, and decimals enough for a half-width that is not nothing. */
export function plusMinus(value: Quantity, half: Quantity, units?: UnitPreferences): string {
  const unit = units?.[value.kind] ?? value.unit;
  const [middle, width] = [value, half].map((one) => (one as Quantity<'ratio'>).in(unit as '1')) as [number, number];
  let places = placesOf(value.kind, middle);
  while (width > 0 && Number(width.toFixed(places)) === 0 && places < MOST_PLACES) places++;
  const text = decimals(middle, places);
  const sign = middle > 0 && Number(text) !== 0 ? '+' : '';
  return `${sign}${text} ± ${decimals(width, places)}${unit === '1' ? '' : ` ${unit}`}`;
}

const MOST_PLACES = 4;

/** A number with fixed decimals and a true minus sign; minus nothing is nothing. */
export function decimals(value: number, places: number): string {
  const text = value.toFixed(places);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

const placesOfPercent = (value: number): number => (Number.isInteger(Number(value.toFixed(6))) ? 0 : 1);

function placesOf(kind: Quantity['kind'], value: number): number {
  if (kind === 'torque' || kind === 'temperature' || kind === 'rotational speed') return 0;
  if (kind === 'lambda' || kind === 'gauge pressure' || kind === 'ratio') return Math.abs(value) >= 100 ? 0 : 2;
  if (kind === 'mass') return Math.abs(value) < 100 ? 3 : 1;
  return Math.abs(value) < 1000 ? 1 : 0;
}

/** A whole number with its digits in threes by spaces that do not break, and a true minus sign: `100 000`. */
export function groupedDigits(whole: number): string {
  return decimals(whole, 0).replace(/\B(?=(\d{3})+$)/g, '\u00a0');
}

/** `3500 to 6500 rpm`. */
export function speedRange(from: Quantity<'rotational speed'>, to: Quantity<'rotational speed'>): string {
  return `${decimals(from.in('rpm'), 0)} to ${decimals(to.in('rpm'), 0)} rpm`;
}

/** `from 3500 to 6500 rpm`, or `at 3700 rpm` where that is all. */
export function overSpeeds(from: Quantity<'rotational speed'>, to: Quantity<'rotational speed'>): string {
  return from.si === to.si ? `at ${decimals(from.in('rpm'), 0)} rpm` : `from ${speedRange(from, to)}`;
}

/** `1 pull`, `5 pulls`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

/** Sentence case, for a set-up's name at the start of a sentence. */
export function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** An SI number as a quantity that shows like another one. */
export function like<K extends Kind>(shape: { readonly kind: K; readonly unit: string }, si: number): Quantity<K> {
  return quantityOf(shape.kind, si, shape.unit, undefined, NO_NOTES);
}

/**
 * Begins what is said of single speeds. They are judged by the band for the whole curve, which asks more than the mean over the range
 * does: a mean may be resolved where no single speed is.
 */
export const SPEED_BY_SPEED = 'Speed by speed, for the whole curve at once';
