import type { Comparison } from '../comparison/index.js';
import type { PlotSpec } from '../plot/index.js';

/** A page as data: the HTML and the Markdown are written from the same one, so that they say the same in the same order. */
export interface Document {
  /** Of the page and its tab. Never states as a result what is none. */
  readonly title: string;
  /** The heading on the page. */
  readonly heading: string;
  /** At the foot of every printed page. */
  readonly footer: string;
  readonly sections: readonly Section[];
}

/** A part of a page with a heading of its own. */
export interface Section {
  /** Fragment that links lead to; unique in the page. */
  readonly id: string;
  readonly title: string;
  /** 2 for a main part, 3 for a part of one. */
  readonly level: 2 | 3;
  /** How it is laid out. */
  readonly look: 'answer' | 'beside' | 'plain' | 'comparison' | 'pictures';
  readonly blocks: readonly Block[];
}

/** Something within a section. Texts are plain; whoever writes the page escapes them. */
export type Block =
  | { readonly type: 'paragraph'; readonly text: string; readonly look?: 'answer' | 'caution' | 'note' }
  | { readonly type: 'list'; readonly items: readonly string[]; readonly look?: 'plain' | 'small' }
  | { readonly type: 'table'; readonly table: DataTable }
  | { readonly type: 'interval'; readonly comparison: Comparison; readonly id: string }
  | { readonly type: 'figure'; readonly figure: Figure }
  /** Already escaped by whoever made it. */
  | { readonly type: 'made'; readonly html: string; readonly markdown: string };

/** A table whose first column names its rows. */
export interface DataTable {
  readonly caption: string;
  readonly columns: readonly { readonly head: string; readonly align: 'left' | 'right' }[];
  readonly rows: readonly (readonly Cell[])[];
  /** `stacked`: on a phone each row stands as a block of its own. */
  readonly look?: 'compact' | 'wide' | 'stacked';
  /** Whether the last row sums up the others. */
  readonly hasTotal?: boolean;
}

/** A text, or one that leads to a section of the page. */
export type Cell = string | { readonly text: string; readonly to: string };

/** A picture with what must be known to read it. */
export interface Figure {
  readonly number: number;
  readonly id: string;
  readonly caption: string;
  /** For a page, and for a phone. */
  readonly wide: PlotSpec;
  readonly narrow: PlotSpec;
  /** The same as text, where pictures cannot stand. */
  readonly asText: DataTable | string;
}

export const cellText = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);

export const paragraph = (text: string, look?: 'answer' | 'caution' | 'note'): Block =>
  look === undefined ? { type: 'paragraph', text } : { type: 'paragraph', text, look };

export const list = (items: readonly string[], look: 'plain' | 'small' = 'plain'): Block[] =>
  items.length === 0 ? [] : [{ type: 'list', items, look }];
