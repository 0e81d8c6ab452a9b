import type { Quantity } from '../units/index.js';

const LONGEST_QUOTE = 40;

/** Text from a file or a user on one line: control characters would tear a message apart. */
export function onOneLine(text: string): string {
  // eslint-disable-next-line no-control-regex -- removing control characters is the purpose
  return text.replaceAll(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, ' ');
}

/** Text from a file in quotes, cut to a length that fits a message. */
export function quoted(text: string, longest = LONGEST_QUOTE): string {
  const line = onOneLine(text.slice(0, longest + 1));
  return `"${line.length > longest ? `${line.slice(0, longest)}…` : line}"`;
}

/** `3 files`, `1 file`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** Names in a row: `"a", "b" and 4 more`. */
export function listed(names: readonly string[], most = 12): string {
  const shown = names.slice(0, most).map((name) => quoted(name));
  return names.length > most ? `${shown.join(', ')} and ${names.length - most} more` : shown.join(', ');
}

/** A number for a message: four figures, plain digits. */
export function figure(value: number): string {
  return String(Number(value.toPrecision(4))).replace('-', '−');
}

/** A quantity in its own unit, to some figures. */
export function inOwnUnit(quantity: Quantity, figures = 4): string {
  const value = figure(Number((quantity as Quantity<'ratio'>).in(quantity.unit as '1').toPrecision(figures)));
  return quantity.unit === '1' ? value : `${value} ${quantity.unit}`;
}

/** Lines of at most `width` characters, the later ones indented; broken at spaces, but not within quotation marks. */
export function wrapped(text: string, indent: string, width = 118): string {
  const lines: string[] = [];
  let line = '';
  const held = text.replaceAll(/"[^"]*"/g, (quote) => quote.replaceAll(' ', '\u00a0'));
  for (const word of held.split(' ')) {
    const room = width - (lines.length === 0 ? 0 : indent.length);
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].join(`\n${indent}`).replaceAll('\u00a0', ' ');
}
