import { formatValue } from '../units/format.js';
import { differenceUnit, fromSi, toSi } from '../units/internal.js';
import { differenceKind } from '../units/kinds.js';
import type { Quantity } from '../units/origin.js';
import type { UncertaintyBudget } from './budget.js';
import type { Table } from './table.js';

/**
 * A value with its standard uncertainty in brackets, in units of the last digit shown: two figures of it, as JCGM 100 7.2.6 advises.
 *
 * @example
 * concise(power, 1170) //=> '230.4(12) kW'
 */
export function concise(value: Quantity, standardSi: number): string {
  const standard = fromSi(differenceKind(value.kind), standardSi, differenceUnit(value));
  if (standard === 0) return formatValue(value);
  return withUnit(inBrackets(fromSi(value.kind, value.si, value.unit), standard), value.unit);
}

function inBrackets(number: number, standard: number): string {
  const rounded = Number(standard.toPrecision(2));
  const place = lastPlaceOf(standard);
  const power = Math.floor(Math.log10(Math.max(Math.abs(number), rounded)));
  // Far from one the digits would drown in zeros.
  if (power < -4 || place > 4) return `${inBrackets(number / 10 ** power, rounded / 10 ** power)}e${power}`;
  const digits = place > 0 ? rounded : Math.round(rounded * 10 ** -place);
  return `${toPlace(number, place)}(${digits})`;
}

/** The power of ten of the second figure. */
export const lastPlaceOf = (standard: number): number => Number(standard.toExponential(1).split('e')[1]) - 1;

export function toPlace(number: number, place: number): string {
  return place > 0 ? String(Math.round(number / 10 ** place) * 10 ** place) : number.toFixed(Math.min(100, -place));
}

export const withUnit = (number: string, unit: string): string =>
  `${number.replaceAll('-', '−')}${unit === '1' ? '' : ` ${unit}`}`;

/** The budget as a table of texts. */
export function budgetTable(budget: UncertaintyBudget, level = 0.95): Table {
  const { value, contributions } = budget;
  const remarks = value.notes.map((note) => `note: ${note.message}`);
  const name = value.label === undefined ? '' : `${value.label}: `;
  if (contributions.length === 0) {
    return { caption: `${name}${formatValue(value)}; no input carries an uncertainty`, columns: [], rows: [], remarks };
  }
  return {
    caption: `${name}${captionOf(budget, level)}`,
    columns: [
      { head: 'input', align: 'left' },
      { head: 'value', align: 'right' },
      { head: 'standard', align: 'right' },
      { head: 'sensitivity', align: 'right' },
      { head: 'contribution', align: 'right' },
      { head: 'share', align: 'right' },
    ],
    rows: contributions.map(({ label, input, standard, sensitivity, contribution, share, group }) => [
      group === undefined ? label : `${label} (${group})`,
      formatValue(input),
      formatValue(standard, { figures: 2 }),
      sensitivityText(sensitivity, value, input),
      formatValue(contribution, { figures: 2 }),
      withUnit((100 * share).toFixed(1), '%'),
    ]),
    remarks,
  };
}

function captionOf(budget: UncertaintyBudget, level: number): string {
  const { value, standard, degreesOfFreedom } = budget;
  const brackets = concise(value, standard.si);
  if (standard.si === 0) return brackets;
  const place = lastPlaceOf(fromSi(standard.kind, standard.si, standard.unit));
  const [low, high] = budget.interval(level).map((end) => toPlace(fromSi(end.kind, end.si, end.unit), place)) as [
    string,
    string,
  ];
  const freedom =
    degreesOfFreedom === Infinity ? '' : ` with ${Number(degreesOfFreedom.toPrecision(3))} degrees of freedom`;
  const factor = budget.coverageFactor(level).toFixed(2);
  return `${brackets}; ${Number((100 * level).toPrecision(4))} % interval ${withUnit(low, '1')} to ${withUnit(high, value.unit)} (k = ${factor}${freedom})`;
}

/** Change of the result per change of an input, in the units both show in. */
export function sensitivityText(slope: number, result: Quantity, input: Quantity): string {
  const one = (of: Quantity): number => toSi(differenceKind(of.kind), 1, differenceUnit(of));
  const number = (slope * one(input)) / one(result);
  const per = differenceUnit(input);
  const unit = differenceUnit(result);
  return `${withUnit(plain(number), unit)}${per === '1' ? '' : ` per ${per}`}`;
}

function plain(number: number): string {
  const text = number.toPrecision(3);
  return text.includes('e') ? String(Number(text)) : text;
}
