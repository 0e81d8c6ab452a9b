/** A value that JSON can hold. */
export type PlotValue = string | number | boolean | null | readonly PlotValue[] | { readonly [key: string]: PlotValue };

/** A picture as data: a Vega-Lite specification, version 6. Any Vega-Lite renderer draws it; so does {@link renderSvg}. */
export interface PlotSpec {
  readonly $schema: string;
  /** What the picture shows, in words, for readers who do not see it. */
  readonly description: string;
  /** The picture's name, in `title`. */
  readonly usermeta: { readonly title: string };
  readonly width: number;
  readonly height: number;
  readonly [key: string]: PlotValue;
}

/** Size of a picture in pixels, everything included. */
export interface PlotOptions {
  /** 720 when left out; 360 suits a phone. */
  readonly width?: number;
  readonly height?: number;
}

/** Two inks that colour-blind readers tell apart and that stay dark on paper, and greys. Dash patterns say the same without colour. */
export const INK = {
  baseline: '#a8430a',
  candidate: '#134f8f',
  text: '#1a1a1a',
  quiet: '#5c5c5c',
  faint: '#8c8c8c',
  grid: '#e6e6e6',
} as const;

/** Dash patterns that go with the inks; a solid line has none. */
export const DASH = { baseline: [7, 4], candidate: [1, 0], margin: [5, 4], refused: [1, 3] } as const;

export const FONT = 'sans-serif';
export const FONT_SIZE = 12;

/** The drawing area inside a picture. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A specification with the look that all pictures share. Sizes are fixed: text is not measured, so that every machine draws the same. */
export function plotSpec(
  { title, description }: { readonly title: string; readonly description: string },
  frame: Frame,
  layer: readonly PlotValue[],
): PlotSpec {
  const { width, height, left, right, top, bottom } = frame;
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    description,
    usermeta: { title },
    width,
    height,
    padding: { left, right, top, bottom },
    autosize: { type: 'none', contains: 'content' },
    background: 'white',
    layer,
    config: {
      aria: false,
      font: FONT,
      view: { stroke: null },
      axis: {
        domainColor: INK.faint,
        tickColor: INK.faint,
        gridColor: INK.grid,
        labelColor: INK.text,
        titleColor: INK.text,
        labelFontSize: FONT_SIZE,
        titleFontSize: FONT_SIZE,
        titleFontWeight: 'normal',
        labelPadding: 4,
      },
      text: { fontSize: FONT_SIZE, color: INK.text, baseline: 'middle' },
    },
  };
}

/** Inner width and height of a picture of a given size. */
export function frameOf(
  { width = 720, height }: PlotOptions,
  usualHeight: number,
  margins: Pick<Frame, 'left' | 'right' | 'top' | 'bottom'>,
): Frame {
  const { left, right, top, bottom } = margins;
  return {
    ...margins,
    width: Math.max(40, width - left - right),
    height: Math.max(40, (height ?? usualHeight) - top - bottom),
  };
}

/** Whether a picture is narrow enough that labels must be short. */
export function isNarrow({ width = 720 }: PlotOptions): boolean {
  return width < 500;
}

/** Rows of data as a layer reads them. */
export function rows(values: readonly { readonly [key: string]: PlotValue }[]): PlotValue {
  return { values };
}
