import { escapeMarkdown } from '../calculation/formula/index.js';
import { cellText, type Block, type DataTable, type Document, type Section } from './document.js';

/** The document as Markdown: the same content in the same order, pictures as tables. */
export function toMarkdown({ heading, sections, footer }: Document): string {
  const parts = [`# ${escapeMarkdown(heading)}`, ...sections.map(sectionMarkdown), '---', escapeMarkdown(footer)];
  return `${parts.join('\n\n')}\n`;
}

function sectionMarkdown({ title, level, blocks }: Section): string {
  const heading = `${'#'.repeat(level)} ${escapeMarkdown(title)}`;
  return [heading, ...blocks.map(blockMarkdown).filter((text) => text !== '')].join('\n\n');
}

function blockMarkdown(block: Block): string {
  switch (block.type) {
    case 'paragraph':
      return block.look === 'answer' ? `**${escapeMarkdown(block.text)}**` : escapeMarkdown(block.text);
    case 'list':
      return block.items.map((item) => `- ${escapeMarkdown(item)}`).join('\n');
    case 'table':
      return tableMarkdown(block.table);
    case 'interval':
      // The sentence above it holds the same numbers.
      return '';
    case 'figure': {
      const { number, caption, asText } = block.figure;
      const text = typeof asText === 'string' ? escapeMarkdown(asText) : tableMarkdown(asText);
      return [`**Figure ${number}.** ${escapeMarkdown(caption)}`, text].join('\n\n');
    }
    case 'made':
      return block.markdown;
  }
}

function tableMarkdown({ caption, columns, rows }: DataTable): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    escapeMarkdown(caption),
    '',
    line(columns.map(({ head }) => escapeMarkdown(head))),
    line(columns.map(({ align }) => (align === 'right' ? '--:' : ':--'))),
    ...rows.map((row) => line(row.map((cell) => escapeMarkdown(cellText(cell))))),
  ].join('\n');
}
