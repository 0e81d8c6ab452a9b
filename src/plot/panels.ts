import { frameOf, type Frame, type PlotOptions } from './spec.js';

/** Where a panel stands in the drawing area, in pixels from its top left. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Its heading, which starts at `headTop`. */
  readonly lines: { readonly bold: readonly string[]; readonly plain: readonly string[] };
  readonly headTop: number;
  readonly lineHeight: number;
  /** Whether it is the first of its row. */
  readonly isFirst: boolean;
}

/** Room for value labels left of the drawing area. */
export const LEFT = 42;

const LINE = 14;
const PANEL = 118;
const UNDER_HEAD = 7;
const SPEED_LABELS = 30;

/**
 * Places panels in rows that are filled evenly: four stand two by two, not three and one.
 *
 * @param heads - The heading of each panel for the width that a panel has.
 */
export function layOut(
  heads: readonly ((width: number) => Box['lines'])[],
  options: PlotOptions & { readonly across: number; readonly isShared: boolean },
): { frame: Frame; boxes: Box[]; panelHeight: number } {
  const { across, isShared } = options;
  const rowCount = Math.ceil(heads.length / across);
  const columnCount = Math.ceil(heads.length / rowCount);
  // Panels with value labels of their own need room for them.
  const gap = isShared ? 32 : LEFT + 12;
  const margins = { left: LEFT, right: 20, top: isShared ? 28 : 4, bottom: 22 };
  const { width } = frameOf(options, 0, margins);
  const panelWidth = (width - gap * (columnCount - 1)) / columnCount;
  const lines = heads.map((head) => head(panelWidth));
  const headHeights = Array.from({ length: rowCount }, (_, row) => {
    const counts = lines
      .slice(row * columnCount, (row + 1) * columnCount)
      .map((own) => own.bold.length + own.plain.length);
    return Math.max(...counts) * LINE + UNDER_HEAD;
  });
  const beside = headHeights.reduce((sum, height) => sum + height, 0) + rowCount * SPEED_LABELS;
  const frame = frameOf(options, beside + rowCount * PANEL + margins.top + margins.bottom, margins);
  const panelHeight = Math.max(40, (frame.height - beside) / rowCount);
  const boxes = lines.map((own, i): Box => {
    const [row, column] = [Math.floor(i / columnCount), i % columnCount];
    const left = column * (panelWidth + gap);
    const headTop =
      headHeights.slice(0, row).reduce((sum, height) => sum + height, 0) + row * (panelHeight + SPEED_LABELS);
    const top = headTop + headHeights[row]!;
    return {
      left,
      right: left + panelWidth,
      top,
      bottom: top + panelHeight,
      lines: own,
      headTop,
      lineHeight: LINE,
      isFirst: column === 0,
    };
  });
  return { frame, boxes, panelHeight };
}
