import { workOf } from '../works.js';
import type { Source } from '../../units/origin.js';
import type { ShownValue } from '../formula/index.js';
import type { ExplainedCase, ExplainedSolution, ExplainedValue } from './model.js';

/** A source in one line, with how far it was checked. */
export function sourceText({ id, where, status }: Source): string {
  const checked = { read: '', memory: ', from memory', computed: ', computed here', 'common practice': '' }[status];
  return `${workOf(id)}${where ? `, ${where}` : ''}${checked}`;
}

/** A given or assumed value in one line, with where it comes from. */
export function valueText({ name, text, uncertainty, role, source }: ExplainedValue, decimal: '.' | ','): string {
  const from = source ? ` [${sourceText(source)}]` : '';
  if (role === 'scatter' || role === 'error') return `${name}: ${withDecimal(uncertainty, decimal)}${from}`;
  return `${name} = ${withDecimal(`${text}${uncertainty ? ` (${uncertainty})` : ''}`, decimal)}${from}`;
}

/** A value found by solving, in one line. */
export function solutionText({ name, text, residual }: ExplainedSolution, decimal: '.' | ','): string {
  return `${name} = ${withDecimal(text, decimal)}, found so that ${residual} = 0`;
}

/** A number with its unit. */
export function shownText({ number, unit }: ShownValue): string {
  return unit === undefined ? number : `${number} ${unit}`;
}

/** A number, or numbers, in place of a symbol. */
export function numbersText(numbers: ExplainedCase['numbers'][string]): string {
  return 'list' in numbers ? numbers.list.map(shownText).join(', ') : shownText(numbers);
}

/** Replaces the decimal point of numbers; not for names and sources, where `6.8` is a section. */
export function withDecimal(text: string, decimal: '.' | ','): string {
  return decimal === ',' ? text.replace(/(\d)\.(\d)/g, '$1,$2') : text;
}
