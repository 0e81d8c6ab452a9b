import { escapeHtml } from '../calculation/formula/index.js';
import { intervalBar, renderSvg } from '../plot/index.js';
import {
  cellText,
  type Block,
  type Cell,
  type DataTable,
  type Document,
  type Figure,
  type Section,
} from './document.js';
import { pageStyle } from './style.js';

/** Forbids whatever a page could load or run; only the style sheet inside it is left. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/** The document as one page that needs nothing but itself. */
export async function toHtml(document: Document): Promise<string> {
  const main: string[] = [];
  let isGridOpen = false;
  for (const section of document.sections) {
    // What the answer rests on and why it is so stand side by side where there is room.
    const isBeside = section.look === 'beside';
    if (isBeside !== isGridOpen) main.push(isBeside ? '<div class="first">' : '</div>');
    isGridOpen = isBeside;
    main.push(await sectionHtml(section));
  }
  if (isGridOpen) main.push('</div>');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escapeHtml(document.title)}</title>
<style>${pageStyle(document.footer)}</style>
</head>
<body>
<a class="skip" href="#${escapeHtml(document.sections[0]?.id ?? 'main')}">Skip to the answer</a>
<header><h1>${escapeHtml(document.heading)}</h1></header>
<main id="main">
${main.join('\n')}
</main>
<footer>${escapeHtml(document.footer)}</footer>
</body>
</html>
`;
}

async function sectionHtml({ id, title, level, look, blocks }: Section): Promise<string> {
  const heading = `<h${level} id="${id}-title"${look === 'answer' ? ' class="hidden"' : ''}>${escapeHtml(title)}</h${level}>`;
  const body: string[] = [];
  for (const block of blocks) body.push(await blockHtml(block));
  return `<section id="${id}" aria-labelledby="${id}-title" class="${look}">\n${[heading, ...body].join('\n')}\n</section>`;
}

async function blockHtml(block: Block): Promise<string> {
  switch (block.type) {
    case 'paragraph': {
      const look = block.look === 'answer' ? 'answer-text' : block.look;
      return `<p${look === undefined ? '' : ` class="${look}"`}>${textHtml(block.text)}</p>`;
    }
    case 'list': {
      const items = block.items.map((item) => `<li>${textHtml(item)}</li>`).join('');
      return `<ul${block.look === 'small' ? ' class="small"' : ''}>${items}</ul>`;
    }
    case 'table':
      return tableHtml(block.table);
    case 'interval':
      return `<div class="interval">${intervalBar(block.comparison, { id: block.id }) ?? ''}</div>`;
    case 'figure':
      return figureHtml(block.figure);
    case 'made':
      return `<div class="made" tabindex="0" role="group" aria-label="Worked out">${block.html}</div>`;
  }
}

async function figureHtml({ number, id, caption, wide, narrow }: Figure): Promise<string> {
  const [large, small] = [await renderSvg(wide, { id }), await renderSvg(narrow, { id: `${id}-narrow` })];
  return (
    `<figure id="${id}"><div class="wide">${large}</div><div class="narrow">${small}</div>` +
    `<figcaption><b>Figure ${number}.</b> ${textHtml(caption)}</figcaption></figure>`
  );
}

function tableHtml({ caption, columns, rows, look, hasTotal }: DataTable): string {
  const classOf = (i: number): string => (columns[i]!.align === 'right' ? ' class="r"' : '');
  // On a phone each cell of a stacked table says what it is.
  const headOf = (i: number): string => (look === 'stacked' ? ` data-head="${escapeHtml(columns[i]!.head)}"` : '');
  const head = columns.map(({ head: text }, i) => `<th scope="col"${classOf(i)}>${escapeHtml(text)}</th>`).join('');
  const body = rows.map((row) => {
    const cells = row.map((cell, i) =>
      i === 0
        ? `<th scope="row"${classOf(i)}>${cellHtml(cell)}</th>`
        : `<td${classOf(i)}${headOf(i)}>${cellHtml(cell)}</td>`,
    );
    return `<tr>${cells.join('')}</tr>`;
  });
  const name = escapeHtml(caption);
  return (
    `<div class="${['table', look, hasTotal && 'total'].filter(Boolean).join(' ')}" tabindex="0" role="group" aria-label="${name}">` +
    `<table><caption>${name}</caption><thead><tr>${head}</tr></thead><tbody>${body.join('')}</tbody></table></div>`
  );
}

function cellHtml(cell: Cell): string {
  const text = escapeHtml(cellText(cell));
  if (typeof cell !== 'string') return `<a href="#${escapeHtml(cell.to)}">${text}</a>`;
  return /^[0-9a-f]{64}$/.test(cell) ? `<span class="mono">${text}</span>` : text;
}

/** Escaped, with a number and its unit kept on one line. */
function textHtml(text: string): string {
  return escapeHtml(text.replaceAll(NUMBER_AND_UNIT, '$1\u00a0$2'));
}

const NUMBER_AND_UNIT =
  /(\d) ((?:%|rpm|°C|°F|K|Pa|kPa|hPa|mbar|bar|psi|W|kW|hp|PS|N·m|lb·ft|g\/s|lb\/min|mg|g|kg)(?![A-Za-z0-9]))/g;
