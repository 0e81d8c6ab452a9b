import type * as Vega from 'vega';
import type * as VegaLite from 'vega-lite';
import { escapeHtml } from '../calculation/formula/index.js';
import { CalculationError } from '../units/index.js';
import type { PlotSpec } from './spec.js';

/** How a picture is drawn. */
export interface RenderOptions {
  /** Prefix of the ids in the picture; give each picture of a page its own. Made from the picture's data when left out. */
  readonly id?: string;
}

/**
 * Draws a picture as SVG: static, text as text, no script, no link to anywhere, with a title and a description for readers who do not
 * see it. Needs the optional packages vega and vega-lite.
 *
 * @returns The SVG element, to be put in a page or a file.
 * @throws CalculationError if vega or vega-lite is not installed, saying what to install.
 * @example
 * const svg = await renderSvg(overlayPlot(comparison));
 */
export async function renderSvg(spec: PlotSpec, { id }: RenderOptions = {}): Promise<string> {
  const [vega, lite] = await loadPeers();
  // The compiler takes its specification apart and puts it together again, so it gets one of its own.
  const own = structuredClone(spec) as unknown as Parameters<typeof lite.compile>[0];
  const compiled = lite.compile(own).spec;
  const view = new vega.View(vega.parse(compiled), { renderer: 'none' });
  try {
    return tidied(await view.toSVG(), spec, plainId(id ?? `plot-${fingerprint(JSON.stringify(spec))}`));
  } finally {
    view.finalize();
  }
}

async function loadPeers(): Promise<[typeof Vega, typeof VegaLite]> {
  try {
    return await Promise.all([import('vega'), import('vega-lite')]);
  } catch (error) {
    throw missingPeers(error);
  }
}

/** @internal The error where the optional packages cannot be loaded. */
export function missingPeers(error: unknown): CalculationError {
  const got = error instanceof Error ? error.message.split('\n')[0]! : String(error);
  return new CalculationError('renderSvg', [
    {
      code: 'missing',
      input: 'vega, vega-lite',
      need: 'the packages vega and vega-lite, which draw the pictures',
      got,
      mend: 'Install them with: npm install vega@6 vega-lite@6',
    },
  ]);
}

/** Attributes that say nothing to a static picture, or speak to a reader in the renderer's own words. */
const IDLE = / (?:class|role|aria-[a-z]+|pointer-events|xmlns:xlink|version)="[^"]*"| opacity="1"/g;

/** The renderer's SVG with a name and a description, ids of its own, and without what a static picture does not need. */
function tidied(svg: string, { description, usermeta: { title } }: PlotSpec, id: string): string {
  const inside = svg
    .replace(/^<svg[^>]*>/, '')
    .replace(/<\/svg>$/, '')
    .replaceAll(/<[^>]+>/g, (tag) => tag.replaceAll(IDLE, ''))
    .replaceAll(/<path aria-hidden="true"[^>]*\/>|<path[^>]* d=""[^>]*\/>/g, '')
    .replaceAll(/<text[^>]* opacity="0"[^>]*>[^<]*<\/text>/g, '')
    .replaceAll(/<path d="M0,0h0v0h0Z"\/>/g, '');
  const named = inside.replaceAll(/ id="([^"]+)"/g, ` id="${id}-$1"`).replaceAll(/url\(#([^)]+)\)/g, `url(#${id}-$1)`);
  const [, width = '', height = ''] = /^<svg[^>]* width="(\d+(?:\.\d+)?)" height="(\d+(?:\.\d+)?)"/.exec(svg) ?? [];
  const label = `aria-labelledby="${id}-title" aria-describedby="${id}-desc"`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" ${label} width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" preserveAspectRatio="xMinYMid">` +
    `<title id="${id}-title">${escapeHtml(title)}</title><desc id="${id}-desc">${escapeHtml(description)}</desc>${named}</svg>`
  );
}

/** An id that needs no escaping anywhere. */
function plainId(id: string): string {
  const plain = id.replaceAll(/[^A-Za-z0-9_-]/g, '-');
  return /^[A-Za-z]/.test(plain) ? plain : `plot-${plain}`;
}

/** FNV-1a over the code units: short, the same on every machine; it only has to tell the pictures of a page apart. */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}
