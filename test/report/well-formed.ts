/** Elements of HTML that have no end tag. */
const VOID = new Set(['meta', 'link', 'br', 'hr', 'img', 'input']);

/**
 * What is wrong with some HTML, SVG or MathML, by the stricter rules of XML: every element closed in order, attributes quoted and given
 * once, ids unique, references to ids that exist, no bare ampersand or angle bracket.
 */
export function problemsOf(markup: string): string[] {
  const problems: string[] = [];
  const open: string[] = [];
  const ids = new Set<string>();
  const references: string[] = [];
  const text = markup
    .replace(/^<!doctype html>/, '')
    // A style sheet is raw text; only its own end tag could end it.
    .replace(/<style>([^<]*)<\/style>/, '<style></style>');
  const token = /<(\/?)([A-Za-z][A-Za-z0-9-]*)((?:\s+[A-Za-z_:][-A-Za-z0-9_:.]*="[^"<]*")*)\s*(\/?)>|([^<]+)|(<)/g;
  for (const [, slash, name, attributes, selfClosed, content, stray] of text.matchAll(token)) {
    if (stray !== undefined) problems.push('a "<" that begins no tag');
    if (content !== undefined) checkText(content, problems);
    if (name === undefined) continue;
    if (slash === '/') {
      const last = open.pop();
      if (last !== name) problems.push(`</${name}> where </${last}> should be`);
      continue;
    }
    const seen = new Set<string>();
    for (const [, attribute, value] of attributes!.matchAll(/([A-Za-z_:][-A-Za-z0-9_:.]*)="([^"]*)"/g)) {
      if (seen.has(attribute!)) problems.push(`${name} has ${attribute} twice`);
      seen.add(attribute!);
      checkText(value!, problems);
      if (attribute === 'id') {
        if (ids.has(value!)) problems.push(`id ${value} is used twice`);
        ids.add(value!);
      }
      if (/^aria-(labelledby|describedby)$/.test(attribute!)) references.push(value!);
      if (attribute === 'href' && value!.startsWith('#')) references.push(value!.slice(1));
    }
    if (selfClosed !== '/' && !VOID.has(name)) open.push(name);
  }
  problems.push(...open.map((name) => `${name} is not closed`));
  problems.push(...references.filter((id) => !ids.has(id)).map((id) => `no element has the id ${id}`));
  return problems;
}

function checkText(text: string, problems: string[]): void {
  for (const [found] of text.matchAll(/&(?!(?:[a-z]+|#\d+|#x[0-9a-fA-F]+);)\S{0,10}/g))
    problems.push(`a bare ampersand: ${found}`);
}
