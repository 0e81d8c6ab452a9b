/**
 * Makes any text safe inside HTML, MathML and SVG, as content or as a quoted attribute. Characters that XML forbids
 * become the replacement character.
 *
 * @example
 * escapeHtml('<b> & "c"') //=> '&lt;b&gt; &amp; &quot;c&quot;'
 */
export function escapeHtml(text: string): string {
  return withoutForbidden(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

const latexText: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '{': '\\{',
  '}': '\\}',
  $: '\\$',
  '&': '\\&',
  '#': '\\#',
  '%': '\\%',
  _: '\\_',
  '^': '\\textasciicircum{}',
  '~': '\\textasciitilde{}',
  '<': '\\textless{}',
  '>': '\\textgreater{}',
  '|': '\\textbar{}',
  '"': "''",
};

/**
 * Makes any text safe in LaTeX text mode, so inside `\text{...}` as well. Line breaks become spaces: a blank line
 * would end a formula.
 *
 * @example
 * escapeLatex('50 % of A_1') //=> '50 \\% of A\\_1'
 */
export function escapeLatex(text: string): string {
  return onOneLine(text).replace(/[\\{}$&#%_^~<>|"]/g, (character) => latexText[character] ?? character);
}

/**
 * Makes any text safe in one line of Markdown: nothing in it becomes a heading, list, link, table cell, code, formula
 * or HTML.
 *
 * @example
 * escapeMarkdown('a*b | <i>') //=> 'a\\*b \\| &lt;i&gt;'
 */
export function escapeMarkdown(text: string): string {
  return onOneLine(text)
    .trim()
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replace(/[\\`*_[\]|~$#!{}]/g, '\\$&')
    .replace(/^(?=[-+=])/, '\\')
    .replace(/^(\d{1,9})(?=[.)](?: |$))/, '$1\\')
    .replaceAll('://', '&#58;//')
    .replace(/(www)\./gi, '$1&#46;')
    .replaceAll('@', '&#64;');
}

function onOneLine(text: string): string {
  return withoutForbidden(text).replace(/[\r\n\t\u0085\u2028\u2029]/g, ' ');
}

function withoutForbidden(text: string): string {
  const forbidden =
    // eslint-disable-next-line no-control-regex -- the characters XML 1.0 forbids are control characters
    /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u0084\u0086-\u009F\uFFFE\uFFFF]|\p{Surrogate}/gu;
  return text.replace(forbidden, '\uFFFD');
}
