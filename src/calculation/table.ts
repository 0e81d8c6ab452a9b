import { escapeHtml, escapeMarkdown } from './formula/escape.js';

/** A small table of texts, for budgets and the like. Labels come from users and files, so every form escapes them. */
export interface Table {
  /** What the table shows, in one line. */
  readonly caption: string;
  readonly columns: readonly { readonly head: string; readonly align: 'left' | 'right' }[];
  readonly rows: readonly (readonly string[])[];
  /** Said below it, such as notes. */
  readonly remarks: readonly string[];
}

/** As aligned plain text. */
export function tableText({ caption, columns, rows, remarks }: Table): string {
  const widths = columns.map(({ head }, i) => Math.max(head.length, ...rows.map((row) => row[i]!.length)));
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, i) => (columns[i]!.align === 'right' ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
      .join('  ')
      .trimEnd();
  const body = rows.length === 0 ? [] : ['', line(columns.map(({ head }) => head)), ...rows.map(line)];
  return [caption, ...body, ...remarks].map(onOneLine).join('\n');
}

/** As a Markdown table with its caption above. */
export function tableMarkdown({ caption, columns, rows, remarks }: Table): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const head = line(columns.map((column) => column.head));
  const rule = line(columns.map(({ align }) => (align === 'right' ? '--:' : ':--')));
  const body = rows.length === 0 ? [] : ['', head, rule, ...rows.map((row) => line(row.map(escapeMarkdown)))];
  return [escapeMarkdown(caption), ...body, ...remarks.flatMap((remark) => ['', escapeMarkdown(remark)])].join('\n');
}

/** As an HTML table with a caption and scoped headings; remarks follow as paragraphs. */
export function tableHtml({ caption, columns, rows, remarks }: Table): string {
  const style = columns.map(({ align }) => (align === 'right' ? ' style="text-align:right"' : ''));
  const heads = columns.map(({ head }, i) => `<th scope="col"${style[i]}>${escapeHtml(head)}</th>`).join('');
  const body = rows
    .map((row) => `<tr>${row.map((cell, i) => `<td${style[i]}>${escapeHtml(cell)}</td>`).join('')}</tr>`)
    .join('\n');
  const table =
    rows.length === 0
      ? `<p>${escapeHtml(caption)}</p>`
      : `<table>\n<caption>${escapeHtml(caption)}</caption>\n<thead><tr>${heads}</tr></thead>\n<tbody>\n${body}\n</tbody>\n</table>`;
  return [table, ...remarks.map((remark) => `<p>${escapeHtml(remark)}</p>`)].join('\n');
}

const onOneLine = (text: string): string => text.replace(/[\r\n\t\u0085\u2028\u2029]/g, ' ');
