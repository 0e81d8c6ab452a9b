import { formatValue } from '../units/format.js';
import { differenceUnit, fromSi } from '../units/internal.js';
import { differenceKind, type Kind } from '../units/kinds.js';
import type { Quantity } from '../units/origin.js';
import { sourceText } from './explain/words.js';
import { concise, lastPlaceOf, toPlace, withUnit } from './budget-text.js';
import type { MonteCarloUncertainty } from './monte-carlo-result.js';
import type { Table } from './table.js';

/** What the text forms need beside the result itself. */
export interface Shown<K extends Kind = Kind> {
  readonly result: MonteCarloUncertainty<K>;
  /** Undefined where there is none. */
  readonly mean: Quantity<K> | undefined;
  readonly standard: Quantity | undefined;
  /** What says how many digits matter, in SI. */
  readonly scale: number;
}

/** The short form: the mean with its standard uncertainty in brackets, or the interval where there is none. */
export function briefly(shown: Shown): string {
  const { result, mean, standard } = shown;
  if (mean !== undefined && standard !== undefined) return concise(mean, standard.si);
  return `${at(shown, result.median)}, ${intervalText(shown)}`;
}

/** The result as a table of texts, beside the linear budget. */
export function monteCarloTable(shown: Shown): Table {
  const { result, mean, standard } = shown;
  const { value, linear, level } = result;
  const name = value.label === undefined ? '' : `${value.label}: `;
  const [low, high] = result.interval();
  const [shortLow, shortHigh] = result.shortestInterval();
  const [linearLow, linearHigh] = linear.budget?.interval(level) ?? [];
  const show = (quantity: Quantity | undefined): string => (quantity === undefined ? '' : at(shown, quantity));
  const spread = (quantity: Quantity | undefined): string =>
    quantity === undefined ? 'none' : formatValue(quantity, { figures: 2 });
  const row = (what: string, draws: string, budget: string): string[] => [what, draws, budget];
  return {
    caption: `${name}${standard === undefined ? '' : `${briefly(shown)}; `}${intervalText(shown)} (${counted(result.draws)} draws, seed ${result.seed})`,
    columns: [
      { head: '', align: 'left' },
      { head: 'draws', align: 'right' },
      { head: 'linear budget', align: 'right' },
    ],
    rows: [
      row('mean', mean === undefined ? 'none' : show(mean), show(linear.budget?.value)),
      row('median', show(result.median), ''),
      row('standard uncertainty', spread(standard), linear.budget ? spread(linear.budget.standard) : ''),
      row('symmetric interval, low end', show(low), show(linearLow)),
      row('symmetric interval, high end', show(high), show(linearHigh)),
      row('shortest interval, low end', show(shortLow), ''),
      row('shortest interval, high end', show(shortHigh), ''),
    ],
    remarks: [
      linear.statement,
      `The draws settle these figures to ${formatValue(result.settledTo, { figures: 2 })}.`,
      ...result.notes.map((note) => `note: ${note.message}`),
      ...result.sources.map((each) => `Source: ${sourceText(each)}`),
    ],
  };
}

function intervalText(shown: Shown): string {
  const { level, value } = shown.result;
  const [low, high] = shown.result.interval().map((end) => numberAt(shown, end)) as [string, string];
  return `${Number((100 * level).toPrecision(6))} % interval ${withUnit(low, '1')} to ${withUnit(high, value.unit)}`;
}

const at = (shown: Shown, quantity: Quantity): string => withUnit(numberAt(shown, quantity), quantity.unit);

/** A value to the digit that the second figure of the uncertainty has. */
function numberAt({ scale }: Shown, { kind, si, unit }: Quantity): string {
  const number = fromSi(kind, si, unit);
  const spread = fromSi(differenceKind(kind), scale, differenceUnit({ kind, unit }));
  if (spread === 0) return String(Number(number.toPrecision(6)));
  const place = lastPlaceOf(spread);
  return place < -9 || place > 6 ? exponentForm(number, place) : toPlace(number, place);
}

function exponentForm(number: number, place: number): string {
  if (number === 0) return '0';
  const figures = Math.floor(Math.log10(Math.abs(number))) - place + 1;
  return number.toExponential(Math.max(0, Math.min(20, figures - 1))).replace('+', '');
}

/** Thousands apart, as 1 000 000. */
export const counted = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ' ');
