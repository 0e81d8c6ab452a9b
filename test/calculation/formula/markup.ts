export interface Element {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly text: string;
}

const entities: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"' };

/** Reads XML strictly: balanced tags, quoted attributes, no stray `<` or `&`. Throws on anything else. */
export function readXml(xml: string): Element {
  let rest = xml;
  const read = (): Element => {
    const opening = take(/^<([a-z]+)((?: [a-z]+="[^"<]*")*)>/);
    const [, tag = '', attributeText = ''] = opening;
    const attributes: Record<string, string> = {};
    for (const [, name = '', value = ''] of attributeText.matchAll(/ ([a-z]+)="([^"]*)"/g))
      attributes[name] = decode(value);
    const children: Element[] = [];
    let text = '';
    while (!rest.startsWith('</')) {
      if (rest.startsWith('<')) children.push(read());
      else text += decode(take(/^[^<]+/)[0]);
    }
    take(new RegExp(`^</${tag}>`));
    if (children.length > 0 && text !== '') throw new Error(`text beside elements in ${tag}: ${text}`);
    return { tag, attributes, children, text };
  };
  const take = (pattern: RegExp): RegExpExecArray => {
    const found = pattern.exec(rest);
    if (found === null) throw new Error(`expected ${pattern} at ${rest.slice(0, 60)}`);
    rest = rest.slice(found[0].length);
    return found;
  };
  const root = read();
  if (rest !== '') throw new Error(`text after the end: ${rest}`);
  return root;
}

function decode(text: string): string {
  return text.replace(
    /&(?:#x([0-9a-fA-F]+);|#(\d+);|([a-z]+);|)/g,
    (whole, hex?: string, decimal?: string, name?: string) => {
      if (hex !== undefined) return String.fromCodePoint(parseInt(hex, 16));
      if (decimal !== undefined) return String.fromCodePoint(Number(decimal));
      const known = name === undefined ? undefined : entities[name];
      if (known === undefined) throw new Error(`stray ${whole}`);
      return known;
    },
  );
}

const childCounts: Readonly<Record<string, number>> = {
  mfrac: 2,
  msup: 2,
  msub: 2,
  msubsup: 3,
  mroot: 2,
  munder: 2,
  mover: 2,
};
const layoutTags = ['math', 'mrow', 'msqrt', 'mtable', 'mtr', 'mtd', ...Object.keys(childCounts)];
const tokenTags = ['mi', 'mn', 'mo', 'mtext', 'mspace'];

/** Throws if an element is not MathML or has the wrong number of parts. */
export function checkMathML(element: Element): void {
  const { tag, children, text } = element;
  if (tokenTags.includes(tag)) {
    if (children.length > 0) throw new Error(`${tag} must hold text only`);
  } else if (!layoutTags.includes(tag)) throw new Error(`${tag} is not expected in MathML`);
  else if (text !== '') throw new Error(`${tag} must not hold text`);
  const need = childCounts[tag];
  if (need !== undefined && children.length !== need)
    throw new Error(`${tag} needs ${need} parts, got ${children.length}`);
  children.forEach(checkMathML);
}

/** All the text an element shows. */
export function textOf(element: Element): string {
  return element.text + element.children.map(textOf).join('');
}

/**
 * Reads a shown formula back as a reader would, from what stands on the page only: side by side is a product, a
 * raised part a power, a brace with lines a choice. Units are dropped.
 */
export function readBack(element: Element): string {
  const { tag, text, children } = element;
  const all = (): string => children.map(readBack).join('');
  const part = (index: number): string => readBack(children[index] as Element);
  switch (tag) {
    case 'mo':
      return signs[text] ?? text;
    case 'mi':
      return names[text] ?? text;
    case 'mtext':
      return text === 'and' || text === 'or' ? ` ${text} ` : /^\d+s?$/.test(text) ? text : '';
    case 'mfrac':
      return `((${part(0)})/(${part(1)}))`;
    case 'msqrt':
      return `sqrt(${all()})`;
    case 'mroot':
      return `cbrt(${part(0)})`;
    case 'msup':
      return part(0) === 'e' ? `exp(${part(1)})` : `${part(0)}^(${part(1)})`;
    case 'msubsup':
      return `${part(0)}${part(1)}^(${part(2)})`;
    case 'mrow': {
      const [first, second] = children;
      if (first?.text === '|') return `abs(${readBack(second as Element)})`;
      if (first?.text === '{') return readCases(second as Element);
      return all();
    }
    default:
      return text + all();
  }
}

const signs: Readonly<Record<string, string>> = {
  '−': '-',
  '×': '*',
  '·': '*',
  '\u2061': '',
  '\u2062': '*',
  '≤': '<=',
  '≥': '>=',
  '=': '==',
};
const names: Readonly<Record<string, string>> = { η: 'eta', ln: 'log' };

function readCases(table: Element): string {
  const rows = table.children.map(({ children }) => children.map((cell) => readBack(cell)));
  const choices = rows.map(([value = '', condition = '']) =>
    condition === '' ? `(${value})` : `${condition} ? (${value}) : `,
  );
  return `(${choices.join('')})`;
}
